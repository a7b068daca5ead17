package discordfake

import (
	"encoding/json"
	"maps"
	"net/http"
	"slices"
	"time"
)

func sorted(m map[string]string) []string { return slices.Sorted(maps.Keys(m)) }

// callback takes the first response to an interaction.
func (c rest) callback(id, token string) {
	c.mu.Lock()
	i := c.interactions[token]
	c.mu.Unlock()
	switch {
	case i == nil || i.ID != id:
		c.refuse(http.StatusNotFound, 10062, "Unknown interaction")
		return
	case time.Since(i.at) > c.Deadline:
		c.refuse(http.StatusNotFound, 10062, "Unknown interaction")
		return
	}
	var r struct {
		Type int             `json:"type"`
		Data json.RawMessage `json:"data"`
	}
	if err := json.Unmarshal(c.raw, &r); err != nil {
		c.invalid([]string{err.Error()})
		return
	}
	var p payload
	if len(r.Data) > 0 {
		if err := json.Unmarshal(r.Data, &p); err != nil {
			c.invalid([]string{err.Error()})
			return
		}
	}
	if why := i.misfit(r.Type, p); len(why) > 0 {
		c.invalid(why)
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	if i.first != 0 {
		c.refuse(http.StatusBadRequest, 40060, "Interaction has already been acknowledged.")
		return
	}
	i.first, i.answered = r.Type, time.Since(i.at)
	defer c.gateway.changed.Broadcast()
	switch r.Type {
	case respondMessage, respondDefer:
		m := &Message{ID: c.id(), Channel: i.channel(), Deferred: r.Type == respondDefer}
		if p.Flags&ephemeralFlag != 0 {
			m.To = i.who.ID
		}
		if r.Type == respondMessage {
			p.into(m, r.Data, c.files)
		}
		c.messages = append(c.messages, m)
		i.original = m.ID
		if !m.Deferred {
			c.shown(m)
		}
	case respondDeferEdit, respondEdit:
		i.original = i.on.ID
		if m := c.find(i.on.ID); m != nil && r.Type == respondEdit {
			p.into(m, r.Data, c.files)
			m.Edits++
			c.shown(m)
		}
	case respondChoices:
		for _, x := range p.Choices {
			i.choices = append(i.choices, x.Value)
		}
	case respondForm:
		i.form = &p
	}
	if c.r == nil || c.r.URL.Query().Get("with_response") != "true" {
		c.w.WriteHeader(http.StatusNoContent)
		return
	}
	in := map[string]any{"id": i.ID, "type": i.typ}
	if i.original != "" {
		in["response_message_id"] = i.original
	}
	c.json(200, map[string]any{"interaction": in, "resource": map[string]any{"type": r.Type}})
}

// misfit lists what Discord refuses of a response.
func (i *Interaction) misfit(typ int, p payload) []string {
	auto := i.typ == 4
	switch typ {
	case respondMessage:
		if auto {
			return []string{"a message in answer to typing"}
		}
		return p.wrong()
	case respondDefer:
		if auto {
			return []string{"typing can't be deferred"}
		}
	case respondDeferEdit, respondEdit:
		if i.on == nil {
			return []string{"there is no message to change"}
		}
		if typ == respondEdit {
			return p.wrong()
		}
	case respondChoices:
		if !auto {
			return []string{"choices that nobody asked for"}
		}
		return p.wrongChoices()
	case respondForm:
		if i.typ == 5 || auto {
			return []string{"a form in answer to a form"}
		}
		return p.wrongForm()
	default:
		return []string{"an unknown type of response"}
	}
	return nil
}

func (i *Interaction) channel() string {
	if i.where.Thread != "" {
		return i.where.Thread
	}
	return i.where.Channel
}

// webhook is what can be said after the first response.
func (c rest) webhook(method, token, message string) {
	c.mu.Lock()
	i := c.interactions[token]
	known := i != nil && i.first != 0
	c.mu.Unlock()
	if !known {
		c.refuse(http.StatusNotFound, 10015, "Unknown Webhook")
		return
	}
	var p payload
	if method == "POST" || method == "PATCH" {
		var ok bool
		if p, ok = c.parse(); !ok {
			return
		}
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	defer c.gateway.changed.Broadcast()
	if message == "@original" {
		message = i.original
	}
	m := c.find(message)
	if method != "POST" && m == nil {
		c.refuse(http.StatusNotFound, 10008, "Unknown Message")
		return
	}
	switch method {
	case "POST":
		// What is said first after a deferral takes its place, and its readers.
		if o := c.find(i.original); o != nil && o.Deferred {
			m = o
		} else {
			m = &Message{ID: c.id(), Channel: i.channel()}
			if p.Flags&ephemeralFlag != 0 {
				m.To = i.who.ID
			}
			c.messages = append(c.messages, m)
		}
		p.into(m, c.raw, c.files)
		c.shown(m)
	case "PATCH":
		p.onto(m, c.raw, c.files)
		m.Edits++
		c.shown(m)
	case "DELETE":
		m.Deleted = true
		c.w.WriteHeader(http.StatusNoContent)
		return
	}
	c.json(200, map[string]string{"id": m.ID, "channel_id": m.Channel})
}

// Answered waits until there is a first response and gives how long it took;
// false: there is none in time.
func (i *Interaction) Answered(within time.Duration) (time.Duration, bool) {
	ok := i.s.await(within, func() bool { return i.first != 0 })
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	return i.answered, ok
}

// Message waits for the message that the interaction made or changed, with its
// words. It is nil where there is none within five seconds.
func (i *Interaction) Message() *Message {
	var out *Message
	i.s.await(5*time.Second, func() bool {
		m := i.s.find(i.original)
		if m == nil || m.Deferred {
			return false
		}
		c := *m
		out = &c
		return true
	})
	return out
}

// Status and Reply are of the answer to the request, over HTTP.
func (i *Interaction) Status() (int, string) {
	i.s.await(5*time.Second, func() bool { return i.status != 0 })
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	return i.status, i.reply
}

// First is the type of the first response; 0: there was none.
func (i *Interaction) First() int {
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	return i.first
}

// Choices waits for completions.
func (i *Interaction) Choices() []string {
	i.Answered(5 * time.Second)
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	return i.choices
}

// Form waits for a form and gives its title; empty: none was opened.
func (i *Interaction) Form() string {
	i.Answered(5 * time.Second)
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	if i.form == nil {
		return ""
	}
	return i.form.Title
}

// Opened is the form that was opened; nil: none.
func (i *Interaction) Opened() *Form {
	i.s.mu.Lock()
	defer i.s.mu.Unlock()
	if i.form == nil {
		return nil
	}
	f := &Form{ID: i.form.ID, Title: i.form.Title}
	for _, row := range i.form.Components {
		for _, c := range row.Components {
			f.Names, f.Labels = append(f.Names, c.ID), append(f.Labels, c.Label)
		}
	}
	return f
}

// Form is a form as it was opened.
type Form struct {
	ID, Title     string
	Names, Labels []string
}

// Sent is the payload as it was delivered.
func (i *Interaction) Sent() []byte { return i.sent }

// Await waits until something is so, as often as the server's state changes.
func (s *Server) Await(within time.Duration, done func([]Message) bool) bool {
	return s.await(within, func() bool {
		var ms []Message
		for _, m := range s.messages {
			if !m.Deleted {
				ms = append(ms, *m)
			}
		}
		return done(ms)
	})
}
