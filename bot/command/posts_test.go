package command

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

// A post in doubt is listed, sent again or dropped by the word of whoever runs
// the program, and the audit trail has it.
func TestPosts(t *testing.T) {
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
	keys := []string{"answer/q1", "answer/q2"}
	err = s.Write(t.Context(), "riverside", func(w store.Writer) error {
		for _, k := range keys {
			if _, err := w.Queue(store.Post{Key: k, Where: store.Place{Platform: "slack", Channel: "C1"}, Queued: at}); err != nil {
				return err
			}
			if err := w.Mark(k, at); err != nil {
				return err
			}
		}
		_, err := w.Resume(at)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	out, errs, status := run("", "posts", "--config", file, "--resend", keys[0])
	if status != ok || errs != "" || !strings.Contains(out, "answer/q1 is to be sent again") || !strings.Contains(out, "may have been posted (2026-11-23 07:00 UTC)") || strings.Count(out, "answer/q1") != 1 {
		t.Errorf("status %d: %s%s", status, out, errs)
	}
	if out, _, _ := run("", "posts", "--config", file, "--drop", keys[1]); !strings.Contains(out, "no post waits") {
		t.Errorf("after both are decided: %s", out)
	}
	if _, errs, status := run("", "posts", "--config", file, "--drop", keys[1]); status != wrong || !strings.Contains(errs, "skipped") {
		t.Errorf("dropped twice: status %d: %s", status, errs)
	}
	err = s.Read(t.Context(), "riverside", func(r store.Reader) error {
		trail, err := r.Trail(store.Span{})
		if len(trail) != 2 || trail[0].Did != "resend" || trail[1].Did != "drop" || trail[0].Who != operator {
			t.Errorf("the trail is %+v", trail)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
