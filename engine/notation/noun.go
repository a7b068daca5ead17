package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// objectNoun finds the noun of a contact that a verb has as its object: "digs
// a hard-driven attack", "touches R's set", "passes the serve". It gives the
// noun's place, and the side whose contact it was.
func (s *scene) objectNoun(c *clauseState, i int) (at int, owner play.Team, ok bool) {
	owned, adjective := false, false
	for j := i + 1; j < c.to; j++ {
		switch b := &s.atoms[j]; b.class {
		case cSide:
			if owned || !b.poss && j+1 < c.to && s.atoms[j+1].class != cVerb {
				return 0, play.NoTeam, false
			}
			owner, owned = s.team(b.side), true
		case cRole, cPerson, cLibero, cLabel, cMate:
			if !b.poss {
				return 0, play.NoTeam, false
			}
			owned = true
		case cShe:
			if b.word != "her" && b.word != "his" {
				return 0, play.NoTeam, false
			}
			owned = true
		case cRow, cScenery:
			adjective = true
		case cFiller:
			if b.word != "of" && b.word != "at" && b.word != "own" && b.word != "really" && b.word != "very" && b.word != "quick" {
				return 0, play.NoTeam, false
			}
		case cOpen:
			return j, play.NoTeam, b.id == "free"
		case cVerb:
			if j+1 < c.to && s.atoms[j+1].class == cVerb && b.verb == vContact && strings.HasSuffix(s.toks[b.from].form, "ed") && s.toks[b.from].base != "" {
				adjective = true // "ran down a shanked pass"
				continue
			}
			switch b.verb {
			case vContact, vHit, vServe, vBump:
			default:
				return 0, play.NoTeam, false
			}
			if t := s.toks[b.from]; t.base != "" && t.base != t.form && b.to-b.from == 1 {
				return 0, play.NoTeam, false // "touched it set": a verb
			}
			if b.verb == vContact && b.action == play.Touch || b.art == 0 && !owned && !adjective && j > i+1 {
				return 0, play.NoTeam, false
			}
			return j, owner, true
		default:
			return 0, play.NoTeam, false
		}
	}
	return 0, play.NoTeam, false
}

// takes reads the noun of a contact as the ball that a verb is done to, and
// tells the contact that it names where that was not told before.
func (s *scene) takes(c *clauseState, i int) {
	a := &s.atoms[i]
	j, owner, ok := s.objectNoun(c, i)
	if !ok || s.ballSubj || len(s.subj) == 0 && s.atoms[j].class != cOpen {
		return
	}
	b := &s.atoms[j]
	if base(s.toks[a.from].form) == "take" && b.action == play.Attack && owner == play.NoTeam && strings.HasPrefix(s.toks[b.from].form, "swing") {
		a.verb, a.action = vContact, b.action // "took a full swing at it"
		s.asBall(i+1, j)
		return
	}
	if b.action == play.Block && b.verb == vContact {
		return // "tools the block": it is touched after the hit
	}
	if a.verb == vHit && (b.art == 'a' || b.art == 0) && b.verb == vContact && (b.action == play.Tip || b.action == play.Attack) && owner == play.NoTeam {
		a.verb, a.action = vContact, b.action // "hits a roll shot"
		s.asBall(i+1, j)
		return
	}
	if a.verb == vContact && a.action == b.action && b.verb == vContact {
		s.asBall(i+1, j) // "sets a back set"
		return
	}
	team := play.NoTeam
	if len(s.subj) > 0 {
		team = s.subj[0].team
	}
	if s.object0(a) {
		return
	}
	switch {
	case b.class == cOpen:
		s.opening(b)
		b.used = true
	case b.verb == vServe:
		s.served(team.Other())
	default:
		action := b.action
		if b.verb == vHit {
			action = play.Attack
		}
		if owner == play.NoTeam {
			owner = s.whose(a, action, team)
		}
		s.earlier(owner, action, s.roleIn(i+1, j))
	}
	s.asBall(i+1, j)
}

// object0 reports whether a verb is one that has no ball as its object.
func (s *scene) object0(a *atom) bool {
	return a.verb == vCollide
}

// whose is the side whose contact a noun without an owner names: what is dug,
// blocked or touched at the net is the opponents', what is set or hit the own.
func (s *scene) whose(a *atom, action play.Action, team play.Team) play.Team {
	for k := len(s.evs) - 1; k >= 0; k-- {
		if e := s.evs[k]; e.Kind == play.Contact && e.Action == action {
			return e.Team
		}
	}
	switch {
	case action.Attacking():
		return team.Other()
	case a.action == play.Block || len(s.subj) > 0 && s.roleOf(s.subj[0]) == play.Blocker || s.mayReach:
		return team.Other()
	}
	return team
}

