package notation

import (
	"example.org/netpost/engine/play"
)

func (s *scene) used(c *clauseState, a *atom) {
	a.used = true
	if len(s.evs) > 0 && s.contacts() > 0 {
		a.used = false // the count is in the events told
		return
	}
	s.open[play.Used] = []play.Value{play.Zero, play.N1, play.N2, play.N3}[a.n]
	t := s.lastSide(c, a)
	if t != play.NoTeam {
		s.open[play.Has] = play.Value(t.String())
	}
	s.subj, s.fresh = nil, false
}

func (s *scene) lastSide(c *clauseState, a *atom) play.Team {
	t := play.NoTeam
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		if s.atoms[i].class == cSide {
			t = s.team(s.atoms[i].side)
		}
	}
	return t
}

func (s *scene) opening(a *atom) {
	t := s.team(a.side)
	switch a.id {
	case "has":
		if t != play.NoTeam {
			a.used = true
			s.open[play.Has] = play.Value(t.String())
		}
	case "serving":
		if t != play.NoTeam {
			a.used = true
			s.open[play.Serving] = play.Value(t.String())
			if s.primary != serveRec {
				s.first[serveRec] = t
			}
		}
	case "free":
		if len(s.evs) > 0 {
			return
		}
		a.used = true
		t = play.NoTeam
		for i := range s.atoms {
			if s.atoms[i].from == a.from && i > 0 && s.atoms[i-1].class == cSide && s.atoms[i-1].poss {
				t = s.team(s.atoms[i-1].side)
			}
		}
		s.over = true
		for i := range s.atoms {
			if s.atoms[i].from == a.from && t == play.NoTeam && i+2 < len(s.atoms) && s.atoms[i+1].word == "from" && s.atoms[i+2].class == cSide && !s.atoms[i+2].poss {
				if r := s.team(s.atoms[i+2].side); r != play.NoTeam { // "free ball from them"
					s.mark(i+1, i+3)
					s.atoms[i+2].class = cFiller
					t, s.on = r, r.Other()
				}
			}
			if s.atoms[i].from == a.from && t == play.NoTeam && i+2 < len(s.atoms) && s.atoms[i+1].word == "to" && s.atoms[i+2].class == cSide && !s.atoms[i+2].poss {
				if r := s.team(s.atoms[i+2].side); r != play.NoTeam { // "free ball to B"
					s.mark(i+1, i+3)
					s.atoms[i+2].class = cFiller
					t, s.on = r.Other(), r
				}
			}
		}
		if t != play.NoTeam {
			s.open[play.Has] = play.Value(t.String())
		}
		if a.word != "free ball" {
			s.next = append(s.next, stated1{fact: play.Place})
		}
		s.fresh = false
	case "receive":
		if n := s.nextTo(a); len(s.evs) == 0 && n != nil && n.class == cVerb && n.verb == vGo {
			a.used = true // "their serve receive goes straight up"
			w := party{team: s.alone(), pid: -1}
			if len(s.subj) > 0 {
				w.team = s.subj[0].team
			} else if b := s.before(a); b != nil && b.class == cSide {
				w.team, b.used = s.team(b.side), true
			}
			if w.team != play.NoTeam {
				s.subj = nil
				s.touch(w, play.Pass)
				s.ballSubj = true
			}
			return
		}
		if len(s.evs) == 0 && s.handledAhead(a) {
			a.used = true
			s.touch(party{team: s.alone(), pid: -1}, play.Pass)
			return
		}
		if len(s.evs) == 0 {
			a.used, s.reception = true, true
			s.open[play.Used] = play.Zero
			if len(s.subj) > 0 && s.subj[0].team != play.NoTeam {
				s.open[play.Has] = play.Value(s.subj[0].team.Other().String())
			}
			delete(s.open, play.Used) // the contact that follows is the first
			delete(s.open, play.Has)
		}
	}
}

