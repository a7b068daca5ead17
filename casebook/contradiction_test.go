package casebook

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// rally builds a play of contacts and net touches by "A1 contact", "B2 net".
func rally(t testing.TB, events []play.Event, facts map[string]play.Value) *play.Rally {
	t.Helper()
	p := &play.Rally{}
	for i, e := range events {
		e.ID = fmt.Sprintf("e%d", i+1)
		if e.Player != "" && !slices.ContainsFunc(p.Players, func(x play.Player) bool { return x.ID == e.Player }) {
			p.Players = append(p.Players, play.Player{ID: e.Player, Team: e.Team})
		}
		p.Events = append(p.Events, e)
	}
	for s, v := range facts {
		k, err := play.ParseKey(s)
		if err != nil {
			t.Fatal(err)
		}
		p = p.With(k, v)
	}
	if err := p.Check(); err != nil {
		t.Fatal(err)
	}
	return p
}

// same reports whether two plays can be the same play, and the play that both are.
func same(p, q *play.Rally) (*play.Rally, bool) {
	g := newGroup("scholastic")
	g.add(&claim{note: &Note{}, shape: shapes(q, nil)[0], ruling: Ruling{Outcome: "fault"}})
	for _, s := range shapes(p, nil) {
		if s.kinds != g.claims[0].shape.kinds {
			continue
		}
		for range g.compatible(s, Ruling{Outcome: "play-on"}).members {
			return s.over(g.claims[0].shape), true
		}
	}
	return nil, false
}

func TestSamePlay(t *testing.T) {
	a := play.Event{Kind: play.Contact, Team: play.A, Player: "p1", Action: play.Attack}
	touch := play.Event{Kind: play.Contact, Team: play.A, Player: "p1"}
	b := play.Event{Kind: play.Contact, Team: play.B, Player: "p2", Action: play.Block}
	bFirst := play.Event{Kind: play.Contact, Team: play.A, Player: "p2", Action: play.Block}
	aThen := play.Event{Kind: play.Contact, Team: play.B, Player: "p1", Action: play.Attack}
	net := play.Event{Kind: play.NetTouch, Team: play.A, Player: "p1"}
	netOther := play.Event{Kind: play.NetTouch, Team: play.A, Player: "p3"}
	for name, c := range map[string]struct {
		p, q []play.Event
		pf   map[string]play.Value
		qf   map[string]play.Value
		want bool
	}{
		"one tells more":           {[]play.Event{a}, []play.Event{a}, map[string]play.Value{"height@e1": play.Above}, nil, true},
		"each tells something":     {[]play.Event{a}, []play.Event{a}, map[string]play.Value{"height@e1": play.Above}, map[string]play.Value{"row@p1": play.Back}, true},
		"they differ":              {[]play.Event{a}, []play.Event{a}, map[string]play.Value{"row@p1": play.Front}, map[string]play.Value{"row@p1": play.Back}, false},
		"an act left open":         {[]play.Event{a}, []play.Event{touch}, nil, nil, true},
		"another act":              {[]play.Event{a}, []play.Event{{Kind: play.Contact, Team: play.A, Player: "p1", Action: play.Set}}, nil, nil, false},
		"more happens":             {[]play.Event{a}, []play.Event{a, b}, nil, nil, false},
		"sides the other way":      {[]play.Event{a, b}, []play.Event{aThen, bFirst}, nil, nil, true},
		"a side's fact turned":     {[]play.Event{a}, []play.Event{{Kind: play.Contact, Team: play.B, Player: "p1", Action: play.Attack}}, map[string]play.Value{"serving": play.ValueA}, map[string]play.Value{"serving": play.ValueB}, true},
		"a side's fact not turned": {[]play.Event{a}, []play.Event{{Kind: play.Contact, Team: play.B, Player: "p1", Action: play.Attack}}, map[string]play.Value{"serving": play.ValueA}, map[string]play.Value{"serving": play.ValueA}, false},
		"one player or two":        {[]play.Event{a, net}, []play.Event{a, netOther}, nil, nil, false},
		"same moment, told the other way": {[]play.Event{a, b}, []play.Event{bFirst, aThen},
			map[string]play.Value{"order@e1-e2": play.Same, "row@p2": play.Front}, map[string]play.Value{"order@e1-e2": play.Same, "row@p2": play.Front}, true},
		"same moment, facts the other way": {[]play.Event{a, b}, []play.Event{bFirst, aThen},
			map[string]play.Value{"order@e1-e2": play.Same, "row@p2": play.Front}, map[string]play.Value{"order@e1-e2": play.Same, "row@p2": play.Back}, false},
	} {
		t.Run(name, func(t *testing.T) {
			p, q := rally(t, c.p, c.pf), rally(t, c.q, c.qf)
			shared, got := same(p, q)
			if _, back := same(q, p); got != c.want || back != c.want {
				t.Fatalf("same play: %v, and the other way %v, want %v", got, back, c.want)
			}
			if !got {
				return
			}
			if err := shared.Check(); err != nil {
				t.Errorf("the shared play is malformed: %v", err)
			}
			for _, k := range p.Known() {
				if shapes(p, nil)[0].swap {
					break
				}
				if shared.Get(k) != p.Get(k) {
					t.Errorf("the shared play lacks %s", k)
				}
			}
		})
	}
}

// TestSamePlayRandom: a play can be the same as itself, as itself with the
// sides changed over, and as itself with a fact less told; never as itself with
// a fact otherwise.
func TestSamePlayRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 1))
	for range 800 {
		p := playgen.Rally(r, playgen.Options{Events: 4})
		if _, ok := same(p, p); !ok {
			t.Fatalf("not the same as itself: %+v", p)
		}
		if _, ok := same(p, p.Swap()); !ok {
			t.Fatalf("not the same with the sides changed over: %+v", p)
		}
		for _, k := range p.Known() {
			if k.Fact == play.Order {
				continue // what is told about the order makes further tellings
			}
			less := p.With(k, play.Unknown)
			if shared, ok := same(p, less); !ok {
				t.Fatalf("not the same without %s: %+v", k, p)
			} else if err := shared.Check(); err != nil {
				t.Fatalf("the shared play is malformed: %v", err)
			}
			f, _ := play.FactByID(k.Fact)
			for _, v := range f.Values {
				if v.Value == p.Get(k) || len(shapes(p, nil)) > 1 {
					continue
				}
				if _, ok := same(p, p.With(k, v.Value)); ok {
					t.Fatalf("the same although %s is %s and %s: %+v", k, p.Get(k), v.Value, p)
				}
			}
		}
	}
}

// TestCoversItself: a play is a case of itself, whatever its sides are called.
func TestCoversItself(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 1))
	for range 1000 {
		p := playgen.Rally(r, playgen.Options{Events: 4})
		if !Covers(p, p) || !Covers(p, p.Swap()) {
			t.Fatalf("not a case of itself: %+v", p)
		}
	}
	if Covers(nil, nil) || Covers(&play.Rally{}, &play.Rally{}) {
		t.Error("nothing covers nothing")
	}
}

func TestBitset(t *testing.T) {
	var b bitset
	for _, i := range []int{0, 63, 64, 200} {
		b.set(i)
	}
	o := b.clone()
	var less bitset
	less.set(64)
	o.without(less)
	if !slices.Equal(slices.Collect(b.members), []int{0, 63, 64, 200}) || !slices.Equal(slices.Collect(o.members), []int{0, 63, 200}) {
		t.Errorf("%v, %v", slices.Collect(b.members), slices.Collect(o.members))
	}
}
