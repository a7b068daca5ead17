package notation

import "example.org/netpost/engine/play"

// otherReached tells of somebody who reached across the net or above it where
// another one touches the ball then: of the same side it is a try to block,
// of the other a reach that met nothing.
func (s *scene) otherReached(w party) {
	r := s.reacher
	if r == nil || !s.mayReach {
		s.reacher = nil
		return
	}
	if r.team == w.team && (r.pid >= 0 && r.pid == w.pid || r.pid < 0 && w.pid < 0 && r.role == w.role && r.label == w.label) {
		s.reacher = nil
		return
	}
	if len(s.subj) > 1 || !r.one {
		s.reacher = nil
		return
	}
	s.reacher, s.mayReach = nil, false
	next := s.next
	s.next = nil
	s.aside(func() {
		if r.team == w.team {
			h := s.add(play.Event{Kind: play.Attempt, Team: r.team}, s.settle(r))
			h.facts[play.ReachHeight] = play.Above
			return
		}
		s.add(play.Event{Kind: play.Reach, Team: r.team}, s.settle(r))
	})
	s.next = next
}

// personNext reports whether somebody is named right after a verb.
func (s *scene) personNext(c *clauseState, i int) bool {
	for ; i < c.to; i++ {
		switch s.atoms[i].class {
		case cFiller, cScenery:
		case cSide:
			return i+1 >= c.to || s.personAt(c, i+1)
		case cRole, cPerson, cLibero, cRow, cMate, cLabel:
			return true
		case cShe:
			return s.atoms[i].word == "her" || s.atoms[i].word == "him"
		default:
			return false
		}
	}
	return false
}

// against0 reads the one against whom somebody presses the ball: "pushes
// against B's blocker".
func (s *scene) against0(c *clauseState, i int) int {
	n := len(s.evs)
	if n == 0 || s.evs[n-1].Action != play.Press || n-c.first != 1 && n > 0 && len(s.subj) > 1 {
		return i
	}
	j := i
	for j < c.to && s.atoms[j].class == cFiller {
		j++
	}
	if !s.personNext(c, j) {
		return i
	}
	w, k, ok := s.phrase(c, j)
	if !ok || w.team != s.evs[n-1].Team.Other() {
		return i
	}
	s.mark(i, k)
	s.link = play.Same
	s.touch(w, play.Press)
	return k
}

// landsOn reads a player who comes down on an opponent: "lands on B blocker's
// foot".
func (s *scene) landsOn(c *clauseState, a *atom) bool {
	if a.dest != dDown || !a.side.ok() {
		return false
	}
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].from != a.to {
			continue
		}
		if b := s.atoms[i]; b.class != cRole && b.class != cPerson && b.class != cBody && b.class != cLabel && b.class != cRow {
			return false
		}
		for ; i < c.to; i++ {
			switch s.atoms[i].class {
			case cRole, cPerson, cBody, cLabel, cRow:
				s.mark(i, i+1)
				continue
			}
			break
		}
		a.used = true
		if !c.deny {
			s.bump(c)
		}
		c.deny = false
		return true
	}
	return false
}

// cameDown reports whether a landing is that of the player who was just told
// to be beyond the line or at the net, not the ball's.
func (s *scene) cameDown(c *clauseState, a *atom) bool {
	n := len(s.evs)
	if a.dest != dDown || s.ballSubj || n == 0 || len(s.subj) == 0 || n != c.first {
		return false
	}
	switch e := s.evs[n-1]; e.Kind {
	case play.Line, play.NetTouch, play.Bump:
		return e.who == s.subj[0].pid && e.who >= 0
	}
	return false
}

// restated reports whether an attack or a contact is the one just told, in
// other words: "hits it, she tools the block", "swings and contacts it".
func (s *scene) restated(c *clauseState, a *atom, who []party) bool {
	k := len(s.evs) - 1
	if k > 0 && s.evs[k].Kind == play.Cross && len(who) == 1 && who[0].pid >= 0 && s.evs[k-1].who == who[0].pid && s.evs[k-1].Action.Attacking() && a.action.Attacking() && s.link != play.Before && !s.again(c) {
		k-- // "swings over the net and spikes it"
	}
	if k >= 0 && s.evs[k].taken && len(who) == 1 && who[0].pid >= 0 && s.evs[k].who == who[0].pid && a.action.Attacking() && s.link != play.Before && !s.again(c) {
		s.evs[k].Action, s.evs[k].taken = a.action, false // "takes the serve in front of the line, smashes it back"
		s.waiting(&s.evs[k])
		s.fresh = false
		return true
	}
	if k < 0 || len(who) != 1 || who[0].pid < 0 || s.evs[k].Kind != play.Contact || s.evs[k].who != who[0].pid || !s.evs[k].Action.Attacking() || s.link == play.Before || s.again(c) {
		return false
	}
	switch {
	case a.action.Attacking():
		s.evs[k].Action = a.action
	case base(a.word) != "contact":
		return false
	}
	s.waiting(&s.evs[k])
	s.fresh = false
	return true
}

// justLands tells a ball that lands where nothing more is said of it: "around
// when the ball lands".
func (s *scene) justLands(c *clauseState, i int) {
	if base(s.atoms[i].word) != "land" || !s.ballSubj || s.lastContact() < 0 && len(s.evs) == 0 {
		return
	}
	when := false
	for j := c.from; j < c.to; j++ {
		switch b := s.atoms[j]; {
		case b.class == cOrder && (b.id == "when" || b.id == "unsure"):
			when = true
		case j > i && (b.class == cDest || b.class == cFloor || b.class == cLine || b.class == cThing || b.class == cInto || b.class == cFact || b.class == cSide):
			return
		}
	}
	if !when || len(s.evs) == 0 || c.deny {
		return
	}
	s.land(play.NoTeam, play.Unknown)
	s.evs[len(s.evs)-1].split = true
}

// hands reports whether what the ball comes off is a part of those who touched
// it last: "goes out off their hands".
func (s *scene) hands(c *clauseState, w party, j int) bool {
	k := s.lastContact()
	return w.pid < 0 && !w.one && j < c.to && s.atoms[j].class == cBody && k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].Team == w.team && !s.evs[k].Action.Attacking()
}

// endsOut reports whether a clause is the word "out" that ends the ball's way:
// "off the block and out".
func (s *scene) endsOut(g segment) bool {
	for g.to-g.from > 1 && s.atoms[g.to-1].class == cFiller {
		g.to--
	}
	for g.to-g.from > 1 && s.atoms[g.from].class == cFiller {
		g.from++
	}
	if g.to-g.from != 1 || g.from == 0 || s.atoms[g.from].id != "ball-out" || s.atoms[g.from].word != "out" {
		return false
	}
	if s.atoms[g.from-1].class == cFiller { // "and way out the back"
		for j := g.from - 1; j > 0; j-- {
			if a := s.atoms[j]; a.class != cFiller {
				return a.class == cJoin && a.id == "and" && s.lastContact() >= 0
			}
		}
		return false
	}
	p := s.atoms[g.from-1]
	return p.class == cJoin && p.id == "and" && s.lastContact() >= 0
}
