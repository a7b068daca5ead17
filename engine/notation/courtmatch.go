package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// courtWord is a word of the text as the court's lexicon sees it: an
// abbreviation that the tokens spell out is one again.
type courtWord struct {
	token
	from, to int // its tokens
	roots    []string
}

// courtWords are the words of the text.
func (s *scene) courtWords() []courtWord {
	if s.court != nil {
		return s.court
	}
	ts := s.toks
	out := make([]courtWord, 0, len(ts))
	for i := 0; i < len(ts); i++ {
		w := courtWord{token: ts[i], from: i, to: i + 1}
		for w.mark == 0 && w.to < len(ts) && ts[w.to].start == w.start && ts[w.to].mark == 0 {
			w.to++
		}
		raw := strings.TrimSuffix(strings.ToLower(w.raw), "'s")
		switch {
		case w.mark != 0:
		case w.to > i+1 && slices.ContainsFunc(positionNames, func(p struct {
			words string
			is    court.Position
		}) bool {
			return p.words == raw
		}):
			w.form, i = raw, w.to-1
		default:
			w.to = i + 1
			if p := strings.ToLower(w.raw); isPosition(p) {
				w.form = p
			}
		}
		if w.form == ts[w.from].form {
			w.roots = s.rootsOf(w.from)
		} else {
			w.roots = roots(nil, w.form)
		}
		if w.base != "" {
			w.roots = append(w.roots, w.base)
		}
		switch w.form {
		case "is", "are", "was", "were", "been", "being":
			w.roots = append(w.roots, "be")
		}
		out = append(out, w)
	}
	s.court = out
	return out
}

func isPosition(s string) bool {
	return slices.ContainsFunc(positionNames, func(p struct {
		words string
		is    court.Position
	}) bool {
		return p.words == s
	})
}

// courtPattern is a row made ready to match.
type courtPattern struct {
	fields []serveField
	row    *courtRow
	at     int // its place in the table
}

var courtPatterns = sync.OnceValue(func() []courtPattern {
	var out []courtPattern
	for i := range courtRows {
		out = append(out, courtPattern{fieldsOf(courtRows[i].pattern), &courtRows[i], i})
	}
	return out
})

// courtStarts are the patterns by the words that can stand first in them.
var courtStarts = sync.OnceValue(func() map[string][]courtPattern {
	out := map[string][]courtPattern{}
	for _, p := range courtPatterns() {
		for _, w := range firstWords(p.fields) {
			out[w] = append(out[w], p)
		}
	}
	return out
})

// courtRowAt is the longest row that begins at word i, and how many words it
// takes; of two as long the first of the table.
func courtRowAt(ws []courtWord, i int) (*courtRow, int) {
	var row *courtRow
	most, at := 0, 0
	try := func(w string) {
		for _, p := range courtStarts()[w] {
			if n := p.match(ws, i, p.fields); n > most || n == most && n > 0 && p.at < at {
				row, most, at = p.row, n, p.at
			}
		}
	}
	if i < len(ws) && ws[i].mark == 0 {
		for _, w := range ws[i].roots {
			try(w)
		}
		if ws[i].form == "<side>" {
			try("@")
		}
	}
	return row, most
}

func (p courtPattern) match(ws []courtWord, i int, fields []serveField) int {
	if len(fields) == 0 {
		return 0
	}
	best := 0
	if fields[0].optional {
		best = p.match(ws, i, fields[1:])
		if len(fields) == 1 {
			best = 0
		}
	}
	if i >= len(ws) || ws[i].mark != 0 || !slices.ContainsFunc(fields[0].words, func(f string) bool { return ws[i].is(f) || f == "@" && ws[i].form == "<side>" }) {
		return best
	}
	if rest := slices.IndexFunc(fields[1:], func(f serveField) bool { return !f.optional }); rest < 0 {
		return max(best, 1+p.match(ws, i+1, fields[1:]))
	}
	if n := p.match(ws, i+1, fields[1:]); n > 0 {
		return max(best, 1+n)
	}
	return best
}

func (w courtWord) is(s string) bool { return slices.Contains(w.roots, s) }

// someone is a person or a side as the words name one.
type someone struct {
	side  sideRef
	role  play.Role
	label string
	place court.Position
	row   bool // a player of the front row or the back row, of no position
	named bool // more than the side was said
	she   bool
	n     int // how many words
}

