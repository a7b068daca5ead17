package play_test

import (
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// TestFacts holds the table: sorted, unique, documented; every value worded;
// every presumption a value of the domain that says what it rests on.
func TestFacts(t *testing.T) {
	last := play.FactID("")
	for _, f := range play.Facts() {
		if f.ID <= last {
			t.Errorf("%s: the table is sorted by id, each once", f.ID)
		}
		last = f.ID
		if !strings.HasSuffix(f.Ask, "?") && !strings.HasSuffix(f.Ask, ": %s?") {
			t.Errorf("%s: the question %q does not end as one", f.ID, f.Ask)
		}
		if len(f.Doc) < 30 || !strings.HasSuffix(f.Doc, ".") {
			t.Errorf("%s: its meaning is not told in a sentence", f.ID)
		}
		if len(f.Values) < 2 || len(f.Values) > 8 {
			t.Errorf("%s: %d values; a domain is small and has at least two", f.ID, len(f.Values))
		}
		if (f.About == play.OfEvent) != (len(f.Kinds) > 0) {
			t.Errorf("%s: a fact of an event lists its kinds, and no other does", f.ID)
		}
		if (f.Presume == nil) != (f.Why == "") {
			t.Errorf("%s: a presumption says why, and only a presumption does", f.ID)
		}
		seen := map[play.Value]bool{}
		for _, c := range f.Values {
			if c.Words == "" || c.Value == play.Unknown || seen[c.Value] {
				t.Errorf("%s: value %q: worded, known and once", f.ID, c.Value)
			}
			seen[c.Value] = true
		}
		if sided := f.Has(play.ValueA) && f.Has(play.ValueB); sided != f.Sided {
			t.Errorf("%s: sided is %v, its values say %v", f.ID, f.Sided, sided)
		}
		if got, ok := play.FactByID(f.ID); !ok || got.Ask != f.Ask {
			t.Errorf("%s: is not found by its id", f.ID)
		}
	}
}

// TestPresumptions: on random plays every presumption is a value of its fact,
// does not depend on told facts of other things, and falls when it is voided.
func TestPresumptions(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	n := 0
	for range 500 {
		p := playgen.Rally(r, playgen.Options{})
		for _, k := range playgen.Keys(p) {
			v := p.Presumption(k)
			if v == play.Unknown {
				continue
			}
			n++
			f, _ := play.FactByID(k.Fact)
			if !f.Has(v) {
				t.Fatalf("%s is presumed %q, which is no value of it", k, v)
			}
			if w := p.WithVoid(k).Presumption(k); w != play.Unknown {
				t.Fatalf("%s is still presumed %q after it was voided", k, w)
			}
		}
	}
	if n < 1000 {
		t.Fatalf("only %d presumptions were seen", n)
	}
}

// TestSwapTwice: changing the sides over twice gives the same play.
func TestSwapTwice(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 300 {
		p := playgen.Rally(r, playgen.Options{Wild: true, Names: true, Voids: true})
		q := p.Swap().Swap()
		if !reflect.DeepEqual(p.Events, q.Events) || !reflect.DeepEqual(p.Players, q.Players) || !reflect.DeepEqual(p.Names, q.Names) {
			t.Fatalf("swapped twice\n%+v\n%+v", p, q)
		}
		for _, k := range p.Known() {
			if p.Get(k) != q.Get(k) {
				t.Fatalf("%s: %q, swapped twice %q", k, p.Get(k), q.Get(k))
			}
		}
	}
}

// TestCheck refuses malformed plays with the thing that is wrong.
func TestCheck(t *testing.T) {
	player := play.Player{ID: "p1", Team: play.A}
	contact := play.Event{ID: "e1", Kind: play.Contact, Team: play.A, Player: "p1"}
	for _, test := range []struct {
		p    play.Rally
		k    play.Key
		v    play.Value
		want string
	}{
		{p: play.Rally{Players: []play.Player{player}, Events: []play.Event{contact}}},
		{p: play.Rally{Players: []play.Player{player, player}}, want: "ids must be given and differ"},
		{p: play.Rally{Players: []play.Player{{ID: "p1"}}}, want: "has no team"},
		{p: play.Rally{Players: []play.Player{{ID: "p1", Team: play.A, Role: "keeper"}}}, want: "unknown role"},
		{p: play.Rally{Events: []play.Event{{ID: "e1", Kind: "dance"}}}, want: "unknown kind"},
		{p: play.Rally{Events: []play.Event{contact}}, want: "no player"},
		{p: play.Rally{Players: []play.Player{player}, Events: []play.Event{contact}}, k: play.Key{Fact: play.Extent, Of: "e1"}, v: play.Partly, want: "cannot have it"},
		{p: play.Rally{Players: []play.Player{player}, Events: []play.Event{contact}}, k: play.Key{Fact: play.Row, Of: "p1"}, v: play.Yes, want: "not among its values"},
		{p: play.Rally{Players: []play.Player{player}, Events: []play.Event{contact}}, k: play.Key{Fact: play.Order, Of: "e1-e2"}, v: play.Same, want: "follow one another"},
	} {
		p := &test.p
		if test.v != play.Unknown {
			p = p.With(test.k, test.v)
		}
		err := p.Check()
		switch {
		case test.want == "" && err != nil:
			t.Errorf("%+v: %v", test.p, err)
		case test.want != "" && (err == nil || !strings.Contains(err.Error(), test.want)):
			t.Errorf("%+v: error %v, want one with %q", test.p, err, test.want)
		}
	}
}

// TestParseKey round-trips every fact.
func TestParseKey(t *testing.T) {
	for _, f := range play.Facts() {
		for _, of := range []string{"", "e1", "e1-e2"} {
			k := play.Key{Fact: f.ID, Of: of}
			got, err := play.ParseKey(k.String())
			if err != nil || got != k {
				t.Errorf("%s: %v, %v", k, got, err)
			}
		}
	}
	if _, err := play.ParseKey("weather@e1"); err == nil || !strings.Contains(err.Error(), "known are") {
		t.Errorf("an unknown fact gives %v", err)
	}
}
