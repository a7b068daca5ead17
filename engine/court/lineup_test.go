package court

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Every trouble, by when it was found and by code: the whole table.
func TestLineupRulings(t *testing.T) {
	const (
		intl = code.International
		scho = code.Scholastic
		coll = code.Collegiate
	)
	cancel := "fault wrong-server against A measure cancel-points"
	undone := " answer the points of this term come off, point and service to the opponents; their time-outs, substitutions and sanctions in it are undone"
	for _, c := range []struct {
		trouble Trouble
		found   play.Value
		code    code.Code
		want    string
	}{
		{WrongServer, FoundBefore, intl, " measure correct-and-go-on"},
		{WrongServer, FoundRally, intl, "fault wrong-server against A"}, // q&a: one point only
		{WrongServer, FoundTerm, intl, cancel},
		{WrongServer, FoundTerm, scho, cancel + undone}, // officials' forum answer, 2014
		{WrongServer, FoundTerm, coll, cancel},
		{WrongServer, FoundLater, intl, " against A measure cancel-points,correct-and-go-on"},
		{WrongServer, FoundLater, scho, " measure correct-and-go-on"},
		{WrongServer, play.Unknown, scho, "depends on order-found"},
		{WrongOrder, FoundTerm, coll, "fault out-of-position against A measure cancel-points"},
		{WrongOrder, FoundTerm, scho, "fault out-of-position against A"},
		{WrongOrder, FoundLater, coll, " against A measure cancel-points,correct-and-go-on"},
		{WrongOrder, FoundLater, intl, " measure correct-and-go-on"},
		{OfficialOrder, FoundTerm, scho, " measure cancel-points"}, // forum thread
		{OfficialOrder, FoundLater, scho, " measure correct-and-go-on"},
		{OfficialOrder, FoundTerm, intl, " measure who-decides"},
		{BothLost, play.Unknown, intl, " measure correct-and-go-on"},
		{VacantServes, play.Unknown, scho, "fault wrong-server against A"}, // newspaper column
		{VacantServes, play.Unknown, intl, " against A measure forfeit"},
		{VacantServes, play.Unknown, coll, " against A measure who-decides"},
	} {
		l := &Lineup{Trouble: c.trouble, By: play.A}
		if c.found != play.Unknown {
			l = l.With(OrderFound, c.found)
		}
		if got := said(decide(t, l, c.code, 0)); got != c.want {
			t.Errorf("%s found %q, %s: %q, want %q", c.trouble, c.found, c.code, got, c.want)
		}
	}
	l := (&Lineup{Trouble: WrongServer, By: play.A}).With(OrderFound, FoundTerm).With(OrderMoment, play.No)
	if got := said(decide(t, l, intl, 0)); got != "fault wrong-server against A" {
		t.Errorf("moment not known: %q", got)
	}
}

func TestLineupHistory(t *testing.T) {
	h := &History{Start: [3][6]string{play.A: sixOf(1)}, First: play.B, Entries: []Entry{{What: Won, Team: play.A}, {What: Won, Team: play.A}}}
	for _, c := range []struct {
		asked Wanted
		want  string
	}{
		{WantServer, " answer 2 serves for A, 2-0"},
		{WantFront, " answer 2-0 for A; front row of A, from the left: 5 4 3"},
		{WantWhere, " answer 2-0 for A; A from position 1 to 6: 2 3 4 5 6 1"},
	} {
		if got := said(decide(t, &Lineup{History: h, Asked: c.asked}, code.Club, 0)); got != c.want {
			t.Errorf("%s: %q, want %q", c.asked, got, c.want)
		}
	}
	wrong := &History{Start: h.Start, First: play.A, Entries: []Entry{{What: Won, Team: play.A, Player: "3"}, {What: Won, Team: play.A, Player: "3"}}}
	if got := said(decide(t, &Lineup{History: wrong}, code.International, 0)); got != "fault wrong-server against A measure cancel-points answer 2 points of A come off: 3 served for 1" {
		t.Errorf("wrong server in the history: %q", got)
	}
}

// What a line-up says of itself is read back as that line-up.
func TestReadLineup(t *testing.T) {
	r := rand.New(rand.NewPCG(30, 5))
	names := [][3][]string{{}, {1: {"us"}, 2: {"them"}}, {1: {"blue"}, 2: {"white"}}}
	for range 2000 {
		l := &Lineup{Names: names[r.IntN(3)], By: play.A}
		if i := r.IntN(len(troubles) + 1); i < len(troubles) {
			l.Trouble = troubles[i].is
		} else {
			l.By = play.NoTeam
			l.History = randomSet(r, r.IntN(12))
			for i, e := range l.History.Entries {
				switch {
				case e.What == Won && r.IntN(4) == 0:
					l.History.Entries[i].Player = "3"
				case e.What == Won && r.IntN(6) == 0:
					l.History.Entries[i].What = Awarded
				}
			}
		}
		if l.Trouble == BothLost {
			l.By = play.NoTeam
		}
		for _, f := range lineupFacts {
			switch r.IntN(4) {
			case 0:
				l = l.With(f.ID, f.Values[r.IntN(len(f.Values))].Value)
			case 1:
				l = l.Doubt(play.Key{Fact: f.ID}).(*Lineup)
			}
		}
		if r.IntN(3) == 0 {
			l.Asked = wants[r.IntN(len(wants))].is
		}
		if err := l.Check(); err != nil {
			t.Fatalf("%q: %v", l.Sentences(), err)
		}
		m, ok := ReadLineup(l.Sentences())
		if !ok {
			t.Fatalf("not read: %q", l.Sentences())
		}
		x, y := decide(t, l, code.Scholastic, 0), decide(t, m, code.Scholastic, 0)
		if said(x) != said(y) || m.Trouble != l.Trouble || !slices.Equal(m.Known(), l.Known()) {
			t.Fatalf("%q: %s, read back %s", l.Sentences(), said(x), said(y))
		}
	}
	for _, s := range []string{"", "serves first", "A serves out of order", "rallies won by C", "A's line-up is 1 2 3"} {
		if m, ok := ReadLineup([]string{s}); ok {
			t.Errorf("%q was taken for a print of %q", s, m.Sentences())
		}
	}
}

func TestLineupCheck(t *testing.T) {
	for _, l := range []*Lineup{
		{}, {Trouble: "no-such"}, {Trouble: WrongServer},
		(&Lineup{Trouble: BothLost}).With("no-such", play.Yes), (&Lineup{Trouble: BothLost}).With(OrderMoment, "perhaps"),
		{History: &History{}},
	} {
		if l.Check() == nil {
			t.Errorf("%+v passed", l)
		}
	}
}
