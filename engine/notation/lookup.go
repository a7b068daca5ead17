package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/play"
)

// An idea is a phrase of a question about the rules, and the ideas that it can
// stand for, of which a question takes the one that its entry names.
type idea struct{ phrase, ids string }

// lookupFillers carry nothing in a question about the rules. The list is short
// on purpose: a word that is not on it, nor an idea of the entry, makes the
// question another one.
const lookupFillers = "about actually also am and anyone are as asking at be been being book but by current currently " +
	"do does doing done each exactly for from get give had has have he her him his how i if in is " +
	"it its just know me my need of official officially on our per please question quick " +
	"really remind rule rulebook say set she so team tell that the their them then there they thing " +
	"this to tonight us was we were what when where which who will with would you your"

// ideasOf finds the rows of a first word, the longest phrases first.
var ideasOf = sync.OnceValue(func() map[string][][]string {
	m := map[string][][]string{}
	for _, i := range ideas {
		ws := strings.Fields(i.phrase)
		m[ws[0]] = append(m[ws[0]], append(ws, i.ids))
	}
	for _, rows := range m {
		slices.SortStableFunc(rows, func(a, b []string) int { return len(b) - len(a) })
	}
	return m
})

// lookupWords are the words of look-ups, which no spelling corrects.
var lookupWords = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for _, i := range ideas {
		for w := range strings.FieldsSeq(i.phrase) {
			m[w] = true
		}
	}
	return m
})

var lookupFiller = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(lookupFillers) {
		m[w] = true
	}
	return m
})

// digits is how many digits a word begins with.
func digits(w string) int {
	n := 0
	for digitAt(w, n) {
		n++
	}
	return n
}

// secondsWord reports whether a word is a time: "30s", "15sec".
func secondsWord(w string) bool {
	n := digits(w)
	switch w[n:] {
	case "s", "sec", "secs", "seconds":
		return n > 0
	}
	return false
}

// ageWord reports whether a word is an age group: "14s", "u16", "12u".
func ageWord(w string) bool {
	w = strings.TrimPrefix(w, "u")
	if len(w) < 2 || w[0] != '1' || w[1] < '0' || w[1] > '8' {
		return false
	}
	switch w[2:] {
	case "", "s", "u", "us":
		return true
	}
	return false
}

// scoreWord reports whether a word is a number or a score: "25", "24-22".
func scoreWord(w string) bool {
	n := digits(w)
	return n > 0 && (n == len(w) || (w[n] == '-' || w[n] == ':') && numeric(w[n+1:]))
}

// point is one step of a question: the ideas that its words can stand for.
type point struct {
	ids    []string
	filler bool // its words may also carry nothing
}

// readLookup reads a question about the rules themselves. Every word must be
// an idea of one entry, or carry nothing; else there is no reading.
func readLookup(s *scene) (heard, bool) {
	points, ok := s.points()
	if !ok {
		return heard{}, false
	}
	var best lookup.Query
	most, several := 0, false
	for _, e := range lookup.Entries() {
		n, of := 0, ""
		for _, w := range e.Words {
			if k, o, ok := matches(w, points); ok && k > n {
				n, of = k, o
			}
		}
		if n == 0 {
			continue
		}
		q := lookup.Query{Entry: e.ID, Of: of}
		switch {
		case q.Check() != nil:
		case n > most:
			best, most, several = q, n, false
		case n == most:
			several = true
		}
	}
	if most == 0 || several {
		return heard{}, false
	}
	q := s.matchFacts(&best, points)
	h := heard{subject: q, sure: true, used: make([]bool, len(s.toks)), scenery: make([]bool, len(s.toks))}
	for i := range h.used {
		h.used[i] = true
	}
	return h, true
}

// matchFacts puts the facts of the match into a query.
func (s *scene) matchFacts(q *lookup.Query, points []point) *lookup.Query {
	for _, t := range []struct {
		idea string
		fact play.FactID
		is   play.Value
	}{{"juniors", lookup.AgeGroup, lookup.Juniors}, {"older", lookup.AgeGroup, lookup.Older}, {"women", lookup.NetFor, lookup.WomenNet}, {"men", lookup.NetFor, lookup.MenNet}} {
		for _, p := range points {
			if slices.Contains(p.ids, t.idea) {
				q = q.Tell(play.Key{Fact: t.fact}, t.is).(*lookup.Query)
			}
		}
	}
	return q
}

