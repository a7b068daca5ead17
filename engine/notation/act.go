package notation

import "example.org/netpost/engine/play"

// act reads a verb with its object and makes the event that it tells of. It
// gives the place after what it read.
func (s *scene) act(c *clauseState, i int) int {
	a := &s.atoms[i]
	noun := s.nounAt(c, i)
	if w, j, ok := s.byWhom(c, i); ok {
		s.subj, s.ballSubj, s.fresh = []party{w}, false, true
		a.used = true
		s.contact(c, a, noun)
		return j
	}
	if a.word == "play" && noun || a.word == "plays" && noun {
		a.used = true
		return i + 1
	}
	if noun && s.received(c, a) {
		return i + 1
	}
	if noun && a.art == 't' {
		if k := s.lastContact(); k >= 0 && (s.evs[k].Action == a.action || a.verb == vServe) && s.evs[k].Kind == map[bool]play.Kind{true: play.Serve, false: play.Contact}[a.verb == vServe] {
			a.used, s.ballSubj = true, true
			return i + 1
		}
	}
	switch a.verb {
	case vContact, vSend, vPress:
		s.contact(c, a, noun)
	case vTouch, vHit, vBump:
		return s.touches(c, i, noun)
	case vHeld, vDouble:
		s.handles(c, a, noun)
	case vServe:
		s.serves(c, a)
	case vUp:
		s.goesUp(c, a)
	case vAttempt:
		s.attempt(c, a)
	case vMiss:
		s.misses(c, a)
	case vReachOver:
		a.used, s.mayReach = true, !c.deny
	case vReachUp:
		a.used = true
		s.reachFact(c, a)
	case vNet:
		if len(s.subj) == 0 || s.ballSubj {
			return i + 1
		}
		a.used = true
		if !c.deny {
			s.netTouch(s.subj[0], play.PartNet)
		}
	case vLine:
		if len(s.subj) > 0 && !s.ballSubj {
			a.used = true
			if !c.deny {
				s.line(s.subj[0])
			}
		}
	case vCollide:
		return s.collides(c, i)
	case vGrab:
		return s.grabs(c, i)
	case vLand:
		a.used = true
		if s.ballSubj || len(s.evs) > 0 && s.evs[len(s.evs)-1].Ball() && !s.fresh {
			return i + 1 // where it lands follows; a ball that only drops is no event
		}
	case vGo:
		a.used = true
	case vWhistle:
		a.used = true
		h := s.add(play.Event{Kind: play.Whistle}, -1)
		if f := s.toks[a.from].form; f == "inadvertent" || f == "accidental" {
			h.facts[play.ErrorWhistle] = play.Yes
		}
	case vIntrude:
		a.used = true
		s.waiting(s.add(play.Event{Kind: play.Intrusion}, -1))
		for j := i + 1; j < c.to; j++ { // its way is of no matter
			switch b := &s.atoms[j]; b.class {
			case cVerb, cDest, cFloor, cInto, cSide, cThing, cFiller:
				b.used, b.class = true, cFiller
			}
		}
	}
	return i + 1
}

// nounAt reports whether the verb at i stands as a noun: "A's set", "the
// pass", "our first hit".
func (s *scene) nounAt(c *clauseState, i int) bool {
	a := s.atoms[i]
	if a.art != 0 {
		return true
	}
	if i == 0 || i <= c.from {
		return false
	}
	p := s.atoms[i-1]
	return p.poss && (p.class == cSide || p.class == cRole || p.class == cPerson || p.class == cLibero || p.class == cLabel)
}

// byWhom reads "by B's blocker" after a verb: who acts.
func (s *scene) byWhom(c *clauseState, i int) (party, int, bool) {
	if i+1 >= c.to || s.atoms[i+1].class != cBy {
		return party{}, i, false
	}
	w, j, ok := s.phrase(c, i+2)
	if !ok {
		return w, i, false
	}
	if w.team == play.NoTeam && w.pid < 0 {
		w.team = s.guess(w)
	}
	if w.team == play.NoTeam {
		return w, i, false
	}
	s.mark(i+1, j)
	return w, j, true
}

