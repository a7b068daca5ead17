package notation

import (
	"maps"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// general reads a question in general that leads a story: "when can you
// actually reach over to block? ball was dropping on ...". What is asked about
// is told after it, so nothing happens in it.
func (s *scene) general(g segment) bool {
	if g.mark != '?' || len(s.evs) > 0 || g.from > 0 && s.atoms[g.from-1].mark == ',' {
		return false
	}
	asks, you := false, false
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch a.class {
		case cAsk:
			asks = asks || i < g.from+2
		case cRow, cLibero, cRole, cLabel, cNumber, cSide, cFact, cShe, cUsed, cOpen:
			return false
		}
		asks = asks || i == g.from && slices.Contains([]string{"when", "how", "why", "can", "could", "may", "is", "are", "does", "do"}, s.toks[a.from].form)
		you = you || slices.Contains([]string{"you", "someone", "somebody", "anyone", "anybody"}, a.word)
	}
	if !asks || !you || !s.happensAfter(g.to) {
		return false
	}
	s.settled(g.from, g.to)
	return true
}

// happensAfter reports whether somebody plays the ball in what follows.
func (s *scene) happensAfter(i int) bool {
	who := false
	for ; i < len(s.atoms); i++ {
		switch a := s.atoms[i]; a.class {
		case cSide, cRole, cShe, cPerson, cLibero, cLabel:
			who = true
		case cVerb:
			if who && a.verb != vGo && a.verb != vLand && a.verb != vHeld && a.verb != vDouble {
				return true
			}
		}
	}
	return false
}

// supposes reports whether a clause asks about another case than the one told:
// "what if it is over the other side".
func (s *scene) supposes(g segment) bool {
	if len(s.evs) == 0 || !slices.Contains([]string{"what", "and", "how", "does", "would", "is", "any", "different", "same"}, s.toks[s.atoms[g.from].from].form) {
		return false
	}
	var ws []string
	for i := g.from; i < g.to && len(ws) < 5; i++ {
		for _, t := range s.toks[s.atoms[i].from:s.atoms[i].to] {
			ws = append(ws, t.form)
		}
	}
	lead := strings.Join(ws, " ") + " "
	for _, w := range []string{"what if ", "and what if ", "what about if ", "what about ", "how about if ", "does it matter if ", "does it change if ", "would it matter if ", "is it different if ", "any different if ", "different if ", "same if ", "same thing if ", "what happens if ", "how about "} {
		if strings.HasPrefix(lead, w) {
			return true
		}
	}
	return false
}

// suppose reads another case than the one told as what would change it: a fact
// that it tells otherwise is open, and nothing else happens in it.
func (s *scene) suppose(g segment) {
	n := len(s.evs)
	facts := make([]map[play.FactID]play.Value, n)
	for i := range s.evs {
		facts[i] = maps.Clone(s.evs[i].facts)
	}
	keep := *s
	s.narrate(g)
	more := s.evs[min(n, len(s.evs)):]
	if len(s.evs) < n { // it took one of the events away
		more = nil
	}
	told := slices.Clone(more)
	atoms := s.atoms
	people := s.people
	evs := s.evs[:n:n]
	*s = keep
	s.atoms, s.people, s.evs = atoms, people, evs
	for i := range s.evs {
		for f, v := range s.evs[i].facts {
			if facts[i][f] != v {
				delete(s.evs[i].facts, f)
				s.evs[i].set(f, play.Unknown)
			}
		}
	}
	for _, h := range told {
		if e := &s.evs[n-1]; h.Kind == play.Cross && (e.Kind == play.Strike || e.Kind == play.Land) && e.Team != play.NoTeam && h.Team == e.Team.Other() {
			e.Team = play.NoTeam // "what if it is over the other side?"
			delete(e.facts, play.Side)
			e.set(play.Side, play.Unknown)
		}
	}
	for _, h := range told { // the same thing once more, told of otherwise
		for k := n - 1; k >= 0; k-- {
			if e := &s.evs[k]; e.Kind == h.Kind && (e.Team == h.Team || e.Ball()) {
				for f, v := range h.facts {
					if e.facts[f] != v {
						delete(e.facts, f)
						e.set(f, play.Unknown)
					}
				}
				break
			}
		}
	}
	s.settled(g.from, g.to)
	s.heard = true
}

