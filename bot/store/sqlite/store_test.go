package sqlite

import (
	"path/filepath"
	"testing"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/storetest"
)

// The clock and the association of these tests.
var noon = time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)

const riverside = "riverside"

func open(t testing.TB, dir string) store.Store {
	t.Helper()
	s, err := Open(t.Context(), filepath.Join(dir, "netpost.db"), Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestContract(t *testing.T) { storetest.Run(t, open) }
