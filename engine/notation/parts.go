package notation

import "example.org/netpost/engine/play"

// bodies reads the parts of one player that the ball touches, one after the
// other, and gives the place after them; 0 where other things are touched.
func (s *scene) bodies(c *clauseState, i int) int {
	n, j := s.partsAt(c, i+1)
	if n == 0 || j < c.to && !s.qualifies(j) {
		return 0
	}
	s.numberContact()
	k := s.lastContact()
	if s.herParts(i+1, j) {
		k = s.lastContact()
	}
	if k < 0 {
		return 0
	}
	if e := s.evs[k]; e.Kind == play.Serve || e.Action.Attacking() && k == len(s.evs)-1 {
		w := party{team: e.Team.Other(), pid: -1}
		if p := s.herOf(i+1, j, w.team); p >= 0 {
			w.pid, w.one = p, true
		}
		s.subj = []party{w}
		s.touch(w, play.Touch)
		s.ballSubj, c.ball = true, true
	}
	s.mark(i, j)
	s.bodyHits = n
	s.manyBodies()
	return j
}

// none reads "touches nothing" and "touches nobody", and gives the place after
// it; 0 where something is touched.
func (s *scene) none(c *clauseState, i int) int {
	for j := i + 1; j < c.to; j++ {
		switch b := s.atoms[j]; {
		case b.class == cFiller:
		case b.class == cNobody && j+1 < c.to && s.atoms[j+1].class == cThing:
			return 0
		case b.class == cNobody, b.word == "nothing":
			for j++; j < c.to && (s.atoms[j].class == cPerson || s.atoms[j].class == cRole || s.atoms[j].class == cMate || s.atoms[j].class == cSide); j++ {
			}
			s.mark(i, j)
			if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Reach {
				s.evs[k].set(play.Touches, play.No)
			}
			s.mayReachOnly()
			return j
		default:
			return 0
		}
	}
	return 0
}

// hitBy reads "the ball hits her" of somebody who was not told of before.
func (s *scene) hitBy(c *clauseState, i, j int) bool {
	if s.fresh && len(s.subj) == 1 && s.subj[0].one {
		return false // she is the one just named
	}
	k := s.lastContact()
	if k >= 0 && !(s.evs[k].Action.Attacking() && s.evs[k].who == s.lastWho) || k < 0 && s.lastWho >= 0 {
		return false
	}
	w := party{team: s.alone(), pid: -1, one: true}
	if k >= 0 {
		w.team = s.evs[k].Team.Other()
	}
	if w.team == play.NoTeam {
		return false
	}
	s.mark(i, j+1)
	s.subj = []party{w}
	s.touch(w, play.Touch)
	s.ballSubj, c.ball = true, true
	return true
}

// mayReachOnly tells a reach of which it is said that it touched nothing.
func (s *scene) mayReachOnly() {
	if s.mayReach {
		s.endReach()
		s.reacher = nil
	}
}

// partsAt counts the parts of a body from a place on, and gives the place
// after them.
func (s *scene) partsAt(c *clauseState, i int) (n, j int) {
	for j = i; j < c.to; j++ {
		switch b := s.atoms[j]; b.class {
		case cBody:
			n++
		case cCard:
			if j+1 < c.to && s.atoms[j+1].class == cBody || j+2 < c.to && s.atoms[j+1].class == cScenery && s.atoms[j+2].class == cBody {
				n += b.n - 1
			}
		case cFiller, cMate, cOrder, cShe, cScenery:
		case cFact:
			if b.fact == play.Manner && b.value == play.Double {
				n += 2
				continue
			}
			return n, j
		default:
			return n, j
		}
	}
	return n, j
}

// qualifies reports whether an atom only says more of what was told.
func (s *scene) qualifies(i int) bool {
	switch s.atoms[i].class {
	case cFact, cDoubt, cScenery, cNot, cNobody, cAsk, cVerb, cDest:
		return true
	}
	return false
}

// moreParts reads a clause that goes on with the parts of the body: "then the
// chest in one motion". It gives the place from which the clause is read on.
func (s *scene) moreParts(c *clauseState) int {
	if s.bodyHits == 0 {
		return c.from
	}
	n, j := s.partsAt(c, c.from)
	if j < c.to && n == 0 && s.otherSideOf(c, j) {
		n, j = 1, j+1
	}
	if n == 0 || j < c.to && !s.qualifies(j) {
		s.bodyHits = 0
		return c.from
	}
	s.mark(c.from, j)
	s.bodyHits += n
	s.manyBodies()
	return j
}

// manyBodies makes a contact of two or more parts of the body a double one.
func (s *scene) manyBodies() {
	if k := s.lastContact(); s.bodyHits > 1 && k >= 0 {
		s.evs[k].set(play.Manner, play.Double)
	}
}

// blockTouch makes a touch "on the block" a block.
func (s *scene) blockTouch(c *clauseState, a *atom) bool {
	k := len(s.evs) - 1
	if a.fact != play.Playing || a.word != "on block" || k < c.first || s.evs[k].Kind != play.Contact || s.evs[k].Action != play.Touch {
		return false
	}
	a.used, a.class = true, cFiller
	s.evs[k].Action = play.Block
	s.on = play.NoTeam
	return true
}

// offBody reads "off her forearms": of the one who touched the ball last, one
// more part of the body; of somebody of the other side, a contact.
func (s *scene) offBody(c *clauseState, i int) bool {
	k := s.lastContact()
	for j := i; j < c.to; j++ {
		if b := s.atoms[j].class; b != cBody && b != cShe && b != cFiller && b != cMate && b != cCard {
			return false
		}
	}
	if k < 0 || s.evs[k].Kind != play.Contact {
		return false
	}
	s.mark(i, c.to)
	for p := len(s.people) - 1; p >= 0; p-- {
		if q := s.people[p]; q.Team != s.evs[k].Team && q.acts && !q.bare && s.people[s.evs[k].who].bare {
			w := party{team: q.Team, pid: p, one: true}
			s.touch(w, play.Touch)
			s.bodyHits, s.ballSubj = 1, true
			return true
		}
	}
	s.bodyHits++
	s.manyBodies()
	s.ballSubj = true
	return true
}
