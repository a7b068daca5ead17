package court

import (
	"math/rand/v2"
	"testing"

	"example.org/netpost/engine/code"
)

// The definition, foot by foot, written without the tables of the package:
// who is compared with whom, and what each wording asks for.

// byDefinition lists the pairs at fault of a six whose feet are points, as
// "front player, back player" and "side player, other player".
func byDefinition(six Six, whole, levelDepth, levelRow, serving bool) map[[2]int]bool {
	out := map[[2]int]bool{}
	there := func(p int) bool {
		return !six[p-1].Vacant && len(six[p-1].Feet) > 0 && !(serving && p == 1)
	}
	for _, fb := range [][2]int{{2, 1}, {3, 6}, {4, 5}} {
		if !there(fb[0]) || !there(fb[1]) {
			continue
		}
		front, back := six[fb[0]-1].Feet, six[fb[1]-1].Feet
		ok := false
		if levelDepth {
			// Part of one foot of the back-row player level with, or farther from the
			// centre line than, the front foot of the front-row player.
			foot := front[0].Near
			for _, f := range front {
				foot = min(foot, f.Near)
			}
			for _, g := range back {
				ok = ok || g.Near >= foot
			}
		} else {
			// Part of one foot of the front-row player closer than both feet of the
			// back-row player.
			for _, f := range front {
				all := true
				for _, g := range back {
					all = all && f.Near < g.Near
				}
				ok = ok || all
			}
		}
		if !ok {
			out[fb] = true
		}
	}
	side := func(p, q int, right bool) {
		if !there(p) || !there(q) {
			return
		}
		at := func(f Tread) Length { // distance from the side line in question
			if right {
				return Cm(900) - f.Left
			}
			return f.Left
		}
		ok := false
		if levelRow {
			far := at(six[q-1].Feet[0])
			for _, g := range six[q-1].Feet {
				far = max(far, at(g))
			}
			for _, f := range six[p-1].Feet {
				ok = ok || at(f) <= far
			}
		} else {
			for _, f := range six[p-1].Feet {
				all := true
				for _, g := range six[q-1].Feet {
					all = all && at(f) < at(g)
				}
				ok = ok || all
			}
		}
		if !ok {
			out[[2]int{p, q}] = true
		}
	}
	side(2, 3, true)
	side(1, 6, true)
	side(4, 3, false)
	side(5, 6, false)
	if whole {
		side(2, 4, true)
		side(1, 5, true)
		// The left player against the right one says the same: checked on its own
		// in TestSidesAgree.
	}
	return out
}

func randomSix(r *rand.Rand) Six {
	var six Six
	for i := range six {
		if r.IntN(20) == 0 {
			six[i].Vacant = true
			continue
		}
		for range r.IntN(3) {
			// A coarse grid, so that feet are often level.
			six[i].Feet = append(six[i].Feet, At(Cm(r.IntN(13)*75), Cm(r.IntN(13)*75)))
		}
	}
	return six
}

func TestOverlapsByDefinition(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	faults := 0
	for range 60000 {
		six, serving := randomSix(r), r.IntN(2) == 0
		law := Law{WholeRow: r.IntN(2) == 0, LevelDepth: r.IntN(2) == 0, LevelRow: r.IntN(2) == 0}
		want := byDefinition(six, law.WholeRow, law.LevelDepth, law.LevelRow, serving)
		got := map[[2]int]bool{}
		for _, o := range law.Overlaps(&six, serving) {
			if !o.Told {
				t.Fatalf("%+v %v: feet that are points are never unclear", six, o)
			}
			got[[2]int{int(o.First), int(o.Other)}] = true
		}
		faults += len(want)
		if len(got) != len(want) {
			t.Fatalf("%+v under %+v, serving %v: %v, by definition %v", six, law, serving, got, want)
		}
		for k := range want {
			if !got[k] {
				t.Fatalf("%+v under %+v, serving %v: %v, by definition %v", six, law, serving, got, want)
			}
		}
	}
	if faults == 0 {
		t.Error("no six had an overlap")
	}
}