func (s *scene) numbered(c *clauseState, i int) int {
	a := &s.atoms[i]
	a.used = true
	if s.goesFor(c, i) {
		return i + 1
	}
	if i == c.from && len(s.evs) > 1 && c.to-c.from < 5 && i+2 < c.to && (s.atoms[i+1].word == "was" || s.atoms[i+1].word == "is") && s.atoms[i+2].class == cVerb && s.atoms[i+2].art == 'a' {
		s.lost = append(s.lost, s.words(*a)) // "the first hit was a pass", said after the play: where it belongs is not known
		return c.to
	}
	if len(s.evs) > c.first { // "plays the second ball"
		for j := len(s.evs) - 1; j >= c.first; j-- {
			if s.evs[j].Kind == play.Contact {
				if j == 1 && s.evs[1].joint && s.evs[0].joint && s.evs[0].Team == s.evs[1].Team {
					j = 0 // two who touch it together, and nothing before: so much had been used
				}
				s.evs[j].Number = a.n
				return i + 1
			}
		}
	}
	if a.n == 4 && c.mark == '?' {
		s.want("four-contacts")
		return i + 1
	}
	t := s.lastSide(c, a)
	if t == play.NoTeam && len(s.subj) > 0 {
		t = s.subj[0].team
	}
	s.number, s.numberOf, s.numberBy = a.n, t, nil
	s.heard = true
	if s.fresh && !s.ballSubj && len(s.subj) == 1 && s.subj[0].one && (t == play.NoTeam || t == s.subj[0].team) && (s.subj[0].pid < 0 || !s.people[s.subj[0].pid].acts) && !s.verbAhead(c, c.from) {
		w := s.subj[0]
		s.numberBy, s.numberOf = &w, w.team
	}
	if i > c.from && s.atoms[i-1].poss && s.atoms[i-1].class != cSide && len(s.subj) > 0 {
		w := s.subj[0]
		s.numberBy, s.numberOf = &w, w.team
	}
	if i+1 < c.to && s.atoms[i+1].class == cFiller && s.atoms[i+1].word == "used" {
		return i + 1
	}
	// A ball that goes somewhere has been hit: the contact is told here.
	for j := i + 1; j < c.to; j++ {
		switch s.atoms[j].class {
		case cInto:
			if s.comesOff(c, i, j) {
				return i + 1
			}
			s.numberContact()
			c.ball = true
			return i + 1
		case cDest, cThing:
			s.numberContact()
			c.ball = true
			return i + 1
		case cVerb:
			if j+1 < c.to && s.atoms[j+1].class == cInto && s.comesOff(c, i, j+1) {
				return i + 1
			}
			if s.rallied(c, j) { // "first ball was a rocket": no way that it went
				return i + 1
			}
			if k := s.atoms[j].verb; k == vGo || k == vLand || (k == vTouch || k == vHit) && s.thingAhead(c, j) {
				s.numberContact()
				c.ball = true
			}
			return i + 1
		case cRole, cPerson, cSide, cRow, cLibero:
			return i + 1
		}
	}
	return i + 1
}

func (s *scene) thingAhead(c *clauseState, i int) bool {
	for ; i < c.to; i++ {
		if k := s.atoms[i].class; k == cThing || k == cOfficial {
			return true
		}
	}
	return false
}

func (s *scene) numberContact() {
	if s.number == 0 {
		return
	}
	t := s.numberOf
	if t == play.NoTeam {
		t = s.flow()
	}
	w := party{team: t, pid: -1}
	if s.numberBy != nil {
		w = *s.numberBy
		s.numberBy = nil
	}
	comma := s.comma
	defer func() { s.comma = comma }()
	action := play.Touch
	if s.number == 1 {
		action = play.Pass
	}
	s.touch(w, action)
	s.ballSubj = true
	s.subj = nil
}

func (s *scene) flow() play.Team {
	if s.on != play.NoTeam {
		return s.on
	}
	if t := s.actor(); t != play.NoTeam {
		return t
	}
	return play.A
}

func (s *scene) flush() {
	if s.number > 0 && s.contacts() == 0 {
		s.numberContact()
	}
	if s.reception && len(s.evs) == 0 { // "serve receive, two hits in one motion"
		s.touch(party{team: s.flow(), pid: -1}, play.Pass)
	}
	s.endReach()
	s.unheard()
	if s.both && s.contacts() == 0 {
		s.pairContacts()
	}
}

func (s *scene) pairContacts() {
	for _, t := range []play.Team{play.A, play.B} {
		w := party{team: t, pid: -1, row: s.bothRow}
		for i, p := range s.people {
			if p.Team == t {
				w.pid = i
			}
		}
		keep := s.next
		s.touch(w, play.Touch)
		if t == play.A {
			s.next = keep
		}
	}
	s.evs[len(s.evs)-1].link = play.Unknown
	s.pairAsked = true
}
