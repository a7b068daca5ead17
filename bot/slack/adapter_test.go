package slack_test

import (
	"context"
	"fmt"
	"regexp"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// both runs a test over the socket and over HTTP.
func both(t *testing.T, test func(t *testing.T, mode string)) {
	for _, mode := range []string{socketMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			t.Parallel()
			test(t, mode)
		})
	}
}

func named(words string) string { return "<@" + slackfake.Self + "> " + words }

// A slow answer is acknowledged in time and comes later.
func TestSlowAnswer(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, workspace(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			time.Sleep(bot.DeferAfter + 700*time.Millisecond)
			return bottest.Echo(ctx, e)
		})
		ana := c.Person("U0ANA")
		d := ana.Command(talk, "a slow one")
		c.fine(d)
		if d.Ack.After > slackfake.Deadline || d.Ack.After < bot.DeferAfter {
			t.Errorf("acknowledged after %v", d.Ack.After)
		}
		note := c.last(ana, talk, slackfake.Message{})
		if !note.Private() {
			t.Error("all see that one waits")
		}
		c.says(note, "One moment")
		c.says(c.last(ana, talk, note), "a slow one")
		_, d = ana.Say(talk, "", named("another"))
		c.fine(d)
	})
}

// What is delivered again is acknowledged, and answered once.
func TestRedelivered(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		var r bottest.Recorder
		c := start(t, workspace(t), mode, r.Handle)
		ana := c.Person("U0ANA")
		m, d := ana.Say(talk, "", named("first"))
		c.fine(d)
		c.fine(c.Again(d))
		c.fine(ana.Edit(m, named("first, but edited")))
		cmd := ana.Command(talk, "second")
		c.fine(cmd)
		c.fine(c.Again(cmd))
		c.fine(c.Again(d))
		c.Wait(wait, func() bool { return len(ana.Sees(talk)) == 3 })
		if n := len(ana.Sees(talk)); n != 3 || len(bottest.Of[bot.Mention](&r)) != 1 || len(bottest.Of[bot.Command](&r)) != 1 {
			t.Errorf("%d messages, want the mention and two answers; events: %v", n, r.Events())
		}
	})
}

// What is no event of the conversation is acknowledged and dropped.
func TestUnknownKinds(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		var r bottest.Recorder
		c := start(t, workspace(t), mode, r.Handle)
		for _, d := range []struct {
			typ     string
			payload map[string]any
		}{
			{"events_api", map[string]any{"type": "event_callback", "event_id": "Ev1", "event": map[string]any{"type": "flag_raised", "user": "U0ANA"}}},
			{"events_api", map[string]any{"type": "app_rate_limited", "minute_rate_limited": 1}},
			{"events_api", map[string]any{"type": "no_such_thing"}},
			{"interactive", map[string]any{"type": "view_closed", "user": map[string]any{"id": "U0ANA"}}},
			{"interactive", map[string]any{"type": "no_such_thing", "user": map[string]any{"id": "U0ANA"}}},
		} {
			if got := c.Deliver(d.typ, d.payload); got.Err != nil || strings.TrimSpace(string(got.Ack.Payload)) != "" {
				t.Errorf("%s %v: %+v", d.typ, d.payload, got)
			}
		}
		if mode == socketMode {
			for _, typ := range []string{"weather_report", "slash_commands", "interactive", "events_api"} {
				if _, err := c.Envelope(typ, []byte(`["odd"]`), 0); err != nil {
					t.Errorf("%s with an odd payload: %v", typ, err)
				}
			}
			c.Raw(`{"type":`)
			c.Raw(`{}`)
			c.Raw(`7`)
		}
		if len(r.Events()) != 0 {
			t.Errorf("events came of it: %v", r.Events())
		}
		ana := c.Person("U0ANA")
		c.fine(ana.Command(talk, "still here"))
		c.says(c.last(ana, talk, slackfake.Message{}), "still here")
	})
}

// A panic costs its event. The person is told an id that is in the log.
func TestPanic(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, workspace(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			if x, ok := e.(bot.Command); ok && x.Text == "break" {
				panic("broken, with xoxb-1234 in it")
			}
			if x, ok := e.(bot.Command); ok && x.Text == "nil" {
				return nil
			}
			return bottest.Echo(ctx, e)
		})
		ana := c.Person("U0ANA")
		d := ana.Command(talk, "break")
		c.fine(d)
		told := c.last(ana, talk, slackfake.Message{})
		id := regexp.MustCompile(`error (\w{8})`).FindStringSubmatch(told.Shown())
		if id == nil || !told.Private() || !strings.Contains(c.log.String(), "error="+id[1]) {
			t.Errorf("the person is told %q; the log:\n%s", told.Shown(), c.log)
		}
		c.fine(ana.Command(talk, "nil"))
		c.fine(ana.Command(talk, "on we go"))
		c.says(c.last(ana, talk, told), "on we go")
	})
}

