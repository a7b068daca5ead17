package playgen_test

import (
	"math/rand/v2"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// Random plays are well formed, and every kind, action, role, value of a fact
// and void turns up among them.
func TestRally(t *testing.T) {
	const runs = 6000
	for _, o := range []playgen.Options{{}, {Wild: true}, {Names: true, Voids: true}, {Wild: true, Names: true, Voids: true}} {
		r := rand.New(rand.NewPCG(1, 2))
		kinds, actions, roles := map[play.Kind]bool{}, map[play.Action]bool{}, map[play.Role]bool{}
		values, voids := map[string]bool{}, map[play.FactID]bool{}
		names, asked := 0, 0
		for i := range runs {
			p := playgen.Rally(r, o)
			if err := p.Check(); err != nil {
				t.Fatalf("%+v, run %d: %v", o, i, err)
			}
			if n := len(p.Events); n < 1 || n > 6 {
				t.Fatalf("%+v, run %d: %d events", o, i, n)
			}
			for _, e := range p.Events {
				kinds[e.Kind] = true
				actions[e.Action] = true
				side := p.Get(play.Key{Fact: play.Side, Of: e.ID})
				if e.Ball() && string(side) != e.Team.String() {
					t.Fatalf("%+v, run %d: %s is of team %q on side %q", o, i, e.ID, e.Team, side)
				}
			}
			acts := map[string]bool{}
			for _, e := range p.Events {
				acts[e.Player] = true
			}
			for _, pl := range p.Players {
				roles[pl.Role] = true
				if !acts[pl.ID] {
					t.Fatalf("%+v, run %d: %s does not act", o, i, pl.ID)
				}
			}
			for _, k := range p.Known() {
				values[string(k.Fact)+"="+string(p.Get(k))] = true
			}
			for _, k := range p.Voided() {
				voids[k.Fact] = true
			}
			if len(p.Names[play.A]) > 0 {
				names++
			}
			if p.Asked == play.AskedPoint {
				asked++
			}
		}
		if len(kinds) != len(play.Kinds()) || len(actions) != len(play.Actions()) || len(roles) != len(play.Roles()) {
			t.Errorf("%+v: %d kinds, %d actions, %d roles turned up", o, len(kinds), len(actions), len(roles))
		}
		for _, f := range play.Facts() {
			for _, c := range f.Values {
				if !values[string(f.ID)+"="+string(c.Value)] {
					t.Errorf("%+v: %s=%s never turned up", o, f.ID, c.Value)
				}
			}
			if want := o.Voids && f.Presume != nil; voids[f.ID] != want {
				t.Errorf("%+v: void of %s turned up: %t, want %t", o, f.ID, voids[f.ID], want)
			}
		}
		if (asked > 0) != o.Voids {
			t.Errorf("%+v: the point was asked for %d times", o, asked)
		}
		if (names > 0) != o.Names {
			t.Errorf("%+v: the sides were named %d times", o, names)
		}
	}
}

func TestRallySameSource(t *testing.T) {
	draw := func() string {
		b := playgen.Bytes("a few bytes, then nothing")
		p := playgen.Rally(&b, playgen.Options{Wild: true})
		s := ""
		for _, e := range p.Events {
			s += string(e.Kind) + e.Team.String() + e.Player + " "
		}
		for _, k := range p.Known() {
			s += k.String() + "=" + string(p.Get(k)) + " "
		}
		return s
	}
	if a, b := draw(), draw(); a != b || a == "" {
		t.Errorf("the same bytes gave %q and %q", a, b)
	}
}

// The sweep yields as many plays as it says, each well formed and each once.
func TestShort(t *testing.T) {
	for length, want := range []int{0, 52, 2756} {
		if got := playgen.Count(length); got != want {
			t.Errorf("Count(%d) = %d, want %d", length, got, want)
		}
		seen := map[string]bool{}
		playgen.Short(length, func(p *play.Rally) bool {
			if err := p.Check(); err != nil {
				t.Fatal(err)
			}
			s := ""
			for _, e := range p.Events {
				s += string(e.Kind) + string(e.Action) + e.Team.String() + " "
			}
			for _, k := range p.Known() {
				s += k.String() + "=" + string(p.Get(k)) + " "
			}
			seen[s] = true
			return true
		})
		if len(seen) != want {
			t.Errorf("Short(%d) yields %d different plays, want %d", length, len(seen), want)
		}
	}
	if got := playgen.Count(3); got != 143364 {
		t.Errorf("Count(3) = %d", got)
	}
	n := 0
	playgen.Short(3, func(*play.Rally) bool { n++; return n < 10 })
	if n != 10 {
		t.Errorf("the sweep went on to %d after it was told to stop", n)
	}
}

func BenchmarkShort(b *testing.B) {
	for b.Loop() {
		playgen.Short(2, func(*play.Rally) bool { return true })
	}
}
