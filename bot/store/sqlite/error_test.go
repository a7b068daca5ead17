package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// wants fails the test unless an error has a code, says what is wrong with the
// file, and says what to do.
func wants(t *testing.T, err error, code store.Code, path, mend string) {
	t.Helper()
	e, ok := errors.AsType[*store.Error](err)
	if !ok {
		t.Fatalf("error %v, want one of code %q", err, code)
	}
	if e.Code != code || !strings.Contains(e.What, path) || !strings.Contains(e.Mend, mend) {
		t.Errorf("error of code %q: %s (%v)\nwant code %q, about %s, with %q", e.Code, e, e.Cause, code, path, mend)
	}
	if !code.Operational() {
		t.Errorf("code %q is not for who runs the program", code)
	}
}

func ask(s store.Store, id, text string) error {
	return s.Write(context.Background(), riverside, func(w store.Writer) error {
		return w.Ask(store.Question{ID: id, Text: text, Asked: noon})
	})
}

func TestFull(t *testing.T) {
	s := open(t, t.TempDir()).(*Store)
	defer s.Close()
	if err := ask(s, "q0", "kept before"); err != nil {
		t.Fatal(err)
	}
	c := <-s.writer // a disk with room for a few pages more
	var pages int
	if err := c.QueryRowContext(t.Context(), "PRAGMA page_count").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if err := c.QueryRowContext(t.Context(), fmt.Sprintf("PRAGMA max_page_count = %d", pages+4)).Scan(&pages); err != nil {
		t.Fatal(err)
	}
	s.writer <- c
	err := ask(s, "q1", strings.Repeat("long ", 10000))
	wants(t, err, store.Full, s.path, "free some space")
	// An error that the caller swallows must not let half a change through.
	err = s.Write(t.Context(), riverside, func(w store.Writer) error {
		w.Ask(store.Question{ID: "q2", Asked: noon})
		w.Ask(store.Question{ID: "q3", Text: strings.Repeat("long ", 10000), Asked: noon})
		return nil
	})
	wants(t, err, store.Full, s.path, "free some space")

	c = <-s.writer // space is freed
	if err := c.QueryRowContext(t.Context(), "PRAGMA max_page_count = 1000000").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	s.writer <- c
	if err := ask(s, "q1", strings.Repeat("long ", 10000)); err != nil {
		t.Errorf("after space was freed: %v", err)
	}
	err = s.Read(t.Context(), riverside, func(r store.Reader) error {
		qs, err := r.Questions(store.Span{})
		if len(qs) != 2 || qs[0].ID != "q0" || qs[1].ID != "q1" {
			t.Errorf("questions kept: %v", qs)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}

func TestLocked(t *testing.T) {
	path := filepath.Join(t.TempDir(), "netpost.db")
	s, err := Open(t.Context(), path, Options{Busy: 20 * time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	other, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	c, err := other.Conn(t.Context())
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	if _, err := c.ExecContext(t.Context(), "BEGIN IMMEDIATE"); err != nil {
		t.Fatal(err)
	}
	wants(t, ask(s, "q1", ""), store.Locked, path, "other program")
	if err := s.Read(t.Context(), riverside, func(r store.Reader) error { _, err := r.Posts(); return err }); err != nil {
		t.Errorf("reading beside another writer: %v", err)
	}
	if _, err := c.ExecContext(t.Context(), "ROLLBACK"); err != nil {
		t.Fatal(err)
	}
	if err := ask(s, "q1", ""); err != nil {
		t.Errorf("after the lock was given back: %v", err)
	}
}

func TestCorrupt(t *testing.T) {
	dir := t.TempDir()
	noise := filepath.Join(dir, "noise.db")
	if err := os.WriteFile(noise, []byte(strings.Repeat("this is not a store\n", 1000)), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := Open(t.Context(), noise, Options{})
	wants(t, err, store.Corrupt, noise, "backup")

	s := open(t, dir).(*Store)
	for i := range 200 {
		if err := ask(s, fmt.Sprint("q", i), strings.Repeat("x", 500)); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(s.path)
	if err != nil {
		t.Fatal(err)
	}
	for i := len(text) / 3; i < len(text); i++ { // the head is whole
		text[i] = 0xa5
	}
	if err := os.WriteFile(s.path, text, 0o600); err != nil {
		t.Fatal(err)
	}
	damaged, err := Open(t.Context(), s.path, Options{})
	if err == nil {
		defer damaged.Close()
		err = damaged.Read(t.Context(), riverside, func(r store.Reader) error { _, err := r.Questions(store.Span{}); return err })
		wants(t, damaged.Check(t.Context()), store.Corrupt, s.path, "backup")
	}
	wants(t, err, store.Corrupt, s.path, "backup")
}

// A file that is another program's, or a later version's, is left as it is.
func TestForeign(t *testing.T) {
	for _, test := range []struct {
		sql  string
		code store.Code
		mend string
	}{
		{"CREATE TABLE theirs (x)", store.Corrupt, "another file"},
		{"PRAGMA application_id = 17", store.Corrupt, "another file"},
		{fmt.Sprintf("PRAGMA application_id = %d; PRAGMA user_version = 99", application), store.Newer, "newer program"},
	} {
		path := filepath.Join(t.TempDir(), "theirs.db")
		db, err := sql.Open("sqlite", path)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := db.ExecContext(t.Context(), test.sql); err != nil {
			t.Fatal(err)
		}
		if err := db.Close(); err != nil {
			t.Fatal(err)
		}
		before, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		_, err = Open(t.Context(), path, Options{})
		wants(t, err, test.code, path, test.mend)
		after, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if string(before) != string(after) {
			t.Errorf("%s: the file was changed", test.sql)
		}
	}
}

func TestPaths(t *testing.T) {
	dir := t.TempDir()
	if _, err := Open(t.Context(), "", Options{}); store.CodeOf(err) != store.Invalid {
		t.Errorf("no path: %v", err)
	}
	_, err := Open(t.Context(), dir, Options{})
	wants(t, err, store.Missing, dir, "name a file")

	file := filepath.Join(dir, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	_, err = Open(t.Context(), filepath.Join(file, "netpost.db"), Options{})
	wants(t, err, store.Missing, file, "is a folder")

	// Names that mean something to a shell, a URL or SQLite are but names.
	for _, name := range []string{"a b", "50%20", "who?mode=ro", "#1", "file:x", ":memory:", "é"} {
		path := filepath.Join(dir, "made", name)
		s, err := Open(t.Context(), path, Options{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if err := ask(s, "q1", ""); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		s.Close()
		info, err := os.Stat(path)
		if err != nil {
			t.Errorf("%s: %v", name, err)
		} else if runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
			t.Errorf("%s: others may read it: %v", name, info.Mode())
		}
	}
}
