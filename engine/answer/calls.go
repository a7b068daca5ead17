package answer

import (
	"cmp"
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// mostNear bounds how many changes of fact are looked through for other calls.
const mostNear = 64

// Same reports whether two verdicts are one call: further faults of the same
// team at the same moment are not called apart.
func (v Verdict) Same(w Verdict) bool { return compareCalls(v, w) == 0 }

func compareCalls(v, w Verdict) int {
	return cmp.Or(
		cmp.Compare(callRank(v), callRank(w)),
		cmp.Compare(v.Outcome, w.Outcome),
		cmp.Compare(v.Fault, w.Fault),
		cmp.Compare(v.Replay, w.Replay),
		slices.Compare(v.Measure, w.Measure),
		cmp.Compare(v.team(), w.team()),
	)
}

// callRank puts play on first, then faults, then what is done again.
func callRank(v Verdict) int {
	return (slices.Index([]string{"play-on", "fault", "replay", "re-serve"}, string(v.Outcome)) + 5) % 5
}

func (v Verdict) team() string {
	if len(v.Against) == 0 {
		return ""
	}
	return v.Against[0]
}

// Calls lists what an official could call on a play: what its branches come to,
// or its ruling and what the nearest changes of fact would make of it; each
// once, at most that many, the nearest ones. Their order is that of the calls
// themselves, and tells nothing of which is right. A play that can't be ruled
// on has none.
func Calls(text string, o Options, most int) []Verdict {
	a := Ask(text, o)
	if !ruled(a) || a.Kind == Fact {
		return nil
	}
	var out []Verdict
	add := func(v Verdict) {
		v.Also = nil
		if (v.Outcome != "" || len(v.Measure) > 0) && len(out) < most && !slices.ContainsFunc(out, v.Same) {
			out = append(out, v)
		}
	}
	if a.Outcome != Depends {
		add(a.Verdict)
	}
	for _, b := range a.Branches {
		add(b.Verdict)
	}
	if a.Kind == Ruling {
		add(Verdict{Outcome: Maybe(engine.PlayOn)})
	}
	q, near := nearest(text, o)
	for _, c := range near {
		add(q.verdict(c.Ruling))
	}
	slices.SortFunc(out, compareCalls)
	return out
}

// nearest are the changes of fact that would change a settled ruling, those
// that nobody would argue about last. Nil where the play is not settled, or
// the codes rule differently.
func nearest(text string, o Options) (*inquiry, []engine.Change) {
	r, err := notation.Read(text)
	if err != nil || r.Subject() == nil {
		return nil, nil
	}
	s, problem := tell(r.Subject(), o.Given)
	if problem != nil {
		return nil, nil
	}
	q, err := decide(s, o.chosen(r), o.season(r), o)
	if err != nil || !alike(q.asked) || !q.asked[0].Settled() {
		return nil, nil
	}
	all := q.asked[0].Nearest(mostNear)
	slices.SortStableFunc(all, func(a, b engine.Change) int { return rank(a.Facts[0].Key) - rank(b.Facts[0].Key) })
	return q, all
}

// Between finds what tells two calls on a play apart: the fewest facts that make
// it the one or the other. Where the play turns on a fact, the first is the
// question at which the ways to the two part. It is empty where no few facts
// make the play the one or the other.
func Between(text string, o Options, first, second Verdict) []Difference {
	a := Ask(text, o)
	if !ruled(a) || first.Same(second) {
		return nil
	}
	if a.Outcome == Depends {
		return a.parting(first, second)
	}
	q, near := nearest(text, o)
	if q == nil {
		return nil
	}
	to := func(v Verdict) ([]engine.Given, bool) {
		if v.Same(a.Verdict) {
			return nil, true
		}
		i := slices.IndexFunc(near, func(c engine.Change) bool { return v.Same(q.verdict(c.Ruling)) })
		if i < 0 {
			return nil, false
		}
		return near[i].Facts, true
	}
	one, ok := to(first)
	two, ok2 := to(second)
	if !ok || !ok2 {
		return nil
	}
	var out []Difference
	for _, k := range unique(slices.Concat(keysGiven(one), keysGiven(two))) {
		out = append(out, Difference{
			Fact: string(k.Fact), Of: k.Of, Ask: notation.QuestionOf(q.subject, k),
			First: q.toldOr(one, k), Second: q.toldOr(two, k),
		})
	}
	return out
}

func keysGiven(gs []engine.Given) []play.Key {
	var out []play.Key
	for _, g := range gs {
		out = append(out, g.Key)
	}
	return out
}

// toldOr is a fact as a change has it, else as the play has it.
func (q *inquiry) toldOr(gs []engine.Given, k play.Key) Given {
	v := q.subject.Get(k)
	if v == play.Unknown {
		v = q.subject.Presumption(k)
	}
	for _, g := range gs {
		if g.Key == k {
			v = g.Value
		}
	}
	if v == play.Unknown {
		return Given{Fact: string(k.Fact), Of: k.Of}
	}
	return q.given(engine.Given{Key: k, Value: v})
}

// parting is where the ways to two calls part in the tree, for the two branches
// that differ in the fewest facts.
func (a Answer) parting(first, second Verdict) []Difference {
	var best []Difference
	for _, x := range a.Branches {
		for _, y := range a.Branches {
			if !x.Same(first) || !y.Same(second) {
				continue
			}
			if d := a.between(x.When, y.When); best == nil || len(d) < len(best) {
				best = d
			}
		}
	}
	return best
}

// between are the facts in which two ways through the tree differ, the one at
// which they part first.
func (a Answer) between(x, y []Given) []Difference {
	var out []Difference
	for _, g := range slices.Concat(x, y) {
		same := func(h Given) bool { return h.Fact == g.Fact && h.Of == g.Of }
		if slices.ContainsFunc(out, func(d Difference) bool { return d.Fact == g.Fact && d.Of == g.Of }) {
			continue
		}
		d := Difference{Fact: g.Fact, Of: g.Of, Ask: a.Tree.asks(g.Fact, g.Of)}
		d.First, d.Second = Given{Fact: g.Fact, Of: g.Of}, Given{Fact: g.Fact, Of: g.Of}
		if i := slices.IndexFunc(x, same); i >= 0 {
			d.First = x[i]
		}
		if i := slices.IndexFunc(y, same); i >= 0 {
			d.Second = y[i]
		}
		if d.First.Is != d.Second.Is {
			out = append(out, d)
		}
	}
	return out
}

// asks is the question for a fact, as the tree has it.
func (t *Tree) asks(fact, of string) string {
	if t == nil {
		return ""
	}
	if t.Ask.Fact == fact && t.Ask.Of == of {
		return t.Ask.Words
	}
	for _, k := range t.Kids {
		if s := k.Tree.asks(fact, of); s != "" {
			return s
		}
	}
	return ""
}

// ID is a call as a short text of ids, the same for verdicts that are the Same
// but for the team, which is named by its letter beside it.
func (v Verdict) ID() (call, team string) {
	call = string(v.Outcome)
	for _, s := range []Maybe{v.Fault, v.Replay} {
		if s != "" {
			call += ":" + string(s)
		}
	}
	if len(v.Measure) > 0 {
		call += "!" + strings.Join(v.Measure, "+")
	}
	return call, v.team()
}
