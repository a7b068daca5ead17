package bottest

import (
	"context"
	"errors"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/netpost/bot"
)

// Contract is what every adapter passes. Each part of it is a subtest.
func Contract(t *testing.T, h Harness) {
	parts := []struct {
		name string
		run  func(*testing.T, Harness)
	}{
		{"completion", completion},
		{"deadline", deadline},
		{"erase", erasing},
		{"events", events},
		{"form", form},
		{"hostile text", hostile},
		{"limits", limits},
		{"panic", panics},
		{"pictures", pictures},
		{"post", post},
		{"posted", posted},
		{"rate limit", throttled},
		{"reconnect", reconnect},
		{"redelivery", redelivery},
		{"replies", replies},
		{"thread", thread},
		{"unknown kinds", unknown},
	}
	for _, p := range parts {
		t.Run(p.name, func(t *testing.T) {
			if why := h.Lacks[p.name]; why != "" {
				t.Skip(why) // right: the platform has no place for this part, and the harness says why; a name that is no part fails below
			}
			p.run(t, h)
		})
	}
	for name := range h.Lacks {
		if !slices.ContainsFunc(parts, func(p struct {
			name string
			run  func(*testing.T, Harness)
		}) bool {
			return p.name == name
		}) {
			t.Errorf("the contract has no part %q to lack", name)
		}
	}
}

// at is who acts and where. The fake fills in the platform and the workspace.
var at = bot.Meta{Who: bot.Who{Person: bot.Person{ID: "UANA1"}}, Where: bot.Place{Channel: "CCREW1"}}

// command asks by the chat command.
func command(words string) bot.Event { return bot.Command{Meta: at, Text: words} }

// message is a short message.
func message(words string, buttons ...bot.Button) bot.Message {
	d := bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line(words)}}}
	if len(buttons) > 0 {
		d.Blocks = append(d.Blocks, bot.Buttons{Label: "Press", Items: buttons})
	}
	return bot.Message{Doc: d}
}

func say(words string, buttons ...bot.Button) bot.Say {
	return bot.Say{Message: message(words, buttons...)}
}

// pressing is the press of a seen button.
func pressing(s Seen, label string) bot.Press {
	for _, b := range s.Buttons {
		if b.Label == label {
			return bot.Press{Meta: bot.Meta{Who: at.Who, Where: s.Where}, Message: s.Message, Private: s.To != "", State: b.State}
		}
	}
	return bot.Press{}
}

// record keeps the events that a handler got.
type record struct {
	mu     sync.Mutex
	events []bot.Event
	posted []bot.Posted
}

// by makes a handler that keeps its events and replies to all but Posted.
func (r *record) by(reply func(bot.Event) bot.Reply) bot.Handler {
	return func(_ context.Context, e bot.Event) bot.Reply {
		r.mu.Lock()
		p, ok := e.(bot.Posted)
		if ok {
			r.posted = append(r.posted, p)
		} else {
			r.events = append(r.events, e)
		}
		r.mu.Unlock()
		if ok {
			return bot.Nothing{}
		}
		return reply(e)
	}
}

func (r *record) all() []bot.Event {
	r.mu.Lock()
	defer r.mu.Unlock()
	return slices.Clone(r.events)
}

func (r *record) reports() []bot.Posted {
	r.mu.Lock()
	defer r.mu.Unlock()
	return slices.Clone(r.posted)
}

// words are what an event says.
func words(e bot.Event) string {
	switch e := e.(type) {
	case bot.Command:
		return e.Text
	case bot.Mention:
		return e.Text
	case bot.Shortcut:
		return e.Text
	case bot.ThreadReply:
		return e.Text
	case bot.Press:
		return e.State
	case bot.Submit:
		return e.State
	case bot.Complete:
		return e.Typed
	}
	return ""
}

