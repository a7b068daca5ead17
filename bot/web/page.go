package web

import (
	"bytes"
	"embed"
	"fmt"
	"html"
	"html/template"
	"net/http"
	"path"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook/pages"
	"example.org/netpost/engine/code"
)

//go:embed static templates
var files embed.FS

var templates = template.Must(template.New("").ParseFS(files, "templates/*.html"))

// frame is what a page is made of.
type frame struct {
	Title   string
	Session session
	Here    string // the part of the site that the page is in
	Web     *Web

	Body    template.HTML // of messages
	Asked   string        // the words that the message answers
	Link    string        // that leads others here
	Back    string        // the page that this one came from
	Say     form          // for words below a message
	Trouble string
	Again   string // the page to look at in a second

	Codes  []code.Code
	Past   []asked
	Posted []post
	Typed  string
	Board  *board // of the court with players on it
}

// asked is a question in the list of those asked before.
type asked struct {
	bot.Asked
	When string
}

// post is a message that was posted here.
type post struct{ ID, Title string }

// Pages is where the pages of the notes are, empty where there are none.
func (f frame) Pages() string {
	if f.Web.Pages == nil {
		return ""
	}
	return PagesPath
}

// Search reports whether notes can be searched.
func (f frame) Search() bool { return f.Web.Notes != nil }

// Hidden are the hidden fields of a form of the page.
func (f frame) Hidden() template.HTML {
	s := f.Say
	s.Token, s.Delivery = f.Session.form(), store.NewID()
	return template.HTML(s.hidden())
}

func (w *Web) write(out http.ResponseWriter, name string, f frame) {
	w.writeStatus(out, http.StatusOK, name, f)
}

func (w *Web) writeStatus(out http.ResponseWriter, status int, name string, f frame) {
	f.Web = w
	var b bytes.Buffer
	if err := templates.ExecuteTemplate(&b, name+".html", f); err != nil {
		panic("web: a page of ours can't be made: " + err.Error())
	}
	out.Header().Set("Content-Type", "text/html; charset=utf-8")
	out.WriteHeader(status)
	_, _ = out.Write(b.Bytes()) // whoever asked may be gone
}

// fail is a page that says what is wrong and how to mend it.
func (w *Web) fail(out http.ResponseWriter, status int, what, mend string) {
	w.writeStatus(out, status, "fail", frame{Title: what, Trouble: mend})
}

// mostPast is how many questions asked before are listed.
const mostPast = 20

func (w *Web) home(out http.ResponseWriter, r *http.Request, s session) {
	f := frame{Title: "Ask", Here: "ask", Session: s, Codes: code.All()}
	if w.Past != nil {
		past, err := w.Past.Past(r.Context(), w.who(s.id), w.place(""), mostPast)
		if err != nil {
			w.Log.ErrorContext(r.Context(), "what was asked before could not be read", "cause", err)
			f.Trouble = "What was asked before could not be read; it is tried again when you load the page."
		}
		for _, a := range past {
			f.Past = append(f.Past, asked{a, a.At.UTC().Format("2 January, 15:04") + " UTC"})
		}
	}
	for _, m := range w.loose(s.id, mostPast) {
		f.Posted = append(f.Posted, post{m.id, title(m.Doc)})
	}
	w.write(out, "home", f)
}

// title is a message in one line.
func title(d bot.Doc) string {
	for _, b := range d.Blocks {
		if h, ok := b.(bot.Heading); ok && h.Tone != bot.Care {
			return bot.Clip(clean(h.Text), 100)
		}
	}
	return bot.Clip(strings.Join(strings.Fields(bot.PlainText(d, 200)), " "), 100)
}

// body is a message as HTML.
func (w *Web) body(m message, s session) string {
	p := printer{form: form{Token: s.form(), Delivery: store.NewID(), Message: m.id}}
	p.WriteString(`<article id="m-` + m.id + `" data-tone="` + tones[m.Doc.Tone] + `">`)
	p.message(m.Message)
	p.WriteString("</article>")
	return p.String()
}

func (w *Web) messagePage(out http.ResponseWriter, r *http.Request, s session) {
	m, ok := w.find(r.Context(), r.PathValue("id"), s.id)
	if !ok {
		w.gone(out)
		return
	}
	if m.About != "" && m.asked == "" && w.Past != nil {
		if q, ok := w.Past.Recall(r.Context(), w.who(s.id), w.place(""), m.About); ok {
			m.asked = q.Text
		}
	}
	f := frame{Title: title(m.Doc), Here: "ask", Session: s, Asked: clean(m.asked), Say: form{Message: m.id}}
	body := w.body(m, s)
	for _, o := range w.below(m, s.id) {
		body += w.body(o, s)
	}
	f.Body = template.HTML(body)
	if m.to == "" {
		f.Link = w.origin + "/q/" + m.id
	}
	if m.back != "" {
		f.Back = "/q/" + m.back
	}
	w.write(out, "message", f)
}

