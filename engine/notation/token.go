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
	side       sideRef
	label      string // a shirt number
	from       string // what was typed, when the spelling was corrected
}

// family is a pair of names for the two sides: us and them, A and B.
type family uint8

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
type sideRef struct {
	fam family
	n   int8 // 0 the first of the family, 1 the second
}

func (s sideRef) ok() bool       { return s.fam != noFamily }
func (s sideRef) other() sideRef { return sideRef{s.fam, 1 - s.n} }

var own, opp = sideRef{relative, 0}, sideRef{relative, 1}

// sideNames are the words that name a side. Sorted by words. poss marks those
// that are possessive by themselves.
var sideNames = []struct {
	words string
	ref   sideRef
	poss  bool
}{
	{"away team", sideRef{homeAway, 1}, false},
	{"far side", opp, false},
	{"far team", opp, false},
	{"home side", sideRef{homeAway, 0}, false},
	{"home team", sideRef{homeAway, 0}, false},
	{"my", sideRef{usThem, 0}, true},
	{"my side", sideRef{usThem, 0}, false},
	{"my team", sideRef{usThem, 0}, false},
	{"opponents", opp, false},
	{"opposing", opp, true},
	{"opposing side", opp, false},
	{"opposing team", opp, false},
	{"other side", opp, false},
	{"other team", opp, false},
	{"our", sideRef{usThem, 0}, true},
	{"our side", sideRef{usThem, 0}, false},
	{"our team", sideRef{usThem, 0}, false},
	{"ours", sideRef{usThem, 0}, true},
	{"own", own, true},
	{"receiving", sideRef{serveRec, 1}, true},
	{"receiving side", sideRef{serveRec, 1}, false},
	{"receiving team", sideRef{serveRec, 1}, false},
	{"receivers", sideRef{serveRec, 1}, false},
	{"servers", sideRef{serveRec, 0}, false},
	{"serving", sideRef{serveRec, 0}, true},
	{"serving side", sideRef{serveRec, 0}, false},
	{"serving team", sideRef{serveRec, 0}, false},
	{"team a", sideRef{letters, 0}, false},
	{"team b", sideRef{letters, 1}, false},
	{"their", sideRef{usThem, 1}, true},
	{"their side", sideRef{usThem, 1}, false},
	{"their team", sideRef{usThem, 1}, false},
	{"theirs", sideRef{usThem, 1}, true},
	{"them", sideRef{usThem, 1}, false},
	{"they", sideRef{usThem, 1}, false},
	{"us", sideRef{usThem, 0}, false},
	{"visiting team", sideRef{homeAway, 1}, false},
	{"visitors", sideRef{homeAway, 1}, false},
	{"we", sideRef{usThem, 0}, false},
}

// compounds are several words that are one thing. Sorted.
var compounds = []struct{ words, form string }{
	{"10 foot", "<aline>"},
	{"10 foot line", "<aline>"},
	{"10 footer", "<aline>"},
	{"3 line", "<aline>"},
	{"3 meter", "<aline>"},
	{"3 meter line", "<aline>"},
	{"attack line", "<aline>"},
	{"center line", "<cline>"},
	{"line judge", "<lj>"},
	{"spiking line", "<aline>"},
	{"ten foot line", "<aline>"},
	{"ten footer", "<aline>"},
	{"three meter line", "<aline>"},
}

var colourWords = []string{"black", "blue", "gold", "green", "maroon", "navy", "orange", "purple", "red", "white", "yellow"}

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
	var out []token
	hasB, hasSR := letterTeams(ws)
	var art byte
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
		for j, s := range parts {
			if a := article(s); a != 0 {
				art = a
				if s != "that" && s != "this" || j > 0 {
					continue
				}
				continue
			}
			t := token{raw: w.raw, form: s, start: w.start, end: w.end, art: art, poss: poss && j == len(parts)-1}
			if strings.HasPrefix(s, "#") {
				t.form, t.label = "<label>", strings.TrimPrefix(s, "#")
			}
			out = append(out, t)
			art = 0
		}
	}
	return mergeCompounds(mergeSides(out))
}

// letterTeams reports whether a text uses A and B, and S and R, as teams.
func letterTeams(ws []word) (hasB, hasSR bool) {
	for i, w := range ws {
		s := strings.NewReplacer("’", "'", "`", "'").Replace(w.raw)
		head := strings.TrimSuffix(s, "'s")
		switch {
		case head == "B", s == "A's", s == "b" && i > 0, s == "a's",
			len(s) > 1 && (s[0] == 'A' || s[0] == 'B') && numeric(s[1:]) && s != "A4":
			hasB = true
		case head == "R" || head == "S", len(s) > 1 && (s[0] == 'R' || s[0] == 'S') && numeric(s[1:]) && s != "R1" && s != "R2":
			hasSR = true
		case head == "A" && i > 0 && ws[i-1].mark != '.' && ws[i-1].mark != '?':
			hasB = true
		case head == "A" && i+1 < len(ws) && thirdPerson(ws[i+1].raw):
			hasB = true
		}
	}
	return hasB, hasSR
}

// thirdPerson reports whether a word after a lone capital A shows that the A
// is a team: "A digs", "A has used three".
func thirdPerson(s string) bool {
	switch strings.ToLower(s) {
	case "has", "had", "is", "and", "attack", "first", "second", "third":
		return true
	}
	if b, ok := stem(strings.ToLower(s)); ok && strings.HasSuffix(s, "s") {
		return lex.verbs[b]
	}
	return false
}

