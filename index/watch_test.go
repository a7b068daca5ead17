package index

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/casebook"
)

// patience is how long a test waits for what a watch should see in a second.
const patience = 20 * time.Second

// watched is a folder of notes under watch, and what was reported of it.
type watched struct {
	*Index
	t       *testing.T
	dir     string
	mu      sync.Mutex
	changes []Change
}

func watchFolder(t *testing.T, notes ...string) *watched {
	t.Helper()
	w := &watched{t: t, dir: t.TempDir()}
	for _, n := range notes {
		w.write(fileName(n), n)
	}
	x, findings, err := Watch(t.Context(), w.dir, WatchOptions{Every: 20 * time.Millisecond, Report: func(c Change) {
		w.mu.Lock()
		defer w.mu.Unlock()
		w.changes = append(w.changes, c)
	}})
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range findings {
		t.Error(f)
	}
	w.Index = x
	t.Cleanup(func() {
		if err := x.Close(); err != nil {
			t.Error(err)
		}
	})
	return w
}

func (w *watched) write(name, text string) {
	w.t.Helper()
	if err := os.WriteFile(filepath.Join(w.dir, name), []byte(text), 0o644); err != nil {
		w.t.Fatal(err)
	}
}

// waitFor waits until a search for words finds just these notes.
func (w *watched) waitFor(words string, want ...string) {
	w.t.Helper()
	var got []string
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		if got = ids(w.t, w.Index, Query{Words: words, Limit: 20}); slices.Equal(got, want) {
			return
		}
	}
	w.t.Fatalf("%s: found %v, want %v", words, got, want)
}

// reported waits for a change that ok accepts.
func (w *watched) reported(what string, ok func(Change) bool) Change {
	w.t.Helper()
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(5 * time.Millisecond) {
		w.mu.Lock()
		i := slices.IndexFunc(w.changes, ok)
		w.mu.Unlock()
		if i >= 0 {
			return w.changes[i]
		}
	}
	w.t.Fatalf("%s is not reported; reported are %+v", what, w.changes)
	return Change{}
}

func TestWatch(t *testing.T) {
	w := watchFolder(t, note("2025-001", "Pancake", "Words."), note("2025-002", "Setter", "Words."))
	w.waitFor("pancake", "2025-001")

	w.write("2025-001.md", note("2025-001", "Waffle", "Words."))
	w.waitFor("waffle", "2025-001")
	w.waitFor("pancake")

	w.write("2025-003.md", note("2025-003", "Pancake", "Words."))
	w.waitFor("pancake", "2025-003")
	c := w.reported("the new note", func(c Change) bool { return slices.Equal(c.Updated, []string{"2025-003"}) })
	if c.Notes != 3 || c.Err != nil || len(c.Findings) != 0 {
		t.Errorf("reported %+v", c)
	}

	if err := os.Remove(filepath.Join(w.dir, "2025-003.md")); err != nil {
		t.Fatal(err)
	}
	w.waitFor("pancake")
	w.reported("the note that is gone", func(c Change) bool { return slices.Equal(c.Removed, []string{"2025-003"}) })

	// A note that is superseded by another is indexed again with it.
	w.write("2025-001.md", note("2025-001", "Waffle", "Words.", "status: superseded"))
	w.write("2025-004.md", note("2025-004", "Later", "Nothing.", "supersedes: [2025-001]"))
	w.waitFor("waffle", "2025-004")
}

func TestWatchBrokenNote(t *testing.T) {
	w := watchFolder(t, note("2025-001", "Pancake", "Words."), note("2025-002", "Setter", "Words."))
	w.write("2025-001.md", "---\nid: [\n---\n")
	c := w.reported("the broken note", func(c Change) bool { return len(c.Findings) > 0 })
	if c.Findings[0].Path != "2025-001.md" || c.Err != nil {
		t.Errorf("reported %+v", c)
	}
	w.waitFor("pancake", "2025-001") // as it was last read
	w.write("2025-005.md", strings.Repeat("\x00", 100))
	w.reported("the binary file", func(c Change) bool { return len(c.Findings) == 2 })
	w.write("2025-002.md", note("2025-002", "Libero", "Words."))
	w.waitFor("libero", "2025-002") // the others go on
	w.write("2025-001.md", note("2025-001", "Waffle", "Words."))
	w.waitFor("waffle", "2025-001")
	w.reported("the mended note", func(c Change) bool { return len(c.Findings) == 1 && slices.Equal(c.Updated, []string{"2025-001"}) })

	// One id in two files: the first by path is kept, and the other reported.
	w.write("2025-001-again.md", note("2025-001", "Crepe", "Words."))
	w.reported("the doubled id", func(c Change) bool {
		return slices.ContainsFunc(c.Findings, func(f casebook.Finding) bool { return strings.Contains(f.What, "2025-001") })
	})
}

func TestWatchVanished(t *testing.T) {
	w := watchFolder(t, note("2025-001", "Pancake", "Words."))
	away := w.dir + "-away"
	if err := os.Rename(w.dir, away); err != nil {
		t.Fatal(err)
	}
	w.reported("the folder that is gone", func(c Change) bool { return c.Err != nil && strings.Contains(c.Err.Error(), w.dir) })
	w.waitFor("pancake", "2025-001")
	// An empty folder in its place, such as a mount point without its disk.
	if err := os.Mkdir(w.dir, 0o755); err != nil {
		t.Fatal(err)
	}
	w.reported("the empty folder", func(c Change) bool { return errors.Is(c.Err, errEmptied) })
	w.waitFor("pancake", "2025-001")
	if err := os.Remove(w.dir); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(away, w.dir); err != nil {
		t.Fatal(err)
	}
	w.write("2025-001.md", note("2025-001", "Waffle", "Words."))
	w.waitFor("waffle", "2025-001")
	if _, _, err := Watch(t.Context(), away, WatchOptions{}); err == nil {
		t.Error("watching a folder that is not there gives no error")
	}
}

// Many changes build the index anew and swap it in, with searches under way.
func TestWatchSwap(t *testing.T) {
	w := watchFolder(t, note("2025-001", "Pancake", "Words."))
	stop := make(chan struct{})
	var searchers sync.WaitGroup
	for range 2 {
		searchers.Go(func() {
			for {
				select {
				case <-stop:
					return
				default:
					if hits, err := w.Search(t.Context(), Query{Words: "pancake"}); err != nil || len(hits) == 0 {
						t.Errorf("during a swap: %v, %v", hits, err)
						return
					}
				}
			}
		})
	}
	for i := range maxNotesInPlace + 1 {
		n := note(fmt.Sprintf("2025-%03d", i+2), "Filler", "Words.")
		w.write(fileName(n), n)
	}
	last := fmt.Sprintf("2025-%03d", maxNotesInPlace+3)
	w.write(last+".md", note(last, "Waffle", "Words."))
	w.waitFor("waffle", last)
	for i := range maxInPlace + 3 {
		w.write("2025-001.md", note("2025-001", fmt.Sprintf("Pancake number%d", i), "Words."))
		w.waitFor(fmt.Sprintf("number%d", i), "2025-001")
	}
	close(stop)
	searchers.Wait()
}
