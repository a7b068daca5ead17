package notation

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// class says what a phrase does in a sentence.
type class uint8

const (
	cNone     class = iota
	cFiller         // a word that carries nothing: a preposition, an auxiliary, an adverb
	cScenery        // known not to matter
	cAround         // somebody around the court, who matters only where something happens
	cStop           // a mark: comma, full stop, question mark
	cJoin           // and, but, while: another clause of the sentence follows
	cSide           // a side as the text names it
	cRole           // setter, blocker
	cRow            // front row, back row
	cLibero         // the libero, as one who acts
	cPerson         // player, kid
	cMate           // a teammate, another player
	cSame           // the same player
	cShe            // a pronoun of one person
	cBoth           // both, the two
	cCard           // a cardinal number of people
	cBall           // the ball; it
	cVerb           // something happens
	cThing          // what can be touched: the net, an antenna, the ceiling
	cFloor          // the floor, the court
	cBody           // a part of the body
	cFact           // a value of a fact
	cDoubt          // a presumption that the words touch
	cPlace          // where the ball is, by the name of a side
	cNumber         // which of a team's contacts
	cUsed           // contacts that a team has used
	cOpen           // serve receive, a free ball: what the opening was
	cDest           // where the ball goes
	cLine           // where a foot goes: beyond the centre line
	cInto           // against, off, into: before what the ball meets
	cBy             // by: before the one who acts
	cOrder          // then, before, after, at the same time
	cNot            // not, never
	cNobody         // nobody, neither
	cFault          // the name of a fault or of a ruling
	cCall           // a call is reported
	cClaim          // somebody says, thinks, argues
	cOfficial       // R1, the line judge
	cAsk            // is that, legal, what is the call
	cPoint          // who gets the point
	cTopic          // a word of another area
	cCode           // the name of a code
	cElse           // what makes the name of a code a report or a contrast
	cEvidence       // no evidence of a fault
	cCaution        // somebody may be hurt
	cLabel          // a shirt number
	cDigits         // a bare number
	cUnknown        // nobody knows
	cAgo            // a season before the newest
)

// manner of a verb: what it takes as its object and what comes of it.
type verbKind uint8

const (
	vNone      verbKind = iota
	vContact            // plays the ball, whatever is said after it
	vTouch              // touches: the object says what
	vHit                // hits: an attack where a hitter hits the ball
	vBump               // bumps: the ball, or an opponent
	vPress              // presses together
	vHeld               // catches, carries, throws
	vDouble             // doubles
	vServe              // serves
	vUp                 // goes up, jumps: an attempt when it is to block and touches nothing
	vAttempt            // goes up to block and touches nothing
	vMiss               // swings and misses: no contact at all
	vReachOver          // reaches across the plane
	vReachUp            // reaches higher than the net
	vNet                // goes into the net
	vLine               // goes over the centre line
	vCollide            // touches an opponent
	vGrab               // takes hold of
	vLand               // lands, falls: the ball or a player
	vGo                 // goes, comes
	vSend               // sends, puts: a contact, with where the ball goes
	vWhistle            // a whistle in the rally
	vIntrude            // something comes into the rally
	vFollow             // an arm goes on over the net
)

// dest is where a ball goes.
type dest uint8

const (
	dNone    dest = iota
	dOver         // over the net
	dSide         // to a named side
	dNet          // into the net
	dOutside      // outside the antenna
	dUnder        // under the net
	dOut          // lands out
	dIn           // lands in
	dDown         // lands on a named side
	dAbove        // above a named side: where the thing it met is
	dBack         // comes back
	dPlane        // to the plane of the net
	dWide         // flies out, until it meets something
	dStay         // stays on the side that plays it
	dZone         // into a side's free zone
)

// A meaning is what a phrase of the lexicon says.
type meaning struct {
	class  class
	verb   verbKind
	dest   dest
	action play.Action
	role   play.Role
	fact   play.FactID
	value  play.Value
	part   play.Value // of a thing: the part of the net that it is
	id     string     // a fault, a topic, a code, a kind of order
	n      int
}

// An entry is a row of the lexicon: a phrase, in base forms and without
// articles, and its meaning. A word in angle brackets is a class of words, or
// a side.
type entry struct {
	phrase string
	means  meaning
}

