package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// spots are the short names of a place in the line-up that stand for whoever
// plays there, as they are typed.
var spots = []string{"cb", "cf", "lb", "lf", "mf", "rb", "rf"}

// spot reports whether a row was typed as a place in the line-up, so that the
// player there is meant: "LF touches the net", "back left digs it". After "in"
// it is only the row of somebody else.
func (s *scene) spot(i int) bool {
	a := s.atoms[i]
	if i > 0 {
		switch s.atoms[i-1].word {
		case "in", "at", "is", "was", "from", "playing":
			return false
		}
	}
	return slices.Contains(spots, strings.ToLower(s.toks[a.from].raw)) || slices.Contains([]string{
		"back left", "back middle", "back right", "center back", "center front", "front left", "front middle", "front right", "left back"}, a.word)
}

// phrase reads a noun phrase of people, and the side that comes after it:
// "number 11 for them", "a player from the other team".
func (s *scene) phrase(c *clauseState, i int) (party, int, bool) {
	w, j, ok := s.nounPhrase(c, i)
	if !ok || w.team != play.NoTeam || w.pid >= 0 || !w.one || j+1 >= c.to || s.atoms[j].class != cFiller {
		return w, j, ok
	}
	switch s.atoms[j].word {
	case "for", "from", "of", "on":
	default:
		return w, j, ok
	}
	a := s.atoms[j+1]
	if a.class != cSide || a.poss && !s.standsAlone(c, j+1) {
		return w, j, ok
	}
	if t := s.team(a.side); t != play.NoTeam {
		w.team = t
		return w, j + 2, true
	}
	return w, j, ok
}

// standsAlone reports whether a possessive has nothing that it owns: "ours".
func (s *scene) standsAlone(c *clauseState, i int) bool {
	switch strings.ToLower(s.toks[s.atoms[i].from].raw) {
	case "ours", "theirs":
		return true
	}
	return false
}

// owns is the side of "her" or "his" before somebody who is not she: "her
// setter" is of the side of the one told of last.
func (s *scene) owns(c *clauseState, i int) play.Team {
	if a := s.atoms[i]; a.class != cShe || a.word != "her" && a.word != "his" {
		return play.NoTeam
	}
	j := i + 1
	for j < c.to && (s.atoms[j].class == cScenery || s.atoms[j].class == cSide && s.atoms[j].side == own) {
		j++
	}
	if j >= c.to || s.atoms[j].class != cRole && s.atoms[j].class != cLibero && s.atoms[j].class != cMate {
		return play.NoTeam
	}
	if t := s.actor(); t != play.NoTeam {
		return t
	}
	return s.alone()
}

// counters are words after a number that show that it counts things.
var counters = []string{"ball", "contact", "feet", "foot", "hit", "inch", "meter", "minute", "more", "of", "people", "person", "player", "point", "second", "set", "team", "time", "touch", "two", "up", "way", "year"}

// labelled makes shirt numbers of the numbers that stand for a player: "number
// 11", "our 7 went down", "blue 4". It works in place.
func labelled(ts []token) []token {
	out := ts[:0]
	for i, t := range ts {
		n := len(out)
		if !numeric(t.form) || len(t.form) > 2 || n == 0 {
			out = append(out, t)
			continue
		}
		p, next := out[n-1], ""
		if i+1 < len(ts) && ts[i+1].mark == 0 {
			next = ts[i+1].form
		}
		base := next
		if b, ok := stem(next); ok {
			base = b
		}
		t2 := t
		t2.form, t2.label = "<label>", t.form
		switch {
		case p.form == "number" || p.form == "jersey":
			t2.start, t2.raw = p.start, p.raw+" "+t.raw
			out[n-1] = t2
			continue
		case p.form != "<side>" || p.label != "" || slices.Contains(counters, next):
		case p.poss && next == "" && (len(t.form) > 1 || t.form > "4"): // "our 6 (back row)"
			t = t2
		case p.poss && next != base && lex().verb(base), p.poss && (next == "is" || next == "was" || next == "went" || next == "came"),
			!p.poss && (p.side.fam == colours || p.side.fam == homeAway):
			if base == next || !slices.Contains(counters, base) || len(t.form) > 1 || t.form > "4" || !p.poss {
				t = t2
			}
		}
		out = append(out, t)
	}
	return out
}

// opposite reports whether a player of "the other team" acts, where no side
// has another name: the sides are then those of the one who asks and the other.
func (s *scene) opposite() bool {
	for i, a := range s.atoms {
		if a.class == cSide && a.side == opp && a.used && (!a.poss || i+1 < len(s.atoms) && s.atoms[i+1].class == cRole) {
			return true
		}
	}
	return false
}

// onlyName is the one name of a family that a text uses, if it uses one.
func (s *scene) onlyName(f family) (n int8, one bool) {
	seen := [2]bool{}
	for _, t := range s.toks {
		if t.side.fam == f {
			seen[t.side.n&1] = true
		}
	}
	if seen[0] == seen[1] {
		return 0, false
	}
	if seen[1] {
		return 1, true
	}
	return 0, true
}

// crowds makes a number of people of a bare digit: "2 blockers", "2 of theirs".
func crowds(as []atom) {
	for i := range as {
		a := &as[i]
		if a.class != cDigits || a.word != "2" && a.word != "3" || i+1 >= len(as) {
			continue
		}
		j := i + 1
		for j < len(as)-1 && (as[j].class == cScenery || as[j].class == cRow) {
			j++
		}
		n := as[j]
		if n.class == cFiller && n.word == "of" && j+1 < len(as) && as[j+1].class == cSide || n.class == cRole || n.class == cPerson || n.class == cLibero {
			a.class, a.n = cCard, int(a.word[0]-'0')
		}
	}
}

// contracted takes the 's of "the MB's in the net" for "is": what follows it
// is nobody and nothing that somebody could own.
func contracted(ts []token) {
	for i := range ts {
		if !ts[i].poss || i+1 >= len(ts) {
			continue
		}
		switch ts[i+1].form {
		case "about", "all", "already", "at", "going", "in", "just", "not", "on", "over", "right", "still", "under", "up":
			if i+2 < len(ts) && (personWord(ts[i+2].form) || ts[i+1].art != 0) && ts[i+1].form != "in" {
				continue // "A's right side"
			}
			ts[i].poss = false
		}
	}
}

// adjective reports whether scenery is what somebody is like: the word after
// it, or after more of the kind, names a person.
func (s *scene) adjective(c *clauseState, i int) bool {
	for i++; i < c.to && s.atoms[i].class == cScenery; {
		i++
	}
	return s.personAt(c, i) && s.atoms[i].class != cSide
}
