package command

import (
	"context"
	"errors"
	"io/fs"
	"log/slog"
	"os"
	"sync"
	"sync/atomic"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/metrics"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
	"example.org/netpost/index"
)

// library is an association's notes while the program serves. It follows the
// folder: a note changed there is found anew within two seconds. What is wrong
// in the folder costs what is wrong and no more; when the folder is not there
// the library waits for it. It is the conversation's bot.Searcher.
type library struct {
	id      string      // of the association
	season  code.Season // that it plays in; zero: the newest
	dir     string      // the folder of its notes
	saved   string      // where its index is kept on disk
	log     *slog.Logger
	metrics *metrics.Metrics

	generation atomic.Int64 // of the notes: another one when they have changed

	mu       sync.RWMutex // guards what follows; held while searching, so that nothing is closed under a search
	shelf    *notes       // nil: the folder was not there yet
	findings int
}

// errNoNotes is what a search says before there is anything to search.
var errNoNotes = errors.New("the folder of the case notes could not be read yet")

// Notes is part of bot.Searcher.
func (l *library) Notes(ctx context.Context, q bot.Question) ([]bot.Note, error) {
	l.mu.RLock()
	defer l.mu.RUnlock()
	if l.shelf == nil {
		return nil, errNoNotes
	}
	return l.shelf.Notes(ctx, q)
}

// adopted are the association's adoptions as they stand.
func (l *library) adopted() []code.Overlay {
	l.mu.RLock()
	defer l.mu.RUnlock()
	if l.shelf == nil {
		return nil
	}
	return l.shelf.overlays
}

// put puts other notes in the place of those that there are.
func (l *library) put(n *notes) {
	l.mu.Lock()
	old := l.shelf
	l.shelf = n
	l.mu.Unlock()
	l.generation.Add(1)
	// No search is left on it. Closing waits for a change being taken in, which
	// itself wants the lock.
	if old != nil {
		old.close()
	}
}

// open takes the index that an earlier run left, so that there are notes at
// once; what changed since is found when follow has read the folder. It
// reports whether there is one.
func (l *library) open() bool {
	if l.saved == "" {
		return false
	}
	x, err := index.Open(l.saved)
	if err != nil {
		return false
	}
	l.put(&notes{index: x, overlays: l.readAdoptions()})
	return true
}

// follow reads the folder and keeps in step with it until ctx ends. It calls
// ready once the first attempt is over, however that went.
func (l *library) follow(ctx context.Context, ready func()) {
	told := ""
	for wait := time.Second; ctx.Err() == nil; wait = min(2*wait, 30*time.Second) {
		x, findings, err := index.Watch(ctx, l.dir, index.WatchOptions{Report: l.changed})
		if err == nil {
			l.put(&notes{index: x, overlays: l.readAdoptions()})
			n, _ := x.Len()
			l.told(n, findings)
			l.log.Info("the case notes are there", "notes", n, "findings", len(findings))
			ready()
			l.save(ctx)
			break
		}
		if ctx.Err() == nil && err.Error() != told {
			told = err.Error()
			l.log.Error("the case notes can't be read; trying again until they can", "cause", err)
		}
		ready()
		select {
		case <-ctx.Done():
		case <-time.After(wait):
		}
	}
	<-ctx.Done()
	l.put(nil)
}

// save keeps the index on disk in step, for the next start and for the command
// line. The one in memory serves whatever comes of it.
func (l *library) save(ctx context.Context) {
	if l.saved == "" {
		return
	}
	root, err := os.OpenRoot(l.dir)
	if err == nil {
		defer root.Close()
		var x *index.Index
		if x, _, err = index.Ensure(ctx, l.saved, root.FS()); err == nil {
			err = x.Close()
		}
	}
	if err != nil && ctx.Err() == nil {
		l.log.Warn("the index was not kept on disk; the one in memory serves", "cause", err)
	}
}

// changed takes in what a change of the folder did.
func (l *library) changed(c index.Change) {
	l.told(c.Notes, c.Findings)
	if c.Err != nil {
		l.log.Error("a change of the case notes was not taken in", "cause", c.Err)
		return
	}
	adopted := l.readAdoptions()
	l.mu.Lock()
	if l.shelf != nil {
		l.shelf.overlays = adopted
	}
	l.mu.Unlock()
	l.generation.Add(1)
	l.log.Info("the case notes changed", "notes", c.Notes, "updated", len(c.Updated), "removed", len(c.Removed), "findings", len(c.Findings))
}

// told counts, and logs the findings, which the check of the casebook shows
// with their lines.
func (l *library) told(n int, findings []casebook.Finding) {
	l.metrics.Notes(l.id, n, len(findings))
	const most = 5
	for i, f := range findings {
		if i == most {
			l.log.Warn("and more is wrong in the case notes; for all: netpost check", "more", len(findings)-most)
			break
		}
		l.log.Warn("a case note is not right", "finding", f.String())
	}
	l.mu.Lock()
	l.findings = len(findings)
	l.mu.Unlock()
}

// readAdoptions are those of the association's own book in the folder. A book
// that can't be read any more leaves those that there were: a ruling must not
// change by a slip of the pen.
func (l *library) readAdoptions() []code.Overlay {
	root, err := os.OpenRoot(l.dir)
	if err != nil {
		return l.adopted()
	}
	defer root.Close()
	text, err := fs.ReadFile(root.FS(), casebook.BookFile)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	a, _ := casebook.ParseAssociation(casebook.BookFile, string(text))
	if err != nil || a == nil {
		return l.adopted()
	}
	return a.Overlays(l.season)
}

// state says in words how the notes are.
func (l *library) state() string {
	l.mu.RLock()
	defer l.mu.RUnlock()
	if l.shelf == nil {
		return "the folder can't be read"
	}
	n, err := l.shelf.index.Len()
	if err != nil {
		return "they can't be searched"
	}
	return count(n, "note") + ", " + count(l.findings, "finding")
}
