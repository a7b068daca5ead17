package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// someBody makes a player of whom only a part is named: "her heel was over the
// line but toes touched the floor". A part named beside the hair takes back that
// the hair alone touched.
func (s *scene) someBody(c *clauseState, i int) {
	if i == c.from && c.from > 0 && s.atoms[c.from-1].id == "and" {
		s.next = slices.DeleteFunc(s.next, func(n stated1) bool { return n.fact == play.Cause && n.value == play.ByHair })
	}
	if i == c.from && len(s.subj) == 0 && !s.ballSubj && s.number == 0 && len(s.evs) == 0 && s.verbAhead(c, i+1) && s.alone() != play.NoTeam {
		s.subj, s.fresh = []party{{team: s.alone(), pid: -1, one: true}}, true
	}
}

// landedBefore reports whether where the ball came down is told in the perfect,
// of a ball that somebody then goes for: "chasing a ball that already landed
// out".
func (s *scene) landedBefore(c *clauseState, i int) bool {
	a := s.atoms[i]
	if a.dest != dOut && a.dest != dIn && a.dest != dDown {
		return false
	}
	ball, past := false, false
	for j := c.from; j < i; j++ {
		switch b := s.atoms[j]; {
		case b.class == cBall && j > c.from && (s.atoms[j-1].class == cVerb && s.atoms[j-1].verb == vGo || s.atoms[j-1].word == "after" || s.atoms[j-1].word == "for"):
			ball = true
		case ball && b.class == cFiller && (b.word == "already" || b.word == "had"):
			past = true
		}
	}
	return ball && past
}

// stepsOn reads who steps or lands on somebody's foot: "she stepped on the
// blocker's foot". It gives the place after it, 0 where that is not told.
func (s *scene) stepsOn(c *clauseState, i int) int {
	a := &s.atoms[i]
	if base(s.toks[a.from].form) != "step" && a.verb != vLand || s.ballSubj || len(s.subj) == 0 || c.deny || i+2 >= c.to || s.atoms[i+1].word != "on" {
		return 0
	}
	person := false
	for j := i + 2; j < c.to; j++ {
		switch b := s.atoms[j]; b.class {
		case cSide, cScenery, cRow:
		case cRole, cPerson, cLibero:
			person = true
		case cBody:
			if b.value != play.Foot || !person && !s.toks[s.atoms[j-1].from].poss && !strings.HasSuffix(s.toks[s.atoms[j-1].from].form, "s") {
				return 0
			}
			if !person && s.atoms[j-1].class != cScenery {
				return 0
			}
			s.mark(i, j+1)
			for k := i + 1; k <= j; k++ {
				s.atoms[k].class = cFiller
			}
			s.bump(c)
			return j + 1
		default:
			return 0
		}
	}
	return 0
}

// instrument reads the noun of a contact as how the ball was played: "returns
// the serve with a forearm pass".
func (s *scene) instrument(c *clauseState, i int) bool {
	a, k := &s.atoms[i], len(s.evs)-1
	if i == c.from || a.verb != vContact || k < c.first || k < 0 || s.evs[k].Kind != play.Contact || s.ballSubj {
		return false
	}
	p := s.atoms[i-1]
	if !(p.class == cFact && p.fact == play.Fingers && strings.HasPrefix(p.phrase, "with")) {
		if p.class == cScenery && i > c.from+1 {
			p = s.atoms[i-2]
		}
		if p.word != "with" {
			return false
		}
	}
	if len(s.subj) != 1 || s.subj[0].pid != s.evs[k].who {
		return false
	}
	a.used = true
	if s.evs[k].Action == play.Touch {
		s.evs[k].Action = a.action
	}
	return true
}

// calledOn names on whom a call was made: who acts in what follows.
func (s *scene) calledOn(g segment, verb int) {
	for i := verb + 1; i+1 < g.to; i++ {
		if s.atoms[i].word != "on" || s.atoms[i+1].class != cSide && s.atoms[i+1].class != cRole && s.atoms[i+1].class != cLibero {
			continue
		}
		w, j, ok := s.phrase(&clauseState{segment: g}, i+1)
		if !ok || !w.one || w.team == play.NoTeam {
			return
		}
		s.settled(i, j)
		pid := s.settle(&w)
		s.lastWho = pid
		s.subj, s.fresh, s.ballSubj = []party{{team: w.team, pid: pid, one: true}}, false, false
		return
	}
}

// playedBeyond doubts a ball that went over and is then played by the side that
// sent it, where nobody is told to have sent it back.
func (s *scene) playedBeyond() {
	from, over := play.NoTeam, false
	for _, e := range s.evs {
		switch {
		case e.Kind == play.Contact && over && e.Team == from && e.Action != play.Block && e.Action != play.Press && e.facts[play.Place] == play.Unknown && e.link != play.Same:
			s.lost = append(s.lost, whoNext)
			return
		case e.Kind == play.Contact && e.Action == play.Press:
			from, over = play.NoTeam, false
		case e.Kind == play.Contact:
			from, over = e.Team, false
		case e.Kind == play.Cross && e.facts[play.How] == play.Unknown:
			over = e.Team == from.Other() && from != play.NoTeam
		case e.Kind == play.Strike, e.Kind == play.Land, e.Kind == play.Serve, e.Kind == play.Cross:
			over = false
		}
	}
}

