package index

import (
	"context"
	"errors"
	"fmt"
	"time"

	"github.com/blevesearch/bleve/v2"

	"example.org/netpost/casebook"
)

// WatchOptions say how a folder is watched. The zero value is the default.
type WatchOptions struct {
	// Every is how often the folder is looked at. A change is taken in when two looks
	// agree, so that half a checkout is not. Zero means 300 ms; a large folder is looked
	// at less often, so that looking never takes more than a tenth of the time.
	Every time.Duration
	// Report is told of every change taken in and of all that stands in the way of one.
	// It is called from one goroutine; nil tells nobody.
	Report func(Change)
}

// Change is what a watch has to tell.
type Change struct {
	Notes    int                // how many the index now holds
	Updated  []string           // ids of the notes that were added or changed, sorted
	Removed  []string           // ids of the notes that are gone, sorted
	Findings []casebook.Finding // all that is wrong in the folder now
	// Err is set when the change could not be taken in; what the index held, it holds.
	Err error
}

const (
	defaultEvery = 300 * time.Millisecond
	// After so many changes in place, or when so many notes change at once, the index is
	// built anew and swapped in: each change in place adds a segment that every search
	// visits and nothing merges.
	maxInPlace      = 40
	maxNotesInPlace = 100
)

// errEmptied keeps the last notes when a folder is suddenly empty, as a mount point is when
// its disk is gone.
var errEmptied = errors.New("the folder holds no notes any more; the last ones are kept")

// Watch builds an index of a folder in memory and keeps it in step with the folder until
// ctx ends or the index is closed. A note that can't be read any more stays as it was last
// read, and is among the findings. A folder that vanishes is reported once, and watched
// for until it is back. The findings are those of the first reading.
func Watch(ctx context.Context, dir string, o WatchOptions) (*Index, []casebook.Finding, error) {
	if o.Every <= 0 {
		o.Every = defaultEvery
	}
	if o.Report == nil {
		o.Report = func(Change) {}
	}
	w := &watch{options: o, folder: newFolder(dir)}
	now, err := w.folder.look()
	if err != nil {
		return nil, nil, fmt.Errorf("%s: the notes can't be watched: %w", dir, err)
	}
	if _, err := w.folder.update(now); err != nil {
		return nil, nil, fmt.Errorf("%s: the notes can't be watched: %w", dir, err)
	}
	if w.live, err = Memory(ctx, w.folder.book); err != nil {
		return nil, nil, err
	}
	ctx, cancel := context.WithCancel(ctx)
	w.alias = bleve.NewIndexAlias(w.live.notes)
	done := make(chan struct{})
	go func() {
		defer close(done)
		w.run(ctx)
	}()
	x := &Index{notes: w.alias, lexicon: w.live.lexicon, stop: func() error {
		cancel()
		<-done
		return w.live.Close()
	}}
	return x, w.folder.findings(), nil
}

// watch is one watched folder and the index made of it.
type watch struct {
	options WatchOptions
	folder  *folder
	alias   bleve.IndexAlias
	live    *Index // what the alias leads to
	inPlace int    // changes in place since live was built
}

// run looks at the folder until ctx ends.
func (w *watch) run(ctx context.Context) {
	var seen look   // what was seen last
	var told string // the trouble reported last, so that it is reported once
	wait := w.options.Every
	trouble := func(err error) {
		if err.Error() == told {
			return
		}
		told = err.Error()
		n, _ := w.live.Len()
		w.options.Report(Change{Notes: n, Findings: w.folder.findings(), Err: fmt.Errorf("%s: %w", w.folder.dir, err)})
	}
	for {
		select {
		case <-ctx.Done():
			return
		case <-time.After(wait):
		}
		began := time.Now()
		now, err := w.folder.look()
		wait = max(w.options.Every, 9*time.Since(began))
		if err != nil {
			seen = nil
			trouble(fmt.Errorf("the folder can't be read; the last notes are kept: %w", err))
			continue
		}
		settled := now.equal(seen)
		seen = now
		if !settled || now.equal(w.folder.taken) {
			continue
		}
		change, err := w.take(ctx, now)
		switch {
		case ctx.Err() != nil:
			return
		case err != nil:
			trouble(err) // and tried again at the next look
		default:
			told = ""
			w.options.Report(change)
		}
	}
}

// take brings the index in step with what was seen.
func (w *watch) take(ctx context.Context, now look) (change Change, err error) {
	defer rescue(&err)
	if now.empty() && !w.folder.taken.empty() {
		return Change{}, errEmptied
	}
	before := w.folder.clone()
	change, err = w.folder.update(now)
	if err == nil {
		err = w.apply(ctx, change)
	}
	if err != nil {
		w.folder = before // the difference is found again at the next look
		return Change{}, err
	}
	change.Notes, err = w.live.Len()
	return change, err
}

// apply changes the index in place, or builds it anew and swaps it in.
func (w *watch) apply(ctx context.Context, c Change) error {
	n := len(c.Updated) + len(c.Removed)
	if n == 0 {
		return nil
	}
	if n <= maxNotesInPlace && w.inPlace < maxInPlace {
		w.inPlace++
		return w.live.change(w.folder.book, c)
	}
	next, err := Memory(ctx, w.folder.book)
	if err != nil {
		return err
	}
	// The alias waits for the searches under way, so that nothing reads what is closed.
	w.alias.Swap([]bleve.Index{next.notes}, []bleve.Index{w.live.notes})
	old := w.live
	w.live, w.inPlace = next, 0
	return old.Close()
}

// change puts notes of a book into the index, and takes others out, in one step.
func (x *Index) change(b *casebook.Book, c Change) error {
	m := maker{x.lexicon, b}
	after := successors(b.Notes())
	batch := x.notes.NewBatch()
	for _, id := range c.Updated {
		d, err := m.document(b.Note(id), after[id])
		if err != nil {
			return err
		}
		if err := batch.Index(id, d); err != nil {
			return err
		}
	}
	for _, id := range c.Removed {
		batch.Delete(id)
	}
	return x.notes.Batch(batch)
}
