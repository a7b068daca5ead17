package discord_test

import (
	"context"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/discord/discordfake"
)

func (c *crew) posted(r *bottest.Recorder, n int) bot.Posted {
	c.t.Helper()
	for end := time.Now().Add(10 * time.Second); time.Now().Before(end); time.Sleep(2 * time.Millisecond) {
		if p := bottest.Of[bot.Posted](r); len(p) >= n {
			return p[n-1]
		}
	}
	c.t.Fatalf("no report\n%s", c.log)
	return bot.Posted{}
}

// What may be out is reported so, and not sent again.
func TestInDoubt(t *testing.T) {
	t.Parallel()
	r := bottest.Recorder{Reply: func(bot.Event) bot.Reply { return bot.Say{Message: bottest.Paragraph("perhaps"), Ref: "r"} }}
	c := start(t, server(t), gatewayMode, r.Handle)
	c.Refuse(discordfake.Refusal{Path: "callback", Times: 1, Lose: true})
	c.Slash(ana, crewChannel, "ask", play("x"))
	if p := c.posted(&r, 1); p.Err == nil || errors.Is(p.Err, bot.ErrNotSent) {
		t.Errorf("reported: %+v", p)
	}
	if ms := c.Messages(); len(ms) != 1 {
		t.Errorf("it is out %d times", len(ms))
	}
	c.Refuse(discordfake.Refusal{Method: "POST", Path: "channels/50/messages", Status: 502, HTML: true})
	if _, err := c.adapter.Post(t.Context(), bot.Target{Place: bot.Place{Channel: "50"}}, bottest.Paragraph("x")); err == nil || errors.Is(err, bot.ErrNotSent) {
		t.Errorf("after a 502: %v", err)
	}
	n := 0
	for _, q := range c.Requests() {
		if q == "POST channels/50/messages" {
			n++
		}
	}
	if n != 1 {
		t.Errorf("sent %d times", n)
	}
}

// What Discord refuses for what is in it is said so to the person.
func TestRefused(t *testing.T) {
	t.Parallel()
	r := bottest.Recorder{Reply: func(bot.Event) bot.Reply { return bot.Say{Message: bottest.Paragraph("x"), Ref: "r"} }}
	c := start(t, server(t), gatewayMode, r.Handle)
	c.Refuse(discordfake.Refusal{Path: "callback", Times: 1, Status: 400, Code: 50035, Message: "Invalid Form Body"})
	told := c.message(c.Slash(ana, crewChannel, "ask", play("x")))
	id := regexp.MustCompile(`error (\w{8})`).FindStringSubmatch(told.Shown())
	if id == nil || told.To != ana.ID || !strings.Contains(c.log.String(), "error="+id[1]) {
		t.Errorf("told %q; the log:\n%s", told.Shown(), c.log)
	}
	if p := c.posted(&r, 1); !errors.Is(p.Err, bot.ErrNotSent) {
		t.Errorf("reported: %+v", p)
	}
}

// A panic costs its event. The person is told an id that is in the log.
func TestPanic(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			switch x := e.(type) {
			case bot.Complete:
				panic("while somebody types")
			case bot.Command:
				if x.Text == "break" {
					panic("broken, at https://discord.example/webhooks/1/secret")
				}
				if x.Text == "nil" {
					return nil
				}
			}
			return bottest.Echo(ctx, e)
		})
		told := c.message(c.Slash(ana, crewChannel, "ask", play("break")))
		id := regexp.MustCompile(`error (\w{8})`).FindStringSubmatch(told.Shown())
		if id == nil || told.To != ana.ID || !strings.Contains(c.log.String(), "error="+id[1]) || strings.Contains(c.log.String(), "/secret") {
			t.Errorf("told %q; the log:\n%s", told.Shown(), c.log)
		}
		if got := c.Type(ana, crewChannel, "ask", "play", "x").Choices(); len(got) != 0 {
			t.Errorf("offered: %q", got)
		}
		if _, ok := c.Slash(ana, crewChannel, "ask", play("nil")).Answered(5 * time.Second); !ok {
			t.Error("no reply was never acknowledged")
		}
		c.says(c.message(c.Slash(ana, crewChannel, "ask", play("on we go"))), "on we go")
	})
}

