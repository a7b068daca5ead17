package discord

import (
	"flag"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the expected texts in testdata")

// golden compares with a file in testdata, or rewrites it.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", filepath.FromSlash(name))
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v; to write it: go test ./bot/discord -update", err)
	}
	if got != string(want) {
		t.Errorf("%s differs; if the new text is right: go test ./bot/discord -update\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}