// storyAfter reports whether somebody plays the ball in a later sentence.
func (s *scene) storyAfter(g segment) bool {
	i := g.to
	for i < len(s.atoms) && (s.atoms[i].class != cStop || s.atoms[i].mark == ',') {
		i++
	}
	for ; i < len(s.atoms); i++ {
		if a := s.atoms[i]; a.class == cVerb && (a.verb == vContact || a.verb == vHit || a.verb == vTouch) {
			return true
		}
	}
	return false
}

// herOf is the player of a side whose parts are named: the last one who was
// told of by more than the name of the side. It is -1 where none was.
func (s *scene) herOf(from, to int, t play.Team) int {
	for i := from; i < to; i++ {
		if a := s.atoms[i]; a.class == cShe && (a.word == "her" || a.word == "his") {
			for p := len(s.people) - 1; p >= 0; p-- {
				if s.people[p].Team == t && !s.people[p].bare {
					return p
				}
			}
		}
	}
	return -1
}

// hedged leaves open what a story says only may have happened: "the blocker
// maybe touches it". Whether it did is no fact.
func (s *scene) hedged(c *clauseState, i int) {
	switch a := s.atoms[i]; a.verb {
	case vContact, vTouch, vHit, vNet, vLine, vBump, vCollide, vHeld, vDouble:
	default:
		return
	}
	if c.mark == '?' || c.deny {
		return
	}
	for j := i - 1; j >= c.from && j >= i-3; j-- {
		b := s.atoms[j]
		if b.class != cFiller && b.class != cScenery {
			return
		}
		switch b.word {
		case "maybe", "might", "perhaps", "possibly":
			s.lost = append(s.lost, s.words(b))
			return
		}
	}
}

// choice reports whether a short clause is one of two calls between which
// somebody asks: "legal or double".
func (s *scene) choice(g segment) bool {
	or := g.join == "or" || g.from > 0 && s.atoms[g.from-1].class == cJoin && s.atoms[g.from-1].id == "or"
	if !or || g.to-g.from > 3 {
		return false
	}
	call := false
	for i := g.from; i < g.to; i++ {
		switch a := s.atoms[i]; {
		case faultOf(a) != "" && (a.class == cFault || a.class == cVerb && s.toks[a.to-1].base == ""):
			call = true
		case a.class == cFiller, a.class == cAsk, a.class == cNobody, a.class == cNot:
		default:
			return false
		}
	}
	return call
}

// highAhead reports whether the same sentence goes on to say that the ball was
// above the net.
func (s *scene) highAhead(c *clauseState) bool {
	for i := c.from; i < len(s.atoms); i++ {
		a := s.atoms[i]
		if a.class == cStop && a.mark != ',' {
			return false
		}
		if i > c.to && (a.class == cRole || a.class == cSide || a.class == cLibero) {
			return false
		}
		if a.class == cFact && a.fact == play.Height && a.value == play.Above {
			return true
		}
	}
	return false
}

// stranger keeps a contact from those who have no part in the play: "someone
// rolled a ball onto our court" is something from outside, "R1 stopped it" a
// whistle. Of anybody else who is not named it stays unread who plays the ball.
// It gives the place after what it read, 0 where a player acts.
func (s *scene) stranger(c *clauseState, i int) int {
	a := &s.atoms[i]
	if i == c.from || a.verb != vContact && a.verb != vSend && a.verb != vTouch && a.verb != vHit && a.verb != vHeld {
		return 0
	}
	j := i - 1
	for j > c.from && s.atoms[j].class == cFiller && s.atoms[j].word != "someone" && s.atoms[j].word != "somebody" {
		j--
	}
	switch p := &s.atoms[j]; {
	case p.class == cOfficial && strings.HasPrefix(base(s.toks[a.from].form), "stop"):
		a.used, p.used = true, true
		if n := len(s.evs); n > 0 && n == c.first && s.evs[n-1].Kind == play.Intrusion {
			if _, told := s.evs[n-1].facts[play.Hinders]; !told {
				s.evs[n-1].set(play.Hinders, play.Yes) // the whistle is for it
			}
		}
		s.add(play.Event{Kind: play.Whistle}, -1)
		for k := i + 1; k < c.to && (s.atoms[k].class == cBall || s.atoms[k].word == "play"); k++ {
			s.atoms[k].used, s.atoms[k].class = true, cFiller
		}
		return i + 1
	case p.class == cFiller && (p.word == "someone" || p.word == "somebody") && (j == c.from || s.atoms[j-1].class == cOrder || s.atoms[j-1].class == cJoin):
		court := false
		for k := i; k < c.to; k++ {
			b := s.atoms[k]
			court = court || b.class == cFloor || b.class == cDest && strings.HasSuffix(b.word, "court")
		}
		if !court {
			s.lost = append(s.lost, s.words(*p))
			return c.to
		}
		s.settled(j, c.to)
		for k := j; k < c.to; k++ {
			s.atoms[k].class = cFiller
		}
		s.waiting(s.add(play.Event{Kind: play.Intrusion}, -1))
		return c.to
	}
	return 0
}
