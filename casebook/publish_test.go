package casebook

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/netpost/engine/code"
)

// A note is written once, whole, and never over another file.
func TestPublish(t *testing.T) {
	dir := t.TempDir()
	n := &Note{ID: "2026-001", Title: "A foot across", Codes: []code.Code{code.Scholastic}, Season: 2026, Status: Published,
		Issued: Date{2026, 11, 20}, Body: "A fault.\n"}
	for range 2 { // again, after a kill, it is no error
		if err := Publish(dir, n); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(dir, "2026-001-a-foot-across.md")
	if got, err := os.ReadFile(file); err != nil || string(got) != Format(n) {
		t.Fatalf("%v: %q", err, got)
	}
	other := *n
	other.Body = "No fault.\n"
	if err := Publish(dir, &other); err == nil || !strings.Contains(err.Error(), "already") {
		t.Errorf("another note of that name: %v", err)
	}
	if got, _ := os.ReadFile(file); string(got) != Format(n) {
		t.Error("it was overwritten")
	}
	if all, _ := os.ReadDir(dir); len(all) != 1 {
		t.Errorf("%d files are left", len(all))
	}
	if err := Publish(filepath.Join(dir, "nowhere"), n); err == nil || !strings.Contains(err.Error(), "not there") {
		t.Errorf("no folder: %v", err)
	}
}
