package notation

import (
	"iter"
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
	slices.SortStableFunc(rows, func(a, b deadPhrase) int { return b.stands() - a.stands() })
	for _, p := range rows { // the row that stands for fewer phrases goes before another
		for _, ws := range alternatives(p.phrase) {
			root.add(ws, p.says)
		}
	}
	return root
})

// stands is how many phrases a row stands for.
func (p deadPhrase) stands() int { return len(alternatives(p.phrase)) }

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
	toks  []token
	in    []int // the clause of each token
	signs []sign
	m     mention
	act   *deadball.Act
	row   deadball.KindRow
	used  []bool
	scene []bool // tokens that are only scenery
}

// deadForms are forms that the reader takes for the word of the phrases.
var deadForms = map[string]string{"am": "be", "are": "be", "bled": "bleed", "blew": "blow", "broke": "break", "did": "do", "does": "do", "fell": "fall", "fought": "fight",
	"gets": "get", "got": "get", "gotten": "get", "had": "have", "has": "have", "having": "have", "is": "be", "made": "make", "swore": "swear", "was": "be", "were": "be"}

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
	left, foreign := r.left()
	if r.act.Check() != nil || foreign || left > 4 {
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
		case "made":
			m.aspect = aspectMade
		case "thing":
			m.aspect = r.verb(i)
		case "same":
			if len(out) == 0 {
				continue
			}
			m.kind, m.aspect = out[len(out)-1].kind, r.verb(i)
		default:
			continue
		}
		m.again = r.near(i, "again") || name == "same"
		out = append(out, m)
	}
	return out
}

// verb is what is said of a thing: by the verb before it in its clause, by
// standing as the verb of a side or a person itself, or by a verb after it.
func (r *deadReader) verb(i int) int {
	g := r.signs[i]
	if g.from > 0 && g.to == g.from+1 {
		if t := r.toks[g.from-1]; t.form == "<side>" && !t.poss || r.signAt(g.from-1, "person:") && r.toks[g.from].form != r.toks[g.from].base {
			return aspectMade
		}
	}
	for j := i - 1; j >= 0 && r.signs[j].clause == g.clause; j-- {
		switch r.signs[j].says {
		case "request":
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	for j := i + 1; j < len(r.signs) && r.signs[j].clause == g.clause; j++ {
		switch r.signs[j].says {
		case "request":
			return aspectAsked
		case "done":
			return aspectMade
		}
	}
	return aspectBare
}

// signAt reports whether a sign that begins so covers a token.
func (r *deadReader) signAt(at int, prefix string) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool {
		return g.from <= at && at < g.to && strings.HasPrefix(g.says, prefix)
	})
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

func (r *deadReader) says(s string) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool { return g.says == s })
}

// tells reports whether the words state the fact.
func (r *deadReader) tells(f play.FactID) bool {
	return slices.ContainsFunc(r.signs, func(g sign) bool { return strings.HasPrefix(g.says, string(f)+"=") })
}

// choose finds the act that the question is about: the one most plainly asked
// for, the last of several. Acts that have nothing to do with one another leave
// it open.
func (r *deadReader) choose(ms []mention) (mention, bool) {
	best := -1
	for i, m := range ms {
		if m.aspect > aspectBare && (best < 0 || m.aspect >= ms[best].aspect) {
			best = i
		}
	}
	if best < 0 {
		return r.unnamed(ms)
	}
	m := ms[best]
	if m.kind == deadball.Dispute && slices.ContainsFunc(r.signs, func(g sign) bool { return strings.HasPrefix(g.says, "card:") }) {
		m.kind = deadball.Misconduct // protests, by somebody who had a card
	}
	for _, o := range ms {
		context := o.kind == deadball.TimeOut || o.kind == deadball.Substitution
		switch {
		case o.kind == m.kind, o.at == m.at, o.aspect == aspectBare, o.aspect == aspectMade && context:
		case !slices.Contains(deadBeside, [2]deadball.Kind{m.kind, o.kind}):
			return mention{}, false
		}
	}
	return m, true
}

