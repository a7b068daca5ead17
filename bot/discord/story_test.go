package discord_test

import (
	"cmp"
	"context"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/discord/discordfake"
	"example.org/netpost/engine/code"
)

// half turns on a fact that it does not tell.
const half = "our setter tips the ball over from inside the 3m line, ball above the net"

type notes []bot.Note

func (n notes) Notes(context.Context, bot.Question) ([]bot.Note, error) { return n, nil }

var someNotes = notes{{
	ID: "2026-014", Title: "Tight save, blocker's hands on it too", URL: "https://notes.example/2026-014?a=1&b=2",
	Codes: []code.Code{code.Scholastic}, Season: 2026, Snippet: bot.Line("The setter was back row."),
}}

// A question is asked, turns on a fact, is answered in place when the fact is
// told, and looked at under the other codes.
func TestStory(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		for _, in := range []struct {
			name    string
			where   discordfake.Where
			show    string
			private bool
		}{
			{"in the channel", crewChannel, "public", false},
			{"in a thread", inThread, "public", false},
			{"privately", crewChannel, "", true},
			{"privately in a thread", inThread, "private", true},
			{"directly", directly, "", false},
		} {
			t.Run(in.name, func(t *testing.T) {
				c := start(t, server(t), mode, conversation(t, someNotes))
				options := play(half)
				if in.show != "" {
					options["show"] = in.show
				}
				m := c.message(c.Slash(ana, in.where, "ask", options))
				if (m.To != "") != in.private {
					t.Errorf("seen by %q, private is to be %t", m.To, in.private)
				}
				if want := cmp.Or(in.where.Thread, in.where.Channel); m.Channel != want {
					t.Errorf("answered in %q, asked in %q", m.Channel, want)
				}
				c.story(in.where, m)
				if n := len(c.Messages()); n != 1 {
					t.Errorf("%d messages stand, want the one that changes", n)
				}
			})
		}
	})
}

// story goes on from the answer that turns on a fact.
func (c *crew) story(where discordfake.Where, m discordfake.Message) {
	t := c.t
	t.Helper()
	c.says(m, "It turns on this: Was our setter front row or back row?", "2026-014")
	if !strings.Contains(m.Content, "It turns on this") {
		t.Errorf("the ruling does not lead the message's own text: %q", m.Content)
	}
	settled := c.message(c.Press(ana, where, m, "back row"))
	if settled.ID != m.ID || settled.Edits != 1 || settled.To != m.To {
		t.Fatalf("the answer was not changed in place: %+v", settled)
	}
	c.says(settled, "Fault: back-row attack", "Told since", "Rule:", "2026-014")
	if slices.Contains(settled.Labels(), "back row") {
		t.Errorf("what was answered is asked still: %q", settled.Labels())
	}
	codes := ""
	for _, b := range settled.Labels() {
		if strings.HasPrefix(b, "Other codes") {
			codes = b
		}
	}
	other := c.message(c.Press(ana, where, settled, codes))
	c.says(other, "international", "collegiate", "club")
	back := c.message(c.Press(ana, where, other, "The ruling"))
	if back.ID != m.ID || back.Shown() != settled.Shown() {
		t.Errorf("back at the ruling, it is another:\n%s\nwas\n%s", back.Shown(), settled.Shown())
	}
}

// A fact is told in words, in the form.
func TestFactsInWords(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, conversation(t, nil))
		m := c.message(c.Slash(ana, crewChannel, "ask", play(half)))
		form := c.Press(ana, crewChannel, m, "In my own words")
		if title := form.Form(); title == "" {
			t.Fatalf("no form opened\n%s", c.log)
		}
		told := c.message(c.Submit(form, map[string]string{"words": "she was back row"}))
		if told.ID != m.ID {
			t.Errorf("the form's answer did not change the message: %s", told.Shown())
		}
		c.says(told, "Fault: back-row attack", "Told since")
		// What is not understood is said to the person alone.
		m = c.message(c.Slash(ana, crewChannel, "ask", play(half)))
		form = c.Press(ana, crewChannel, m, "In my own words")
		form.Form()
		c.Submit(form, map[string]string{"words": "purple"})
		if said := c.await("an explanation", says("I did not understand")); said.To != ana.ID {
			t.Errorf("seen by %q", said.To)
		}
	})
}

// An answer for its asker alone is shared with the channel.
func TestShare(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, conversation(t, nil))
		m := c.message(c.Slash(ana, crewChannel, "ask", play(half)))
		c.Press(ana, crewChannel, m, "Share with the channel")
		shared := c.await("the shared answer", func(x discordfake.Message) bool { return x.ID != m.ID && x.To == "" })
		// Whoever did not ask gets a copy of their own.
		c.Press(bo, crewChannel, shared, "front row")
		own := c.await("a copy", func(x discordfake.Message) bool { return x.To == bo.ID })
		c.says(own, "A copy of your own")
		if now := c.Message(shared.ID); now.Edits != 0 {
			t.Errorf("the shared answer was changed by another: %s", now.Shown())
		}
	})
}

// Somebody else's message is looked up for the one who picked it, whatever
// parts it has.
func TestShortcut(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, conversation(t, nil))
		got := c.message(c.Pick(ana, crewChannel, c.Plant(crewChannel.Channel, half)))
		if got.To != ana.ID {
			t.Errorf("a message that was looked up is answered to %q", got.To)
		}
		c.says(got, "It turns on this")
	})
}

// Completions come out of the conversation while a play is typed.
func TestCompletion(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		c := start(t, server(t), mode, conversation(t, nil))
		if got := c.Type(ana, crewChannel, "ask", "code", "c").Choices(); !slices.Equal(got, []string{"club", "collegiate"}) {
			t.Errorf("codes: %q", got)
		}
		if got := c.Type(ana, crewChannel, "ask", "play", "").Choices(); len(got) == 0 {
			t.Errorf("nothing is offered for an empty play")
		}
		if got := c.Type(ana, crewChannel, "help", "odd", "x").Choices(); len(got) != 0 {
			t.Errorf("offered for nothing: %q", got)
		}
	})
}