func filler() meaning                          { return meaning{class: cFiller} }
func scenery() meaning                         { return meaning{class: cScenery} }
func of(c class) meaning                       { return meaning{class: c} }
func named(c class, id string) meaning         { return meaning{class: c, id: id} }
func counted(c class, n int) meaning           { return meaning{class: c, n: n} }
func role(r play.Role) meaning                 { return meaning{class: cRole, role: r} }
func rowIs(v play.Value) meaning               { return meaning{class: cRow, fact: play.Row, value: v} }
func does(v verbKind, a play.Action) meaning   { return meaning{class: cVerb, verb: v, action: a} }
func fact(f play.FactID, v play.Value) meaning { return meaning{class: cFact, fact: f, value: v} }
func doubt(f play.FactID) meaning              { return meaning{class: cDoubt, fact: f} }
func body(v play.Value) meaning                { return meaning{class: cBody, value: v} }
func thing(struck, part play.Value) meaning    { return meaning{class: cThing, value: struck, part: part} }
func goesTo(d dest) meaning                    { return meaning{class: cDest, dest: d} }
func inCode(c code.Code) meaning               { return meaning{class: cCode, id: string(c)} }
func where(v play.Value, whole string) meaning { return meaning{class: cPlace, value: v, id: whole} }

func lineAt(part, extent play.Value) meaning {
	return meaning{class: cLine, part: part, value: extent}
}

// doesWith is a contact that tells a fact of itself.
func doesWith(a play.Action, f play.FactID, v play.Value) meaning {
	return meaning{class: cVerb, verb: vContact, action: a, fact: f, value: v}
}

// ref is one phrase of the lexicon: of the table, a row; or of the words of a
// fact's value, which no table has.
type ref struct {
	phrase string
	means  *meaning
	row    bool
}

// node is a step on the way through the phrases: those between lo and hi begin
// with the same words, at bytes of them.
type node struct{ lo, hi, at int32 }

// lexicon is the tables made ready. Its phrases are sorted, so that those that
// begin with the same words stand together: a blank goes before every letter.
type lexicon struct {
	refs    []ref
	first   map[string]node // by the first word of a phrase
	words   map[string]bool // every word of a phrase, and every word left alone
	classes map[string][]string
}

// lex is the lexicon. It is made ready beside the start of the program: other
// packages take as long to start.
var lex = sync.OnceValue(build)

func init() { go lex() }

// tables are the tables of the lexicon, each sorted by phrase.
var tables = [...]*[]entry{&people, &actions, &events, &balls, &stated, &stated2, &settled, &settled2, &settled3, &stories, &rally, &rally2, &rally3, &rally4, &rally5, &places, &places2, &asking, &areas}

func build() *lexicon {
	l := &lexicon{classes: map[string][]string{}}
	for _, c := range wordClasses {
		for w := range strings.FieldsSeq(c.words) {
			l.classes[w] = append(l.classes[w], c.class)
		}
	}
	n := 0
	for _, t := range tables {
		n += len(*t)
	}
	refs := make([]ref, 0, n+1024)
	for _, t := range tables {
		for i := range *t {
			e := &(*t)[i]
			refs = append(refs, ref{e.phrase, &e.means, true})
		}
	}
	for _, c := range []struct {
		words string
		means meaning
	}{{fillers, filler()}, {sceneryWords, scenery()}} {
		for w := range strings.FieldsSeq(c.words) {
			refs = append(refs, ref{w, &c.means, true})
		}
	}
	slices.SortFunc(refs, func(a, b ref) int { return strings.Compare(a.phrase, b.phrase) })
	for i := 1; i < len(refs); i++ {
		if refs[i].phrase == refs[i-1].phrase {
			panic(fmt.Sprintf("notation: the phrase %q is twice in the lexicon", refs[i].phrase))
		}
	}
	// What no table says: a table's own meaning goes before it.
	l.refs = refs
	l.refs = merge(refs, append(l.factPhrases(), sceneryPhrases()...))
	l.ready()
	return l
}

// merge puts further phrases among sorted ones. Of two that are the same the
// one that is there already stays.
func merge(refs, more []ref) []ref {
	slices.SortStableFunc(more, func(a, b ref) int { return strings.Compare(a.phrase, b.phrase) })
	out := make([]ref, 0, len(refs)+len(more))
	for len(refs) > 0 || len(more) > 0 {
		switch {
		case len(more) == 0:
			return append(out, refs...)
		case len(refs) > 0 && refs[0].phrase <= more[0].phrase:
			out, refs = append(out, refs[0]), refs[1:]
		case len(out) > 0 && out[len(out)-1].phrase == more[0].phrase:
			more = more[1:]
		default:
			out, more = append(out, more[0]), more[1:]
		}
	}
	return out
}

