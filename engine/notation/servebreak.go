package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// servePlayed reads "blocks the serve" and "attacks the serve", which name a
// fault where nobody does it, as what somebody does.
func (s *scene) servePlayed(c *clauseState, a *atom) bool {
	if a.id != "block-of-serve" && a.id != "attack-of-serve" || len(s.subj) == 0 || !s.fresh || s.ballSubj || c.deny {
		return false
	}
	a.used = true
	s.served(s.subj[0].team.Other())
	action := play.Attack
	if a.id == "block-of-serve" {
		action = play.Block
	}
	s.contact(c, &atom{meaning: does(vContact, action), from: a.from, to: a.to, word: a.word}, false)
	return true
}

// doubles reads "doubles" of somebody as the verb.
func (s *scene) doubles(c *clauseState, a *atom) bool {
	if a.word != "doubles" || len(s.subj) == 0 || !s.fresh || s.ballSubj {
		return false
	}
	v := *a
	v.meaning = does(vDouble, play.Touch)
	s.handles(c, &v, false)
	a.used = v.used
	return true
}

// barrier reads a block that the ball is played over, past or around: nobody
// touches it there.
func (s *scene) barrier(c *clauseState, i int) bool {
	a := s.atoms[i]
	if a.action != play.Block || a.art != 't' && !(i > c.from && s.atoms[i-1].poss) {
		return false
	}
	for j := i - 1; j >= c.from; j-- {
		switch b := s.atoms[j]; {
		case b.class == cSide, b.class == cCard, b.class == cRole, b.class == cRow:
			continue
		case b.class == cDest && b.dest == dOver && b.to-b.from <= 2, b.class == cFiller && strings.Contains(" around through past between above ", " "+b.word+" "):
			s.mark(j, i+1)
			return true
		default:
			return false
		}
	}
	return false
}

// reachedFor reads the noun of a contact after "for": "reaches for a tight pass".
func (s *scene) reachedFor(c *clauseState, i int) bool {
	a := s.atoms[i]
	if !s.fresh || a.verb != vContact {
		return false
	}
	for j := i - 1; j >= c.from; j-- {
		switch b := s.atoms[j]; {
		case b.class == cFact, b.class == cDoubt, b.class == cScenery:
		case b.class == cFiller && b.word == "for":
			if len(s.subj) == 1 && s.subj[0].one {
				w := s.subj[0]
				s.reaching = &w
			}
			return true
		default:
			return false
		}
	}
	return false
}

// toldOf reports whether a verb or noun only says which contact is meant, or
// when: "after the contact", "contact on A's side", "the middle who jousted".
func (s *scene) toldOf(c *clauseState, i int, noun bool) bool {
	a := s.atoms[i]
	if i > c.from && s.atoms[i-1].word == "who" && i-1 > c.from {
		for _, e := range s.evs {
			if e.Kind == play.Contact && e.Action == a.action && a.action != play.Touch {
				return true
			}
		}
		return false
	}
	if i == c.from && base(a.word) == "contact" && s.lastContact() >= 0 && !c.deny && i+1 < c.to && s.atoms[i+1].class == cFiller && (s.atoms[i+1].word == "was" || s.atoms[i+1].word == "is") {
		return true // "contact was at head height"
	}
	if base(a.word) != "contact" && base(a.word) != "touch" || s.toks[a.from].form != a.word || s.lastContact() < 0 || s.fresh || c.deny {
		return false
	}
	if i+1 < c.to && s.atoms[i+1].class == cBy {
		return false
	}
	for j := i - 1; j >= c.from; j-- {
		switch b := s.atoms[j]; b.class {
		case cScenery, cFact, cDoubt:
		case cOrder:
			if b.id == "after" || b.id == "before" || b.id == "before-that" {
				s.swap, s.link = false, play.Unknown
				return true
			}
			return false
		case cFiller:
			if b.word == "at" || b.word == "on" || b.word == "upon" || b.word == "during" {
				return true
			}
			return false
		default:
			return false
		}
	}
	if i > c.from { // "brief touch"
		return true
	}
	return i+1 < c.to && (s.atoms[i+1].class == cPlace || s.atoms[i+1].class == cFact || s.atoms[i+1].class == cDest)
}

// passive reads "ball played one-handed", where nobody is named.
func (s *scene) passive(c *clauseState, a *atom) bool {
	f := s.toks[a.from].form
	if a.verb != vContact || !s.ballSubj || len(s.subj) > 0 || len(s.evs) > 0 || len(f) < 4 || f[len(f)-2:] != "ed" || c.deny || s.alone() == play.NoTeam {
		return false
	}
	a.used = true
	s.touch(party{team: s.alone(), pid: -1}, a.action)
	s.ballSubj, c.ball = true, true
	return true
}

// notKnown reads "don't know who touched it next": who played the ball then is
// in doubt, and no touch is told.
func (s *scene) notKnown(c *clauseState, i int) bool {
	know := false
	for j := c.from; j < i; j++ {
		know = know || s.atoms[j].word == "know" || s.atoms[j].word == "tell" || s.atoms[j].word == "remember"
	}
	k := s.lastContact()
	if !know || !c.deny || s.atoms[i-1].word != "who" || k < 0 || s.evs[k].Kind != play.Contact {
		return false
	}
	c.deny = false
	s.mark(i, c.to)
	s.evs[k].set(play.Completes, play.Unknown)
	return true
}

// sameAct reports whether a noun without an article names the contact told
// last, of which the ball's way then follows: "sets it, set goes over".
func (s *scene) sameAct(c *clauseState, i int) bool {
	a, k := s.atoms[i], s.lastContact()
	if a.art != 0 || k < 0 || s.evs[k].Kind != play.Contact || s.evs[k].Action != a.action || a.action == play.Touch || i != c.from || s.fresh || i+1 >= c.to {
		return false
	}
	if t := s.toks[a.from]; t.base != "" && t.base != t.form {
		return false
	}
	b := s.atoms[i+1]
	return b.class == cDest && b.dest != dNone || b.class == cVerb && (b.verb == vGo || b.verb == vLand)
}

// follows reads an arm that goes on over the net: after a hit it reaches
// there, before one it is how the ball is reached.
func (s *scene) follows(c *clauseState, a *atom) {
	if len(s.subj) == 0 || s.ballSubj {
		return
	}
	a.used = true
	if c.deny {
		c.deny = false
		return
	}
	w := s.subj[0]
	k := s.lastContact()
	for j := k + 1; k >= 0 && j < len(s.evs); j++ {
		if !s.evs[j].Ball() {
			k = -1
		}
	}
	if k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].Team == w.team {
		if w.pid < 0 {
			w.pid = s.evs[k].who
		}
		s.mayReach = false
		s.waiting(s.add(play.Event{Kind: play.Reach, Team: w.team}, s.settle(&w)))
		s.fresh = false
		return
	}
	s.mayReach = true
}
