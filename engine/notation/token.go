package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// token is one unit of the text as the phrases see it: a word, a mark, or the

// name of a side made one unit.

type token struct {
	raw        string // as typed
	form       string // lower case; "<side>" for a side, "<aline>" for the attack line, "<cline>" for the centre line
	base       string // the word without its ending, when that is another word of the lexicon
	start, end int
	mark       byte
	poss       bool // a possessive
	art        byte // an article came before it: 't' the, 'a' a or an
	this       bool // that article is "this"
	side       sideRef
	label      string // a shirt number
	from       string // what was typed, when the spelling was corrected
}

// family is a pair of names for the two sides: us and them, A and B.

const (
	noFamily   family = iota
	letters           // A, B
	usThem            // us, them
	serveRec          // serving, receiving
	homeAway          // home, visitors
	colours           // two colours
	attackBloc        // attackers, blockers
	relative          // own, opponents: it depends on who acts
)

// sideRef is a side as the words name it.

func (s sideRef) ok() bool { return s.fam != noFamily }

// sideNames are the words that name a side. Sorted by words. poss marks those

// that are possessive by themselves.

// compounds are several words that are one thing. Sorted.

var compounds = []struct{ words, form string }{
	{"10 foot", "<aline>"},
	{"10 foot line", "<aline>"},
	{"10 footer", "<aline>"},
	{"3 line", "<aline>"},
	{"3 m line", "<aline>"},
	{"3 meter", "<aline>"},
	{"3 meter line", "<aline>"},
	{"attack line", "<aline>"},
	{"center line", "<cline>"},
	{"line judge", "<lj>"},
	{"line judges", "<lj>"},
	{"spiking line", "<aline>"},
	{"ten foot line", "<aline>"},
	{"ten footer", "<aline>"},
	{"three meter line", "<aline>"},
}

// articles are dropped, and remembered on the word after them.

func article(s string) byte {
	switch s {
	case "the", "this", "that", "these", "those":
		return 't'
	case "a", "an", "some":
		return 'a'
	}
	return 0
}

// tokens makes the units of a text. The names of sides that only a use of

// capital letters shows (A, S, R) are found here.

func tokens(text string) []token {
	ws := split(text)
	out := make([]token, 0, len(ws)+len(ws)/8)
	hasB, hasSR := letterTeams(ws)
	var art byte
	this := false
	for i, w := range ws {
		if w.mark != 0 {
			out = append(out, token{raw: w.raw, form: w.raw, start: w.start, end: w.end, mark: w.mark})
			art = 0
			continue
		}
		if t, ok := letterToken(ws, i, hasB, hasSR); ok {
			out = append(out, t)
			art = 0
			continue
		}
		parts, poss := expand(w.raw)
		if poss && len(parts) == 1 && i+1 < len(ws) && isAfter(w.raw, strings.ToLower(ws[i+1].raw)) {
			parts, poss = append(parts, "is"), false // "the setter's in 5"
		}
		for j, s := range parts {
			if a := article(s); a != 0 {
				art, this = a, s == "this"
				if s != "that" && s != "this" || j > 0 {
					continue
				}
				continue
			}
			t := token{raw: w.raw, form: s, start: w.start, end: w.end, art: art, this: this, poss: poss && j == len(parts)-1}
			if strings.HasPrefix(s, "#") {
				t.form, t.label = "<label>", strings.TrimPrefix(s, "#")
				if n, ok := strings.CutSuffix(t.label, "s"); ok && numeric(n) { // "#4s turn"
					t.label, t.poss = n, true
				}
			}
			out = append(out, t)
			art, this = 0, false
		}
	}
	for i := range out { // "on 2", "4 hits"
		if i > 0 && numeric(out[i].form) {
			if c, _ := colourName(out[i-1]); c != "" { // "blue 4 touches it"
				continue
			}
		}
		if w := small(out[i].form); w != "" && (i > 0 && out[i-1].form == "on" || i+1 < len(out) && hitWord(out[i+1].form)) {
			out[i].form = w
		}
	}
	contracted(out)
	return mergeCompounds(labelled(mergeSides(out)))
}

// letterTeams reports whether a text uses A and B, and S and R, as teams.

// thirdPerson reports whether a word after a lone capital A shows that the A

// is a team: "A digs", "A has used three".

// letterToken reads A, A's, A8, S, R, R3 and the like as a side, with the

// number as a label.

// playing reports whether the word after R1 or R2 says that a player is meant.

// mergeSides makes the names of sides one token each.

