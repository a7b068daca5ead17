package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// participles are past participles that do not end in -ed.
var participles = []string{"caught", "dug", "hit", "held", "kept", "set", "sent", "struck", "swung", "taken", "thrown"}

// undergone reports whether the ball is what a verb is done to and nobody is
// named who did it: "the ball is being dug", "it gets set to the outside".
func (s *scene) undergone(c *clauseState, i int) bool {
	a := &s.atoms[i]
	if !s.ballSubj || i+1 < c.to && s.atoms[i+1].class == cBy {
		return false
	}
	w := s.toks[a.from].form
	if a.to-a.from > 1 || !strings.HasSuffix(w, "ed") && !slices.Contains(participles, w) {
		return false
	}
	for j := i - 1; j >= c.from; j-- {
		switch b := s.atoms[j]; {
		case b.class == cFiller && slices.Contains([]string{"is", "was", "were", "are", "being", "been", "got", "getting"}, b.word), b.class == cVerb && base(b.word) == "get":
			return true
		case b.class == cFiller, b.class == cScenery:
		default:
			return false
		}
	}
	return false
}

// undergoer is the side that did to the ball what a verb without an agent
// says: what is dug or blocked was the opponents', what is set the own.
func (s *scene) undergoer(a *atom) play.Team {
	k := s.lastContact()
	if k < 0 {
		return s.flow()
	}
	e := s.evs[k]
	switch {
	case a.action == play.Dig, a.action == play.Block:
		if e.Action == a.action {
			return e.Team
		}
		return e.Team.Other()
	case s.on != play.NoTeam:
		return s.on
	}
	return e.Team
}

// toldAgain reports whether a contact now told is the one told before the ball
// went over: "sends the third ball over, she hits it standing". Nobody plays the
// ball on the other side, so that it is no second contact.
func (s *scene) toldAgain(c *clauseState, a *atom, who []party) bool {
	n := len(s.evs)
	if n < 2 || c.first != n || len(who) != 1 || who[0].pid < 0 || s.again(c) || s.link == play.Before {
		return false
	}
	over := &s.evs[n-1]
	if over.Kind != play.Cross || over.facts[play.How] != play.Unknown {
		return false
	}
	e := &s.evs[n-2]
	if e.Kind != play.Contact || e.who != who[0].pid || over.Team == e.Team || a.action == play.Block || e.Action == play.Block || e.Action == play.Press {
		return false
	}
	if e.Action == play.Touch {
		e.Action = a.action
	}
	s.waiting(e)
	s.fresh = false
	return true
}

// meetsBlock reports whether the verb at the head of a clause, after a hit, says
// what the ball then met: "attacks, touches their block, lands out".
func (s *scene) meetsBlock(c *clauseState, i int) bool {
	k := len(s.evs) - 1
	if i != c.from || s.fresh || s.ballSubj || k < 0 || s.evs[k].Kind != play.Contact || c.deny {
		return false
	}
	for j := i + 1; j < c.to; j++ {
		switch b := s.atoms[j]; b.class {
		case cSide:
			if t := s.team(b.side); !b.poss || t == s.evs[k].Team {
				return false
			}
		case cRole:
			if b.role == play.Blocker {
				return true
			}
		case cVerb:
			return b.action == play.Block
		case cFiller, cScenery, cCard, cInto:
		default:
			return false
		}
	}
	return false
}

// drives reports whether a verb of the ball's way has the ball as its object:
// "she pops it over", "floats it to the corner".
func (s *scene) drives(c *clauseState, i int) bool {
	if s.ballSubj || len(s.subj) == 0 || i+1 >= c.to || s.atoms[i+1].class != cBall {
		return false
	}
	switch base(s.toks[s.atoms[i].from].form) {
	case "bounce", "curl", "float", "loop", "pop", "shoot", "skip", "sneak", "squirt", "zip":
		return s.atoms[i].to-s.atoms[i].from == 1
	}
	return false
}

// rallied reports whether the word at j only says what a ball was like: "the
// first ball was a rocket".
func (s *scene) rallied(c *clauseState, j int) bool {
	a := s.atoms[j]
	if a.art == 'a' && a.verb == vGo && j > c.from && s.atoms[j-1].class == cFiller && (s.atoms[j-1].word == "was" || s.atoms[j-1].word == "is") {
		s.ballSubj, c.ball = true, true
		return true
	}
	return false
}

// atNet reads that a player is at the net: who jumps there takes off before the
// attack line.
func (s *scene) atNet(c *clauseState, i int) {
	switch s.atoms[i].phrase {
	case "at net", "by net", "right up by net", "up at net", "up by net", "up front":
	default:
		return
	}
	if s.ballSubj || c.deny || len(s.evs) > c.first || i > c.from && !s.fresh {
		return
	}
	s.next = append(s.next, stated1{fact: play.TakeOff, value: play.InFront})
}

// purpose takes up what somebody who was hindered wanted to do: "had to hop
// around her to get to the second ball".
func (s *scene) purpose(c *clauseState, i int) int {
	for j := i + 1; j < c.to; j++ {
		switch a := s.atoms[j]; {
		case a.class == cFiller && a.word == "to":
			s.settled(i+1, c.to)
			for k := i + 1; k < c.to; k++ {
				s.atoms[k].class = cFiller
			}
			return c.to
		case a.class == cShe, a.class == cRole, a.class == cSide, a.class == cPerson, a.class == cBody, a.class == cFiller:
		default:
			return i + 1
		}
	}
	return i + 1
}

// onlyThem reports whether the text says they and their and never we or our.
func (s *scene) onlyThem() bool {
	them := false
	for _, t := range s.toks {
		if t.side.fam == usThem {
			if t.side.n == 0 {
				return false
			}
			them = true
		}
	}
	return them
}

// onlySide is the side of the text's own names, where it names but one.
func (s *scene) onlySide() play.Team {
	out := play.NoTeam
	for _, t := range s.toks {
		if t.side.fam != s.primary {
			continue
		}
		if w := s.team(t.side); out == play.NoTeam {
			out = w
		} else if w != out {
			return play.NoTeam
		}
	}
	return out
}
