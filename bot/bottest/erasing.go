package bottest

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// Somebody has all that is kept of them deleted, after a look at what it would
// be; whoever is no publisher can't do so for others.
func erasing(t *testing.T, h Harness) {
	s := newStore(t)
	p := h.Start(t, bot.New(bot.Options{
		Store: s,
		Find: func(bot.Place) (bot.Association, bool) {
			return bot.Association{ID: "riverside", Name: "Riverside Officials", Code: "scholastic",
				Grants: []bot.Grant{{Role: bot.Publisher, To: at.Who.ID}}}, true
		},
	}).Handle)
	kept := func() (qs []store.Question, trail []store.Entry) {
		t.Helper()
		err := s.Read(t.Context(), "riverside", func(r store.Reader) (err error) {
			if qs, err = r.Questions(store.Span{}); err == nil {
				trail, err = r.Trail(store.Span{})
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		return qs, trail
	}
	other := at
	other.Who.ID = "UBOB1"
	const words = "our setter tips the ball over from inside the 3m line, ball above the net"
	ask := func(m bot.Meta, n int) {
		t.Helper()
		p.Do(bot.Command{Meta: m, Text: words})
		until(t, "the question to be kept", p, func() bool { qs, _ := kept(); return len(qs) == n })
	}
	// look asks what would be erased, and gives the message that asks back.
	look := func(m bot.Meta, whom, head string) Seen {
		t.Helper()
		before := len(p.Seen())
		p.Do(bot.Command{Meta: m, Name: "erase", Text: whom})
		s := awaits(t, "what would be erased", p, func(s Seen) bool { return slices.ContainsFunc(p.Seen()[before:], same(s)) && reads(head)(s) })
		if s.To != m.Who.ID {
			t.Errorf("what is kept of somebody is shown to %q", s.To)
		}
		return s
	}
	pressBy := func(m bot.Meta, s Seen, label, then string) {
		t.Helper()
		e := pressing(s, label)
		if e.State == "" {
			t.Fatalf("no button %q on %+v", label, s)
		}
		e.Who = m.Who
		p.Do(e)
		awaits(t, "what came of it", p, func(c Seen) bool { return c.Message == s.Message && c.Changed && reads(then)(c) })
	}

	ask(at, 1)
	ask(other, 2)
	pressBy(other, look(other, "", "Erase all that is kept of you?"), "Keep it", "Nothing was erased")
	if qs, _ := kept(); len(qs) != 2 {
		t.Fatalf("%d questions are left, want both", len(qs))
	}
	look(other, at.Who.ID, "That is for a publisher")
	pressBy(other, look(other, "me", "1 question with its answer"), "Erase it all", "Erased")
	qs, trail := kept()
	if len(qs) != 1 || qs[0].Asker.ID != at.Who.ID {
		t.Errorf("left are %+v, want the other's question", qs)
	}
	if len(trail) != 1 || trail[0].Did != "erase" || !trail[0].Who.IsZero() || strings.Contains(fmt.Sprint(trail), other.Who.ID) {
		t.Errorf("the audit trail has %+v, want one entry that names nobody", trail)
	}

	ask(other, 2)
	pressBy(at, look(at, other.Who.ID, "Erase all that is kept of "+other.Who.ID+"?"), "Erase it all", "Erased")
	qs, trail = kept()
	if len(qs) != 1 || qs[0].Asker.ID != at.Who.ID {
		t.Errorf("left are %+v, want the publisher's own question", qs)
	}
	if last := trail[len(trail)-1]; last.Did != "erase" || last.Who.ID != at.Who.ID || strings.Contains(fmt.Sprint(trail), other.Who.ID) {
		t.Errorf("the audit trail has %+v, want who did it and not of whom", trail)
	}
	fine(t, p)
}

// same reports whether two things seen are the same.
func same(s Seen) func(Seen) bool {
	return func(o Seen) bool { return o.Message == s.Message && o.Changed == s.Changed && o.Text == s.Text }
}
