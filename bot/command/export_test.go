package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Export writes the pages of the notes, and says what stands in its way.
func TestExport(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	for range 2 { // again into the same folder
		out, errs, status := run("", "export", "--today", "2026-11-24", dir)
		if status != ok || errs != "" || !strings.HasPrefix(out, dir+": ") {
			t.Fatalf("status %d\n%s%s", status, out, errs)
		}
	}
	index, err := os.ReadFile(filepath.Join(dir, "index.html"))
	if err != nil || !strings.Contains(string(index), "Examples: ") {
		t.Errorf("the first page: %v\n%s", err, index)
	}
	own := casebookOf(t)
	if out, errs, status := run("", "export", "--casebook", own, dir); status != ok || errs != "" || !strings.Contains(out, "of 1 note") {
		t.Errorf("another casebook: status %d\n%s%s", status, out, errs)
	}
	if _, err := os.Stat(filepath.Join(dir, "2024-001.html")); !os.IsNotExist(err) {
		t.Errorf("a note that has gone is still there: %v", err)
	}
	for _, test := range []struct {
		args []string
		want string
	}{
		{[]string{}, "netpost export: needs the one folder to write to"},
		{[]string{own}, "it holds other files; name a new or an empty folder"},
		{[]string{"--casebook", filepath.Join(own, "nowhere"), dir}, "the casebook can't be read"},
		{[]string{"--today", "yesterday", dir}, `--today: "yesterday" is not a date`},
	} {
		if _, errs, status := run("", append([]string{"export"}, test.args...)...); status != wrong || !strings.Contains(errs, test.want) {
			t.Errorf("%q: status %d, %s, want %q", test.args, status, errs, test.want)
		}
	}
}

// Notes lead to their pages where the settings say where those are.
func TestNotePages(t *testing.T) {
	file := filepath.Join(t.TempDir(), "netpost.yaml")
	if err := os.WriteFile(file, []byte("associations:\n  - id: riverside\n    casebook: "+casebookOf(t)+"\n    pages: https://notes.example/riverside\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"search", "--config", file, "tip"}, {"ask", "--config", file, play}} {
		if out, errs, status := run("", args...); status != ok || !strings.Contains(out, "https://notes.example/riverside/2026-001.html") {
			t.Errorf("%q: status %d\n%s%s", args, status, out, errs)
		}
	}
}
