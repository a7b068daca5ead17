package slack_test

import (
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// TestContract holds the adapter to what every adapter must do.
func TestContract(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Contract(t, bottest.Harness{
			Start: func(t *testing.T, h bot.Handler) bottest.Platform {
				s := slackfake.New()
				t.Cleanup(s.Close)
				s.Channel("CCREW1", "UANA1", "UBOB1", slackfake.Self)
				return &platform{crew: start(t, s, mode, h), mode: mode}
			},
			Lacks: map[string]string{"completion": "Slack has no completion of a command's words"},
		})
	})
}

// platform is the fake as the contract wants it.
type platform struct {
	*crew
	mode    string
	unacked atomic.Int64
	mu      sync.Mutex
	last    *slackfake.Delivery
	seen    []bottest.Seen // of the history so far
}

func (p *platform) Adapter() bot.Adapter { return p.adapter }

// escaped is a text as Slack delivers it.
func escaped(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(s)
}

func (p *platform) Do(e bot.Event) bool {
	who := p.Person(bot.MetaOf(e).Who.ID)
	where := bot.MetaOf(e).Where
	var act func() *slackfake.Delivery
	switch e := e.(type) {
	case bot.Command:
		act = func() *slackfake.Delivery {
			return who.Command(where.Channel, strings.Join(strings.Fields(e.Name+" "+string(e.Args.Show)+" "+escaped(e.Text)), " "))
		}
	case bot.Mention:
		if where.Thread != "" {
			p.Root(where.Channel, where.Thread, "UBOB1")
		}
		act = func() *slackfake.Delivery {
			_, d := who.Say(where.Channel, where.Thread, named(escaped(e.Text)))
			return d
		}
	case bot.Shortcut:
		m, _ := p.Person("UBOB1").Say(where.Channel, where.Thread, escaped(e.Text))
		act = func() *slackfake.Delivery { return who.Shortcut(m) }
	case bot.Press:
		act = func() *slackfake.Delivery { return p.press(who, e) }
	case bot.Submit:
		for _, v := range p.Views(who.ID) {
			if v.Callback == e.State {
				act = func() *slackfake.Delivery { return who.Submit(v, e.Values) }
			}
		}
	}
	if act == nil {
		return false
	}
	p.deliver(act)
	return true
}

func (p *platform) press(who *slackfake.Person, e bot.Press) *slackfake.Delivery {
	for _, m := range who.Sees(e.Where.Channel) {
		if m.TS != e.Message {
			continue
		}
		for _, b := range m.Pressable() {
			if b.Value == e.State {
				return who.PressValue(m, b.ActionID, b.Value)
			}
		}
	}
	return who.PressValue(slackfake.Message{Channel: e.Where.Channel, TS: e.Message}, "press-0", e.State)
}

// deliver delivers until it is acknowledged: in the moment between two sockets,
// Slack tells the person that it did not work, who tries again.
func (p *platform) deliver(act func() *slackfake.Delivery) {
	p.unacked.Add(1)
	began := make(chan struct{})
	go func() {
		defer p.unacked.Add(-1)
		p.ready()
		close(began)
		d := act()
		p.mu.Lock()
		p.last = d
		p.mu.Unlock()
		for end := time.Now().Add(wait); d.Err != nil && time.Now().Before(end); {
			time.Sleep(10 * time.Millisecond)
			p.ready()
			d = p.crew.Again(d)
		}
		if d.Err != nil {
			p.t.Errorf("a delivery failed: %v", d.Err)
		}
	}()
	<-began
}

func (p *platform) ready() {
	if p.mode == socketMode {
		p.Wait(wait, func() bool { return p.Connections() > 0 })
	}
}

func (p *platform) Again() {
	p.mu.Lock()
	d := p.last
	p.mu.Unlock()
	p.deliver(func() *slackfake.Delivery { return p.crew.Again(d) })
}

func (p *platform) Strange() int {
	strange := []*slackfake.Delivery{
		{Type: "events_api", Payload: map[string]any{"type": "event_callback", "event_id": "Ev1", "event": map[string]any{"type": "flag_raised", "user": "UANA1", "channel": "CCREW1", "ts": "1.1"}}},
		{Type: "events_api", Payload: map[string]any{"type": "event_callback", "event_id": "Ev2"}},
		{Type: "interactive", Payload: map[string]any{"type": "view_closed", "user": map[string]any{"id": "UANA1"}}},
		{Type: "interactive", Payload: map[string]any{"type": "block_actions", "user": map[string]any{"id": "UANA1"}, "actions": []any{}}},
		{Type: "slash_commands", Payload: map[string]any{"text": "nobody's"}},
	}
	if p.mode == socketMode {
		strange = append(strange, &slackfake.Delivery{Type: "weather_report", Payload: map[string]any{"sun": true}})
	}
	for _, d := range strange {
		// Over HTTP, what is malformed is answered with a status of its own.
		if got := p.Deliver(d.Type, d.Payload); got.Err != nil && !strings.Contains(got.Err.Error(), "400") {
			p.t.Errorf("%s %v: %v", d.Type, d.Payload, got.Err)
		}
	}
	return len(strange)
}

func (p *platform) Unacked() int { return int(p.unacked.Load()) }

func (p *platform) Seen() []bottest.Seen {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, h := range p.History()[len(p.seen):] {
		s := bottest.Seen{Message: h.TS, Changed: h.Changed, To: h.To, Text: h.Shown(),
			Where: bot.Place{Platform: "slack", Workspace: slackfake.Team, Channel: h.Channel, Thread: h.Thread}}
		if rest, ok := strings.CutPrefix(h.Channel, "D"); ok {
			s.To = "U" + rest
		}
		for _, b := range h.Pressable() {
			s.Buttons = append(s.Buttons, bot.Button{Label: b.Label, State: b.Value})
		}
		switch {
		case h.View != nil:
			s = bottest.Seen{To: h.View.User, Form: form(*h.View)}
		case h.File != nil:
			s.Images = []string{h.File.Alt}
		}
		p.seen = append(p.seen, s)
	}
	return p.seen[:len(p.seen):len(p.seen)]
}

func form(v slackfake.View) *bot.Form {
	f := &bot.Form{State: v.Callback, Title: v.Title}
	for _, b := range v.Blocks {
		if b.Type == "input" {
			i := bot.Input{Name: b.ID, Label: b.Label.Text, Value: b.Element.Initial, Lines: b.Element.Lines, Must: !b.Optional, Max: b.Element.Most}
			if b.Element.Hint != nil {
				i.Hint = b.Element.Hint.Text
			}
			f.Fields = append(f.Fields, i)
		}
	}
	return f
}

func (p *platform) Refused() []string { return p.Problems() }
func (p *platform) Pings() []string   { return p.crew.Pings() }
func (p *platform) Throttle()         { p.Limit("chat.postMessage", time.Second, 1) }
func (p *platform) Drop()             { p.crew.Drop() }
func (p *platform) Gone() bot.Target {
	return bot.Target{Place: bot.Place{Platform: "slack", Workspace: slackfake.Team, Channel: "CGONE1"}}
}
