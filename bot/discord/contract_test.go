package discord_test

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord/discordfake"
)

func TestContract(t *testing.T) {
	for _, mode := range []string{gatewayMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			bottest.Contract(t, bottest.Harness{
				Start: func(t *testing.T, h bot.Handler) bottest.Platform {
					p := &platform{mode: mode, guild: "1", threads: map[string]string{}}
					p.crew = start(t, server(t), mode, h)
					return p
				},
			})
		})
	}
}

// platform is the fake as the contract sees it. Its channels keep the names
// that the contract gives them.
type platform struct {
	*crew
	mode, guild string

	mu      sync.Mutex
	all     []*discordfake.Interaction
	last    *discordfake.Interaction
	opened  *discordfake.Interaction // the last press: it may have opened a form
	seen    []bottest.Seen
	state   map[string]string
	threads map[string]string // that people wrote in: the channel of each
}

func (p *platform) Adapter() bot.Adapter { return p.adapter }

func (p *platform) Do(e bot.Event) bool {
	m := bot.MetaOf(e)
	who := discordfake.Person{ID: m.Who.ID, Name: "ana"}
	where := discordfake.Where{Guild: p.guild, Channel: m.Where.Channel, Thread: m.Where.Thread}
	if where.Thread != "" {
		p.mu.Lock()
		p.threads[where.Thread] = where.Channel
		p.mu.Unlock()
	}
	if m.Where.Channel == "direct-"+who.ID {
		where = discordfake.Where{Channel: m.Where.Channel, Direct: true}
	}
	var i *discordfake.Interaction
	switch e := e.(type) {
	case bot.Command:
		options := play(e.Text)
		for _, row := range bot.Commands() {
			if row.Name == e.Name && row.Name != "ask" {
				options = map[string]string{}
				if row.Words != "" && e.Text != "" {
					options[row.Words] = e.Text
				}
			}
		}
		if e.Args.Show != bot.ShowDefault {
			options["show"] = string(e.Args.Show)
		}
		i = p.Slash(who, where, cmp.Or(e.Name, "ask"), options)
	case bot.Shortcut:
		i = p.Pick(who, where, p.Plant(m.Where.Channel, e.Text))
	case bot.Press:
		on := p.Message(e.Message)
		if on == nil {
			p.t.Fatalf("no message %q to press on", e.Message)
		}
		i = p.PressID(who, where, *on, e.State)
		p.opened = i
	case bot.Submit:
		i = p.Submit(p.opened, e.Values)
	case bot.Complete:
		i = p.Type(who, where, e.Name, "play", e.Typed)
	default:
		return false
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	p.all = append(p.all, i)
	p.last = i
	return true
}

func (p *platform) Again() { p.Deliver(json.RawMessage(p.last.Sent())) }

func (p *platform) Strange() int {
	strange := []string{
		`{"type":99,"id":"1","token":"t1","application_id":"8800","channel_id":"50","user":{"id":"11"}}`,
		`{"type":2,"id":"2","token":"t2","application_id":"8800","channel_id":"50","user":{"id":"11"},"data":{"name":"other","type":1}}`,
		`{"type":2,"id":"3","token":"t3","application_id":"8800","channel_id":"50","user":{"id":"11"},"data":7}`,
		`{"type":3,"id":"4","token":"t4","application_id":"8800","channel_id":"50","user":{"id":"11"},"message":{"id":"5"},"data":{"custom_id":"x","component_type":42}}`,
		`{"type":3,"id":"5","token":"t5","application_id":"8800","channel_id":7}`,
		`{"type":5,"id":"6","token":"t6","user":{"id":"11"},"data":null}`,
		`{"type":"x"}`, `[]`, `null`, `{}`, `"text"`,
	}
	for _, s := range strange {
		p.Deliver(json.RawMessage(s))
	}
	if p.mode == gatewayMode {
		p.Dispatch("NO_SUCH_EVENT", map[string]any{"a": 1})
		p.Dispatch("MESSAGE_CREATE", map[string]any{"id": "1", "content": "not for us"})
		p.Frame(`{"op":77,"d":{}}`)
		p.Frame(`{"op":`)
	}
	return len(strange)
}

func (p *platform) Unacked() int {
	p.mu.Lock()
	defer p.mu.Unlock()
	n := 0
	for _, i := range p.all {
		if i.First() == 0 {
			n++
		}
	}
	return n
}

// Seen notes what is new since it was last called, so that it is called at
// every turn of a wait and misses nothing that the contract looks at.
func (p *platform) Seen() []bottest.Seen {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.state == nil {
		p.state = map[string]string{}
	}
	for _, m := range p.History() {
		key := m.ID + "/" + string(m.Raw)
		if _, met := p.state[key]; met || m.Deferred || m.Raw == nil {
			continue
		}
		_, changed := p.state[m.ID]
		p.state[key], p.state[m.ID] = "", ""
		s := bottest.Seen{Message: m.ID, Changed: changed || m.Edits > 0 && !m.First, To: m.To, Text: m.Shown(),
			Where: bot.Place{Platform: "discord", Workspace: p.guild, Channel: m.Channel}}
		if in := cmp.Or(p.threads[m.Channel], p.Parent(m.Channel)); in != "" {
			s.Where.Channel, s.Where.Thread = in, m.Channel
		}
		if to, ok := strings.CutPrefix(m.Channel, "direct-"); ok {
			s.To = to
		}
		for _, row := range m.Buttons {
			for _, b := range row {
				s.Buttons = append(s.Buttons, bot.Button{Label: b.Label, State: b.ID})
			}
		}
		for _, f := range m.Files {
			s.Images = append(s.Images, f.Alt)
		}
		p.seen = append(p.seen, s)
	}
	for _, i := range p.all {
		if _, met := p.state["i/"+i.ID]; met {
			continue
		}
		if f := i.Opened(); f != nil {
			p.seen = append(p.seen, bottest.Seen{Form: &bot.Form{State: f.ID, Title: f.Title, Fields: []bot.Input{{Name: f.Names[0], Label: f.Labels[0]}}}})
			p.state["i/"+i.ID] = ""
		}
		if i.First() == 8 {
			s := bottest.Seen{}
			for _, c := range i.Choices() {
				s.Choices = append(s.Choices, bot.Choice{Label: c, Value: c})
			}
			p.seen = append(p.seen, s)
			p.state["i/"+i.ID] = ""
		}
	}
	return slices.Clone(p.seen)
}

func (p *platform) Refused() []string { return p.Violations() }

// Pings: the fake refuses a message that does not forbid all of them.
func (p *platform) Pings() []string { return nil }

func (p *platform) Throttle() {
	p.Refuse(discordfake.Refusal{Method: "POST", Path: "messages", Times: 1, Status: 429, RetryAfter: 300 * time.Millisecond})
}

func (p *platform) Drop() {
	if p.mode == gatewayMode {
		p.Server.Drop()
	}
}

func (p *platform) Gone() bot.Target {
	return bot.Target{Place: bot.Place{Platform: "discord", Workspace: p.guild, Channel: discordfake.GoneChannel}}
}
