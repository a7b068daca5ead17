package web

import (
	"fmt"
	"net/http"
	"runtime/debug"
	"time"

	"example.org/netpost/bot"
)

// mostWorks is how many things done are remembered, to do none of them twice.
const mostWorks = 4000

// work is one thing that somebody does, from the event to where its reply is
// seen.
type work struct {
	person string
	done   chan struct{}
	// to is the page that shows the reply, once done.
	to   string
	form *bot.Form // that was opened, once done
	on   string    // the message that the form is about
}

// do gives an event to the handler, once for its delivery, and leads to the
// page with its reply; where that takes long, to one that waits for it.
func (w *Web) do(out http.ResponseWriter, r *http.Request, e bot.Event, on message) {
	id, person := bot.MetaOf(e).Delivery, bot.MetaOf(e).Who.ID
	w.mu.Lock()
	k, again := w.works.get(id)
	if !again {
		k = &work{person: person, done: make(chan struct{})}
		w.works.put(id, k)
	}
	w.mu.Unlock()
	if !again {
		w.jobs.Go(func() {
			defer close(k.done)
			w.carry(k, e, on)
		})
	}
	var wait <-chan time.Time
	if bot.Defer(e) != bot.AckNone {
		wait = time.After(w.Wait)
	}
	select {
	case <-k.done:
		http.Redirect(out, r, k.to, http.StatusSeeOther)
	case <-wait:
		http.Redirect(out, r, "/wait/"+id, http.StatusSeeOther)
	case <-r.Context().Done():
	}
}

// carry makes the reply and carries it out. It never panics.
func (w *Web) carry(k *work, e bot.Event, on message) {
	k.to = "/"
	defer func() {
		if p := recover(); p != nil {
			w.Log.ErrorContext(w.run, "a handler panicked", "cause", fmt.Sprint(p), "stack", string(debug.Stack()))
			m := w.show(message{to: bot.MetaOf(e).Who.ID, back: on.id, Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{
				bot.Heading{Text: "Something went wrong, and this was not answered."},
				bot.Para{Text: bot.Line("Ask it in other words, and tell whoever runs netpost: it is in the log.")},
			}}}})
			k.to = "/q/" + m.id
		}
	}()
	w.reply(k, e, on, w.h(w.run, e))
}

// reply carries a reply out, and reports what became of it.
func (w *Web) reply(k *work, e bot.Event, on message, r bot.Reply) {
	meta := bot.MetaOf(e)
	asked := wordsOf(e)
	ref := ""
	var m message
	switch r := r.(type) {
	case bot.Nothing:
		if on.id != "" {
			k.to = "/q/" + on.id
		}
		return
	case bot.Choices:
		return
	case bot.Form:
		k.form, k.on, k.to = &r, on.id, "/form/"+meta.Delivery
		return
	case bot.Say:
		m = message{asked: asked, Message: r.Message, thread: threadOf(e, r)}
		if r.Private {
			m.to = meta.Who.ID
		}
		if on.id != "" && asked == "" && (m.About == "" || m.About != on.About) {
			m.back = on.id
		}
		for _, ed := range r.Edits {
			if old, ok := w.find(w.run, ed.ID, meta.Who.ID); ok && ed.ID != m.About {
				old.Message = ed.Message
				w.show(old)
			}
		}
		if m.About != "" {
			if old, ok := w.find(w.run, m.About, meta.Who.ID); ok {
				m.asked = old.asked // facts told in words are no new question
			}
		}
		m, ref = w.show(m), r.Ref
	case bot.Update:
		m, ref = on, r.Ref
		if m.id == "" {
			m = message{to: meta.Who.ID, asked: asked}
		}
		m.Message = r.Message
		if m.About != "" && on.About == "" && on.id != "" {
			m.id, m.asked = "", asked // what was held back has become a question
		}
		m = w.show(m)
	default:
		panic(fmt.Sprintf("web: a reply outside the closed set: %T", r))
	}
	k.to = "/q/" + m.id
	if ref == "" {
		return
	}
	meta.Delivery = ""
	p := bot.Posted{Meta: meta, Ref: ref, Message: m.id}
	if m.to == "" {
		p.Thread = m.talk()
	}
	w.h(w.run, p)
}

// wordsOf are the words that somebody asked with.
func wordsOf(e bot.Event) string {
	switch e := e.(type) {
	case bot.Command:
		return e.Text
	case bot.Mention:
		return e.Text
	}
	return ""
}

// threadOf is the thread that a new message stands in.
func threadOf(e bot.Event, s bot.Say) string {
	switch t := bot.MetaOf(e).Where.Thread; {
	case !s.InThread:
		return ""
	case t != "":
		return t
	case s.On != "":
		return s.On
	}
	if m, ok := e.(bot.Mention); ok {
		return m.Message
	}
	return ""
}
