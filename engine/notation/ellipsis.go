package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// leavesHands reads "it comes out of her hands" as the contact of somebody who
// was named and has not touched the ball: "the setter chases and it comes out of
// her hands with two contacts".
func (s *scene) leavesHands(c *clauseState, i int) {
	a := s.atoms[i]
	if !strings.HasPrefix(a.phrase, "come out of hand") && !strings.HasPrefix(a.phrase, "come out of finger") || len(s.subj) != 1 || !s.subj[0].one || len(s.evs) > c.first {
		return
	}
	w := s.subj[0]
	k := s.lastContact()
	if k < 0 || w.team != s.evs[k].Team || w.pid >= 0 && s.people[w.pid].acts || w.to <= w.from {
		return
	}
	s.touch(w, play.Touch)
	s.ballSubj, c.ball = true, true
}

// adjectival reads a contact that only says which ball is meant: "dug the
// blocked ball", "a shanked pass flies".
func (s *scene) adjectival(c *clauseState, i int) bool {
	a := &s.atoms[i]
	if a.verb != vContact || a.to-a.from > 1 || i+1 >= c.to || !strings.HasSuffix(s.toks[a.from].form, "ed") {
		return false
	}
	n := s.atoms[i+1]
	before := i > c.from && s.atoms[i-1].class == cVerb && s.atoms[i-1].verb == vContact
	switch {
	case n.class == cBall && before && n.word == "ball":
		a.used = true
		return true
	case n.class == cVerb && n.verb == vContact && s.toks[n.from].base == "" && n.art == 0 && (i == c.from || a.art != 0) && (s.ballSubj || len(s.subj) == 0 || !s.fresh):
		a.used = true
		return true
	}
	return false
}

// comesOff reports whether the first, second or third ball comes off somebody:
// that contact is the one counted.
func (s *scene) comesOff(c *clauseState, i, j int) bool {
	if !strings.HasSuffix(s.words(s.atoms[i]), "ball") || s.atoms[j].word != "off" {
		return false
	}
	for n := j + 1; n < c.to; n++ {
		switch b := s.atoms[n]; b.class {
		case cRole, cLibero, cPerson, cLabel:
			s.ballSubj, c.ball = true, true
			return true
		case cSide, cRow, cFiller:
		default:
			return false
		}
	}
	return false
}

// wallReach reads how high the hands of two were who blocked, where one of them
// touched the ball before it is told: "both have their hands above the net".
func (s *scene) wallReach(c *clauseState, i int) int {
	k := -1
	for j := i; j < c.to && k < 0; j++ {
		switch b := s.atoms[j]; {
		case b.class == cVerb && (b.verb == vReachOver || b.verb == vReachUp), b.class == cFact && (b.fact == play.Height || b.fact == play.ReachHeight) && b.value == play.Above:
			k = j
		case b.class == cFiller, b.class == cBody, b.class == cScenery, b.class == cShe, b.class == cSide:
		default:
			return 0
		}
	}
	if k < 0 {
		return 0
	}
	var mine []int
	for n := range s.evs {
		if e := s.evs[n]; e.Kind == play.Attempt || e.Kind == play.Contact && (e.Action == play.Block || e.Action == play.Touch) {
			mine = append(mine, n)
		}
	}
	who := map[int]bool{}
	for _, n := range mine {
		who[s.evs[n].who] = true
		if s.evs[n].Team != s.evs[mine[0]].Team {
			return 0
		}
	}
	if len(who) != 2 || s.evs[mine[0]].Kind != play.Attempt {
		return 0
	}
	for _, n := range mine {
		s.evs[n].set(play.ReachHeight, play.Above)
	}
	for j := i; j <= k; j++ {
		s.atoms[j].used, s.atoms[j].class = true, cFiller
	}
	s.both, s.fresh = false, false
	return k + 1
}

// alsoHits reads who was met next where the verb is not said again: "hits our
// blocker's hands, then our other blocker's hands".
func (s *scene) alsoHits(c *clauseState) {
	n := len(s.evs)
	if c.first != n || n == 0 || !s.fresh || len(s.subj) != 1 || s.evs[n-1].Kind != play.Contact || s.evs[n-1].Team != s.subj[0].team || s.subj[0].pid >= 0 && s.subj[0].pid == s.evs[n-1].who {
		return
	}
	if s.atoms[c.to-1].class != cBody || s.verbAhead(c, c.from) || s.evs[n-1].Action != play.Block && s.evs[n-1].Action != play.Touch {
		return
	}
	if first := s.atoms[c.from]; first.class != cOrder || first.id != "then" {
		return
	}
	w := s.subj[0]
	w.fresh = true
	act := play.Touch
	if w.role == play.Blocker {
		act = play.Block
	}
	s.touch(w, act)
	s.ballSubj = true
}

