package notation

import "example.org/netpost/engine/play"

// goesUp reads a jump: to block where the ball comes from the opponents.
func (s *scene) goesUp(c *clauseState, a *atom) {
	if s.ballSubj || len(s.subj) == 0 || a.word == "up" && !s.fresh {
		a.used = len(s.evs) > 0 || s.ballSubj
		return
	}
	a.used = true
	if s.upTogether(c, a) {
		return
	}
	w := s.subj[0]
	role := w.role
	if w.pid >= 0 {
		role = s.people[w.pid].Role
	}
	k := s.lastContact()
	opponents := k >= 0 && s.evs[k].Team != w.team && s.evs[k].Kind == play.Contact
	if n := s.after(c, a); n != nil && n.class == cVerb && n.verb == vReachUp && s.contacts() == 0 && len(s.subj) == 1 && role != play.Hitter && role != play.Outside {
		s.attempt(c, a) // "jumps with hands over the net"
		return
	}
	if role == play.Blocker || opponents && role != play.Hitter && role != play.Outside {
		s.attempt(c, a)
	}
}

// attempt adds an attempt to block. It is dropped at the end when the same
// player touched the ball.
func (s *scene) attempt(c *clauseState, a *atom) {
	a.used = true
	if len(s.subj) == 0 {
		a.used = false
		return
	}
	for n := range s.subj {
		w := &s.subj[n]
		pid := s.settle(w)
		if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Attempt && s.evs[k].who == pid {
			continue
		}
		h := s.add(play.Event{Kind: play.Attempt, Team: w.team}, pid)
		if s.reachUp != play.Unknown {
			h.facts[play.ReachHeight] = s.reachUp
		}
		s.waiting(h)
	}
	s.reachUp = play.Unknown
	s.fresh = false
}

// misses reads a swing that meets nothing, or a ball that misses the block.
func (s *scene) misses(c *clauseState, a *atom) {
	a.used = true
	for j := c.from; j < c.to; j++ { // what is missed is no event
		if s.atoms[j].from > a.from && (s.atoms[j].action == play.Block || s.atoms[j].class == cRole) {
			s.atoms[j].used = true
			s.atoms[j].class = cFiller
		}
	}
	if s.ballSubj || len(s.subj) == 0 {
		s.missed = true
		for k := range s.evs {
			if e := &s.evs[k]; e.Kind == play.Contact && e.Action == play.Block {
				e.Kind, e.Action = play.Attempt, play.Touch
			}
		}
		return
	}
	role := s.subj[0].role
	if role == play.Blocker {
		s.attempt(c, a)
		return
	}
	if k := len(s.evs) - 1; k >= c.first && k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].Action.Attacking() {
		s.evs = s.evs[:k]
	}
	s.next = append(s.next, stated1{fact: play.Playing, value: play.Yes})
	if s.subj[0].pid < 0 && s.subj[0].to > s.subj[0].from {
		s.mark(s.subj[0].from, s.subj[0].to)
		s.heard = true
	}
	s.fresh = false
	hits := role == play.Hitter || role == play.Outside || role == play.Opposite
	if hits && len(s.evs) == 0 && s.open[play.Has] == play.Unknown {
		// A hitter swings at a ball of her own side.
		s.open[play.Has] = play.Value(s.subj[0].team.String())
		for j := c.from; j < c.to && s.atoms[j].from < a.from; j++ {
			switch b := &s.atoms[j]; b.class {
			case cRole: // whose ball it was is all that one who touched nothing tells
				b.used, b.class = true, cFiller
			case cSide:
				b.used = true
			}
		}
	}
}

// reachFact reads a reach above the net: of the touch or the attempt just
// told, or of the one that follows.
func (s *scene) reachFact(c *clauseState, a *atom) {
	v := play.Above
	if c.deny {
		v, c.deny = play.Below, false
	}
	if k := len(s.evs) - 1; k >= 0 && !s.fresh && (k >= c.first || !s.verbLater(c, a)) && (s.evs[k].Kind == play.Contact || s.evs[k].Kind == play.Attempt) {
		s.evs[k].facts[play.ReachHeight] = v
		return
	}
	s.reachUp = v
}

func (s *scene) verbLater(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].from > a.from && s.atoms[i].class == cVerb {
			return true
		}
	}
	return false
}