// done is something that a person did.
func (w *Web) done(id string, s session) (*work, bool) {
	w.mu.Lock()
	defer w.mu.Unlock()
	k, ok := w.works.get(id)
	return k, ok && k.person == s.id
}

func (w *Web) waitPage(out http.ResponseWriter, r *http.Request, s session) {
	k, ok := w.done(r.PathValue("id"), s)
	if !ok {
		w.gone(out)
		return
	}
	select {
	case <-k.done:
		http.Redirect(out, r, k.to, http.StatusSeeOther)
	case <-time.After(w.Wait):
		w.write(out, "wait", frame{Title: "One moment", Session: s, Again: r.URL.Path})
	case <-r.Context().Done():
	}
}

func (w *Web) formPage(out http.ResponseWriter, r *http.Request, s session) {
	k, ok := w.done(r.PathValue("id"), s)
	if ok {
		select {
		case <-k.done:
			ok = k.form != nil
		default:
			ok = false
		}
	}
	if !ok {
		w.gone(out)
		return
	}
	p := printer{}
	if k.form.Intro != "" {
		p.in("p", "", bot.Line(k.form.Intro))
	}
	for i, in := range k.form.Fields {
		p.input(i, in)
	}
	f := form{Token: s.form(), Delivery: store.NewID(), Message: k.on}
	p.WriteString(f.hidden() + `<input type="hidden" name="state" value="` + html.EscapeString(k.form.State) + `">`)
	p.WriteString(`<p class="send"><button class="main">`)
	p.text(k.form.Send)
	p.WriteString("</button></p>")
	w.write(out, "form", frame{Title: clean(k.form.Title), Here: "ask", Session: s, Body: template.HTML(p.String()), Back: "/q/" + k.on})
}

func (w *Web) help(out http.ResponseWriter, r *http.Request, s session) {
	var p printer
	p.message(bot.Message{Doc: bot.Help()})
	w.write(out, "text", frame{Title: "Help", Here: "help", Session: s, Body: template.HTML("<article>" + p.String() + "</article>")})
}

// mostHits is how many notes a search shows.
const mostHits = 20

// search looks through the case notes. It keeps nothing.
func (w *Web) search(out http.ResponseWriter, r *http.Request, s session) {
	if w.Notes == nil {
		w.fail(out, http.StatusNotFound, "There are no case notes here.", "Whoever runs netpost can name your association's casebook in the settings.")
		return
	}
	typed := strings.ToValidUTF8(r.URL.Query().Get("q"), "?")
	f := frame{Title: "Search the case notes", Here: "search", Session: s, Typed: bot.Clip(typed, mostTyped)}
	if strings.TrimSpace(typed) != "" {
		notes, err := w.Notes.Notes(r.Context(), bot.Question{Words: f.Typed, Code: code.Code(w.Code), Limit: mostHits})
		if err != nil {
			w.Log.ErrorContext(r.Context(), "search", "cause", err)
			f.Trouble = "The case notes could not be searched. Try again in a while."
		} else {
			var p printer
			p.led = true
			p.message(bot.Message{Doc: bot.Notes(notes)})
			f.Body = template.HTML(p.String())
		}
	}
	w.write(out, "search", f)
}

// statics are the files that every page is made with.
var statics = sync.OnceValue(func() map[string][]byte {
	all := map[string][]byte{"style.css": pages.Style()}
	entries, err := files.ReadDir("static")
	if err != nil {
		panic("web: the embedded files can't be read: " + err.Error())
	}
	for _, e := range entries {
		b, err := files.ReadFile("static/" + e.Name())
		if err != nil {
			panic("web: an embedded file can't be read: " + err.Error())
		}
		all[e.Name()] = b
	}
	return all
})

// types of the static files, by the end of their names.
var types = map[string]string{".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8", ".svg": "image/svg+xml"}

func (w *Web) static(out http.ResponseWriter, r *http.Request) {
	name := r.PathValue("name")
	b, ok := statics()[name]
	if !ok {
		w.fail(out, http.StatusNotFound, "There is no such page.", "Begin at "+w.Address())
		return
	}
	out.Header().Set("Content-Type", types[path.Ext(name)])
	out.Header().Set("Cache-Control", "no-cache")
	out.Header().Set("ETag", fmt.Sprintf(`"%s"`, tag("static", string(b))))
	http.ServeContent(out, r, "", time.Time{}, bytes.NewReader(b))
}