// Every event that the platform has comes to the handler as it was caused.
func events(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		if _, ok := e.(bot.Command); ok {
			return say("to press on", bot.Button{Label: "one", State: "/undo/one"})
		}
		return bot.Nothing{}
	}))
	n := 0
	seen := map[string]bool{}
	do := func(e bot.Event) {
		t.Helper()
		if !p.Do(e) {
			return
		}
		n++
		until(t, "the handler", p, func() bool { return len(got.all()) == n })
		g := got.all()[n-1]
		m := bot.MetaOf(g)
		if name(g) != name(e) || plain(words(g)) != plain(words(e)) {
			t.Errorf("%#v came as %#v", e, g)
		}
		if m.Who.ID != at.Who.ID || m.Where.Channel != at.Where.Channel || m.Where.Platform == "" || m.Who.Platform != m.Where.Platform {
			t.Errorf("%s came from %+v in %+v", name(e), m.Who, m.Where)
		}
		if m.Delivery == "" || seen[m.Delivery] {
			t.Errorf("%s has the delivery %q; it must be its own", name(e), m.Delivery)
		}
		seen[m.Delivery] = true
	}
	do(command("both front row, ball in plane"))
	do(bot.Mention{Meta: at, Text: "joust & <tip> over the net"})
	do(bot.Shortcut{Meta: at, Text: "our setter tips"})
	do(bot.ThreadReply{Meta: inThread("T1"), Text: "she was back row"})
	s := awaits(t, "a message with a button", p, func(s Seen) bool { return len(s.Buttons) > 0 })
	do(pressing(s, "one"))
	if e := got.all()[n-1].(bot.Press); e.Message != s.Message {
		t.Errorf("the press is on the message %q, not %q", e.Message, s.Message)
	}
	fine(t, p)
}

func inThread(id string) bot.Meta {
	m := at
	m.Where.Thread = id
	return m
}

func name(e bot.Event) string {
	switch e.(type) {
	case bot.Command:
		return "command"
	case bot.Mention:
		return "mention"
	case bot.Shortcut:
		return "shortcut"
	case bot.ThreadReply:
		return "thread reply"
	case bot.Press:
		return "press"
	case bot.Submit:
		return "submit"
	case bot.Complete:
		return "complete"
	}
	return "posted"
}

// Every reply is carried out, and is seen by whom it is for.
func replies(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		switch words(e) {
		case "public":
			return say("for all", bot.Button{Label: "change", State: "/undo/change"}, bot.Button{Label: "whisper", State: "/undo/whisper"})
		case "private":
			s := say("for one", bot.Button{Label: "change", State: "/undo/change"}, bot.Button{Label: "aloud", State: "/share/x"})
			s.Private = true
			return s
		case "/undo/change":
			return bot.Update{Message: message("changed")}
		case "/undo/whisper":
			s := say("whispered")
			s.Private = true
			return s
		case "/share/x":
			return say("said aloud")
		}
		return bot.Nothing{}
	}))
	p.Do(command("nothing"))
	p.Do(command("public"))
	pub := awaits(t, "a public answer", p, reads("for all"))
	if pub.To != "" {
		t.Errorf("only %s sees what is for all", pub.To)
	}
	p.Do(command("private"))
	priv := awaits(t, "a private answer", p, reads("for one"))
	if priv.To != at.Who.ID {
		t.Errorf("%q sees what is for %s alone", priv.To, at.Who.ID)
	}
	p.Do(pressing(pub, "whisper"))
	if s := awaits(t, "a private answer to a press in public", p, reads("whispered")); s.To != at.Who.ID {
		t.Errorf("%q sees what is for %s alone", s.To, at.Who.ID)
	}
	p.Do(pressing(priv, "aloud"))
	if s := awaits(t, "a public answer to a press in private", p, reads("said aloud")); s.To != "" {
		t.Errorf("only %s sees what is for all", s.To)
	}
	for _, s := range []Seen{pub, priv} {
		p.Do(pressing(s, "change"))
		awaits(t, "the message to change in place", p, func(c Seen) bool { return c.Changed && c.Message == s.Message && reads("changed")(c) })
	}
	if all := p.Seen(); slices.ContainsFunc(all, reads("nothing")) {
		t.Errorf("nothing was to be seen: %+v", all)
	}
	fine(t, p)
}

