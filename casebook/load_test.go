package casebook

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
)

// valid is the text of a note in which every field is right; break one thing.
func valid(id string, changes ...string) string {
	s := "---\nid: " + id + "\ntitle: A note\ncodes: [scholastic]\nseason: 2026-27\nstatus: published\nissued: 2026-11-01\n---\nThe text.\n"
	return strings.NewReplacer(changes...).Replace(s)
}

// folder writes files into a new folder of the disk.
func folder(t testing.TB, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for p, text := range files {
		full := filepath.Join(dir, filepath.FromSlash(p))
		if err := os.MkdirAll(filepath.Dir(full), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(full, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// loads checks that a folder gives the good note and one finding that says what.
func loads(t *testing.T, b *Book, found []Finding, path, what string) {
	t.Helper()
	if b.Note("2026-001") == nil {
		t.Error("the good note is lost")
	}
	if len(found) != 1 {
		t.Fatalf("%d findings, want one: %v", len(found), found)
	}
	if f := found[0]; f.Path != path || f.Check != checkFile || !strings.Contains(f.What, what) || f.Mend == "" {
		t.Errorf("finding %s [%s], want one of %s that says %q", f, f.Check, path, what)
	}
}

func TestLoadBig(t *testing.T) {
	big := valid("2026-002") + strings.Repeat("word ", 1<<20)
	b, found := LoadDir(folder(t, map[string]string{"2026-001.md": valid("2026-001"), "2026-002.md": big}), LoadOptions{})
	loads(t, b, found, "2026-002.md", "too big")
	b, found = LoadDir(folder(t, map[string]string{"2026-001.md": valid("2026-001"), "2026-002.md": big}), LoadOptions{MaxBytes: 8 << 20})
	if len(found) != 0 || b.Note("2026-002") == nil {
		t.Errorf("a raised limit is not kept: %v", found)
	}
}

func TestLoadNotText(t *testing.T) {
	b, found := LoadDir(folder(t, map[string]string{"2026-001.md": valid("2026-001"), "2026-002.md": "\x7fELF\x00\x01"}), LoadOptions{})
	loads(t, b, found, "2026-002.md", "not text")
	b, found = LoadDir(folder(t, map[string]string{"2026-001.md": valid("2026-001"), "2026-002.md": "---\nid: 2026-002\ntitle: caf\xe9\n---\n"}), LoadOptions{})
	loads(t, b, found, "2026-002.md", "UTF-8")
	if found[0].Line != 3 {
		t.Errorf("line %d, want 3", found[0].Line)
	}
}

func TestLoadLinks(t *testing.T) {
	outside := filepath.Join(folder(t, map[string]string{"secret.md": valid("2026-009")}), "secret.md")
	for _, c := range []struct{ to, what string }{
		{outside, "leads out of the folder"},
		{"../secret.md", "leads out of the folder"},
		{"sub/../../secret.md", "leads out of the folder"},
		{"nowhere.md", "can't be followed"},
		{"2026-002.md", "can't be followed"}, // itself
		{"sub", "link to a folder"},
	} {
		dir := folder(t, map[string]string{"2026-001.md": valid("2026-001"), "sub/x.txt": ""})
		if err := os.Symlink(c.to, filepath.Join(dir, "2026-002.md")); err != nil {
			t.Fatal(err)
		}
		b, found := LoadDir(dir, LoadOptions{})
		loads(t, b, found, "2026-002.md", c.what)
	}
	// Through a linked folder, which only the system sees.
	dir := folder(t, map[string]string{"2026-001.md": valid("2026-001")})
	if err := os.Symlink(filepath.Dir(outside), filepath.Join(dir, "out")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink("out/secret.md", filepath.Join(dir, "2026-002.md")); err != nil {
		t.Fatal(err)
	}
	b, found := LoadDir(dir, LoadOptions{})
	if len(found) != 2 || b.Note("2026-009") != nil {
		t.Errorf("a note was read through a linked folder: %v", found)
	}
	// A link that stays inside is a file like any other.
	dir = folder(t, map[string]string{"2026-001.md": valid("2026-001"), "store/note.txt": valid("2026-002")})
	if err := os.Symlink("store/note.txt", filepath.Join(dir, "2026-002.md")); err != nil {
		t.Fatal(err)
	}
	if b, found = LoadDir(dir, LoadOptions{}); len(found) != 0 || b.Note("2026-002") == nil {
		t.Errorf("a link inside the folder: %v", found)
	}
}

// failing is a folder in which some paths can't be opened.
type failing struct {
	fstest.MapFS
	open map[string]error
}

func (f failing) Open(name string) (fs.File, error) {
	if err := f.open[name]; err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	return f.MapFS.Open(name)
}

func (f failing) ReadDir(name string) ([]fs.DirEntry, error) {
	if err := f.open[name]; err != nil {
		return nil, &fs.PathError{Op: "open", Path: name, Err: err}
	}
	return f.MapFS.ReadDir(name)
}

func TestLoadUnreadable(t *testing.T) {
	files := fstest.MapFS{
		"2026-001.md":    {Data: []byte(valid("2026-001"))},
		"2026-002.md":    {Data: []byte(valid("2026-002"))},
		"in/2026-003.md": {Data: []byte(valid("2026-003"))},
	}
	b, found := Load(failing{files, map[string]error{"2026-002.md": fs.ErrPermission}}, LoadOptions{})
	loads(t, b, found, "2026-002.md", "permission denied")
	b, found = Load(failing{files, map[string]error{"2026-002.md": fs.ErrNotExist}}, LoadOptions{})
	loads(t, b, found, "2026-002.md", "not there")
	b, found = Load(failing{files, map[string]error{"in": fs.ErrPermission}}, LoadOptions{})
	loads(t, b, found, "in", "permission denied")
}

func TestLoadNoFolder(t *testing.T) {
	for name, load := range map[string]func() (*Book, []Finding){
		"no such folder": func() (*Book, []Finding) { return LoadDir(filepath.Join(t.TempDir(), "gone"), LoadOptions{}) },
		"a file":         func() (*Book, []Finding) { return LoadDir(os.Args[0], LoadOptions{}) },
		"vanished": func() (*Book, []Finding) {
			return Load(failing{fstest.MapFS{}, map[string]error{".": errors.New("stale handle")}}, LoadOptions{})
		},
		"empty": func() (*Book, []Finding) { return LoadDir(t.TempDir(), LoadOptions{}) },
	} {
		b, found := load()
		if b == nil || len(b.Notes()) != 0 || len(found) != 1 || found[0].Mend == "" {
			t.Errorf("%s: %v", name, found)
		}
	}
}

func TestLoadSkips(t *testing.T) {
	b, found := LoadDir(folder(t, map[string]string{
		"2026-001.md":       valid("2026-001"),
		"README.md":         "# About these notes\n",
		"_template.md":      "no note\n",
		".git/2026-002.md":  "no note\n",
		"_old/2026-003.md":  "no note\n",
		"2025/readme.md":    "no note\n",
		"2025/2025-001.md":  valid("2025-001"),
		"images/drawing.md": valid("2025-002"),
	}), LoadOptions{})
	if len(found) != 0 || len(b.Notes()) != 3 {
		t.Errorf("%d notes, findings %v", len(b.Notes()), found)
	}
}

// TestLoadSame holds that the same folder gives the same findings.
func TestLoadSame(t *testing.T) {
	files := map[string]string{}
	for _, id := range []string{"2026-001", "2026-002", "2026-003", "2026-004", "2026-005"} {
		files[id+".md"] = valid(id, "title: A note\n", "", "codes: [scholastic]", "codes: [x, y]")
	}
	dir := folder(t, files)
	_, first := LoadDir(dir, LoadOptions{})
	for range 5 {
		_, again := LoadDir(dir, LoadOptions{})
		if len(again) != len(first) {
			t.Fatalf("%d findings, then %d", len(first), len(again))
		}
		for i := range again {
			if again[i].String() != first[i].String() {
				t.Fatalf("%s, then %s", first[i], again[i])
			}
		}
	}
}

// FuzzParse: no text makes the reader fail otherwise than by findings, and a
// note that reads is the same when it is read again.
func FuzzParse(f *testing.F) {
	f.Add(valid("2026-001"))
	f.Add("---\n---\n")
	f.Add("---\na: &a [*a]\n---\n")
	f.Add(valid("2026-001", "A note", "'it''s'", "2026-11-01", "1 Nov 2026"))
	f.Fuzz(func(t *testing.T, text string) {
		n, found := Parse("2026-001.md", text)
		if (n == nil) == (len(found) == 0) {
			t.Fatalf("note %v and findings %v", n, found)
		}
		for _, x := range found {
			if x.Path == "" || x.What == "" || x.Mend == "" || x.Line < 1 {
				t.Fatalf("half a finding: %+v", x)
			}
		}
		if n == nil {
			return
		}
		n.HTML(nil)
		n.Plain()
		b := NewBook([]*Note{n}, nil)
		for _, x := range Check(b, CheckOptions{}) {
			if x.Path == "" || x.What == "" || x.Mend == "" {
				t.Fatalf("half a finding: %+v", x)
			}
		}
	})
}