// What Discord refuses for its rate is sent again after the time that it names,
// once; also where the refusal is no JSON, and for all calls at once.
func TestRateLimit(t *testing.T) {
	t.Parallel()
	for _, f := range []discordfake.Refusal{
		{Path: "callback", Times: 2, Status: 429, RetryAfter: 200 * time.Millisecond},
		{Path: "callback", Times: 1, Status: 429, RetryAfter: 300 * time.Millisecond, HTML: true},
		{Method: "POST", Path: "channels/50/messages", Times: 1, Status: 429, RetryAfter: 300 * time.Millisecond, Global: true},
	} {
		c := start(t, server(t), gatewayMode, bottest.Echo)
		c.Refuse(f)
		begun := time.Now()
		c.says(c.message(c.Slash(ana, crewChannel, "ask", play("patient"))), "patient")
		for n := range 2 {
			if _, err := c.adapter.Post(t.Context(), bot.Target{Place: bot.Place{Channel: "50"}}, bottest.Paragraph(fmt.Sprint("post ", n))); err != nil {
				t.Error(err)
			}
		}
		if took := time.Since(begun); took < f.RetryAfter {
			t.Errorf("%+v: all is out after %v", f, took)
		}
		if n := len(c.Messages()); n != 3 {
			t.Errorf("%+v: %d messages, want 3", f, n)
		}
	}
}

// A rate that leaves no time is an error that says that nothing is out.
func TestRateLimitLeavesNoTime(t *testing.T) {
	t.Parallel()
	c := start(t, server(t), gatewayMode, bottest.Echo)
	c.Refuse(discordfake.Refusal{Path: "channels/50/messages", Status: 429, RetryAfter: time.Minute})
	ctx, cancel := context.WithTimeout(t.Context(), 300*time.Millisecond)
	defer cancel()
	if _, err := c.adapter.Post(ctx, bot.Target{Place: bot.Place{Channel: "50"}}, bottest.Paragraph("x")); !errors.Is(err, bot.ErrNotSent) {
		t.Errorf("got %v", err)
	}
}

// Presses on one message are carried out in the order they came in.
func TestOrder(t *testing.T) {
	t.Parallel()
	var first atomic.Bool
	c := start(t, server(t), gatewayMode, func(ctx context.Context, e bot.Event) bot.Reply {
		if p, ok := e.(bot.Press); ok && p.State == "1" {
			first.Store(true)
			time.Sleep(300 * time.Millisecond)
		}
		return bottest.Echo(ctx, e)
	})
	m := c.message(c.Slash(ana, crewChannel, "ask", play("x")))
	c.PressID(ana, crewChannel, m, "1")
	for !first.Load() {
		time.Sleep(time.Millisecond)
	}
	c.PressID(ana, crewChannel, m, "2")
	last := c.await("both changes", func(x discordfake.Message) bool { return x.ID == m.ID && x.Edits == 2 })
	c.says(last, "pressed 2")
}

// What was begun is finished when the adapter is told to end.
func TestWindDown(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		began := make(chan struct{})
		c := start(t, server(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			close(began)
			time.Sleep(1200 * time.Millisecond)
			return bottest.Echo(ctx, e)
		})
		i := c.Slash(ana, crewChannel, "ask", play("at the last moment"))
		<-began
		if err := c.stop(); err != nil {
			t.Error(err)
		}
		c.says(c.message(i), "at the last moment")
	})
}

// Say puts an answer into a thread on a message, begun where there is none.
func TestThreadOnMessage(t *testing.T) {
	t.Parallel()
	on := ""
	r := bottest.Recorder{Reply: func(bot.Event) bot.Reply {
		return bot.Say{Message: bottest.Paragraph("in the thread"), InThread: true, On: on, Ref: "r"}
	}}
	c := start(t, server(t), gatewayMode, r.Handle)
	on = c.Plant("50", "a message").ID
	for n := range 2 { // begun, then there already
		note := c.message(c.Slash(ana, crewChannel, "ask", play("x")))
		if note.To != ana.ID {
			t.Errorf("the note is seen by %q", note.To)
		}
		p := c.posted(&r, n+1)
		if m := c.Message(p.Message); m == nil || m.Channel != on || p.Thread != on || p.Where.Channel != "50" {
			t.Errorf("reported %+v", p)
		}
	}
	on = "7" // a message that is not there: to the place itself
	if m := c.message(c.Slash(ana, crewChannel, "ask", play("x"))); m.Channel != "50" || m.To != "" {
		t.Errorf("in %q, seen by %q", m.Channel, m.To)
	}
}

