package web

import (
	"context"
	"encoding/json"
	"io"
	"net"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/net/html"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/store"
)

func TestContract(t *testing.T) {
	bottest.Contract(t, bottest.Harness{
		Start: start,
		Lacks: map[string]string{
			"rate limit": "a browser takes every page that it asked for",
			"reconnect":  "each request stands alone: there is no connection to keep",
		},
	})
}

// listen takes an address of this machine.
func listen(t testing.TB) net.Listener {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// serve runs a channel until the test ends.
func serve(t testing.TB, w *Web, h bot.Handler) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- w.Run(ctx, h) }()
	t.Cleanup(func() {
		cancel()
		if err := <-ended; err != nil {
			t.Errorf("Run: %v", err)
		}
	})
}

// browser is one browser with its cookie. It follows no redirection.
type browser struct {
	t    testing.TB
	base string
	http.Client
}

func newBrowser(t testing.TB, w *Web) *browser {
	t.Helper()
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	return &browser{t: t, base: w.origin, Client: http.Client{Jar: jar, CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}}
}

// page is an answer to a request.
type page struct {
	status int
	to     string // where it leads on
	body   string
	header http.Header
}

func (b *browser) send(r *http.Request) page {
	b.t.Helper()
	out, err := b.Do(r)
	if err != nil {
		b.t.Error(err)
		return page{}
	}
	defer out.Body.Close()
	body, err := io.ReadAll(out.Body)
	if err != nil {
		b.t.Error(err)
	}
	return page{out.StatusCode, out.Header.Get("Location"), string(body), out.Header}
}

func (b *browser) get(path string) page {
	b.t.Helper()
	r, err := http.NewRequest(http.MethodGet, b.base+path, nil)
	if err != nil {
		b.t.Fatal(err)
	}
	return b.send(r)
}

func (b *browser) post(path string, form url.Values) page {
	b.t.Helper()
	r, err := http.NewRequest(http.MethodPost, b.base+path, strings.NewReader(form.Encode()))
	if err != nil {
		b.t.Fatal(err)
	}
	r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	r.Header.Set("Origin", b.base)
	return b.send(r)
}

// token is that of the browser's forms, read off a page.
func (b *browser) token() string {
	b.t.Helper()
	f, ok := forms(b.get("/").body)["/ask"]
	if !ok {
		b.t.Fatal("the first page has no form to ask with")
	}
	return f.Get("form")
}

// form are the fields of a form that a browser sends for the first time.
func (b *browser) form(fields ...string) url.Values {
	out := url.Values{"form": {b.token()}, "delivery": {store.NewID()}}
	for i := 0; i < len(fields); i += 2 {
		out.Set(fields[i], fields[i+1])
	}
	return out
}

// forms are the hidden and filled fields of a page's forms, by where they go.
func forms(page string) map[string]url.Values {
	out := map[string]url.Values{}
	var now url.Values
	z := html.NewTokenizer(strings.NewReader(page))
	for z.Next() != html.ErrorToken {
		switch t := z.Token(); t.Data {
		case "form":
			if t.Type == html.StartTagToken {
				now = url.Values{}
				out[attr(t, "action")] = now
			} else {
				now = nil
			}
		case "input":
			if now != nil && attr(t, "name") != "" {
				now.Set(attr(t, "name"), attr(t, "value"))
			}
		}
	}
	return out
}

func attr(t html.Token, name string) string {
	for _, a := range t.Attr {
		if a.Key == name {
			return a.Val
		}
	}
	return ""
}

// read is what people read of HTML, with its buttons and pictures.
func read(text string) (s bottest.Seen) {
	var b strings.Builder
	var button *bot.Button
	z := html.NewTokenizer(strings.NewReader(text))
	for z.Next() != html.ErrorToken {
		t := z.Token()
		switch {
		case t.Type == html.TextToken:
			b.WriteString(t.Data)
			if button != nil {
				button.Label += t.Data
			}
		case t.Data == "strong" || t.Data == "span":
		case t.Data == "button" && t.Type == html.StartTagToken:
			button = &bot.Button{State: attr(t, "value")}
		case t.Data == "button":
			s.Buttons = append(s.Buttons, *button)
			button = nil
			b.WriteString("\n")
		case t.Data == "img":
			s.Images = append(s.Images, attr(t, "alt"))
		default:
			b.WriteString("\n")
		}
	}
	s.Text = b.String()
	return s
}

// rig is the channel with a browser before it.
type rig struct {
	*Web
	*browser
	waiting atomic.Int64
	who     atomic.Value      // whose browser it is
	roots   map[string]string // the first message of each thread of the contract's

	mu      sync.Mutex
	seen    []bottest.Seen
	refused []string
	last    func()
}

func start(t *testing.T, h bot.Handler) bottest.Platform {
	w, err := New(Options{Listener: listen(t), Channel: "CCREW1", Wait: 50 * time.Millisecond})
	if err != nil {
		t.Fatal(err)
	}
	r := &rig{Web: w, roots: map[string]string{}}
	r.who.Store("UANA1")
	w.person = func(string) string { return r.who.Load().(string) }
	w.arrived = func(d int) { r.waiting.Add(int64(d)) }
	w.watch = func(m message, change bool) {
		s := read(w.body(m, session{}))
		s.Message, s.Changed, s.Where, s.To = m.id, change, w.place(m.thread), m.to
		r.mu.Lock()
		r.seen = append(r.seen, s)
		r.mu.Unlock()
	}
	r.browser = newBrowser(t, w)
	serve(t, w, h)
	r.token()
	return r
}

