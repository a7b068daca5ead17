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
	svLanding                 // where a server came down after a jump
	svIntrude                 // something comes into the rally
	svHinder                  // whether it hindered anybody
	svWhistle                 // an official whistles by mistake
	svFalls                   // the serve comes down on a side
	svUnsure                  // known, and not known what comes of it
	svUnder                   // a thing hangs above the server
	svTossedIt                // the toss meets that thing
	svBefore                  // the hit came before so many seconds
	svInTime                  // the hit came in time
	svStops                   // a whistle stops play, before the serve or after it
)

// serveRow is a row of the serve's lexicon. A pattern is words in base form,
// parted by blanks; "a|b" is one of several words, a field with ? at its end
// may be missing, "@S" and "@R" are the name of the serving and the receiving
// side, "@X" a side that does nothing there, "@Y" the one on whose side it is, "@V" the serving side by that name, "#" a number, "$server" one of the
// phrases of a part.
type serveRow struct {
	pattern string
	op      serveOp
	fact    play.FactID
	value   play.Value
	// calls marks the bare name of a fault: in a question it is what is asked.
	calls bool
}

// tells reports whether a row tells something of the play.
func (r *serveRow) tells() bool {
	switch r.op {
	case svIgnore, svAsk, svServer, grIgnore:
		return false
	}
	return true
}

// serveField is one place of a pattern of plain words.
type serveField struct {
	words    []string
	optional bool
}

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

// serveStep is one place of a pattern of the serve.
type serveStep struct {
	words    []string
	part     [][]serveStep // the phrases of its parts
	optional bool
}

// servePattern is a row made ready to match.
type servePattern struct {
	fields []serveStep
	row    *serveRow
	needs  [][]uint16 // words of the book: one of each list must stand ahead
}

// stepsOf makes a pattern ready.
func stepsOf(pattern string) []serveStep {
	var out []serveStep
	for f := range strings.FieldsSeq(serveMacros.Replace(pattern)) {
		head, optional := strings.CutSuffix(f, "?")
		step := serveStep{optional: optional}
		for w := range strings.SplitSeq(head, "|") {
			if name, ok := strings.CutPrefix(w, "$"); ok {
				step.part = append(step.part, servePart(name)...)
				continue
			}
			step.words = append(step.words, w)
		}
		out = append(out, step)
	}
	return out
}

// servePart is the phrases of a part; it panics where there is none of that
// name, which the first test finds.
func servePart(name string) [][]serveStep {
	for _, p := range serveParts {
		if p.name == name {
			var out [][]serveStep
			for _, s := range p.phrases {
				out = append(out, stepsOf(s))
			}
			return out
		}
	}
	panic("notation: no part of the serve's lexicon is named " + name)
}

// heads are the words that a sequence of fields can begin with, and whether it
// may be empty.
func heads(fs []serveStep) (ws []string, empty bool) {
	for _, f := range fs {
		open := f.optional
		ws = append(ws, f.words...)
		for _, p := range f.part {
			h, e := heads(p)
			ws = append(ws, h...)
			open = open || e
		}
		if !open {
			return ws, false
		}
	}
	return ws, true
}

// serveBook is the serve's lexicon made ready.
var serveBook = sync.OnceValue(func() *patternBook { return bookOf(serveTables[:]) })

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
	place    sideRef
	sAt, rAt int // where serving and receive are named
	pAt      int // and place
	number   int
}

// matcher finds rows of the serve's lexicon in tokens.
type matcher struct {
	toks  []token
	roots [][]string
	skip  []bool // words that may stand between those of a row
	book  *patternBook
	ahead []wordBits // by token
}

func newMatcher(s *scene, book *patternBook) *matcher {
	m := &matcher{toks: s.toks, roots: make([][]string, len(s.toks)), skip: make([]bool, len(s.toks)), book: book}
	for i, t := range s.toks {
		if t.mark != 0 {
			continue
		}
		m.roots[i] = s.rootsOf(i)
		if t.from != "" {
			m.roots[i] = roots(m.roots[i], t.from)
		}
		m.skip[i] = skippable[t.form] || t.form == "<label>" || serveAsides[t.form] || t.side == own || idleScenery(t.form)
	}
	m.ahead = book.ahead(m.toks, m.roots)
	return m
}

// idleScenery reports whether a word by itself is known not to matter.
func idleScenery(w string) bool {
	n, ok := lex().step(node{}, w)
	if !ok {
		return false
	}
	r, ok := lex().ends(n)
	return ok && r.means.class == cScenery
}

// at is the longest row that starts at a token.
func (m *matcher) at(at int) (serveMatch, bool) {
	var best serveMatch
	var tried []*serveRow
	try := func(ps []servePattern) {
		for i := range ps {
			p := &ps[i]
			if !met(p.needs, m.ahead[at]) || slices.Contains(tried, p.row) {
				continue
			}
			tried = append(tried, p.row)
			m.walk(p.fields, at, serveMatch{row: p.row, from: at}, func(j int, c serveMatch) {
				if c.words > best.words {
					c.to = j
					best = c
				}
			})
		}
	}
	book := m.book.starts
	for _, w := range m.roots[at] {
		try(book[w])
	}
	switch t := &m.toks[at]; {
	case t.form == "<side>":
		for _, w := range [...]string{"@S", "@R", "@X", "@Y", "@V"} {
			try(book[w])
		}
	case t.form == "<label>":
		try(book["<label>"])
	}
	if _, ok := counted0(m.toks[at].form); ok {
		try(book["#"])
	}
	return best, best.row != nil
}

// walk tries the fields from token j on, and hands every way through them on.
func (m *matcher) walk(fields []serveStep, j int, c serveMatch, done func(int, serveMatch)) {
	if len(fields) == 0 {
		done(j, c)
		return
	}
	f, rest := fields[0], fields[1:]
	if f.optional {
		m.walk(rest, j, c, done)
	}
	for _, p := range f.part {
		m.walk(p, j, c, func(j int, c serveMatch) { m.walk(rest, j, c, done) })
	}
	for len(f.words) > 0 {
		if j >= len(m.toks) || m.toks[j].mark != 0 {
			return
		}
		for _, w := range f.words {
			if d, ok := m.leaf(w, j, c); ok {
				d.words++
				m.walk(rest, j+1, d, done)
				break
			}
		}
		if c.words == 0 || !m.skip[j] {
			return
		}
		j++
	}
}

// leaf reports whether token j is the word, and notes what the row takes of it.
func (m *matcher) leaf(w string, j int, c serveMatch) (serveMatch, bool) {
	t := &m.toks[j]
	if w[0] != '@' && w[0] != '#' {
		if w == "ball" && t.art == 'a' && c.row.op == svServe {
			return c, false // "a ball" is another one
		}
		return c, m.is(j, w)
	}
	switch w {
	case "@S", "@R", "@X", "@Y":
		if t.form != "<side>" || t.side.fam == relative && w != "@X" {
			return c, false
		}
		switch w {
		case "@S":
			c.serving, c.sAt = t.side, j
		case "@R":
			c.receive, c.rAt = t.side, j
		case "@Y":
			c.place, c.pAt = t.side, j
		}
		return c, true
	case "@V":
		if t.side != (sideRef{serveRec, 0}) {
			return c, false
		}
		c.serving, c.sAt = t.side, j
		return c, true
	case "#":
		n, ok := counted0(t.form)
		c.number = n
		return c, ok
	}
	return c, false
}

func (m *matcher) is(j int, w string) bool { return slices.Contains(m.roots[j], w) }

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
