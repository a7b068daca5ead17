package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// rulingVerbs are what crews, benches and teams do about a call once the play
// is over: none of them moves the ball or a player.
var rulingVerbs = []string{"allow", "argue", "award", "beg", "blow", "call", "claim", "complain", "count", "disagree", "explain", "flag", "get", "give", "laugh", "let", "lose", "miss", "rule", "say", "signal", "take", "want", "whistle", "win", "yell"}

// aftermath reads a clause that tells only what somebody made of the play
// afterwards: "they gave it to them", "ref missed it", "they still called it".
func (s *scene) aftermath(g segment) bool {
	who, verb, crew, call := false, false, false, false
	if len(s.evs) == 0 && s.number == 0 {
		return false
	}
	for i := g.from; i < g.to; i++ {
		a := &s.atoms[i]
		t := s.toks[a.from]
		f := base(t.form)
		if t.base != "" {
			f = t.base
		}
		crew = crew || a.class == cOfficial
		if id := faultOf(*a); id != "" && id != "illegal" && id != "play-on" {
			call = true
		}
		ruling := a.class == cCall && a.to-a.from > 2 || slices.Contains(rulingVerbs, f) && (a.to-a.from == 1 || s.toks[a.to-1].form == "it")
		switch {
		case ruling && who && !verb:
			if f == "blow" && a.class == cVerb {
				return false // a whistle ends the rally
			}
			verb = true
		case a.class == cOfficial, a.class == cSide && !a.poss, a.class == cClaim, a.class == cAround, s.bystander(i),
			a.class == cFiller && slices.Contains([]string{"i", "somebody", "someone", "everybody", "everyone", "people"}, a.word):
			if a.class == cSide && i+1 < g.to && s.personAt(&clauseState{segment: g}, i+1) {
				return false
			}
			who = true
		case a.class == cBall, a.class == cFiller, a.class == cScenery, a.class == cAsk, a.class == cPoint, a.class == cElse, a.class == cCode:
		case verb && (a.class == cShe || a.class == cCall || a.class == cFault && a.id != "ball-out" || a.class == cDigits):
		default:
			return false
		}
	}
	if !who || !verb || crew && call { // a call that the crew made is noted as one
		return false
	}
	for i := g.from; i < g.to; i++ {
		a := &s.atoms[i]
		if id := faultOf(*a); id != "" && id != "illegal" && id != "play-on" {
			s.touchedBy(id)
		}
		if a.class == cSide || a.class == cFault {
			a.class = cFiller
		}
		a.used = true
	}
	return true
}

// goesFor reports whether a number of a contact says only which ball somebody
// goes for: "was running to the second ball".
func (s *scene) goesFor(c *clauseState, i int) bool {
	if i < c.from+2 || s.atoms[i-1].class != cFiller || s.atoms[i-2].class == cNone && strings.HasSuffix(s.toks[s.atoms[i-2].from].form, "ing") && slices.Contains([]string{"after", "for", "to"}, s.atoms[i-1].word) {
		return i >= c.from+2 && s.atoms[i-1].class == cFiller
	}
	if !slices.Contains([]string{"after", "at", "for", "to", "toward", "towards"}, s.atoms[i-1].word) {
		return false
	}
	switch b := s.atoms[i-2]; b.class {
	case cScenery:
		return true
	case cVerb:
		return b.verb == vGo && !s.ballSubj
	case cFiller:
		return s.toks[b.from].form == "going" || s.toks[b.from].form == "get" || s.toks[b.from].form == "getting"
	}
	return false
}

// sourceOf reads what kind of ball a first contact was of: "hits her foot on a
// hard spike". The opponents' hit was before it.
func (s *scene) sourceOf(c *clauseState, i int) bool {
	a, k := &s.atoms[i], len(s.evs)-1
	if a.art != 'a' && (i == c.from || s.atoms[i-1].class != cScenery) || !a.action.Attacking() || a.verb != vContact || k < 0 || s.evs[k].Kind != play.Contact || s.evs[k].Action.Attacking() {
		return false
	}
	j := i - 1
	for j >= c.from && s.atoms[j].class == cScenery {
		j--
	}
	if j < c.from || s.atoms[j].class != cFiller && s.atoms[j].class != cInto || !slices.Contains([]string{"on", "off", "from", "of"}, s.atoms[j].word) {
		return false
	}
	a.used = true
	t := s.evs[k].Team.Other()
	for n := k - 1; n >= 0; n-- {
		if e := s.evs[n]; e.Kind == play.Contact && e.Team == t {
			return true
		}
	}
	w := party{team: t, pid: -1}
	keep := s.link
	h := happening{Event: play.Event{Kind: play.Contact, Team: t, Action: a.action}, who: s.settle(&w), facts: map[play.FactID]play.Value{}, voids: map[play.FactID]bool{}}
	s.people[h.who].acts = true
	s.evs[k].link = play.Before
	at := k
	for at > 0 && s.evs[at-1].Kind == play.Contact && s.evs[at-1].Team == s.evs[k].Team {
		at--
	}
	s.evs = slices.Insert(s.evs, at, h)
	s.link = keep
	return true
}

// intrudes reads a clause in which something that has no part in the play comes
// onto the court: "a water bottle rolled onto the court next to our libero".
func (s *scene) intrudes(g segment) bool {
	for i := g.from; i < g.to; i++ {
		if s.atoms[i].class == cBall && i+1 < g.to && s.atoms[i+1].class == cVerb {
			return false
		}
	}
	i, thing := g.from, false
	for ; i < g.to; i++ {
		a := s.atoms[i]
		switch {
		case a.class == cNone && !numeric(a.word), a.class == cScenery, a.class == cAround, a.class == cThing && a.value == play.Bystander:
			thing = true
			continue
		case a.class == cFiller && !thing, a.class == cOrder && !thing, a.class == cDigits:
			continue
		}
		break
	}
	if !thing || i >= g.to || s.atoms[i].class != cVerb || s.atoms[i].verb != vGo && s.atoms[i].verb != vLand {
		return false
	}
	court := false
	for i++; i < g.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cFloor:
			court = court || a.word == "court" || a.word == "floor"
		case cFiller, cInto, cScenery, cSide, cRole, cPerson, cLibero, cAround, cDigits, cNone, cBall:
		case cVerb:
			if a.verb != vGo {
				return false
			}
		case cDest:
			court = court || strings.HasSuffix(a.word, "court")
			if a.dest != dSide && a.dest != dIn && a.dest != dAbove && a.dest != dOver {
				return false
			}
		case cFact:
			if a.fact == play.Ball {
				s.state(&clauseState{segment: g, first: len(s.evs)}, &s.atoms[i], a.fact, a.value)
				continue
			}
			return false
		default:
			return false
		}
	}
	if !court {
		return false
	}
	for k := g.from; k < g.to; k++ {
		a := &s.atoms[k]
		a.used, a.class = true, cFiller
	}
	s.waiting(s.add(play.Event{Kind: play.Intrusion}, -1))
	if n := len(s.evs); n > 1 && s.evs[n-2].Kind == play.Whistle && g.from > 0 && s.atoms[g.from-1].id == "because" {
		s.evs[n-1].set(play.Hinders, play.Yes)
		s.evs[n-1], s.evs[n-2] = s.evs[n-2], s.evs[n-1] // the whistle is for it
		s.evs[n-2].link, s.evs[n-1].link = s.evs[n-1].link, play.Before
	}
	return true
}