// What Slack refuses for its rate is sent again after the time that it names,
// once.
func TestRateLimit(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, workspace(t), mode, bottest.Echo)
		ana := c.Person("U0ANA")
		c.Limit("chat.postMessage", time.Second, 1)
		_, d := ana.Say(talk, "", named("one"))
		c.fine(d)
		if d.Ack.After > time.Second {
			t.Errorf("acknowledged after %v", d.Ack.After)
		}
		_, d = ana.Say(talk, "", named("two"))
		c.fine(d)
		if !c.Wait(wait, func() bool { return len(ana.Sees(talk)) == 4 }) {
			t.Fatalf("not everything was answered: %v\n%s", ana.Sees(talk), c.log)
		}
		calls := c.Calls("chat.postMessage")
		if len(calls) != 3 || calls[1].At.Sub(calls[0].At) < time.Second {
			t.Errorf("calls: %v", calls)
		}
		c.Limit(slackfake.RespondMethod, time.Second, 1)
		c.fine(ana.Command(talk, "three"))
		if !c.Wait(wait, func() bool { return len(ana.Sees(talk)) == 5 }) {
			t.Errorf("the command was not answered\n%s", c.log)
		}
	})
}

// A socket that Slack ends, or that breaks, is opened again.
func TestReconnect(t *testing.T) {
	c := start(t, workspace(t), socketMode, bottest.Echo)
	ana := c.Person("U0ANA")
	before := slackfake.Message{}
	for i, cut := range []func(){c.Disconnect, c.Drop, func() { c.Status("apps.connections.open", 500, 2); c.Drop() }} {
		cut()
		if !c.Wait(wait, func() bool { return c.Links() == i+2 && c.Connections() == 1 }) {
			t.Fatalf("cut %d: not connected again\n%s", i, c.log)
		}
		words := fmt.Sprintf("after cut %d", i)
		c.fine(ana.Command(talk, words))
		before = c.last(ana, talk, before)
		c.says(before, words)
	}
}

// Presses on one message are carried out in the order they came in.
func TestOrder(t *testing.T) {
	var first atomic.Bool
	c := start(t, workspace(t), socketMode, func(ctx context.Context, e bot.Event) bot.Reply {
		if p, ok := e.(bot.Press); ok && p.State == "1" {
			first.Store(true)
			time.Sleep(300 * time.Millisecond)
		}
		return bottest.Echo(ctx, e)
	})
	ana := c.Person("U0ANA")
	_, d := ana.Say(talk, "", named("x"))
	c.fine(d)
	m := c.last(ana, talk, slackfake.Message{})
	done := make(chan *slackfake.Delivery)
	go func() { done <- ana.PressValue(m, "press-0", "1") }()
	for !first.Load() {
		time.Sleep(time.Millisecond)
	}
	c.fine(ana.PressValue(m, "press-0", "2"))
	c.fine(<-done)
	var last slackfake.Message
	c.Wait(wait, func() bool {
		for _, x := range ana.Sees(talk) {
			if x.TS == m.TS {
				last = x
			}
		}
		return last.Edits == 2
	})
	c.says(last, "pressed 2")
}

// What was begun is finished when the adapter is told to end.
func TestWindDown(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		began := make(chan struct{})
		c := start(t, workspace(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			close(began)
			time.Sleep(300 * time.Millisecond)
			return bottest.Echo(ctx, e)
		})
		ana := c.Person("U0ANA")
		done := make(chan *slackfake.Delivery)
		go func() { done <- ana.Command(talk, "the last one") }()
		<-began
		if err := c.stop(); err != nil {
			t.Errorf("Run: %v", err)
		}
		c.fine(<-done)
		c.says(c.last(ana, talk, slackfake.Message{}), "the last one")
	})
}

// Buttons of questions that are gone, and buttons of nobody's, end in a message
// that says what to do.
func TestVanished(t *testing.T) {
	c := start(t, workspace(t), httpMode, conversation(t, nil))
	ana := c.Person("U0ANA")
	_, d := ana.Say(talk, "", named(play))
	c.fine(d)
	m := c.last(ana, talk, slackfake.Message{})
	before := m
	for _, value := range []string{"/give/abcdefghijklmnopqrstuvwxyz/row@p1=front", "", "x", strings.Repeat("x", 2000)} {
		c.fine(ana.PressValue(m, "press-0", value))
		told := c.last(ana, talk, before)
		if !told.Private() || !strings.Contains(told.Shown(), "Ask") {
			t.Errorf("pressing %.40q gives %q", value, told.Shown())
		}
		before = told
	}
	gone := m
	gone.TS = "1.1"
	c.fine(ana.PressValue(gone, "press-0", "/undo/abcdefghijklmnopqrstuvwxyz"))
	c.last(ana, talk, before)
}

// A command is direct in the talk with the bot, and not in one between two
// people.
func TestDirect(t *testing.T) {
	var r bottest.Recorder
	c := start(t, workspace(t), socketMode, r.Handle)
	ana := c.Person("U0ANA")
	c.Channel("D0BOTH", "U0ANA", "U0BO")
	c.fine(ana.Command(slackfake.Room(ana.ID), "one"))
	own := c.last(ana, slackfake.Room(ana.ID), slackfake.Message{})
	c.fine(ana.Command("D0BOTH", "two"))
	other := c.last(ana, "D0BOTH", slackfake.Message{})
	cmds := bottest.Of[bot.Command](&r)
	if len(cmds) != 2 || !cmds[0].Direct || cmds[1].Direct {
		t.Errorf("direct: %+v", cmds)
	}
	if own.Private() || !other.Private() {
		t.Errorf("what is said to one lasts: %v in the talk with the bot, %v between two", !own.Private(), !other.Private())
	}
}
