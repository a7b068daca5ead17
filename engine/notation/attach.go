package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// state reads a value of a fact, or that its presumption is touched, and
// attaches it to what it is about: the event of the clause, the one just told,
// or the one that follows.
func (s *scene) state(c *clauseState, a *atom, f play.FactID, v play.Value) {
	row, _ := play.FactByID(f)
	if s.blockTouch(c, a) {
		return
	}
	if f == play.Hinders && strings.HasPrefix(a.phrase, "every") && (len(s.evs) == 0 || s.evs[len(s.evs)-1].Kind != play.Intrusion) {
		a.class = cScenery // everybody stops for a call too
		return
	}
	if f == play.TakeOff && s.landed(c, a) {
		a.used = true // where a player comes down
		return
	}
	a.used = true
	s.heard = true
	if f == play.Place && v == play.Own && s.farFromNet(a) {
		return
	}
	if k := len(s.evs) - 1; f == play.Playing && v == play.No && k >= c.first && s.evs[k].Kind == play.NetTouch && s.willed(a) && s.pulled(c) {
		s.evs[k].set(play.Hinders, play.Yes) // to gain something by it
	}
	if s.elsewhere(a, f) || f == play.Completes && s.body != play.Unknown && !s.afterBall(a) {
		return // "her feet stayed on our side"
	}
	if f == play.CouldPlay && v == play.No && len(s.evs) > 0 && s.evs[len(s.evs)-1].Kind == play.Bump && s.atoms[c.from].word == "who" {
		s.evs[len(s.evs)-1].set(play.Hinders, play.Yes) // "collides with the setter, who cannot reach the ball"
		return
	}
	if f == play.CouldPlay && v == play.No && len(s.evs) > 0 {
		switch s.evs[len(s.evs)-1].Kind {
		case play.NetTouch, play.Line, play.Bump: // nobody was there to be hindered
			f, row = play.Hinders, mustFact(play.Hinders)
		}
	}
	if f == play.Cause && v == play.ByHair && len(s.subj) == 0 && len(s.evs) == c.first && s.alone() != play.NoTeam {
		s.subj, s.fresh, s.ballSubj = []party{{team: s.alone(), pid: -1, one: true}}, true, false // "a girl's ponytail brushes the net"
		if b := s.before(a); b != nil && b.class == cShe {
			b.used = true
		}
	}
	if f == play.Place && v == play.Unknown && a.class == cDoubt && s.afterPerson(a) && s.fresh {
		a.class = cFiller // where a player is
		return
	}
	if f == play.Place && v == play.Unknown && a.class == cDoubt {
		if k := s.lastContact(); k < 0 || s.evs[k].Action == play.Pass || s.evs[k].Action == play.Dig || s.evs[k].Action == play.Set && len(s.evs) > c.first {
			s.next = append(s.next, stated1{fact: f}) // a tight ball is in doubt for who plays it next
			return
		}
	}
	if k := len(s.evs) - 1; f == play.Ball && v == play.Live && k >= c.first && s.evs[k].Kind == play.NetTouch && s.toks[a.to-1].art == 't' {
		f, row, v = play.Playing, mustFact(play.Playing), play.Yes // "touches the net in the play"
	}
	if c.deny && v != play.Unknown {
		if !(f == play.Hinders && v == play.No) { // "nobody hurt, nobody bothered"
			v = denied0(row, v)
		}
		c.deny = false
	}
	if c.asks {
		v = play.Unknown
	}
	if row.About == play.OfSetting {
		if f == play.Ball && v == play.Dead && c.first > 0 {
			a.used = false // when it went dead lies between told events
			return
		}
		if v == play.Unknown {
			s.voids[f] = true
		} else {
			s.open[f] = v
		}
		return
	}
	// Higher than the net is said of a block's hands, and of another's ball.
	if f == play.Height && v == play.Above && len(s.evs) > c.first {
		if e := s.evs[len(s.evs)-1]; (e.Kind == play.Attempt || e.Action == play.Block || e.Action == play.Press) && s.toks[a.from].form == "above" && !s.afterBall(a) {
			f, row = play.ReachHeight, mustFact(play.ReachHeight)
		}
	}
	if f == play.Height && v == play.Above && len(s.evs) == c.first && s.fresh && s.toks[a.from].form == "above" && s.afterPerson(a) {
		if k := s.sheDid(c, mustFact(play.ReachHeight)); k >= 0 {
			s.evs[k].set(play.ReachHeight, v) // "she was above the tape"
			return
		}
		a.fact, s.reachUp = play.ReachHeight, v // "the setter above the net"
		return
	}
	if f == play.Cause && v == play.ByBall && (len(s.evs) == c.first || strings.HasSuffix(a.word, "to")) && s.pushed(c, a) {
		return
	}
	if f == play.Extent && s.body == play.Unknown {
		switch {
		case strings.Contains(a.word, "hand"):
			s.body = play.Hand // "her whole hand"
		case strings.Contains(a.word, "foot"), strings.Contains(a.word, "feet"), strings.Contains(a.word, "heel"):
			s.body = play.Foot
		}
	}
	if f == play.Extent && len(s.evs) == c.first {
		s.extent = v
		if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Line && !s.verbAhead(c, c.from) {
			s.evs[k].facts[play.Extent] = v
			s.extent = play.Unknown
		}
		return
	}
	if f == play.Height && v != play.Unknown && s.ofBody(c, a) {
		f, row = play.ReachHeight, mustFact(play.ReachHeight)
		if v == play.NotAbove {
			v = play.Below
		}
		if s.fresh {
			a.fact, s.reachUp = f, v
			return
		}
	}
	a.fact = f
	if s.fresh && (f == play.CouldPlay || f == play.Hinders) {
		s.subjectTold()
	}
	k := s.holder(c, row)
	if k < 0 && f == play.Playing && v == play.Yes && len(s.evs) > 0 && !s.fresh {
		a.class = cFiller
		return // of a hand that went over: nothing turns on it
	}
	if k < 0 && f == play.CouldPlay && len(s.evs) > 0 && s.evs[0].Kind == play.Intrusion {
		return
	}
	if k < 0 {
		if s.fresh && len(s.subj) == 1 && f != play.CouldPlay && s.subj[0].to > 0 {
			pid := s.settle(&s.subj[0]) // who must act yet, or was told of in vain
			if !s.people[pid].acts {
				s.people[pid].from, s.people[pid].to = s.subj[0].from, s.subj[0].to
			}
		}
		s.next = append(s.next, stated1{fact: f, value: v, at: a})
		return
	}
	if c.from > 0 && s.atoms[c.from-1].id == "or" && v == play.Yes && s.evs[k].facts[f] == play.No {
		return // "no player hindered or distracted"
	}
	s.evs[k].set(f, v)
	if f == play.Playing {
		for j := c.first; j < k; j++ { // those who touch the net in one clause do it alike
			if s.evs[j].Kind == play.NetTouch {
				s.evs[j].set(f, v)
			}
		}
	}
	for j := c.first; j < len(s.evs); j++ { // those who block together do it alike
		if s.evs[k].wall && s.evs[j].wall || s.evs[k].joint && s.evs[j].joint {
			s.evs[j].set(f, v)
		}
	}
	if f == play.Place && v == play.Plane && k < c.first {
		s.next = append(s.next, stated1{fact: f, value: v, side: s.evs[k].Team.Other()})
	}
}