// Of the two side players the left one's distance from the left line and the
// right one's from the right line give the same answer where level is legal.
func TestSidesAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	for range 5000 {
		var six Six
		for _, p := range []Position{LeftBack, RightBack} {
			six[p-1].Feet = []Tread{At(Cm(r.IntN(9)*100), 0), At(Cm(r.IntN(9)*100), 0)}
		}
		left, right := six[LeftBack-1].extent(), six[RightBack-1].extent()
		rel := six.Relation(Pair{RightBack, LeftBack, Across})
		fault, _ := Law{LevelRow: true}.Fault(Pair{RightBack, LeftBack, Across}, rel)
		if want := left.Left > right.Right; fault != want {
			t.Fatalf("left %v right %v: fault %v, want %v", left, right, fault, want)
		}
	}
}

// A foot given by its heel and toes: where the two readings of "the front foot"
// give different answers, and only there, the relation is unclear.
func TestPartsOfFeet(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	seen := map[Relation]int{}
	box := func() Tread {
		near := Cm(r.IntN(8) * 5)
		return Tread{Near: near, Far: near + Cm(r.IntN(4)*5)}
	}
	for range 20000 {
		var six Six
		six[1].Feet = []Tread{box(), box()}
		six[0].Feet = []Tread{box(), box()}
		front := six[1].Feet[0]
		if g := six[1].Feet[1]; g.Near < front.Near || g.Near == front.Near && g.Far < front.Far {
			front = g
		}
		toes, heel := false, false // part of a back-row foot level with or behind the front foot's toes, its heel
		for _, g := range six[0].Feet {
			toes = toes || g.Far >= front.Near
			heel = heel || g.Far >= front.Far
		}
		p := Pair{RightFront, RightBack, Depth}
		rel := six.Relation(p)
		seen[rel]++
		fault, told := Law{LevelDepth: true}.Fault(p, rel)
		switch {
		case rel == InOrder || rel == Level: // the toes decide under every wording
			if !toes {
				t.Fatalf("%v: %v", six, rel)
			}
		case toes == heel && (!told || fault == toes), toes != heel && told:
			t.Fatalf("%v: relation %v fault %v told %v, level with the toes %v, with the heel %v", six, rel, fault, told, toes, heel)
		}
	}
	for rel := InOrder; rel <= OutOfOrder; rel++ {
		if seen[rel] == 0 {
			t.Errorf("relation %d never came up", rel)
		}
	}
}

func six(feet ...Tread) Six {
	var s Six
	for i, f := range feet {
		s[i].Feet = []Tread{f}
	}
	return s
}

