package answer

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// kept is an answer as it comes back from where it was kept.
func kept(t *testing.T, a Answer) Past {
	t.Helper()
	b, err := Keep(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := ParsePast(b)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// What is kept of an answer compares as the answer itself.
func TestPastKept(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	for i := range 200 {
		p := playgen.Rally(r, playgen.Options{Events: 1 + i%3, Names: true})
		for _, o := range []Options{{Code: code.Scholastic}, {}} {
			a := Of(notation.Reading{Rally: p}, o)
			back := kept(t, a)
			if back.Key() != a.Past().Key() {
				t.Fatalf("%s: kept as\n%s\nwas\n%s", notation.Print(p), back.Key(), a.Past().Key())
			}
			if a.Kind != None && len(back.Cells) == 0 {
				t.Errorf("%s: %s with %d books of cells", notation.Print(p), a.Kind, len(back.Cells))
			}
		}
	}
	for _, bad := range []string{"", "{", `{"outcome":3}`} {
		if _, err := ParsePast([]byte(bad)); err == nil {
			t.Errorf("%q: read without an error", bad)
		}
	}
}

const fourth = "four contacts by us, the second was a block"

// One cell that says otherwise is named as the cause of every ruling that it
// turns, and no other is.
func TestCausesCell(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	turned := 0
	for i := range 60 {
		p := playgen.Rally(r, playgen.Options{Events: 1 + i%3})
		text := notation.Print(p)
		o := Options{Code: code.All()[i%4]}
		now := Ask(text, o)
		for _, param := range sortedParams(now.Cells[o.Code]) {
			row, _ := code.Find(param)
			for _, v := range row.Values {
				old := o
				old.Overlays = []code.Overlay{{Param: param, Code: o.Code, Value: v.ID, Reason: "as it was"}}
				was := kept(t, Ask(text, old))
				got := Causes(text, o, was, now)
				if (len(got) == 0) != (was.Key() == now.Past().Key()) {
					t.Fatalf("%s: %d causes, then\n%s\nnow\n%s", text, len(got), was.Key(), now.Past().Key())
				}
				if len(got) == 0 {
					continue
				}
				turned++
				c := got[0]
				if len(got) != 1 || c.Kind != ByCell || c.Param != param || c.Code != o.Code || c.Was == c.Now || c.Title == "" {
					t.Errorf("%s: %s was %s: %+v", text, param, v.ID, got)
				}
			}
		}
	}
	if turned < 10 {
		t.Errorf("only %d rulings turned", turned)
	}
}

func sortedParams(m map[code.Param]string) []code.Param {
	var out []code.Param
	for p := range m {
		out = append(out, p)
	}
	slices.Sort(out)
	return out
}

func TestCausesOther(t *testing.T) {
	o := Options{Code: code.Scholastic}
	now := Ask(fourth, o)
	if now.Kind != Ruling {
		t.Fatalf("%+v", now.Verdict)
	}
	other := func(change func(*Past)) Past {
		p := kept(t, now)
		p.Outcome, p.Fault, p.Against = "play-on", "", nil
		if now.Outcome == "play-on" {
			p.Outcome = "re-serve"
		}
		change(&p)
		return p
	}
	for _, test := range []struct {
		name string
		was  Past
		want CauseKind
		says string
	}{
		{"the words are read otherwise", other(func(p *Past) { p.Read = []string{"A contacts the ball"} }), ByReading, "A contacts the ball"},
		{"nothing was read", other(func(p *Past) { *p = Past{Kind: None} }), ByReading, "nothing"},
		{"nothing else differs", other(func(p *Past) { p.Rules = []Rule{{Title: "an old rule", Cite: "1-1"}} }), ByRule, "an old rule 1-1"},
		{"kept without cells", other(func(p *Past) { p.Cells = nil }), ByRule, ""},
		{"of a cell that is in no table now", other(func(p *Past) { p.Cells[code.Scholastic]["gone.cell"] = "x" }), ByRule, ""},
		{"a note departed", func() Past {
			p := kept(t, now)
			p.Association = &Association{Note: "2026-001", Outcome: "replay", Reason: "the hall"}
			return p
		}(), ByNote, "replay"},
	} {
		got := Causes(fourth, o, test.was, now)
		if len(got) != 1 || got[0].Kind != test.want || !strings.Contains(got[0].Was, test.says) {
			t.Errorf("%s: %+v", test.name, got)
		}
	}
	if got := Causes(fourth, o, kept(t, now), now); got != nil {
		t.Errorf("nothing changed, and the causes are %+v", got)
	}
}

// What only explains is no part of the decision: other words, other names of
// a side, other rule numbers.
func TestPastKeyIsTheDecision(t *testing.T) {
	a := Of(notation.Reading{Rally: save()}, Options{Code: code.Scholastic, Given: given(t, "row@p1=back", "reach@e1=above")})
	p := a.Past()
	q := p
	q.Against = append(slices.Clone(p.Against), "the reds")
	q.Rules, q.Because, q.Read, q.Edition = nil, nil, nil, "1999-00"
	if p.Key() != q.Key() {
		t.Errorf("\n%s\n%s", p.Key(), q.Key())
	}
	q.Against = []string{play.B.String()}
	if p.Key() == q.Key() {
		t.Error("the other side is the same decision")
	}
	for _, same := range [][2]string{{"yes, with the captain", "yes: by rule"}, {"2 time-outs a set", "2 time-outs, each set"}} {
		if opening(same[0]) != opening(same[1]) {
			t.Errorf("%q and %q open otherwise", same[0], same[1])
		}
	}
	for _, other := range [][2]string{{"yes", "no"}, {"2 time-outs", "3 time-outs"}, {"12 m", "12 substitutions"}, {"the captain", "the coach"}} {
		if opening(other[0]) == opening(other[1]) {
			t.Errorf("%q and %q open alike", other[0], other[1])
		}
	}
}
