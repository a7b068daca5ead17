package command

import (
	"context"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/metrics"
)

// follow has a library follow a folder until the test ends.
func follow(t *testing.T, dir, saved string) (*library, *buffer) {
	t.Helper()
	log := &buffer{}
	l := &library{id: "riverside", dir: dir, saved: saved, log: slog.New(slog.NewTextHandler(log, nil)), metrics: metrics.New()}
	ctx, cancel := context.WithCancel(context.Background())
	ready := make(chan struct{})
	var running sync.WaitGroup
	running.Go(func() { l.follow(ctx, sync.OnceFunc(func() { close(ready) })) })
	t.Cleanup(func() {
		cancel()
		running.Wait()
	})
	<-ready
	return l, log
}

// titles are those of the notes that words find.
func titles(t *testing.T, l *library, words string) string {
	t.Helper()
	found, err := l.Notes(t.Context(), bot.Question{Words: words, Limit: 5})
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for _, n := range found {
		if n.Example {
			t.Errorf("%s is taken for an example", n.ID)
		}
		out = append(out, n.Title)
	}
	return strings.Join(out, "; ")
}

// A note edited while serving is found anew, one that is broken stays as it
// was, and a folder that vanishes takes nothing down.
func TestLibraryFollows(t *testing.T) {
	dir := casebookOf(t)
	l, log := follow(t, dir, filepath.Join(t.TempDir(), "index"))
	if got := titles(t, l, "setter tape"); !strings.Contains(got, "A tip over the tape") {
		t.Fatalf("found %q", got)
	}
	writeNote(t, dir, "Dump from behind the ten-foot stripe")
	until(t, "the edited note", func() bool { return strings.Contains(titles(t, l, "dump stripe"), "Dump from behind") })

	if err := os.WriteFile(filepath.Join(dir, "2026-001.md"), []byte("---\nid: [\n---\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	until(t, "the broken note to be told", func() bool { return strings.Contains(log.String(), "a case note is not right") })
	if got := titles(t, l, "dump stripe"); !strings.Contains(got, "Dump from behind") {
		t.Errorf("a broken note took the good one down: %q", got)
	}
	if s := l.state(); !strings.HasPrefix(s, "1 note, 1 finding") {
		t.Errorf("state: %s", s)
	}

	if err := os.RemoveAll(dir); err != nil {
		t.Fatal(err)
	}
	until(t, "the folder to be missed", func() bool { return strings.Contains(log.String(), "a change of the case notes was not taken in") })
	if got := titles(t, l, "dump stripe"); !strings.Contains(got, "Dump from behind") {
		t.Errorf("the notes went with the folder: %q", got)
	}
}

// A folder that is not there at the start is waited for.
func TestLibraryWaits(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "notes")
	l, log := follow(t, dir, "")
	if _, err := l.Notes(t.Context(), bot.Question{Words: "x"}); err != errNoNotes {
		t.Errorf("without a folder: %v", err)
	}
	if !strings.Contains(log.String(), "the case notes can't be read") || l.state() != "the folder can't be read" {
		t.Errorf("not told: %s\n%s", l.state(), log.String())
	}
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	writeNote(t, dir, "A tip over the tape")
	until(t, "the folder to be read", func() bool {
		_, err := l.Notes(t.Context(), bot.Question{Words: "x"})
		return err == nil
	})
}

// What an earlier run left on disk serves at once.
func TestLibraryOpens(t *testing.T) {
	dir, saved := casebookOf(t), filepath.Join(t.TempDir(), "index")
	first, _ := follow(t, dir, saved)
	until(t, "the index on disk", func() bool { _, err := os.Stat(filepath.Join(saved, "current")); return err == nil })
	second := &library{id: first.id, dir: dir, saved: saved, log: first.log, metrics: first.metrics}
	until(t, "the index to open", second.open)
	defer second.put(nil)
	if got := titles(t, second, "tip tape"); !strings.Contains(got, "A tip over the tape") {
		t.Errorf("found %q", got)
	}
}

// The adoptions of the association's own book are followed, and a slip of the
// pen in it changes no ruling.
func TestLibraryAdoptions(t *testing.T) {
	dir := casebookOf(t)
	book := filepath.Join(dir, "book.yaml")
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(book, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	const good = "name: Riverside\nadoptions:\n  - {param: timeouts.length, code: scholastic, value: 75, reason: the hall closes early}\n"
	write(good)
	l, log := follow(t, dir, "")
	if n := len(l.adopted()); n != 1 {
		t.Fatalf("%d adoptions\n%s", n, log.String())
	}
	write(good + "adopt: x\n")
	until(t, "the slip to be told", func() bool { return strings.Contains(log.String(), "adopt") })
	if n := len(l.adopted()); n != 1 {
		t.Errorf("%d adoptions after a slip", n)
	}
	write(strings.Replace(good, "riverside", "Riverside", 1) + "  - {param: timeouts.length, code: club, value: 45, reason: the same}\n")
	until(t, "the new adoption", func() bool { return len(l.adopted()) == 2 })
	if err := os.Remove(book); err != nil {
		t.Fatal(err)
	}
	until(t, "the book to be gone", func() bool { return len(l.adopted()) == 0 })
}