// endReach tells a reach that met no ball.
func (s *scene) endReach() {
	if !s.mayReach || len(s.subj) == 0 {
		s.mayReach = false
		return
	}
	s.mayReach = false
	w := s.subj[0]
	if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].who == w.pid && w.pid >= 0 {
		s.evs[k].facts[play.ReachHeight] = play.Above
		s.evs[k].set(play.Place, play.Unknown)
		return
	}
	s.add(play.Event{Kind: play.Reach, Team: w.team}, s.settle(&w))
}

// netTouch adds a touch of the net.
func (s *scene) netTouch(w party, part play.Value) {
	two := s.subj
	if len(two) < 2 {
		two = []party{w}
	}
	for n := range two {
		pid := s.settle(&two[n])
		if n > 0 && s.link == play.Unknown {
			s.link = play.Unknown
		}
		h := s.add(play.Event{Kind: play.NetTouch, Team: two[n].team}, pid)
		h.joint = len(two) > 1
		if part != play.Unknown && part != play.PartNet {
			h.facts[play.Part] = part
		}
		s.waiting(h)
	}
	s.fresh = false
}

// line adds a player beyond the centre line.
func (s *scene) line(w party) {
	pid := s.settle(&w)
	if len(s.subj) > 0 && s.subj[0].team == w.team {
		s.subj[0].pid = pid
	}
	if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Line && s.evs[k].who == pid {
		s.bodyFacts(&s.evs[k])
		return
	}
	h := s.add(play.Event{Kind: play.Line, Team: w.team}, pid)
	s.bodyFacts(h)
	s.waiting(h)
	s.fresh = false
}

func (s *scene) bodyFacts(h *happening) {
	if s.body != play.Unknown {
		h.facts[play.BodyPart] = s.body
	}
	if s.extent != play.Unknown {
		h.facts[play.Extent] = s.extent
	}
}

// overLine reads "over the centre line".
func (s *scene) overLine(c *clauseState, a *atom) {
	if s.keptFrom(c, a) {
		a.used = true // "to stop herself from falling over the line"
		return
	}
	if len(s.subj) == 0 && len(s.evs) == 0 && !s.ballSubj && s.alone() != play.NoTeam {
		s.subj = []party{{team: s.alone(), pid: -1, one: true}} // "whole foot over the line": nobody is named
	}
	if len(s.subj) == 0 && len(s.evs) == 0 && !s.ballSubj && a.part != play.Unknown {
		s.subj = []party{{team: s.flow(), pid: -1}} // "whole foot over the line": somebody's
	}
	if len(s.subj) == 0 || s.ballSubj {
		return
	}
	a.used = true
	if c.deny {
		c.deny = false
		return
	}
	if a.part != play.Unknown {
		s.body = a.part
	}
	if b := s.before(a); s.body == play.Unknown && b != nil && b.class == cVerb && (b.verb == vLand || base(s.toks[b.from].form) == "step") {
		s.body = play.Foot // one lands on the feet
	}
	if a.value != play.Unknown {
		s.extent = a.value
	}
	s.line(s.subj[0])
	if k := len(s.evs) - 1; a.id == "off" && s.evs[k].Kind == play.Line {
		s.evs[k].set(play.Where, play.OffCourt)
	}
}

// floor reads the floor or a court as what a player touches: the opponents'.
func (s *scene) floor(c *clauseState, a *atom) {
	if s.ballSubj || len(s.subj) == 0 || s.body == play.Unknown {
		return
	}
	a.used = true
	var t play.Team
	for i := c.from; i < c.to; i++ {
		b := &s.atoms[i]
		if b.class == cLine {
			t = s.subj[0].team.Other()
		}
		if b.class == cSide && b.from < a.from && b.to >= a.from {
			if t = s.team(b.side); t != play.NoTeam {
				b.used = true
			}
		}
	}
	if n := s.nextTo(a); t == play.NoTeam && n != nil && n.class == cDest && n.dest == dAbove && n.side.ok() {
		t, n.used, n.class = s.team(n.side), true, cFiller // "touches the floor on their side"
	}
	if t == s.subj[0].team.Other() && !c.deny {
		s.line(s.subj[0])
	}
}

// bump adds a touch of an opponent.
func (s *scene) bump(c *clauseState) {
	if len(s.subj) == 0 || c.deny {
		return
	}
	w := &s.subj[0]
	pid := s.settle(w)
	if s.mayReach {
		s.endReach()
	}
	s.waiting(s.add(play.Event{Kind: play.Bump, Team: w.team}, pid))
	s.fresh = false
}

