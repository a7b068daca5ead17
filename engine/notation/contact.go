package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

func (s *scene) contact(c *clauseState, a *atom, noun bool) {
	if a.verb == vSend && s.bodyNext(c, a) {
		a.used = true
		return
	}
	if k := len(s.evs) - 1; a.verb == vSend && !noun && k >= c.first && s.evs[k].Kind == play.Contact && !s.fresh && strings.HasSuffix(s.toks[a.from].form, "ing") {
		a.used = true // "doubles it, sending it to the outside"
		return
	}
	if a.verb == vSend && !noun && !s.ballAhead(c, a) && !s.wayAhead(c, a) && !strings.Contains(a.word, " it ") {
		return
	}
	who := s.subj
	if len(who) == 2 && who[0].team != who[1].team && a.verb == vSend && base(a.word) == "push" { // two opponents push it
		b := *a
		b.meaning = does(vPress, play.Press)
		s.contact(c, &b, noun)
		a.used = b.used
		return
	}
	if len(who) == 0 {
		t := s.flow()
		if a.action.Attacking() && s.contacts() == 0 {
			for _, e := range s.evs {
				if e.Kind == play.Attempt {
					t = e.Team.Other() // they went up against it
				}
			}
		}
		if a.action == play.Block {
			if k := s.lastContact(); k >= 0 {
				t = s.evs[k].Team.Other()
			}
		}
		who = []party{{team: t, pid: -1}}
	}
	switch base(a.word) {
	case "play", "get", "take":
		if n := len(s.evs); c.deny && base(a.word) == "play" && n > 0 && s.evs[n-1].Kind == play.Intrusion {
			s.evs[n-1].set(play.Hinders, play.Yes) // "pulls up and does not play"
			a.used, c.deny = true, false
			return
		}
		if !noun && !s.ballAhead(c, a) {
			n := s.after(c, a)
			a.used = base(a.word) == "take" || n != nil && (n.class == cShe || n.class == cBody) // "takes two steps", "gets her elbow into it"
			return
		}
	}
	if !noun && s.passiveVerb {
		who = []party{{team: s.undergoer(a), pid: -1}}
		keep := s.subj
		defer func() { s.subj, s.ballSubj, c.ball = keep, true, true }()
		s.subj = who
	}
	if noun && a.action != play.Touch && !s.owned(c, a) && !s.usedBy(c, a) {
		keep := s.subj
		defer func() { s.subj = keep }()
		t := s.flow()
		if a.action == play.Block {
			t = s.away()
			if t == play.NoTeam {
				t = s.flow()
			}
		}
		if a.action.Attacking() && s.contacts() == 0 {
			for _, e := range s.evs {
				if e.Kind == play.Attempt {
					t = e.Team.Other() // they went up against it
				}
			}
		}
		if w := s.subj; a.action.Attacking() && len(w) == 1 && s.fresh && s.meetsHer(c, a) {
			t = w[0].team.Other() // "the spike hits her"
			who = []party{{team: t, pid: -1}}
			if w[0].one {
				keep[0].pid = s.settle(&w[0])
				s.lastWho = keep[0].pid
			}
		} else if len(w) == 1 && a.action.Attacking() && w[0].one && w[0].team == t && s.fresh && (w[0].pid < 0 || !s.people[w[0].pid].acts) {
			who = w // "takes off behind the line, attack goes over"
		} else {
			who = []party{{team: t, pid: -1}}
		}
		s.subj = who
	}
	if s.ballSubj && !noun && a.action == play.Touch && (len(s.subj) == 0 || !s.ballNext(c, a)) {
		a.used = true // "the ball pops up": a way to go
		return
	}
	a.used = true
	if c.deny {
		c.deny = false
		if a.action == play.Touch {
			s.mayReachOnly()
		}
		if a.action != play.Touch && c.from < c.to && s.atoms[c.from].class == cNobody { // "nobody hit it over"
			a.used, s.atoms[c.from].used = false, false
		}
		return
	}
	if k := s.lastContact(); k >= 0 && k == len(s.evs)-1 && action0(a) && s.evs[k].facts[play.Manner] == play.Held && !s.fresh && s.goesOn(k) {
		s.link = play.Unknown
		return // "holds it, then pushes it to the setter"
	}
	if s.retold(c, a, noun) {
		return // "saves it one handed. dug to the setter"
	}
	s.nextOf(c, who)
	// "doubles the ball while setting": one contact, named by what it was.
	if k := len(s.evs) - 1; k >= c.first && k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].Action == play.Touch && !s.fresh && s.evs[k].who >= 0 && who[0].pid == s.evs[k].who {
		s.evs[k].Action = a.action
		return
	}
	if a.action == play.Block && len(who) > 1 && who[0].team == who[1].team {
		s.wall(c, a)
		return
	}
	if k := s.lastContact(); c.when && len(who) == 1 && k >= 0 && who[0].pid >= 0 && s.evs[k].who == who[0].pid && !s.again(c) {
		s.fresh = false
		return // told before
	}
	if k := s.lastContact(); len(who) == 1 && !who[0].one && who[0].pid >= 0 && !s.fresh && k >= 0 && s.evs[k].who == who[0].pid && !s.again(c) {
		who = []party{{team: who[0].team, pid: -1}} // "A passes, sets and hits": three of A
	}
	if n := len(s.evs); len(who) == 2 && a.action == play.Touch && n > 1 && s.evs[n-1].joint && s.evs[n-2].joint && who[0].pid == s.evs[n-2].who && who[1].pid == s.evs[n-1].who && !s.again(c) {
		s.fresh = false
		return // "both touch it", of the two who just did
	}
	if s.restated(c, a, who) || s.toldAgain(c, a, who) {
		return
	}
	action := a.action
	if action == play.Touch && len(who) == 1 && s.roleOf(who[0]) == play.Defender {
		action = play.Dig
	}
	if a.verb == vPress && len(who) < 2 && (s.both || noun && base(a.word) == "joust" || len(s.evs) == 0 && !s.fresh) {
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
		s.evs[len(s.evs)-1].joint = len(who) > 1
	}
	switch base(a.word) {
	case "take", "get", "reach", "meet":
		s.evs[len(s.evs)-1].taken = len(who) == 1
	}
	s.subj = who
	if a.fact != "" {
		s.evs[len(s.evs)-1].set(a.fact, a.value)
	}
	if len(who) == 2 && a.verb != vPress && who[0].team != who[1].team {
		s.evs[len(s.evs)-1].split = true
	}
	if noun {
		s.ballSubj, c.ball = true, true
	}
}