// Earlier messages change with an answer; one that is gone is no error.
func TestEdits(t *testing.T) {
	t.Parallel()
	id := ""
	c := start(t, server(t), gatewayMode, func(context.Context, bot.Event) bot.Reply {
		return bot.Say{Message: bottest.Paragraph("said"), Edits: []bot.Edit{{ID: "1", Message: bottest.Paragraph("x")}, {ID: id, Message: bottest.Paragraph("changed too")}}}
	})
	sent, err := c.adapter.Post(t.Context(), bot.Target{Place: bot.Place{Channel: "50"}}, bottest.Paragraph("before"))
	if err != nil {
		t.Fatal(err)
	}
	id = sent.Message
	c.Slash(ana, crewChannel, "ask", play("x"))
	c.await("the change", func(m discordfake.Message) bool { return m.ID == id && m.Edits == 1 })
	if strings.Contains(c.log.String(), "level=ERROR") {
		t.Errorf("an earlier message that is gone is an error:\n%s", c.log)
	}
}

// Buttons of ours that are not known any more, and controls that never were,
// end in words.
func TestStrangePresses(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, conversation(t, nil))
		m := c.message(c.Slash(ana, crewChannel, "ask", play(half)))
		for state, words := range map[string]string{
			"some-other-bot:1":           "I don't know this button",
			"/view/none/codes":           "That question is not kept any more",
			"/give/none/row@p1=front":    "That question is not kept any more",
			strings.Repeat("x", 100):     "I don't know this button",
			"/give/none/no-such-fact=no": "That question is not kept any more",
		} {
			i := c.PressID(ana, crewChannel, m, state)
			c.await(state, func(x discordfake.Message) bool {
				return x.To == ana.ID && x.ID != m.ID && strings.Contains(x.Shown(), words)
			})
			i.Answered(time.Second)
		}
	})
}

// Posts say what to do where they can't go out.
func TestPostErrors(t *testing.T) {
	t.Parallel()
	c := start(t, server(t), gatewayMode, bottest.Echo)
	for channel, words := range map[string]string{discordfake.ClosedChannel: "View Channel", discordfake.GoneChannel: "deleted"} {
		_, err := c.adapter.Post(t.Context(), bot.Target{Place: bot.Place{Channel: channel}}, bottest.Paragraph("x"))
		if !errors.Is(err, bot.ErrGone) || !errors.Is(err, bot.ErrNotSent) || !strings.Contains(err.Error(), words) {
			t.Errorf("%s: %v", channel, err)
		}
	}
	if _, err := c.adapter.Post(t.Context(), bot.Target{}, bottest.Paragraph("x")); !errors.Is(err, bot.ErrNotSent) {
		t.Errorf("to nobody: %v", err)
	}
	if _, err := c.adapter.Post(t.Context(), bot.Target{Place: bot.Place{Channel: "50"}, Edit: "1"}, bottest.Paragraph("x")); !errors.Is(err, bot.ErrGone) {
		t.Errorf("a message that is not there: %v", err)
	}
}

// Wrong options are refused with what to do.
func TestOptions(t *testing.T) {
	t.Parallel()
	key := server(t).PublicKey()
	for words, o := range map[string]discord.Options{
		"no token":                {},
		"characters in it":        {Token: "a b"},
		"no public key":           {Token: "t", Listen: ":1"},
		"no address to listen on": {Token: "t", PublicKey: key},
		"digits of hex":           {Token: "t", PublicKey: "abc", Listen: ":1"},
		"end in a slash":          {Token: "t", APIURL: "http://x"},
	} {
		if _, err := discord.New(o); err == nil || !strings.Contains(err.Error(), words) {
			t.Errorf("%+v: %v, want %q", o, err, words)
		}
	}
}

// Commands are registered once, and again only where they differ.
func TestRegistration(t *testing.T) {
	t.Parallel()
	s := server(t)
	for n := range 2 {
		c := start(t, s, gatewayMode, bottest.Echo)
		if !s.Identified(n+1, 10*time.Second) {
			t.Fatalf("not connected\n%s", c.log)
		}
		if err := c.stop(); err != nil {
			t.Fatal(err)
		}
	}
	list, puts := s.Commands()
	if puts != 1 {
		t.Errorf("registered %d times", puts)
	}
	for _, want := range []string{`"netpost"`, `"Rule on this"`, `"autocomplete":true`, `"ask"`, `"codes"`} {
		if !strings.Contains(string(list), want) {
			t.Errorf("registered without %s: %s", want, list)
		}
	}
	if i := s.Intents(); !slices.Equal(i, []int{0, 0}) {
		t.Errorf("intents: %v", i)
	}
}