func mergeSides(ts []token) []token {
	two := twoColours(ts)
	out := make([]token, 0, len(ts))
	for i := 0; i < len(ts); i++ {
		t := ts[i]
		if t.form == "<side>" {
			if n := len(out); n > 0 && (t.side.fam == letters || t.side.fam == serveRec) && out[n-1].form == "team" {
				t.raw, t.start = out[n-1].raw+" "+t.raw, out[n-1].start
				out = out[:n-1]
			}
			if i+1 < len(ts) && !t.poss && (ts[i+1].form == "team") {
				i++
				t.poss, t.end = ts[i].poss, ts[i].end
			}
			out = append(out, t)
			continue
		}
		ref, poss, n := sideName(ts, i)
		if t.form == "my" && i+1 < len(ts) && crewWord(ts[i+1].form) {
			continue // "my partner": no side is named
		}
		if t.form == "opponent" && t.poss {
			ref, poss, n = opp, true, 1
		}
		if n == 0 && two[0] != "" {
			for k, c := range two {
				if name, _ := colourName(t); c != "" && (c == t.form || c == name) && (i+1 >= len(ts) || ts[i+1].form != "card") {
					ref, n = sideRef{colours, int8(k)}, 1
					if i+1 < len(ts) && ts[i+1].form == "team" {
						n = 2
					}
				}
			}
		}
		if ref == (sideRef{serveRec, 0}) && n == 1 && t.form == "serving" && verbBefore(out) {
			n = 0 // "B is serving": the verb
		}
		if n == 1 && !t.poss && ((t.form == "home" || t.form == "visitor") && !personAfter(ts, i) ||
			t.form == "away" && (i+1 >= len(ts) || !personWord(ts[i+1].form))) {
			n = 0 // "took it home"
		}
		if n == 0 {
			out = append(out, t)
			continue
		}
		last := ts[i+n-1]
		t.poss = poss || last.poss
		t.form, t.side, t.end = "<side>", ref, last.end
		if n > 1 || len(last.raw) > 0 {
			t.raw = t.raw + tail(ts[i+1:i+n])
		}
		out = append(out, t)
		i += n - 1
	}
	return out
}

// personAfter reports whether the word after a team's bare name shows that the
// team is meant: a player of it, or what it does.
func personAfter(ts []token, i int) bool {
	if i+1 >= len(ts) {
		return false
	}
	w := ts[i+1].form
	if b, ok := stem(w); w == "has" || w == "first" || w == "second" || w == "third" || ok && b != w && lex().verb(b) {
		return true
	}
	return personWord(w)
}

func tail(ts []token) string {
	s := ""
	for i, t := range ts {
		if i == 0 || t.start != ts[i-1].start {
			s += " " + t.raw
		}
	}
	return s
}

func verbBefore(out []token) bool {
	if len(out) == 0 {
		return false
	}
	switch p := out[len(out)-1]; p.form {
	case "is", "are", "was", "were", "am":
		return true
	}
	return false
}

// mergeCompounds makes the lines of the court one token each, in place.
func mergeCompounds(ts []token) []token {
	out := ts[:0]
	for i := 0; i < len(ts); i++ {
		best, form := 0, ""
		for _, c := range compounds {
			if c.words[0] != firstByte(ts[i].form) {
				continue
			}
			n := 0
			for w := range strings.FieldsSeq(c.words) {
				if i+n >= len(ts) || ts[i+n].form != w {
					n = 0
					break
				}
				n++
			}
			if n > best {
				best, form = n, c.form
			}
		}
		t := ts[i]
		if best > 0 {
			t.form, t.end = form, ts[i+best-1].end
			if ts[i+best-1].start != t.start {
				t.raw += tail(ts[i+1 : i+best])
			}
			i += best - 1
		}
		out = append(out, t)
	}
	return out
}

func firstByte(s string) byte {
	if s == "" {
		return 0
	}
	return s[0]
}

// team is a lone helper: the play's team of the n-th name of a family whose

// first name is a.

func (s sideRef) team(first play.Team) play.Team {
	if s.n == 0 {
		return first
	}
	return first.Other()
}

// small is the word of a small number in digits.
func small(s string) string {
	switch s {
	case "1":
		return "one"
	case "2":
		return "two"
	case "3":
		return "three"
	case "4":
		return "four"
	}
	return ""
}

func hitWord(s string) bool {
	switch s {
	case "hit", "hits", "touch", "touches", "contact", "contacts":
		return true
	}
	return false
}
