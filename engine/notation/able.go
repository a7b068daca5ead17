package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// able reads a clause that only says whether somebody could play the ball:
// "A setter could have played it", "none of them able to get to it".
func (s *scene) able(g segment) bool {
	if g.mark == '?' || len(s.evs) == 0 && s.open[play.Has] == play.Unknown {
		return false
	}
	v, can, verb, person, nobody := play.Yes, false, false, false, false
	switch s.atoms[g.from].word {
	case "can", "could", "would", "may":
		return false // a question
	}
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch a.class {
		case cNot:
			v = play.No
		case cNobody:
			v, person, nobody = play.No, true, true
		case cSide, cRole, cRow, cLibero, cPerson, cMate, cLabel, cShe:
			person = true
		case cBall, cScenery, cCard:
		case cFact:
			if a.fact != play.CouldPlay {
				return false
			}
			can, verb = true, true
			if a.value == play.No {
				v = play.No
				nobody = nobody || strings.HasPrefix(a.word, "no")
			}
		case cFiller, cAsk:
			switch a.word {
			case "could", "can", "able", "would":
				can = true
			case "none", "no":
				v, person, nobody = play.No, true, true
			}
		case cVerb:
			switch base(s.toks[a.from].form) {
			case "play", "get", "reach", "hit", "set", "pass", "attack", "jump", "move", "block", "swing":
			default:
				return false
			}
			if !can {
				return false
			}
			verb = true
		default:
			if a.word != "none" && a.word != "no" {
				return false
			}
			v, person, nobody = play.No, true, true
		}
	}
	if n := len(s.evs); n > 0 && s.evs[n-1].Kind == play.Intrusion {
		person = true // the one who was in its way
	}
	if !can || !verb || !person {
		return false
	}
	if n := len(s.evs); n > 0 && slices.Contains(mustFact(play.Hinders).Kinds, s.evs[n-1].Kind) {
		h := play.No // "nobody could have played it"
		switch {
		case v == play.No && !nobody, v == play.Yes && s.evs[n-1].Kind == play.Intrusion:
			h = play.Yes // "she can't set it", "would have played it"
		case v == play.Yes:
			return false
		}
		s.settled(g.from, g.to)
		s.heard = true
		s.evs[n-1].set(play.Hinders, h)
		return true
	}
	s.settled(g.from, g.to)
	s.heard = true
	c := &clauseState{segment: g, first: len(s.evs)}
	if k := s.holder(c, mustFact(play.CouldPlay)); k >= 0 {
		s.evs[k].set(play.CouldPlay, v)
		return true
	}
	s.next = append(s.next, stated1{fact: play.CouldPlay, value: v, at: &s.atoms[g.from]})
	return true
}

// passiveNot reads "net not touched": what was not touched is no event. It
// gives the place after it, 0 where it is not that.
func (s *scene) passiveNot(c *clauseState, i int) int {
	not := false
	for j := i + 1; j < c.to; j++ {
		switch a := s.atoms[j]; {
		case a.class == cFiller:
		case a.class == cNot:
			not = true
		case a.class == cVerb && not && (a.verb == vTouch || a.verb == vHit):
			s.mark(i, j+1)
			return j + 1
		default:
			return 0
		}
	}
	return 0
}

// ofBody reports whether a part of the body, and no ball, stands before an
// atom in its clause: "fingers not above the tape".
func (s *scene) ofBody(c *clauseState, a *atom) bool {
	part := false
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		switch s.atoms[i].class {
		case cBody:
			part = true
		case cBall, cVerb, cDest:
			return false
		}
	}
	return part
}

// heldBack reports whether a hold keeps a player back: "holds the hitter back
// from the net".
func (s *scene) heldBack(c *clauseState, i int) bool {
	for i++; i < c.to; i++ {
		if a := s.atoms[i]; strings.HasPrefix(a.word, "back") || a.class == cFiller && a.word == "from" {
			return true
		}
	}
	return false
}

// helped reads "so that she reaches the ball" after a hold: it helps to play
// the ball, and lasts until then.
func (s *scene) helped(c *clauseState) {
	if n := len(s.evs); n > 0 && s.evs[n-1].Kind == play.Support && !c.deny {
		s.evs[n-1].set(play.Aids, play.Yes)
		s.evs[n-1].set(play.Holding, play.Yes)
	}
}

// verbBefore reports whether a verb stands before an atom of the clause.
func (s *scene) verbBefore(c *clauseState, i int) bool {
	for j := c.from; j < i; j++ {
		if s.atoms[j].class == cVerb {
			return true
		}
	}
	return false
}

// handledAhead reports whether a clause goes on, without a verb, with how the
// ball was played: "serve receive with fingers".
func (s *scene) handledAhead(a *atom) bool {
	how := false
	for i := range s.atoms {
		b := &s.atoms[i]
		if b.from < a.to {
			continue
		}
		switch b.class {
		case cFiller:
		case cBody:
			how, b.used = true, true
		case cFact:
			how = how || b.fact == play.Fingers || b.fact == play.Manner
		case cStop:
			return how
		default:
			return false
		}
	}
	return how
}

// settled marks words whose whole part in the play is told: nothing more is
// asked of them.
func (s *scene) settled(from, to int) {
	s.mark(from, to)
	for ; from < to; from++ {
		switch s.atoms[from].class {
		case cRole, cLibero, cRow, cFact, cDoubt:
			s.atoms[from].class = cFiller
		}
	}
}

// subjectTold takes the subject of a clause for told: what is said of it is a
// fact of something else.
func (s *scene) subjectTold() {
	if len(s.subj) == 1 && s.subj[0].to > s.subj[0].from {
		s.settled(s.subj[0].from, s.subj[0].to)
		s.heard = true
	}
}
