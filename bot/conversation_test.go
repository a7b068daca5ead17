package bot_test

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/engine/code"
)

// newStore opens an empty store.
func newStore(t testing.TB) store.Store {
	t.Helper()
	s, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// notes is a searcher that always finds the same.
type notes []bot.Note

func (n notes) Notes(context.Context, bot.Question) ([]bot.Note, error) { return n, nil }

var someNotes = notes{{
	ID: "2026-014", Title: "Tight save, blocker's hands on it too", URL: "https://notes.example/2026-014",
	Codes: []code.Code{code.Scholastic}, Season: 2026, Snippet: bot.Line("The setter was back row."),
}}

// riverside is an association in one workspace.
func riverside(set bottest.Settings) bot.Association {
	a := bot.Association{ID: "riverside", Name: "Riverside Officials", Code: code.Code(set["code"]), Notes: someNotes}
	if set["notes"] == "none" {
		a.Notes = nil
	}
	if c := set["channel"]; c != "" {
		a.Channels = []string{c}
	}
	a.Grants = []bot.Grant{{Role: bot.Mentor, To: "mentors"}, {Role: bot.Publisher, To: "publishers"}}
	return a
}

func TestTalks(t *testing.T) {
	bottest.Transcripts(t, "testdata/talk/*.txt", starter(), brief)
}

// ofTheRuling labels what the engine says. In the order of a ruling.
var ofTheRuling = []string{"Read as", "Because", "Presumed", "No evidence", "Rule", "Call", "Next", "In doubt", "Corrected", "Not answered"}

// brief prints the talk and leaves out what the engine says of the play: its
// wording has tests of its own.
func brief(m bot.Message) string {
	d := bot.Doc{Tone: m.Doc.Tone}
	for _, b := range m.Doc.Blocks {
		switch b := b.(type) {
		case bot.Fields:
			for _, f := range b.Items {
				if !slices.Contains(ofTheRuling, f.Label) {
					d.Blocks = append(d.Blocks, bot.Fields{Items: []bot.Field{f}})
				}
			}
		case bot.Tree:
		default:
			d.Blocks = append(d.Blocks, b)
		}
	}
	return bottest.Text(bot.Message{Doc: d})
}

// The story of a question, as it stands in the channel.
func TestStory(t *testing.T) {
	bottest.Transcripts(t, "testdata/story/*.txt", starter(), bottest.Text)
}

// starter makes conversations over a new store, which they keep when they are
// started again in the same test.
func starter() func(*testing.T, bottest.Settings) bot.Handler {
	kept := map[string]store.Store{}
	clock := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)
	var ids, ticks atomic.Int64
	return func(t *testing.T, set bottest.Settings) bot.Handler {
		s := kept[t.Name()]
		if s == nil {
			s = newStore(t)
			kept[t.Name()] = s
		}
		return bot.New(bot.Options{
			Store: s,
			Find: func(p bot.Place) (bot.Association, bool) {
				return riverside(set), p.Workspace == "riverside"
			},
			Now:   func() time.Time { return clock.Add(time.Duration(ticks.Add(1)) * time.Second) },
			NewID: func() string { return fmt.Sprintf("%026d", ids.Add(1)) },
		}).Handle
	}
}