// unnamed is the act that follows from what is told, where none is named: a
// player is hurt, and who is left on the bench or that play was stopped is told;
// a substitute comes too late; a ball is driven before the serve is due.
func (r *deadReader) unnamed(ms []mention) (mention, bool) {
	for _, m := range ms { // a substitute is, or is not, in the zone in time
		if m.kind == deadball.Substitution && r.tells(deadball.InZone) {
			m.aspect = aspectMade
			return m, true
		}
	}
	for _, g := range r.signs { // a serve that is driven at somebody before its time
		if g.says == "blast" && r.says(string(deadball.Moment)+"="+string(deadball.BeforeServe)) {
			return mention{kind: deadball.Misconduct, aspect: aspectMade, at: g.from, clause: g.clause}, true
		}
	}
	for _, g := range r.signs {
		if g.says != "hurt" {
			continue
		}
		m := mention{aspect: aspectMade, at: g.from, clause: g.clause}
		switch {
		case r.tells(deadball.BenchLeft):
			m.kind = deadball.PlayerOut
		case r.says("halt"):
			m.kind = deadball.InjuryStop
		default:
			return mention{}, false
		}
		return m, true
	}
	return mention{}, false
}

// sides settles whose act it is and what the sides go by.
func (r *deadReader) sides() {
	own := sideRef{}
	for i, t := range r.toks {
		if t.form != "<side>" {
			continue
		}
		r.used[i] = true
		if t.side.fam != relative && (own.fam == noFamily || i <= r.m.at) {
			own = t.side
		}
		if t.side == opp && i > r.m.at && r.m.kind == deadball.CoachOnCourt {
			r.tell(deadball.OwnSide, play.No)
		}
	}
	pairs := map[family][2]string{usThem: {"us", "them"}, serveRec: {"serving", "receiving"}, homeAway: {"home", "visitors"}, colours: r.s.colourNames()}
	if own.fam == letters && own.n == 1 {
		r.act.By = play.B
	}
	if n, ok := pairs[own.fam]; ok {
		r.act.Names[play.A], r.act.Names[play.B] = nameList(n[own.n]), nameList(n[1-own.n])
	}
}