// goesOn reports whether what is now told of the handling is of the contact

// told last: "scoops the ball, carries it", "passes the serve, double contact".

func (s *scene) goesOn(k int) bool {
	if s.ballSubj || len(s.subj) == 0 || s.subj[0].pid < 0 || s.evs[k].who != s.subj[0].pid {
		return false
	}
	return s.link == play.Unknown || s.evs[k].facts[play.Manner] == play.Held
}

// nextOf makes somebody new of a side that plays the ball once more: "A passes,

// sets and hits" are three players.

func (s *scene) nextOf(c *clauseState, who []party) {
	k := len(s.evs) - 1
	if len(who) != 1 || who[0].one || who[0].pid < 0 || k < 0 {
		return
	}
	for i := c.from; i < c.to; i++ {
		if w := s.atoms[i].word; w == "again" && !s.plural(who[0]) || s.atoms[i].class == cSame {
			return
		}
	}
	for ; k >= 0; k-- {
		if e := s.evs[k]; e.Kind == play.Contact {
			if e.who == who[0].pid && (e.Action != play.Touch || k < c.first) {
				who[0].pid = -1
			}
			return
		}
	}
}

func (s *scene) pairOf(who []party) []party {
	w := party{team: who[0].team.Other(), pid: -1}
	return append(who, w)
}

