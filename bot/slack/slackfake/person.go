package slackfake

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"
)

// Person is somebody in the workspace.
type Person struct {
	ID string
	s  *Server
}

// Person makes somebody.
func (s *Server) Person(id string) *Person { return &Person{id, s} }

// trigger and address are what comes with an event. The lock is held.
func (p *Person) trigger() string {
	id := "trigger-" + p.s.next()
	p.s.triggers[id] = &trigger{born: time.Now(), user: p.ID}
	return id
}

func (p *Person) address(r response) string {
	id := p.s.next()
	r.user = p.ID
	p.s.responses[id] = &r
	return p.s.http.URL + "/respond/" + id
}

// Types are the payloads that a person's deed comes in.
const (
	slash     = "slash_commands"
	interact  = "interactive"
	eventsAPI = "events_api"
)

// Command types the command with words into a channel.
func (p *Person) Command(channel, text string) *Delivery {
	name := "crew-talk"
	p.s.mu.Lock()
	if strings.HasPrefix(channel, "D") {
		name = "directmessage"
		p.s.room(p.ID)
	}
	payload := map[string]any{
		"token": "legacy", "team_id": Team, "team_domain": "crew", "channel_id": channel, "channel_name": name,
		"user_id": p.ID, "user_name": strings.ToLower(p.ID), "command": "/netpost", "text": text, "api_app_id": "A0NETPOST",
		"is_enterprise_install": "false", "response_url": p.address(response{command: true, channel: channel}), "trigger_id": p.trigger(),
	}
	p.s.mu.Unlock()
	d := p.s.Deliver(slash, payload)
	// What comes back with the acknowledgement only the person sees.
	var m struct {
		Text string `json:"text"`
		Type string `json:"response_type"`
	}
	if json.Unmarshal(d.Ack.Payload, &m) == nil && m.Text != "" {
		p.s.mu.Lock()
		c := p.s.channels[channel]
		n := &Message{Channel: channel, TS: p.s.ts(), From: Self, Text: m.Text, address: true}
		if m.Type != "in_channel" {
			n.To = p.ID
		}
		p.s.show(c, n)
		p.s.tick()
		p.s.mu.Unlock()
	}
	return d
}

// Say writes a message into a channel or a thread of it. The bot hears it
// where it is named by <@Self>, or in a direct message.
func (p *Person) Say(channel, thread, text string) (Message, *Delivery) {
	p.s.mu.Lock()
	if strings.HasPrefix(channel, "D") {
		p.s.room(p.ID)
	}
	c := p.s.channels[channel]
	m := &Message{Channel: channel, TS: p.s.ts(), Thread: thread, From: p.ID, Text: text}
	p.s.show(c, m)
	inner := map[string]any{"type": "app_mention", "user": p.ID, "text": text, "ts": m.TS, "channel": channel,
		"event_ts": m.TS, "client_msg_id": "c-" + m.TS, "team": Team}
	if thread != "" {
		inner["thread_ts"] = thread
	}
	direct := strings.HasPrefix(channel, "D")
	if direct {
		inner["type"], inner["channel_type"] = "message", "im"
	}
	payload := p.event(inner)
	hears := direct || strings.Contains(text, "<@"+Self+">") && slices.Contains(c.members, Self)
	p.s.mu.Unlock()
	if !hears {
		return *m, nil
	}
	return *m, p.s.Deliver(eventsAPI, payload)
}

// event wraps what happened. The lock is held.
func (p *Person) event(inner map[string]any) map[string]any {
	return map[string]any{"token": "legacy", "team_id": Team, "api_app_id": "A0NETPOST", "type": "event_callback",
		"event_id": "Ev" + p.s.next(), "event_time": time.Now().Unix(), "event": inner,
		"authorizations": []any{map[string]any{"team_id": Team, "user_id": Self, "is_bot": true}}}
}

// Edit changes the words of a message that named the bot: Slack tells of it as
// of a new one.
func (p *Person) Edit(m Message, text string) *Delivery {
	p.s.mu.Lock()
	payload := p.event(map[string]any{"type": "app_mention", "user": p.ID, "text": text, "ts": m.TS, "channel": m.Channel,
		"event_ts": m.TS + "9", "edited": map[string]any{"user": p.ID, "ts": m.TS}})
	p.s.mu.Unlock()
	return p.s.Deliver(eventsAPI, payload)
}

