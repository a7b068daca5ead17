package sqlite

import (
	"bytes"
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot/store"
)

// The steps are numbered without a gap, say what they are for, and every
// table in them is of one association.
func TestSteps(t *testing.T) {
	all, err := steps()
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 3 {
		t.Fatalf("%d steps", len(all))
	}
	table := regexp.MustCompile(`(?s)CREATE TABLE (\w+) \((.*?)\n\)`)
	tables := 0
	for n, s := range all {
		if !regexp.MustCompile(fmt.Sprintf(`^migrations/%03d_[a-z]+\.sql$`, n+1)).MatchString(s.name) {
			t.Errorf("step %d is named %s", n+1, s.name)
		}
		if !strings.HasPrefix(s.sql, "-- ") {
			t.Errorf("%s does not open with what it is for", s.name)
		}
		for _, m := range table.FindAllStringSubmatch(s.sql, -1) {
			tables++
			if m[1] != "associations" && !strings.Contains(m[2], "association TEXT NOT NULL") {
				t.Errorf("%s: table %s is of no association", s.name, m[1])
			}
		}
	}
	if tables < 10 {
		t.Errorf("only %d tables were looked at", tables)
	}
}

// A file of any version comes to the same tables as a new one, with its rows.
func TestUpgrade(t *testing.T) {
	all, err := steps()
	if err != nil {
		t.Fatal(err)
	}
	ctx := t.Context()
	schema := func(s *Store) []string {
		got, err := s.words(ctx, s.readers, queryOnly, "read", `SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name`)
		if err != nil {
			t.Fatal(err)
		}
		return got
	}
	fresh := open(t, t.TempDir()).(*Store)
	defer fresh.Close()
	want := schema(fresh)
	for n := range all {
		path := filepath.Join(t.TempDir(), "old.db")
		if err := prepare(path); err != nil {
			t.Fatal(err)
		}
		dsn, err := dsn(path, 0)
		if err != nil {
			t.Fatal(err)
		}
		db, err := sql.Open("sqlite", dsn)
		if err != nil {
			t.Fatal(err)
		}
		old := &Store{path: path, db: db}
		c, err := old.dial(ctx, "")
		if err != nil {
			t.Fatal(err)
		}
		if err := old.upgrade(ctx, c, all[:n]); err != nil {
			t.Fatal(err)
		}
		if n > 0 {
			if _, err := c.ExecContext(ctx, `INSERT INTO questions (association, id, asker, platform, workspace, channel, thread, text, code, season, private, asked)
				VALUES ('riverside', 'q1', 'slack/U1', '', '', '', '', 'kept', '', '', 0, 1)`); err != nil {
				t.Fatal(err)
			}
		}
		c.close()
		db.Close()
		s, err := Open(ctx, path, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if got := schema(s); !slices.Equal(got, want) {
			t.Errorf("from version %d:\n%s\nwant\n%s", n, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
		err = s.Read(ctx, riverside, func(r store.Reader) error { _, err := r.Question("q1"); return err })
		if n > 0 && err != nil {
			t.Errorf("from version %d: %v", n, err)
		}
		s.Close()
	}
}

// A step that fails leaves the file at the version that it had.
func TestUpgradeFails(t *testing.T) {
	s := open(t, t.TempDir()).(*Store)
	defer s.Close()
	all, err := steps()
	if err != nil {
		t.Fatal(err)
	}
	c := <-s.writer
	defer func() { s.writer <- c }()
	bad := append(slices.Clone(all), step{"a good one", "CREATE TABLE half (x)"}, step{"a bad one", "CREATE NONSENSE"})
	if err := s.upgrade(t.Context(), c, bad); store.CodeOf(err) != store.Unexpected {
		t.Errorf("a bad step: %v", err)
	}
	if got, err := s.version(t.Context(), c, len(all)); err != nil || got != len(all) {
		t.Errorf("version %d, %v", got, err)
	}
	var halves int
	if err := c.QueryRowContext(t.Context(), "SELECT count(*) FROM sqlite_schema WHERE name = 'half'").Scan(&halves); err != nil || halves != 0 {
		t.Errorf("%d tables of a failed upgrade, %v", halves, err)
	}
}

// What was erased and scrubbed is in none of the files.
func TestScrub(t *testing.T) {
	dir := t.TempDir()
	s := open(t, dir)
	defer s.Close()
	secret := "a question that nobody should read any more"
	p := store.Person{Platform: "slack", ID: "U0SECRET"}
	err := s.Write(t.Context(), riverside, func(w store.Writer) error {
		return w.Ask(store.Question{ID: "q1", Asker: p, Text: secret, Asked: noon})
	})
	if err != nil {
		t.Fatal(err)
	}
	found := func() (in []string) {
		files, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			text, err := os.ReadFile(filepath.Join(dir, f.Name()))
			if err != nil {
				t.Fatal(err)
			}
			if bytes.Contains(text, []byte(secret)) || bytes.Contains(text, []byte(p.ID)) {
				in = append(in, f.Name())
			}
		}
		return in
	}
	if len(found()) == 0 {
		t.Fatal("the text is in no file before it is erased")
	}
	if err := s.Write(t.Context(), riverside, func(w store.Writer) error { _, err := w.Erase(p); return err }); err != nil {
		t.Fatal(err)
	}
	if err := s.Scrub(t.Context()); err != nil {
		t.Fatal(err)
	}
	if in := found(); len(in) > 0 {
		t.Errorf("still in %v", in)
	}
}