// ready finds where the phrases of each first word are, and all words.
func (l *lexicon) ready() {
	l.first = make(map[string]node, len(l.refs)/2)
	l.words = make(map[string]bool, len(l.refs))
	for lo := 0; lo < len(l.refs); {
		w, _, _ := strings.Cut(l.refs[lo].phrase, " ")
		hi := lo + 1
		for hi < len(l.refs) && begins(l.refs[hi].phrase, w) {
			hi++
		}
		l.first[w] = node{int32(lo), int32(hi), int32(len(w))}
		for i := lo; i < hi; i++ {
			for v := range strings.FieldsSeq(l.refs[i].phrase[len(w):]) {
				if v[0] != '<' {
					l.words[v] = true
				}
			}
		}
		if w[0] != '<' {
			l.words[w] = true
		}
		lo = hi
	}
	for _, t := range sideNames {
		for w := range strings.FieldsSeq(t.words) {
			l.words[w] = true
		}
	}
	for _, c := range wordClasses {
		for w := range strings.FieldsSeq(c.words) {
			l.words[w] = true
		}
	}
	for _, s := range [...]string{skipped, leftAlone} {
		for w := range strings.FieldsSeq(s) {
			l.words[w] = true
		}
	}
	for w := range deadVocabulary() {
		l.words[w] = true
	}
}

// begins reports whether a phrase is a word, or begins with it.
func begins(phrase, w string) bool {
	return strings.HasPrefix(phrase, w) && (len(phrase) == len(w) || phrase[len(w)] == ' ')
}

// step goes on from the phrases that begin with some words to those that have
// w after them. Before the first word n is the zero node.
func (l *lexicon) step(n node, w string) (node, bool) {
	if n.at == 0 {
		m, ok := l.first[w]
		return m, ok
	}
	lo, hi, at := int(n.lo), int(n.hi), int(n.at)
	if len(l.refs[lo].phrase) == at {
		lo++
	}
	rest := func(i int) string { return l.refs[i].phrase[at+1:] }
	for a, b := lo, hi; ; {
		if a == b {
			lo = a
			break
		}
		if m := (a + b) / 2; rest(m) < w {
			a = m + 1
		} else {
			b = m
		}
	}
	end := lo
	for end < hi && begins(rest(end), w) {
		end++
	}
	return node{int32(lo), int32(end), int32(at + 1 + len(w))}, end > lo
}

// means is the phrase that ends at a node; false where none does.
func (l *lexicon) ends(n node) (ref, bool) {
	if n.at == 0 || len(l.refs[n.lo].phrase) != int(n.at) {
		return ref{}, false
	}
	return l.refs[n.lo], true
}

// find is the phrase as it stands in the lexicon.
func (l *lexicon) find(phrase string) (ref, bool) {
	i, ok := slices.BinarySearchFunc(l.refs, phrase, func(r ref, s string) int { return strings.Compare(r.phrase, s) })
	if !ok {
		return ref{}, false
	}
	return l.refs[i], true
}

// verb reports whether a word is the base form of a single verb.
func (l *lexicon) verb(w string) bool {
	n, ok := l.first[w]
	if !ok {
		return false
	}
	r, ok := l.ends(n)
	return ok && r.means.class == cVerb
}

// trade are the words of the trade: those that a wrong spelling can stand for.
var trade = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, r := range lex().refs {
		if c := r.means.class; !r.row || c == cFiller || c == cScenery || c == cAround {
			continue
		}
		for w := range strings.FieldsSeq(r.phrase) {
			out[w] = true
		}
	}
	for w := range strings.FieldsSeq(fillers + " " + sceneryWords) {
		delete(out, w)
	}
	return out
})