// points reads the words of the text as ideas; false where one of them is no
// word of a question about the rules.
func (s *scene) points() ([]point, bool) {
	var out []point
	codes := map[int]bool{}
	for _, a := range s.atoms {
		if a.class == cCode {
			for i := a.from; i < a.to; i++ {
				codes[i] = true
			}
		}
	}
	for i := 0; i < len(s.toks); {
		t := s.toks[i]
		if n := s.chat(i); n > 0 { // "Hey all, ..."
			i += n
			continue
		}
		if t.mark != 0 || codes[i] || s.season != "" && t.form == s.season {
			i++
			continue
		}
		if n := s.toldNumber(i); n > 0 { // "other ref said 30 sec"
			i += n
			continue
		}
		if n := s.codeWords(i); n > 0 {
			i += n
			continue
		}
		p, n := s.point(i)
		if n == 0 {
			return nil, false
		}
		if r := s.overlapOf(i + n); r != "" && slices.Contains(p.ids, "thing=out-of-position") {
			p.ids = []string{"thing=" + r}
		}
		if p.ids != nil {
			out = append(out, p)
		}
		i += n
	}
	return out, true
}

// point reads the phrase that begins at a token, and how many tokens it takes;
// none where nothing is known of it.
func (s *scene) point(i int) (point, int) {
	t := s.toks[i]
	ruled := i > 0 && s.toks[i-1].form == "rule"
	switch {
	case lookup.IsNumber(t.form) && (ruled || strings.Count(t.form, "-")+strings.Count(t.form, ".") > 1):
		return point{ids: []string{"rule-number=" + t.form}}, 1
	case ageWord(t.form) && !numeric(t.form):
		id := "older"
		if strings.Trim(t.form, "us") <= "14" {
			id = "juniors"
		}
		return point{ids: []string{id}}, 1
	case secondsWord(t.form):
		return point{ids: []string{"number"}, filler: false}, 1
	}
	var p point
	long := 0
	for _, row := range s.rowsAt(i) {
		if n := len(row) - 1; n >= long && s.says(i, row[:n]) {
			long = n
			p.ids = append(p.ids, strings.Fields(row[n])...)
			p.filler = n == 1 && lookupFiller()[t.form]
		}
	}
	if long > 0 {
		if scoreWord(t.form) {
			p.ids = append(p.ids, "number")
		}
		return p, long
	}
	switch {
	case scoreWord(t.form):
		if i+1 < len(s.toks) && s.toks[i+1].form == "s" {
			return point{ids: []string{"number"}}, 2
		}
		return point{ids: []string{"number"}}, 1
	case small(t.form) != "" || cardinal(t.form):
		return point{ids: []string{"number"}}, 1
	case t.form == "<side>", lookupFiller()[t.form]:
		return point{}, 1
	}
	return point{}, 0
}

// chat is how many tokens of a clause that begins at i say nothing but what
// never matters; none where one of them does, or where it is no beginning.
func (s *scene) chat(i int) int {
	if i > 0 && s.toks[i-1].mark == 0 {
		return 0
	}
	j := i
	for ; j < len(s.toks) && s.toks[j].mark == 0; j++ {
		k := s.atomOf(j)
		if k < 0 || s.atoms[k].class != cScenery && !lookupFiller()[s.toks[j].form] {
			return 0
		}
		if p, n := s.point(j); n > 1 || len(p.ids) > 0 && !lookupFiller()[s.toks[j].form] {
			return 0 // it can be an idea of a question
		}
	}
	return j - i
}

// atomOf is the atom that covers a token, -1 for none.
func (s *scene) atomOf(j int) int {
	for k := range s.atoms {
		if a := &s.atoms[k]; a.from <= j && j < a.to {
			return k
		}
	}
	return -1
}

// codeNames are what the codes go by in a look-up.
var codeNames = [][]string{{"high", "school"}, {"college"}, {"collegiate"}, {"club"}, {"international"}, {"fivb"}, {"scholastic"}, {"varsity"}, {"jv"}}

// codeWords is how many tokens from i on name a code.
func (s *scene) codeWords(i int) int {
	for _, ws := range codeNames {
		if s.says(i, ws) {
			return len(ws)
		}
	}
	return 0
}

// overlapOf is whose overlap it is, where the words from i on say so by the
// serve: "of the serving team", "on the receivers".
func (s *scene) overlapOf(i int) string {
	for ; i < len(s.toks) && s.toks[i].mark == 0; i++ {
		switch t := s.toks[i]; {
		case t.form == "of", t.form == "on", t.form == "by", t.form == "in":
		case t.side == sideRef{serveRec, 0}:
			return "serving-overlap"
		case t.side == sideRef{serveRec, 1}:
			return "receiving-overlap"
		default:
			return ""
		}
	}
	return ""
}