// kind0 reads a question of what to call a contact: "is that a block or an
// attack?".
func (s *scene) kind0(g segment) bool {
	if len(s.evs) == 0 || s.contacts() == 0 {
		return false
	}
	asks, nouns := g.mark == '?' || g.join == "or" || g.from > 0 && s.atoms[g.from-1].id == "or", 0
	for i := g.from; i < g.to; i++ {
		switch a := s.atoms[i]; {
		case a.class == cVerb && a.verb == vContact && (a.action == play.Block || a.action == play.Attack || a.action == play.Set || a.action == play.Tip) && s.toks[a.from].base == "" && a.to-a.from == 1:
			nouns++
		case a.class == cAsk, a.class == cOrder && a.id == "unsure":
			asks = true
		case a.class == cFiller, a.class == cScenery, a.class == cBall, a.class == cFault, a.class == cCall:
		default:
			return false
		}
	}
	if !asks || nouns == 0 {
		return false
	}
	for i := g.from; i < g.to; i++ {
		if id := faultOf(s.atoms[i]); id != "" {
			s.want(id)
		}
	}
	s.settled(g.from, g.to)
	return true
}

// lone reads a question of one or two words: "ours?", "dead?", "good?".
func (s *scene) lone(g segment) bool {
	if g.mark != '?' || g.to-g.from > 2 || len(s.evs) == 0 {
		return false
	}
	for i := g.from; i < g.to; i++ {
		switch a := s.atoms[i]; {
		case a.class == cSide && (!a.poss || strings.HasSuffix(s.toks[a.from].raw, "s")):
		case slices.Contains([]string{"dead", "live", "good", "play", "point", "still", "ball", "anything"}, a.word):
		case a.class == cFiller, a.class == cAsk, a.class == cScenery:
		default:
			return false
		}
	}
	s.settled(g.from, g.to)
	return true
}

// counts reads a statement of how many contacts were told: "that's 4 touches if
// you count the block". The count is in the events; what it claims is asked.
func (s *scene) counts(g segment) bool {
	if s.contacts() == 0 {
		return false
	}
	n, that := 0, false
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch {
		case a.class == cFault && a.id == "four-contacts":
			n = 4
		case a.class == cCard && n == 0:
			n = a.n
		case a.word == "that" || a.word == "make" || a.word == "count" || base(a.word) == "make" || base(a.word) == "count" || strings.HasPrefix(s.toks[a.from].raw, "that") || strings.HasPrefix(s.toks[a.from].raw, "That"):
			that = true
		case a.class == cFiller, a.class == cScenery, a.class == cAsk, a.class == cCall, a.class == cSide, a.class == cDest, a.class == cOrder, a.class == cShe, a.class == cClaim, a.class == cBall, a.class == cNot, a.class == cFloor:
		case a.class == cVerb && (a.action == play.Block || a.verb == vTouch || a.verb == vHit) && s.toks[a.from].base != "touch":
		default:
			return false
		}
	}
	if n == 0 || !that {
		return false
	}
	if n == 4 {
		s.touchedBy("four-contacts")
		if !slices.Contains(s.wanted, "four-contacts") {
			s.wanted = append(s.wanted, "four-contacts")
		}
	} else if n != s.row0() {
		return false
	}
	s.settled(g.from, g.to)
	return true
}

// row0 counts the contacts of one side told last in a row, a block not among
// them.
func (s *scene) row0() int {
	n, t := 0, play.NoTeam
	for k := len(s.evs) - 1; k >= 0; k-- {
		e := s.evs[k]
		if e.Kind != play.Contact || e.Action == play.Block {
			continue
		}
		if t == play.NoTeam {
			t = e.Team
		}
		if e.Team != t {
			break
		}
		n++
	}
	return n
}

