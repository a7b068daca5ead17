package slack_test

import (
	"bytes"
	"io"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/slack/slackfake"
)

// Requests that Slack did not send, or that can't be read, are refused with a
// sentence, and the process lives.
func TestBadRequests(t *testing.T) {
	var r bottest.Recorder
	s := workspace(t)
	c := start(t, s, httpMode, r.Handle)
	const (
		form  = "application/x-www-form-urlencoded"
		plain = "application/json"
	)
	now := time.Now()
	command := []byte("user_id=U0ANA&channel_id=C0TALK&text=x&trigger_id=t1")
	signed := func(secret string, at time.Time, typ string, body []byte) http.Header {
		h := http.Header{"Content-Type": {typ}}
		slackfake.Sign(h, secret, at, body)
		return h
	}
	altered := signed(slackfake.SigningSecret, now, form, command)
	odd := signed(slackfake.SigningSecret, now, form, command)
	odd.Set("X-Slack-Signature", "v0=zz")
	late := signed(slackfake.SigningSecret, now, form, command)
	late.Set("X-Slack-Request-Timestamp", "soon")
	malformed := func(typ, body string) (http.Header, []byte) {
		return signed(slackfake.SigningSecret, now, typ, []byte(body)), []byte(body)
	}
	h1, b1 := malformed(plain, `{"type":`)
	h2, b2 := malformed(form, `payload={"type":`)
	h3, b3 := malformed(form, `%zz`)
	h4, b4 := malformed("text/plain", `hello`)
	h5, b5 := malformed(form, `user_id=`)
	h6, b6 := malformed("", `x`)
	for _, test := range []struct {
		name   string
		header http.Header
		body   []byte
		status int
		words  string
	}{
		{"not signed", http.Header{"Content-Type": {form}}, command, 401, "not signed"},
		{"another secret", signed("another", now, form, command), command, 401, "signing secret"},
		{"another body", altered, append(command, 'y'), 401, "signing secret"},
		{"no hex", odd, command, 401, "signing secret"},
		{"no time", late, command, 401, "signing secret"},
		{"stale", signed(slackfake.SigningSecret, now.Add(-6*time.Minute), form, command), command, 401, "clock"},
		{"from the future", signed(slackfake.SigningSecret, now.Add(6*time.Minute), form, command), command, 401, "clock"},
		{"too long", signed(slackfake.SigningSecret, now, form, command), bytes.Repeat([]byte("x"), 2<<20), 413, "shorter"},
		{"broken JSON", h1, b1, 400, "can't be read"},
		{"broken payload", h2, b2, 400, "can't be read"},
		{"broken form", h3, b3, 400, "can't be read"},
		{"another type", h4, b4, 400, "can't be read"},
		{"no command", h5, b5, 400, "can't be read"},
		{"no type", h6, b6, 400, "can't be read"},
	} {
		req, err := http.NewRequest(http.MethodPost, s.Endpoint(), bytes.NewReader(test.body))
		if err != nil {
			t.Fatal(err)
		}
		req.Header = test.header
		status, words := do(t, req)
		if status != test.status || !strings.Contains(words, test.words) {
			t.Errorf("%s: %d %q, want %d and %q", test.name, status, words, test.status, test.words)
		}
	}
	get, err := http.NewRequest(http.MethodGet, s.Endpoint(), nil)
	if err != nil {
		t.Fatal(err)
	}
	if status, words := do(t, get); status != 405 || !strings.Contains(words, "settings") {
		t.Errorf("GET: %d %q", status, words)
	}
	if len(r.Events()) != 0 {
		t.Errorf("events came of it: %v", r.Events())
	}
	ana := c.Person("U0ANA")
	c.fine(ana.Command(talk, "still here"))
	c.says(c.last(ana, talk, slackfake.Message{}), "still here")
}

// A request that is played back within its time is answered once.
func TestReplay(t *testing.T) {
	var r bottest.Recorder
	s := workspace(t)
	c := start(t, s, httpMode, r.Handle)
	ana := c.Person("U0ANA")
	d := ana.Command(talk, "once")
	c.fine(d)
	for range 3 {
		c.fine(c.Again(d))
	}
	if n := len(bottest.Of[bot.Command](&r)); n != 1 {
		t.Errorf("answered %d times", n)
	}
}

// A new address is asked for a word back, and checked for its certificate.
func TestNewAddress(t *testing.T) {
	s := workspace(t)
	start(t, s, httpMode, bottest.Echo)
	for _, test := range []struct{ typ, body, want string }{
		{"application/json", `{"type":"url_verification","token":"x","challenge":"a word"}`, "a word"},
		{"application/x-www-form-urlencoded", url.Values{"ssl_check": {"1"}, "token": {"x"}}.Encode(), ""},
	} {
		req, err := http.NewRequest(http.MethodPost, s.Endpoint(), strings.NewReader(test.body))
		if err != nil {
			t.Fatal(err)
		}
		req.Header.Set("Content-Type", test.typ)
		slackfake.Sign(req.Header, slackfake.SigningSecret, time.Now(), []byte(test.body))
		if status, got := do(t, req); status != 200 || got != test.want {
			t.Errorf("%s: %d %q, want %q", test.body, status, got, test.want)
		}
	}
}

func TestListen(t *testing.T) {
	s := workspace(t)
	o := options(s, httpMode, &bottest.Log{})
	o.Listen = "256.0.0.1:http"
	a, err := slack.New(o)
	if err != nil {
		t.Fatal(err)
	}
	if err := a.Run(t.Context(), bottest.Echo); err == nil || !strings.Contains(err.Error(), "256.0.0.1") {
		t.Errorf("Run on a wrong address: %v", err)
	}
}

func do(t *testing.T, req *http.Request) (status int, body string) {
	t.Helper()
	client := &http.Client{Timeout: wait}
	defer client.CloseIdleConnections()
	resp, err := client.Do(req)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	b, err := io.ReadAll(resp.Body)
	if err != nil {
		t.Fatal(err)
	}
	return resp.StatusCode, strings.TrimSpace(string(b))
}
