package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// travel reads where the ball goes.
func (s *scene) travel(c *clauseState, a *atom) {
	if n := s.nextTo(a); a.dest == dBack && !a.side.ok() && n != nil && n.class == cDest && n.side.ok() && (n.dest == dDown || n.dest == dSide || n.dest == dAbove) && !c.deny && len(s.evs) > 0 {
		a.used = true // "came right back down on our side": the side follows
		return
	}
	if s.wanted0(c, a) {
		a.used = true // "dives for a ball under the net"
		return
	}
	person := s.fresh && !s.ballSubj && len(s.subj) > 0
	t := s.team(a.side)
	if a.side.ok() && t == play.NoTeam {
		return
	}
	if a.side2.ok() { // "over A's own side": the second name only repeats the first
		if t2 := s.team(a.side2); t2 != play.NoTeam && a.side.fam == relative {
			t = t2
		}
	}
	if c.deny {
		a.used, c.deny = true, false
		if a.dest == dOver && len(s.evs) > 0 {
			if k := s.lastContact(); k >= 0 && s.evs[k].Kind == play.Contact {
				s.evs[k].set(play.Completes, play.No)
				s.on = s.evs[k].Team
				if _, told := s.evs[k].facts[play.Place]; !told && !s.evs[k].Action.Attacking() && k > 0 && s.evs[k-1].Kind == play.Cross {
					s.evs[k].set(play.Place, play.Own) // what never went over was played on its own side
				}
			}
		}
		return
	}
	if person && s.struckBy(c, a) {
		person = false
	}
	person = person || s.inNet(c, a) || s.cameDown(c, a)
	if person && s.landsOn(c, a) {
		return
	}
	if person {
		s.moves(c, a, t)
		return
	}
	if s.number > 0 && s.contacts() == 0 && a.dest != dAbove {
		s.numberContact()
	}
	if len(s.evs) == 0 && !s.ballSubj {
		return
	}
	a.used = true
	if k := len(s.evs) - 1; a.dest == dOver && (a.word == "over tape" || a.word == "over net" || a.word == "above tape") && k > 0 && k >= c.first && s.evs[k].Kind == play.Contact && (s.evs[k].Action == play.Touch || s.evs[k].Action == play.Block) && s.evs[k-1].Kind == play.Contact && s.evs[k-1].Team != s.evs[k].Team && s.evs[k-1].Action.Attacking() {
		s.evs[k].set(play.ReachHeight, play.Above) // "gets a piece of the swing over the tape"
		return
	}
	switch a.dest {
	case dOver, dSide:
		s.cross(t)
	case dNet:
		s.ball(play.Cross, play.NoTeam).facts[play.How] = play.IntoNet
	case dStay:
		s.stays(t)
	case dZone:
		if n := len(s.evs); n > 0 && s.evs[n-1].Kind == play.Cross && s.evs[n-1].Team == play.NoTeam {
			s.evs[n-1].Team = t
			s.evs[n-1].facts[play.Side] = play.Value(t.String())
		}
	case dOutside:
		if n := len(s.evs); n > 0 && s.evs[n-1].Kind == play.Support && !s.verbAhead0(c) {
			return // where the hold was
		}
		if n := len(s.evs); (n > c.first || n > 0 && !s.verbAhead(c, c.from) || n > 0 && c.to-c.from == 1) && s.evs[n-1].Kind == play.NetTouch && !s.ballSubj {
			if s.evs[n-1].facts[play.Part] != play.PartPost {
				s.evs[n-1].set(play.Part, play.PartOutside)
			}
			return
		}
		if n := len(s.evs); n > c.first && s.evs[n-1].Kind == play.Cross && s.evs[n-1].facts[play.How] == play.Unknown {
			s.evs[n-1].facts[play.How] = play.OutsideAnt
			return
		}
		if t == play.NoTeam {
			t = s.away()
		}
		s.ball(play.Cross, t).facts[play.How] = play.OutsideAnt
	case dUnder:
		if n := len(s.evs); n > c.first && (s.evs[n-1].Kind == play.Line || s.evs[n-1].Kind == play.NetTouch && !s.ballSubj) {
			return // "the mesh under the tape"
		}
		h := s.ball(play.Cross, s.away())
		h.facts[play.How] = play.Under
		s.waiting(h)
	case dOut:
		s.land(t, play.Out)
		switch base(s.toks[a.from].form) {
		case "go", "fly", "sail", "head":
			s.evs[len(s.evs)-1].soft = strings.HasSuffix(s.toks[a.from].form, "ing")
		}
	case dWide:
		s.land(t, play.Out)
		s.evs[len(s.evs)-1].soft = true
	case dIn:
		if t == play.NoTeam {
			t = s.on
		}
		s.land(t, play.In)
	case dDown:
		s.land(t, play.Unknown)
		s.evs[len(s.evs)-1].maybe = s.evs[len(s.evs)-1].facts[play.Lands] == play.Unknown
		s.evs[len(s.evs)-1].soft = s.toks[a.from].base == "come" // on its way down, until somebody plays it
	case dAbove:
		s.above(c, a, t)
	case dBack:
		if n := len(s.evs); n > 0 && s.evs[n-1].Kind == play.Strike && s.evs[n-1].Team != play.NoTeam && (t == play.NoTeam || t == s.evs[n-1].Team) {
			break // down again on the side that it was above: no crossing
		}
		if n, k := len(s.evs), s.lastContact(); n > 0 && k >= 0 && s.evs[n-1].Kind == play.Cross && s.evs[n-1].facts[play.How] == play.IntoNet && (t == play.NoTeam || t == s.evs[k].Team) {
			s.on = s.evs[k].Team // out of the net, to the side that sent it there
			break
		}
		if t == play.NoTeam {
			if k := s.lastContact(); k >= 0 {
				t = s.evs[k].Team.Other()
				if s.on == t {
					t = t.Other()
				}
			}
		}
		s.cross(t)
	}
	s.ballSubj = true
}

