package discord_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord/discordfake"
)

// A late answer is deferred as the event says, and seen by whom it is for.
func TestLate(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		for _, in := range []struct {
			name    string
			show    string
			private bool
			first   int
		}{
			{"private as said", "private", true, 5},
			{"public as said", "public", false, 5},
			{"public after a private deferral", "private", false, 5},
			{"private after a public deferral", "public", true, 5},
		} {
			t.Run(in.name, func(t *testing.T) {
				t.Parallel()
				r := bottest.Recorder{Reply: func(bot.Event) bot.Reply {
					time.Sleep(bot.DeferAfter + 100*time.Millisecond)
					return bot.Say{Message: bottest.Paragraph("late"), Private: in.private, Ref: "r"}
				}}
				c := start(t, server(t), mode, r.Handle)
				options := play("x")
				options["show"] = in.show
				i := c.Slash(ana, crewChannel, "ask", options)
				took, ok := i.Answered(5 * time.Second)
				if !ok || took > c.Deadline || i.First() != in.first {
					t.Errorf("acknowledged after %v with type %d", took, i.First())
				}
				m := c.await("the answer", says("late"))
				if (m.To != "") != in.private {
					t.Errorf("seen by %q", m.To)
				}
				if p := c.posted(&r, 1); p.Err != nil || p.Message != m.ID {
					t.Errorf("reported: %+v", p)
				}
				for _, m := range c.History() {
					if in.private && m.To == "" && strings.Contains(m.Shown(), "late") {
						t.Error("what is private was seen by all")
					}
				}
				if n := len(c.Messages()); n != 1 {
					t.Errorf("%d messages stand", n)
				}
			})
		}
	})
}

// What is private never shows where all see, also where the deferred message
// can't be taken away.
func TestDeferralStays(t *testing.T) {
	t.Parallel()
	c := start(t, server(t), gatewayMode, func(context.Context, bot.Event) bot.Reply {
		time.Sleep(bot.DeferAfter + 100*time.Millisecond)
		return bot.Say{Message: bottest.Paragraph("secret"), Private: true}
	})
	c.Refuse(discordfake.Refusal{Method: "DELETE", Path: "@original", Status: 500})
	c.Slash(ana, crewChannel, "ask", map[string]string{"play": "x", "show": "public"})
	if m := c.await("the answer", says("secret")); m.To != ana.ID {
		t.Errorf("seen by %q", m.To)
	}
}

// A form that comes too late is not opened, and the person is told.
func TestLateForm(t *testing.T) {
	t.Parallel()
	c := start(t, server(t), gatewayMode, func(_ context.Context, e bot.Event) bot.Reply {
		if _, ok := e.(bot.Press); ok {
			time.Sleep(2700 * time.Millisecond)
			return bot.Form{State: "/tell/q", Title: "T", Fields: []bot.Input{{Name: "words", Label: "W"}}}
		}
		return bot.Say{Message: bottest.Paragraph("open it", bot.Button{Label: "open", State: "/words/q"})}
	})
	m := c.message(c.Slash(ana, crewChannel, "ask", play("x")))
	i := c.Press(ana, crewChannel, m, "open")
	if told := c.await("an explanation", says("The form did not open")); told.To != ana.ID {
		t.Errorf("told to %q", told.To)
	}
	if took, _ := i.Answered(time.Second); took > c.Deadline {
		t.Errorf("acknowledged after %v", took)
	}
}

// An interaction that lapsed is answered another way: to all in the channel,
// to one in a direct message.
func TestLapsed(t *testing.T) {
	t.Parallel()
	for _, private := range []bool{false, true} {
		r := bottest.Recorder{Reply: func(bot.Event) bot.Reply {
			return bot.Say{Message: bottest.Paragraph("after all"), Private: private, Ref: "r"}
		}}
		c := start(t, server(t), gatewayMode, r.Handle)
		c.Refuse(discordfake.Refusal{Path: "callback", Times: 1, Status: 404, Code: 10062, Message: "Unknown interaction"})
		c.Slash(ana, crewChannel, "ask", play("x"))
		m := c.await("the answer", says("after all"))
		want := crewChannel.Channel
		if private {
			want = "direct-" + ana.ID
		}
		p := c.posted(&r, 1)
		if m.Channel != want || p.Err != nil || p.Message != m.ID || p.Where.Channel != want || p.Direct != private {
			t.Errorf("private %t: in %q, reported %+v", private, m.Channel, p)
		}
	}
}
