package deadball_test

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// measures are the ids that a ruling may name.
var measures = strings.Fields("allow deny improper-request delay-warning delay-penalty delay warning penalty expulsion " +
	"disqualification misconduct charge-time-out correct-and-go-on cancel-points must-substitute forfeit who-decides")

func book(t testing.TB, c code.Code) *code.Book {
	t.Helper()
	b, err := code.Open(c, 0)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func decide(t testing.TB, a *deadball.Act, c code.Code) engine.Decision {
	t.Helper()
	d, err := engine.Decide(deadball.Judge, a, book(t, c))
	if err != nil {
		t.Fatalf("%s: %s: %v", c, a.Print(), err)
	}
	return d
}

// TestKinds holds the table of kinds: sorted, unique, documented, each with a
// rule and with facts of the table, and no sentence the head of another.
func TestKinds(t *testing.T) {
	last := deadball.Kind("")
	for _, k := range deadball.Kinds() {
		if k.ID <= last {
			t.Errorf("%s: kinds are sorted by id, each once", k.ID)
		}
		last = k.ID
		if strings.Count(k.Says, "{team}") != 1 || strings.Contains(k.Says, ", ") || k.Doc == "" {
			t.Errorf("%s: says %q; it names the team once and holds no comma, and the kind is documented", k.ID, k.Says)
		}
		if _, ok := deadball.ByID(k.Rule); !ok {
			t.Errorf("%s: there is no rule %q", k.ID, k.Rule)
		}
		for i, f := range k.Facts {
			if _, ok := deadball.FactByID(f); !ok {
				t.Errorf("%s: there is no fact %q", k.ID, f)
			}
			if slices.Contains(k.Facts[:i], f) {
				t.Errorf("%s: the fact %q is listed twice", k.ID, f)
			}
		}
	}
}

// TestFacts holds the table of facts: sorted, unique, documented, used by a
// kind, and no two facts of one kind said in the same words.
func TestFacts(t *testing.T) {
	last := play.FactID("")
	used := map[play.FactID]bool{}
	for _, k := range deadball.Kinds() {
		words := map[string]play.FactID{}
		for _, id := range k.Facts {
			used[id] = true
			f, _ := deadball.FactByID(id)
			for _, c := range f.Values {
				if o, ok := words[c.Words]; ok {
					t.Errorf("%s: %s and %s are both said %q", k.ID, o, id, c.Words)
				}
				words[c.Words] = id
			}
		}
	}
	for _, f := range deadball.Facts() {
		if f.ID <= last {
			t.Errorf("%s: facts are sorted by id, each once", f.ID)
		}
		last = f.ID
		if !used[f.ID] {
			t.Errorf("%s: no kind has it", f.ID)
		}
		if f.About != play.OfSetting || f.Doc == "" || !strings.HasSuffix(f.Ask, "?") || len(f.Values) < 2 || f.Presume != nil {
			t.Errorf("%s: it is about the setting, is documented, asks a question, has two values or more and no presumption of a rally", f.ID)
		}
		if _, rally := play.FactByID(f.ID); rally {
			t.Errorf("%s: the rally has a fact of this id", f.ID)
		}
		granted := deadball.New(deadball.TimeOut, play.A).Presumption(play.Key{Fact: f.ID})
		if granted != play.Unknown && (!f.Has(granted) || f.Why == "") || granted == play.Unknown && f.Why != "" {
			t.Errorf("%s: grants %q because %q", f.ID, granted, f.Why)
		}
		for _, c := range f.Values {
			if strings.Contains(c.Words, ", ") || strings.HasSuffix(c.Words, " or not") || c.Words == "" {
				t.Errorf("%s: %s: a clause is one clause: %q", f.ID, c.Value, c.Words)
			}
		}
	}
}

// TestRules holds the rules: sorted, unique, documented, each judging a kind
// or cited by a ruling, and each parameter that its text names read.
func TestRules(t *testing.T) {
	cited := map[engine.Cite]bool{}
	r := rand.New(rand.NewPCG(3, 3))
	for range 300 {
		for _, k := range deadball.Kinds() {
			a := random(r, k)
			for _, c := range code.All() {
				for _, l := range decide(t, a, c).Leaves {
					for _, cite := range l.Ruling.Cites {
						cited[cite] = true
					}
				}
			}
		}
	}
	last := ""
	for _, r := range deadball.All() {
		if r.ID <= last {
			t.Errorf("%s: rules are sorted by id, each once", r.ID)
		}
		last = r.ID
		if r.Title == "" || len(r.Text) < 40 {
			t.Errorf("%s: it has no title or no text", r.ID)
		}
		for _, p := range r.Params() {
			if _, ok := code.Find(p); !ok {
				t.Errorf("%s: there is no parameter %q", r.ID, p)
			}
			if !cited[engine.Cite{Rule: r.ID, Param: p}] {
				t.Errorf("%s: names %s, and no ruling cites it for that", r.ID, p)
			}
		}
	}
	for c := range cited {
		r, ok := deadball.ByID(c.Rule)
		if !ok || !slices.Contains(r.Params(), c.Param) {
			t.Errorf("a ruling cites %s for %s, which names no such rule", c.Param, c.Rule)
		}
	}
}

// TestRulings holds what every ruling is: measures of the list, a fault with
// its team, and cites.
func TestRulings(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 5))
	for range 200 {
		for _, k := range deadball.Kinds() {
			a := random(r, k)
			for _, c := range code.All() {
				for _, l := range decide(t, a, c).Leaves {
					x := l.Ruling
					if len(x.Cites) == 0 {
						t.Fatalf("%s: %s: ruled %s without a cite", c, a.Print(), x)
					}
					if x.Outcome == "" && len(x.Measure) == 0 && x.Answer == "" {
						t.Fatalf("%s: %s: rules nothing", c, a.Print())
					}
					if x.Outcome == engine.Fault && x.Against != a.By {
						t.Fatalf("%s: %s: %s is not against the team whose act it is", c, a.Print(), x)
					}
					if len(x.Measure) > 2 || len(x.Measure) == 2 && slices.Contains(x.Measure, "allow") {
						t.Fatalf("%s: %s: %v do not apply together", c, a.Print(), x.Measure)
					}
					for _, m := range x.Measure {
						if !slices.Contains(measures, m) {
							t.Fatalf("%s: %s: %q is no measure", c, a.Print(), m)
						}
					}
				}
			}
		}
	}
}