// attackOf makes an attack by nobody in particular, with which the story
// begins, the opponents' of those who block it: "spike comes off our middle's
// block".
func (s *scene) attackOf(t play.Team) {
	n := len(s.evs)
	if n != 1 || s.evs[0].Kind != play.Contact || !s.evs[0].Action.Attacking() || s.evs[0].Team == t || s.evs[0].who < 0 {
		return
	}
	p := &s.people[s.evs[0].who]
	if !p.bare || p.row != play.Unknown || p.Team == t {
		return
	}
	for i := 0; i < len(s.atoms) && s.atoms[i].class != cStop; i++ {
		switch a := s.atoms[i]; {
		case a.class == cVerb && a.action == s.evs[0].Action:
			p.Team, s.evs[0].Team = t, t
			return
		case a.class == cFiller, a.class == cScenery, a.class == cCode:
		default:
			return // the side is told
		}
	}
}

// sideAfter reads the side of a player that is told after the word for her:
// "hitter for the Reds", "the guy on the other side". It gives the place after
// it, 0 where none is told.
func (s *scene) sideAfter(c *clauseState, i int, told bool, w *party) int {
	if told || i >= c.to || w.team != play.NoTeam {
		return 0
	}
	switch a := s.atoms[i]; {
	case a.class == cFiller && (a.word == "for" || a.word == "from" || a.word == "of") && i+1 < c.to && s.atoms[i+1].class == cSide && (i+2 >= c.to || s.atoms[i+2].class != cFloor):
		b := s.atoms[i+1]
		if b.poss && b.side.fam == usThem && !strings.HasSuffix(s.toks[b.from].raw, "s") || b.side.fam == relative && b.side.n == 0 {
			return 0
		}
		if t := s.team(b.side); t != play.NoTeam {
			w.team = t
			return i + 2
		}
	case a.class == cDest && a.dest == dAbove && a.side.fam == usThem && !a.side2.ok() && strings.HasPrefix(a.word, "on ") && i+1 < c.to:
		if t := s.team(a.side); t != play.NoTeam {
			w.team = t // "the setter on their side"
			return i + 1
		}
	case a.class == cDest && len(s.evs) > 0 && (strings.HasPrefix(a.word, "on other side") || strings.HasPrefix(a.word, "on far side") || strings.HasPrefix(a.word, "across net")):
		if k := s.lastContact(); k >= 0 {
			w.team = s.evs[k].Team.Other()
			return i + 1
		}
	}
	return 0
}

// tooAlike makes two contacts of opponents that were told of in one sentence
// one moment where the second ends with "too": "hands on the ball, blockers
// hands on it too".
func (s *scene) tooAlike(c *clauseState, i int) bool {
	a := &s.atoms[i]
	if a.word != "too" && a.word != "also" && a.word != "as well" || i+1 < c.to {
		return false
	}
	n := len(s.evs)
	if n < 2 || n <= c.first || s.evs[n-1].Kind != play.Contact || s.evs[n-2].Kind != play.Contact || s.evs[n-1].Team == s.evs[n-2].Team {
		return false
	}
	if s.evs[n-1].link == play.Unknown || s.evs[n-1].link == play.Before && s.slash {
		s.evs[n-1].link = play.Same
	}
	a.used = true
	return true
}

// drivenInto reads the net as what hits a player: "the tape smacks the
// hitter's arm". The ball, or nobody, moved it.
func (s *scene) drivenInto(c *clauseState, i int) int {
	a := &s.atoms[i]
	if a.value != play.NetBand || i != c.from || i+1 >= c.to || c.deny || len(s.evs) == 0 {
		return 0
	}
	switch b := s.atoms[i+1]; {
	case b.class == cVerb && (b.verb == vTouch || b.verb == vHit || b.verb == vBump || b.verb == vCollide):
	default:
		return 0
	}
	for j := i + 2; j < c.to; j++ {
		switch s.atoms[j].class {
		case cFiller, cInto, cScenery:
			continue
		}
		w, k, ok := s.phrase(c, j)
		if !ok {
			return 0
		}
		if w.team == play.NoTeam && w.pid < 0 {
			w.team = s.guess(w)
		}
		if w.team == play.NoTeam {
			return 0
		}
		for k < c.to && s.atoms[k].class == cBody {
			k++
		}
		s.settled(i, k)
		s.subj = []party{w}
		s.netTouch(w, play.PartNet)
		s.evs[len(s.evs)-1].set(play.Cause, play.ByBall)
		return k
	}
	return 0
}

