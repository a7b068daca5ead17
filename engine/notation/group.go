package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// upTogether reads two of one side who go up to block together: "a front-row
// and a back-row player jump together", "she goes up with the middle in a
// double block".
func (s *scene) upTogether(c *clauseState, a *atom) bool {
	at, block := 0, false
	for i := c.from; i < c.to; i++ {
		b := s.atoms[i]
		if b.from == a.from {
			at = i
		}
		block = block || b.class == cFact && b.fact == play.Together && b.value == play.Yes || b.action == play.Block && b.from > a.from
	}
	if len(s.subj) == 1 {
		i := at + 1
		for i < c.to && s.atoms[i].class == cScenery {
			i++
		}
		for i+1 < c.to && (s.atoms[i].class == cOrder && s.atoms[i].id == "same" || s.atoms[i].word == "right" || s.atoms[i].word == "along") {
			i++ // "at the same time as our middle", "right alongside her"
		}
		if i+1 >= c.to || !slices.Contains([]string{"with", "beside", "alongside", "as"}, s.atoms[i].word) && !strings.HasPrefix(s.atoms[i].word, "next to") || s.atoms[i].word == "as" && s.atoms[i-1].class != cOrder {
			return false
		}
		w, j, ok := s.phrase(c, i+1)
		if !ok || !w.one {
			return false
		}
		if w.team == play.NoTeam {
			w.team = s.subj[0].team
		}
		if w.team != s.subj[0].team {
			return false
		}
		s.mark(at+1, j)
		for k := at + 1; k < j; k++ {
			s.atoms[k].class = cFiller
		}
		s.subj = append(s.subj, w)
		block = true
	} else if len(s.subj) != 2 || s.subj[0].team != s.subj[1].team {
		return false
	}
	for i := at; i < c.to; i++ {
		if b := &s.atoms[i]; b.class == cOrder && b.id == "same" {
			b.used, block = true, true
			b.class = cFiller // together
		}
	}
	if !block {
		return false
	}
	s.attempt(c, a)
	return true
}

// bothReach reads "both reaching over the tape" of two who went up together. It
// gives the end of what it read, 0 where it is not that.
func (s *scene) bothReach(c *clauseState, i int) int {
	if !s.twoUp() {
		return s.wallReach(c, i)
	}
	for j := i; j < c.to; j++ {
		b := s.atoms[j]
		switch {
		case b.class == cVerb && (b.verb == vReachOver || b.verb == vReachUp),
			b.class == cFact && (b.fact == play.Height || b.fact == play.ReachHeight) && b.value == play.Above,
			b.class == cDest && b.dest == dOver:
			for n := len(s.evs) - 1; n >= 0 && s.evs[n].Kind == play.Attempt; n-- {
				s.evs[n].set(play.ReachHeight, play.Above)
			}
			for k := i; k <= j; k++ {
				s.atoms[k].used, s.atoms[k].class = true, cFiller
			}
			s.both, s.fresh = false, false
			return j + 1
		case b.class == cFiller, b.class == cBody, b.class == cScenery, b.class == cShe:
		default:
			return 0
		}
	}
	return 0
}

// twoUp reports whether the last two events are attempts to block of one side.
func (s *scene) twoUp() bool {
	n := len(s.evs)
	return n > 1 && s.evs[n-1].Kind == play.Attempt && s.evs[n-2].Kind == play.Attempt && s.evs[n-1].Team == s.evs[n-2].Team
}

// wallOf reads how many went up to block, and then who they are: "two up on the
// block, one is our setter, who is back row". Each of them tried to block.
func (s *scene) wallOf(g segment) bool {
	if s.group == 0 {
		up, n := false, 0
		for i := g.from; i < g.to; i++ {
			switch a := s.atoms[i]; {
			case a.class == cCard && n == 0:
				n = a.n
			case a.class == cDigits && n == 0 && (a.word == "2" || a.word == "3"):
				n = int(a.word[0] - '0')
			case a.class == cVerb && (a.verb == vAttempt || a.verb == vUp), a.class == cFiller && strings.HasPrefix(a.word, "up at"):
				up = true
			case a.class == cFiller, a.class == cScenery, a.class == cSide && !a.poss, a.class == cFact && a.fact == play.Together, a.class == cOrder && a.id == "same":
			default:
				return false
			}
		}
		if !up || n < 2 || !s.namesOne(g.to) {
			return false
		}
		s.group = n
		s.settled(g.from, g.to)
		return true
	}
	if s.group < 0 {
		return false
	}
	i := g.from
	for i < g.to && (s.atoms[i].class == cFiller || s.atoms[i].class == cMate || s.atoms[i].class == cCard) {
		i++
	}
	c := &clauseState{segment: g, first: len(s.evs)}
	if i >= g.to || !s.personAt(c, i) {
		return false
	}
	w, j, ok := s.phrase(c, i)
	if !ok || !w.one {
		return false
	}
	reach := g.to
	if s.atoms[j-1].class == cBoth {
		j, reach, s.both = j-1, j-1, false
	}
	for k := j; k < reach; k++ {
		switch a := s.atoms[k]; a.class {
		case cBoth:
			reach = k
		case cFiller, cScenery:
		case cRow:
			if w.row != play.Unknown {
				return false
			}
			w.row = a.value
		default:
			return false // she does something
		}
	}
	if w.team == play.NoTeam {
		w.team = s.groupOf
	}
	if w.team == play.NoTeam {
		w.team = s.alone()
		for k := len(s.evs) - 1; k >= 0; k-- {
			if s.evs[k].Kind == play.Attempt {
				w.team = s.evs[k].Team
				break
			}
			if s.evs[k].Kind == play.Contact {
				w.team = s.evs[k].Team.Other()
				break
			}
		}
	}
	if w.team == play.NoTeam {
		return false
	}
	s.mark(g.from, reach)
	pid := s.settle(&w)
	s.add(play.Event{Kind: play.Attempt, Team: w.team}, pid)
	if reach < g.to && s.bothReach(c, reach+1) > 0 {
		s.atoms[reach].used = true
	}
	if s.group--; s.group == 0 {
		s.group = -1
	}
	s.subj, s.fresh, s.heard, s.ballSubj = []party{w}, false, true, false
	return true
}

// namesOne reports whether what follows names one of a group.
func (s *scene) namesOne(i int) bool {
	for n := 0; i < len(s.atoms) && n < 8; i++ {
		switch s.atoms[i].class {
		case cRole, cLibero, cRow:
			return true
		case cVerb:
			return false
		}
		n++
	}
	return false
}