// base is what every interaction has. The lock is held.
func (p *Person) base(typ string) map[string]any {
	return map[string]any{"type": typ, "token": "legacy", "api_app_id": "A0NETPOST", "trigger_id": p.trigger(),
		"team": map[string]any{"id": Team, "domain": "crew"}, "user": map[string]any{"id": p.ID, "team_id": Team}}
}

func wire(m Message) map[string]any {
	out := map[string]any{"type": "message", "ts": m.TS, "text": m.Text, "user": m.From, "team": Team}
	if m.Thread != "" {
		out["thread_ts"] = m.Thread
	}
	return out
}

// Shortcut picks a message and has it looked up.
func (p *Person) Shortcut(m Message) *Delivery {
	p.s.mu.Lock()
	payload := p.base("message_action")
	payload["callback_id"] = "look_up"
	payload["message_ts"] = m.TS
	payload["channel"] = map[string]any{"id": m.Channel, "name": "crew-talk"}
	payload["message"] = wire(m)
	payload["response_url"] = p.address(response{channel: m.Channel})
	p.s.mu.Unlock()
	return p.s.Deliver(interact, payload)
}

// Press presses the button with a label.
func (p *Person) Press(m Message, label string) *Delivery {
	for _, b := range m.Blocks {
		for _, e := range b.Elements {
			if e.Type == "button" && e.words().Text == label {
				return p.PressValue(m, e.ActionID, e.Value)
			}
		}
	}
	return &Delivery{Err: fmt.Errorf("no button %q; there are %q", label, m.Buttons())}
}

// PressValue presses a button of any id and value, on a message or on one that
// is no longer there.
func (p *Person) PressValue(m Message, actionID, value string) *Delivery {
	p.s.mu.Lock()
	payload := p.base("block_actions")
	payload["channel"] = map[string]any{"id": m.Channel, "name": "crew-talk"}
	c := map[string]any{"type": "message", "message_ts": m.TS, "channel_id": m.Channel, "is_ephemeral": m.Private()}
	if m.Thread != "" {
		c["thread_ts"] = m.Thread
	}
	payload["container"] = c
	if !m.Private() {
		payload["message"] = wire(m)
	}
	payload["actions"] = []any{map[string]any{"type": "button", "block_id": "b1", "action_id": actionID, "value": value,
		"text": map[string]any{"type": "plain_text", "text": "a button"}, "action_ts": "1." + p.s.next()}}
	payload["state"] = map[string]any{"values": map[string]any{}}
	payload["response_url"] = p.address(response{channel: m.Channel, message: m.TS})
	p.s.mu.Unlock()
	return p.s.Deliver(interact, payload)
}

// Submit fills a form in and sends it off.
func (p *Person) Submit(v View, values map[string]string) *Delivery {
	p.s.mu.Lock()
	state := map[string]any{}
	for _, b := range v.Blocks {
		if b.Type == "input" {
			var value any // null where it is left empty
			if s := values[b.ID]; s != "" {
				value = s
			}
			state[b.ID] = map[string]any{b.Element.ActionID: map[string]any{"type": "plain_text_input", "value": value}}
		}
	}
	payload := p.base("view_submission")
	payload["view"] = map[string]any{"id": v.ID, "hash": v.Hash, "type": "modal", "callback_id": v.Callback,
		"private_metadata": v.Metadata, "state": map[string]any{"values": state}, "title": map[string]any{"type": "plain_text", "text": v.Title}}
	p.s.mu.Unlock()
	d := p.s.Deliver(interact, payload)
	p.s.mu.Lock()
	defer p.s.mu.Unlock()
	if d.Err == nil && len(strings.TrimSpace(string(d.Ack.Payload))) == 0 {
		p.s.views = slices.DeleteFunc(p.s.views, func(x View) bool { return x.ID == v.ID })
	}
	return d
}

// Sees is what the person sees in a channel.
func (p *Person) Sees(channel string) []Message { return p.s.Sees(p.ID, channel) }

// Last waits for the last message that the person sees from the bot in a
// channel to be another than before, or one that was edited since.
func (p *Person) Last(channel string, before Message) (Message, error) {
	var last Message
	if p.s.Wait(5*time.Second, func() bool {
		last = Message{}
		for _, m := range p.Sees(channel) {
			if m.From == Self && m.File == nil {
				last = m
			}
		}
		return last.TS != "" && (last.TS != before.TS || last.Edits != before.Edits)
	}) {
		return last, nil
	}
	return last, fmt.Errorf("nothing new from the bot in %s; the last is:\n%s", channel, last.Shown())
}