// away is the side opposite to the last touch.
func (s *scene) away() play.Team {
	if k := s.lastContact(); k >= 0 {
		return s.evs[k].Team.Other()
	}
	return play.NoTeam
}

// cross adds a ball that goes over the net to a side, once.
func (s *scene) cross(t play.Team) {
	if t == play.NoTeam {
		t = s.away()
	}
	if n := len(s.evs); n > 0 {
		if e := s.evs[n-1]; e.Kind == play.Cross && e.facts[play.How] == play.Unknown && (e.Team == t || e.Team == play.NoTeam) {
			return
		}
	}
	k := s.lastContact()
	if k >= 0 && t == s.evs[k].Team && s.on != t.Other() {
		return // it stays on the side that plays it
	}
	s.waiting(s.ball(play.Cross, t))
	s.on = t
}

// land adds a ball that comes down.
func (s *scene) land(t play.Team, v play.Value) {
	n := len(s.evs)
	if n > 0 && s.evs[n-1].Kind == play.Land {
		h := &s.evs[n-1]
		if v != play.Unknown {
			h.facts[play.Lands] = v
		}
		if t != play.NoTeam && h.Team == play.NoTeam {
			h.Team = t
			h.facts[play.Side] = play.Value(t.String())
		}
		return
	}
	if t == play.NoTeam && v == play.In {
		t = s.on
	}
	h := s.ball(play.Land, t)
	if v != play.Unknown {
		h.facts[play.Lands] = v
	}
}

// above reads "over our side" after a thing that the ball met, or after it
// came down.
func (s *scene) above(c *clauseState, a *atom, t play.Team) {
	n := len(s.evs)
	if s.handsOver(c, a, t) {
		return
	}
	if n == 0 {
		a.used = false
		return
	}
	h := &s.evs[n-1]
	switch h.Kind {
	case play.Strike, play.Land:
		if h.Team != play.NoTeam && h.Team != t && n-1 < c.first {
			s.cross(t)
			return
		}
		h.Team = t
		h.facts[play.Side] = play.Value(t.String())
	case play.Contact:
		if h.Team == t && n-1 >= c.first {
			return // a player on the own side
		}
		if s.toks[a.from].form == "on" {
			s.contactOn(c, a, h, t, n-1)
			return
		}
		if s.toks[a.from].form != "over" {
			a.used = false
			return
		}
		s.cross(t)
	case play.Line:
		if h.Team == t {
			a.used = false // "lands under the net on the other side"
		}
	default:
		if h.Team != t {
			a.used = false
		}
	}
}

// moves reads where a player goes, in the words that are used of a ball too.
func (s *scene) moves(c *clauseState, a *atom, t play.Team) {
	w := s.subj[0]
	switch a.dest {
	case dNet:
		a.used = true
		s.netTouch(w, play.PartNet)
	case dUnder, dDown, dIn, dSide:
		if a.dest == dUnder || t == w.team.Other() {
			a.used = true
			s.line(w)
			return
		}
		a.used = t == w.team || t == play.NoTeam && a.dest == dIn
	case dZone, dStay:
		a.used = true
	case dOver:
		if s.extent != play.Unknown || s.body == play.Foot {
			a.used, s.body = true, play.Foot
			s.line(w)
			return
		}
		if n := len(s.evs); s.body == play.Foot && n > 0 && s.evs[n-1].Kind == play.Line {
			a.used = true
			return
		}
		// A player "over" is beyond something that was not read.
		if s.body == play.Hand {
			a.used, s.mayReach = true, !c.deny
		}
	case dOut, dWide:
		a.used = true
	}
}