func mustFact(id play.FactID) play.Fact {
	f, ok := play.FactByID(id)
	if !ok {
		panic("notation: no fact " + id)
	}
	return f
}

// set tells a fact of an event, or sets its presumption aside. What was told
// stays told.
func (h *happening) set(f play.FactID, v play.Value) {
	if v == play.Unknown {
		if _, told := h.facts[f]; !told {
			h.voids[f] = true
		}
		return
	}
	if f == play.Manner && v == play.Clean && h.facts[f] == play.Double {
		return // "not held", said of more touches than one
	}
	h.facts[f] = v
	delete(h.voids, f)
}

// denied0 is what "not" makes of a value: the other of two, else that it is in
// doubt.
func denied0(f play.Fact, v play.Value) play.Value {
	if len(f.Values) == 2 {
		for _, c := range f.Values {
			if c.Value != v {
				return c.Value
			}
		}
	}
	if f.ID == play.Manner {
		if v == play.Clean {
			return play.Unknown
		}
		return play.Clean
	}
	return play.Unknown
}

// holder is the event that a fact told here belongs to, -1 for one that
// follows.
func (s *scene) holder(c *clauseState, f play.Fact) int {
	can := func(k int) bool { return slices.Contains(f.Kinds, s.evs[k].Kind) }
	for k := len(s.evs) - 1; k >= c.first; k-- {
		if can(k) {
			return k
		}
	}
	switch f.ID {
	case play.Place, play.Height, play.TakeOff, play.ReachHeight, play.Fingers, play.Manner, play.Attempts:
		if s.fresh && s.verbSoon(c) {
			if k := s.sheDid(c, f); k >= 0 {
				return k
			}
			return -1
		}
	case play.CouldPlay:
		for k := len(s.evs) - 1; k >= 0; k-- {
			e := s.evs[k]
			if e.Kind == play.Strike || e.Kind == play.Reach {
				return k
			}
			if e.Kind == play.Contact {
				if e.Action == play.Block || e.facts[play.Place] == play.Beyond || e.voids[play.Place] || k > 0 && s.evs[k-1].Kind == play.Contact && s.evs[k-1].Team != e.Team {
					return k
				}
				return -1
			}
		}
		return -1
	case play.Seen:
		if k := len(s.evs) - 1; k >= 0 && (s.evs[k].Kind != play.Contact || s.evs[k].Action == play.Block || s.evs[k].Action == play.Touch) && can(k) {
			return k
		}
		return -1
	case play.Completes:
		return -1
	}
	for k := len(s.evs) - 1; k >= 0; k-- {
		if can(k) {
			return k
		}
	}
	return -1
}