// fallen reads the net or a post that comes down in the rally: something that
// hinders everybody.
func (s *scene) fallen(c *clauseState, i int) int {
	a := &s.atoms[i]
	if a.value != play.NetBand && a.value != play.Posts || a.part == play.PartAntenna || i+1 >= c.to || c.deny || len(s.evs) == 0 {
		return 0
	}
	for j := c.from; j < i; j++ {
		if b := s.atoms[j]; b.class == cVerb || b.class == cDest || b.class == cInto || b.class == cBall {
			return 0
		}
	}
	j := i + 1
	for j < c.to && (s.atoms[j].class == cFiller || s.atoms[j].class == cScenery) {
		j++
	}
	if j >= c.to {
		return 0
	}
	switch s.toks[s.atoms[j].from].base {
	case "come", "fall", "collapse", "drop", "tear", "snap", "go":
	default:
		return 0
	}
	if b := s.atoms[j]; b.word != "came down" && b.word != "comes down" && b.word != "falls" && b.word != "fell" && b.word != "collapses" && b.word != "collapsed" && b.word != "falls down" && b.word != "fell down" && b.word != "goes down" && b.word != "went down" {
		return 0
	}
	s.settled(i, j+1)
	s.add(play.Event{Kind: play.Intrusion}, -1)
	s.evs[len(s.evs)-1].set(play.Hinders, play.Yes)
	return j + 1
}

// inAction reads a contact as a noun that says from what a player comes: "she
// comes down from a block with half her foot over the line". The contact is
// hers, and she stays the one of whom the clause tells.
func (s *scene) inAction(c *clauseState, i int) bool {
	a := &s.atoms[i]
	if i == c.from || len(s.subj) != 1 || !s.subj[0].one || s.ballSubj || a.verb != vContact && a.verb != vHit || a.action == play.Touch && a.verb != vHit {
		return false
	}
	p := s.atoms[i-1]
	if p.class == cShe && i-1 > c.from {
		p = s.atoms[i-2]
	}
	switch p.word {
	case "from", "off", "after", "on":
	default:
		return false
	}
	moved := false
	for j := c.from; j < i; j++ {
		if b := s.atoms[j]; b.class == cVerb {
			moved = b.verb == vLand || b.verb == vGo || b.verb == vLine
		}
	}
	if !moved || len(s.evs) > c.first {
		return false
	}
	a.used = true
	w := s.subj[0]
	pid := s.settle(&w)
	s.subj[0] = w
	for k := len(s.evs) - 1; k >= 0; k-- {
		if e := s.evs[k]; e.who == pid && (e.Kind == play.Contact || e.Kind == play.Attempt) {
			s.fresh = true
			return true // told before
		}
	}
	if a.action == play.Block {
		s.attempt(c, a)
	} else {
		act := a.action
		if a.verb == vHit {
			act = play.Attack
		}
		s.touch(w, act)
	}
	s.subj, s.fresh, s.ballSubj = []party{w}, true, false
	return true
}

// ownBall takes back the doubt about where the ball was of an attack at the net
// where no opponent comes near it and nobody asks about a reach: "dumps it over
// from right at the net".
func (s *scene) ownBall() {
	if s.over || slices.Contains(s.wanted, "over-net") {
		return
	}
	for _, a := range s.atoms {
		if a.class == cVerb && a.verb == vReachOver || a.class == cFault && a.id == "over-net" || a.class == cOpen && a.id == "free" {
			return
		}
	}
	for _, e := range s.evs {
		if e.Kind != play.Cross && e.Kind != play.Land && (e.Kind != play.Contact || e.Team != s.evs[0].Team || !e.voids[play.Place] && e.facts[play.Place] != play.Unknown) {
			return
		}
	}
	for i := range s.evs {
		if e := &s.evs[i]; e.Kind == play.Contact && e.Action.Attacking() {
			delete(e.voids, play.Place)
		}
	}
}

