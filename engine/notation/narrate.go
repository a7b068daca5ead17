package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// clauseState is what a clause says before its verb and leaves behind it.

type clauseState struct {
	segment
	deny  bool // not, nobody
	asks  bool // a question about a fact: "was it above the net?"
	when  bool // "when she hit it": of what was told before
	first int  // events before the clause
	ball  bool // the ball was named as what moves
}

// narrate reads a clause as part of the story.

func (s *scene) narrate(g segment) {
	c := &clauseState{segment: g, first: len(s.evs)}
	s.body, s.extent, s.clauseEv = play.Unknown, play.Unknown, len(s.evs)
	c.asks = g.mark == '?' && auxFirst(s, g) || s.asksWhether(g)
	s.back = false
	from := s.moreParts(c)
	ball := s.ballSubj
	for i := from; i < g.to; {
		i = s.step(c, i)
	}
	s.alsoHits(c)
	s.thenToo(c)
	if n := len(s.evs); c.first == n && n > 0 && s.fresh && len(s.subj) == 1 && s.atoms[g.from].class == cOrder && s.atoms[g.from].id == "then" && s.evs[n-1].Kind == play.Contact && s.evs[n-1].Team != s.subj[0].team && !s.verbAhead(c, g.from) && (g.mark != ',' || g.to+1 >= len(s.atoms) || s.atoms[g.to+1].word != "who" && s.atoms[g.to+1].class != cFact) {
		s.touch(s.subj[0], play.Touch) // "the blocker touches it, then the setter"
	}
	if !c.ball && !ball {
		s.ballSubj = false // who acted acts on
	}
}

func auxFirst(s *scene, g segment) bool {
	switch s.toks[s.atoms[g.from].from].form {
	case "was", "is", "were", "are", "did", "does":
		return true
	}
	return false
}

// step reads the atom at i and what belongs to it, and gives the place after.

