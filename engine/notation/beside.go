package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// standsBy reports whether the one named at i is only whom the subject stands
// or goes beside: "the libero stands beside the blocker and jumps".
func (s *scene) standsBy(c *clauseState, i int) bool {
	p := s.atoms[i-1]
	if !slices.Contains([]string{"beside", "alongside", "near", "behind"}, p.word) {
		return false
	}
	for j := i - 2; j >= c.from; j-- {
		switch a := s.atoms[j]; {
		case a.class == cVerb:
			return a.verb == vGo || a.verb == vUp
		case a.class == cFiller, a.class == cScenery:
		default:
			return false
		}
	}
	return false
}

// setFor reads whom a set is for, where no "to" stands before the name: "sets
// our outside". It gives the place after the name, 0 where somebody acts.
func (s *scene) setFor(c *clauseState, start, end int) int {
	n := len(s.evs)
	if start <= c.from || n == c.first || n == 0 {
		return 0
	}
	v := s.atoms[start-1]
	if v.class != cVerb || v.action != play.Set || v.verb != vContact || strings.HasSuffix(s.words(v), " it") {
		return 0
	}
	e := &s.evs[n-1]
	if e.Kind != play.Contact || e.Action != play.Set || s.verbAhead(c, end) {
		return 0
	}
	e.set(play.Completes, play.No)
	s.settled(start, end)
	return end
}

// handsOver reads where the hands of a block are: "her hands were well on their
// side".
func (s *scene) handsOver(c *clauseState, a *atom, t play.Team) bool {
	hand := false
	for i := c.from; i < c.to && s.atoms[i].from < a.from; i++ {
		switch b := s.atoms[i]; b.class {
		case cBody:
			hand = b.value == play.Hand || s.toks[b.from].base == "arm" || b.word == "arm"
		case cVerb, cBall, cDest, cThing:
			return false
		}
	}
	k := s.lastContact()
	if !hand || k < 0 {
		return false
	}
	a.used = true
	for ; k >= 0; k-- {
		if e := &s.evs[k]; (e.Kind == play.Contact || e.Kind == play.Attempt) && e.Team == t.Other() {
			if _, told := e.facts[play.ReachHeight]; !told {
				e.set(play.ReachHeight, play.Above) // whose hands are across reaches over the net
			}
			break
		}
	}
	return true
}

// meetsHer reports whether a hit named by a noun is what then meets a player
// already named: "the spike hit her in the head".
func (s *scene) meetsHer(c *clauseState, a *atom) bool {
	n := s.after(c, a)
	if n == nil {
		return false
	}
	if n.class == cCaution {
		return s.toks[n.from].base == "hit" || s.toks[n.from].form == "hit"
	}
	if n.class != cVerb || n.verb != vHit && n.verb != vTouch {
		return false
	}
	m := s.after(c, n)
	return m != nil && m.class == cShe
}

// goingFor reports whether the one run into was on the way to the ball.
func (s *scene) goingFor(c *clauseState, i int) bool {
	for ; i < c.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cBall:
			return true
		case cNumber:
			return s.goesFor(c, i)
		}
	}
	return false
}

// maxim reads what somebody holds to be the rule at large: "they say she can't
// use her hands ever". It tells nothing of the play.
func (s *scene) maxim(g segment) bool {
	if s.allowedTo(g) {
		s.settled(g.from, g.to)
		return true
	}
	claim, modal := -1, -1
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch {
		case claim < 0 && (a.class == cClaim || a.class == cCall && strings.HasPrefix(a.word, "sa")):
			claim = i
		case claim < 0 && (a.class == cVerb || a.class == cThing && !s.bystander(i) || a.class == cRole || a.class == cLibero || a.class == cNumber):
			return false
		case claim >= 0 && modal < 0 && (a.class == cAsk && (a.word == "can" || a.word == "may") || a.class == cFault && (a.word == "allowed" || a.word == "permitted")):
			modal = i
		}
	}
	if claim < 0 || modal < 0 || modal-claim > 5 || len(s.evs) == 0 {
		return false
	}
	for i := g.from; i < g.to; i++ {
		s.atoms[i].used = true
	}
	s.settled(g.from, g.to)
	return true
}

// sheDid is the contact told last where a clause with no verb of its own says
// more of who made it: "our libero sets the outside, she was behind the line".
// It is -1 where the one named has yet to act.
func (s *scene) sheDid(c *clauseState, f play.Fact) int {
	if len(s.subj) != 1 || s.subj[0].pid < 0 {
		return -1
	}
	she := false
	for i := c.from; i < c.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cVerb:
			return -1
		case cShe:
			she = she || a.word == "she" || a.word == "he"
		}
	}
	k := s.lastContact()
	if !she || k < 0 || k != len(s.evs)-1 || s.evs[k].who != s.subj[0].pid || !slices.Contains(f.Kinds, s.evs[k].Kind) {
		return -1
	}
	return k
}

// ownBody makes one person of the asker's own parts: "hits my foot first and
// then my arm".
func ownBody(as []atom) {
	seen := false
	for i := range as {
		a := &as[i]
		if a.class != cSide || !a.poss || a.side != (sideRef{usThem, 0}) || i+1 >= len(as) || as[i+1].class != cBody {
			if a.class == cStop && a.mark != ',' {
				seen = false
			}
			continue
		}
		if seen {
			a.meaning, a.side, a.poss, a.word = of(cShe), sideRef{}, false, "her"
		}
		seen = true
	}
}

// passerBy makes scenery of a player who is named and of whom nothing is told
// but where she is or that she plays on: "B's libero, far away, keeps playing".
func (s *scene) passerBy(i int) bool {
	a := s.atoms[i]
	if a.class != cRole && a.class != cLibero {
		return false
	}
	from, to := i, i+1
	for from > 0 && (s.atoms[from-1].class != cStop || s.atoms[from-1].mark == ',') && s.atoms[from-1].class != cJoin {
		from--
	}
	for to < len(s.atoms) && (s.atoms[to].class != cStop || s.atoms[to].mark == ',') && s.atoms[to].class != cJoin {
		to++
	}
	for j := from; j < to; j++ {
		switch b := s.atoms[j]; b.class {
		case cStop, cFiller, cScenery, cRole, cLibero, cPerson, cRow:
		case cFault:
			if b.id != "play-on" {
				return false // "keeps playing"
			}
		case cSide:
			if !b.poss {
				return false
			}
		case cVerb:
			if b.verb != vGo || b.word == "stand" {
				return false
			}
		default:
			return false
		}
	}
	for j := from; j < to; j++ {
		if b := &s.atoms[j]; !b.used && (b.class == cSide || b.class == cRole || b.class == cLibero || b.class == cPerson || b.class == cVerb) {
			b.class = cScenery
		}
	}
	return true
}
