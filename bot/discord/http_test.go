package discord_test

import (
	"bytes"
	"net/http"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/bottest"
)

// Requests that Discord did not send, or not now, are refused with what to do,
// and the adapter lives.
func TestBadRequests(t *testing.T) {
	t.Parallel()
	var r bottest.Recorder
	c := start(t, server(t), httpMode, r.Handle)
	c.says(c.message(c.Slash(ana, crewChannel, "ask", play("first"))), "first")
	ping := []byte(`{"type":1,"id":"1","application_id":"8800","token":"t"}`)
	set := func(name, value string) func(*http.Request) {
		return func(r *http.Request) { r.Header.Set(name, value) }
	}
	for name, in := range map[string]struct {
		body   []byte
		at     time.Time
		change func(*http.Request)
		status int
		words  string
	}{
		"a ping":             {ping, time.Now(), nil, 200, `{"type":1}`},
		"no signature":       {ping, time.Now(), func(r *http.Request) { r.Header.Del("X-Signature-Ed25519") }, 401, "not signed"},
		"no time":            {ping, time.Now(), func(r *http.Request) { r.Header.Del("X-Signature-Timestamp") }, 401, "not signed"},
		"a wrong signature":  {ping, time.Now(), set("X-Signature-Ed25519", strings.Repeat("ab", 64)), 401, "signature is wrong"},
		"half a signature":   {ping, time.Now(), set("X-Signature-Ed25519", "ab"), 401, "signature is wrong"},
		"no hex":             {ping, time.Now(), set("X-Signature-Ed25519", "zz"), 401, "signature is wrong"},
		"another time":       {ping, time.Now(), set("X-Signature-Timestamp", "1"), 401, "signature is wrong"},
		"an old request":     {ping, time.Now().Add(-6 * time.Minute), nil, 401, "five minutes off"},
		"one from tomorrow":  {ping, time.Now().Add(24 * time.Hour), nil, 401, "five minutes off"},
		"not too old":        {ping, time.Now().Add(-4 * time.Minute), nil, 200, `{"type":1}`},
		"too long":           {bytes.Repeat([]byte("x"), 2<<20), time.Now(), nil, 413, "Send a shorter one"},
		"no JSON":            {[]byte("hello"), time.Now(), nil, 400, "Send what Discord sends"},
		"no interaction":     {[]byte("{}"), time.Now(), nil, 400, "Send what Discord sends"},
		"one without an id":  {[]byte(`{"type":2}`), time.Now(), nil, 400, "Send what Discord sends"},
		"one without a type": {[]byte(`{"id":"1","token":"t"}`), time.Now(), nil, 400, "Send what Discord sends"},
		"another method":     {ping, time.Now(), func(r *http.Request) { r.Method = "PUT" }, 405, "Put this address into"},
		"another path":       {ping, time.Now(), func(r *http.Request) { r.URL.Path = "/other" }, 404, "not found"},
	} {
		status, reply := c.Post(in.body, in.at, in.change)
		if status != in.status || !strings.Contains(string(reply), in.words) {
			t.Errorf("%s: %d %s, want %d %q", name, status, reply, in.status, in.words)
		}
	}
	if n := len(r.Events()); n != 1 {
		t.Errorf("%d events came of it", n)
	}
	c.says(c.message(c.Slash(ana, crewChannel, "ask", play("still here"))), "still here")
}

// A request that is sent again, as somebody who listened could, is not answered
// again.
func TestReplay(t *testing.T) {
	t.Parallel()
	var r bottest.Recorder
	c := start(t, server(t), httpMode, r.Handle)
	i := c.Slash(ana, crewChannel, "ask", play("once"))
	c.message(i)
	status, reply := c.Post(i.Sent(), time.Now(), nil)
	if status != http.StatusAccepted || len(reply) != 0 {
		t.Errorf("answered with %d %s", status, reply)
	}
	if n := len(r.Events()); n != 1 {
		t.Errorf("%d events", n)
	}
}
