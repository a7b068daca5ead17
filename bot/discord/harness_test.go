package discord_test

import (
	"context"
	"log/slog"
	"net"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/discord/discordfake"
)

// The two ways to receive.
const (
	gatewayMode = "gateway"
	httpMode    = "http"
)

// People and places.
var (
	ana = discordfake.Person{ID: "11", Name: "ana", Roles: []string{"900"}}
	bo  = discordfake.Person{ID: "12", Name: "bo"}

	crewChannel = discordfake.Where{Guild: "1", Channel: "50"}
	inThread    = discordfake.Where{Guild: "1", Channel: "50", Thread: "51"}
	directly    = discordfake.Where{Channel: "direct-11", Direct: true}
)

// crew is a server with an adapter at work in it.
type crew struct {
	*discordfake.Server
	t       testing.TB
	adapter *discord.Adapter
	stop    func() error // ends the adapter and gives what Run gave
	log     *bottest.Log
	lax     bool // refused payloads are what the test is about
}

func server(t testing.TB) *discordfake.Server {
	s := discordfake.New()
	t.Cleanup(s.Close)
	return s
}

// adapter makes an adapter for a server, without running it.
func adapter(t testing.TB, s *discordfake.Server, mode string, l *bottest.Log) *discord.Adapter {
	t.Helper()
	o := discord.Options{Token: s.Token, APIURL: s.APIURL(), Log: slog.New(slog.NewTextHandler(l, nil))}
	if mode == httpMode {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			t.Fatal(err)
		}
		o.PublicKey, o.Listener = s.PublicKey(), l
		s.Endpoint = "http://" + l.Addr().String() + discord.DefaultPath
	}
	a, err := discord.New(o)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// start has a handler answer a server. At the end, nothing that was sent may
// have been refused, and the log is without secrets.
func start(t testing.TB, s *discordfake.Server, mode string, h bot.Handler) *crew {
	t.Helper()
	c := &crew{Server: s, t: t, log: &bottest.Log{}}
	token := s.Token
	c.adapter = adapter(t, s, mode, c.log)
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- c.adapter.Run(ctx, h) }()
	var once sync.Once
	var runErr error
	c.stop = func() error {
		once.Do(func() {
			cancel()
			select {
			case runErr = <-ended:
			case <-time.After(30 * time.Second):
				t.Error("Run did not end")
			}
		})
		return runErr
	}
	t.Cleanup(func() {
		if err := c.stop(); err != nil {
			t.Errorf("Run: %v", err)
		}
		if v := s.Violations(); len(v) > 0 && !c.lax {
			t.Errorf("Discord refused what was sent:\n%s", strings.Join(v, "\n"))
		}
		for _, secret := range []string{token, "tok-1"} {
			if strings.Contains(c.log.String(), secret) {
				t.Errorf("the log gives away %q:\n%s", secret, c.log.String())
			}
		}
	})
	if mode == gatewayMode && !s.Connected(10*time.Second) {
		t.Fatalf("not connected\n%s", c.log)
	}
	return c
}

// message is what an interaction made or changed.
func (c *crew) message(i *discordfake.Interaction) discordfake.Message {
	c.t.Helper()
	m := i.Message()
	if m == nil {
		c.t.Fatalf("no message came of it\n%s", c.log)
	}
	return *m
}

// await waits for a message that is so.
func (c *crew) await(what string, is func(discordfake.Message) bool) discordfake.Message {
	c.t.Helper()
	var out discordfake.Message
	if !c.Await(10*time.Second, func(ms []discordfake.Message) bool {
		for _, m := range ms {
			if !m.Deferred && is(m) {
				out = m
				return true
			}
		}
		return false
	}) {
		c.t.Fatalf("waited for %s in vain: %+v\n%s", what, c.Messages(), c.log)
	}
	return out
}

func says(words string) func(discordfake.Message) bool {
	return func(m discordfake.Message) bool { return strings.Contains(m.Shown(), words) }
}

// says fails the test where a message does not say something.
func (c *crew) says(m discordfake.Message, words ...string) {
	c.t.Helper()
	for _, w := range words {
		if !strings.Contains(m.Shown(), w) {
			c.t.Errorf("the message does not say %q:\n%s", w, m.Shown())
		}
	}
}

func play(words string) map[string]string { return map[string]string{"play": words} }

// conversation is the bot itself over an empty store.
func conversation(t testing.TB, notes bot.Searcher) bot.Handler {
	t.Helper()
	return bottest.Conversation(t, notes, func(p bot.Place) bool { return p.Platform == discord.Platform })
}

// both runs a test over the gateway and over HTTP.
func both(t *testing.T, test func(t *testing.T, mode string)) {
	for _, mode := range []string{gatewayMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			t.Parallel()
			test(t, mode)
		})
	}
}

// onCrew is the harness of a server with its crew.
func onCrew(mode string) bottest.Harness {
	return bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
		p := &platform{mode: mode, guild: "1"}
		p.crew = start(t, server(t), mode, h)
		return p
	}}
}
