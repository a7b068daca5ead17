package index

import (
	"context"
	"encoding/json"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"example.org/netpost/casebook"
)

func build(t testing.TB, dir string, notes fstest.MapFS, corpus string) {
	t.Helper()
	if err := Build(t.Context(), dir, load(t, notes), corpus); err != nil {
		t.Fatal(err)
	}
}

func openIt(t testing.TB, dir string) *Index {
	t.Helper()
	x, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { x.Close() })
	return x
}

// generations lists the generations in a folder.
func generations(t *testing.T, dir string) []string {
	t.Helper()
	all, err := filepath.Glob(filepath.Join(dir, genPrefix+"*"))
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestBuild(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "index")
	if _, err := Open(dir); !errors.Is(err, ErrAbsent) {
		t.Errorf("opening nothing: %v, want ErrAbsent", err)
	}
	build(t, dir, folderOf(note("2025-001", "Pancake", "Words."), note("2025-002", "Setter", "Words.")), "first")
	x := openIt(t, dir)
	if got := ids(t, x, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) || x.Corpus() != "first" {
		t.Errorf("%v of %q", got, x.Corpus())
	}
	// A new build is there for those who open it; who has the old one open goes on with it.
	build(t, dir, folderOf(note("2025-003", "Pancake", "Words.")), "second")
	if got := ids(t, x, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) {
		t.Errorf("the old generation, still open, finds %v", got)
	}
	y := openIt(t, dir)
	if got := ids(t, y, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-003"}) || y.Corpus() != "second" {
		t.Errorf("the new generation finds %v of %q", got, y.Corpus())
	}
	if got := generations(t, dir); len(got) != 1 {
		t.Errorf("%d generations are left: %v", len(got), got)
	}
	// Memory and disk find the same in the same order with the same reasons.
	notes := folderOf(note("2025-001", "Pancake", "A flat hand."), note("2025-002", "Flat pancake", "Words."), note("2025-003", "Hand", "Pancake."))
	build(t, dir, notes, "third")
	m, err := Memory(t.Context(), load(t, notes))
	if err != nil {
		t.Fatal(err)
	}
	defer m.Close()
	q := Query{Words: "pancake with a flat hand"}
	if disk, mem := ids(t, openIt(t, dir), q), ids(t, m, q); !slices.Equal(disk, mem) || len(disk) != 3 {
		t.Errorf("on disk %v, in memory %v", disk, mem)
	}
}

func TestBuildTwice(t *testing.T) {
	dir := t.TempDir()
	build(t, dir, folderOf(note("2025-001", "Pancake", "Words.")), "first")
	release, err := takeLock(dir)
	if err != nil {
		t.Fatal(err)
	}
	err = Build(t.Context(), dir, load(t, folderOf(note("2025-002", "Pancake", "Words."))), "second")
	if !errors.Is(err, ErrBuilding) || !strings.Contains(err.Error(), dir) {
		t.Errorf("a second build: %v, want ErrBuilding and the folder", err)
	}
	// Meanwhile what is there is read, and served though the notes are others by now.
	x, _, err := Ensure(t.Context(), dir, folderOf(note("2025-002", "Pancake", "Words.")))
	if err != nil {
		t.Fatal(err)
	}
	if got := ids(t, x, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) {
		t.Errorf("while another builds: %v", got)
	}
	x.Close()
	release()
	build(t, dir, folderOf(note("2025-002", "Pancake", "Words.")), "second")
}

func TestBuildStopped(t *testing.T) {
	dir := t.TempDir()
	build(t, dir, folderOf(note("2025-001", "Pancake", "Words.")), "first")
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if err := Build(ctx, dir, load(t, folderOf(note("2025-002", "Pancake", "Words."))), "second"); !errors.Is(err, context.Canceled) {
		t.Errorf("a build that is stopped: %v", err)
	}
	if got := generations(t, dir); len(got) != 1 {
		t.Errorf("it leaves %v", got)
	}
	// A build that was killed leaves a generation that nothing points to and a lock that
	// nobody holds; neither is in the way.
	if err := os.MkdirAll(filepath.Join(dir, genPrefix+"killed", notesDir), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, lockFile), []byte("no lock at all"), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := ids(t, openIt(t, dir), Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) {
		t.Errorf("after it: %v", got)
	}
	build(t, dir, folderOf(note("2025-003", "Pancake", "Words.")), "third")
	if got := generations(t, dir); len(got) != 1 {
		t.Errorf("the next build leaves %v", got)
	}
}

// Readers come and go while builds switch generations under them.
func TestReadersBesideBuilds(t *testing.T) {
	dir := t.TempDir()
	notes := folderOf(note("2025-001", "Pancake", "Words."))
	build(t, dir, notes, "0")
	stop := make(chan struct{})
	var readers sync.WaitGroup
	for range 3 {
		readers.Go(func() {
			for {
				select {
				case <-stop:
					return
				default:
				}
				x, err := Open(dir)
				if err != nil {
					t.Errorf("opening beside a build: %v", err)
					return
				}
				if hits, err := x.Search(context.Background(), Query{Words: "pancake"}); err != nil || len(hits) != 1 {
					t.Errorf("searching beside a build: %v, %v", hits, err)
				}
				x.Close()
			}
		})
	}
	for range 8 {
		build(t, dir, notes, "again")
	}
	close(stop)
	readers.Wait()
}