// asksWhether reports whether a sentence that ends in no question mark is a
// question all the same: it begins with "is", "are" or "does" and then names
// what is asked about.
func (s *scene) asksWhether(g segment) bool {
	if len(s.evs) == 0 || g.from > 0 && s.atoms[g.from-1].class != cStop || g.from > 0 && s.atoms[g.from-1].mark == ',' || g.to-g.from < 2 {
		return false
	}
	switch s.toks[s.atoms[g.from].from].form {
	case "is", "are", "does":
	default:
		return false
	}
	b := s.atoms[g.from+1]
	return b.class == cBall || b.class == cEvidence || b.class == cShe || b.art != 0
}

// pulled reports whether a clause tells of a hold on the net.
func (s *scene) pulled(c *clauseState) bool {
	for i := c.from; i < c.to; i++ {
		if a := s.atoms[i]; a.class == cVerb && a.verb == vGrab {
			return true
		}
	}
	return false
}

// suffered makes the opponents of whoever was told of last those who attack a
// ball that "gets spiked" or "is hit": it comes at her.
func (s *scene) suffered(c *clauseState, i int) {
	a := &s.atoms[i]
	if !s.ballSubj || s.contacts() > 0 || c.deny || a.verb != vContact || !a.action.Attacking() {
		return
	}
	w := s.toks[a.to-1].form
	passive := strings.HasSuffix(w, "ed") && (a.to-a.from > 1 || i > c.from && slices.Contains([]string{"is", "was", "gets", "got", "being", "been"}, s.toks[s.atoms[i-1].from].form))
	if !passive || i+1 < c.to && s.atoms[i+1].class == cBy {
		return
	}
	if len(s.subj) == 1 && s.subj[0].pid < 0 && s.subj[0].one {
		s.lastWho = s.settle(&s.subj[0])
	}
	if s.lastWho < 0 {
		return
	}
	s.subj, s.fresh, s.ballSubj = []party{{team: s.people[s.lastWho].Team.Other(), pid: -1}}, true, false
}

// besides reports whether nothing but a row or a word without weight stands
// between the one named last and the "and" at i: both then do what follows.
func (s *scene) besides(i int) bool {
	to := s.subj[len(s.subj)-1].to
	if to == 0 {
		return true
	}
	for j := to; j < i; j++ {
		switch a := s.atoms[j]; {
		case a.class == cVerb && (a.verb == vUp || a.verb == vReachUp || a.verb == vReachOver || a.verb == vAttempt):
		case a.class == cVerb, a.class == cBall, a.class == cDest, a.class == cThing, a.class == cLine:
			return false
		}
	}
	return true
}

// owed tells the contact of a player of whom only how she handled the ball was
// told: "has it come off one hand and then the other".
func (s *scene) owed() {
	if !s.fresh || len(s.subj) != 1 || !s.subj[0].one || s.ballSubj && s.number == 0 {
		return
	}
	for _, n := range s.next {
		if n.fact == play.Manner && n.value != play.Unknown {
			s.touch(s.subj[0], play.Touch)
			return
		}
	}
}