func (r *rig) Adapter() bot.Adapter { return r.Web }
func (r *rig) Pings() []string      { return nil }
func (r *rig) Throttle()            {}
func (r *rig) Drop()                {}
func (r *rig) Unacked() int         { return int(r.waiting.Load()) }
func (r *rig) Gone() bot.Target {
	return bot.Target{Place: bot.Place{Platform: Platform, Workspace: "elsewhere", Channel: "CCREW1"}}
}

func (r *rig) Seen() []bottest.Seen {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]bottest.Seen{}, r.seen...)
}

func (r *rig) Refused() []string {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]string{}, r.refused...)
}

func (r *rig) Again() { r.last() }

func (r *rig) see(s bottest.Seen) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.seen = append(r.seen, s)
}

// by sends a form, and can send it again.
func (r *rig) by(path string, form url.Values) page {
	send := func() page {
		p := r.post(path, form)
		if p.status != http.StatusSeeOther {
			r.mu.Lock()
			r.refused = append(r.refused, path+": "+p.body)
			r.mu.Unlock()
		}
		return p
	}
	r.last = func() { send() }
	return send()
}

func (r *rig) Do(e bot.Event) bool {
	r.who.Store(bot.MetaOf(e).Who.ID)
	switch e := e.(type) {
	case bot.Command:
		r.by("/ask", r.form("words", strings.TrimSpace(e.Name+" "+e.Text)))
	case bot.Mention:
		if e.Where.Thread == "" {
			r.by("/ask", r.form("words", e.Text, "open", "yes"))
			break
		}
		if r.roots[e.Where.Thread] == "" {
			root, err := r.Post(r.t.(*testing.T).Context(), bot.Target{Place: r.place("")}, bot.Message{})
			if err != nil {
				r.t.Fatal(err)
			}
			r.roots[e.Where.Thread] = root.Message
		}
		r.by("/say", r.form("words", e.Text, "message", r.roots[e.Where.Thread]))
	case bot.Press:
		p := r.by("/press", r.form("message", e.Message, "state", e.State))
		if strings.HasPrefix(p.to, "/form/") {
			r.opened(p.to)
		}
	case bot.Submit:
		f := r.form("message", e.Message, "state", e.State)
		for k, v := range e.Values {
			f.Set(fieldPrefix+k, v)
		}
		r.by("/submit", f)
	case bot.Complete:
		p := r.get("/complete?" + url.Values{"option": {e.Option}, "typed": {e.Typed}}.Encode())
		var all []bot.Choice
		if err := json.Unmarshal([]byte(p.body), &all); err != nil {
			r.t.Error(err)
		}
		r.see(bottest.Seen{Choices: all})
	default:
		return false
	}
	return true
}

// opened reads the page of a form.
func (r *rig) opened(path string) {
	body := r.get(path).body
	var f bot.Form
	f.State = forms(body)["/submit"].Get("state")
	title, label := false, false
	z := html.NewTokenizer(strings.NewReader(body))
	for z.Next() != html.ErrorToken {
		switch t := z.Token(); {
		case t.Data == "h1":
			title = t.Type == html.StartTagToken
		case t.Data == "label":
			label = t.Type == html.StartTagToken
		case t.Type == html.TextToken && title:
			f.Title += t.Data
		case t.Type == html.TextToken && label:
			f.Fields = append(f.Fields, bot.Input{Label: t.Data})
		}
	}
	r.see(bottest.Seen{Form: &f})
}

func (r *rig) Strange() int {
	before := len(r.Seen())
	on := ""
	if before > 0 {
		on = r.Seen()[before-1].Message
	}
	long := r.form("words", strings.Repeat("x", maxBody))
	forged := r.form("words", "forged")
	forged.Set("form", "AAAA")
	misshapen := r.form("words", "misshapen")
	misshapen.Set("delivery", "../1")
	n := 0
	for _, s := range []struct {
		path string
		form url.Values
		want int
	}{
		{"/ask", url.Values{"words": {"no token"}}, http.StatusForbidden},
		{"/ask", forged, http.StatusForbidden},
		{"/ask", misshapen, http.StatusBadRequest},
		{"/ask", long, http.StatusRequestEntityTooLarge},
		{"/ask", r.form("words", "x", "code", "beach"), http.StatusBadRequest},
		{"/frobnicate", r.form("words", "x"), http.StatusNotFound},
		{"/press", r.form("message", "nothing", "state", "/undo/x"), http.StatusNotFound},
		{"/press", r.form("message", on, "state", ""), http.StatusBadRequest},
		{"/press", r.form("message", on, "state", "\xff"), http.StatusBadRequest},
		{"/press", r.form("message", on, "state", strings.Repeat("/x", 100)), http.StatusBadRequest},
		{"/say", r.form("message", "nothing", "words", "x"), http.StatusNotFound},
		{"/submit", r.form("message", "nothing", "state", "/tell/x"), http.StatusNotFound},
	} {
		if p := r.post(s.path, s.form); p.status != s.want {
			r.t.Errorf("%s with %v gives %d, not %d", s.path, s.form, p.status, s.want)
		}
		n++
	}
	if len(r.Seen()) != before {
		r.t.Errorf("strange requests left something to see: %+v", r.Seen()[before:])
	}
	return n
}
