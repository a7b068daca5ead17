package rules_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

func book(t testing.TB, c code.Code) *code.Book {
	t.Helper()
	b, err := code.Open(c, 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// plays yields n random plays, every other one wild.
func plays(seed uint64, n int, yield func(*play.Rally)) {
	r := rand.New(rand.NewPCG(seed, 7))
	for i := range n {
		yield(playgen.Rally(r, playgen.Options{Events: 4, Wild: i%2 == 1, Voids: i%3 == 0}))
	}
}

// TestTreeAgrees walks the tree with random complete worlds and judges each
// world directly: both must rule alike.
func TestTreeAgrees(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	checked, open, skipped := 0, 0, 0
	plays(11, 3000, func(p *play.Rally) {
		b := book(t, code.All()[r.IntN(4)])
		d, err := rules.Decide(p, b)
		if err != nil {
			skipped++
			return
		}
		if !d.Settled() {
			open++
		}
		for range 3 {
			world := map[play.Key]play.Value{}
			value := func(k play.Key) play.Value {
				if v, ok := world[k]; ok {
					return v
				}
				f, _ := play.FactByID(k.Fact)
				world[k] = f.Values[r.IntN(len(f.Values))].Value
				return world[k]
			}
			want := d.Ruling
			if !d.Settled() {
				leaf := d.Tree.Walk(value)
				want = leaf.Ruling
			}
			var got engine.Decision
			q := p
			for {
				got, err = rules.Decide(q, b)
				if err != nil {
					return
				}
				if got.Settled() {
					break
				}
				q = q.With(got.Tree.Ask, value(got.Tree.Ask))
			}
			if got.Ruling.Key() != want.Key() {
				t.Fatalf("%s: the tree says %s, judging says %s\n%+v\nknown %v\nworld %v", b.Code(), want, got.Ruling, p.Events, p.Known(), world)
			}
			checked++
		}
	})
	t.Logf("%d worlds checked, %d plays open, %d too open to decide", checked, open, skipped)
	if checked < 3000 || open < 100 {
		t.Fatalf("only %d worlds of %d open plays were checked: the generator gives too little", checked, open)
	}
}

// TestSettlingNeverUnsettles tells, one at a time, facts that a settled play
// left unknown and did not presume: the ruling must stand.
func TestSettlingNeverUnsettles(t *testing.T) {
	n := 0
	plays(12, 2000, func(p *play.Rally) {
		b := book(t, code.All()[n%4])
		d, err := rules.Decide(p, b)
		if err != nil || !d.Settled() {
			return
		}
		for _, k := range d.Read {
			if p.Get(k) != play.Unknown || slices.Contains(d.Presumed, k) {
				continue
			}
			f, _ := play.FactByID(k.Fact)
			for _, c := range f.Values {
				e, err := rules.Decide(p.With(k, c.Value), b)
				if err != nil {
					t.Fatal(err)
				}
				if !e.Settled() || e.Ruling.Key() != d.Ruling.Key() {
					t.Fatalf("%s: %s was settled; telling %s=%s gives %v (settled %v)\n%+v\nknown %v", b.Code(), d.Ruling, k, c.Value, e.Ruling, e.Settled(), p.Events, p.Known())
				}
				n++
			}
		}
	})
	if n < 100 {
		t.Fatalf("only %d tellings were tried", n)
	}
}

// TestSwap swaps the teams: the ruling must be swapped and nothing else.
func TestSwap(t *testing.T) {
	n := 0
	plays(13, 2000, func(p *play.Rally) {
		b := book(t, code.All()[n%4])
		d, err := rules.Decide(p, b)
		if err != nil {
			return
		}
		e, err := rules.Decide(p.Swap(), b)
		if err != nil {
			t.Fatal(err)
		}
		if !d.Settled() || !e.Settled() {
			if d.Settled() != e.Settled() {
				t.Fatalf("%s: swapped, the play is settled on one side only\n%+v", b.Code(), p.Events)
			}
			if !slices.Equal(keys(d, false), keys(e, true)) {
				t.Fatalf("%s: swapped, the branches differ: %v and %v", b.Code(), keys(d, false), keys(e, true))
			}
			return
		}
		if got := e.Ruling.Swap().Key(); got != d.Ruling.Key() {
			t.Fatalf("%s: %s, and swapped %s\n%+v\nknown %v", b.Code(), d.Ruling, e.Ruling, p.Events, p.Known())
		}
		n++
	})
	if n < 500 {
		t.Fatalf("only %d settled plays were swapped", n)
	}
}

// TestNoConflict decides many wild plays, where anything happens at once: no
// two rules rule differently on one moment without one that prevails.
func TestNoConflict(t *testing.T) {
	n, same := 0, 0
	r := rand.New(rand.NewPCG(16, 16))
	for range 3000 {
		p := playgen.Rally(r, playgen.Options{Events: 4, Wild: true})
		for i := 0; i+1 < len(p.Events); i++ {
			if r.IntN(2) == 0 {
				p = p.With(play.Key{Fact: play.Order, Of: p.Pair(i)}, play.Same)
				same++
			}
		}
		_, err := rules.Decide(p, book(t, code.All()[n%4]))
		if err != nil && !strings.Contains(err.Error(), "too much open") {
			t.Fatalf("%v\n%+v\nknown %v", err, p.Events, p.Known())
		}
		n++
	}
	if same < 1000 {
		t.Fatalf("only %d events in one moment were tried", same)
	}
}

// keys are the distinct rulings of a decision, sorted.
func keys(d engine.Decision, swap bool) []string {
	var out []string
	for _, l := range d.Leaves {
		r := l.Ruling
		if swap {
			r = r.Swap()
		}
		out = append(out, r.Key())
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// TestSameTwice judges every play twice: a rule that kept anything between
// runs would show.
func TestSameTwice(t *testing.T) {
	plays(14, 500, func(p *play.Rally) {
		b := book(t, code.Scholastic)
		d, err := rules.Decide(p, b)
		if err != nil {
			return
		}
		e, _ := rules.Decide(p, b)
		if d.Ruling.Key() != e.Ruling.Key() || !slices.Equal(d.Read, e.Read) || len(d.Leaves) != len(e.Leaves) {
			t.Fatalf("two runs differ: %v and %v", d.Ruling, e.Ruling)
		}
	})
}

// TestBecause checks that every reason is sufficient and minimal.
func TestBecause(t *testing.T) {
	n := 0
	plays(15, 400, func(p *play.Rally) {
		b := book(t, code.All()[n%4])
		d, err := rules.Decide(p, b)
		if err != nil || !d.Settled() {
			return
		}
		keep := map[play.Key]bool{}
		for _, g := range d.Because() {
			keep[g.Key] = true
		}
		strip := func(drop play.Key) *play.Rally {
			q := p
			for _, k := range p.Known() {
				if slices.Contains(d.Read, k) && (!keep[k] || k == drop) {
					q = q.With(k, play.Unknown).WithVoid(k)
				}
			}
			return q
		}
		e, err := rules.Decide(strip(play.Key{}), b)
		if err != nil || !e.Settled() || e.Ruling.Key() != d.Ruling.Key() {
			t.Fatalf("the reason %v does not settle %s: %v", d.Because(), d.Ruling, e.Ruling)
		}
		for k := range keep {
			e, err := rules.Decide(strip(k), b)
			if err == nil && e.Settled() && e.Ruling.Key() == d.Ruling.Key() {
				t.Fatalf("%s can be spared from the reason %v of %s", k, d.Because(), d.Ruling)
			}
		}
		n++
	})
	if n < 100 {
		t.Fatalf("only %d reasons were checked", n)
	}
}

// shortest is the length of the rallies that the sweep goes through.
const shortest = 2

// TestSweep decides every short rally under every code: each has exactly one
// outcome or a tree of questions, every leaf of which judging reaches, and no
// two rules of equal standing rule differently (Judge would panic or the tree
// would not agree).
func TestSweep(t *testing.T) {
	n, open := 0, 0
	playgen.Short(shortest, func(p *play.Rally) bool {
		for _, c := range code.All() {
			b := book(t, c)
			d, err := rules.Decide(p, b)
			if err != nil {
				t.Fatal(err)
			}
			n++
			if !d.Settled() {
				open++
			}
			for _, l := range d.Leaves {
				q := p
				for _, g := range l.When {
					q = q.With(g.Key, g.Value)
				}
				e, err := rules.Decide(q, b)
				if err != nil || !e.Settled() || e.Ruling.Key() != l.Ruling.Key() {
					t.Fatalf("%s: leaf %v rules %s, judging gives %s\n%+v\nknown %v", c, l.When, l.Ruling, e.Ruling, p.Events, p.Known())
				}
			}
		}
		return true
	})
	if want := 4 * playgen.Count(shortest); n != want {
		t.Fatalf("%d rallies were decided, want %d", n, want)
	}
	t.Logf("%d short rallies decided in four codes, %d of them open", n, open)
}

// TestSameMomentToldEitherWay tells two events of one moment the other way
// about, with every fact that is read told: the ruling must stand.
func TestSameMomentToldEitherWay(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 17))
	n, faults := 0, 0
	for range 4000 {
		p := playgen.Rally(r, playgen.Options{Events: 4, Wild: r.IntN(2) == 0})
		if len(p.Events) < 2 {
			continue
		}
		i := r.IntN(len(p.Events) - 1)
		served := func(e play.Event) bool { return e.Kind == play.Serve || e.Kind == play.Toss || e.Kind == play.Lapse }
		if served(p.Events[i]) && served(p.Events[i+1]) {
			continue // there is one service at a time
		}
		q := p
		for j := range len(p.Events) - 1 {
			v := play.Before
			if j == i {
				v = play.Same
			}
			q = q.With(play.Key{Fact: play.Order, Of: p.Pair(j)}, v)
		}
		b := book(t, code.All()[r.IntN(4)])
		d, err := rules.Decide(q, b)
		for ; err == nil; d, err = rules.Decide(q, b) {
			k := play.Key{}
			if !d.Settled() {
				k = d.Tree.Ask
			} else if len(d.Presumed) > 0 {
				k = d.Presumed[0]
			} else {
				break
			}
			f, _ := play.FactByID(k.Fact)
			q = q.With(k, f.Values[r.IntN(len(f.Values))].Value)
		}
		if err != nil {
			continue
		}
		s := *q
		s.Events = slices.Clone(q.Events)
		s.Events[i], s.Events[i+1] = s.Events[i+1], s.Events[i]
		other := &s
		for j := range len(s.Events) - 1 {
			v := play.Before
			if j == i {
				v = play.Same
			}
			other = other.With(play.Key{Fact: play.Order, Of: other.Pair(j)}, v)
		}
		e, err := rules.Decide(other, b)
		if err != nil {
			t.Fatal(err)
		}
		for !e.Settled() { // a fact that the first telling did not read
			e, err = rules.Decide(other.With(e.Tree.Ask, e.Tree.Values[0]), b)
			if err != nil {
				t.Fatal(err)
			}
			other = e.Subject.(*play.Rally)
		}
		if e.Ruling.Key() != d.Ruling.Key() {
			t.Fatalf("%s: %s, and told the other way about %s\n%+v\nknown %v", b.Code(), d.Ruling, e.Ruling, q.Events, q.Known())
		}
		n++
		if d.Ruling.Outcome == engine.Fault {
			faults++
		}
	}
	t.Logf("%d plays told both ways, %d of them faults", n, faults)
	if n < 1000 || faults < 300 {
		t.Fatalf("only %d plays were told both ways, %d of them faults", n, faults)
	}
}