// cardinal reports whether a word is a small number.
func cardinal(w string) bool {
	return slices.Contains([]string{"three", "four", "five", "six", "seven", "eight", "nine", "ten"}, w)
}

func (s *scene) rowsAt(i int) [][]string {
	t := s.toks[i]
	var out [][]string
	ws := forms(t)
	for k, w := range ws {
		if !slices.Contains(ws[:k], w) {
			out = append(out, ideasOf()[w]...)
		}
	}
	slices.SortStableFunc(out, func(a, b []string) int { return len(b) - len(a) })
	return out
}

// says reports whether the tokens from i on are the words of a phrase.
func (s *scene) says(i int, ws []string) bool {
	if i+len(ws) > len(s.toks) {
		return false
	}
	for k, w := range ws {
		if t := &s.toks[i+k]; t.mark != 0 || !isForm(t, w) {
			return false
		}
	}
	return true
}

// forms are the words that a token can be in a phrase.
func forms(t token) []string {
	out := []string{t.form}
	if t.base != "" {
		out = append(out, t.base)
	}
	for _, end := range []string{"s", "es", "ed", "ing"} {
		if b, ok := strings.CutSuffix(t.form, end); ok && len(b) > 2 {
			out = append(out, b)
		}
	}
	switch t.form {
	case "is", "are", "was", "were":
		out = append(out, "be")
	}
	return out
}

// isForm reports whether a word of a phrase can be that of a token.
func isForm(t *token, w string) bool {
	if w == t.form || w == t.base && w != "" {
		return true
	}
	if b, ok := strings.CutPrefix(t.form, w); ok && len(w) > 2 && (b == "s" || b == "es" || b == "ed" || b == "ing") {
		return true
	}
	switch t.form {
	case "is", "are", "was", "were":
		return w == "be"
	}
	return false
}

// toldNumber is how many tokens from i on are somebody's claim of a number or of
// a yes or no: the table answers, not the claim. It ends with its clause.
func (s *scene) toldNumber(i int) int {
	j := i
	for j < len(s.toks) && slices.Contains([]string{"other", "ref", "refs", "referee", "partner", "coach", "coaches", "someone", "somebody", "my", "<side>", "assignor", "he", "she", "they"}, s.toks[j].form) {
		j++
	}
	if j == i || j >= len(s.toks) || !slices.Contains([]string{"said", "says", "thinks", "thought", "claims", "told"}, s.toks[j].form) && s.toks[j].base != "say" {
		return 0
	}
	said := false
	for j++; j < len(s.toks) && s.toks[j].mark == 0; j++ {
		f := s.toks[j].form
		switch {
		case scoreWord(f), secondsWord(f), cardinal(f), f == "yes", f == "no":
			said = true
		case slices.Contains([]string{"sec", "secs", "seconds", "second", "minute", "minutes", "s", "it", "is", "was", "me", "us", "only", "just", "one", "two"}, f):
		default:
			return 0
		}
	}
	if !said {
		return 0
	}
	return j - i
}

// matches reports whether a question asks what a row of an entry's words says:
// how many ideas it had to have, and what the entry is asked of. Each point
// stands for one idea.
func matches(words string, points []point) (n int, of string, ok bool) {
	words, ordered := strings.CutPrefix(words, "< ")
	need, may, _ := strings.Cut(words, "|")
	needs, mays := strings.Fields(need), append(strings.Fields(may), "set", "team", "match", "rule", "what-is", "during")
	taken := make([]bool, len(points))
	last := -1
	for _, id := range needs {
		at := -1
		for i, p := range points {
			if taken[i] || ordered && i < last {
				continue
			}
			if got, is := stands(id, p); is {
				at = i
				if got != "" {
					of = got
				}
				break
			}
		}
		if at < 0 {
			return 0, "", false
		}
		taken[at], last = true, at
	}
	for i, p := range points {
		if taken[i] || p.filler {
			continue
		}
		if !slices.ContainsFunc(append(mays, needs...), func(id string) bool { _, is := stands(id, p); return is }) {
			return 0, "", false
		}
	}
	return len(needs), of, true
}

// stands reports whether a point can stand for an idea of a row. An idea
// "thing=*" takes what the entry is asked of from the point, "player=player"
// brings it along.
func stands(id string, p point) (of string, ok bool) {
	name, with, has := strings.Cut(id, "=")
	for _, have := range p.ids {
		kind, what, asked := strings.Cut(have, "=")
		switch {
		case kind != name:
		case !has, with == "*" && asked:
			return what, true
		case !asked:
			return with, true
		}
	}
	return "", false
}
