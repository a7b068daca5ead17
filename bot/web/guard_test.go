package web

import (
	"context"
	"net"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// silent is a handler that answers everything in the same words.
func silent(context.Context, bot.Event) bot.Reply {
	return bot.Say{Private: true, Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line("an answer")}}}}}
}

func open(t *testing.T, o Options) (*Web, *browser) {
	t.Helper()
	o.Listener = listen(t)
	w, err := New(o)
	if err != nil {
		t.Fatal(err)
	}
	serve(t, w, silent)
	return w, newBrowser(t, w)
}

// Another site neither reads nor sends through somebody's browser, under
// whatever name it leads there; a link on it does lead here.
func TestGuard(t *testing.T) {
	w, b := open(t, Options{})
	form := b.form("words", "a play")
	for _, test := range []struct {
		name, method, path string
		host               string
		header             map[string]string
		want               int
	}{
		{"typed", "GET", "/", "", map[string]string{"Sec-Fetch-Site": "none", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}, 200},
		{"another name", "GET", "/", "evil.example", nil, 421},
		{"another name that leads here", "GET", "/", "evil.example:" + w.hosts[0][len("127.0.0.1:"):], nil, 421},
		{"another port", "GET", "/", "127.0.0.1:1", nil, 421},
		{"localhost", "GET", "/", "localhost:" + w.hosts[0][len("127.0.0.1:"):], nil, 200},
		{"asked by another site", "POST", "/ask", "", map[string]string{"Origin": "http://evil.example"}, 403},
		{"asked from nowhere", "POST", "/ask", "", map[string]string{"Origin": "null"}, 403},
		{"asked by another port", "POST", "/ask", "", map[string]string{"Origin": "http://127.0.0.1:1"}, 403},
		{"asked by another site that hides", "POST", "/ask", "", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}, 403},
		{"asked by a neighbour", "POST", "/ask", "", map[string]string{"Sec-Fetch-Site": "same-site"}, 403},
		{"read by another site", "GET", "/complete?option=text&typed=a", "", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "no-cors", "Sec-Fetch-Dest": "script"}, 403},
		{"read with its origin", "GET", "/complete?option=text&typed=a", "", map[string]string{"Origin": "http://evil.example"}, 403},
		{"shown in a frame", "GET", "/", "", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "iframe"}, 403},
		{"followed from another site", "GET", "/", "", map[string]string{"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": "navigate", "Sec-Fetch-Dest": "document"}, 200},
		{"asked here", "POST", "/ask", "", map[string]string{"Origin": w.origin, "Sec-Fetch-Site": "same-origin"}, 303},
	} {
		body := ""
		if test.method == "POST" {
			body = form.Encode()
		}
		r, err := http.NewRequest(test.method, b.base+test.path, strings.NewReader(body))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		r.Host = test.host
		for k, v := range test.header {
			r.Header.Set(k, v)
		}
		p := b.send(r)
		if p.status != test.want {
			t.Errorf("%s: %d, want %d", test.name, p.status, test.want)
		}
		for h, want := range map[string]string{"Content-Security-Policy": policy, "X-Content-Type-Options": "nosniff", "Referrer-Policy": "same-origin"} {
			if p.header.Get(h) != want {
				t.Errorf("%s: the header %s is %q", test.name, h, p.header.Get(h))
			}
		}
	}
}

// A form is of one browser: another's does not send it.
func TestFormToken(t *testing.T) {
	w, b := open(t, Options{})
	other := newBrowser(t, w)
	stolen := b.form("words", "a play")
	other.get("/")
	if p := other.post("/ask", stolen); p.status != http.StatusForbidden {
		t.Errorf("another browser's form gives %d", p.status)
	}
	if p := newBrowser(t, w).post("/ask", stolen); p.status != http.StatusForbidden {
		t.Errorf("without a cookie a form gives %d", p.status)
	}
}

