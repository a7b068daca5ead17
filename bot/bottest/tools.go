package bottest

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

// Log is a log that is read while it is written.
type Log struct {
	mu sync.Mutex
	b  bytes.Buffer
}

// Write adds to the log.
func (l *Log) Write(p []byte) (int, error) {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.Write(p)
}

// String is the log so far.
func (l *Log) String() string {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.b.String()
}

// Recorder keeps the events that come in.
type Recorder struct {
	Reply func(bot.Event) bot.Reply // nil: Echo. What became of a message is only kept

	mu     sync.Mutex
	events []bot.Event
}

// Handle is the handler.
func (r *Recorder) Handle(ctx context.Context, e bot.Event) bot.Reply {
	r.mu.Lock()
	r.events = append(r.events, e)
	r.mu.Unlock()
	switch _, posted := e.(bot.Posted); {
	case posted:
		return bot.Nothing{}
	case r.Reply != nil:
		return r.Reply(e)
	}
	return Echo(ctx, e)
}

// Events are those that came in so far.
func (r *Recorder) Events() []bot.Event {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]bot.Event(nil), r.events...)
}

// Of are the events of one type.
func Of[E bot.Event](r *Recorder) []E {
	var out []E
	for _, e := range r.Events() {
		if x, ok := e.(E); ok {
			out = append(out, x)
		}
	}
	return out
}

// Echo answers every event with its words: a mention to all, the rest to whom
// it came from alone.
func Echo(_ context.Context, e bot.Event) bot.Reply {
	switch e := e.(type) {
	case bot.Command:
		return bot.Say{Message: Paragraph(e.Text), Private: true}
	case bot.Mention:
		return bot.Say{Message: Paragraph(e.Text)}
	case bot.Shortcut:
		return bot.Say{Message: Paragraph(e.Text), Private: true}
	case bot.Press:
		return bot.Update{Message: Paragraph("pressed " + e.State)}
	case bot.Submit:
		return bot.Update{Message: Paragraph("sent " + e.Values["words"])}
	}
	return bot.Nothing{}
}

// Paragraph is a message of a few words, with buttons under it.
func Paragraph(words string, buttons ...bot.Button) bot.Message {
	d := bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line(words)}}}
	if len(buttons) > 0 {
		d.Blocks = append(d.Blocks, bot.Buttons{Items: buttons})
	}
	return bot.Message{Doc: d}
}

// newStore is an empty store that is closed when the test ends.
func newStore(t testing.TB) store.Store {
	t.Helper()
	s, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}

// buttonOf finds the button of an answer whose label begins so.
func buttonOf(r bot.Reply, label string) (bot.Button, bool) {
	say, _ := r.(bot.Say)
	for _, b := range say.Doc.Blocks {
		bs, _ := b.(bot.Buttons)
		for _, b := range bs.Items {
			if strings.HasPrefix(b.Label, label) {
				return b, true
			}
		}
	}
	return bot.Button{}, false
}

// Conversation is the bot itself over an empty store, for an invented
// association that is in every place of which in says so.
func Conversation(t testing.TB, notes bot.Searcher, in func(bot.Place) bool) bot.Handler {
	t.Helper()
	s := newStore(t)
	return bot.New(bot.Options{
		Store: s,
		Find: func(p bot.Place) (bot.Association, bool) {
			return bot.Association{ID: "riverside", Name: "Riverside Officials", Code: "scholastic", Notes: notes}, in(p)
		},
	}).Handle
}

// Golden compares with a file in testdata, or rewrites it where the test was
// run with a flag -update.
func Golden(t testing.TB, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", filepath.FromSlash(name))
	if updating() {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatalf("%v; to write it, test this package with -update", err)
	}
	if got != string(want) {
		t.Errorf("%s differs; if the new text is right, test this package with -update\ngot:\n%s\nwant:\n%s", file, got, want)
	}
}

// Everything is a document with every member of the set.
func Everything() bot.Doc {
	return bot.Doc{Tone: bot.Bad, Blocks: []bot.Block{
		bot.Heading{Text: "Stop play: keep people safe", Tone: bot.Care},
		bot.Heading{Text: "Fault: back-row block, against A", Tone: bot.Bad},
		bot.Para{Text: bot.Text{{Text: "Plain, "}, {Text: "strong", Style: bot.Strong}, {Text: ", "}, {Text: "fa", Style: bot.Faint}, {Text: "int", Style: bot.Strong}, {Text: "."}}},
		bot.List{Items: []bot.Text{bot.Line("one"), bot.Line("two")}},
		bot.Quote{Text: bot.Line("ball in plane, both front row?")},
		bot.Fields{Items: []bot.Field{
			{Label: "Rule", Lines: []bot.Text{{{Text: "four contacts: "}, {Text: "9-4", Style: bot.Strong}}}},
			{Label: "Read as", Lines: []bot.Text{bot.Line("A touches the ball"), bot.Line("then B")}},
			{Label: "Empty"},
		}},
		bot.Tree{Label: "Turns on", Root: bot.Node{Ask: "Who first?", Kids: []bot.Kid{
			{When: "A", Then: "a fault"},
			{When: "B", Next: &bot.Node{Ask: "What row?", Kids: []bot.Kid{{When: "front", Then: "play on"}, {When: "back", Then: "a fault"}}}},
		}}},
		bot.Buttons{Label: "Answer with", Items: []bot.Button{{Label: "A first", State: "/give/q/order=a"}, {Label: "B first", State: "/give/q/order=b"},
			{Label: strings.Repeat("a label that is too long for a button ", 3), State: "/give/q/order=c"}, {Label: "the same again", State: "/give/q/order=a"}, {Label: "none"}}},
		bot.Buttons{Label: "Also", Items: []bot.Button{{Label: "Other codes: alike", State: "/view/q/codes"}}},
		bot.Link{Label: "2026-001 A note", URL: "https://notes.example/2026-001?a=1&b=(2)"},
		bot.Link{Label: "2026-002 A note that is nowhere to be read"},
		bot.Link{Label: "2026-003 No page", URL: "javascript:alert(1)"},
		bot.Heading{Text: "A second heading"},
		bot.Aside{Text: bot.Line("small print")},
	}}
}
