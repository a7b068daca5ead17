package wire

import (
	"context"
	"errors"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"testing"

	"example.org/netpost/bot"
)

// What is not posted, or too long, is told what to do and goes no further.
func TestListener(t *testing.T) {
	on, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	finished := 0
	l := Listener{Platform: "test", Log: slog.New(slog.DiscardHandler), On: on, Path: "/in", Finish: func() { finished++ }}
	ctx, end := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() {
		ended <- l.Serve(ctx, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
			if body, ok := Posted(w, r, "The platform posts here."); ok {
				_, _ = w.Write(body)
			}
		}))
	}()
	for _, test := range []struct {
		method, path, body string
		status             int
		says               string
	}{
		{"POST", "/in", "hello", 200, "hello"},
		{"GET", "/in", "", 405, "The platform posts here."},
		{"POST", "/other", "", 404, "not found"},
		{"POST", "/in", strings.Repeat("x", MaxBody+1), 413, "Send a shorter one"},
	} {
		req, err := http.NewRequestWithContext(t.Context(), test.method, "http://"+on.Addr().String()+test.path, strings.NewReader(test.body))
		if err != nil {
			t.Fatal(err)
		}
		resp, err := http.DefaultClient.Do(req)
		if err != nil {
			t.Fatalf("%s %s: %v", test.method, test.path, err)
		}
		b, _ := io.ReadAll(resp.Body)
		_ = resp.Body.Close()
		if resp.StatusCode != test.status || !strings.Contains(string(b), test.says) {
			t.Errorf("%s %s: %d %q", test.method, test.path, resp.StatusCode, b)
		}
	}
	end()
	if err := <-ended; err != nil || finished != 1 {
		t.Errorf("ended with %v, finished %d times", err, finished)
	}
	taken := Listener{Platform: "test", Log: l.Log, Address: "127.0.0.1:no", Path: "/", Finish: func() {}}
	if err := taken.Serve(t.Context(), http.NotFoundHandler()); err == nil || !strings.Contains(err.Error(), "give an address") {
		t.Errorf("an address that can't be listened on: %v", err)
	}
}

func TestRooms(t *testing.T) {
	var r Rooms
	opened := 0
	open := func() (string, error) { opened++; return "D1", nil }
	for range 2 {
		if got, err := r.Open("U1", open); got != "D1" || err != nil {
			t.Errorf("%q, %v", got, err)
		}
	}
	if opened != 1 {
		t.Errorf("opened %d times", opened)
	}
	for _, bad := range []func() (string, error){
		func() (string, error) { return "", nil },
		func() (string, error) { return "", io.ErrUnexpectedEOF },
	} {
		if _, err := r.Open("U2", bad); !errors.Is(err, bot.ErrNotSent) {
			t.Errorf("a room that did not open: %v", err)
		}
	}
	for i := range mostRooms + 1 {
		r.Put(strings.Repeat("x", 1+i%7)+string(rune(i)), "D")
	}
	if len(r.of) > mostRooms {
		t.Errorf("%d are remembered", len(r.of))
	}
}

// A hold over all shuts every gate but those that are free.
func TestHoldAll(t *testing.T) {
	g := NewGates()
	hold, leave, err := g.Enter(t.Context(), "a", false)
	if err != nil {
		t.Fatal(err)
	}
	hold(1e12, true)
	leave()
	done, cancel := context.WithCancel(t.Context())
	cancel()
	if _, _, err := g.Enter(done, "b", false); err == nil {
		t.Error("another gate is open while all are held")
	}
	if _, leave, err := g.Enter(done, "c", true); err == nil {
		leave()
	} else if !errors.Is(err, context.Canceled) {
		t.Errorf("what is free: %v", err)
	}
	_, leave, err = g.Enter(t.Context(), "d", true)
	if err != nil {
		t.Fatalf("what is free is held: %v", err)
	}
	leave()
}

func TestFailure(t *testing.T) {
	f := Failure{Platform: "test", What: "the message", Cause: "why", Mend: "do that"}
	if err := f.Err(); errors.Is(err, bot.ErrNotSent) || err.Error() != "test: the message may be out: why" {
		t.Errorf("in doubt: %v", err)
	}
	f.NotSent = true
	if err := f.Err(); !errors.Is(err, bot.ErrNotSent) || errors.Is(err, bot.ErrGone) || !strings.HasSuffix(err.Error(), "why: do that") {
		t.Errorf("not sent: %v", err)
	}
	f.Gone = true
	if err := f.Err(); !errors.Is(err, bot.ErrNotSent) || !errors.Is(err, bot.ErrGone) {
		t.Errorf("gone: %v", err)
	}
}

func TestPage(t *testing.T) {
	for address, want := range map[string]string{
		"https://notes.example/a<b>": "https://notes.example/a%3Cb%3E", "javascript:alert(1)": "", "https:///x": "", "ftp://x.example/": "", "http://x.example/a b": "http://x.example/a%20b",
	} {
		if got, ok := Page(address); ok != (want != "") || ok && got != want {
			t.Errorf("Page(%q) = %q, %t", address, got, ok)
		}
	}
}
