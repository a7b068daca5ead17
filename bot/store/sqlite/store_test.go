package sqlite

import (
	"path/filepath"
	"testing"

	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/storetest"
)

func open(t testing.TB, dir string) store.Store {
	t.Helper()
	s, err := Open(t.Context(), filepath.Join(dir, "netpost.db"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestContract(t *testing.T) { storetest.Run(t, open) }