// factPhrases makes a phrase of the words of every fact's value, as they are
// printed. Those that name a side, and the bare words that say more in other
// places, are not among them.
func (l *lexicon) factPhrases() []ref {
	var out []ref
	for _, f := range play.Facts() {
		if f.About != play.OfEvent && f.About != play.OfSetting || ofService(f) {
			continue
		}
		for _, c := range f.Values {
			if strings.Contains(c.Words, "{") || !strings.Contains(c.Words, " ") {
				continue
			}
			if f.ID == play.Extent && c.Value == play.WhollyOver {
				continue // a way over the line, in words of a class
			}
			if slices.Contains([]play.FactID{play.Struck, play.How, play.Part, play.What, play.BodyPart}, f.ID) {
				continue
			}
			var ws []string
			for _, t := range plain(c.Words) {
				ws = append(ws, t.form)
			}
			words, means := strings.Join(ws, " "), fact(f.ID, c.Value)
			out = append(out, ref{words, &means, false})
			rest, ok := strings.CutPrefix(words, "ball ")
			if !ok {
				continue
			}
			// "ball in the plane of the net"
			i, _ := slices.BinarySearchFunc(l.refs, rest+" ", func(r ref, s string) int { return strings.Compare(r.phrase, s) })
			for ; i < len(l.refs) && strings.HasPrefix(l.refs[i].phrase, rest+" "); i++ {
				if *l.refs[i].means == means {
					out = append(out, ref{"ball " + l.refs[i].phrase, &means, false})
				}
			}
		}
	}
	return out
}

// ofService reports whether a fact is one of the service or of a stop of play:
// its words are read with the serve's own, not among those of a rally.
func ofService(f play.Fact) bool {
	switch f.ID {
	case play.Deliberate, play.Footing, play.Gear, play.Juniors, play.Stuck:
		return true
	}
	return slices.ContainsFunc(f.Kinds, func(k play.Kind) bool {
		return k == play.Serve || k == play.Toss || k == play.Dispute || k == play.Injury
	})
}

// plain makes tokens of the words of a fact, which name no side.
func plain(words string) []token {
	var out []token
	for _, w := range split(words) {
		parts, _ := expand(w.raw)
		for _, s := range parts {
			if article(s) == 0 && w.mark == 0 {
				out = append(out, token{form: s})
			}
		}
	}
	return mergeCompounds(out)
}

// irregular are the forms of words that no ending explains. Sorted by form.
var irregular = map[string]string{
	"began": "begin", "blew": "blow", "blown": "blow", "broke": "break", "broken": "break", "brought": "bring",
	"came": "come", "caught": "catch", "dug": "dig", "dove": "dive", "drew": "draw", "driven": "drive", "drove": "drive",
	"fell": "fall", "fallen": "fall", "feet": "foot", "flew": "fly", "flies": "fly", "flown": "fly", "gave": "give", "goes": "go", "gone": "go", "got": "get",
	"held": "hold", "kept": "keep", "lying": "lie", "knew": "know", "left": "leave", "made": "make", "ran": "run", "said": "say",
	"sent": "send", "shook": "shake", "slid": "slide", "stood": "stand", "struck": "strike", "swung": "swing",
	"thought": "think", "threw": "throw", "thrown": "throw", "took": "take", "taken": "take", "went": "go", "won": "win",
	"stuck": "stick", "shot": "shoot", "hung": "hang", "slung": "sling", "flung": "fling", "sprang": "spring", "spun": "spin", "rose": "rise", "sat": "sit", "tore": "tear", "wound": "wind", "swept": "sweep", "leapt": "leap", "crept": "creep",
	"hands": "hand", "carries": "carry", "tries": "try", "legs": "leg",
}

// stem is the word of the lexicon that s is a form of.
func stem(s string) (string, bool) {
	if b, ok := irregular[s]; ok {
		return b, true
	}
	try := func(b string) bool { return len(b) > 1 && lex().words[b] }
	switch {
	case strings.HasSuffix(s, "ies") && try(s[:len(s)-3]+"y"):
		return s[:len(s)-3] + "y", true
	case strings.HasSuffix(s, "s") && !strings.HasSuffix(s, "ss") && len(s) > 3 && try(s[:len(s)-1]):
		return s[:len(s)-1], true
	case strings.HasSuffix(s, "es") && try(s[:len(s)-2]):
		return s[:len(s)-2], true
	}
	for _, end := range []string{"ed", "ing"} {
		b, ok := strings.CutSuffix(s, end)
		if !ok || len(b) < 2 {
			continue
		}
		switch {
		case try(b) && b != "be" && b != "go" || s == "going" || s == "being":
			return b, true
		case try(b + "e"):
			return b + "e", true
		case len(b) > 3 && b[len(b)-1] == b[len(b)-2] && try(b[:len(b)-1]):
			return b[:len(b)-1], true
		case strings.HasSuffix(b, "i") && try(b[:len(b)-1]+"y"):
			return b[:len(b)-1] + "y", true
		}
	}
	return "", false
}
