package term

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/engine/code"
)

var update = flag.Bool("update", false, "rewrite what the screen shows")

type notes struct{}

func (notes) Notes(context.Context, bot.Question) ([]bot.Note, error) {
	return []bot.Note{{ID: "2026-014", Title: "Tight save, blocker's hands on it too", URL: "https://notes.example/2026-014"}}, nil
}

// The conversation itself in a terminal, from a script to a screen.
func TestStory(t *testing.T) {
	s, err := sqlite.Open(t.Context(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	var ids atomic.Int64
	b := bot.New(bot.Options{
		Store: s,
		Find: func(bot.Place) (bot.Association, bool) {
			return bot.Association{ID: "riverside", Code: code.Scholastic, Notes: notes{}}, true
		},
		NewID: func() string { return fmt.Sprintf("%026d", ids.Add(1)) },
	})
	in, err := os.Open("testdata/story.in")
	if err != nil {
		t.Fatal(err)
	}
	defer in.Close()
	var out strings.Builder
	if err := New(Options{In: in, Out: &out, Session: "story"}).Run(t.Context(), b.Handle); err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("testdata/story.out", []byte(out.String()), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("testdata/story.out")
	if err != nil {
		t.Fatal(err)
	}
	if out.String() != string(want) {
		t.Errorf("the screen shows otherwise; if that is right, run the test with -update\n%s", out.String())
	}
}
