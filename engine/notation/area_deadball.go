package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// A deadPhrase is a row of the lexicon of dead-ball acts. Alternatives of a
// word are parted by a stroke; a word in brackets may be missing; <n> is a
// number. Says lists what the phrase tells, parted by spaces; what the kind of
// act cannot have of it is passed over:
//
//	request, done   a verb: something is asked for, or was made
//	thing:KIND      what is asked for or made
//	act:KIND        the act itself, as what the question is about
//	made:KIND       an act that happened, which yields to one asked about
//	again           one more
//	same            what was named last
//	hurt, halt      somebody is hurt; play is stopped
//	blast           a ball is driven hard
//	temper          it was done in anger, or nearly hit somebody
//	whistled        the service was whistled for
//	person:WHO      who acts
//	card:CARD       a card that somebody had before
//	set             the number of a set
//	FACT=VALUE      a fact of the act
//	FACT?           a fact whose presumption the words touch
//	not             a negation
//	quiet           nothing that matters here
type deadPhrase struct{ phrase, says string }

// deadNode is one step of the tree of dead-ball phrases.
type deadNode struct {
	next map[string]*deadNode
	says []string
}

// deadTree is the lexicon made ready.
var deadTree = sync.OnceValue(func() *deadNode {
	root := &deadNode{}
	for _, f := range deadball.Facts() { // as they are printed
		for _, c := range f.Values {
			var ws []string
			for _, t := range plain(c.Words) {
				ws = append(ws, t.form)
			}
			root.add(ws, string(f.ID)+"="+string(c.Value))
		}
	}
	var rows []deadPhrase
	for _, t := range deadTables {
		rows = append(rows, t...)
	}
	// The row that stands for fewer phrases goes before another.
	all := make([][][]string, len(rows))
	order := make([]int, len(rows))
	for i, p := range rows {
		all[i], order[i] = alternatives(p.phrase), i
	}
	slices.SortStableFunc(order, func(a, b int) int { return len(all[b]) - len(all[a]) })
	for _, i := range order {
		for _, ws := range all[i] {
			root.add(ws, rows[i].says)
		}
	}
	return root
})

func (n *deadNode) add(words []string, says string) {
	for _, w := range words {
		if n.next == nil {
			n.next = map[string]*deadNode{}
		}
		if n.next[w] == nil {
			n.next[w] = &deadNode{}
		}
		n = n.next[w]
	}
	n.says = strings.Fields(says)
}

// alternatives are the phrases that a row of the table stands for.
func alternatives(phrase string) [][]string {
	out := [][]string{nil}
	for w := range strings.FieldsSeq(phrase) {
		may := strings.HasPrefix(w, "[")
		w = strings.Trim(w, "[]")
		var next [][]string
		for _, head := range out {
			if may {
				next = append(next, head)
			}
			for v := range strings.SplitSeq(w, "/") {
				next = append(next, append(slices.Clip(head), v))
			}
		}
		out = next
	}
	return out
}

// A sign is one phrase found in a text: what it tells, and where.
type sign struct {
	says     string
	from, to int // tokens
	clause   int
}

// A mention is an act that the text names.
type mention struct {
	kind   deadball.Kind
	aspect int // how plainly it is what the question is about
	again  bool
	at     int // the token
	clause int
}

// aspects of a mention, the plainest last.
const (
	aspectBare = iota
	aspectMade
	aspectAsked
)

// deadReader makes an act of the words.
type deadReader struct {
	s     *scene
	tree  *deadNode // the phrases
	toks  []token
	in    []int // the clause of each token
	signs []sign
	m     mention
	own   sideRef // the side whose act it is, as the words name it
	act   *deadball.Act
	row   deadball.KindRow
	used  []bool
	scene []bool // tokens that are only scenery
}

// deadForms are forms that the reader takes for the word of the phrases.
var deadForms = map[string]string{"am": "be", "are": "be", "bled": "bleed", "blew": "blow", "broke": "break", "did": "do", "does": "do", "fell": "fall", "fought": "fight",
	"gets": "get", "got": "get", "gotten": "get", "had": "have", "has": "have", "having": "have", "is": "be", "made": "make", "swore": "swear", "was": "be", "were": "be"}

