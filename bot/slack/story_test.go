package slack_test

import (
	"context"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/slack/slackfake"
	"example.org/netpost/engine/code"
)

// play turns on a fact that it does not tell.
const play = "our setter tips the ball over from inside the 3m line, ball above the net"

type notes []bot.Note

func (n notes) Notes(context.Context, bot.Question) ([]bot.Note, error) { return n, nil }

var someNotes = notes{{
	ID: "2026-014", Title: "Tight save, blocker's hands on it too", URL: "https://notes.example/2026-014?a=1&b=2",
	Codes: []code.Code{code.Scholastic}, Season: 2026, Snippet: bot.Line("The setter was back row."),
}}

// A question is asked, turns on a fact, is answered in place when the fact is
// told, and looked at under the other codes.
func TestStory(t *testing.T) {
	for _, mode := range []string{socketMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			t.Run("in the channel", func(t *testing.T) {
				c := start(t, workspace(t), mode, conversation(t, someNotes))
				ana := c.Person("U0ANA")
				c.fine(ana.Command(talk, "public "+play))
				m := c.last(ana, talk, slackfake.Message{})
				if m.Private() {
					t.Error("a public answer is private")
				}
				c.story(ana, c.Person("U0BO"), m)
			})
			t.Run("in a thread", func(t *testing.T) {
				c := start(t, workspace(t), mode, conversation(t, someNotes))
				ana := c.Person("U0ANA")
				asked, d := ana.Say(talk, "", "<@"+slackfake.Self+"> "+play)
				c.fine(d)
				m := c.last(ana, talk, slackfake.Message{})
				if m.Thread != asked.TS {
					t.Errorf("the answer is in thread %q, want that of the question, %q", m.Thread, asked.TS)
				}
				c.story(ana, c.Person("U0BO"), m)
			})
			t.Run("privately", func(t *testing.T) {
				c := start(t, workspace(t), mode, conversation(t, someNotes))
				ana, bo := c.Person("U0ANA"), c.Person("U0BO")
				c.fine(ana.Command(talk, play))
				m := c.last(ana, talk, slackfake.Message{})
				if !m.Private() {
					t.Error("a private answer is public")
				}
				c.story(ana, nil, m)
				if seen := bo.Sees(talk); len(seen) != 0 {
					t.Errorf("others see it: %v", seen)
				}
			})
			t.Run("directly", func(t *testing.T) {
				c := start(t, workspace(t), mode, conversation(t, someNotes))
				ana := c.Person("U0ANA")
				_, d := ana.Say(slackfake.Room(ana.ID), "", play)
				c.fine(d)
				m := c.last(ana, slackfake.Room(ana.ID), slackfake.Message{})
				if m.Private() {
					t.Error("what is said directly does not last")
				}
				c.story(ana, nil, m)
			})
		})
	}
}

// story goes on from the answer that turns on a fact.
func (c *crew) story(ana, bo *slackfake.Person, m slackfake.Message) {
	t := c.t
	t.Helper()
	c.says(m, "It turns on this: Was our setter front row or back row?", "2026-014")
	c.fine(ana.Press(m, "back row"))
	settled := c.last(ana, m.Channel, m)
	if settled.TS != m.TS || settled.Edits != 1 || settled.Private() != m.Private() {
		t.Fatalf("the answer was not changed in place: %+v", settled)
	}
	c.says(settled, "Fault: back-row attack", "Told since", "Rule:", "2026-014")
	if slices.Contains(settled.Buttons(), "back row") {
		t.Errorf("what was answered is asked still: %q", settled.Buttons())
	}
	if bo != nil { // the others see the same message
		seen := bo.Sees(m.Channel)
		if i := slices.IndexFunc(seen, func(x slackfake.Message) bool { return x.TS == m.TS }); i < 0 || seen[i].Edits != 1 {
			t.Error("the others do not see the change")
		}
	}
	codes := ""
	for _, b := range settled.Buttons() {
		if strings.HasPrefix(b, "Other codes") {
			codes = b
		}
	}
	c.fine(ana.Press(settled, codes))
	other := c.last(ana, m.Channel, settled)
	if other.TS != m.TS {
		t.Fatalf("the other codes came as another message: %+v", other)
	}
	c.says(other, "international", "collegiate", "club")
	c.fine(ana.Press(other, "The ruling"))
	back := c.last(ana, m.Channel, other)
	if back.Shown() != settled.Shown() {
		t.Errorf("back at the ruling, it is another:\n%s\nwas\n%s", back.Shown(), settled.Shown())
	}
}

// A fact is told in words, in the form and by a mention in the thread.
func TestFactsInWords(t *testing.T) {
	for _, mode := range []string{socketMode, httpMode} {
		t.Run(mode, func(t *testing.T) {
			c := start(t, workspace(t), mode, conversation(t, nil))
			ana := c.Person("U0ANA")
			_, d := ana.Say(talk, "", "<@"+slackfake.Self+"> "+play)
			c.fine(d)
			m := c.last(ana, talk, slackfake.Message{})
			c.fine(ana.Press(m, "In my own words"))
			if !c.Wait(wait, func() bool { return len(c.Views(ana.ID)) == 1 }) {
				t.Fatalf("no form opened\n%s", c.log)
			}
			v := c.Views(ana.ID)[0]
			c.fine(ana.Submit(v, map[string]string{"words": "she was back row"}))
			if len(c.Views(ana.ID)) != 0 {
				t.Error("the form is open still")
			}
			told := c.last(ana, talk, m)
			if told.TS != m.TS {
				t.Errorf("the form's answer did not change the message: %s", told.Shown())
			}
			c.says(told, "Told since")

			_, d = ana.Say(talk, m.Thread, "<@"+slackfake.Self+"> she was front row")
			c.fine(d)
			said := c.last(ana, talk, told)
			if said.Thread != m.Thread {
				t.Errorf("the answer to words in the thread is not in it: %+v", said)
			}
		})
	}
}

// An answer for its asker alone is shared with the channel.
func TestShare(t *testing.T) {
	c := start(t, workspace(t), socketMode, conversation(t, nil))
	ana, bo := c.Person("U0ANA"), c.Person("U0BO")
	c.fine(ana.Command(talk, play))
	m := c.last(ana, talk, slackfake.Message{})
	c.fine(ana.Press(m, "Share with the channel"))
	shared := c.last(bo, talk, slackfake.Message{})
	if shared.Private() || shared.Thread != "" {
		t.Errorf("it was not shared with the channel: %+v", shared)
	}
}

// Somebody else's message is looked up for the one who picked it.
func TestShortcut(t *testing.T) {
	c := start(t, workspace(t), httpMode, conversation(t, nil))
	ana, bo := c.Person("U0ANA"), c.Person("U0BO")
	m, _ := bo.Say(talk, "", play+" &amp; then &lt;lands&gt;")
	c.fine(ana.Shortcut(m))
	got := c.last(ana, talk, slackfake.Message{})
	if !got.Private() || len(bo.Sees(talk)) != 1 {
		t.Errorf("a message that was looked up is answered to all")
	}
}