// contact makes the contact of a verb that can be nothing else.
func (s *scene) contact(c *clauseState, a *atom, noun bool) {
	who := s.subj
	if len(who) == 0 {
		t := s.flow()
		if a.action == play.Block {
			if k := s.lastContact(); k >= 0 {
				t = s.evs[k].Team.Other()
			}
		}
		who = []party{{team: t, pid: -1}}
	}
	if s.ballSubj && !noun && a.action == play.Touch {
		a.used = true // "the ball pops up": a way to go
		return
	}
	a.used = true
	if c.deny {
		c.deny = false
		return
	}
	// "doubles the ball while setting": one contact, named by what it was.
	if k := len(s.evs) - 1; k >= c.first && k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].Action == play.Touch && !s.fresh && s.evs[k].who >= 0 && who[0].pid == s.evs[k].who {
		s.evs[k].Action = a.action
		return
	}
	if a.action == play.Block && len(who) > 1 && who[0].team == who[1].team {
		s.wall(c, a)
		return
	}
	action := a.action
	if action == play.Touch && len(who) == 1 && s.roleOf(who[0]) == play.Defender {
		action = play.Dig
	}
	if a.verb == vPress && len(who) < 2 && s.both {
		who = s.pairOf(who)
	}
	for n := range who {
		if n > 0 {
			if a.verb == vPress {
				s.link = play.Same
			} else if s.link == play.Unknown {
				s.comma = false
			}
		}
		s.touch(who[n], action)
	}
	s.subj = who
	if len(who) == 2 && a.verb != vPress && who[0].team != who[1].team {
		s.evs[len(s.evs)-1].split = true
	}
	if noun {
		s.ballSubj = true
	}
}

// pairOf is the two who press the ball when both were named before.
func (s *scene) pairOf(who []party) []party {
	w := party{team: who[0].team.Other(), pid: -1}
	return append(who, w)
}

// touch adds a contact with all that was waiting for one.
func (s *scene) touch(w party, action play.Action) {
	pid := s.settle(&w)
	if len(s.subj) > 0 && s.subj[0].team == w.team && s.subj[0].pid < 0 {
		s.subj[0].pid = pid
	}
	h := s.add(play.Event{Kind: play.Contact, Team: w.team, Action: action}, pid)
	if len(s.subj) == 0 {
		s.subj = []party{{team: w.team, pid: pid, one: true}}
	}
	if s.number > 0 && (s.numberOf == play.NoTeam || s.numberOf == w.team) {
		h.Number = s.number
		s.number = 0
	}
	if s.mayReach {
		h.facts[play.ReachHeight] = play.Above
		h.voids[play.Place] = true
		s.mayReach = false
	}
	if s.reachUp != play.Unknown {
		h.facts[play.ReachHeight] = s.reachUp
		s.reachUp = play.Unknown
	}
	s.waiting(h)
	s.fresh = false
	switch {
	case action.Attacking():
		s.on = w.team.Other()
	case action == play.Block, action == play.Press:
		s.on = play.NoTeam
	default:
		s.on = w.team
	}
}

// touches reads a verb whose object says what is touched.
func (s *scene) touches(c *clauseState, i int, noun bool) int {
	a := &s.atoms[i]
	if c.deny { // what is not touched is no event
		c.deny = false
		s.mark(i, i+1)
		for j := i + 1; j < c.to; j++ {
			switch s.atoms[j].class {
			case cBall, cThing, cSide, cRole, cPerson, cMate, cBody, cFiller, cNobody, cOfficial:
				s.atoms[j].used = true
				continue
			}
			return j
		}
		return c.to
	}
	if s.ballSubj && !noun && s.bodies(c, i) {
		return c.to
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
		case cSide, cRole, cPerson, cMate, cLibero, cRow, cShe, cLabel:
			if j+1 < c.to && s.atoms[j+1].class == cFloor {
				continue
			}
			if b.class == cShe && !s.ballSubj { // her hand, her own
				continue
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
				s.ballSubj = true
				return k
			}
			s.bump(c)
			return k
		case cBody:
			continue
		case cFiller, cFact, cDoubt, cScenery, cPlace:
			continue
		case cVerb, cDest, cInto, cOrder:
			j = c.to
		}
	}
	s.hits(c, a, noun)
	return i + 1
}

// hits makes the contact of "touches", "hits", "bumps" with the ball.
func (s *scene) hits(c *clauseState, a *atom, noun bool) {
	if s.ballSubj && !noun {
		return // a ball that touches nothing that was read
	}
	action := a.action
	if a.verb == vHit {
		action = s.hitAs(c, noun)
	}
	b := *a
	b.action = action
	s.contact(c, &b, noun)
	a.used = b.used
}

// hitAs says whether a hit is an attack: it is where a hitter hits, or where
// nobody in particular does and the ball goes over.
func (s *scene) hitAs(c *clauseState, noun bool) play.Action {
	if len(s.subj) == 0 {
		return play.Touch
	}
	w := s.subj[0]
	switch s.roleOf(w) {
	case play.Hitter, play.Outside, play.Middle, play.Opposite:
		return play.Attack
	case play.NoRole:
		if k := s.lastContact(); k >= 0 && w.pid >= 0 && s.evs[k].who == w.pid {
			return play.Touch
		}
		if k := s.lastContact(); k >= 0 && s.evs[k].Team == w.team && (s.evs[k].Action == play.Set || s.evs[k].Action == play.Pass) {
			return play.Attack
		}
		if s.number == 3 || !w.one && w.pid < 0 && !s.evsBy(w.team) {
			return play.Attack
		}
	}
	return play.Touch
}