// agent reads who did what was just told: "a double by the setter", "being set
// on the other side by the opponents".
func (s *scene) agent(c *clauseState, i int) int {
	k := len(s.evs) - 1
	w, j, ok := s.phrase(c, i+1)
	if !ok {
		return i + 1
	}
	if w.team == play.NoTeam && w.pid < 0 {
		w.team = s.guess(w)
	}
	if i > c.from && s.atoms[i-1].class == cOpen && s.atoms[i-1].id == "free" && w.team != play.NoTeam && len(s.evs) == 0 {
		s.open[play.Has] = play.Value(w.team.String()) // "an overpass by the visitors"
		s.mark(i, j)
		s.on = w.team.Other()
		return j
	}
	if b := s.atoms[max(i-1, 0)]; i > c.from && (b.word == "bic" || b.word == "pipe") && w.team != play.NoTeam {
		w.row, w.one, w.from, w.to = play.Back, true, i+1, j // "a pipe by blue"
		s.subj, s.fresh, s.ballSubj = []party{w}, true, false
		s.atoms[i-1].used = true
		s.mark(i, j)
		s.heard = true
		return j
	}
	if k < c.first && s.number > 0 && w.team != play.NoTeam {
		s.numberBy, s.numberOf = &w, w.team
		s.mark(i, j)
		return j
	}
	if k < c.first || s.evs[k].Kind != play.Contact || s.evs[k].who < 0 || w.pid >= 0 {
		return i + 1
	}
	p := &s.people[s.evs[k].who]
	if !p.bare || w.team != play.NoTeam && w.team != p.Team {
		return i + 1
	}
	p.Role, p.Label, p.bare = w.role, w.label, !w.one
	if w.row != play.Unknown {
		p.row = w.row
	}
	s.mark(i, j)
	return j
}

// landed reports whether a place on the floor is told of a player who comes
// down there, after her jump.
func (s *scene) landed(c *clauseState, a *atom) bool {
	down := false
	for j := c.from; j < c.to && s.atoms[j].from < a.from; j++ {
		switch b := s.atoms[j]; {
		case b.class == cVerb && b.verb == vLand && !s.ballSubj:
			down = true
		case b.class == cVerb, b.class == cJoin:
			down = false
		}
	}
	return down
}

// verbAhead0 reports whether a verb stands in a clause.
func (s *scene) verbAhead0(c *clauseState) bool {
	for j := c.from; j < c.to; j++ {
		if s.atoms[j].class == cVerb {
			return true
		}
	}
	return false
}

// crewWord reports whether a word after "my" shows that an official speaks.
func crewWord(w string) bool {
	switch w {
	case "partner", "r1", "r2", "r3", "beckon", "down", "signal", "table", "up", "whistle", "crew", "line", "lj", "scorer", "opinion", "question", "call", "assignor", "assigner", "first", "gym", "match", "view", "angle":
		return true
	}
	return false
}

// wanted0 reports whether a place is that of a ball that somebody goes for, and
// no way that it went.
func (s *scene) wanted0(c *clauseState, a *atom) bool {
	if !s.fresh || len(s.subj) == 0 {
		return false
	}
	for i := c.from + 2; i < c.to; i++ {
		if s.atoms[i].from == a.from {
			return s.atoms[i-1].class == cBall && s.atoms[i-1].art == 'a' && (s.atoms[i-2].word == "for" || s.atoms[i-2].word == "after" || s.atoms[i-2].word == "at")
		}
	}
	return false
}

// attackAhead reports whether an attack is told from an atom on.
func (s *scene) attackAhead(i int) bool {
	for ; i < len(s.atoms); i++ {
		if a := s.atoms[i]; a.class == cVerb && a.action.Attacking() {
			return true
		}
	}
	return false
}

// beforeShe reads "before the hitter can" at the end of a clause: a teammate of
// the ball's own side was about to play it.
func (s *scene) beforeShe(c *clauseState, a *atom) bool {
	from := 0
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].from == a.from {
			from = i + 1
		}
	}
	person := false
	for i := from; i < c.to; i++ {
		switch b := s.atoms[i]; {
		case b.class == cSide, b.class == cRole, b.class == cPerson, b.class == cMate:
			person = person || b.class != cSide
		case b.class == cFiller, b.class == cAsk:
		default:
			return false
		}
	}
	k := len(s.evs) - 1
	if !person || from == 0 || k < c.first || s.evs[k].Kind != play.Contact {
		return false
	}
	s.settled(from, c.to)
	for i := from; i < c.to; i++ {
		s.atoms[i].class = cFiller
	}
	s.evs[k].set(play.CouldPlay, play.Yes)
	return true
}

// otherSideOf reads "her right", after her left hand.
func (s *scene) otherSideOf(c *clauseState, i int) bool {
	switch s.atoms[i].word {
	case "right", "left", "other":
		return i+1 >= c.to && i > c.from && s.atoms[i-1].class == cShe
	}
	return false
}

