package bottest

import (
	"context"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/engine/code"
)

// Officials of a crew. The first is its mentor.
const (
	mentor = "UANA1"
	second = "UBOB1"
	third  = "UCLEO1"
)

// Together proves what officials do together on a platform: two give their
// views of a play, and a crew rules on one that its mentor puts. What somebody
// saw or called is for them alone, and nobody is named.
func Together(t *testing.T, h Harness) {
	t.Run("views", func(t *testing.T) { twoViews(t, h) })
	t.Run("poll", func(t *testing.T) { polled(t, h) })
}

// crew is an association on a platform with its conversation.
type crew struct {
	Platform
	t   *testing.T
	bot *bot.Bot
}

func newCrew(t *testing.T, h Harness) *crew {
	t.Helper()
	s := newStore(t)
	a := bot.Association{ID: "riverside", Code: code.Scholastic, Grants: []bot.Grant{{Role: bot.Mentor, To: mentor}}}
	c := &crew{t: t}
	c.bot = bot.New(bot.Options{
		Store: s,
		Find:  func(bot.Place) (bot.Association, bool) { return a, true },
		All:   func() []bot.Association { return []bot.Association{a} },
		Now:   func() time.Time { return time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC) },
		Send: func(ctx context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
			return c.Adapter().Post(ctx, to, m)
		},
	})
	c.Platform = h.Start(t, c.bot.Handle)
	return c
}

// says has somebody give a command.
func (c *crew) says(who, name, words string) {
	m := at
	m.Who.ID = who
	c.Do(bot.Command{Meta: m, Name: name, Text: words})
}

// presses has somebody press a button of something seen, and does what is due.
func (c *crew) presses(who string, s Seen, label string) {
	c.t.Helper()
	p := pressing(s, label)
	if p.State == "" {
		c.t.Fatalf("there is no button %q under %s: %+v", label, s.Text, s.Buttons)
	}
	p.Who.ID = who
	c.Do(p)
	until(c.t, "the press to be taken", c, func() bool { return c.Unacked() == 0 })
}

// alone waits for something that one person sees alone.
func (c *crew) alone(who, words string) Seen {
	c.t.Helper()
	return awaits(c.t, words+" for "+who, c, func(s Seen) bool { return s.To == who && reads(words)(s) })
}

// board waits for the newest state of a message that all see.
func (c *crew) board(words string) Seen {
	c.t.Helper()
	until(c.t, words+" for all", c, func() bool {
		c.bot.Tick(context.Background())
		return slices.ContainsFunc(c.Seen(), func(s Seen) bool { return s.To == "" && reads(words)(s) })
	})
	return awaits(c.t, words, c, func(s Seen) bool { return s.To == "" && reads(words)(s) })
}

// unnamed fails the test where something that all see names somebody.
func (c *crew) unnamed() {
	c.t.Helper()
	for _, s := range c.Seen() {
		for _, who := range []string{mentor, second, third} {
			if s.To == "" && strings.Contains(s.Text, who) {
				c.t.Errorf("%s is named to all:\n%s", who, s.Text)
			}
		}
	}
}

const (
	openTip = "our setter tips the ball over from inside the 3m line, ball above the net"
	backTip = "our back-row setter tips the ball over from inside the 3m line, ball above the net"
)

func twoViews(t *testing.T, h Harness) {
	c := newCrew(t, h)
	c.says(second, "views", openTip)
	board := c.board("How did each of you see it?")
	c.presses(second, board, "Give my facts")
	c.presses(second, c.alone(second, "How did you see it?"), "back row")
	c.presses(second, c.alone(second, "our setter was back row"), "Sealed, until another is in")
	c.alone(second, "in, sealed")
	board = c.board("An official saw this in their own way")
	if reads("back row")(board) {
		t.Errorf("all see what is sealed:\n%s", board.Text)
	}
	c.presses(third, board, "Give my facts")
	c.presses(third, c.alone(third, "How did you see it?"), "front row")
	c.presses(third, c.alone(third, "our setter was front row"), "Show it now")
	board = c.board("It matters: the two views are ruled differently")
	for _, want := range []string{"Was our setter front row or back row?", "fault: back-row attack", "play on, no fault"} {
		if !reads(want)(board) {
			t.Errorf("%q is not shown:\n%s", want, board.Text)
		}
	}
	c.presses(mentor, board, "Change my view")
	c.alone(mentor, "Two views of this play are in already")
	c.unnamed()
	fine(t, c)
}

func polled(t *testing.T, h Harness) {
	c := newCrew(t, h)
	c.says(second, "poll", backTip)
	c.alone(second, "That is for a mentor")
	c.says(mentor, "poll", backTip)
	preview := c.alone(mentor, "Put this play to the crew?")
	if !reads("Fault: back-row attack")(preview) {
		t.Errorf("the preview lacks the ruling:\n%s", preview.Text)
	}
	c.presses(mentor, preview, "Until a mentor closes it")
	board := c.board("What do you call?")
	for _, giveaway := range []string{"9-5", "Because", "illegal attack"} {
		if reads(giveaway)(board) {
			t.Errorf("the play gives its ruling away by %q:\n%s", giveaway, board.Text)
		}
	}
	fault := "Fault: back-row attack, against us"
	c.presses(second, board, fault)
	c.alone(second, "Your call: fault: back-row attack")
	c.presses(third, board, "Play on, no fault")
	c.alone(third, "Your call: play on")
	c.presses(third, board, fault)
	c.alone(third, "Your call: fault: back-row attack")
	c.presses(mentor, board, "It depends on what was not told")
	c.presses(second, board, "Close it")
	if len(c.Seen()) == 0 || slices.ContainsFunc(c.Seen(), func(s Seen) bool { return s.To == "" && reads("As the ruling")(s) }) {
		t.Error("somebody who is no mentor closed it")
	}
	c.presses(mentor, board, "Close it")
	result := c.board("As the ruling")
	for _, want := range []string{"2 fault: back-row attack, against us", "1 it depends on what was not told", "2 of 3", "Because"} {
		if !reads(want)(result) {
			t.Errorf("%q is not shown:\n%s", want, result.Text)
		}
	}
	c.board("Closed: a play that you ruled on together")
	c.presses(third, board, "Not sure")
	c.alone(third, "This play is closed")
	c.says(mentor, "numbers", "")
	numbers := c.alone(mentor, "What was asked, in numbers")
	for _, want := range []string{"calls as the ruling", "ruled together"} {
		if !reads(want)(numbers) {
			t.Errorf("%q is not counted:\n%s", want, numbers.Text)
		}
	}
	c.unnamed()
	fine(t, c)
}
