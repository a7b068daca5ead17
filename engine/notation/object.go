package notation

import (
	"example.org/netpost/engine/play"
)

func (s *scene) touches(c *clauseState, i int, noun bool) int {
	a := &s.atoms[i]
	if c.deny && a.verb == vHit && s.atoms[c.from].class == cNobody { // "nobody hit it over"
		s.atoms[c.from].used, c.deny = false, false
		return c.to
	}
	if c.deny { // what is not touched is no event
		c.deny, s.heard = false, true
		s.mayReachOnly()
		s.mark(i, i+1)
		for j := i + 1; j < c.to; j++ {
			switch s.atoms[j].class {
			case cBall, cThing, cSide, cRole, cPerson, cMate, cBody, cFiller, cNobody, cOfficial, cBy, cFloor, cAround:
				s.atoms[j].used = true
				continue
			}
			return j
		}
		return c.to
	}
	if j := s.none(c, i); j > 0 {
		return j
	}
	if !noun && s.meetsBlock(c, i) {
		s.ballSubj, c.ball = true, true
	}
	if !noun && s.number > 0 && i > c.from && s.atoms[i-1].class == cNumber {
		if n, _ := s.partsAt(c, i+1); n > 0 { // "the second contact hits her arms and her chest"
			s.ballSubj, c.ball = true, true
		}
	}
	if s.ballSubj && !noun && s.passiveVerb {
		s.hits(c, a, noun)
		return i + 1
	}
	if s.ballSubj && !noun {
		if j := s.bodies(c, i); j > 0 {
			return j
		}
	}
	for j := i + 1; j < c.to; j++ {
		b := &s.atoms[j]
		switch b.class {
		case cBall:
			if s.ballSubj && len(s.subj) > 0 && s.subj[0].pid < 0 {
				continue
			}
			b.used = true
			s.hits(c, a, noun)
			return i + 1
		case cNumber:
			s.hits(c, a, noun)
			return i + 1
		case cThing:
			if s.nearOnly(b) { // "bumps it toward the net"
				b.used = true
				s.hits(c, a, noun)
				return j + 1
			}
			s.touchesThing(c, b)
			a.used = b.used
			return j + 1
		case cOfficial:
			if s.ballSubj || noun {
				a.used, b.used = true, true
				if noun {
					s.hits(c, a, noun)
				}
				s.strike(play.Official)
				return j + 1
			}
		case cFloor, cLine:
			if s.ballSubj {
				a.used = true
				if b.class == cFloor {
					b.used = true
					s.land(s.on, play.In)
				}
				return j + 1
			}
			if len(s.subj) > 0 {
				a.used = true
				if b.class == cFloor {
					s.floor(c, b)
					return j + 1
				}
				return i + 1
			}
		case cCard:
			if !s.personAt(c, j+1) {
				continue
			}
			fallthrough
		case cSide, cRole, cPerson, cMate, cLibero, cRow, cShe, cLabel:
			if j+1 < c.to && s.atoms[j+1].class == cFloor {
				continue
			}
			if b.class == cShe && !s.ballSubj && s.mayReach && j+1 < c.to && s.atoms[j+1].class == cBody && !s.ballAhead(c, a) {
				a.used = true // "reaches over and hits her hands": those of an opponent
				s.settled(j, j+2)
				s.bump(c)
				return j + 2
			}
			if b.class == cShe && !s.ballSubj { // her hand, her own
				if k := len(s.evs) - 1; a.verb == vHit && j+1 < c.to && s.atoms[j+1].class == cBody && !s.fresh && k >= 0 && s.evs[k].Kind == play.Contact && len(s.subj) == 1 && s.evs[k].who == s.subj[0].pid && !s.ballAhead(c, a) {
					s.mark(i, j+2) // "took the second ball, hit her left hand": the ball did
					s.bodyHits = max(s.bodyHits, 1)
					return j + 2
				}
				continue
			}
			if b.class == cShe && s.hitBy(c, i, j) {
				return j + 1
			}
			w, k, ok := s.phrase(c, j)
			if !ok {
				return i + 1
			}
			if w.team == play.NoTeam && w.pid < 0 {
				w.team = s.guess(w)
			}
			if w.team == play.NoTeam {
				return i + 1
			}
			a.used = true
			s.mark(j, k)
			if s.ballSubj || noun {
				if noun && !s.ballSubj {
					s.hits(c, a, noun)
				}
				s.subj, s.fresh = []party{w}, true
				act := play.Touch
				if w.role == play.Blocker {
					act = play.Block
				}
				s.touch(w, act)
				for n := 1; n < w.n; n++ { // "touches three blockers"
					next := w
					next.pid, next.fresh = -1, true
					s.touch(next, act)
				}
				s.ballSubj = true
				if k < c.to && s.atoms[k].class == cBody {
					s.bodyHits = 1
				}
				return k
			}
			s.settled(j, k)
			s.bump(c)
			return k
		case cBody:
			continue
		case cFact:
			if b.fact == play.Cause {
				j = c.to
			}
			continue
		case cFiller, cDoubt, cScenery, cPlace:
			continue
		case cVerb:
			if b.action == play.Block && b.art != 0 && (s.ballSubj || noun) {
				if noun && !s.ballSubj {
					s.hits(c, a, noun)
				}
				a.used, b.used = true, true
				w := party{team: s.away(), pid: -1, role: play.Blocker, one: true}
				if w.team == play.NoTeam {
					w.team = s.flow()
				}
				s.touch(w, play.Block)
				s.ballSubj = true
				return j + 1
			}
			j = c.to
		case cDest, cInto:
			if s.ballSubj && !noun && j == i+1 { // "drilled into the net", "clips off the block"
				a.used = true
				return j
			}
			j = c.to
		case cOrder:
			j = c.to
		}
	}
	s.hits(c, a, noun)
	return i + 1
}

// hits makes the contact of "touches", "hits", "bumps" with the ball.

// hitAs says whether a hit is an attack: it is where a hitter hits, or where

// nobody in particular does and the ball goes over.

// handles reads catches, lifts and doubles: of a new contact, or of the one

// just told.

// serves reads a serve: the service hit, or the served ball.

// received reads what a dig or a block was of: "digs a spike" tells the

// opponents' attack before it.

// wall reads two or more of a side who block together. Who of them touched the

// ball is told later, or it is the first.

// bodyNext reports whether a verb has a part of the body as its object:

// "pushes the hands forward".

// ballNext reports whether the ball is the next thing named after a verb.

// base is the word of the lexicon that s is a form of, s itself for most.
