package answer

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/notation"
)

// mostPeople is of how many people in their places a minimal reason is sought.
// Of more it is long and takes long to find: that one pair is at fault rests on
// all the others being in order too.
const mostPeople = 4

// because says why a settled ruling is as it is, in the facts of the subject.
// Where many stand together these are the pairs that are out of order, and
// nothing where none is: all that was read says it then.
func (q *inquiry) because(d engine.Decision) []string {
	var out []string
	if a, ok := q.subject.(*court.Alignment); ok && len(a.People) > mostPeople {
		for _, b := range picture.Breaches(a, d.Book) {
			out = append(out, a.Clause(b.Key, a.Get(b.Key)))
		}
		return out
	}
	for _, g := range d.Because() {
		out = append(out, notation.ClauseOf(q.subject, g.Key, g.Value))
	}
	return out
}