// collides reads a player who runs into or hinders another.
func (s *scene) collides(c *clauseState, i int) int {
	a := &s.atoms[i]
	official := false
	for j := c.from; j < c.to; j++ {
		if s.atoms[j].class == cOfficial || s.atoms[j].class == cThing && s.atoms[j].value == play.Bystander {
			official = true
			s.atoms[j].used = true
			if j > c.from && s.atoms[j-1].class == cBy {
				s.atoms[j-1].used = true
			}
		}
	}
	if official {
		a.used = true
		s.waiting(s.add(play.Event{Kind: play.Intrusion}, -1))
		return i + 1
	}
	if len(s.subj) == 0 || s.ballSubj {
		return i + 1
	}
	a.used = true
	if c.deny {
		c.deny = false
		s.tell(play.Hinders, play.No)
		return i + 1
	}
	j := i + 1
	for j < c.to && (s.atoms[j].class == cFiller || s.atoms[j].class == cBody) {
		s.atoms[j].used = true
		j++
	}
	if j < c.to {
		if s.atoms[j].class == cSide || s.atoms[j].class == cRole || s.atoms[j].class == cPerson || s.atoms[j].class == cMate {
			if _, k, ok := s.phrase(c, j); ok {
				s.settled(j, k)
				j = k
			}
		}
	}
	if j < c.to && s.atoms[j].class == cThing && (s.atoms[j].value == play.NetBand || s.atoms[j].value == play.Posts) {
		s.touchesThing(c, &s.atoms[j])
		return j + 1
	}
	if j < c.to && s.atoms[j].class == cThing {
		s.mark(i, j+1) // a wall, a bench: of no matter here
		s.heard = true
		return j + 1
	}
	if n := len(s.evs); base(a.word) == "trip" && n > 0 && s.evs[n-1].Kind == play.Line && s.evs[n-1].Team != s.subj[0].team {
		s.evs[n-1].set(play.Hinders, play.Yes) // it is the foot that is in the way
		s.settled(c.from, c.to)
		return c.to
	}
	s.bump(c)
	if base(a.word) == "trip" && s.evs[len(s.evs)-1].Kind == play.Bump && s.goingFor(c, j) {
		s.evs[len(s.evs)-1].set(play.Hinders, play.Yes) // "trips the setter who was running to the ball"
	}
	if h := s.evs[len(s.evs)-1]; h.Kind == play.Bump {
		switch a.word {
		case "hinder", "hinders", "interfere", "interferes", "interfere with", "interferes with", "obstruct", "obstructs", "impede", "impedes":
			h.facts[play.Hinders] = play.Yes
		}
	}
	return j
}

// grabs reads a hold on a teammate, on a thing, or on the net.
func (s *scene) grabs(c *clauseState, i int) int {
	a := &s.atoms[i]
	if len(s.subj) == 0 || s.ballSubj {
		return i + 1
	}
	for j := i + 1; j < c.to; j++ {
		b := &s.atoms[j]
		switch {
		case b.class == cThing && (b.value == play.NetBand || b.value == play.Antenna):
			a.used, b.used = true, true
			if !c.deny {
				s.netTouch(s.subj[0], b.part)
			}
			return j + 1
		case b.class == cThing && b.part == play.PartOutside:
			a.used, b.used = true, true
			if !c.deny {
				s.netTouch(s.subj[0], b.part)
			}
			return j + 1
		case b.class == cThing:
			a.used, b.used = true, true
			s.support(play.Structure)
			return j + 1
		case b.class == cMate, b.class == cRole, b.class == cPerson:
			a.used = true
			s.settled(j, j+1)
			s.support(play.Teammate)
			if s.heldBack(c, j) {
				s.evs[len(s.evs)-1].set(play.Aids, play.No)
			}
			return j + 1
		case b.class == cBall && base(a.word) == "hold":
			b.used = true
			s.handles(c, a, false)
			return j + 1
		case b.class == cBody && base(a.word) == "hold": // "holds her hands up"
			a.used, b.used = true, true
			return j + 1
		case b.class == cFiller, b.class == cShe:
		default:
			j = c.to
		}
	}
	return i + 1
}

func (s *scene) support(what play.Value) {
	w := &s.subj[0]
	h := s.add(play.Event{Kind: play.Support, Team: w.team}, s.settle(w))
	h.facts[play.What] = what
	s.waiting(h)
	s.fresh = false
}