// landsBefore reports whether the ball is told to land before an atom of the
// clause.
func (s *scene) landsBefore(c *clauseState, i int) bool {
	for j := c.from; j < i; j++ {
		if a := s.atoms[j]; a.class == cVerb && a.verb == vLand {
			return true
		}
	}
	return false
}

// nextTo is the atom after another one, nil at the end.
func (s *scene) nextTo(a *atom) *atom {
	for i := range s.atoms[:max(len(s.atoms)-1, 0)] {
		if s.atoms[i].from == a.from {
			return &s.atoms[i+1]
		}
	}
	return nil
}

// keptFrom reports whether a line is one that somebody keeps herself from.
func (s *scene) keptFrom(c *clauseState, a *atom) bool {
	stop := false
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		b := s.atoms[i]
		stop = stop || strings.HasPrefix(b.word, "stop") || strings.HasPrefix(b.word, "keep") || strings.HasPrefix(b.word, "kept")
		if stop && b.class == cFiller && b.word == "from" {
			return true
		}
	}
	return false
}

// toldAlready reads a claim about what the story itself tells: "they say she
// was over the net", of a reach that was told. It adds nothing.
func (s *scene) toldAlready(g segment, verb int) bool {
	n := 0
	for i := verb + 1; i < g.to; i++ {
		a := s.atoms[i]
		id := faultOf(a)
		switch {
		case id == "over-net":
			n++
			if !slices.ContainsFunc(s.evs, func(h happening) bool {
				return h.Kind == play.Reach || h.Kind == play.Contact && (h.facts[play.ReachHeight] != play.Unknown || h.facts[play.Place] != play.Unknown)
			}) {
				return false
			}
		case id == "net-contact":
			n++
			if !slices.ContainsFunc(s.evs, func(h happening) bool { return h.Kind == play.NetTouch }) {
				return false
			}
		case id == "centre-line":
			n++
			if !slices.ContainsFunc(s.evs, func(h happening) bool { return h.Kind == play.Line }) {
				return false
			}
		case a.class == cShe, a.class == cSide, a.class == cRole, a.class == cFiller, a.class == cScenery, a.class == cPerson, a.class == cAsk, a.class == cLibero:
		default:
			return false
		}
	}
	if n == 0 {
		return false
	}
	for i := verb + 1; i < g.to; i++ {
		if id := faultOf(s.atoms[i]); id != "" {
			s.touchedBy(id)
		}
	}
	s.settled(g.from, g.to)
	return true
}

// questions are the further questions of a text in its own words. What only
// names another call that could be made of the same act is none: "block? or
// attack?".
func (s *scene) questions(text string) []string {
	var out []string
	first := true
	for _, g := range s.sentences() {
		from, to := s.toks[s.atoms[g.from].from].start, s.toks[s.atoms[g.to-1].to-1].end
		words := strings.Fields(text[from:to])
		if g.mark != '?' && !s.supposes(g) {
			continue
		}
		if !first && len(words) > 2 {
			out = append(out, strings.Join(words, " ")+"?")
		}
		first = false
	}
	return out
}

// sameTwice doubts a story in which one player plays the ball twice in a row
// and no word says that it was the same one again: who did the second is then a
// guess, and no ruling stands on it.
func (s *scene) sameTwice() {
	s.playedBeyond()
	if s.slash {
		return
	}
	for _, a := range s.atoms {
		if a.class == cSame || a.word == "again" || a.word == "twice" || a.class == cFault && a.id == "double-contact" || a.class == cVerb && a.verb == vDouble || strings.Contains(a.word, "self") {
			return
		}
	}
	last := -1
	for _, e := range s.evs {
		if e.Kind != play.Contact {
			if e.Kind == play.Serve {
				last = -1
			}
			continue
		}
		if e.who >= 0 && e.who == last && e.Action != play.Block && e.facts[play.Manner] == play.Unknown {
			s.lost = append(s.lost, whoNext)
			return
		}
		last = e.who
		if e.Action == play.Block || e.Action == play.Press {
			last = -1
		}
	}
}
