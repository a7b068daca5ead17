package index

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"slices"
	"sync"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/index/scorch"
	"github.com/blevesearch/bleve/v2/mapping"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// batchSize is how many notes are indexed in one go: fewer make many small segments that
// every search has to visit, more take memory.
const batchSize = 500

// Memory builds an index of a book in memory.
func Memory(ctx context.Context, b *casebook.Book) (*Index, error) {
	x, err := newMemory()
	if err != nil {
		return nil, err
	}
	batch := x.notes.NewBatch()
	err = documents(ctx, maker{x.lexicon, b}, func(id string, d document) error {
		if err := batch.Index(id, d); err != nil {
			return err
		}
		if batch.Size() < batchSize {
			return nil
		}
		defer batch.Reset()
		return x.notes.Batch(batch)
	})
	if err == nil {
		err = x.notes.Batch(batch)
	}
	if err != nil {
		return nil, errors.Join(err, x.Close())
	}
	return x, nil
}

// newMemory makes an empty index in memory.
func newMemory() (*Index, error) {
	m, err := newMapping()
	if err != nil {
		return nil, err
	}
	// Not NewMemOnly: that is an older kind of index, ten times as slow.
	notes, err := bleve.NewUsing("", m, scorch.Name, scorch.Name, nil)
	if err != nil {
		return nil, err
	}
	return &Index{notes: notes, lexicon: lexiconOf(m)}, nil
}

// lexiconOf is the trade's lexicon, read as a mapping reads words.
func lexiconOf(m *mapping.IndexMappingImpl) *lexicon {
	return newLexicon(m.AnalyzerNamed(ruling), slices.Concat(notation.Synonyms(), thesaurus))
}

// Build builds the index of a book in a folder of its own and makes it the one in use. What
// was in use serves until then, and readers that have it open go on with it. Corpus names
// the notes as they were (see Fingerprint); Open gives it back. A second build at the same
// time fails with ErrBuilding.
func Build(ctx context.Context, dir string, b *casebook.Book, corpus string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	release, err := takeLock(dir)
	if err != nil {
		return err
	}
	defer release()
	m, err := newMapping()
	if err != nil {
		return err
	}
	name, err := newGeneration(dir)
	if err != nil {
		return err
	}
	gen := filepath.Join(dir, name)
	l := lexiconOf(m)
	s := stamp{Program: program(m), Corpus: corpus}
	s.Notes, err = write(ctx, gen, m, maker{l, b})
	if err == nil {
		s.Phrases, err = writePhrases(gen, l)
	}
	if err == nil {
		err = seal(gen, s)
	}
	if err == nil {
		err = switchTo(dir, name)
	}
	if err != nil {
		return errors.Join(fmt.Errorf("%s: the index was not built: %w", dir, err), os.RemoveAll(gen))
	}
	sweep(dir, name)
	return nil
}

// write writes the search library's files of a generation, in a single segment, and gives
// the number of notes.
func write(ctx context.Context, gen string, m *mapping.IndexMappingImpl, docs maker) (n int, err error) {
	defer rescue(&err)
	// The builder's own files go below the generation too, so that a build that is cut
	// short leaves nothing anywhere else.
	builder, err := bleve.NewBuilder(filepath.Join(gen, notesDir), m, map[string]any{
		"batchSize": batchSize, "buildPathPrefix": gen,
	})
	if err != nil {
		return 0, err
	}
	err = documents(ctx, docs, func(id string, d document) error {
		n++
		return builder.Index(id, d)
	})
	return n, errors.Join(err, builder.Close())
}

// documents makes a document of every note, on all processors, and hands them to add one
// at a time, in no particular order. The first error ends it.
func documents(ctx context.Context, m maker, add func(id string, d document) error) error {
	type made struct {
		id  string
		doc document
		err error
	}
	ctx, cancel := context.WithCancel(ctx)
	defer cancel()
	notes := m.book.Notes()
	after := successors(notes)
	jobs, done := make(chan *casebook.Note), make(chan made, runtime.GOMAXPROCS(0))
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for n := range jobs {
				d, err := m.document(n, after[n.ID])
				select {
				case done <- made{n.ID, d, err}:
				case <-ctx.Done():
					return
				}
			}
		})
	}
	go func() {
		defer func() {
			close(jobs)
			workers.Wait()
			close(done)
		}()
		for _, n := range notes {
			select {
			case jobs <- n:
			case <-ctx.Done():
				return
			}
		}
	}()
	for d := range done {
		if d.err == nil {
			d.err = add(d.id, d.doc)
		}
		if d.err != nil {
			return d.err
		}
	}
	return context.Cause(ctx)
}

// program identifies all of the program that shapes an index: the mapping, the trade's
// lexicon, the fact table, and the build itself, for how a play is read and ruled on is
// part of what a note is found by.
func program(m *mapping.IndexMappingImpl) string {
	if id := buildIdentity(); id != "" {
		return id // a build has one mapping, one lexicon and one fact table
	}
	h := sha256.New()
	e := json.NewEncoder(h)
	e.Encode(m)
	e.Encode(notation.Synonyms())
	e.Encode(thesaurus)
	for _, f := range play.Facts() {
		e.Encode(f.ID)
	}
	return hex.EncodeToString(h.Sum(nil))
}

// buildIdentity tells one build of the program from another: its revision where it was
// built from a clean checkout, else the executable file's size and time.
var buildIdentity = sync.OnceValue(func() string {
	id, clean := "", false
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, s := range info.Settings {
			switch s.Key {
			case "vcs.revision":
				id = s.Value
			case "vcs.modified":
				clean = s.Value == "false"
			}
		}
	}
	if id != "" && clean {
		return id
	}
	exe, err := os.Executable()
	if err != nil {
		return id
	}
	info, err := os.Stat(exe)
	if err != nil {
		return id
	}
	return fmt.Sprint(info.Size(), info.ModTime().UnixNano())
})