// touchesThing reads the thing that the ball or the player meets.
func (s *scene) touchesThing(c *clauseState, a *atom) {
	if c.deny || (len(s.evs) > 0 || s.fresh) && s.nearOnly(a) {
		a.used = true
		c.deny = false
		return
	}
	if s.fresh && !s.ballSubj && len(s.subj) > 0 && a.value != play.NetBand && a.value != play.Antenna && a.value != play.Posts {
		a.used = true // where a player runs
		return
	}
	if a.value == play.Bystander && slices.ContainsFunc(s.evs, func(h happening) bool { return h.Kind == play.Intrusion }) {
		a.used = true // who fetches what came onto the court
		return
	}
	net := a.value == play.NetBand || a.value == play.Antenna || a.value == play.Posts
	if len(s.subj) > 0 && !s.ballSubj && (s.fresh || len(s.evs) == 0 || s.evs[len(s.evs)-1].Kind != play.Serve && !s.evs[len(s.evs)-1].Ball()) && net && s.touchBefore(c, a) {
		a.used = true
		s.netTouch(s.subj[0], a.part)
		return
	}
	if !s.ballSubj && s.number == 0 && s.contacts() == 0 && len(s.evs) == 0 {
		return
	}
	if s.number > 0 && s.contacts() == 0 {
		s.numberContact()
	}
	if net && !s.touchBefore(c, a) {
		return
	}
	a.used = true
	v := a.value
	s.strike(v)
}

// touchBefore reports whether a verb of touching stands before a thing.
func (s *scene) touchBefore(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		if b := s.atoms[i]; b.class == cFiller && b.to == a.from && s.body != play.Unknown && (b.word == "through" || b.word == "on" || b.word == "onto") || b.class == cVerb && (b.verb == vTouch || b.verb == vHit || b.verb == vGrab || b.verb == vBump || b.verb == vCollide) || b.class == cInto {
			return true
		}
	}
	return false
}

// strike adds the ball meeting a thing.
func (s *scene) strike(v play.Value) {
	h := s.ball(play.Strike, play.NoTeam)
	h.facts[play.Struck] = v
	s.waiting(h)
	s.ballSubj = true
}

// against reads what the ball goes into or off: a thing, or somebody who is
// then the next to touch it.
func (s *scene) against(c *clauseState, i int) int {
	a := &s.atoms[i]
	if i+1 >= c.to || s.contacts() == 0 && s.number == 0 && !s.ballSubj {
		a.used = true
		return i + 1
	}
	if s.fresh && !s.ballSubj && len(s.evs) == c.first {
		a.used = true
		return i + 1
	}
	b := &s.atoms[i+1]
	if b.class == cBody || (b.class == cShe || b.class == cMate) && i+2 < c.to && (s.atoms[i+2].class == cBody || s.atoms[i+2].class == cMate && i+3 < c.to && s.atoms[i+3].class == cBody) {
		if s.offBody(c, i+1) {
			a.used = true
			return c.to
		}
	}
	switch b.class {
	case cThing:
		a.used = true
		if b.value == play.NetBand && a.word == "into" {
			b.used = true
			s.ball(play.Cross, play.NoTeam).facts[play.How] = play.IntoNet
			return i + 2
		}
		b.used = true
		s.strike(b.value)
		return i + 2
	case cOfficial:
		a.used, b.used = true, true
		s.strike(play.Official)
		return i + 2
	case cSide, cRole, cPerson, cLibero, cRow, cShe, cVerb:
		if b.class == cVerb && b.action != play.Block {
			return i + 1
		}
		w, j, ok := party{pid: -1, role: play.Blocker, one: true}, i+2, true
		act := play.Touch
		if b.class != cVerb {
			w, j, ok = s.phrase(c, i+1)
			if ok && j < c.to && s.atoms[j].class == cVerb && s.atoms[j].action == play.Block {
				if w.role == play.NoRole {
					w.role, w.one = play.Blocker, true
				}
				act = play.Block
				j++
			}
		}
		if !ok {
			return i + 1
		}
		if w.team == play.NoTeam && w.pid < 0 {
			w.team = s.guess(w)
		}
		if w.team == play.NoTeam || j < c.to && s.atoms[j].class == cFloor {
			return i + 1
		}
		a.used = true
		s.mark(i+1, j)
		if s.hands(c, w, j) {
			s.mark(j, j+1)
			return j + 1
		}
		for j < c.to && s.atoms[j].class == cBody {
			s.atoms[j].used = true
			j++
		}
		if w.role == play.Blocker {
			act = play.Block
		}
		s.subj = []party{w}
		s.touch(w, act)
		s.ballSubj = true
		return j
	}
	a.used = true
	return i + 1
}

// struckBy makes the contact of somebody who hits or passes the ball
// somewhere: "hits out", "passes over the net".
func (s *scene) struckBy(c *clauseState, a *atom) bool {
	b := atom{meaning: does(vHit, play.Touch), from: a.from, to: a.to, word: "hit"}
	switch s.toks[a.from].base {
	case "pass":
		b.meaning = does(vContact, play.Pass)
	default:
		if s.toks[a.from].form != "hit" && s.toks[a.from].base != "hit" {
			return false
		}
		b.action = play.Attack
		if r := s.roleOf(s.subj[0]); r != play.NoRole && r != play.Hitter && r != play.Outside && r != play.Middle && r != play.Opposite {
			b.action = play.Touch
		}
	}
	s.contact(c, &b, false)
	return len(s.evs) > c.first
}
