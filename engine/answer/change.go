package answer

import (
	"slices"

	"example.org/netpost/engine"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/play"
)

// maxChanges is how many changes of fact an answer lists.
const maxChanges = 3

// changes lists the smallest changes of fact that would change a settled
// ruling. What nobody would argue about goes last.
func (q *inquiry) changes(d engine.Decision) []Branch {
	var first, last []Branch
	for _, c := range d.Nearest(2 * maxChanges) {
		b := Branch{When: q.givens(c.Facts), Verdict: q.verdict(c.Ruling), Answer: Maybe(c.Ruling.Answer)}
		if granted(c.Facts[0].Key) {
			last = append(last, b)
		} else {
			first = append(first, b)
		}
	}
	all := append(first, last...)
	return all[:min(len(all), maxChanges)]
}

// granted reports whether a fact is one that nobody would argue about: that
// the ball was live, that the crew saw it, or what the telling itself implies.
func granted(k play.Key) bool {
	f, _ := judge.FactByID(k.Fact)
	return f.Quiet || f.ID == play.Ball || f.ID == play.Seen
}

// doubt takes the outcome away where one fact that nobody told, and that an
// unread word could have said, would change the ruling.
func (q *inquiry) doubt(a *Answer) {
	if a.Outcome == Depends {
		t := a.Tree.Ask
		a.Could = []Given{{Fact: t.Fact, Of: t.Of, Words: t.Words}}
	}
	a.Could = append(a.Could, q.could(maxChanges-len(a.Could))...)
	if len(a.Could) == 0 {
		return
	}
	a.Verdict, a.Answer = Verdict{}, ""
	a.Tree, a.Branches, a.Because, a.Changes, a.Call, a.Next, a.Codes = nil, nil, nil, nil, nil, nil, nil
}

// could lists, for at most that many of the presumed facts, the value that
// would change the ruling or leave it open. What nobody would argue about goes
// last.
func (q *inquiry) could(most int) []Given {
	keys := collect(q.asked, func(d engine.Decision) []play.Key { return d.Presumed })
	slices.SortStableFunc(keys, func(a, b play.Key) int { return rank(a) - rank(b) })
	var out []Given
	for _, k := range keys {
		if len(out) == most {
			break
		}
		if v := q.turns(k); v != play.Unknown {
			out = append(out, q.given(engine.Given{Key: k, Value: v}))
		}
	}
	return out
}

func rank(k play.Key) int {
	if granted(k) {
		return 1
	}
	return 0
}

// turns is the first other value of a presumed fact under which one of the
// decisions is another, Unknown where there is none.
func (q *inquiry) turns(k play.Key) play.Value {
	f, _ := q.subject.Fact(k.Fact)
	for _, c := range f.Values {
		if c.Value == q.subject.Presumption(k) {
			continue
		}
		for _, d := range q.asked {
			e, err := judge.Decide(q.subject.Tell(k, c.Value), d.Book)
			if err != nil || signature(e) != signature(d) {
				return c.Value
			}
		}
	}
	return play.Unknown
}