func numeric(s string) bool {
	for i := range len(s) {
		if !digitAt(s, i) {
			return false
		}
	}
	return s != ""
}

// letterToken reads A, A's, A8, S, R, R3 and the like as a side, with the
// number as a label.
func letterToken(ws []word, i int, hasB, hasSR bool) (token, bool) {
	w := ws[i]
	s := strings.NewReplacer("’", "'", "`", "'").Replace(w.raw)
	head, poss := strings.CutSuffix(s, "'s")
	if h, ok := strings.CutSuffix(s, "'"); ok {
		head, poss = h, true
	}
	if head == "" {
		return token{}, false
	}
	t := token{raw: w.raw, form: "<side>", start: w.start, end: w.end, poss: poss}
	letter, rest := head[0], head[1:]
	if rest != "" && !numeric(rest) {
		return token{}, false
	}
	next := ""
	if i+1 < len(ws) {
		next = strings.ToLower(ws[i+1].raw)
	}
	switch letter {
	case 'A', 'B':
		if !hasB || rest == "" && letter == 'A' && !poss && (next == "loose" || next == "whistle" || next == "spectator" || next == "second" && i == 0 && ballNext(ws, i+2)) {
			return token{}, false
		}
		t.side = sideRef{letters, int8(letter - 'A')}
	case 'a', 'b':
		if !hasB || rest != "" || letter == 'a' && !poss && !thirdPerson(next) {
			return token{}, false
		}
		t.side = sideRef{letters, int8(letter - 'a')}
	case 'S', 'R':
		if !hasSR && rest != "1" && rest != "2" || letter == 'R' && (rest == "1" || rest == "2") && !playing(next) {
			return token{}, false
		}
		if letter == 'S' && !hasSR {
			return token{}, false
		}
		t.side = sideRef{serveRec, int8('S'-letter) & 1}
	case 'L':
		if rest == "" {
			return token{}, false
		}
		t.form, t.label = "libero", rest
		return t, true
	default:
		return token{}, false
	}
	t.label = rest
	return t, true
}

func ballNext(ws []word, i int) bool { return i < len(ws) && strings.EqualFold(ws[i].raw, "ball") }

// playing reports whether the word after R1 or R2 says that a player is meant.
func playing(next string) bool {
	if b, ok := stem(next); ok {
		next = b
	}
	switch next {
	case "spike", "jump", "pass", "dig", "set", "attack", "block", "swing", "serve":
		return true
	}
	return false
}

// mergeSides makes the names of sides one token each.
func mergeSides(ts []token) []token {
	two := twoColours(ts)
	out := ts[:0:0]
	for i := 0; i < len(ts); i++ {
		t := ts[i]
		if t.form == "<side>" {
			if i+1 < len(ts) && !t.poss && (ts[i+1].form == "team") {
				i++
				t.poss, t.end = ts[i].poss, ts[i].end
			}
			out = append(out, t)
			continue
		}
		ref, poss, n := sideName(ts, i)
		if n == 0 && two[0] != "" {
			for k, c := range two {
				if c == t.form && (i+1 >= len(ts) || ts[i+1].form != "card") {
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

func tail(ts []token) string {
	s := ""
	for _, t := range ts {
		s += " " + t.raw
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

// sideName finds the longest name of a side at i, and how many tokens it takes.
func sideName(ts []token, i int) (ref sideRef, poss bool, n int) {
	for _, s := range sideNames {
		first, second, two := strings.Cut(s.words, " ")
		if ts[i].form != first {
			continue
		}
		if two {
			if i+1 < len(ts) && ts[i+1].form == second && ts[i+1].mark == 0 {
				// "our side" in "on our side" stays two words: the phrases know it.
				if second == "side" && s.ref.fam == usThem && i > 0 && sideAsPlace(ts[i-1].form) {
					continue
				}
				if second == "side" && i > 0 && sideAsPlace(ts[i-1].form) {
					continue
				}
				return s.ref, s.poss, 2
			}
			continue
		}
		if n == 0 {
			ref, poss, n = s.ref, s.poss, 1
		}
	}
	if n == 0 && (ts[i].form == "other" || ts[i].form == "far") && i+1 < len(ts) && ts[i+1].form == "side" {
		return opp, true, 1
	}
	return ref, poss, n
}

// sideAsPlace reports whether a word before "our side" makes it a place.
func sideAsPlace(s string) bool {
	switch s {
	case "on", "over", "to", "onto", "in", "into", "above", "completely", "back", "from", "at", "near", "down", "goes", "falls":
		return true
	}
	return false
}

// twoColours are the two colours that a text calls its teams by, if it does.
func twoColours(ts []token) [2]string {
	var found []string
	for i, t := range ts {
		for _, c := range colourWords {
			if t.form != c || i+1 < len(ts) && (ts[i+1].form == "card" || ts[i+1].form == "line") {
				continue
			}
			if len(found) == 0 || found[0] != c && len(found) < 3 && (len(found) == 1 || found[1] != c) {
				found = append(found, c)
			}
		}
	}
	if len(found) == 2 {
		return [2]string{found[0], found[1]}
	}
	return [2]string{}
}

// mergeCompounds makes the lines of the court one token each.
func mergeCompounds(ts []token) []token {
	out := ts[:0:0]
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
			t.raw += tail(ts[i+1 : i+best])
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
