package notation

import (
	"fmt"
	"slices"
	"strings"

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

// node is one step of the tree of phrases.
type node struct {
	next  map[string]*node
	means *meaning
	entry int // the row of the lexicon that ends here, -1 for none
}

// lexicon is the table made ready: the tree of phrases and the words in it.
type lexicon struct {
	root    *node
	rows    []entry
	slab    []node          // where the nodes of the tree are
	words   map[string]bool // every word of a phrase, and every word left alone
	trade   map[string]bool // the words of the trade: those that a wrong spelling can stand for
	verbs   map[string]bool // the base forms of single verbs
	classes map[string][]string
}

var lex = build()

func build() *lexicon {
	// Room for what the tables hold today: growing by doubling cost half of the
	// time that the program takes to start.
	l := &lexicon{root: &node{entry: -1, next: make(map[string]*node, 6000)}, rows: make([]entry, 0, 8192), slab: make([]node, 0, 8192),
		words: make(map[string]bool, 8192), trade: make(map[string]bool, 2048), verbs: map[string]bool{}, classes: map[string][]string{}}
	for _, c := range wordClasses {
		for w := range strings.FieldsSeq(c.words) {
			l.classes[w] = append(l.classes[w], c.class)
			l.words[w] = true
		}
	}
	for _, t := range [][]entry{people, actions, events, balls, stated, stated2, settled, settled2, settled3, places, places2, asking, areas} {
		l.rows = append(l.rows, t...)
	}
	for _, c := range []struct {
		words string
		means meaning
	}{{fillers, filler()}, {sceneryWords, scenery()}} {
		for w := range strings.FieldsSeq(c.words) {
			l.rows = append(l.rows, entry{w, c.means})
		}
	}
	for i, e := range l.rows {
		l.add(i, e)
		if e.means.class == cFiller || e.means.class == cScenery {
			continue
		}
		for w := range strings.FieldsSeq(e.phrase) {
			l.trade[w] = true
		}
	}
	for w := range strings.FieldsSeq(fillers + " " + sceneryWords) {
		delete(l.trade, w)
	}
	l.addFacts()
	l.addScenery()
	for _, t := range sideNames {
		for w := range strings.FieldsSeq(t.words) {
			l.words[w] = true
		}
	}
	for w := range strings.FieldsSeq(skipped + " " + leftAlone) {
		l.words[w] = true
	}
	return l
}

// node is a new node, out of one slab as long as there is room in it.
func (l *lexicon) node() *node {
	if len(l.slab) == cap(l.slab) {
		return &node{entry: -1}
	}
	l.slab = append(l.slab, node{entry: -1})
	return &l.slab[len(l.slab)-1]
}

func (l *lexicon) add(row int, e entry) {
	n := l.root
	for w := range strings.FieldsSeq(e.phrase) {
		if n.next == nil {
			n.next = map[string]*node{}
		}
		m := n.next[w]
		if m == nil {
			m = l.node()
			n.next[w] = m
		}
		n = m
		if w[0] != '<' {
			l.words[w] = true
		}
	}
	if n.means != nil {
		if row >= 0 {
			panic(fmt.Sprintf("notation: the phrase %q is twice in the lexicon", e.phrase))
		}
		return // the table's own meaning goes before that of a fact's words
	}
	means := &e.means
	if row >= 0 {
		means = &l.rows[row].means
	}
	n.means, n.entry = means, row
	if means.class == cVerb && !strings.Contains(e.phrase, " ") {
		l.verbs[e.phrase] = true
	}
}

// addFacts makes a phrase of the words of every fact's value, as they are
// printed. Those that name a side, and the bare words that say more in other
// places, are not among them.
func (l *lexicon) addFacts() {
	for _, f := range play.Facts() {
		if f.About != play.OfEvent && f.About != play.OfSetting {
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
			l.add(-1, entry{words, means})
			if rest, ok := strings.CutPrefix(words, "ball "); ok { // "ball in the plane of the net"
				for _, e := range l.rows {
					if e.means == means && strings.HasPrefix(e.phrase, rest+" ") {
						l.add(-1, entry{"ball " + e.phrase, means})
					}
				}
			}
		}
	}
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
	"held": "hold", "kept": "keep", "knew": "know", "left": "leave", "made": "make", "ran": "run", "said": "say",
	"sent": "send", "shook": "shake", "slid": "slide", "stood": "stand", "struck": "strike", "swung": "swing",
	"thought": "think", "threw": "throw", "thrown": "throw", "took": "take", "taken": "take", "went": "go", "won": "win",
	"hands": "hand", "carries": "carry", "tries": "try", "legs": "leg",
}

// stem is the word of the lexicon that s is a form of.
func stem(s string) (string, bool) {
	if b, ok := irregular[s]; ok {
		return b, true
	}
	try := func(b string) bool { return len(b) > 1 && lex.words[b] }
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
