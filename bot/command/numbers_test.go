package command

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

// What three people asked is counted, what one asked is not, and nobody is named.
func TestNumbers(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "netpost.yaml")
	if err := os.WriteFile(file, []byte("associations: [{id: riverside}]\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s, err := sqlite.Open(t.Context(), filepath.Join(dir, "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	at := time.Date(2026, 11, 23, 7, 0, 0, 0, time.UTC)
	err = s.Write(t.Context(), "riverside", func(w store.Writer) error {
		for i := range 4 {
			topic := "four-contacts"
			if i == 3 {
				topic = "lonely"
			}
			q := store.Question{ID: fmt.Sprint("q", i), Asker: store.Person{Platform: "slack", ID: fmt.Sprint("U", i)}, Text: "x", Asked: at}
			q.Answer = store.Answer{Tags: []store.Tag{{Kind: store.Topic, Value: topic}, {Kind: store.Unread, Value: `a "phrase", odd`}}, At: at}
			if err := w.Ask(q); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	out, errs, status := run("", "numbers", "--config", file, "--csv")
	if status != ok || !strings.Contains(strings.ToLower(out), "topic,four contacts,3\n") || strings.Contains(out, "lonely") || !strings.Contains(out, `not read,"a ""phrase"", odd",4`) || strings.Contains(out, "U0") {
		t.Errorf("status %d:\n%s%s", status, out, errs)
	}
}
