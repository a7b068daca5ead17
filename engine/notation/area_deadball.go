package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

func init() {
	areaReaders = append(areaReaders, area{name: "dead ball", read: readDeadBall, reprint: deadPrint})
}

// A deadPhrase is a row of the lexicon of dead-ball acts. Alternatives of a
// word are parted by a stroke; a word in brackets may be missing. Says lists
// what the phrase tells, parted by spaces:
//
//	request, done   a verb: something is asked for, or was made
//	thing:KIND      what is asked for or made
//	act:KIND        the act itself
//	past:KIND       an act before the one asked about
//	again           one more
//	person:WHO      who acts
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
	for _, t := range deadTables {
		for _, p := range t {
			for _, ws := range alternatives(p.phrase) {
				root.add(ws, p.says)
			}
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
	aspectPast
	aspectMade
	aspectAsked
)

// deadReader makes an act of the words.
type deadReader struct {
	s     *scene
	toks  []token
	in    []int // the clause of each token
	signs []sign
	used  []bool
	scene []bool // tokens that are only scenery
}

func deadPrint(text string) (play.Spoken, bool) {
	a, ok := deadball.Parse(text)
	return a, ok
}

func newDeadReader(s *scene) *deadReader {
	n := len(s.toks)
	r := &deadReader{s: s, toks: slices.Clone(s.toks), in: make([]int, n), used: make([]bool, n), scene: make([]bool, n)}
	clause := 0
	for i := range r.toks {
		t := &r.toks[i]
		if t.mark != 0 || t.form == "but" || t.form == "then" || t.form == "and" {
			clause++
		}
		r.in[i] = clause
		if t.raw == "TO" || t.raw == "TOs" || t.raw == "T.O" {
			t.form, t.base = "timeout", ""
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
	a := deadball.New(m.kind, play.A)
	r.sides(a, m)
	r.history(a, m, ms)
	r.facts(a, m)
	r.rest()
	if a.Check() != nil {
		return heard{}, false
	}
	return heard{subject: a, used: r.used, scenery: r.scene, sure: m.aspect >= aspectMade && r.contacts() == 0}, true
}

// contacts counts the plays of the ball that the words were taken for.
func (r *deadReader) contacts() int {
	n := 0
	for _, e := range r.s.evs {
		if e.Kind == play.Contact || e.Kind == play.NetTouch || e.Kind == play.Line {
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

// longest is the longest phrase that starts at a token. Articles and a few
// empty words may stand between its words.
func (r *deadReader) longest(i int) (*deadNode, int) {
	var best *deadNode
	end := i
	var walk func(n *deadNode, j int)
	walk = func(n *deadNode, j int) {
		if n.says != nil && j > end {
			best, end = n, j
		}
		if j >= len(r.toks) || r.toks[j].mark != 0 || n.next == nil {
			return
		}
		t := r.toks[j]
		for _, w := range []string{t.form, t.base} {
			if m := n.next[w]; m != nil && w != "" {
				walk(m, j+1)
			}
		}
		if m := n.next["<n>"]; m != nil && (numeric(t.form) || t.form == "<label>") {
			walk(m, j+1)
		}
		if j > i && skippable[t.form] {
			walk(n, j+1)
		}
	}
	walk(deadTree(), i)
	return best, end
}

// mentions are the acts named, in the order of the text.
func (r *deadReader) mentions() []mention {
	var out []mention
	for i, g := range r.signs {
		name, arg, _ := strings.Cut(g.says, ":")
		m := mention{kind: deadball.Kind(arg), at: g.from, clause: g.clause}
		switch name {
		case "act":
			m.aspect = aspectAsked
		case "past":
			m.aspect = aspectPast
		case "thing":
			m.aspect = r.verb(i)
		default:
			continue
		}
		m.again = r.near(i, "again")
		out = append(out, m)
	}
	return out
}

// verb is what the verb beside a thing says of it: the nearest one before it in
// its clause, else one after it.
func (r *deadReader) verb(i int) int {
	for j := i - 1; j >= 0 && r.signs[j].clause == r.signs[i].clause; j-- {
		switch r.signs[j].says {
		case "request":
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	for j := i + 1; j < len(r.signs) && r.signs[j].clause == r.signs[i].clause; j++ {
		switch r.signs[j].says {
		case "request":
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	return aspectBare
}

// near reports whether a sign stands close before another one in its clause.
func (r *deadReader) near(i int, says string) bool {
	for j := i - 1; j >= 0 && r.signs[j].clause == r.signs[i].clause && r.signs[i].from-r.signs[j].to < 4; j-- {
		if r.signs[j].says == says {
			return true
		}
	}
	return false
}

// choose finds the act that the question is about: the one most plainly asked
// for, the last of several. Acts of kinds that have nothing to do with one
// another leave it open.
func (r *deadReader) choose(ms []mention) (mention, bool) {
	best := -1
	for i, m := range ms {
		if m.aspect != aspectPast && (best < 0 || m.aspect >= ms[best].aspect) {
			best = i
		}
	}
	if best < 0 {
		return mention{}, false
	}
	m := ms[best]
	if m.aspect == aspectBare {
		return mention{}, false
	}
	for _, o := range ms {
		if o.kind != m.kind && !slices.Contains(deadBeside, [2]deadball.Kind{m.kind, o.kind}) {
			return mention{}, false
		}
	}
	return m, true
}

// sides settles whose act it is and what the sides go by.
func (r *deadReader) sides(a *deadball.Act, m mention) {
	own := sideRef{}
	for i, t := range r.toks {
		if t.form != "<side>" {
			continue
		}
		r.used[i] = true
		if t.side.fam != relative && (own.fam == noFamily || i <= m.at && (r.in[i] == m.clause || r.in[i] < m.clause)) {
			own = t.side
		}
	}
	pairs := map[family][2]string{usThem: {"us", "them"}, serveRec: {"serving", "receiving"}, homeAway: {"home", "visitors"}, colours: r.s.colourNames()}
	if own.fam == letters && own.n == 1 {
		a.By = play.B
	}
	if n, ok := pairs[own.fam]; ok {
		a.Names[play.A], a.Names[play.B] = name1(n[own.n]), name1(n[1-own.n])
	}
}

func name1(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// history tells what the acts before the one asked about mean for it.
func (r *deadReader) history(a *deadball.Act, m mention, ms []mention) {
	k, _ := deadball.KindByID(m.kind)
	for _, g := range r.signs {
		if name, _, ok := strings.Cut(g.says, ":"); ok && (name == "act" || name == "past" || name == "thing") || g.says == "request" || g.says == "done" {
			r.use(g)
		}
	}
	if m.kind != deadball.Substitution || !slices.Contains(k.Facts, deadball.Substituted) {
		return
	}
	earlier := m.again
	for _, o := range ms {
		if o.kind == m.kind && o.at < m.at && o.clause < m.clause && o.aspect >= aspectPast {
			earlier = true
		}
	}
	if earlier {
		*a = *a.With(deadball.Substituted, play.Yes)
	}
}

// facts tells the facts that the words state. What two phrases tell
// differently is not told, and their words stay unread.
func (r *deadReader) facts(a *deadball.Act, m mention) {
	k, _ := deadball.KindByID(m.kind)
	told := map[play.FactID]play.Value{}
	at := map[play.FactID][]sign{}
	for i, g := range r.signs {
		switch {
		case g.says == "quiet", g.says == "again":
			r.use(g)
			continue
		case strings.HasPrefix(g.says, "person:"):
			r.person(a, m, g, told)
			continue
		}
		f, v, ok := strings.Cut(g.says, "=")
		if doubt, is := strings.CutSuffix(g.says, "?"); is && slices.Contains(k.Facts, play.FactID(doubt)) {
			*a = *a.WithVoid(play.FactID(doubt))
			r.use(g)
			continue
		}
		id := play.FactID(f)
		if !ok || !slices.Contains(k.Facts, id) {
			continue
		}
		value := play.Value(v)
		if i > 0 && r.signs[i-1].says == "not" && r.signs[i-1].to == g.from {
			fact, _ := deadball.FactByID(id)
			if value = other(fact, value); value == play.Unknown {
				continue
			}
			r.use(r.signs[i-1])
		}
		if was, is := told[id]; is && was != value {
			told[id] = play.Unknown
			for _, o := range append(at[id], g) {
				r.unuse(o)
			}
			continue
		}
		told[id] = value
		at[id] = append(at[id], g)
		r.use(g)
	}
	for _, f := range deadball.Facts() {
		if v := told[f.ID]; v != play.Unknown {
			*a = *a.With(f.ID, v)
		}
	}
}

// person takes who acts: of a request, the one named before it.
func (r *deadReader) person(a *deadball.Act, m mention, g sign, told map[play.FactID]play.Value) {
	k, _ := deadball.KindByID(m.kind)
	r.use(g)
	if !slices.Contains(k.Facts, deadball.AskedBy) || g.clause != m.clause || g.from > m.at {
		return
	}
	told[deadball.AskedBy] = play.Value(strings.TrimPrefix(g.says, "person:"))
}

func (r *deadReader) use(g sign) {
	for i := g.from; i < g.to; i++ {
		r.used[i] = true
	}
}

func (r *deadReader) unuse(g sign) {
	for i := g.from; i < g.to; i++ {
		r.used[i] = false
	}
}

// rest marks the words that carry nothing, and those that are only listed.
func (r *deadReader) rest() {
	signed := make([]bool, len(r.toks))
	for _, g := range r.signs {
		for i := g.from; i < g.to; i++ {
			signed[i] = true
		}
	}
	for _, a := range r.s.atoms {
		for i := a.from; i < a.to; i++ {
			if a.class == cCode || a.class == cElse {
				r.used[i] = true
			}
		}
	}
	for i, t := range r.toks {
		if r.used[i] || signed[i] || t.mark != 0 {
			continue
		}
		switch {
		case deadEmpty()[t.form] || deadEmpty()[t.base], t.form == "<label>":
			r.used[i] = true
		case sceneryWord()[t.form] || sceneryWord()[t.base]:
			r.scene[i] = true
		}
	}
}

// deadEmpty are the words that carry nothing in a dead ball.
var deadEmpty = sync.OnceValue(func() map[string]bool { return wordSet(fillers, skipped, deadFillers) })

var sceneryWord = sync.OnceValue(func() map[string]bool { return wordSet(sceneryWords) })

func wordSet(lists ...string) map[string]bool {
	m := map[string]bool{"": false}
	for _, l := range lists {
		for w := range strings.FieldsSeq(l) {
			m[w] = true
		}
	}
	return m
}
