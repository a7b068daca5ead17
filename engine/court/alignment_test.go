package court

import (
	"fmt"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

func book(t testing.TB, c code.Code, s code.Season) *code.Book {
	t.Helper()
	b, err := code.Open(c, s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func decide(t testing.TB, a engine.Subject, c code.Code, s code.Season) engine.Decision {
	t.Helper()
	j := Judge
	if _, ok := a.(*Lineup); ok {
		j = JudgeLineup
	}
	d, err := engine.Decide(j, a, book(t, c, s))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// said is a decision in a few words.
func said(d engine.Decision) string {
	if d.Settled() {
		return d.Ruling.String()
	}
	return "depends on " + d.Tree.Ask.String()
}

// The table is sorted, and every row is documented and asks.
func TestFacts(t *testing.T) {
	for _, table := range [][]play.Fact{facts, lineupFacts} {
		for i, f := range table {
			if i > 0 && table[i-1].ID >= f.ID {
				t.Errorf("%s stands after %s; sort by id", f.ID, table[i-1].ID)
			}
			if f.Ask == "" || f.Doc == "" || len(f.Values) < 2 {
				t.Errorf("%s: question, doc and values must be given", f.ID)
			}
			for _, c := range f.Values {
				if c.Value == play.Unknown || c.Words == "" || strings.Contains(c.Words, ",") {
					t.Errorf("%s: value %q needs words without a comma: %q", f.ID, c.Value, c.Words)
				}
			}
		}
	}
}

func TestRulesSorted(t *testing.T) {
	all := append(Rules(), LineupRules()...)
	for i, r := range all {
		if i > 0 && i != len(Rules()) && all[i-1].ID >= r.ID {
			t.Errorf("%s: rules are sorted by id", r.ID)
		}
		if _, ok := code.Find(r.Cite); !ok || r.Title == "" || len(r.Text) < 20 {
			t.Errorf("%s: title, text and a parameter of the tables must be given", r.ID)
		}
	}
}

// randomAlignment is any alignment that can be built.
func randomAlignment(r *rand.Rand) *Alignment {
	a := &Alignment{}
	names := [][3][]string{{}, {1: {"us"}, 2: {"them"}}, {1: {"receiving"}}, {2: {"serving"}}, {1: {"blue"}, 2: {"white"}}}
	a.Names = names[r.IntN(len(names))]
	roles := []play.Role{play.NoRole, play.Setter, play.Libero, play.Middle}
	for i := range r.IntN(5) {
		p := Person{ID: fmt.Sprintf("p%d", i+1), Team: play.A + play.Team(r.IntN(2)), Role: roles[r.IntN(4)], Place: Position(r.IntN(7))}
		if r.IntN(3) == 0 {
			p.Label = fmt.Sprint(r.IntN(20) + 1)
		}
		if p.Vacant = r.IntN(12) == 0; p.Vacant {
			p.Place, p.Role, p.Label = Position(r.IntN(6)+1), play.NoRole, ""
		} else if r.IntN(3) == 0 && p.Place.OK() {
			f := Tread{Left: Cm(r.IntN(900)), Near: Mm(r.IntN(9000)) - Cm(20)}
			f.Right, f.Far = f.Left+Cm(r.IntN(2)*10), f.Near+Length(r.IntN(2)*317500)
			p.Feet = append(p.Feet, f)
		}
		p.Bench = r.IntN(15) == 0 && !p.Vacant
		if !slices.ContainsFunc(a.People, func(q Person) bool { return q.Team == p.Team && q.call() == p.call() }) {
			p.ID = fmt.Sprintf("p%d", len(a.People)+1)
			a.People = append(a.People, p)
		}
	}
	tell := func(k play.Key) {
		f, _ := FactByID(k.Fact)
		if r.IntN(8) == 0 {
			a = a.WithVoid(k)
			return
		}
		a = a.With(k, f.Values[r.IntN(len(f.Values))].Value)
	}
	for _, f := range facts {
		switch {
		case r.IntN(2) == 0:
		case f.ID == ServingSide && (len(a.Names[1])+len(a.Names[2]) == 1):
		case f.About == play.OfSetting:
			tell(play.Key{Fact: f.ID})
		case f.ID == TeamOrder:
			tell(play.Key{Fact: f.ID, Of: "A"})
		case f.About == play.OfPlayer && len(a.People) > 0 && (f.ID != StandsPlace):
			tell(play.Key{Fact: f.ID, Of: a.People[r.IntN(len(a.People))].ID})
		case f.About == play.OfPair && len(a.People) > 1:
			i := r.IntN(len(a.People) - 1)
			for j := i + 1; j < len(a.People); j++ {
				if a.People[i].Team == a.People[j].Team {
					tell(play.Key{Fact: f.ID, Of: a.People[i].ID + "-" + a.People[j].ID})
				}
			}
		}
	}
	for _, t := range []play.Team{play.A, play.B} {
		switch name(a.Names, t) {
		case "serving":
			a = a.With(play.Key{Fact: ServingSide}, play.Value(t.String()))
		case "receiving":
			a = a.With(play.Key{Fact: ServingSide}, play.Value(t.Other().String()))
		}
	}
	if r.IntN(10) == 0 {
		a.Asked = WantPairs
	}
	return a
}

// What an alignment says of itself is read back as that alignment.
func TestReadPrint(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 3000 {
		a := randomAlignment(r)
		if err := a.Check(); err != nil {
			t.Fatalf("%v: %v", a.Sentences(), err)
		}
		s := a.Sentences()
		b, ok := ReadPrint(s)
		if len(s) == 0 {
			continue
		}
		if !ok {
			t.Fatalf("not read: %q", s)
		}
		if len(a.Names[1])+len(a.Names[2]) == 0 && !(reflect.DeepEqual(a.People, b.People) && slices.Equal(a.Known(), b.Known())) {
			t.Fatalf("%q\nread as %+v\nwant %+v", s, b, a)
		}
		for _, c := range code.All() {
			x, errX := engine.Decide(Judge, a, book(t, c, 0))
			y, errY := engine.Decide(Judge, b, book(t, c, 0))
			if (errX == nil) != (errY == nil) {
				t.Fatalf("%q: %v, %v", s, errX, errY)
			}
			if errX == nil && len(x.Leaves) != len(y.Leaves) {
				t.Fatalf("%q: %s, and read back %s", s, said(x), said(y))
			}
		}
	}
}

func TestReadPrintRefuses(t *testing.T) {
	for _, s := range []string{"", "the setter is ahead", "A's setter stands ahead of", "A's setter stands ahead of the setter",
		"there is nobody", "A's player in 7 stands ahead of the player in 2", "which pairs"} {
		if a, ok := ReadPrint([]string{s}); ok {
			t.Errorf("%q was taken for a print of %q", s, a.Sentences())
		}
	}
	if _, ok := ReadPrint(nil); ok {
		t.Error("no sentence was taken for an alignment")
	}
}

// A team given by lengths is ruled on as its overlaps say, under every code
// and in every season.
func TestMeasured(t *testing.T) {
	r := rand.New(rand.NewPCG(15, 6))
	faults := 0
	for range 400 {
		var teams [2]Six
		for i := range teams {
			teams[i] = six(At(Cm(750), Cm(700)), At(Cm(750), Cm(200)), At(Cm(450), Cm(200)), At(Cm(150), Cm(200)), At(Cm(150), Cm(700)), At(Cm(450), Cm(700)))
			for range r.IntN(3) {
				teams[i][r.IntN(6)].Feet = []Tread{At(Cm(r.IntN(10)*100), Cm(r.IntN(10)*100)), At(Cm(r.IntN(10)*100), Cm(r.IntN(10)*100))}
			}
		}
		serving := play.A + play.Team(r.IntN(2))
		a, err := New(serving, teams[0], teams[1])
		if err != nil {
			t.Fatal(err)
		}
		if err := a.Check(); err != nil {
			t.Fatal(err)
		}
		for _, c := range code.All() {
			first, last, _ := code.Held(c)
			for s := first; s <= last; s++ {
				b := book(t, c, s)
				law := LawOf(b)
				var bad [3]bool
				for i, side := range []play.Team{play.A, play.B} {
					bound := law.Receiving
					if side == serving {
						bound = law.Serving
					}
					bad[side] = bound && len(law.Overlaps(&teams[i], side == serving)) > 0
					for j := range teams[i] {
						st := teams[i][j]
						if w := st.Where(9*Metre, 9*Metre); w == Outside && !(side == serving && j == 0) {
							bad[side] = bad[side] || c != code.Scholastic
						}
					}
				}
				want := "play-on"
				switch {
				case bad[1] && bad[2] && law.Serving:
					want = "replay double-fault"
				case bad[1] && bad[2]:
					want = "fault out-of-position against " + serving.Other().String()
				case bad[1]:
					want = "fault out-of-position against A"
				case bad[2]:
					want = "fault out-of-position against B"
				}
				d, err := engine.Decide(Judge, a, b)
				if err != nil {
					t.Fatal(err)
				}
				if got := said(d); got != want {
					t.Fatalf("%s %v, %v serves: %s, want %s\n%q", c, s, serving, got, want, a.Sentences())
				}
				if want != "play-on" {
					faults++
				}
			}
		}
	}
	if faults == 0 {
		t.Error("no alignment was a fault")
	}
}

func TestNewRefuses(t *testing.T) {
	bad := six(At(0, 0))
	bad[0].Feet = []Tread{At(0, 0), At(0, 0), At(0, 0)}
	turned := six(Tread{Left: Cm(10), Right: 0})
	far := six(At(Metre*100000, 0))
	for _, c := range []struct {
		six  Six
		want string
	}{{bad, "A1: 3 feet"}, {turned, "A1: a foot"}, {far, "A1: 100000"}} {
		if _, err := New(play.NoTeam, c.six, Six{}); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v, want %q", err, c.want)
		}
	}
}

// Every ruling names the pair that it rests on.
func TestBecauseNamesThePair(t *testing.T) {
	s := six(At(Cm(750), Cm(150)), At(Cm(750), Cm(200)), At(Cm(450), Cm(200)), At(Cm(150), Cm(200)), At(Cm(150), Cm(700)), At(Cm(450), Cm(700)))
	a, err := New(play.B, s, Six{})
	if err != nil {
		t.Fatal(err)
	}
	d := decide(t, a, code.Scholastic, 2025)
	var got []string
	for _, g := range d.Because() {
		got = append(got, a.Clause(g.Key, g.Value))
	}
	if want := "A's player in 1 stands ahead of the player in 2"; !slices.Contains(got, want) {
		t.Errorf("because %q, want %q among them", got, want)
	}
}
