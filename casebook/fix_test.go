package casebook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestFixDir(t *testing.T) {
	dir := folder(t, map[string]string{
		// Two rounds: the quotes first, then what they let be read.
		"2026-001.md": valid("2026-001", "A note", "Net: the cable", "2026-11-01", "1 Nov 2026", "[scholastic]", "Scholastic"),
		"wrong.md":    strings.ReplaceAll(valid("2026-002", "A note", "The second"), "\n", "\r\n"),
		"2026-003.md": valid("2026-003", "issued: 2026-11-01", "issued: 2026-11-02\nsupersedes: [2026-001]"),
		"2026-004.md": valid("2026-004", "status: published\n", ""),
		"2026-005.md": valid("2026-005"),
	})
	if err := os.Chmod(filepath.Join(dir, "2026-001.md"), 0o640); err != nil {
		t.Fatal(err)
	}
	left, changed, err := FixDir(dir, LoadOptions{}, CheckOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(changed, " "); got != "2026-001.md 2026-002-the-second.md" {
		t.Errorf("changed %s", got)
	}
	if len(left) != 1 || left[0].Path != "2026-004.md" || left[0].Fixable {
		t.Errorf("left: %v", left)
	}
	for p, want := range map[string]string{
		"2026-001.md":            valid("2026-001", "A note", `"Net: the cable"`, "published", "superseded"),
		"2026-002-the-second.md": valid("2026-002", "A note", "The second"),
		"2026-005.md":            valid("2026-005"),
	} {
		got, err := os.ReadFile(filepath.Join(dir, p))
		if err != nil || string(got) != want {
			t.Errorf("%s: %v\n%s\nwant\n%s", p, err, got, want)
		}
	}
	if info, err := os.Stat(filepath.Join(dir, "2026-001.md")); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("the file's mode is not kept: %v", err)
	}
	entries, err := os.ReadDir(dir)
	if err != nil || len(entries) != 5 {
		t.Errorf("%d files in the folder, want 5: %v", len(entries), err)
	}
	// Again: nothing is left to do.
	if _, changed, err = FixDir(dir, LoadOptions{}, CheckOptions{}); err != nil || len(changed) != 0 {
		t.Errorf("a second run changed %v, %v", changed, err)
	}
	if _, _, err := FixDir(filepath.Join(dir, "gone"), LoadOptions{}, CheckOptions{}); err == nil {
		t.Error("a folder that is not there was mended")
	}
}

func TestFixKeepsNames(t *testing.T) {
	dir := folder(t, map[string]string{
		"a.md": valid("2026-001"),
		"b.md": valid("2026-001", "A note", "A note"),
		"c.md": valid("2026-002", "The text.", "See [it](a.md)."),
	})
	left, changed, err := FixDir(dir, LoadOptions{}, CheckOptions{})
	if err != nil || strings.Join(changed, " ") != "2026-002-a-note.md" {
		t.Errorf("changed %v, %v", changed, err)
	}
	if len(left) != 2 { // one id twice, and a linked file that a machine does not rename
		t.Errorf("left: %v", left)
	}
}

func TestFixStale(t *testing.T) {
	_, found := Parse("2026-001.md", valid("2026-001", "2026-11-01", "1 Nov 2026"))
	if _, err := Fix(found, func(string) (string, error) { return "---\n", nil }); err == nil || !strings.Contains(err.Error(), "changed since") {
		t.Errorf("a file that changed meanwhile: %v", err)
	}
	if _, err := Fix(found, func(string) (string, error) { return "", os.ErrNotExist }); err == nil {
		t.Error("a file that is gone")
	}
}

func TestApply(t *testing.T) {
	for _, c := range []struct {
		edits []edit
		want  string
	}{
		{nil, "abcdef"},
		{[]edit{{4, 5, "X"}, {0, 1, ""}}, "bcdXf"},
		{[]edit{{1, 4, "-"}, {2, 3, "X"}}, "a-ef"},
		{[]edit{{6, 6, "!"}, {6, 6, "!"}}, "abcdef!"},
		{[]edit{{2, 2, "1"}, {2, 2, "2"}}, "ab12cdef"},
	} {
		if got := apply("abcdef", c.edits); got != c.want {
			t.Errorf("%v: %s, want %s", c.edits, got, c.want)
		}
	}
}

func TestSlug(t *testing.T) {
	for title, want := range map[string]string{
		"Setter's tight save: whose ball?": "setters-tight-save-whose-ball",
		"Élan":                             "lan",
		"???":                              "note",
		strings.Repeat("word ", 30):        "word-word-word-word-word-word-word-word-word-word",
	} {
		if got := slug(title); got != want {
			t.Errorf("%q: %s, want %s", title, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	words := []string{"topics", "title", "codes"}
	for s, want := range map[string]string{"topic": "topics", "tittle": "title", "code": "codes", "banana": "", "x": ""} {
		if got := nearest(s, words); got != want {
			t.Errorf("%s: %q, want %q", s, got, want)
		}
	}
}

func TestRuleNumbers(t *testing.T) {
	for cited, want := range map[string]string{
		"9.1; 9.3.1":        "9.1 9.3.1",
		"14.4.1-14.4.3":     "14.4.1 14.4.2 14.4.3",
		"10.1.2-10.1.2.3":   "10.1.2 10.1.2.3",
		"6.2-6.3; 18.2.2":   "6.2 6.3 18.2.2",
		"":                  "",
		"19.3.2.4-19.3.2.6": "19.3.2.4 19.3.2.5 19.3.2.6",
	} {
		if got := strings.Join(numbers("international", cited), " "); got != want {
			t.Errorf("%s: %s, want %s", cited, got, want)
		}
	}
	for cited, want := range map[string]string{
		"9-4-8a,b":         "9-4-8a 9-4-8b",
		"6-4-2; 10-4-3a,d": "6-4-2 10-4-3a 10-4-3d",
		"8-1; 8-2":         "8-1 8-2",
	} {
		if got := strings.Join(numbers("scholastic", cited), " "); got != want {
			t.Errorf("%s: %s, want %s", cited, got, want)
		}
	}
	if !covers("9-4", "9-4-8c") || !covers("9-4-8", "9-4-8c") || covers("9-4-8c", "9-4-8") || covers("9.2", "9.20") {
		t.Error("what a number covers")
	}
}