// TestWorked are examples from practice, as an official would draw them.
// Common practice, no source, unless one is named.
func TestWorked(t *testing.T) {
	open := func(c code.Code, s code.Season) Law {
		b, err := code.Open(c, s)
		if err != nil {
			t.Fatal(err)
		}
		return LawOf(b)
	}
	base := six(At(Cm(750), Cm(700)), At(Cm(750), Cm(200)), At(Cm(450), Cm(200)), At(Cm(150), Cm(200)), At(Cm(150), Cm(700)), At(Cm(450), Cm(700)))
	with := func(changes map[Position]Tread) Six {
		s := base
		for p, f := range changes {
			s[p-1].Feet = []Tread{f}
		}
		return s
	}
	for _, c := range []struct {
		name          string
		six           Six
		serving       bool
		international string // 2025-28
		before        string // international 2017-20
		scholastic    string
	}{
		{"base positions", base, false, "", "", ""},
		{"the setter in 1 a step ahead of 2 (FIVB Casebook, ch. 2)", with(map[Position]Tread{1: At(Cm(750), Cm(150))}), false, "2-1", "2-1", "2-1"},
		{"1 exactly level with 2", with(map[Position]Tread{1: At(Cm(750), Cm(200))}), false, "", "2-1", "2-1"},
		{"6 farther right than 1 (notice on the 2025 rules, 7.4)", with(map[Position]Tread{6: At(Cm(800), Cm(700))}), false, "1-6", "1-6", "1-6"},
		{"5 and 6 stacked exactly level", with(map[Position]Tread{6: At(Cm(150), Cm(650))}), false, "", "5-6", "5-6"},
		{"right back on the attack line, right front three feet behind it", with(map[Position]Tread{1: At(Cm(750), In(10, 0)), 2: At(Cm(750), In(13, 0))}), false, "2-1", "2-1", "2-1"},
		{"left front beyond right front, the centre front far off", with(map[Position]Tread{4: At(Cm(800), Cm(200)), 3: At(Cm(850), Cm(100)), 2: At(Cm(700), Cm(200))}), false, "2-3 2-4", "2-3", "2-3"},
		{"a server far out of the order", with(map[Position]Tread{1: At(Cm(10), Cm(950))}), true, "", "", ""},
		{"3 behind 1, who is no partner", with(map[Position]Tread{1: At(Cm(800), Cm(250)), 3: At(Cm(450), Cm(400))}), false, "", "", ""},
	} {
		for _, u := range []struct {
			law  Law
			want string
		}{{open(code.International, 2025), c.international}, {open(code.International, 2017), c.before}, {open(code.Scholastic, 2025), c.scholastic}} {
			got := ""
			for _, o := range u.law.Overlaps(&c.six, c.serving) {
				if got != "" {
					got += " "
				}
				got += o.First.String() + "-" + o.Other.String()
			}
			if got != u.want {
				t.Errorf("%s under %+v: %q, want %q", c.name, u.law, got, u.want)
			}
		}
	}
}

func TestWhere(t *testing.T) {
	w, l := Cm(900), Cm(900)
	for _, c := range []struct {
		feet []Tread
		want Place
	}{
		{nil, NoPlace},
		{[]Tread{At(0, l)}, Inside},                   // on the corner: the lines belong to the court
		{[]Tread{At(w, 0)}, Inside},                   // on the centre line's axis and the side line
		{[]Tread{At(w+Micrometre, Cm(300))}, Outside}, // the least bit beside it
		{[]Tread{{Left: w, Right: w + Cm(20), Near: Cm(300), Far: Cm(330)}}, Inside}, // heel on the line
		{[]Tread{At(Cm(450), -Cm(5)), At(Cm(450), Cm(20))}, OverCentre},
		{[]Tread{At(Cm(450), Cm(100)), At(Cm(450), l+Cm(1))}, Outside},
	} {
		s := Stand{Feet: c.feet}
		if got := s.Where(w, l); got != c.want {
			t.Errorf("%v: %v, want %v", c.feet, got, c.want)
		}
	}
}

func TestSeen(t *testing.T) {
	if got := Seen(true, Cm(900), Cm(200), Cm(300)); got != At(Cm(200), Cm(300)) {
		t.Errorf("A: %v", got)
	}
	if got := Seen(false, Cm(900), Cm(200), Cm(300)); got != At(Cm(700), Cm(300)) {
		t.Errorf("B: %v", got)
	}
}

func BenchmarkTwelve(b *testing.B) {
	book, err := code.Open(code.International, 0)
	if err != nil {
		b.Fatal(err)
	}
	r := rand.New(rand.NewPCG(3, 3))
	var teams [2]Six
	for i := range teams {
		for p := range teams[i] {
			teams[i][p].Feet = []Tread{At(Cm(r.IntN(900)), Cm(r.IntN(900))), At(Cm(r.IntN(900)), Cm(r.IntN(900)))}
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		law := LawOf(book)
		for i := range teams {
			now := Six(Rotated(teams[i], 1))
			law.Overlaps(&now, i == 0)
			for p := range now {
				now[p].Where(Cm(900), Cm(900))
			}
		}
	}
}
