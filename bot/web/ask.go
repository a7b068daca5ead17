package web

import (
	"encoding/json"
	"net/http"
	"strings"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/engine/code"
)

// routes are all pages. Only what is under /static/ is for everybody.
func (w *Web) routes() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", w.page(w.home))
	m.HandleFunc("GET /alignment", w.page(w.alignmentPage))
	m.HandleFunc("GET /complete", w.page(w.complete))
	m.HandleFunc("GET /form/{id}", w.page(w.formPage))
	m.HandleFunc("GET /help", w.page(w.help))
	m.HandleFunc("GET /q/{id}", w.page(w.messagePage))
	m.HandleFunc("GET /search", w.page(w.search))
	m.HandleFunc("GET /static/{name}", w.static)
	m.HandleFunc("GET /wait/{id}", w.page(w.waitPage))
	m.HandleFunc("POST /alignment", w.sent(w.putPage))
	m.HandleFunc("POST /alignment/rule", w.sent(w.ruleOn))
	m.HandleFunc("POST /ask", w.sent(w.ask))
	m.HandleFunc("POST /enter", w.enter)
	m.HandleFunc("POST /press", w.sent(w.press))
	m.HandleFunc("POST /say", w.sent(w.say))
	m.HandleFunc("POST /submit", w.sent(w.submit))
	if w.Pages != nil {
		pages := http.StripPrefix(strings.TrimSuffix(PagesPath, "/"), w.Pages)
		m.HandleFunc("GET "+PagesPath, w.page(func(out http.ResponseWriter, r *http.Request, _ session) { pages.ServeHTTP(out, r) }))
	}
	m.HandleFunc("/", func(out http.ResponseWriter, r *http.Request) {
		w.fail(out, http.StatusNotFound, "There is no such page.", "Begin at "+w.Address())
	})
	return m
}

// meta is what somebody does, read from the form that they sent. It reports
// false where the form is none of ours.
func (w *Web) meta(r *http.Request, s session) (bot.Meta, bool) {
	d := r.PostForm.Get("delivery")
	if len(d) != store.IDLen || strings.Trim(d, "abcdefghijklmnopqrstuvwxyz234567") != "" {
		return bot.Meta{}, false
	}
	return bot.Meta{Delivery: s.id + "-" + d, Who: w.who(s.id), Where: w.place("")}, true
}

func (w *Web) strange(out http.ResponseWriter) {
	w.fail(out, http.StatusBadRequest, "That is no form of mine.", "Load the page again and send it anew.")
}

// words are what was typed, as UTF-8 on one line.
func words(r *http.Request, field string) string {
	return strings.TrimSpace(strings.Join(strings.Fields(strings.ToValidUTF8(r.PostForm.Get(field), "?")), " "))
}

// ask takes a question: to be answered to the asker alone, or before all.
func (w *Web) ask(out http.ResponseWriter, r *http.Request, s session) {
	m, ok := w.meta(r, s)
	if !ok {
		w.strange(out)
		return
	}
	text := words(r, "words")
	if text == "" {
		http.Redirect(out, r, "/help", http.StatusSeeOther)
		return
	}
	if c := r.PostForm.Get("code"); c != "" {
		if _, err := code.Parse(c); err != nil {
			w.strange(out)
			return
		}
		text = "code=" + c + " " + text
	}
	if season := words(r, "season"); season != "" {
		if strings.ContainsAny(season, " \t") {
			w.fail(out, http.StatusBadRequest, "A season has no spaces in it.", "Go back, and write it like 2025-26.")
			return
		}
		text = "season=" + season + " " + text
	}
	if r.PostForm.Get("open") != "" {
		w.do(out, r, bot.Mention{Meta: m, Message: store.NewID(), Text: text}, message{})
		return
	}
	w.do(out, r, bot.Command{Meta: m, Text: text}, message{})
}

