package notation

import (
	"example.org/netpost/engine/play"
	"slices"
	"strings"
)

// act reads a verb with its object and makes the event that it tells of. It

// gives the place after what it read.

func (s *scene) act(c *clauseState, i int) int {
	a := &s.atoms[i]
	if a.verb == vFollow {
		s.follows(c, a)
		return i + 1
	}
	noun := s.nounAt(c, i)
	if s.inAction(c, i) {
		return i + 1
	}
	s.hedged(c, i)
	if j := s.stranger(c, i); j > 0 {
		return j
	}
	if s.gotBlocked(c, i) {
		return i + 1
	}
	if j := s.insteadOf(c, i); j > 0 {
		return j
	}
	if j := s.stepsOn(c, i); j > 0 {
		return j
	}
	if s.instrument(c, i) {
		return i + 1
	}
	s.suffered(c, i)
	if !noun && i > c.from && s.meant(c, i) {
		return i + 1
	}
	if a.verb == vNet || a.verb == vLine {
		if _, j, ok := s.byWhom(c, i); ok {
			s.settled(i+1, j) // "pushed into the net by her teammate"
		}
	} else if w, j, ok := s.byWhom(c, i); ok {
		for j < c.to && (s.atoms[j].class == cBody || s.atoms[j].class == cVerb && s.atoms[j].action == play.Block && s.atoms[j-1].poss) {
			s.mark(j, j+1) // "by our block"
			if j++; a.action == play.Touch && w.role == play.NoRole {
				w.role, w.one = play.Blocker, true
			}
		}
		if c.deny { // "not touched by B"
			a.used, c.deny = true, false
			return j
		}
		s.subj, s.ballSubj, s.fresh = []party{w}, false, true
		a.used = true
		s.contact(c, a, noun)
		return j
	}
	if a.word == "play" && noun || a.word == "plays" && noun {
		a.used = true
		s.during(c, i)
		return i + 1
	}
	if n := len(s.evs); noun && a.art == 'a' && i > c.from && n > c.first && s.atoms[i-1].class == cVerb && s.evs[n-1].Kind == play.Contact {
		switch s.atoms[i-1].verb {
		case vHit, vSend: // "hits a roll shot": one contact, and its name
			a.used = true
			s.evs[n-1].Action = a.action
			return i + 1
		}
	}
	if noun && s.during(c, i) {
		a.used = true
		return i + 1
	}
	if noun && (s.barrier(c, i) || s.reachedFor(c, i)) {
		a.used = true
		return i + 1
	}
	if s.passive(c, a) {
		return i + 1
	}
	if s.notKnown(c, i) {
		return c.to
	}
	if s.toldOf(c, i, noun) {
		a.used = true
		return i + 1
	}
	if s.sameAct(c, i) {
		a.used, s.ballSubj, c.ball = true, true, true
		return i + 1
	}
	if s.sourceOf(c, i) || s.adjectival(c, i) {
		return i + 1
	}
	if noun && s.on0(c, i) {
		s.swap = true
	}
	if noun && s.received(c, a) {
		return i + 1
	}
	if !noun {
		switch a.verb {
		case vContact, vTouch, vHit, vBump, vHeld, vDouble, vGrab:
			s.takes(c, i)
		}
	}
	if noun && (a.art == 't' || i > c.from && s.atoms[i-1].class == cShe) {
		if k := s.lastContact(); k >= 0 && a.art == 0 && s.evs[k].who == s.lastWho {
			a.used, s.ballSubj, c.ball = true, true, true
			return i + 1
		}
		if k := s.lastContact(); k >= 0 && (s.evs[k].Action == a.action || a.verb == vServe) && s.evs[k].Kind == map[bool]play.Kind{true: play.Serve, false: play.Contact}[a.verb == vServe] {
			a.used, s.ballSubj, c.ball = true, true, true
			return i + 1
		}
	}
	s.passiveVerb = !noun && s.undergone(c, i)
	switch a.verb {
	case vContact, vSend, vPress:
		if s.ballSubj && !noun && a.action == play.Attack && !s.passiveVerb && i+1 < c.to {
			switch s.atoms[i+1].class {
			case cThing: // "the spike pounds the net"
				return s.touches(c, i, noun)
			case cDest, cInto: // "slams into the tape"
				a.used = true
				return i + 1
			}
		}
		if a.verb == vContact && strings.HasSuffix(a.word, "hand on") && i+1 < c.to && s.atoms[i+1].class == cThing {
			return s.grabs(c, i) // "puts a hand on the post"
		}
		if s.ballSubj && !noun && a.action == play.Attack && s.personNext(c, i+1) {
			return s.touches(c, i, noun) // "the hit nails our setter"
		}
		s.contact(c, a, noun)
		if a.verb == vPress {
			return s.against0(c, i+1)
		}
	case vTouch, vHit, vBump:
		return s.touches(c, i, noun)
	case vHeld, vDouble:
		if j, ok := s.handled(c, i); ok {
			return j
		}
		s.handles(c, a, noun)
	case vServe:
		s.serves(c, a)
	case vUp:
		if strings.HasSuffix(a.phrase, "at net") && !s.ballSubj && !c.deny {
			s.next = append(s.next, stated1{fact: play.TakeOff, value: play.InFront})
		}
		s.goesUp(c, a)
	case vAttempt:
		s.attempt(c, a)
	case vMiss:
		s.misses(c, a)
	case vReachOver:
		a.used = true
		if base(a.word) == "reach" && i+1 < c.to && s.atoms[i+1].class == cBall && !strings.Contains(a.word, " ") {
			s.helped(c)
			return i + 1 // "so that she reaches the ball"
		}
		if base(a.word) == "reach" { // where is not said
			if !c.deny {
				s.next = append(s.next, stated1{fact: play.Place})
			}
			c.deny = false
			return i + 1
		}
		if k := len(s.evs) - 1; k >= 0 && s.evs[k].Kind == play.Attempt && !s.fresh {
			s.reachFact(c, a)
			return i + 1
		}
		s.mayReach = !c.deny
		if len(s.subj) == 1 && s.mayReach {
			w := s.subj[0]
			s.reacher = &w
		}
	case vReachUp:
		a.used = true
		if len(s.subj) > 1 && s.subj[0].team == s.subj[1].team && s.fresh && !s.ballSubj && !c.deny {
			s.reachUp = play.Above // they go up to block together
			s.attempt(c, a)
			return i + 1
		}
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
		if s.ballSubj { // "the ball rolls under the net"
			b := *a
			b.meaning = goesTo(dUnder)
			s.travel(c, &b)
			a.used = b.used
			return i + 1
		}
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
			s.justLands(c, i)
			return i + 1 // where it lands follows; a ball that only drops is no event
		}
	case vGo:
		a.used = true
		if s.drives(c, i) {
			b := *a
			b.meaning = does(vContact, play.Touch)
			s.contact(c, &b, false)
			return i + 1
		}
		switch base(a.word) {
		case "run down", "chase down", "track down", "go after", "chase", "pursue":
			if !s.ballSubj && len(s.subj) == 1 {
				s.takes(c, i)
			}
		}
		switch base(s.toks[a.from].form) {
		case "chase", "pursue":
			if s.fresh && !s.ballSubj {
				s.subjectTold()
			}
		}
		if w := base(a.word); w == "pursue" || w == "chase" {
			s.heard = true
		}
		if base(a.word) == "spin" && !slices.Contains(s.evidence, "spin") {
			s.evidence = append(s.evidence, "spin")
		}
	case vWhistle:
		if c.mark == '?' || c.join == "or" && i == c.from && s.toks[a.from].form == "whistle" { // "whistle it?"
			if len(s.evs) > 0 && i == c.from {
				s.settled(c.from, c.to) // "whistle as soon as it touches the net?"
				return c.to
			}
			a.used = true
			return c.to
		}
		a.used = true
		if n := len(s.evs); n > 0 && n == c.first && s.evs[n-1].Kind == play.Intrusion && c.from > 0 && s.atoms[c.from-1].id == "so" {
			if _, told := s.evs[n-1].facts[play.Hinders]; !told {
				s.evs[n-1].set(play.Hinders, play.Yes) // the whistle is for it
			}
		}
		h := s.add(play.Event{Kind: play.Whistle}, -1)
		if f := s.toks[a.from].form; f == "inadvertent" || f == "accidental" {
			h.facts[play.ErrorWhistle] = play.Yes
		}
	case vIntrude:
		a.used = true
		s.waiting(s.add(play.Event{Kind: play.Intrusion}, -1))
		if strings.HasSuffix(a.phrase, " go out") || strings.HasSuffix(a.phrase, " cut out") || strings.HasSuffix(a.phrase, " go off") {
			s.evs[len(s.evs)-1].set(play.Hinders, play.Yes) // nobody plays on without light
		}
		for j := i + 1; j < c.to; j++ { // its way is of no matter
			switch b := &s.atoms[j]; b.class {
			case cVerb, cDest, cFloor, cInto, cSide, cThing, cFiller, cDigits, cPerson:
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
	if s.bareRun(c, i) {
		return true
	}
	if i == 0 || i <= c.from {
		// "pass goes over": the ball's way follows.
		return !s.fresh && i+1 < c.to && s.toks[a.from].base == "" && a.action != play.Touch && a.verb == vContact &&
			(s.atoms[i+1].class == cVerb || s.atoms[i+1].class == cDest || s.atoms[i+1].class == cInto)
	}
	p := s.atoms[i-1]
	if p.class == cDoubt && a.action != play.Touch {
		return true
	}
	if p.class == cShe && (p.word == "his" || p.word == "her") {
		return true
	}
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

// pairOf is the two who press the ball when both were named before.

// touch adds a contact with all that was waiting for one.

// touches reads a verb whose object says what is touched.

func base(s string) string {
	if b, ok := stem(s); ok {
		return b
	}
	return s
}

// ballAhead reports whether the ball, or a contact by its number, is named

// after a verb.

// owned reports whether a noun has its owner before it: "A's set".

// meant reads a verb of what somebody meant or was able to do: "about to set

// it", "could hit it". It is no event.

func (s *scene) meant(c *clauseState, i int) bool {
	a, p := &s.atoms[i], s.atoms[i-1]
	if a.verb != vContact && a.verb != vHit && a.verb != vTouch || p.class != cFiller && p.class != cAsk {
		return false
	}
	switch p.word {
	case "from": // "kept from playing it"
		a.used = strings.HasSuffix(s.toks[a.from].form, "ing")
		return a.used
	case "could", "can":
		if p.word == "can" && c.mark == '?' {
			return false // "can we play it?"
		}
		k := len(s.evs) - 1
		if k >= 0 && c.deny && s.evs[k].Kind == play.Strike && !s.fresh { // "no one could get it"
			s.evs[k].set(play.CouldPlay, play.No)
			a.used, c.deny = true, false
			return true
		}
		for k >= 0 && (s.evs[k].Kind != play.Contact || len(s.subj) > 0 && s.evs[k].Team == s.subj[0].team) {
			k--
		}
		if k < 0 || len(s.subj) == 0 {
			return true
		}
		a.used, s.heard = true, true
		s.subjectTold()
		v := play.Yes
		if c.deny {
			v, c.deny = play.No, false
		}
		if told := s.evs[k].facts[play.CouldPlay]; told != play.Unknown && told != v {
			a.used = false // "is about to set it", then "so she can't"
			return true
		}
		s.evs[k].set(play.CouldPlay, v)
		return true
	case "to":
		if a.action == play.Block && len(s.subj) > 0 && !s.ballSubj && !c.deny {
			s.attempt(c, a)
			return true
		}
		if n := len(s.evs); n > c.first && s.evs[n-1].Kind == play.Contact && s.evs[n-1].Action == a.action {
			a.used = true // "uses a finger pass to set"
			return true
		}
		if i > 1 && (s.atoms[i-2].word == "about" || s.atoms[i-2].word == "ready") && len(s.subj) == 1 && !s.ballSubj {
			a.used = true // "who is about to swing": what she could do, if it is asked
			t := s.subj[0].team.Other()
			s.subjectTold()
			s.next = append(s.next, stated1{fact: play.CouldPlay, value: play.Yes, side: t})
			return true
		}
		if i > 1 && s.atoms[i-2].class == cVerb && s.atoms[i-2].verb == vUp && len(s.subj) > 0 && (a.verb == vHit || a.action.Attacking()) && s.attackAhead(i+1) {
			a.used = true // "jumps to hit", and the hit is told further on
			return true
		}
		for j := c.from; j < i; j++ {
			if b := s.atoms[j]; b.class == cFault && (b.id == "illegal" || b.id == "play-on") || b.class == cAsk && j+2 >= i { // "is it legal to set it over"
				return false
			}
		}
		return a.action != play.Save && !(a.action == play.Set && i > 1 && s.atoms[i-2].class == cVerb && s.atoms[i-2].verb == vUp)
	}
	return false
}

// on0 reports whether a noun says during which contact a thing just told

// happened to the ball: "hits the antenna on their attack".

func (s *scene) on0(c *clauseState, i int) bool {
	if n := len(s.evs); n <= c.first || !s.evs[n-1].Ball() || i < c.from+2 || s.atoms[i-1].class != cSide {
		return false
	}
	p := s.atoms[i-2]
	return p.class == cFiller && (p.word == "on" || p.word == "after" || p.word == "from") || p.class == cInto && p.word == "off"
}
