package answer

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// maxChanges is how many changes of fact an answer lists.
const maxChanges = 3

// changes lists the smallest changes of fact that would change a settled
// ruling. What nobody would argue about goes last: that the ball was live,
// that the crew saw it, and what the telling itself implies.
func (q *inquiry) changes(d engine.Decision) []Branch {
	var first, last []Branch
	for _, c := range d.Nearest(2 * maxChanges) {
		b := Branch{When: q.givens(c.Facts), Verdict: q.verdict(c.Ruling)}
		if f, _ := play.FactByID(c.Facts[0].Key.Fact); f.Quiet || f.ID == play.Ball || f.ID == play.Seen {
			last = append(last, b)
		} else {
			first = append(first, b)
		}
	}
	all := append(first, last...)
	return all[:min(len(all), maxChanges)]
}

// doubt takes the outcome away where one fact that nobody told, and that an
// unread word could have said, would change the ruling.
func (q *inquiry) doubt(a *Answer) {
	a.Could = q.could()
	if a.Outcome == Depends {
		t := a.Tree.Ask
		a.Could = append([]Given{{Fact: t.Fact, Of: t.Of, Words: t.Words}}, a.Could...)
	}
	if len(a.Could) == 0 {
		return
	}
	a.Verdict = Verdict{}
	a.Tree, a.Branches, a.Because, a.Changes, a.Call, a.Next, a.Codes = nil, nil, nil, nil, nil, nil, nil
}

// could lists, for at most maxChanges of the presumed facts, the value that
// would change the ruling or leave it open.
func (q *inquiry) could() []Given {
	var out []Given
	seen := map[play.Key]bool{}
	for _, d := range q.asked {
		want := signature(d)
		for _, k := range d.Presumed {
			if seen[k] || len(out) == maxChanges {
				continue
			}
			f, _ := play.FactByID(k.Fact)
			for _, c := range f.Values {
				if c.Value == q.play.Presumption(k) {
					continue
				}
				e, err := rules.Decide(q.play.With(k, c.Value), d.Book)
				if err != nil || signature(e) != want {
					seen[k] = true
					out = append(out, q.given(engine.Given{Key: k, Value: c.Value}))
					break
				}
			}
		}
	}
	return out
}
