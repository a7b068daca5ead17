package engine_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// crowd is a play of n players of whom nothing is known: n unknown rows.
func crowd(n int) *play.Rally {
	p := &play.Rally{}
	for i := range n {
		p.Players = append(p.Players, play.Player{ID: fmt.Sprintf("p%d", i+1), Team: play.A, Role: play.Setter})
	}
	return p
}

// sparse is a random judge over n facts: a few rules of two facts each, read
// where they are needed.
func sparse(r *rand.Rand, n int) engine.Judge {
	type rule struct{ a, b, out int }
	rules := make([]rule, n)
	for i := range rules {
		rules[i] = rule{r.IntN(n), r.IntN(n), r.IntN(2)}
	}
	return func(read *engine.Read, _ engine.Subject) engine.Ruling {
		for _, x := range rules {
			if read.Is(play.Row, fmt.Sprintf("p%d", x.a+1), play.Back) && read.Is(play.Row, fmt.Sprintf("p%d", x.b+1), play.Front) {
				if x.out == 0 {
					return engine.Ruling{Outcome: engine.Fault, Fault: "back-row-attack", Against: play.A}
				}
				return engine.Ruling{Outcome: engine.PlayOn}
			}
		}
		return engine.Ruling{Outcome: engine.Replay, Replay: "double-fault"}
	}
}

func newest(t testing.TB) *code.Book {
	t.Helper()
	b, err := code.Open(code.International, 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestTreeOfToyJudges: the tree of every toy judge agrees with judging every
// world directly, is exact up to the limit and says when it is not.
func TestTreeOfToyJudges(t *testing.T) {
	b := newest(t)
	r := rand.New(rand.NewPCG(3, 4))
	exact, fell := 0, 0
	for i := range 120 {
		n := 3 + i%8
		j := sparse(r, n)
		d, err := engine.Decide(j, crowd(n), b)
		if err != nil {
			t.Fatal(err)
		}
		if d.Settled() {
			continue
		}
		if d.Exact {
			exact++
		} else {
			fell++
		}
		for w := range 1 << n {
			p := crowd(n)
			for k := range n {
				v := play.Front
				if w>>k&1 == 1 {
					v = play.Back
				}
				p = p.With(play.Key{Fact: play.Row, Of: fmt.Sprintf("p%d", k+1)}, v)
			}
			e, err := engine.Decide(j, p, b)
			if err != nil {
				t.Fatal(err)
			}
			leaf := d.Tree.Walk(p.Get)
			if !leaf.Leaf() || leaf.Ruling.Key() != e.Ruling.Key() {
				t.Fatalf("judge %d, world %b: the tree says %v, judging says %v", i, w, leaf.Ruling, e.Ruling)
			}
		}
	}
	if exact < 20 || fell < 5 {
		t.Fatalf("%d exact and %d fallback trees: too few of one sort", exact, fell)
	}
}

// depth is the least depth of any tree for a judge over the facts given, by
// trying every order: an independent check of the exact search.
func depth(t *testing.T, j engine.Judge, p *play.Rally, b *code.Book, n int) int {
	d, err := engine.Decide(j, p, b)
	if err != nil {
		t.Fatal(err)
	}
	if d.Settled() {
		return 0
	}
	best := n + 1
	for k := range n {
		key := play.Key{Fact: play.Row, Of: fmt.Sprintf("p%d", k+1)}
		if p.Get(key) != play.Unknown {
			continue
		}
		worst := 0
		for _, v := range []play.Value{play.Front, play.Back} {
			worst = max(worst, 1+depth(t, j, p.With(key, v), b, n))
		}
		best = min(best, worst)
	}
	return best
}

// TestSmallest compares the depth of the exact tree with trying every order.
func TestSmallest(t *testing.T) {
	b := newest(t)
	r := rand.New(rand.NewPCG(5, 6))
	for range 25 {
		j := sparse(r, 4)
		d, err := engine.Decide(j, crowd(4), b)
		if err != nil {
			t.Fatal(err)
		}
		want := depth(t, j, crowd(4), b, 4)
		got := 0
		if d.Tree != nil {
			got = d.Tree.Depth()
		}
		if got != want {
			t.Fatalf("the tree is %d deep, the least is %d", got, want)
		}
	}
}

// TestTooOpen: a play that leaves more open than the limit is refused with a
// sentence, never run for ever.
func TestTooOpen(t *testing.T) {
	all := func(read *engine.Read, _ engine.Subject) engine.Ruling {
		n := 0
		for i := range 13 {
			if read.Is(play.Row, fmt.Sprintf("p%d", i+1), play.Back) {
				n++
			}
		}
		if n%2 == 0 {
			return engine.Ruling{Outcome: engine.PlayOn}
		}
		return engine.Ruling{Outcome: engine.Fault, Fault: "back-row-block", Against: play.A}
	}
	if _, err := engine.Decide(all, crowd(13), newest(t)); err == nil {
		t.Fatal("13 facts that all count were decided")
	}
}

// TestOutsideTheTable: a judge that reads a fact that is none is an error.
func TestOutsideTheTable(t *testing.T) {
	j := func(read *engine.Read, _ engine.Subject) engine.Ruling {
		read.Get("weather", "")
		return engine.Ruling{}
	}
	if _, err := engine.Decide(j, crowd(1), newest(t)); err == nil {
		t.Fatal("a fact outside the table was decided")
	}
}

// TestNearest finds the one fact whose change changes the ruling.
func TestNearest(t *testing.T) {
	j := func(read *engine.Read, _ engine.Subject) engine.Ruling {
		if read.Is(play.Row, "p1", play.Back) && read.Is(play.IsLibero, "p1", play.No) {
			return engine.Ruling{Outcome: engine.Fault, Fault: "back-row-attack", Against: play.A}
		}
		return engine.Ruling{Outcome: engine.PlayOn}
	}
	p := crowd(1).With(play.Key{Fact: play.Row, Of: "p1"}, play.Back)
	d, err := engine.Decide(j, p, newest(t))
	if err != nil {
		t.Fatal(err)
	}
	changes := d.Nearest(5)
	if len(changes) != 2 || changes[0].Facts[0].Key.Fact != play.IsLibero || changes[1].Facts[0].Key.Fact != play.Row {
		t.Fatalf("nearest: %+v; want the presumed fact first, then the told one", changes)
	}
	if !d.Flips(play.Key{Fact: play.Row, Of: "p1"}) {
		t.Fatal("the row flips the ruling")
	}
}

// TestCompare decides the same play under every code, in the codes' order.
func TestCompare(t *testing.T) {
	j := func(read *engine.Read, _ engine.Subject) engine.Ruling {
		if read.Param("hits.second-double") == "fault" {
			return engine.Ruling{Outcome: engine.Fault, Fault: "double-contact", Against: play.A}
		}
		return engine.Ruling{Outcome: engine.PlayOn}
	}
	ds, err := engine.Compare(j, crowd(1), 0)
	if err != nil || len(ds) != len(code.All()) {
		t.Fatal(len(ds), err)
	}
	if ds[0].Book.Code() != code.International || ds[0].Ruling.Outcome != engine.Fault || ds[3].Ruling.Outcome != engine.PlayOn {
		t.Fatalf("%v %v", ds[0].Ruling, ds[3].Ruling)
	}
}