func nameList(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

func (r *deadReader) has(f play.FactID) bool { return slices.Contains(r.row.Facts, f) }

// tell tells a fact that the act can have and that was not told yet.
func (r *deadReader) tell(f play.FactID, v play.Value) {
	if r.has(f) && r.act.Get(play.Key{Fact: f}) == play.Unknown {
		r.act = r.act.With(f, v)
	}
}

// facts tells the facts that the words state. What two phrases tell
// differently is not told, and their words stay unread.
func (r *deadReader) facts() {
	told := map[play.FactID]play.Value{}
	at := map[play.FactID][]sign{}
	for i, g := range r.signs {
		f, v, ok := strings.Cut(g.says, "=")
		if doubt, is := strings.CutSuffix(g.says, "?"); is && r.has(play.FactID(doubt)) {
			r.act = r.act.WithVoid(play.FactID(doubt))
			r.use(g)
			continue
		}
		id := play.FactID(f)
		if ok && slices.Contains(deadPassed, passed{r.m.kind, id}) {
			r.use(g)
			continue
		}
		if !ok || !r.has(id) {
			continue
		}
		value := play.Value(v)
		if n := r.negation(i); n >= 0 {
			fact, _ := deadball.FactByID(id)
			if value = other(fact, value); value == play.Unknown {
				continue
			}
			r.use(r.signs[n])
		}
		if was, is := told[id]; is && was != value {
			if id == deadball.Found && (was == deadball.AfterContact || value == deadball.AfterContact) && was != deadball.BeforeServe && value != deadball.BeforeServe {
				told[id] = deadball.AfterContact // authorised, then served
				r.use(g)
				continue
			}
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
			r.tell(f.ID, v)
		}
	}
}

// negation is the sign right before a sign that denies it, or -1.
func (r *deadReader) negation(i int) int {
	for j := i - 1; j >= 0; j-- {
		if r.signs[j].to == r.signs[i].from && r.signs[j].says == "not" {
			return j
		}
		if r.signs[j].from < r.signs[i].from {
			break
		}
	}
	return -1
}

// history tells what people, earlier acts and earlier cards mean for the act.
func (r *deadReader) history(ms []mention) {
	for i, g := range r.signs {
		name, arg, _ := strings.Cut(g.says, ":")
		switch name {
		case "act", "made", "thing", "request", "done", "quiet", "again", "same", "set":
			r.use(g)
		case "person":
			r.use(g)
		case "card":
			r.card(i, play.Value(arg))
		case "hurt", "halt":
			r.use(g)
		case "whistled":
			r.whistled(g)
		case "blast":
			if r.m.kind == deadball.Misconduct {
				r.use(g)
				r.tell(deadball.Gravity, deadball.Rude)
			}
		}
	}
	r.person()
	r.sets()
	hurt := r.says("hurt")
	switch r.m.kind {
	case deadball.Substitution:
		earlier := r.m.again
		for _, o := range ms {
			if o.kind == r.m.kind && o.clause < r.m.clause && o.aspect == aspectMade {
				earlier = true
			}
		}
		if earlier {
			r.tell(deadball.Substituted, play.Yes)
		}
		if ready := r.tells(deadball.ReadyAgain); hurt {
			if ready || r.act.Get(play.Key{Fact: deadball.Forced}) == play.No {
				r.tell(deadball.Stoppage, deadball.Injury)
			} else {
				r.tell(deadball.Forced, play.Yes)
			}
			r.quiet(deadball.ReadyAgain)
		}
	case deadball.TimeOut:
		if hurt || r.tells(deadball.ReadyAgain) {
			r.tell(deadball.Stoppage, deadball.Injury)
			r.quiet(deadball.ReadyAgain)
		}
	}
}

// whistled takes a whistle for service: an act told after it came after it; a
// whistle told after the act says only when something was noticed.
func (r *deadReader) whistled(g sign) {
	switch {
	case r.has(deadball.Found):
		r.tell(deadball.Found, deadball.BeforeContact)
	case r.has(deadball.Moment) && g.from < r.m.at:
		r.tell(deadball.Moment, deadball.LateServe)
	case r.has(deadball.Moment):
		r.act = r.act.WithVoid(deadball.Moment)
	default:
		return
	}
	r.use(g)
}

// quiet marks the words of a fact that another fact already says.
func (r *deadReader) quiet(f play.FactID) {
	for _, g := range r.signs {
		if strings.HasPrefix(g.says, string(f)+"=") {
			r.use(g)
		}
	}
}

// card takes a card that was had before: of the one who acts, or of a teammate
// where the numbers differ.
func (r *deadReader) card(i int, v play.Value) {
	g := r.signs[i]
	if n := r.negation(i); n >= 0 {
		r.use(r.signs[n])
		v = deadball.None
	}
	r.use(g)
	if r.m.kind != deadball.Misconduct {
		return
	}
	mine, theirs := r.label(r.m.clause), r.label(g.clause)
	if mine != "" && theirs != "" && mine != theirs {
		r.tell(deadball.TeamWarned, play.Yes)
		return
	}
	r.tell(deadball.CardBefore, v)
}

// label is the shirt number named in a clause, or "".
func (r *deadReader) label(clause int) string {
	for i, t := range r.toks {
		if r.in[i] == clause && t.label != "" {
			return t.label
		}
	}
	return ""
}

// person takes who acts: the person named nearest before the act in its
// clause, else the first one named before it, else the first in its clause.
func (r *deadReader) person() {
	who := ""
	for _, g := range r.signs {
		p, ok := strings.CutPrefix(g.says, "person:")
		switch {
		case !ok:
		case g.clause == r.m.clause && (g.from <= r.m.at || who == ""), g.clause < r.m.clause && r.m.kind != deadball.Substitution && r.m.kind != deadball.TimeOut:
			who = p
		}
	}
	if who == "" {
		return
	}
	value := map[string]play.Value{}
	switch {
	case r.has(deadball.AskedBy):
		value = map[string]play.Value{"coach": deadball.Coach, "captain": deadball.Captain, "assistant": deadball.Assistant, "player": deadball.OtherPerson, "bench": deadball.OtherPerson}
		if r.m.kind == deadball.Substitution && who != "assistant" && who != "captain" && who != "coach" {
			return // the one who comes in, not the one who asks
		}
		r.tell(deadball.AskedBy, value[who])
	case r.has(deadball.Member):
		value = map[string]play.Value{"coach": deadball.Coach, "captain": deadball.PlayerOf, "assistant": deadball.Assistant, "player": deadball.PlayerOf, "bench": deadball.AnyBench}
		r.tell(deadball.Member, value[who])
	case r.has(deadball.Speaker):
		value = map[string]play.Value{"coach": deadball.Coach, "captain": deadball.Captain, "assistant": deadball.OtherPerson, "player": deadball.OtherPerson, "bench": deadball.OtherPerson}
		r.tell(deadball.Speaker, value[who])
	}
}

// sets takes two numbers of sets for an earlier sanction and the set of now.
func (r *deadReader) sets() {
	var numbers []string
	for _, g := range r.signs {
		if g.says == "set" {
			if n := r.toks[g.to-1].form; !slices.Contains(numbers, n) {
				numbers = append(numbers, n)
			}
		}
	}
	if len(numbers) != 2 {
		return
	}
	for _, f := range [][2]play.FactID{{deadball.DelayBefore, deadball.DelaySet}, {deadball.CardBefore, deadball.CardSet}} {
		if v := r.act.Get(play.Key{Fact: f[0]}); v != play.Unknown && v != play.No && v != deadball.None {
			r.tell(f[1], deadball.EarlierSet)
		}
	}
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
			switch {
			case a.class == cCode, a.class == cElse:
				r.used[i] = true
			case a.class == cScenery && !signed[i] && !r.used[i] && !deadWords()[r.toks[i].form]:
				r.scene[i] = true
			}
		}
	}
	for i, t := range r.toks {
		if r.used[i] || signed[i] || t.mark != 0 {
			continue
		}
		switch {
		case deadEmpty()[t.form] || deadEmpty()[t.base], t.form == "<label>", t.form == "s" && i > 0 && numeric(r.toks[i-1].form):
			r.used[i] = true
		case strings.Count(t.form, "-") == 1 && numeric(strings.Replace(t.form, "-", "", 1)): // a score
			r.scene[i] = true
		}
	}
}

// deadEmpty are the words that carry nothing in a dead ball.
var deadEmpty = sync.OnceValue(func() map[string]bool { return wordSet(fillers, skipped, deadFillers) })

// deadWords are the words of the phrases.
var deadWords = sync.OnceValue(func() map[string]bool {
	m := map[string]bool{}
	for w := range deadVocabulary() {
		m[w] = true
	}
	return m
})

// deadVocabulary goes over every word of the phrases.
func deadVocabulary() iter.Seq[string] {
	return func(yield func(string) bool) {
		for _, t := range deadTables {
			for _, p := range t {
				for ws := range strings.FieldsSeq(p.phrase) {
					for w := range strings.SplitSeq(strings.Trim(ws, "[]"), "/") {
						if !yield(w) {
							return
						}
					}
				}
			}
		}
	}
}

func wordSet(lists ...string) map[string]bool {
	m := map[string]bool{}
	for _, l := range lists {
		for w := range strings.FieldsSeq(l) {
			m[w] = true
		}
	}
	return m
}
