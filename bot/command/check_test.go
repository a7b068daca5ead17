package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// --fix mends the files in place, tells which, and leaves the rest to people.
func TestCheckFix(t *testing.T) {
	dir := t.TempDir()
	for _, name := range []string{"2026-001.md", "2025-001.md"} {
		text, err := os.ReadFile(filepath.Join("testdata/casebook", name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	out, errs, status := run("", "check", "--fix", "--today", "2026-11-24", dir)
	if status != found || errs != "" || !strings.HasPrefix(out, "mended 2026-001.md\n") || !strings.HasSuffix(out, "2 notes, 1 finding\n") {
		t.Errorf("status %d\n%s%s", status, out, errs)
	}
	text, err := os.ReadFile(filepath.Join(dir, "2026-001.md"))
	if err != nil || !strings.Contains(string(text), "codes: [scholastic]") {
		t.Errorf("the file was not mended: %v\n%s", err, text)
	}
	out, errs, status = run("", "check", "--fix", "--json", "--today", "2025-11-24", dir)
	var c checked
	if err := json.Unmarshal([]byte(out), &c); err != nil || status != ok || errs != "" || c.Notes != 2 || !strings.Contains(out, `"findings":[],"mended":[]`) {
		t.Errorf("status %d, %v\n%s%s", status, err, out, errs)
	}
}