// TestPrint holds that a print reads back to the same act.
func TestPrint(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	names := [][]string{nil, {"us", "them"}, {"them", "us"}, {"home", "visitors"}, {"serving", "receiving"}, {"red"}}
	for range 400 {
		for _, k := range deadball.Kinds() {
			a := random(r, k)
			if n := names[r.IntN(len(names))]; n != nil {
				a.By = play.A
				a.Names[play.A] = n[:1]
				if len(n) > 1 {
					a.Names[play.B] = n[1:]
				}
			}
			got, ok := deadball.Parse(a.Print())
			if !ok {
				t.Fatalf("not read back: %s", a.Print())
			}
			if got.Print() != a.Print() || got.Kind != a.Kind || got.By != a.By || !slices.Equal(got.Called(play.B), a.Called(play.B)) ||
				!slices.Equal(got.Known(), a.Known()) {
				t.Fatalf("%s\nreads back as\n%s", a.Print(), got.Print())
			}
			for _, key := range a.Known() {
				if got.Get(key) != a.Get(key) {
					t.Fatalf("%s: %s is %s", a.Print(), key, got.Get(key))
				}
			}
		}
	}
	for _, s := range []string{"", "A requests", "A requests a time-out, perhaps", "the red, blue team requests a time-out", "C requests a time-out",
		"the  team requests a time-out", "A requests a time-out, before the whistle for service, after the whistle for service"} {
		if a, ok := deadball.Parse(s); ok {
			t.Errorf("%q was read as %s", s, a.Print())
		}
	}
}

// TestTree holds that following the tree of questions comes to what judging
// the act with those answers comes to, that telling what settles the act never
// opens it again, and that the sides are alike.
func TestTree(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for range 60 {
		for _, k := range deadball.Kinds() {
			a := random(r, k)
			for _, c := range code.All() {
				d := decide(t, a, c)
				for _, l := range d.Leaves {
					b := a
					for _, g := range l.When {
						b = b.With(g.Key.Fact, g.Value)
					}
					e := decide(t, b, c)
					if !e.Settled() || e.Ruling.Key() != l.Ruling.Key() {
						t.Fatalf("%s: %s: %s by the tree, %s when told", c, b.Print(), l.Ruling, e.Ruling)
					}
				}
				swapped := decide(t, a.Swap(), c)
				for i, l := range d.Leaves {
					if swapped.Leaves[i].Ruling.Swap().Key() != l.Ruling.Key() {
						t.Fatalf("%s: %s: with the sides changed over %s", c, a.Print(), swapped.Leaves[i].Ruling)
					}
				}
			}
		}
	}
}

// TestCheck holds what an act cannot be.
func TestCheck(t *testing.T) {
	good := deadball.New(deadball.TimeOut, play.A)
	if err := good.Check(); err != nil {
		t.Error(err)
	}
	for _, a := range []*deadball.Act{
		deadball.New("no-such-kind", play.A),
		deadball.New(deadball.TimeOut, play.NoTeam),
		good.With("no-such-fact", play.Yes),
		good.With(deadball.InZone, play.Yes),
		good.With(deadball.Moment, "never"),
		good.WithVoid(deadball.InZone),
		good.Tell(play.Key{Fact: deadball.Moment, Of: "e1"}, "rally").(*deadball.Act),
	} {
		if a.Check() == nil {
			t.Errorf("%s: has no error", a.Print())
		}
		if good.Check() != nil || len(good.Known()) > 0 {
			t.Error("a change reached the act that was handed out")
		}
	}
}
