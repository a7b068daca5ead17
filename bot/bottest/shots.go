package bottest

import (
	"context"
	"fmt"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/engine/code"
)

// Shot is a message of a conversation, to see how a printer lays it out.
type Shot struct {
	Name string
	bot.Message
}

// Shots are the messages that officials get when they do things together, as
// the conversation makes them: the same ones in every run, whatever the
// channel.
func Shots(t *testing.T) []Shot {
	t.Helper()
	s := newStore(t)
	g := &gallery{t: t, place: bot.Place{Platform: "stage", Workspace: "riverside", Channel: "crew"}}
	a := bot.Association{ID: "riverside", Code: code.Scholastic, Season: 2026, Grants: []bot.Grant{{Role: bot.Mentor, To: mentor}}}
	ids := 0
	g.bot = bot.New(bot.Options{
		Store: s,
		Find:  func(bot.Place) (bot.Association, bool) { return a, true },
		All:   func() []bot.Association { return []bot.Association{a} },
		Now:   func() time.Time { return time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC) },
		NewID: func() string { ids++; return fmt.Sprintf("%026d", ids) },
		Send: func(_ context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
			g.board = m
			return bot.Sent{Place: to.Place, Message: "m1"}, nil
		},
	})
	out := func(name string, m bot.Message) { g.shots = append(g.shots, Shot{name, m}) }

	g.does(second, bot.Command{Name: "views", Text: openTip})
	out("views-none", g.board)
	own := g.presses(second, g.board, "Give my facts")
	out("views-own", own)
	own = g.presses(second, own, "back row")
	g.presses(second, own, "Sealed, until another is in")
	out("views-sealed", g.board)
	own = g.presses(third, g.board, "Give my facts")
	g.presses(third, g.presses(third, own, "front row"), "Show it now")
	out("views-both", g.board)

	preview := g.does(mentor, bot.Command{Name: "poll", Text: backTip})
	out("poll-preview", preview)
	g.presses(mentor, preview, "For a day")
	board := g.board
	out("poll-open", board)
	out("poll-call", g.presses(second, board, "Play on, no fault"))
	g.presses(third, board, "Fault: back-row attack, against us")
	g.presses(mentor, board, "Fault: back-row attack, against us")
	g.presses(mentor, board, "Close it")
	out("poll-result", g.board)
	numbers := g.does(mentor, bot.Command{Name: "numbers"})
	out("numbers", numbers)
	out("numbers-csv", g.presses(mentor, numbers, "As comma-separated values"))
	return g.shots
}

// gallery takes shots of a conversation.
type gallery struct {
	t      *testing.T
	bot    *bot.Bot
	place  bot.Place
	board  bot.Message // what was posted last
	shots  []Shot
	events int
}

// does has somebody do something, and gives the message that they get.
func (g *gallery) does(who string, e bot.Event) bot.Message {
	g.t.Helper()
	g.events++
	m := bot.Meta{Delivery: fmt.Sprint("d", g.events), Who: bot.Who{Person: bot.Person{Platform: "stage", ID: who}}, Where: g.place}
	switch event := e.(type) {
	case bot.Command:
		event.Meta = m
		e = event
	case bot.Press:
		event.Meta = m
		e = event
	}
	r := g.bot.Handle(g.t.Context(), e)
	g.bot.Tick(g.t.Context())
	switch r := r.(type) {
	case bot.Say:
		return r.Message
	case bot.Update:
		return r.Message
	}
	g.t.Fatalf("%+v is answered by %T", e, r)
	return bot.Message{}
}

// presses has somebody press a button of a message.
func (g *gallery) presses(who string, on bot.Message, label string) bot.Message {
	g.t.Helper()
	for _, b := range on.Doc.Blocks {
		bs, ok := b.(bot.Buttons)
		if !ok {
			continue
		}
		for _, i := range bs.Items {
			if i.Label == label {
				return g.does(who, bot.Press{Message: "m2", Private: true, State: i.State})
			}
		}
	}
	g.t.Fatalf("there is no button %q in %+v", label, on.Doc)
	return bot.Message{}
}
