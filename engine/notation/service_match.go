package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/play"
)

// serveOp is what a row of the serve's lexicon does.
type serveOp uint8

const (
	svIgnore   serveOp = iota // read, and tells nothing that a ruling turns on
	svAsk                     // asks, or names a call that somebody made
	svServer                  // names the server
	svServe                   // the ball is served
	svTell                    // a fact of the serve
	svSeconds                 // a time after the signal, in seconds
	svNoServe                 // the server does not serve, or had not yet
	svToss                    // the ball is tossed
	svTossed                  // what became of the toss
	svReServe                 // a re-serve is given
	svAgain                   // whether the term of service had its re-serve
	svAfterHit                // what was told of the feet came after the hit
	svSetting                 // a fact of the setting
	svCount                   // so many players on the court
	svLands                   // the serve comes down
	svCross                   // the serve goes to the plane of the net
	svStrike                  // the serve touches something
	svMate                    // the serve touches a teammate of the server
	svLibero                  // a libero serves
	svInjury                  // a player is hurt
	svDispute                 // the officials make different calls
	svDecides                 // whether they could settle it
)

// serveRow is a row of the serve's lexicon. A pattern is words in base form,
// parted by blanks; "a|b" is one of several words, a field with ? at its end
// may be missing, "@S" and "@R" are the name of the serving and the receiving
// side, "#" a number.
type serveRow struct {
	pattern string
	op      serveOp
	fact    play.FactID
	value   play.Value
	// calls marks the bare name of a fault: in a question it is what is asked.
	calls bool
}

// serveMacros stand for fields that many patterns share.
var serveMacros = strings.NewReplacer(
	"{p}", "player|kid|girl|boy|guy|child|teammate|middle|setter|blocker|hitter|outside|opposite|mb|oh|people|lady|woman|man|defender|one",
	"{line}", "end|back|base|service|serving? line|endline|baseline|backline",
	"{w}", "whistle|beckon|beckoning|signal|authorization|authorisation|authorize",
	"{r1}", "r1|ref|referee|i|official|we",
	"{hit}", "contact|hit|strike|serve|swing|touch|smack",
	"{over}", "over|across|past|through",
)

// serveField is one place of a pattern.
type serveField struct {
	words    []string
	optional bool
}

// servePattern is a row made ready to match.
type servePattern struct {
	fields []serveField
	row    *serveRow
}

// servePatterns are the rows by their first word.
var servePatterns = sync.OnceValue(func() map[string][]servePattern {
	out := map[string][]servePattern{}
	for i := range serveRows {
		p := servePattern{fieldsOf(serveMacros.Replace(serveRows[i].pattern)), &serveRows[i]}
		for _, w := range firstWords(p.fields) {
			out[w] = append(out[w], p)
		}
	}
	return out
})

// fieldsOf are the places of a pattern.
func fieldsOf(pattern string) []serveField {
	var out []serveField
	for f := range strings.FieldsSeq(pattern) {
		head, optional := strings.CutSuffix(f, "?")
		out = append(out, serveField{strings.Split(head, "|"), optional})
	}
	return out
}

// firstWords are the words that can stand first in what a pattern matches.
func firstWords(fields []serveField) []string {
	var out []string
	for _, f := range fields {
		out = append(out, f.words...)
		if !f.optional {
			break
		}
	}
	return out
}

// roots puts the words that a form can be of to others: itself, and what is
// left without its ending.
func roots(out []string, s string) []string {
	out = append(out, s)
	if b, ok := irregular[s]; ok {
		return append(out, b)
	}
	switch n := len(s); {
	case n < 3:
	case s[n-1] == 's':
		if b, ok := strings.CutSuffix(s, "ies"); ok && len(b) > 1 {
			out = undoubled(append(out, b+"y"), b)
		}
		out = append(out, s[:n-1])
		if b, ok := strings.CutSuffix(s, "es"); ok && len(b) > 1 {
			out = append(out, b)
		}
	case strings.HasSuffix(s, "ed"):
		if b, ok := strings.CutSuffix(s, "ied"); ok && len(b) > 1 {
			out = append(out, b+"y")
			out = undoubled(out, b)
		}
		if b := s[:n-2]; len(b) > 1 {
			out = undoubled(append(out, b, s[:n-1]), b)
		}
	case strings.HasSuffix(s, "ing"):
		if b := s[:n-3]; len(b) > 1 {
			out = undoubled(append(out, b, b+"e"), b)
		}
	}
	return out
}