// What is asked in a thread is answered there, and followed up there; and one
// can be begun: on a mention, or where the platform has none on a message of
// ours.
func thread(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		if press, ok := e.(bot.Press); ok {
			s := say(strings.TrimPrefix(press.State, "/undo/") + " follows")
			s.InThread, s.On = true, press.Message
			return s
		}
		s := say("answer to "+words(e), bot.Button{Label: "more", State: "/undo/more"}, bot.Button{Label: "begin", State: "/undo/begin"})
		s.InThread = true
		return s
	}))
	const id = "1700000000.000100"
	// asks says something in a thread, or in the channel where there is none.
	asks := func(m bot.Meta, words string) (mention bool) {
		t.Helper()
		if p.Do(bot.Mention{Meta: m, Text: words}) {
			return true
		}
		if !p.Do(bot.Command{Meta: m, Text: words}) {
			t.Fatal("the platform has neither mentions nor commands")
		}
		return false
	}
	asks(inThread(id), "within")
	s := awaits(t, "the answer", p, reads("answer to within"))
	m := bot.MetaOf(got.all()[0])
	if m.Where.Thread == "" || s.Where.Thread != m.Where.Thread || s.Where.Channel != at.Where.Channel {
		t.Errorf("asked in thread %q, answered in %+v", m.Where.Thread, s.Where)
	}
	p.Do(pressing(s, "more"))
	if more := awaits(t, "what a button brings", p, reads("more follows")); more.Where.Thread != s.Where.Thread {
		t.Errorf("the press was in thread %q, what came of it in %q", s.Where.Thread, more.Where.Thread)
	}
	asks(bot.Meta{Who: at.Who, Where: bot.Place{Channel: at.Where.Channel, Thread: id}}, "a follow-up")
	if f := awaits(t, "the follow-up's answer", p, reads("answer to a follow-up")); f.Where.Thread != s.Where.Thread {
		t.Errorf("followed up in thread %q, answered in %q", s.Where.Thread, f.Where.Thread)
	}
	mentions := asks(at, "outside")
	s = awaits(t, "the answer", p, reads("answer to outside"))
	if !mentions {
		if s.Where.Thread != "" {
			t.Errorf("a command in the channel is answered in thread %q", s.Where.Thread)
		}
		p.Do(pressing(s, "begin"))
		s = awaits(t, "the first message of a thread", p, reads("begin follows"))
	}
	if s.Where.Thread == "" {
		t.Error("no thread was begun")
	}
	fine(t, p)
}

// A form is opened at once, and comes back.
func form(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		switch e := e.(type) {
		case bot.Command:
			return say("open it", bot.Button{Label: "in words", State: "/words/q1"})
		case bot.Press:
			return bot.Form{State: "/tell/q1", Title: "In your own words", Send: "Rule on it", Fields: []bot.Input{
				{Name: "words", Label: "What happened?", Hint: "she was back row", Lines: true, Must: true, Max: 500}}}
		case bot.Submit:
			return bot.Update{Message: message("sent: " + e.Values["words"])}
		}
		return bot.Nothing{}
	}))
	p.Do(command("x"))
	on := awaits(t, "a message", p, reads("open it"))
	p.Do(pressing(on, "in words"))
	f := awaits(t, "the form", p, func(s Seen) bool { return s.Form != nil })
	if f.Form.Title != "In your own words" || len(f.Form.Fields) != 1 || f.Form.Fields[0].Label != "What happened?" {
		t.Errorf("the form is %+v", f.Form)
	}
	p.Do(bot.Submit{Meta: at, Message: on.Message, State: f.Form.State, Values: map[string]string{"words": "back <row> & high"}})
	awaits(t, "the message to change", p, func(s Seen) bool { return s.Changed && s.Message == on.Message && reads("sent: back <row> & high")(s) })
	e, _ := got.all()[len(got.all())-1].(bot.Submit)
	if e.State != "/tell/q1" || e.Message != on.Message {
		t.Errorf("the form came back as %+v", e)
	}
	fine(t, p)
}

// Completions are offered, no more than fit.
func completion(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(bot.Event) bot.Reply {
		return bot.Choices{Items: []bot.Choice{{Label: "back row", Value: "back row"}, {Label: "front row", Value: "front row"}}}
	}))
	if !p.Do(bot.Complete{Meta: at, Name: "ask", Option: "text", Typed: "our setter"}) {
		t.Fatal("the platform has no completion: list it among what it lacks")
	}
	s := awaits(t, "completions", p, func(s Seen) bool { return len(s.Choices) > 0 })
	if len(s.Choices) != 2 || s.Choices[0].Value != "back row" {
		t.Errorf("offered were %+v", s.Choices)
	}
	fine(t, p)
}

// isNotSent reports whether an error says both that a place is gone and that
// nothing is out.
func isNotSent(err error) bool { return errors.Is(err, bot.ErrGone) && errors.Is(err, bot.ErrNotSent) }
