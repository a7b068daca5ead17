package index

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"

	"github.com/blevesearch/bleve/v2"

	"example.org/netpost/casebook"
)

// Open opens the index of a folder for reading. Any number of processes may have it open,
// and a build may go on beside them. The error is ErrAbsent, ErrStale when another
// version of the program built it, or ErrCorrupt; a build mends each.
func Open(dir string) (*Index, error) {
	for {
		name, err := currentGeneration(dir)
		if err != nil {
			return nil, err
		}
		x, err := open(dir, name)
		if err == nil {
			return x, nil
		}
		// A build may have taken the generation away since the pointer was read; the
		// pointer then names another.
		if again, _ := currentGeneration(dir); again == name || again == "" {
			return nil, err
		}
	}
}

// open opens one generation of a folder.
func open(dir, name string) (x *Index, err error) {
	defer rescue(&err)
	gen := filepath.Join(dir, name)
	s, err := readStamp(gen)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", gen, err)
	}
	m, err := newMapping()
	if err != nil {
		return nil, err
	}
	if s.Program != program(m) {
		return nil, fmt.Errorf("%s: %w: another version of the program built it", gen, ErrStale)
	}
	kept, err := readPhrases(gen, s.Phrases)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", gen, err)
	}
	notes, err := bleve.OpenUsing(filepath.Join(gen, notesDir), map[string]any{
		"read_only": true,
		// Without it a second process waits for ever where it should fail.
		"bolt_timeout": "1s",
	})
	if err != nil {
		return nil, fmt.Errorf("%s: %w: %w", gen, ErrCorrupt, err)
	}
	x = &Index{notes: notes, lexicon: keptLexicon(m.AnalyzerNamed(ruling), kept), corpus: s.Corpus}
	if n, err := x.Len(); err != nil || n != s.Notes {
		return nil, errors.Join(fmt.Errorf("%s: %w: it holds %d notes instead of %d", gen, ErrCorrupt, n, s.Notes), err, x.Close())
	}
	return x, nil
}

// Corpus names the notes that an index on disk was built from, as Build was told.
func (x *Index) Corpus() string { return x.corpus }

// Ensure opens the index of a folder of notes and first builds it in dir where there is
// none, the notes or the program changed, or it is damaged. The findings are those of
// notes that could not be read into a new build. While another process builds, what there
// is of this program's making is opened though it be out of date.
func Ensure(ctx context.Context, dir string, notes fs.FS) (*Index, []casebook.Finding, error) {
	corpus, err := Fingerprint(notes)
	if err != nil {
		return nil, nil, err
	}
	return EnsureAs(ctx, dir, notes, corpus)
}

// EnsureAs is Ensure for notes that the caller can tell from others without
// reading them: those that come with the program change with it alone.
func EnsureAs(ctx context.Context, dir string, notes fs.FS, corpus string) (*Index, []casebook.Finding, error) {
	old, err := Open(dir)
	if err == nil && old.Corpus() == corpus {
		return old, nil, nil
	}
	b, findings := casebook.Load(notes, casebook.LoadOptions{})
	if err := Build(ctx, dir, b, corpus); err != nil {
		if old != nil && errors.Is(err, ErrBuilding) {
			return old, findings, nil
		}
		if old != nil {
			err = errors.Join(err, old.Close())
		}
		return nil, findings, err
	}
	if old != nil {
		if err := old.Close(); err != nil {
			return nil, findings, err
		}
	}
	x, err := Open(dir)
	return x, findings, err
}

// Fingerprint identifies the notes of a folder without reading them: by name, size and
// time of change; by content where the files have no time, as embedded ones.
func Fingerprint(notes fs.FS) (string, error) {
	h := sha256.New()
	err := walkNotes(notes, func(path string, info fs.FileInfo) error {
		if info == nil {
			// What can't be looked at now is told apart from what can.
			fmt.Fprintf(h, "%q unreadable\n", path)
			return nil
		}
		fmt.Fprintf(h, "%q %d %d\n", path, info.Size(), info.ModTime().UnixNano())
		if info.ModTime().IsZero() {
			f, err := notes.Open(path)
			if err != nil {
				return err
			}
			defer f.Close()
			_, err = io.Copy(h, f)
			return err
		}
		return nil
	})
	if err != nil {
		return "", err
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}
