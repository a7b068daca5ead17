package answer

import (
	"slices"
	"testing"

	"example.org/netpost/engine/code"
)

func verdictIDs(vs []Verdict) []string {
	var out []string
	for _, v := range vs {
		call, team := v.ID()
		out = append(out, call+" "+team)
	}
	return out
}

const tipped = "our setter tips the ball over from inside the 3m line, ball above the net"

func TestCalls(t *testing.T) {
	for _, c := range []struct {
		name, text string
		given      []string
		most       int
		want       []string
	}{
		{"it turns on a fact", tipped, nil, 9, []string{"play-on ", "fault:back-row-attack A"}},
		{"settled: the same and what is near", tipped, []string{"row@p1=back"}, 9,
			[]string{"play-on ", "fault:back-row-attack A"}},
		{"few", "four contacts, the second was a block", nil, 2, nil},
		{"a look-up", "how many substitutions does a team have in a set?", nil, 9, nil},
		{"no play", "is the sky blue?", nil, 9, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := verdictIDs(Calls(c.text, Options{Code: code.Scholastic, Given: given(t, c.given...)}, c.most))
			if c.name == "few" {
				if len(got) != 2 {
					t.Errorf("%q, want two", got)
				}
				return
			}
			for _, w := range c.want {
				if !slices.Contains(got, w) {
					t.Errorf("%q lacks %q", got, w)
				}
			}
			if c.want == nil && got != nil {
				t.Errorf("%q, want none", got)
			}
			if len(got) > c.most || !slices.Equal(got, slices.Compact(slices.Clone(got))) {
				t.Errorf("%q: more than %d, or one twice", got, c.most)
			}
		})
	}
}

// The order of the calls tells nothing of the ruling: the same ones come in the
// same order whatever is told.
func TestCallsOrder(t *testing.T) {
	front := Calls(tipped, Options{Code: code.Scholastic, Given: given(t, "row@p1=front")}, 9)
	back := Calls(tipped, Options{Code: code.Scholastic, Given: given(t, "row@p1=back")}, 9)
	if len(front) < 2 || len(back) < 2 {
		t.Fatalf("%q and %q", verdictIDs(front), verdictIDs(back))
	}
	for _, vs := range [][]Verdict{front, back} {
		if !slices.IsSortedFunc(vs, compareCalls) {
			t.Errorf("%q are not in order", verdictIDs(vs))
		}
	}
}

func TestBetween(t *testing.T) {
	playOn, fault := Verdict{Outcome: "play-on"}, Verdict{Outcome: "fault", Fault: "back-row-attack", Against: []string{"A"}}
	strange := Verdict{Outcome: "fault", Fault: "screen", Against: []string{"B"}}
	for _, c := range []struct {
		name          string
		given         []string
		first, second Verdict
		want          []string
	}{
		{"it turns on a fact", nil, playOn, fault, []string{"row@p1"}},
		{"settled", []string{"row@p1=back"}, fault, playOn, []string{"row@p1"}},
		{"the other way round", []string{"row@p1=back"}, playOn, fault, []string{"row@p1"}},
		{"neither is near", nil, strange, playOn, nil},
		{"settled, and one is not near", []string{"row@p1=back"}, strange, playOn, nil},
		{"one call", nil, playOn, playOn, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := Options{Code: code.Scholastic, Given: given(t, c.given...)}
			got := Between(tipped, o, c.first, c.second)
			if len(c.want) == 0 && len(got) == 0 {
				return
			}
			if len(got) != 1 || got[0].Ask == "" || got[0].First.Is == got[0].Second.Is {
				t.Fatalf("%+v, want one fact", got)
			}
			// Told as the one and the other call need it, the play is ruled so.
			for _, side := range []struct {
				given Given
				want  Verdict
			}{{got[0].First, c.first}, {got[0].Second, c.second}} {
				g := given(t, side.given.Fact+"@"+side.given.Of+"="+side.given.Is)
				o.Given = Lay(given(t, c.given...), g...)
				if a := Ask(tipped, o); !a.Same(side.want) {
					t.Errorf("with %v it is %v, want %v", g, a.Verdict, side.want)
				}
			}
		})
	}
}
