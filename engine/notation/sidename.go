package notation

import (
	"slices"
	"strings"
	"sync"
)

type family uint8

type sideRef struct {
	fam family
	n   int8 // 0 the first of the family, 1 the second
}

var own, opp = sideRef{relative, 0}, sideRef{relative, 1}

// sideWord is a name of a side.
type sideWord struct {
	words string
	ref   sideRef
	poss  bool
}

var sideNames = []sideWord{
	{"away", sideRef{homeAway, 1}, false},
	{"away team", sideRef{homeAway, 1}, false},
	{"far side", opp, false},
	{"far team", opp, false},
	{"guests", sideRef{homeAway, 1}, false},
	{"home", sideRef{homeAway, 0}, false},
	{"home side", sideRef{homeAway, 0}, false},
	{"home team", sideRef{homeAway, 0}, false},
	{"hosts", sideRef{homeAway, 0}, false},
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
	{"receivers", sideRef{serveRec, 1}, false},
	{"receiving", sideRef{serveRec, 1}, true},
	{"receiving side", sideRef{serveRec, 1}, false},
	{"receiving team", sideRef{serveRec, 1}, false},
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
	{"visiting", sideRef{homeAway, 1}, true},
	{"visiting team", sideRef{homeAway, 1}, false},
	{"visitor", sideRef{homeAway, 1}, false},
	{"visitors", sideRef{homeAway, 1}, false},
	{"we", sideRef{usThem, 0}, false},
}

var colourWords = []string{"black", "blue", "gold", "green", "grey", "maroon", "navy", "orange", "pink", "purple", "red", "silver", "teal", "white", "yellow"}

var colourSet = wordSet(strings.Join(colourWords, " "))

func letterTeams(ws []word) (hasB, hasSR bool) {
	for i, w := range ws {
		s := plainMarks(w.raw)
		head := strings.TrimSuffix(s, "'s")
		switch {
		case head == "B", s == "A's", s == "b" && i > 0, s == "a's",
			len(head) > 1 && (head[0] == 'A' || head[0] == 'B') && numeric(head[1:]) && head != "A4":
			hasB = true
		case head == "A4" && (i > 0 && strings.EqualFold(ws[i-1].raw, "player") || s == "A4's" || i+1 < len(ws) && thirdPerson(ws[i+1].raw)):
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

func thirdPerson(s string) bool {
	switch strings.ToLower(s) {
	case "has", "had", "is", "and", "attack", "first", "second", "third":
		return true
	}
	if b, ok := stem(strings.ToLower(s)); ok && strings.HasSuffix(s, "s") {
		return lex().verb(b)
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

func letterToken(ws []word, i int, hasB, hasSR bool) (token, bool) {
	w := ws[i]
	s := plainMarks(w.raw)
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
		if !hasB || rest != "" || letter == 'a' && !poss && (!thirdPerson(next) || next == "first" || next == "second" || next == "third" || next == "attack") {
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
		if rest == "" && s != "L" {
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

// sideStarts are the names of sides by their first word.
var sideStarts = sync.OnceValue(func() map[string][]sideWord {
	out := map[string][]sideWord{}
	for _, s := range sideNames {
		first, _, _ := strings.Cut(s.words, " ")
		out[first] = append(out[first], s)
	}
	return out
})

func sideName(ts []token, i int) (ref sideRef, poss bool, n int) {
	for _, s := range sideStarts()[ts[i].form] {
		if _, second, two := strings.Cut(s.words, " "); two {
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

func sideAsPlace(s string) bool {
	switch s {
	case "on", "over", "to", "onto", "in", "into", "above", "completely", "back", "from", "at", "near", "down", "goes", "falls", "stay", "stays", "stayed", "staying", "remains", "remained", "lands", "landed", "drops", "dropped", "fell", "came", "comes":
		return true
	}
	return false
}

// twoColours are the names that a text calls its teams by: two colours, or the
// names of which a player's word shows that a team is meant ("red outside",
// "the eagles' setter").
func twoColours(ts []token) [2]string {
	var found, shown []string
	put := func(to []string, w string) []string {
		if len(to) > 2 || slices.Contains(to, w) {
			return to
		}
		return append(to, w)
	}
	for i, t := range ts {
		next := ""
		if i+1 < len(ts) {
			next = ts[i+1].form
		}
		name, plural := colourName(t)
		colour := name != "" && next != "card" && next != "line"
		if colour {
			found = put(found, name)
		}
		switch {
		case colour && (plural || i > 0 && ts[i-1].label != "" && ts[i-1].side == (sideRef{}) || t.poss || personAfter(ts, i) || next == "team" || next == "side" || next != "0" && numeric(next) || i > 0 && teamBefore(ts[i-1].form)):
			shown = put(shown, name)
		case t.poss && t.form != "<side>" && name == "" && strange(ts, i) && personWord(next):
			shown = put(shown, t.form)
		}
	}
	switch {
	case len(found) == 2 && len(shown) < 2:
		return [2]string{found[0], found[1]}
	case len(shown) == 2:
		return [2]string{shown[0], shown[1]}
	case len(shown) == 1:
		return [2]string{shown[0]}
	}
	return [2]string{}
}

// colourName is the colour that a word calls a team by, and whether it is the
// plural: "the Reds".
func colourName(t token) (name string, plural bool) {
	if t.mark != 0 {
		return "", false
	}
	if colourSet[t.form] {
		return t.form, false
	}
	if c, ok := strings.CutSuffix(t.form, "s"); ok && colourSet[c] {
		return c, true
	}
	return "", false
}

// teamBefore reports whether a word before a colour shows that it is a team:
// "#8 for white".
func teamBefore(s string) bool {
	switch s {
	case "against", "by", "for", "from", "vs":
		return true
	}
	return false
}

// strange reports whether a word is none that the reader knows.
func strange(ts []token, i int) bool {
	_, _, n := sideName(ts, i)
	_, begins := lex().first[ts[i].form]
	return n == 0 && ts[i].mark == 0 && ts[i].label == "" && !begins
}

// personWord reports whether a word names a player by a role or a row.
func personWord(s string) bool {
	r, ok := lex().find(s)
	if s == "back" || s == "front" { // row
		return true
	}
	if !ok {
		return false
	}
	switch r.means.class {
	case cRole, cLibero, cPerson, cRow:
		return true
	}
	return false
}
