package web

import (
	"context"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// mostMessages is how many messages are held. Those that answer a question are
// found again in what the conversation remembers.
const mostMessages = 2000

// message is one that people can see.
type message struct {
	id     string
	to     string // the person who alone sees it; empty: all
	thread string // that it stands in; empty: it begins one
	asked  string // the words that it answers, where it knows them
	back   string // the message that it came from, where it is no answer of its own
	at     time.Time
	bot.Message
}

// talk is the thread that words below a message belong to.
func (m message) talk() string {
	if m.thread != "" {
		return m.thread
	}
	return m.id
}

func (m message) seenBy(person string) bool { return m.to == "" || m.to == person }

// find is a message that a person may see: one that is held, else an answer
// that the conversation remembers.
func (w *Web) find(ctx context.Context, id, person string) (message, bool) {
	w.mu.Lock()
	held, ok := w.messages.get(id)
	w.mu.Unlock()
	if ok {
		return *held, held.seenBy(person)
	}
	if w.Past == nil || len(id) != store.IDLen {
		return message{}, false
	}
	r, ok := w.Past.Recall(ctx, w.who(person), w.place(""), id)
	if !ok {
		return message{}, false
	}
	m := message{id: id, asked: r.Text, at: time.Now(), Message: r.Message}
	if !r.Open {
		m.to = person
	}
	w.mu.Lock()
	defer w.mu.Unlock()
	if held, ok := w.messages.get(id); ok { // somebody was faster
		return *held, held.seenBy(person)
	}
	w.messages.put(id, &m)
	return m, true
}

func (w *Web) who(person string) bot.Who {
	return bot.Who{Person: bot.Person{Platform: Platform, ID: person}}
}

// show puts a message before people: a new one, or in place of one that there
// is. An answer goes by the id of its question; where all see that answer
// already, one that is for a single person is a message of its own.
func (w *Web) show(m message) message {
	w.mu.Lock()
	defer w.mu.Unlock()
	if m.id == "" {
		m.id = m.About
		if old, ok := w.messages.get(m.id); ok && m.to != "" && old.to != m.to {
			m.id = ""
		}
	}
	if m.id == "" {
		m.id = store.NewID()
	}
	old, change := w.messages.get(m.id)
	if change {
		if m.asked == "" {
			m.asked = old.asked
		}
		if m.thread == "" {
			m.thread = old.thread
		}
		m.back = old.back
	}
	m.at = time.Now()
	w.messages.put(m.id, &m)
	if w.watch != nil {
		w.watch(m, change)
	}
	return m
}

// below are the other messages of a message's thread that a person may see, in order.
func (w *Web) below(m message, person string) []message {
	w.mu.Lock()
	defer w.mu.Unlock()
	var out []message
	w.messages.newest(func(o *message) bool {
		if o.id != m.id && o.talk() == m.talk() && o.seenBy(person) {
			out = append([]message{*o}, out...)
		}
		return true
	})
	return out
}

// loose are the newest messages, newest first, that a person may see and that
// answer nothing: what was posted here.
func (w *Web) loose(person string, limit int) []message {
	w.mu.Lock()
	defer w.mu.Unlock()
	var out []message
	w.messages.newest(func(m *message) bool {
		if m.About == "" && m.thread == "" && m.back == "" && m.asked == "" && m.seenBy(person) {
			out = append(out, *m)
		}
		return len(out) < limit
	})
	return out
}