// on is the message that a form is about, where its sender may see it. An
// answer that was gone from memory is remembered again.
func (w *Web) on(r *http.Request, s session) (message, bool) {
	return w.find(r.Context(), r.PostForm.Get("message"), s.id)
}

// gone says that a message is not there.
func (w *Web) gone(out http.ResponseWriter) {
	w.fail(out, http.StatusNotFound, "There is nothing here, or nothing that you may see.",
		"What only its asker sees has no link, and questions are deleted after a while. Ask it again.")
}

// say takes words in the talk that a message stands in.
func (w *Web) say(out http.ResponseWriter, r *http.Request, s session) {
	m, ok := w.meta(r, s)
	text := words(r, "words")
	if !ok {
		w.strange(out)
		return
	}
	on, ok := w.on(r, s)
	if !ok {
		w.gone(out)
		return
	}
	if text == "" {
		http.Redirect(out, r, "/q/"+on.id, http.StatusSeeOther)
		return
	}
	m.Where.Thread = on.talk()
	w.do(out, r, bot.Mention{Meta: m, Message: store.NewID(), Text: text}, on)
}

// press takes the press of a button.
func (w *Web) press(out http.ResponseWriter, r *http.Request, s session) {
	m, ok := w.meta(r, s)
	state := r.PostForm.Get("state")
	if !ok || state == "" || len(state) > bot.MaxState || !utf8.ValidString(state) {
		w.strange(out)
		return
	}
	on, ok := w.on(r, s)
	if !ok {
		w.gone(out)
		return
	}
	m.Where.Thread = on.thread
	w.do(out, r, bot.Press{Meta: m, Message: on.id, Private: on.to != "", State: state}, on)
}

// fieldPrefix stands before the names of a form's own fields.
const fieldPrefix = "field-"

// submit takes a form that was filled in.
func (w *Web) submit(out http.ResponseWriter, r *http.Request, s session) {
	m, ok := w.meta(r, s)
	state := r.PostForm.Get("state")
	if !ok || len(state) > bot.MaxState || !utf8.ValidString(state) {
		w.strange(out)
		return
	}
	e := bot.Submit{Meta: m, State: state, Values: map[string]string{}}
	var on message
	if r.PostForm.Get("message") != "" {
		if on, ok = w.on(r, s); !ok {
			w.gone(out)
			return
		}
		e.Message, e.Private, e.Where.Thread = on.id, on.to != "", on.thread
	}
	for name := range r.PostForm {
		if field, ok := strings.CutPrefix(name, fieldPrefix); ok {
			e.Values[field] = strings.TrimSpace(strings.ToValidUTF8(r.PostForm.Get(name), "?"))
		}
	}
	w.do(out, r, e, on)
}

// mostTyped is how much of what is typed is looked at for completions.
const mostTyped = 500

// complete answers the script that completes what is typed.
func (w *Web) complete(out http.ResponseWriter, r *http.Request, s session) {
	option, typed := r.URL.Query().Get("option"), r.URL.Query().Get("typed")
	if len(typed) > mostTyped || !utf8.ValidString(typed) {
		typed = ""
	}
	type choice struct {
		Label string `json:"label"`
		Value string `json:"value"`
	}
	all := []choice{}
	e := bot.Complete{Meta: bot.Meta{Delivery: store.NewID(), Who: w.who(s.id), Where: w.place("")}, Name: "ask", Option: option, Typed: typed}
	if c, ok := w.choices(e).(bot.Choices); ok {
		for _, i := range c.Items {
			all = append(all, choice(i))
		}
	}
	out.Header().Set("Content-Type", "application/json; charset=utf-8")
	_ = json.NewEncoder(out).Encode(all) // whoever typed may be gone
}

// choices never panics: a completion that fails is none.
func (w *Web) choices(e bot.Complete) (r bot.Reply) {
	defer func() {
		if p := recover(); p != nil {
			w.Log.ErrorContext(w.run, "completion panicked", "cause", p)
			r = bot.Nothing{}
		}
	}()
	return w.h(w.run, e)
}