// What one person alone sees has no link, and nobody else gets it by its id.
func TestPrivate(t *testing.T) {
	w, b := open(t, Options{})
	p := b.post("/ask", b.form("words", "a play"))
	if !strings.HasPrefix(p.to, "/q/") || len(p.to) != len("/q/")+store.IDLen {
		t.Fatalf("the answer is at %q", p.to)
	}
	if own := b.get(p.to); own.status != 200 || !strings.Contains(own.body, "an answer") || strings.Contains(own.body, `id="link"`) {
		t.Errorf("its asker sees %d\n%s", own.status, own.body)
	}
	other := newBrowser(t, w)
	if got := other.get(p.to); got.status != http.StatusNotFound || strings.Contains(got.body, "an answer") {
		t.Errorf("another gets %d\n%s", got.status, got.body)
	}
	if got := other.post("/press", other.form("message", p.to[len("/q/"):], "state", "/undo/x")); got.status != http.StatusNotFound {
		t.Errorf("another presses: %d", got.status)
	}
}

// Where an access token is set nothing is shown or done without it.
func TestAccessToken(t *testing.T) {
	const token = "correct horse battery"
	w, b := open(t, Options{Token: token, URL: "https://netpost.example"})
	b.base = "http://" + w.Listener.Addr().String()
	for _, path := range []string{"/", "/help", "/search", "/q/x", "/notes/", "/complete"} {
		if p := b.get(path); p.status != http.StatusUnauthorized && p.status != http.StatusNotFound || strings.Contains(p.body, `action="/ask"`) {
			t.Errorf("%s without the token: %d", path, p.status)
		}
	}
	if p := b.post("/ask", url.Values{"words": {"a play"}}); p.status != http.StatusForbidden && p.status != http.StatusUnauthorized {
		t.Errorf("asking without the token: %d", p.status)
	}
	r, err := http.NewRequest(http.MethodGet, b.base+"/", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Cookie", cookieName+"="+store.NewID()+".forged")
	if p := b.send(r); p.status != http.StatusUnauthorized {
		t.Errorf("a forged cookie: %d", p.status)
	}
	// The origin of the request is checked against the host that it is for.
	enter := func(token string) page {
		r, err := http.NewRequest(http.MethodPost, b.base+"/enter", strings.NewReader(url.Values{"token": {token}}.Encode()))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		return b.send(r)
	}
	if p := enter("wrong"); p.status != http.StatusUnauthorized || len(p.header["Set-Cookie"]) > 0 {
		t.Errorf("a wrong token: %d, %q", p.status, p.header["Set-Cookie"])
	}
	p := enter(" " + token + " ")
	cookies := p.header["Set-Cookie"]
	if p.status != http.StatusSeeOther || len(cookies) != 1 {
		t.Fatalf("the token: %d, %q", p.status, cookies)
	}
	for _, s := range []string{"HttpOnly", "Secure", "SameSite=Lax"} {
		if !strings.Contains(cookies[0], s) {
			t.Errorf("the cookie is not %s: %s", s, cookies[0])
		}
	}
	r.Header.Set("Cookie", strings.Split(cookies[0], ";")[0])
	if p := b.send(r); p.status != 200 || !strings.Contains(p.body, `action="/ask"`) {
		t.Errorf("with the token: %d", p.status)
	}
	if strings.Contains(p.body+cookies[0], token) {
		t.Error("the token itself is in the answer")
	}
}

func TestNew(t *testing.T) {
	l := listen(t)
	defer l.Close()
	for _, test := range []struct {
		o    Options
		want string
	}{
		{Options{}, "no listener"},
		{Options{Listener: l, Token: "short"}, "fewer than 16"},
		{Options{Listener: l, URL: "netpost.example"}, "not the address of a site"},
		{Options{Listener: l, URL: "https://netpost.example/folder"}, "not the address of a site"},
		{Options{Listener: elsewhere{l}}, "can be reached from other machines"},
	} {
		if _, err := New(test.o); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%+v gives %v, want %q", test.o, err, test.want)
		}
	}
	if _, err := New(Options{Listener: elsewhere{l}, Token: strings.Repeat("x", 16), URL: "https://netpost.example"}); err != nil {
		t.Error(err)
	}
}

// elsewhere is a listener that other machines reach.
type elsewhere struct{ net.Listener }

func (elsewhere) Addr() net.Addr { return &net.TCPAddr{IP: net.IPv4(192, 0, 2, 1), Port: 80} }