func TestDamaged(t *testing.T) {
	notes := folderOf(note("2025-001", "Pancake", "Words."))
	for _, test := range []struct {
		what   string
		damage func(t *testing.T, dir, gen string)
		want   error
	}{
		{"a segment cut short", func(t *testing.T, dir, gen string) {
			segments, _ := filepath.Glob(filepath.Join(gen, notesDir, "store", "*.zap"))
			if len(segments) != 1 {
				t.Fatalf("segments: %v, want one", segments)
			}
			if err := os.Truncate(segments[0], 10); err != nil {
				t.Fatal(err)
			}
		}, ErrCorrupt},
		{"a segment gone", func(t *testing.T, dir, gen string) {
			segments, _ := filepath.Glob(filepath.Join(gen, notesDir, "store", "*.zap"))
			if err := os.Remove(segments[0]); err != nil {
				t.Fatal(err)
			}
		}, ErrCorrupt},
		{"a segment of other bytes", func(t *testing.T, dir, gen string) {
			segments, _ := filepath.Glob(filepath.Join(gen, notesDir, "store", "*.zap"))
			info, err := os.Stat(segments[0])
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(segments[0], make([]byte, info.Size()), 0o644); err != nil {
				t.Fatal(err)
			}
		}, ErrCorrupt},
		{"no stamp", func(t *testing.T, dir, gen string) { os.Remove(filepath.Join(gen, stampFile)) }, ErrCorrupt},
		{"half a stamp", func(t *testing.T, dir, gen string) { os.Truncate(filepath.Join(gen, stampFile), 20) }, ErrCorrupt},
		{"no generation", func(t *testing.T, dir, gen string) { os.RemoveAll(gen) }, ErrCorrupt},
		{"a pointer out of the folder", func(t *testing.T, dir, gen string) {
			os.WriteFile(filepath.Join(dir, pointerFile), []byte("../elsewhere\n"), 0o644)
		}, ErrCorrupt},
		{"an empty pointer", func(t *testing.T, dir, gen string) { os.Truncate(filepath.Join(dir, pointerFile), 0) }, ErrCorrupt},
		{"no pointer", func(t *testing.T, dir, gen string) { os.Remove(filepath.Join(dir, pointerFile)) }, ErrAbsent},
		{"another program", func(t *testing.T, dir, gen string) {
			s, err := readStamp(gen)
			if err != nil {
				t.Fatal(err)
			}
			s.Program = "of last year"
			b, _ := json.Marshal(s)
			os.WriteFile(filepath.Join(gen, stampFile), b, 0o644)
		}, ErrStale},
	} {
		t.Run(test.what, func(t *testing.T) {
			dir := t.TempDir()
			build(t, dir, notes, "first")
			test.damage(t, dir, generations(t, dir)[0])
			if x, err := Open(dir); !errors.Is(err, test.want) {
				t.Errorf("opening gives %v, %v; want %v", x, err, test.want)
			}
			x, _, err := Ensure(t.Context(), dir, notes)
			if err != nil {
				t.Fatalf("it is not built again: %v", err)
			}
			defer x.Close()
			if got := ids(t, x, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) {
				t.Errorf("built again it finds %v", got)
			}
		})
	}
}

func TestEnsure(t *testing.T) {
	dir, notes := filepath.Join(t.TempDir(), "index"), t.TempDir()
	write := func(n string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(notes, fileName(n)), []byte(n), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	ensure := func() []casebook.Finding {
		t.Helper()
		x, findings, err := Ensure(t.Context(), dir, os.DirFS(notes))
		if err != nil {
			t.Fatal(err)
		}
		defer x.Close()
		if got := ids(t, x, Query{Words: "pancake"}); !slices.Equal(got, []string{"2025-001"}) {
			t.Errorf("it finds %v", got)
		}
		return findings
	}
	write(note("2025-001", "Pancake", "Words."))
	ensure()
	first := generations(t, dir)
	ensure()
	if again := generations(t, dir); !slices.Equal(first, again) {
		t.Errorf("built again though nothing changed: %v, then %v", first, again)
	}
	if err := os.WriteFile(filepath.Join(notes, "2025-009.md"), []byte("no note"), 0o644); err != nil {
		t.Fatal(err)
	}
	if findings := ensure(); len(findings) != 1 || findings[0].Path != "2025-009.md" {
		t.Errorf("findings: %v", findings)
	}
	if next := generations(t, dir); slices.Equal(first, next) {
		t.Error("not built again though a note was added")
	}
	if _, _, err := Ensure(t.Context(), dir, os.DirFS(filepath.Join(notes, "gone"))); err == nil {
		t.Error("a folder that is not there gives no error")
	}
}

func TestFingerprint(t *testing.T) {
	print := func(fsys fstest.MapFS) string {
		t.Helper()
		p, err := Fingerprint(fsys)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	one, other := note("2025-001", "Pancake", "Words."), note("2025-001", "Pancake", "Sword.")
	base := print(folderOf(one))
	if base != print(folderOf(one)) {
		t.Error("the same notes differ")
	}
	// Embedded files have no time: their content tells them apart.
	if base == print(folderOf(other)) {
		t.Error("another content of the same size is not told apart")
	}
	more := folderOf(one)
	more[".git/x.md"] = &fstest.MapFile{Data: []byte("x")}
	more["picture.png"] = &fstest.MapFile{Data: []byte("x")}
	if base != print(more) {
		t.Error("what is no note counts")
	}
	more[casebook.BookFile] = &fstest.MapFile{Data: []byte("name: X")}
	if base == print(more) {
		t.Error("the association's own book does not count")
	}
}
