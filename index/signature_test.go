package index

import (
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// blockOfServe is a front-row blocker of one side who stops the other side's serve at the
// net, and a hitter of no matter.
func blockOfServe() *play.Rally {
	p := &play.Rally{
		Players: []play.Player{{ID: "p1", Team: play.A, Role: play.Server}, {ID: "p2", Team: play.B, Role: play.Blocker}},
		Events: []play.Event{
			{ID: "e1", Kind: play.Serve, Team: play.A, Player: "p1"},
			{ID: "e2", Kind: play.Contact, Team: play.B, Player: "p2", Action: play.Block},
		},
	}
	p = p.With(play.Key{Fact: play.Row, Of: "p2"}, play.Front)
	return p.With(play.Key{Fact: play.ReachHeight, Of: "e2"}, play.Above)
}

func decideIn(t *testing.T, p *play.Rally) engine.Decision {
	t.Helper()
	b, err := code.Open(code.Scholastic, 2025)
	if err != nil {
		t.Fatal(err)
	}
	d, err := rules.Decide(p, b)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestSignature(t *testing.T) {
	p := blockOfServe()
	if err := p.Check(); err != nil {
		t.Fatal(err)
	}
	got := signature(notation.Reading{Rally: p}, decideIn(t, p))
	for _, want := range []sign{
		"event:serve", "event:contact.block", "then:serve>contact.block/them", "who:blocker",
		"fact:row=front", "whose:row=front@blocker", "whose:reach=above@contact.block", "fault:block-of-serve", "may:block-of-serve",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("no %s in %q", want, got)
		}
	}
	if !slices.IsSorted(got) || len(slices.Compact(slices.Clone(got))) != len(got) {
		t.Errorf("not sorted, or one twice: %q", got)
	}
	// Who is called A is the teller's choice.
	s := p.Swap()
	if other := signature(notation.Reading{Rally: s}, decideIn(t, s)); !slices.Equal(got, other) {
		t.Errorf("with the sides changed over it is %q instead of %q", other, got)
	}
	if a := alike(got, got); a < 0.5 {
		t.Errorf("a play is like itself by %.2f", a)
	}
	low := p.With(play.Key{Fact: play.ReachHeight, Of: "e2"}, play.Below)
	if same, otherwise := alike(got, got), alike(got, signature(notation.Reading{Rally: low}, decideIn(t, low))); otherwise >= same {
		t.Errorf("a play with another fact is as like (%.2f) as the same play (%.2f)", otherwise, same)
	}
	if signature(notation.Reading{}) != nil || alike(nil, got) != 0 {
		t.Error("nothing has a signature")
	}
}

// Every class of sign has a weight, and every weight a class.
func TestWeights(t *testing.T) {
	classes := []string{signAsked, signEvent, signFact, signFault, signMay, signMeasure, signOutcome, signRaised, signThen, signTopic, signTurns, signWho, signWhose}
	for _, c := range classes {
		if weights[c] <= 0 {
			t.Errorf("%s has no weight", c)
		}
	}
	if len(weights) != len(classes) {
		t.Errorf("%d weights for %d classes", len(weights), len(classes))
	}
}

// A play finds the note on it though the two share no word that tells anything.
func TestByPlay(t *testing.T) {
	x := memory(t,
		note("2025-001", "No stopping it there", "Let it come across.",
			"play: B's front-row middle blocks the serve back over the net", "ruling: {outcome: fault, fault: block-of-serve, against: B}"),
		note("2025-002", "Blocker and server", "A blocker above the net, a serve, a front row."))
	p := blockOfServe()
	hits, err := x.Search(t.Context(), Query{Reading: notation.Reading{Rally: p}, Decisions: []engine.Decision{decideIn(t, p)}})
	if err != nil {
		t.Fatal(err)
	}
	if len(hits) != 1 || hits[0].ID != "2025-001" || !strings.HasPrefix(hits[0].Why[0], "same fault: block of serve") {
		t.Errorf("found %+v", hits)
	}
}
