package answer

import (
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// ExactViews is the number of facts two views may differ in up to which the
// smallest set that splits them is searched exactly. Above it facts are taken
// away one by one while the rest still splits them: none can be spared then,
// but a smaller set may exist.
const ExactViews = 8

// Comparison is one play as two officials saw it.
type Comparison struct {
	First, Second Answer
	// Ruled reports whether both can be ruled on. Where it is false nothing is
	// said of what splits them.
	Ruled bool
	// Alike: both rule alike, so that what they differ in does not matter here.
	Alike bool
	// Split is the smallest set of facts such that the two would rule alike if
	// they agreed on these, whichever way, and on nothing else. Empty where
	// they rule alike.
	Split []Difference
	// Idle are the other facts that they differ in.
	Idle []Difference
}

// Difference is one fact that two officials saw differently. A side that did
// not tell the fact and has no presumption of it has an empty Is.
type Difference struct {
	Fact   string
	Of     string
	Ask    string // the fact as a question
	First  Given
	Second Given
}

// Compare rules on a play as two officials saw it: on its words, the facts of
// o.Given, and on top of them each one's own. A fact that the play can't have
// is the Error of that answer.
func Compare(text string, o Options, first, second []engine.Given) Comparison {
	oneOf := func(given []engine.Given) Options {
		o := o
		o.Given = Lay(o.Given, given...)
		return o
	}
	a, b := oneOf(first), oneOf(second)
	c := Comparison{First: Ask(text, a), Second: Ask(text, b)}
	if !ruled(c.First) || !ruled(c.Second) {
		return c
	}
	r, err := notation.Read(text)
	if err != nil {
		return c
	}
	s, _ := tell(r.Subject(), a.Given)
	t, _ := tell(r.Subject(), b.Given)
	v := views{o: o, season: o.season(r), first: side{s, a.chosen(r)}, second: side{t, b.chosen(r)}}
	c.Ruled, c.Alike = true, true
	split, idle := v.split()
	if split != nil {
		c.Alike = false
	}
	for _, k := range split {
		c.Split = append(c.Split, v.difference(k))
	}
	for _, k := range idle {
		if d := v.difference(k); d.First.Is != d.Second.Is {
			c.Idle = append(c.Idle, d)
		}
	}
	return c
}

// Lay puts facts on top of others: the last word on each counts.
func Lay(facts []engine.Given, on ...engine.Given) []engine.Given {
	out := slices.Clone(facts)
	for _, g := range on {
		out = slices.DeleteFunc(out, func(o engine.Given) bool { return o.Key == g.Key })
		out = append(out, g)
	}
	return out
}

// ruled reports whether an answer says how the play is ruled, if only that it
// turns on a fact.
func ruled(a Answer) bool {
	return a.Error == nil && a.Kind != None && len(a.Could) == 0 && a.Reason == ""
}

// side is a play as one official saw it, and the codes that it is asked under.
type side struct {
	subject engine.Subject
	codes   []code.Code
}

// views are the two sides.
type views struct {
	o             Options
	season        code.Season
	first, second side
}

// split is the smallest set of facts that splits the two sides, in the facts'
// order, nil where they rule alike; then the other facts that differ.
func (v views) split() (split, idle []play.Key) {
	all := v.differing()
	one, two := v.rule(v.first), v.rule(v.second)
	if one == two {
		return nil, all
	}
	does := func(keys []play.Key) bool {
		return v.rule(v.first.with(v.second, keys)) == two && v.rule(v.second.with(v.first, keys)) == one
	}
	if len(all) > ExactViews {
		split = slices.Clone(all)
		// One pass is not enough: what could not be spared may be, once another
		// fact is.
		for spared := true; spared; {
			spared = false
			for i := len(split) - 1; i >= 0; i-- {
				if less := slices.Delete(slices.Clone(split), i, i+1); len(less) > 0 && does(less) {
					split, spared = less, true
				}
			}
		}
	} else {
		split = smallestOf(all, does)
	}
	idle = slices.DeleteFunc(all, func(k play.Key) bool { return slices.Contains(split, k) })
	return split, idle
}

// smallestOf is the first of the smallest subsets that do. The whole set is
// taken to do without a try.
func smallestOf(all []play.Key, does func([]play.Key) bool) []play.Key {
	var pick func(from, n int, chosen []play.Key) []play.Key
	pick = func(from, n int, chosen []play.Key) []play.Key {
		if n == 0 {
			if does(chosen) {
				return slices.Clone(chosen)
			}
			return nil
		}
		for i := from; i+n <= len(all); i++ {
			if found := pick(i+1, n-1, append(chosen, all[i])); found != nil {
				return found
			}
		}
		return nil
	}
	for n := 1; n < len(all); n++ {
		if found := pick(0, n, make([]play.Key, 0, n)); found != nil {
			return found
		}
	}
	return slices.Clone(all)
}

// differing are the facts that one side was told otherwise than the other, in
// the order in which the first knows them, then the second.
func (v views) differing() []play.Key {
	var out []play.Key
	for _, k := range unique(slices.Concat(v.first.subject.Known(), v.second.subject.Known())) {
		if v.first.subject.Get(k) != v.second.subject.Get(k) {
			out = append(out, k)
		}
	}
	if !slices.Equal(v.first.codes, v.second.codes) {
		out = append(out, play.Key{Fact: CodeFact})
	}
	return out
}

// with is a side that sees some facts as another does.
func (s side) with(other side, keys []play.Key) side {
	for _, k := range keys {
		if k.Fact == CodeFact {
			s.codes = other.codes
			continue
		}
		s.subject = s.subject.Tell(k, other.subject.Get(k))
	}
	return s
}

// rule is what a side comes to: the same for two that rule alike under every
// code asked. A mixture of two views that no play can be rules like nothing
// else.
func (v views) rule(s side) string {
	if err := s.subject.Check(); err != nil {
		return "impossible: " + err.Error()
	}
	var all, named []string
	for _, c := range s.codes {
		b, err := open(c, v.season, v.o.Overlays)
		if err != nil {
			continue // that code does not hold the season
		}
		d, err := judge.Decide(s.subject, b)
		if err != nil {
			return "impossible: " + err.Error()
		}
		all = append(all, signature(d))
		named = append(named, string(c)+": "+signature(d))
	}
	if one := unique(all); len(one) == 1 {
		return one[0]
	}
	return strings.Join(named, "\n")
}

// difference is a fact as each side saw it.
func (v views) difference(k play.Key) Difference {
	d := Difference{Fact: string(k.Fact), Of: k.Of}
	if k.Fact == CodeFact {
		d.Ask = codeQuestion
		d.First, d.Second = inCode(v.first.codes), inCode(v.second.codes)
		return d
	}
	seen := func(s side) Given {
		value := s.subject.Get(k)
		if value == play.Unknown {
			value = s.subject.Presumption(k)
		}
		if value == play.Unknown {
			return Given{Fact: d.Fact, Of: d.Of}
		}
		return Given{d.Fact, d.Of, string(value), notation.ClauseOf(s.subject, k, value)}
	}
	d.Ask = notation.QuestionOf(v.first.subject, k)
	d.First, d.Second = seen(v.first), seen(v.second)
	return d
}

func inCode(codes []code.Code) Given {
	if len(codes) != 1 {
		return Given{Fact: CodeFact}
	}
	return Given{CodeFact, "", string(codes[0]), "under the " + string(codes[0]) + " code"}
}
