package discord_test

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/discord/discordfake"
)

// A connection that Discord ends, or that breaks, is taken up again, and what
// was said meanwhile is heard.
func TestReconnect(t *testing.T) {
	t.Parallel()
	var r bottest.Recorder
	s := server(t)
	c := start(t, s, gatewayMode, r.Handle)
	ask := func(words string) {
		t.Helper()
		c.says(c.message(c.Slash(ana, crewChannel, "ask", play(words))), words)
	}
	ask("before")
	for i, cut := range []struct {
		name string
		do   func()
	}{
		{"the network", c.Drop},
		{"told to reconnect", c.Reconnect},
		{"closed by the server", func() { c.CloseWith(4000) }},
	} {
		cut.do()
		ask("after " + cut.name)
		if !c.Resumed(i+1, 10*time.Second) {
			t.Fatalf("%s: not taken up again\n%s", cut.name, c.log)
		}
	}
	// A session that is forgotten is begun anew.
	c.Forget()
	c.Drop()
	if !c.Identified(2, 20*time.Second) {
		t.Fatalf("no new session\n%s", c.log)
	}
	ask("in a new session")
	// What is repeated is answered once.
	n := len(r.Events())
	c.Repeat()
	ask("after a repetition")
	if got := len(r.Events()); got != n+1 {
		t.Errorf("%d events, want %d", got, n+1)
	}
}

// A connection that never gets ready, and one that says nothing, are given up
// and made anew: the library would wait for ever, or lock itself out.
func TestStuckConnections(t *testing.T) {
	t.Parallel()
	for name, break_ := range map[string]func(*discordfake.Server){
		"told to reconnect before it is ready": func(s *discordfake.Server) { s.EarlyReconnect(1) },
		"says nothing":                         func(s *discordfake.Server) { s.Mute(1) },
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := server(t)
			break_(s)
			l := &bottest.Log{}
			a := adapter(t, s, gatewayMode, l)
			a.SetOpenTimeout(500 * time.Millisecond)
			ctx, cancel := context.WithCancel(t.Context())
			ended := make(chan error, 1)
			go func() { ended <- a.Run(ctx, bottest.Echo) }()
			if !s.Connected(20 * time.Second) {
				t.Errorf("not connected\n%s", l)
			}
			m := s.Slash(ana, crewChannel, "ask", play("well")).Message()
			if m == nil || !strings.Contains(m.Shown(), "well") {
				t.Errorf("not answered\n%s", l)
			}
			cancel()
			if err := <-ended; err != nil {
				t.Error(err)
			}
		})
	}
}

// What trying again can't mend ends Run with what to do.
func TestStartErrors(t *testing.T) {
	t.Parallel()
	for name, in := range map[string]struct {
		mode   string
		break_ func(*discordfake.Server, *discord.Options)
		words  string
	}{
		"another token": {gatewayMode, func(s *discordfake.Server, _ *discord.Options) { s.Revoke() }, "Reset Token"},
		"another key":   {httpMode, func(_ *discordfake.Server, o *discord.Options) { o.PublicKey = strings.Repeat("ab", 32) }, "public key"},
		"a taken address": {httpMode, func(s *discordfake.Server, o *discord.Options) {
			o.Listener, o.Listen = nil, strings.Split(s.APIURL(), "/")[2]
		}, "can't listen"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			s := server(t)
			o := discord.Options{Token: s.Token, APIURL: s.APIURL()}
			if in.mode == httpMode {
				o.PublicKey, o.Listen = s.PublicKey(), "127.0.0.1:0"
			}
			in.break_(s, &o)
			a, err := discord.New(o)
			if err != nil {
				t.Fatal(err)
			}
			ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
			defer cancel()
			err = a.Run(ctx, bottest.Echo)
			if err == nil || !strings.Contains(err.Error(), in.words) || strings.Contains(err.Error(), o.Token) {
				t.Errorf("Run: %v", err)
			}
			if name != "a taken address" {
				if _, err := a.Check(ctx); err == nil || !strings.Contains(err.Error(), in.words) {
					t.Errorf("Check: %v", err)
				}
			}
		})
	}
}

// A token that is revoked, and a connection that Discord does not want, end Run
// in the middle too.
func TestClosedForGood(t *testing.T) {
	t.Parallel()
	for name, do := range map[string]func(*discordfake.Server){
		"revoked": func(s *discordfake.Server) { s.Revoke(); s.Drop() },
	} {
		s := server(t)
		l := &bottest.Log{}
		a := adapter(t, s, gatewayMode, l)
		ended := make(chan error, 1)
		go func() { ended <- a.Run(t.Context(), bottest.Echo) }()
		if !s.Connected(10 * time.Second) {
			t.Fatalf("not connected\n%s", l)
		}
		do(s)
		select {
		case err := <-ended:
			if err == nil || !strings.Contains(err.Error(), "4004") || !strings.Contains(err.Error(), "Reset Token") {
				t.Errorf("%s: %v", name, err)
			}
		case <-time.After(20 * time.Second):
			t.Fatalf("%s: Run goes on\n%s", name, l)
		}
	}
}

// While Discord can't be reached, it is tried again.
func TestUnreachable(t *testing.T) {
	t.Parallel()
	s := server(t)
	s.Refuse(discordfake.Refusal{Path: "applications/@me", Times: 1, Status: 503, HTML: true})
	c := start(t, s, gatewayMode, bottest.Echo)
	c.says(c.message(c.Slash(ana, crewChannel, "ask", play("well"))), "well")
	if !strings.Contains(c.log.String(), "trying again") {
		t.Errorf("the log says nothing of it:\n%s", c.log)
	}
	// An end while nothing goes is an end.
	s = server(t)
	s.Refuse(discordfake.Refusal{Status: 503})
	a := adapter(t, s, gatewayMode, &bottest.Log{})
	ctx, cancel := context.WithTimeout(t.Context(), 200*time.Millisecond)
	defer cancel()
	if err := a.Run(ctx, bottest.Echo); err != nil {
		t.Error(err)
	}
}

// Check says what won't work.
func TestCheck(t *testing.T) {
	t.Parallel()
	s := server(t)
	a := adapter(t, s, gatewayMode, &bottest.Log{})
	w, err := a.Check(t.Context())
	if err != nil || len(w) != 1 || !strings.Contains(w[0], "commands") {
		t.Errorf("before the commands are registered: %q, %v", w, err)
	}
	s.Endpoint = "https://elsewhere.example"
	w, err = a.Check(t.Context())
	if err != nil || len(w) != 2 || !strings.Contains(w[0], "Interactions Endpoint URL") {
		t.Errorf("with an address set: %q, %v", w, err)
	}
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := a.Check(ctx); err == nil || errors.Is(err, context.DeadlineExceeded) {
		t.Errorf("without time: %v", err)
	}
}