// undoubled puts a word whose last letter was doubled to others: "stepp" is of
// "step".
func undoubled(out []string, b string) []string {
	if n := len(b); n > 2 && b[n-1] == b[n-2] {
		out = append(out, b[:n-1])
	}
	return out
}

// serveMatch is a row found in the text.
type serveMatch struct {
	row      *serveRow
	from, to int
	words    int
	serving  sideRef
	receive  sideRef
	number   int
	tokens   []int // those that the pattern names
}

// matcher finds rows of the serve's lexicon in tokens.
type matcher struct {
	toks  []token
	roots [][]string
}

func newMatcher(s *scene) *matcher {
	m := &matcher{toks: s.toks, roots: make([][]string, len(s.toks))}
	for i, t := range s.toks {
		if t.mark == 0 {
			m.roots[i] = s.rootsOf(i)
			if t.from != "" {
				m.roots[i] = roots(m.roots[i], t.from)
			}
		}
	}
	return m
}

// at is the longest row that starts at token i.
func (m *matcher) at(i int) (serveMatch, bool) {
	var best serveMatch
	try := func(ps []servePattern) {
		for _, p := range ps {
			c := serveMatch{row: p.row, from: i}
			m.walk(p.fields, i, c, &best)
		}
	}
	for k, w := range m.roots[i] {
		if !slices.Contains(m.roots[i][:k], w) {
			try(servePatterns()[w])
		}
	}
	if m.toks[i].form == "<side>" {
		try(servePatterns()["@S"])
		try(servePatterns()["@R"])
	}
	if _, ok := counted0(m.toks[i].form); ok {
		try(servePatterns()["#"])
	}
	return best, best.row != nil
}

func (m *matcher) walk(fields []serveField, j int, c serveMatch, best *serveMatch) {
	if len(fields) == 0 {
		if c.words > best.words {
			c.to = j
			*best = c
		}
		return
	}
	f := fields[0]
	if f.optional {
		m.walk(fields[1:], j, c, best)
	}
	if j >= len(m.toks) || m.toks[j].mark != 0 {
		return
	}
	for _, w := range f.words {
		d := c
		switch {
		case w == "@S" || w == "@R":
			if m.toks[j].form != "<side>" {
				continue
			}
			if w == "@S" {
				d.serving = m.toks[j].side
			} else {
				d.receive = m.toks[j].side
			}
		case w == "#":
			n, ok := counted0(m.toks[j].form)
			if !ok {
				continue
			}
			d.number = n
		case !m.is(j, w):
			continue
		}
		d.words++
		d.tokens = append(c.tokens[:len(c.tokens):len(c.tokens)], j)
		m.walk(fields[1:], j+1, d, best)
		return
	}
	if c.words > 0 && (skippable[m.toks[j].form] || m.toks[j].form == "<label>") {
		m.walk(fields, j+1, c, best)
	}
}

func (m *matcher) is(j int, w string) bool {
	for _, r := range m.roots[j] {
		if r == w {
			return true
		}
	}
	return false
}

// counted0 is a number in digits or in words.
func counted0(s string) (int, bool) {
	if numeric(s) && len(s) < 4 {
		n := 0
		for _, c := range s {
			n = 10*n + int(c-'0')
		}
		return n, true
	}
	if i := slices.Index(numberWords[:], s); i >= 0 {
		return i, true
	}
	return 0, false
}

var numberWords = [...]string{"zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
