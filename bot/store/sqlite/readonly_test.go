//go:build unix

package sqlite

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"example.org/netpost/bot/store"
)

// readerChild opens a store as a user that may do little, and prints how it
// went.
func readerChild(path string) {
	if os.Getuid() == 0 { // may write everywhere
		if err := syscall.Setuid(65534); err != nil {
			fmt.Println(err)
			return
		}
	}
	s, err := Open(context.Background(), path, Options{})
	if err == nil {
		err = ask(s, "q1", "")
	}
	fmt.Printf("%s: %v", store.CodeOf(err), err)
}

func TestReadOnly(t *testing.T) {
	parent := t.TempDir()
	for p := parent; p != filepath.Dir(p) && strings.HasPrefix(p, filepath.Join(os.TempDir(), "Test")); p = filepath.Dir(p) {
		if err := os.Chmod(p, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	made := filepath.Join(parent, "made")
	s, err := Open(t.Context(), filepath.Join(made, "netpost.db"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	for _, m := range []struct {
		folder, file os.FileMode
		path         string
	}{
		{0o555, 0o600, filepath.Join(made, "new.db")},     // no file can be made
		{0o755, 0o444, filepath.Join(made, "netpost.db")}, // the file can't be written
		{0o555, 0o666, filepath.Join(made, "netpost.db")}, // the log can't be made
	} {
		if err := errors.Join(os.Chmod(filepath.Join(made, "netpost.db"), m.file), os.Chmod(made, m.folder)); err != nil {
			t.Fatal(err)
		}
		out, err := child(t, "reader", m.path).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		if !strings.HasPrefix(string(out), "readonly: the store "+m.path) && !strings.HasPrefix(string(out), "missing: the store "+m.path) || !strings.Contains(string(out), made+" ") && !strings.Contains(string(out), made+",") {
			t.Errorf("folder %v, file %v: %s", m.folder, m.file, out)
		}
	}
	if err := os.Chmod(made, 0o755); err != nil {
		t.Fatal(err)
	}
}