// earlier tells a contact that a noun names, unless it is told already.
func (s *scene) earlier(t play.Team, action play.Action, role play.Role) {
	for k := len(s.evs) - 1; k >= 0; k-- {
		e := s.evs[k]
		if e.Kind == play.Contact && e.Team == t && (e.Action == action || e.Action.Attacking() && action.Attacking()) &&
			(role == play.NoRole || e.who >= 0 && s.people[e.who].Role == role) {
			return
		}
	}
	w := party{team: t, pid: -1, role: role, lib: role == play.Libero, one: role != play.NoRole}
	s.aside(func() {
		s.add(play.Event{Kind: play.Contact, Team: t, Action: action}, s.settle(&w))
	})
}

// roleIn is the role that words of a noun phrase name: "the libero's set".
func (s *scene) roleIn(from, to int) play.Role {
	for _, a := range s.atoms[from:to] {
		switch a.class {
		case cLibero:
			return play.Libero
		case cRole:
			return a.role
		}
	}
	return play.NoRole
}

// served tells the serve that a noun names, unless it is told already.
func (s *scene) served(t play.Team) {
	for _, e := range s.evs {
		if e.Kind == play.Serve {
			return
		}
	}
	if len(s.evs) > 0 {
		return
	}
	s.aside(func() { s.add(play.Event{Kind: play.Serve, Team: t}, -1) })
}

// aside tells an event that was before the one in hand: what waits for that
// one waits on.
func (s *scene) aside(tell func()) {
	link, comma, last := s.link, s.comma, s.lastWho
	s.link, s.comma = play.Unknown, false
	n := len(s.evs)
	tell()
	s.evs[len(s.evs)-1].link = link
	if link == play.Unknown && comma && s.slash && n > 0 {
		s.evs[len(s.evs)-1].link = play.Before
	}
	s.link, s.comma, s.lastWho = play.Before, false, last
}

// asBall makes the words of a noun phrase mean the ball.
func (s *scene) asBall(from, at int) {
	for k := from; k <= at; k++ {
		b := &s.atoms[k]
		b.used = true
		b.meaning = filler()
		b.poss = false
	}
	s.atoms[at].meaning = of(cBall)
}

// bareRun reports whether a verb's bare form stands as a noun at the head of
// its clause: "they touch it together, then dig, set, hit".
func (s *scene) bareRun(c *clauseState, i int) bool {
	a := s.atoms[i]
	if a.verb != vContact && a.verb != vHit && a.verb != vBump || a.verb == vContact && a.action == play.Touch || a.to-a.from > 1 {
		return false
	}
	if t := s.toks[a.from]; t.base != "" && t.base != t.form {
		return false
	}
	for j := c.from; j < i; j++ {
		if b := s.atoms[j]; b.class != cOrder && b.class != cFiller && b.class != cScenery || b.word == "to" && j == i-1 {
			return false
		}
	}
	if i+1 < c.to {
		switch s.atoms[i+1].class {
		case cBall, cSide, cShe, cMate, cRole, cPerson:
			return false
		}
	}
	if s.ballSubj || len(s.subj) == 0 {
		return len(s.evs) > 0
	}
	if !s.subj[0].one && len(s.subj) == 1 {
		return !s.plural(s.subj[0])
	}
	p := s.prevVerb(i)
	if p < 0 {
		return true
	}
	if a.word == "set" || a.word == "hit" {
		t := s.toks[s.atoms[p].from]
		_, odd := irregular[t.form]
		past := odd && t.form != "goes" && t.form != "flies" && t.form != "carries" && t.form != "tries" || len(t.form) > 3 && t.form[len(t.form)-2:] == "ed"
		return !past
	}
	return true
}

// plural reports whether a side's name takes the bare form as its verb: "we
// set", "they hit".
func (s *scene) plural(w party) bool {
	if w.from >= w.to || w.from < 0 {
		return true
	}
	a := s.atoms[w.from]
	return a.class == cSide && (a.side.fam == usThem || a.side.fam == relative)
}

// prevVerb is the verb before an atom, -1 for none.
func (s *scene) prevVerb(i int) int {
	for j := i - 1; j >= 0; j-- {
		if s.atoms[j].class == cVerb && (s.atoms[j].verb == vContact || s.atoms[j].verb == vTouch || s.atoms[j].verb == vHit || s.atoms[j].verb == vUp) {
			return j
		}
	}
	return -1
}