func (s *scene) step(c *clauseState, i int) int {
	a := &s.atoms[i]
	if s.tooAlike(c, i) {
		return i + 1
	}
	switch a.class {
	case cSide, cRole, cRow, cLibero, cPerson, cMate, cSame, cShe, cLabel, cCard, cBoth:
		for j := i; j < c.to && j < i+3; j++ {
			if b := s.atoms[j]; b.class == cRow && strings.HasPrefix(b.phrase, "penetrat") {
				s.next = append(s.next, stated1{fact: play.TakeOff, value: play.InFront}) // who penetrates plays at the net
			}
		}
		if a.class == cSide && i+1 < c.to && s.atoms[i+1].class == cFloor {
			if k := len(s.evs) - 1; (k >= c.first || k >= 0 && !s.verbAhead0(c)) && s.body == play.Unknown && s.evs[k].Kind == play.Line && s.team(a.side) == s.evs[k].Team.Other() {
				s.mark(i, i+2) // "every bit of the shoe on the opponent's floor"
				return i + 2
			}
			return i + 1 // whose court it is
		}
		if a.class == cSide && a.poss && (i > c.from && s.atoms[i-1].word == "on" || i == c.from && i+2 < c.to && s.atoms[i+2].class == cFiller) && i+1 < c.to && s.atoms[i+1].class == cNumber && s.team(a.side) != play.NoTeam {
			a.used = true // "on our second touch"
			return i + 1
		}
		if a.class == cRole && a.role == play.Server && a.poss && i+1 < c.to && s.atoms[i+1].class == cFloor && len(s.evs) > c.first {
			s.mark(i, i+2) // where the ball then went
			return i + 2
		}
		if a.class == cCard && i+1 < c.to && slices.Contains(measures, s.toks[s.atoms[i+1].from].form) {
			s.mark(i, i+2) // "two seconds later"
			return i + 2
		}
		if a.class == cCard && i > c.from+1 && s.atoms[i-1].word == "of" && s.atoms[i-2].action == play.Block {
			a.used = true // "a block of two"
			if k := len(s.evs) - 1; k >= c.first && s.evs[k].Action == play.Block && a.n > 1 && s.namesOne(i+1) {
				s.groupOf = s.evs[k].Team
				s.evs, s.group, s.fresh, s.ballSubj = s.evs[:k], a.n, false, false // who they are follows
			}
			return i + 1
		}
		if a.class == cBoth && i+2 < c.to && s.atoms[i+1].class == cShe && s.atoms[i+2].class == cBody {
			a.used = true // "both her feet"
			return i + 1
		}
		if a.class == cBoth && i+1 < c.to && (s.atoms[i+1].class == cBody || s.atoms[i+1].class == cVerb && strings.HasPrefix(s.atoms[i+1].word, "hand")) {
			a.used = true
			return i + 1
		}
		return s.people0(c, i)
	case cNot, cNobody:
		if a.class == cNot && (i+2 == c.to || i+3 == c.to && s.atoms[i+2].class == cScenery) && s.atoms[i+1].class == cLibero && s.lastWho >= 0 { // "not libero"
			s.mark(i, i+2)
			s.people[s.lastWho].libero, s.heard = play.No, true
			return i + 2
		}
		a.used, c.deny = true, true
	case cBall:
		a.used = true
		if i > c.from && s.atoms[i-1].class == cVerb && s.atoms[i-1].verb != vGo && s.atoms[i-1].verb != vLand {
			return i + 1 // what the verb is done to
		}
		if i > c.from && s.atoms[i-1].class == cVerb && base(s.toks[s.atoms[i-1].from].form) == "chase" {
			return i + 1 // "a player chasing the ball"
		}
		if i > c.from && s.fresh && s.atoms[i-1].class == cScenery && strings.HasSuffix(s.toks[s.atoms[i-1].from].form, "ing") {
			return i + 1 // "a player chasing the ball"
		}
		if i > c.from && s.atoms[i-1].class == cSide && s.atoms[i-1].poss && s.contacts() == 0 {
			if t := s.team(s.atoms[i-1].side); t != play.NoTeam && a.side == (sideRef{}) {
				s.open[play.Has] = play.Value(t.String())
				s.ballSubj, s.fresh = true, false
				return i + 1
			}
		}
		if s.fresh && i > c.from && !s.verbAhead(c, i) {
			return i + 1
		}
		if len(s.evs) == c.first || s.object == nil && s.verbAhead(c, i) {
			s.ballSubj, c.ball = true, true
		}
	case cVerb:
		return s.act(c, i)
	case cNumber:
		return s.numbered(c, i)
	case cUsed:
		s.used(c, a)
	case cOpen:
		if s.goesFor(c, i) {
			a.used = true // "fighting for an overpass"
			return i + 1
		}
		s.opening(a)
		if s.ballSubj && len(s.evs) > c.first {
			c.ball = true
		}
	case cCaution:
		if j := s.gotHit(c, i); j > 0 {
			return j
		}
		if w := s.toks[a.from]; (w.base == "hit" || w.form == "hit") && s.ballSubj { // "the ball hits her in the face"
			s.hitBy(c, i, i)
		}
	case cDest:
		if b := i + 1; a.word == "over" && b < c.to && s.atoms[b].class == cThing && (s.atoms[b].value == play.OtherThing || s.atoms[b].value == play.Bystander) {
			s.mark(i, b+1) // where the ball or a player is: "over the bench"
			return b + 1
		}
		if len(s.evs) > c.first && s.landedBefore(c, i) {
			s.swap = true
		}
		s.travel(c, a)
	case cLine:
		s.overLine(c, a)
	case cInto:
		return s.against(c, i)
	case cThing:
		if j := s.passiveNot(c, i); j > 0 {
			return j
		}
		if j := s.drivenInto(c, i); j > 0 {
			return j
		}
		if j := s.fallen(c, i); j > 0 {
			return j
		}
		s.touchesThing(c, a)
	case cBody:
		a.used = true
		s.someBody(c, i)
		if i == c.from && s.ballSubj && s.lastWho >= 0 && s.verbAhead(c, i+1) && len(s.evs) > 0 && !s.evs[len(s.evs)-1].Ball() {
			s.subj, s.ballSubj, s.fresh = []party{{team: s.people[s.lastWho].Team, pid: s.lastWho, one: true}}, false, true // "no touch of the ball, chest touches the net"
		}
		if k := s.lastContact(); strings.HasPrefix(a.word, "hit") && k >= 0 && k == len(s.evs)-1 && s.evs[k].Kind == play.Contact {
			s.bodyHits++ // "took the ball, hit her left hand": the ball did
			s.manyBodies()
		}
		s.body = a.value
	case cFact:
		s.state(c, a, a.fact, a.value)
		if a.fact == play.Hinders && a.used && a.value == play.Yes {
			return s.purpose(c, i)
		}
	case cDoubt:
		s.state(c, a, a.fact, play.Unknown)
	case cPlace:
		s.placed(c, a)
	case cBy:
		return s.agent(c, i)
	case cOrder:
		a.used = true
		s.order(c, a)
	case cFault:
		if !s.servePlayed(c, a) && !s.doubles(c, a) {
			s.faultTold(c, a)
		}
	case cFloor:
		if i > c.from+1 && s.atoms[i-1].word == "of" && s.atoms[i-2].class == cDest && s.atoms[i-2].side.ok() {
			a.used = true // "lands on their side of the court"
			return i + 1
		}
		if a.word == "half" && i+1 < c.to && (s.atoms[i+1].class == cBody || s.atoms[i+1].class == cShe) {
			a.used, s.extent = true, play.Partly // "half her foot"
			return i + 1
		}
		if s.ballSubj && s.contacts() > 0 && !c.deny && s.landsBefore(c, i) && (i == c.from || s.atoms[i-1].class != cSide) {
			a.used = true
			s.land(play.NoTeam, play.In)
			return i + 1
		}
		s.floor(c, a)
	case cFiller:
		a.used = true
		if row := s.inSpot(c, i); row != play.Unknown {
			s.rowOf(c, row, i, i+2)
			return i + 2
		}
		s.atNet(c, i)
		s.leavesHands(c, i)
		if a.word == "who" && s.object != nil {
			s.subj, s.fresh, s.ballSubj = []party{*s.object}, true, false
		}
		if a.word == "in" && i == c.to-1 && len(s.evs) > 0 && (s.ballSubj || s.evs[len(s.evs)-1].Ball()) {
			s.land(play.NoTeam, play.In)
		}
	case cScenery, cAsk:
		a.used = true
	case cOfficial:
		a.used = s.silent(c, i)
	case cCall:
		a.used = a.word == "say"
	}
	return i + 1
}