// Pictures come with what they show, over both ways and in changes too, and go
// where the message changes to one without.
func TestPictures(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		court := bottest.Paragraph("see the court", bot.Button{Label: "again", State: "1"}, bot.Button{Label: "none", State: "2"})
		court.Pictures = []bot.Picture{{Name: "court.png", Type: "image/png", Alt: "Six players", Data: []byte("picture")}}
		c := start(t, server(t), mode, func(ctx context.Context, e bot.Event) bot.Reply {
			if p, ok := e.(bot.Press); ok && p.State == "1" {
				return bot.Update{Message: court}
			} else if ok {
				return bottest.Echo(ctx, e)
			}
			return bot.Say{Message: court, Private: true}
		})
		has := func(n int) func(discordfake.Message) bool {
			return func(m discordfake.Message) bool {
				return m.Edits >= n && len(m.Files) == 1 && m.Files[0].Alt == "Six players" && m.Files[0].Size == 7 && m.To == ana.ID
			}
		}
		c.Slash(ana, crewChannel, "ask", play("x"))
		m := c.await("a picture", has(0))
		c.Press(ana, crewChannel, m, "again")
		m = c.await("a picture in a change", has(m.Edits+1))
		c.Press(ana, crewChannel, m, "none")
		m = c.await("a change without", func(x discordfake.Message) bool { return x.ID == m.ID && len(x.Files) == 0 })
		if !strings.Contains(string(m.Raw), `"attachments":[]`) {
			t.Errorf("the old picture stays: %s", m.Raw)
		}
	})
}

// A picture is made once the event is acknowledged, and where it can't be made
// or is refused, the words are there all the same.
func TestPictureTrouble(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		picture := func(words string) bot.Picture {
			return bot.Picture{Name: "court.png", Type: "image/png", Alt: "Six players", Make: func() ([]byte, error) {
				if words == "no ink" {
					return nil, errors.New("no ink")
				}
				time.Sleep(3200 * time.Millisecond) // longer than Discord waits
				return []byte("picture"), nil
			}}
		}
		c := start(t, server(t), mode, func(_ context.Context, e bot.Event) bot.Reply {
			switch e := e.(type) {
			case bot.Command:
				m := bottest.Paragraph("said: "+e.Text, bot.Button{Label: "change", State: "1"})
				m.Pictures = []bot.Picture{picture(e.Text)}
				return bot.Say{Message: m}
			case bot.Press:
				m := bottest.Paragraph("changed")
				m.Pictures = []bot.Picture{picture("x")}
				return bot.Update{Message: m}
			}
			return bot.Nothing{}
		})
		c.says(c.message(c.Slash(ana, crewChannel, "ask", play("no ink"))), "said: no ink")
		said := c.message(c.Slash(ana, crewChannel, "ask", play("slow")))
		c.says(said, "said: slow")
		said = c.await("the picture", func(m discordfake.Message) bool { return m.ID == said.ID && len(m.Files) == 1 })
		c.says(said, "said: slow") // the picture leaves the words
		c.Press(ana, crewChannel, said, "change")
		c.await("the change with its picture", func(m discordfake.Message) bool {
			return m.ID == said.ID && len(m.Files) == 1 && strings.Contains(m.Shown(), "changed")
		})
		// Discord refuses the file, in a new message and in a change.
		c.lax = true
		c.Refuse(discordfake.Refusal{Method: "PATCH", Path: "webhooks", Times: 2, Status: 413, Code: 40005, Message: "Request entity too large"})
		said = c.message(c.Slash(ana, crewChannel, "ask", play("too large")))
		if !c.Server.Await(10*time.Second, func([]discordfake.Message) bool { return strings.Contains(c.log.String(), "a picture is not out") }) {
			t.Fatalf("nothing is logged of a picture that was refused\n%s", c.log)
		}
		c.Press(ana, crewChannel, said, "change")
		now := c.await("the change without its picture", func(m discordfake.Message) bool {
			return m.ID == said.ID && strings.Contains(m.Shown(), "changed")
		})
		if len(now.Files) != 0 {
			t.Errorf("it has files: %+v", now.Files)
		}
	})
}
