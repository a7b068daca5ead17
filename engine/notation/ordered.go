package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// orderPattern is a row of the order of service made ready to match.
type orderPattern struct {
	fields []serveField
	row    *orderRow
	at     int // its place in the table
}

var orderPatterns = sync.OnceValue(func() []orderPattern {
	var out []orderPattern
	for i := range orderRows {
		out = append(out, orderPattern{fieldsOf(orderRows[i].pattern), &orderRows[i], i})
	}
	return out
})

// orderStarts are the patterns by the words that can stand first in them.
var orderStarts = sync.OnceValue(func() map[string][]orderPattern {
	out := map[string][]orderPattern{}
	for _, p := range orderPatterns() {
		for _, w := range firstWords(p.fields) {
			out[w] = append(out[w], p)
		}
	}
	return out
})

// orderStart gives the words of patterns that a word can be the first of.
func orderStart(w courtWord, yield func(string)) {
	for _, r := range w.roots {
		yield(r)
	}
	if w.form == "<side>" {
		yield(strings.ToLower(w.raw))
	}
	for _, class := range [...]string{"@", "#", "#-#"} {
		if fitsOrder(w, class) {
			yield(class)
		}
	}
}

// match is how many words from i on the fields take, 0 where they do not fit.
// sides are the words that name a side.
func (p orderPattern) match(ws []courtWord, i int, fields []serveField, sides []int) (int, []int) {
	if len(fields) == 0 {
		return i, sides
	}
	f := fields[0]
	best, bestSides := -1, sides
	if i < len(ws) && ws[i].mark == 0 && slices.ContainsFunc(f.words, func(w string) bool { return fitsOrder(ws[i], w) }) {
		s := sides
		if ws[i].form == "<side>" {
			s = append(sides[:len(sides):len(sides)], i)
		}
		if end, got := p.match(ws, i+1, fields[1:], s); end >= 0 {
			best, bestSides = end, got
		}
	}
	if f.optional {
		if end, got := p.match(ws, i, fields[1:], sides); end > best {
			best, bestSides = end, got
		}
	}
	return best, bestSides
}

func fitsOrder(w courtWord, s string) bool {
	switch s {
	case "@":
		return w.form == "<side>" || w.is("they") || w.is("them") || w.is("opponent")
	case "#":
		_, ok := counted0(w.form)
		return ok
	case "#-#":
		return scoreWord(w.form) && strings.ContainsAny(w.form, "-:")
	}
	return w.is(s) || w.form == "<side>" && strings.ToLower(w.raw) == s
}

// ordered is a line-up in the making.
type ordered struct {
	s      *scene
	ws     []courtWord
	used   []bool
	l      *court.Lineup
	by     sideRef // whose order is wrong
	five   bool
	points bool
	late   bool
	clash  bool
}

// readOrder reads a wrong order of service that was found late, or that
// nobody can follow any more. A wrong server of whom nothing else is told is a
// matter of the rally.
func readOrder(s *scene) (heard, bool) {
	r := &ordered{s: s, ws: s.courtWords(), used: make([]bool, len(s.toks)), l: &court.Lineup{}}
	for i := 0; i < len(r.ws); {
		if r.ws[i].mark != 0 {
			i++
			continue
		}
		i += max(r.take(i), 1)
	}
	l := r.l
	k := play.Key{Fact: court.OrderFound}
	if l.Get(k) == play.Unknown && r.late && l.Trouble != court.BothLost {
		l = l.With(court.OrderFound, court.FoundTerm)
	}
	if v := l.Get(k); r.points && (v == court.FoundRally || v == court.FoundBefore) {
		r.clash = true // points before: which of the two is meant was not said
	}
	told := l.Get(k) != play.Unknown || r.points
	switch l.Trouble {
	case court.NoTrouble:
		return heard{}, false
	case court.WrongServer, court.OfficialOrder:
		if !told {
			return heard{}, false
		}
	}
	if r.clash {
		return heard{}, false
	}
	r.l = l
	if !r.side() || r.l.Check() != nil {
		return heard{}, false
	}
	h := heard{subject: r.l, used: r.used, scenery: make([]bool, len(r.used))}
	left, ok := sceneryOf(s, &h)
	if !ok {
		return heard{}, false
	}
	h.sure = left == 0
	return h, true
}

// sceneryOf marks what an area did not use and is known not to matter. It gives
// the number of the words that are left, or false where one of them tells
// something that is no part of the area.
func sceneryOf(s *scene, h *heard) (left int, ok bool) {
	for _, a := range s.atoms {
		if a.mark != 0 {
			continue
		}
		for i := a.from; i < a.to; i++ {
			switch {
			case h.used[i]:
			case a.class == cFiller, a.class == cAsk, a.class == cJoin, a.class == cCode, a.class == cTopic && a.id == "alignment":
				h.used[i] = true
			case a.class == cScenery:
				h.used[i], h.scenery[i] = true, true
			case a.class != cNone:
				return 0, false
			default:
				left++
			}
		}
	}
	return left, left <= 3
}

// take reads what begins at word i; it gives the number of words read.
func (r *ordered) take(i int) int {
	var row *orderRow
	most, at, sides := i, 0, []int(nil)
	orderStart(r.ws[i], func(w string) {
		for _, p := range orderStarts()[w] {
			if end, s := p.match(r.ws, i, p.fields, nil); end > most || end == most && end > i && p.at < at {
				row, most, at, sides = p.row, end, p.at, s
			}
		}
	})
	if row == nil {
		return 0
	}
	for _, w := range r.ws[i:most] {
		for k := w.from; k < w.to; k++ {
			r.used[k] = true
		}
	}
	owner := func() {
		for k := i - 1; k >= 0 && k >= i-2; k-- {
			if t := r.ws[k]; t.form == "<side>" && t.side.fam != relative {
				r.by = t.side
				return
			}
		}
	}
	switch row.op {
	case orTrouble:
		if r.l.Trouble != court.NoTrouble && r.l.Trouble != row.trouble {
			if r.l.Trouble == court.OfficialOrder || row.trouble == court.OfficialOrder || r.l.Trouble == court.BothLost || row.trouble == court.BothLost {
				r.clash = true
			}
			return most - i
		}
		r.l.Trouble = row.trouble
		if row.trouble == court.WrongServer || row.trouble == court.WrongOrder {
			owner()
		}
		for _, k := range sides {
			if row.trouble == court.OfficialOrder && r.ws[k].side.fam != relative {
				r.by = r.ws[k].side
			}
		}
	case orFive:
		r.five = true
	case orFound:
		if v := r.l.Get(play.Key{Fact: court.OrderFound}); v != play.Unknown && v != row.value {
			r.clash = true
			return most - i
		}
		r.l = r.l.With(court.OrderFound, row.value)
	case orPoints:
		r.points = true
		owner()
	case orLate:
		r.late = true
	case orMoment:
		r.l = r.l.With(court.OrderMoment, row.value)
	case orCost:
		r.l.Asked = court.WantPoints
	}
	return most - i
}

// side settles whose order it is and the names of the sides.
func (r *ordered) side() bool {
	l, s := r.l, r.s
	if l.Trouble == court.BothLost {
		return true
	}
	l.By = play.A
	pairs := map[family][2]string{letters: {"A", "B"}, usThem: {"us", "them"}, homeAway: {"home", "visitors"}}
	n, ok := pairs[r.by.fam]
	if !ok { // nobody's by name: the letters of the text, if any, may be the other's
		return s.primary != letters
	}
	l.By = r.by.team(play.A)
	l.Names[play.A], l.Names[play.B] = []string{n[0]}, []string{n[1]}
	return true
}