// verbAhead reports whether a verb follows in the clause.

func (s *scene) verbAhead(c *clauseState, i int) bool {
	for ; i < c.to; i++ {
		if s.atoms[i].class == cVerb || s.atoms[i].class == cDest || s.atoms[i].class == cLine {
			return true
		}
	}
	return false
}

// order notes an order word: how the next event lies to the last one.

func (s *scene) order(c *clauseState, a *atom) {
	initial := len(s.evs) == c.first && !s.fresh && !s.comma && a.from == s.atoms[c.from].from
	switch a.id {
	case "then":
		s.link = play.Before
	case "before":
		if s.beforeShe(c, a) || s.beforeThat(c, a) {
			return
		}
		if !initial {
			s.link = play.Before
		}
	case "same":
		if len(s.evs) > c.first && (len(s.evs)-c.first > 1 || !s.verbAfter(c, a)) {
			if n := len(s.evs); n > 1 {
				s.evs[n-1].link = play.Same
			}
		} else {
			s.link = play.Same
		}
	case "after":
		if len(s.evs) > c.first {
			s.swap = true
		}
	case "before-that":
		s.swap = len(s.evs) > 0
	case "first":
		if n := len(s.evs); n > 1 && n == c.first && s.fresh && len(s.subj) == 1 && s.evs[n-1].joint && s.evs[n-2].joint && s.evs[n-1].Team != s.evs[n-2].Team {
			if s.evs[n-1].Team == s.subj[0].team { // "B first", after "both touch it"
				s.evs[n-1], s.evs[n-2] = s.evs[n-2], s.evs[n-1]
				s.evs[n-2].link = s.evs[n-1].link
			}
			s.evs[n-1].link, s.heard = play.Before, true
			return
		}
		if n := len(s.evs); n > 1 && n > c.first && s.evs[n-1].Kind == play.Contact && s.evs[n-2].Kind == play.Contact && s.evs[n-1].Team != s.evs[n-2].Team {
			last := s.evs[n-1]
			last.link, s.evs[n-2].link = s.evs[n-2].link, play.Before
			s.evs[n-1], s.evs[n-2] = s.evs[n-2], last
		}
	case "when":
		c.when = true
		if a.word == "by then" || a.word == "by time" {
			s.link = play.Before
		}
	case "unsure":
		s.pairAsked = true
	}
}

func (s *scene) verbAfter(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].from > a.from && s.atoms[i].class == cVerb {
			return true
		}
	}
	return false
}

// used reads contacts that a side has used.

// lastSide is the side named last before an atom of the clause.

// opening reads what the opening was.

// numbered reads "third hit", "on two": the number of a contact told here, or

// a contact by itself.

// numberContact makes the contact that a number alone told of.

// flow is the side that plays the ball next as the story goes: the side on

// which it is, else the first.

// flush ends the story: what was still waiting is told now.

// pairContacts makes the two touches of "both front row, fourth contact?".

// faultTold reads the name of a fault inside the story, where it says what

// happened.

func (s *scene) faultTold(c *clauseState, a *atom) {
	a.used = true
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		if b := s.atoms[i]; b.class == cAsk && b.word != "right" && a.id != "ball-out" && a.id != "over-net" {
			s.want(a.id) // "does it count as a net violation"
			return
		}
	}
	switch a.id {
	case "ball-out":
		if s.contacts() > 0 || s.ballSubj {
			s.land(play.NoTeam, play.Out)
			return
		}
	case "over-net":
		if a.word != "over net" {
			break
		}
		a.meaning = goesTo(dOver)
		s.travel(c, a)
		return
	case "net-contact":
		if len(s.subj) > 0 && !s.ballSubj {
			if !c.deny {
				s.netTouch(s.subj[0], play.Unknown)
			}
			return
		}
	case "back-row-attack", "back-row-block":
		w := party{pid: -1}
		if len(s.subj) > 0 {
			w = s.subj[0]
		}
		if w.team == play.NoTeam {
			w.team = s.flow()
		}
		w.row, w.one = play.Back, true
		k := play.Attack
		if a.id == "back-row-block" {
			k = play.Block
		}
		s.touch(w, k)
		return
	case "play-on", "illegal":
		if c.mark == '?' || c.to-c.from < 3 {
			s.want(a.id)
		}
		return
	case "replay":
		s.want(a.id)
		return
	}
	if c.mark == '?' {
		s.want(a.id)
		return
	}
	a.used = false
}