func (s *scene) evsBy(t play.Team) bool {
	for _, e := range s.evs {
		if e.Team == t && e.Kind == play.Contact {
			return true
		}
	}
	return false
}

// handles reads catches, lifts and doubles: of a new contact, or of the one
// just told.
func (s *scene) handles(c *clauseState, a *atom, noun bool) {
	value := play.Held
	if a.verb == vDouble {
		value = play.Double
	}
	switch a.word {
	case "scoop", "trap", "scoops", "scooped", "steers", "steer", "redirects", "redirect", "guides", "palm", "palms":
		value = play.Unknown
	}
	a.used = true
	k := s.lastContact()
	same := k >= 0 && s.evs[k].Kind == play.Contact && (noun || k >= c.first && !s.fresh)
	if c.deny {
		c.deny = false
		if k >= 0 && s.evs[k].Kind == play.Contact {
			s.evs[k].facts[play.Manner] = play.Clean
		}
		return
	}
	if !same {
		if s.ballSubj || len(s.subj) == 0 && len(s.evs) > 0 {
			a.used = false
			return
		}
		s.contact(c, &atom{meaning: does(vContact, play.Touch)}, false)
		k = s.lastContact()
	}
	if k < 0 || s.evs[k].Kind != play.Contact {
		return
	}
	if value == play.Unknown || c.mark == '?' {
		s.evs[k].voids[play.Manner] = true
		if value == play.Held {
			s.want("caught-or-thrown")
		} else if value == play.Double {
			s.want("double-contact")
		}
		return
	}
	s.evs[k].facts[play.Manner] = value
}

// serves reads a serve: the service hit, or the served ball.
func (s *scene) serves(c *clauseState, a *atom) {
	a.used = true
	for _, e := range s.evs {
		if e.Kind == play.Serve {
			s.ballSubj = true
			return
		}
	}
	if len(s.evs) > 0 {
		a.used = false
		return
	}
	t := play.NoTeam
	if len(s.subj) > 0 {
		t = s.subj[0].team
	} else if first, ok := s.first[serveRec]; ok {
		t = first
	}
	s.add(play.Event{Kind: play.Serve, Team: t}, -1)
	s.ballSubj, s.fresh, s.subj = true, false, nil
	s.on = t.Other()
}

// received reads what a dig or a block was of: "digs a spike" tells the
// opponents' attack before it.
func (s *scene) received(c *clauseState, a *atom) bool {
	k := len(s.evs) - 1
	if a.verb != vContact || !a.action.Attacking() || k < c.first || k < 0 {
		return false
	}
	e := s.evs[k]
	if e.Kind != play.Contact || e.Action != play.Dig && e.Action != play.Pass && e.Action != play.Block && e.Action != play.Touch {
		return false
	}
	a.used = true
	if k > 0 && s.evs[k-1].Kind == play.Contact && s.evs[k-1].Team != e.Team {
		return true
	}
	s.swap = true
	w := party{team: e.Team.Other(), pid: -1}
	s.add(play.Event{Kind: play.Contact, Team: w.team, Action: a.action}, s.settle(&w))
	s.evs[len(s.evs)-1].link = play.Before
	return true
}

// wall reads two or more of a side who block together. Who of them touched the
// ball is told later, or it is the first.
func (s *scene) wall(c *clauseState, a *atom) {
	for n := range s.subj {
		w := &s.subj[n]
		if n > 0 {
			s.link = play.Same
		}
		h := s.add(play.Event{Kind: play.Attempt, Team: w.team}, s.settle(w))
		h.wall = true
		s.waiting(h)
	}
	s.fresh = false
}

// bodies reads the parts of one player that the ball touches, one after the
// other.
func (s *scene) bodies(c *clauseState, i int) bool {
	n := 0
	for j := i + 1; j < c.to; j++ {
		switch b := s.atoms[j]; b.class {
		case cBody:
			n++
		case cFiller, cCard, cMate, cOrder:
		default:
			return false
		}
	}
	if n == 0 {
		return false
	}
	s.numberContact()
	if s.contacts() == 0 {
		return false
	}
	s.mark(i, c.to)
	s.bodyHits = n
	s.manyBodies()
	return true
}

// manyBodies makes a contact of two or more parts of the body a double one.
func (s *scene) manyBodies() {
	if k := s.lastContact(); s.bodyHits > 1 && k >= 0 {
		s.evs[k].set(play.Manner, play.Double)
	}
}