// thenToo reads one of a list of players whose verb is told of the last: "then
// setter, then right side hit it".
func (s *scene) thenToo(c *clauseState) {
	n := len(s.evs)
	if c.first != n || n == 0 || !s.fresh || len(s.subj) != 1 || !s.subj[0].one || s.subj[0].role == play.NoRole || s.evs[n-1].Kind != play.Contact || s.verbAhead(c, c.from) || c.mark != ',' {
		return
	}
	if first := s.atoms[c.from]; first.class != cOrder || first.id != "then" || s.evs[n-1].Team != s.subj[0].team {
		return
	}
	for i := c.from + 1; i < c.to; i++ {
		switch s.atoms[i].class {
		case cRole, cSide, cPerson, cLibero, cFiller:
		default:
			return
		}
	}
	i := c.to + 1
	if i >= len(s.atoms) || s.atoms[i].class != cOrder || s.atoms[i].id != "then" {
		return
	}
	for i++; i < len(s.atoms) && slices.Contains([]class{cRole, cSide, cPerson, cLibero, cFiller, cRow}, s.atoms[i].class); i++ {
	}
	if i < len(s.atoms) && s.atoms[i].class == cVerb && (s.atoms[i].verb == vContact || s.atoms[i].verb == vHit) {
		act := play.Touch
		if s.subj[0].role == play.Setter {
			act = play.Set
		}
		s.link = play.Before
		s.touch(s.subj[0], act)
	}
}

// farFromNet reads that the ball never came near the plane: it was on the side
// of whoever had it, and a contact of an opponent's was beyond the net.
func (s *scene) farFromNet(a *atom) bool {
	if !strings.HasSuffix(a.phrase, "plane") && !strings.Contains(a.phrase, "<net>") {
		return false
	}
	k := s.lastContact()
	if k < 1 || s.evs[k].Kind != play.Contact || s.evs[k-1].Kind != play.Contact || s.evs[k-1].Team == s.evs[k].Team {
		return false
	}
	s.evs[k].set(play.Place, play.Beyond)
	return true
}

// isAfter reports whether the 's of a word is short for "is", by the word after
// it: "the setter's in 5", "she's not", "the blocker's already down".
func isAfter(raw, next string) bool {
	if !strings.HasSuffix(plainMarks(strings.ToLower(raw)), "'s") {
		return false
	}
	switch next {
	case "already", "at", "clearly", "coming", "going", "in", "just", "not", "standing", "still", "too", "trying":
		return true
	}
	return false
}

// inSpot reads "in 5" after a player as where she plays.
func (s *scene) inSpot(c *clauseState, i int) play.Value {
	if s.atoms[i].word != "in" || i+1 >= c.to || i+2 < c.to || !s.fresh || s.ballSubj || len(s.subj) != 1 || s.atoms[i+1].class != cDigits && s.atoms[i+1].class != cCard {
		return play.Unknown
	}
	switch s.toks[s.atoms[i+1].from].raw {
	case "1", "5", "6":
		return play.Back
	case "2", "3", "4":
		return play.Front
	}
	return play.Unknown
}

// gotBlocked reads a hitter who is blocked or dug: "our outside got blocked".
// The hitter attacked, and the opponents played the ball.
func (s *scene) gotBlocked(c *clauseState, i int) bool {
	a := &s.atoms[i]
	if a.verb != vContact || a.action != play.Block && a.action != play.Dig || s.ballSubj || !s.fresh || len(s.subj) != 1 || c.deny || i == c.from || a.to-a.from > 1 {
		return false
	}
	w := s.toks[a.from].form
	if !strings.HasSuffix(w, "ed") && w != "dug" || i+1 < c.to && s.atoms[i+1].class == cBy {
		return false
	}
	switch s.toks[s.atoms[i-1].from].form {
	case "got", "gets", "was", "is", "get", "getting":
	default:
		return false
	}
	a.used = true
	t := s.subj[0].team
	if k := s.lastContact(); k < 0 || s.evs[k].Team != t || !s.evs[k].Action.Attacking() {
		s.touch(s.subj[0], play.Attack)
	}
	hitter := s.lastWho
	s.link = play.Before
	s.touch(party{team: t.Other(), pid: -1, role: play.Blocker, one: a.action == play.Block}, a.action)
	s.lastWho = hitter
	s.subj = []party{{team: t, pid: hitter, one: true}}
	s.ballSubj, c.ball = true, true
	return true
}

// allowedTo reports whether a clause asks whether somebody may do what was told
// of her: "is she allowed to touch it twice like that".
func (s *scene) allowedTo(g segment) bool {
	if len(s.evs) < 2 {
		return false
	}
	first := s.toks[s.atoms[g.from].from].form
	if !slices.Contains([]string{"is", "are", "was", "were", "can", "could", "may"}, first) {
		return false
	}
	she, allowed := false, first == "can" || first == "could" || first == "may"
	for i := g.from + 1; i < g.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cShe:
			she = she || a.word == "she" || a.word == "he"
		case cFault:
			if a.word == "allowed" || a.word == "permitted" {
				allowed = true
				continue
			}
			return false
		case cVerb:
			if !she || !allowed {
				return false
			}
			switch base(s.toks[a.from].form) {
			case "touch", "play", "do", "contact":
			default:
				return false
			}
		case cBall, cFiller, cScenery, cAsk, cSame, cOrder, cCard:
		case cFact:
			if a.fact != play.Manner && a.fact != play.Again {
				return false
			}
		default:
			return false
		}
	}
	return she && allowed
}