func (s *scene) touch(w party, action play.Action) {
	s.otherReached(w)
	if action == play.Block {
		s.attackOf(w.team.Other())
	}
	if r := s.reaching; r != nil {
		s.reaching = nil
		if s.link == play.Same && r.team != w.team && (r.pid < 0 || !s.people[r.pid].acts) {
			keep := s.next // both touch it: what was told before is of both
			s.link = play.Unknown
			s.touch(*r, play.Touch)
			s.next, s.link = keep, play.Same
		}
	}
	if s.reception && s.contacts() == 0 && len(s.evs) == 0 {
		s.open[play.Used], s.open[play.Has] = play.Zero, play.Value(w.team.String())
	}
	pid := s.settle(&w)
	if len(s.subj) > 0 && s.subj[0].team == w.team && s.subj[0].pid < 0 {
		s.subj[0].pid = pid
	}
	h := s.add(play.Event{Kind: play.Contact, Team: w.team, Action: action}, pid)
	if len(s.subj) == 0 {
		s.subj = []party{{team: w.team, pid: pid, one: w.one}}
	}
	if s.number > 0 && s.number <= 3 && (action == play.Press || len(s.subj) == 2 && s.subj[0].team != s.subj[1].team) && s.contacts() == 1 {
		// The third hit, then two at the net: it is what had been used.
		s.open[play.Used] = []play.Value{play.Zero, play.N1, play.N2, play.N3}[s.number]
		if s.numberOf != play.NoTeam {
			s.open[play.Has] = play.Value(s.numberOf.String())
		}
		s.number = 0
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
		if _, told := h.facts[play.Height]; s.reachUp == play.Below && !told && action == play.Touch {
			h.facts[play.Height] = play.NotAbove // what hands below the top meet is not wholly above it
		}
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

func (s *scene) hits(c *clauseState, a *atom, noun bool) {
	if s.ballSubj && !noun && !s.passiveVerb {
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

func (s *scene) hitAs(c *clauseState, noun bool) play.Action {
	if noun && c.first > 0 {
		switch k := s.lastContact(); {
		case k >= 0 && s.evs[k].Team == s.flow() && (s.evs[k].Action == play.Set || s.evs[k].Action == play.Pass || s.evs[k].Action == play.Dig):
			return play.Attack
		}
	}
	if len(s.subj) == 0 {
		return play.Touch
	}
	w := s.subj[0]
	switch s.roleOf(w) {
	case play.Hitter, play.Outside, play.Middle, play.Opposite:
		return play.Attack
	case play.NoRole:
		if w.one && s.contacts() == 0 && (slices.ContainsFunc(s.next, func(n stated1) bool { return n.fact == play.TakeOff }) || s.highAhead(c)) {
			return play.Attack // "took off in front of the line and hit it"
		}
		if w.one && s.contacts() == 0 {
			for j := c.from; j < c.to; j++ {
				if s.atoms[j].class == cFact && s.atoms[j].fact == play.TakeOff {
					return play.Attack // "hits from in front of the line"
				}
			}
		}
		if k := s.lastContact(); k >= 0 && w.pid >= 0 && s.evs[k].who == w.pid && (w.one || s.evs[k].Action != play.Set) {
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
	if n := s.after(c, a); n != nil && a.verb == vHeld && (n.class == cSide || n.class == cRole || n.class == cPerson) && len(s.subj) > 0 {
		s.support(play.Teammate) // one player lifts another
		return
	}
	uninflected := s.toks[a.from].base == ""
	same := k >= 0 && s.evs[k].Kind == play.Contact && (noun || s.ballSubj && k >= c.first || !s.fresh && (k >= c.first || uninflected || s.goesOn(k)))
	if c.deny {
		c.deny = false
		if k >= 0 && s.evs[k].Kind == play.Contact {
			s.evs[k].facts[play.Manner] = play.Clean
		}
		return
	}
	if !same && k >= 0 && s.evs[k].Kind == play.Contact && s.evs[k].facts[play.Manner] == value && !s.ballSubj && len(s.subj) == 1 && (s.subj[0].pid == s.evs[k].who || s.subj[0].pid >= 0 && s.people[s.subj[0].pid].bare && s.subj[0].team == s.evs[k].Team) {
		same, s.fresh = true, false // told of the same contact once more
	}
	if !same {
		if s.ballSubj || len(s.subj) == 0 && len(s.evs) > 0 {
			a.used = false
			return
		}
		if n := len(s.evs); n > 0 {
			s.evs[n-1].maybe = false // it fell, and was then caught
		}
		s.contact(c, &atom{meaning: does(vContact, play.Touch)}, false)
		k = s.lastContact()
	}
	if k < 0 || s.evs[k].Kind != play.Contact {
		return
	}
	if value == play.Unknown || c.mark == '?' || c.asks {
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

func (s *scene) serves(c *clauseState, a *atom) {
	a.used = true
	for _, e := range s.evs {
		if e.Kind == play.Serve {
			s.ballSubj, c.ball = true, true
			return
		}
	}
	if n := len(s.evs); n > 0 {
		if n != 1 || s.evs[0].Kind != play.Contact || c.first > 0 {
			a.used = false
			return
		}
		// "passes the serve": the service hit came before.
		s.swap = true
		s.add(play.Event{Kind: play.Serve, Team: s.evs[0].Team.Other()}, -1)
		return
	}
	t := play.NoTeam
	if len(s.subj) > 0 {
		t = s.subj[0].team
	} else if first, ok := s.first[serveRec]; ok {
		t = first
	}
	s.add(play.Event{Kind: play.Serve, Team: t}, -1)
	s.ballSubj, c.ball, s.fresh, s.subj = true, true, false, nil
	s.on = t.Other()
}

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

// wayAhead reports whether a verb is followed by where the ball goes.

// usedBy reports whether a noun is what the subject uses or makes: "uses a

// finger pass".

// again reports whether a clause says that the same one acts once more.

// after is the atom after another in the clause, nil at its end.