// someoneAt reads a person or a side that begins at word i.
func someoneAt(ws []courtWord, i int) (someone, bool) {
	var p someone
	j := i
	step := func(n int) { j += n }
	for j < len(ws) && ws[j].form == "<side>" {
		if p.side.ok() && p.side.fam == ws[j].side.fam {
			break
		}
		if !p.side.ok() || ws[j].side.fam == serveRec {
			p.side = ws[j].side
		}
		if ws[j].label != "" {
			p.label, p.named = ws[j].label, true
		}
		step(1)
		if j < len(ws) && ws[j].is("team") {
			step(1)
		}
	}
	if j < len(ws) && ws[j].form == "<label>" {
		p.label, p.named = ws[j].label, true
		step(1)
	}
	for k := 0; k < 2 && j < len(ws) && ws[j].mark == 0; k++ { // "back row setter", "front-row player"
		if j+1 < len(ws) && (ws[j].is("front") || ws[j].is("back")) && ws[j+1].is("row") {
			p.row, p.named = true, true
			step(2)
		}
	}
	if at, n := positionAt(ws, j); n > 0 {
		p.place, p.named = at, true
		step(n)
		if j < len(ws) && (ws[j].is("player") || ws[j].is("setter") || ws[j].is("libero")) {
			p.role = roleOf(ws[j])
			step(1)
		}
	} else if j < len(ws) && ws[j].mark == 0 {
		for _, r := range courtRoles {
			if ws[j].is(r.word) {
				p.role, p.named = r.role, true
				step(1)
				break
			}
		}
		if j == i && (ws[j].form == "she" || ws[j].form == "he" || ws[j].form == "they") {
			return someone{she: true, n: 1}, true
		}
		if n := inPosition(ws, j); p.named && n > 0 {
			p.place = posDigit(ws[j+n-1])
			step(n)
		} else if at, n := positionAt(ws, j+1); p.named && n > 0 && j < len(ws) && ws[j].is("in") {
			p.place = at
			step(n + 1)
		}
	}
	if !p.named && !p.side.ok() && j < len(ws) && posDigit(ws[j]) != court.NoPosition { // "ahead of 2"
		if i > 0 && (ws[i-1].is("of") || ws[i-1].is("behind") || ws[i-1].is("than") || ws[i-1].is("with")) && (j+1 >= len(ws) || !unitWord(ws[j+1])) {
			p.place, p.named = posDigit(ws[j]), true
			step(1)
		}
	}
	p.n = j - i
	return p, p.n > 0
}

func roleOf(w courtWord) play.Role {
	for _, r := range courtRoles {
		if w.is(r.word) {
			return r.role
		}
	}
	return play.NoRole
}

func posDigit(w courtWord) court.Position {
	if len(w.form) == 1 && w.form[0] >= '1' && w.form[0] <= '6' {
		return court.Position(w.form[0] - '0')
	}
	return court.NoPosition
}

// inPosition is how many words from j on say "in 2", "in position 2".
func inPosition(ws []courtWord, j int) int {
	k := j
	for k < len(ws) && (ws[k].is("in") || ws[k].is("position") || ws[k].is("pos") || ws[k].is("zone") || ws[k].is("spot")) {
		k++
	}
	if k > j && k < len(ws) && posDigit(ws[k]) != court.NoPosition && (k+1 >= len(ws) || !unitWord(ws[k+1])) {
		return k - j + 1
	}
	return 0
}

func unitWord(w courtWord) bool {
	switch w.form {
	case "m", "cm", "mm", "ft", "foot", "feet", "in", "inch", "inches", "meter", "meters", "metre", "metres", "step", "steps":
		return true
	}
	return w.is("foot") || w.is("inch") || w.is("meter") || w.is("metre")
}

func positionAt(ws []courtWord, i int) (court.Position, int) {
	for n := 2; n > 0; n-- {
		if i+n > len(ws) {
			continue
		}
		s := ""
		for k := i; k < i+n; k++ {
			if ws[k].mark != 0 {
				s = "-"
				break
			}
			if s != "" {
				s += " "
			}
			s += ws[k].form
		}
		for _, p := range positionNames {
			if p.words == s {
				return p.is, n
			}
		}
	}
	return court.NoPosition, 0
}

// lengthAt reads a length that begins at word i: "3 ft", "8 ft 2 in", "a step".
// Known is false for a step, a bit, a foot that is no measure.
func lengthAt(ws []courtWord, i int) (l court.Length, known bool, n int) {
	j, text := i, ""
	for j+1 < len(ws) && ws[j].mark == 0 {
		num := ws[j].form
		if v, ok := counted0(num); ok && !numeric(num) {
			num = string(rune('0' + v%10))
			if v > 9 {
				break
			}
		}
		unit := ws[j+1].form
		switch {
		case ws[j+1].is("foot"):
			unit = "ft"
		case ws[j+1].is("inch"):
			unit = "in"
		case unit == "in" && text == "":
			return 0, false, 0
		}
		got, err := court.ParseLength(num + " " + unit)
		if err != nil {
			break
		}
		l += got
		text = "x"
		j += 2
	}
	if j > i {
		return l, true, j - i
	}
	vague := []string{"step", "bit", "half", "couple", "few", "inch", "little", "foot"}
	for j < len(ws) && ws[j].mark == 0 && (slices.ContainsFunc(vague, ws[j].is) || j > i && ws[j].form == "of" || j > i && ws[j].form == "or" || ws[j].form == "two" && j+1 < len(ws) && ws[j+1].is("step") || j > i && unitWord(ws[j]) && ws[j].form != "in") {
		j++
	}
	return 0, false, j - i
}