// timeOut reports whether a token is the short word for a time-out, which only
// capital letters show.
func timeOut(t *token) bool { return t.raw == "TO" || t.raw == "TOs" || t.raw == "T.O" }

func deadPrint(text string) (play.Spoken, bool) {
	a, ok := deadball.Parse(text)
	return a, ok
}

func newDeadReader(s *scene) *deadReader {
	n := len(s.toks)
	r := &deadReader{s: s, tree: deadTree(), toks: slices.Clone(s.toks), in: make([]int, n), used: make([]bool, n), scene: make([]bool, n)}
	clause := 0
	for i := range r.toks {
		t := &r.toks[i]
		if t.mark != 0 || t.form == "but" || t.form == "then" || t.form == "and" {
			clause++
		}
		r.in[i] = clause
		if timeOut(t) {
			t.form, t.base = "timeout", ""
		}
		if b, ok := deadForms[t.form]; ok {
			t.base = b
		}
		if t.this && t.form == "set" {
			t.form, t.base = "<this>", "" // this set
		}
	}
	return r
}

func readDeadBall(s *scene) (heard, bool) {
	r := newDeadReader(s)
	r.find()
	ms := r.mentions()
	m, ok := r.choose(ms)
	if !ok {
		return heard{}, false
	}
	r.act = deadball.New(m.kind, play.A)
	r.row, _ = deadball.KindByID(m.kind)
	r.m = m
	r.sides()
	r.facts()
	r.history(ms)
	r.rest()
	// An answer that turns on what was presumed is withheld where a word was not
	// read; any other needs all words.
	left, foreign := r.left()
	request := slices.Contains([]deadball.Kind{deadball.LineUpCheck, deadball.Substitution, deadball.TimeOut}, m.kind)
	if r.act.Check() != nil || foreign || left > 4 || left > 0 && !request {
		return heard{}, false
	}
	return heard{subject: r.act, used: r.used, scenery: r.scene, sure: left == 0 || r.contacts() == 0}, true
}

// left counts the words that were not understood, and reports whether one of
// them is foreign to a dead ball: a negation, a play of the ball, a part of the
// court. Such a text is not read as an act, however much of it was.
func (r *deadReader) left() (n int, foreign bool) {
	for _, a := range r.s.atoms {
		for i := a.from; i < a.to; i++ {
			if r.used[i] || r.scene[i] || r.toks[i].mark != 0 {
				continue
			}
			n++
			switch a.class {
			case cVerb, cThing, cFloor, cBody, cFact, cDest, cInto, cLine, cNumber, cUsed, cOpen, cNot, cNobody, cPlace, cRow, cTopic, cLibero, cRole:
				foreign = true
			}
		}
	}
	return n, foreign
}

// contacts counts the plays of the ball that the words were taken for.
func (r *deadReader) contacts() int {
	n := 0
	for _, e := range r.s.evs {
		if e.Kind == play.Contact && e.Action != play.Touch || e.Kind == play.NetTouch || e.Kind == play.Line {
			n++
		}
	}
	return n
}

// find finds the signs, the longest phrase first.
func (r *deadReader) find() {
	for i := 0; i < len(r.toks); {
		n, to := r.longest(i)
		if n == nil {
			i++
			continue
		}
		for _, says := range n.says {
			r.signs = append(r.signs, sign{says, i, to, r.in[i]})
		}
		i = to
	}
}

// longest is the longest phrase that starts at a token. Articles, names of
// sides and a few empty words may stand between its words.
func (r *deadReader) longest(i int) (*deadNode, int) {
	var best *deadNode
	end := i
	var walk func(n *deadNode, j int)
	step := func(m *deadNode, j int) {
		if m == nil {
			return
		}
		if m.says != nil && j > end {
			best, end = m, j
		}
		walk(m, j)
	}
	walk = func(n *deadNode, j int) {
		if j >= len(r.toks) || r.toks[j].mark != 0 || n.next == nil {
			return
		}
		t := r.toks[j]
		step(n.next[t.form], j+1)
		if t.base != "" {
			step(n.next[t.base], j+1)
		}
		if numeric(t.form) || t.form == "<label>" {
			step(n.next["<n>"], j+1)
		}
		if j > i && (skippable[t.form] || t.form == "<side>") {
			walk(n, j+1)
		}
	}
	walk(r.tree, i)
	return best, end
}