// verbSoon reports whether the one just named has yet to act.
func (s *scene) verbSoon(c *clauseState) bool { return len(s.evs) == c.first }

// waiting gives an event what was told before it.
func (s *scene) waiting(h *happening) {
	rest := s.next[:0:0]
	for _, n := range s.next {
		row := mustFact(n.fact)
		if !slices.Contains(row.Kinds, h.Kind) || n.side != play.NoTeam && h.Team != n.side ||
			n.fact == play.Place && n.value == play.Unknown && (h.Action == play.Pass || h.Action == play.Dig) { // a tight pass is in doubt for who plays it next
			rest = append(rest, n)
			continue
		}
		_, told := h.facts[n.fact]
		if n.side != play.NoTeam && (told || h.whole != play.NoTeam) {
			continue
		}
		if !told {
			h.set(n.fact, n.value)
			if n.side != play.NoTeam && n.fact == play.Place && n.value == play.Plane {
				s.unplace(h)
			}
		}
		// A ball told before two people touch it is there for both.
		if n.fact == play.Place && n.side == play.NoTeam && len(s.subj) == 2 && h.Team == s.subj[0].team {
			rest = append(rest, n)
		}
	}
	s.next = rest
}

// unplace takes the place in the plane from the set or pass before a contact:
// told by itself between the two, it is where the ball then was.
func (s *scene) unplace(h *happening) {
	for k := len(s.evs) - 1; k >= 0; k-- {
		e := &s.evs[k]
		if e == h || e.Kind != play.Contact || e.Team == h.Team {
			continue
		}
		if h.link != play.Same {
			delete(e.facts, play.Place)
		}
		return
	}
}

// placed reads where the ball is by the name of a side.
func (s *scene) placed(c *clauseState, a *atom) {
	t := s.team(a.side)
	if !a.side.ok() { // "completely on her side"
		t = s.actor()
	}
	if t == play.NoTeam {
		return
	}
	if b := s.before(a); b != nil && b.class == cBody && t == s.actor() {
		a.used = true // where a foot was
		return
	}
	a.used = true
	void := c.deny || c.asks
	c.deny = false
	give := func(h *happening) {
		if void {
			h.set(play.Place, play.Unknown)
			return
		}
		h.whole = t
		if h.Team == t {
			h.set(play.Place, play.Own)
		} else {
			h.set(play.Place, play.Beyond)
		}
	}
	k := -1
	for j := len(s.evs) - 1; j >= c.first; j-- {
		if s.evs[j].Kind == play.Contact {
			k = j
			break
		}
	}
	if k < 0 && !s.fresh {
		if j := s.lastContact(); j >= 0 && s.evs[j].Kind == play.Contact {
			k = j
		}
	}
	if k >= 0 {
		give(&s.evs[k])
		if k >= c.first && s.evs[k].Team != t {
			return
		}
	}
	if void {
		return
	}
	v := play.Own
	if t == play.A {
		s.next = append(s.next, stated1{fact: play.Place, value: play.Beyond, side: play.B})
		if k < 0 {
			s.next = append(s.next, stated1{fact: play.Place, value: v, side: play.A})
		}
	} else {
		s.next = append(s.next, stated1{fact: play.Place, value: play.Beyond, side: play.A})
		if k < 0 {
			s.next = append(s.next, stated1{fact: play.Place, value: v, side: play.B})
		}
	}
}

// tell gives a fact to the last event that can have it.
func (s *scene) tell(f play.FactID, v play.Value) {
	row := mustFact(f)
	for k := len(s.evs) - 1; k >= 0; k-- {
		if slices.Contains(row.Kinds, s.evs[k].Kind) {
			s.evs[k].set(f, v)
			return
		}
	}
}

// pushed reads whom the ball drives the net into.
func (s *scene) pushed(c *clauseState, a *atom) bool {
	for j := c.from; j < c.to; j++ {
		if s.atoms[j].from < a.to {
			continue
		}
		w, k, ok := s.phrase(c, j)
		if !ok || w.team == play.NoTeam && w.pid < 0 {
			if ok {
				w.team = s.guess(w)
			}
			if w.team == play.NoTeam {
				continue
			}
		}
		s.mark(j, k)
		for ; j < k; j++ {
			s.atoms[j].class = cFiller // read here
		}
		s.subj = []party{w}
		s.netTouch(w, play.PartNet)
		s.evs[len(s.evs)-1].facts[play.Cause] = play.ByBall
		return true
	}
	return false
}
