package slack_test

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
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/slack/slackfake"
)

// wait is how long a test waits for what must come.
const wait = 5 * time.Second

// The two ways to receive.
const (
	socketMode = "socket"
	httpMode   = "http"
)

// crew is a workspace with an adapter at work in it.
type crew struct {
	*slackfake.Server
	t       testing.TB
	adapter *slack.Adapter
	stop    func() error // ends the adapter and gives what Run gave
	log     *bottest.Log
}

// The channels of a crew: the bot is in talk and not in aside.
const (
	talk  = "C0TALK"
	aside = "C0ASIDE"
)

// workspace makes a workspace with two channels.
func workspace(t testing.TB) *slackfake.Server {
	s := slackfake.New()
	t.Cleanup(s.Close)
	s.Channel(talk, "U0ANA", "U0BO", slackfake.Self)
	s.Channel(aside, "U0ANA", "U0BO")
	return s
}

func options(s *slackfake.Server, mode string, l *bottest.Log) slack.Options {
	o := slack.Options{BotToken: slackfake.BotToken, APIURL: s.APIURL(), Log: slog.New(slog.NewTextHandler(l, nil))}
	if mode == socketMode {
		o.AppToken = slackfake.AppToken
	} else {
		o.SigningSecret = slackfake.SigningSecret
	}
	return o
}

// start has a handler answer a workspace. At the end, what was sent must be
// without problems and the log without secrets.
func start(t testing.TB, s *slackfake.Server, mode string, h bot.Handler) *crew {
	t.Helper()
	return startWith(t, s, mode, h, func(*slack.Options) {})
}

// startWith is start with options of the test's own.
func startWith(t testing.TB, s *slackfake.Server, mode string, h bot.Handler, with func(*slack.Options)) *crew {
	t.Helper()
	c := &crew{Server: s, t: t, log: &bottest.Log{}}
	o := options(s, mode, c.log)
	if mode == httpMode {
		l, err := net.Listen("tcp", "127.0.0.1:0")
		if err != nil {
			t.Fatal(err)
		}
		o.Listener = l
		s.PostTo("http://" + l.Addr().String() + slack.DefaultPath)
	}
	with(&o)
	a, err := slack.New(o)
	if err != nil {
		t.Fatal(err)
	}
	c.adapter = a
	ctx, cancel := context.WithCancel(context.Background())
	ended := make(chan error, 1)
	go func() { ended <- a.Run(ctx, h) }()
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
		if p := append(s.Problems(), s.Pings()...); len(p) > 0 {
			t.Errorf("Slack has problems with what was sent:\n%s", strings.Join(p, "\n"))
		}
		for _, secret := range []string{"xoxb-", "xapp-", slackfake.SigningSecret, "/respond/", "/link"} {
			if strings.Contains(c.log.String(), secret) {
				t.Errorf("the log gives away %q:\n%s", secret, c.log.String())
			}
		}
	})
	if mode == socketMode && !s.Wait(5*time.Second, func() bool { return s.Connections() > 0 }) {
		t.Fatalf("not connected\n%s", c.log)
	}
	return c
}

// fine fails the test where a delivery was not acknowledged.
func (c *crew) fine(d *slackfake.Delivery) {
	c.t.Helper()
	if d == nil || d.Err != nil {
		c.t.Fatalf("a delivery failed: %+v\n%s", d, c.log)
	}
}

// last is the next message that a person gets.
func (c *crew) last(p *slackfake.Person, channel string, before slackfake.Message) slackfake.Message {
	c.t.Helper()
	m, err := p.Last(channel, before)
	if err != nil {
		c.t.Fatalf("%v\n%s", err, c.log)
	}
	return m
}

// says fails the test where a message does not say something.
func (c *crew) says(m slackfake.Message, words ...string) {
	c.t.Helper()
	for _, w := range words {
		if !strings.Contains(m.Shown(), w) {
			c.t.Errorf("the message does not say %q:\n%s", w, m.Shown())
		}
	}
}

// conversation is the bot itself over an empty store.
func conversation(t testing.TB, notes bot.Searcher) bot.Handler {
	t.Helper()
	return bottest.Conversation(t, notes, func(p bot.Place) bool { return p.Workspace == slackfake.Team })
}

// onCrew is the harness of a workspace whose crew is in one channel.
func onCrew(mode string) bottest.Harness {
	return bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
		s := slackfake.New()
		t.Cleanup(s.Close)
		s.Channel("CCREW1", "UANA1", "UBOB1", "UCLEO1", slackfake.Self)
		return &platform{crew: start(t, s, mode, h), mode: mode}
	}}
}
