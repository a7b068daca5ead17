package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// askedIf reads the head of "is it a lift if the libero digs it with an open
// hand": the call is what is asked, and the play comes after it. It gives the
// place where the play begins.
func (s *scene) askedIf(g segment) int {
	if !slices.Contains([]string{"is", "would", "do", "does", "could", "isnt", "are", "what"}, s.toks[s.atoms[g.from].from].form) {
		return g.from
	}
	ids := []string{}
	for i := g.from; i < g.to && i < g.from+8; i++ {
		a := s.atoms[i]
		switch {
		case (a.class == cFiller && a.word == "if" || a.class == cOrder && a.id == "when") && i+1 < g.to && i > g.from:
			if len(ids) == 0 {
				return g.from
			}
			for j := g.from; j <= i; j++ {
				s.atoms[j].used = true
			}
			for _, id := range ids {
				if id != "illegal" && id != "play-on" {
					s.early = append(s.early, id)
				}
				s.want(id)
			}
			return i + 1
		case a.class == cVerb && a.verb == vContact && a.art == 'a' && s.storyAfter(g):
			continue // "is a kick legal if": the play is told after the question
		case faultOf(a) != "":
			ids = append(ids, faultOf(a))
		case a.class == cFiller, a.class == cAsk, a.class == cBall, a.class == cCall, a.class == cScenery, a.class == cJoin:
		case a.class == cSide && !a.poss && a.side.fam == usThem, a.class == cShe && (a.word == "she" || a.word == "he"):
		default:
			return g.from
		}
	}
	return g.from
}

// beforeThat reads a clause that ends "before that": what it tells came before
// the last thing told.
func (s *scene) beforeThat(c *clauseState, a *atom) bool {
	n := len(s.evs)
	if n != c.first+1 || n < 2 {
		return false
	}
	for i := c.from; i < c.to; i++ {
		if b := s.atoms[i]; b.from > a.from && (b.class != cFiller && b.class != cScenery || !slices.Contains([]string{"that", "though", "then", "still", "already", "also"}, b.word)) {
			return false
		}
	}
	last := s.evs[n-1]
	s.evs[n-1], s.evs[n-2] = s.evs[n-2], last
	s.evs[n-2].link, s.evs[n-1].link = s.evs[n-1].link, play.Before
	if n == 2 {
		s.evs[0].link = play.Unknown
	}
	return true
}

// herParts makes the touch of somebody who went for the ball and whose parts it
// then hit: "the setter chases it and it hits her arms then her chest".
func (s *scene) herParts(from, to int) bool {
	if len(s.subj) != 1 || !s.subj[0].one || s.subj[0].pid >= 0 && s.people[s.subj[0].pid].acts || s.subj[0].to <= s.subj[0].from {
		return false
	}
	k := s.lastContact()
	if k < 0 || k != len(s.evs)-1 || s.evs[k].Kind != play.Contact {
		return false
	}
	for i := from; i < to; i++ {
		if a := s.atoms[i]; a.class == cShe && (a.word == "her" || a.word == "his") {
			s.touch(s.subj[0], play.Touch)
			return true
		}
	}
	return false
}

// gotHit reads a player whom the ball hit: "our kid got hit in the face by
// their spike".
func (s *scene) gotHit(c *clauseState, i int) int {
	a := &s.atoms[i]
	if t := s.toks[a.from]; t.form != "hit" && t.form != "struck" || s.ballSubj || !s.fresh || len(s.subj) != 1 || i == c.from || c.deny {
		return 0
	}
	switch s.toks[s.atoms[i-1].from].form {
	case "got", "gets", "was", "is", "getting":
	default:
		return 0
	}
	w, end := s.subj[0], i+1
	for j := i + 1; j < c.to; j++ { // "by their spike": what hit her was before
		if b := &s.atoms[j]; b.class == cBy {
			b.used = true
			for j++; j < c.to; j++ {
				switch b := &s.atoms[j]; {
				case b.class == cSide, b.class == cScenery, b.class == cFiller, b.class == cRole && b.poss:
					b.used = true
					continue
				case b.class == cVerb && (b.verb == vContact || b.verb == vHit):
					b.used, b.class = true, cFiller
					act := b.action
					if b.verb == vHit {
						act = play.Attack
					}
					s.earlier(w.team.Other(), act, play.NoRole)
				case b.class == cBall:
					b.used, b.class = true, cFiller
				}
				break
			}
			end = min(j+1, c.to)
			break
		}
	}
	a.used = true
	s.touch(w, play.Touch)
	s.ballSubj, c.ball = true, true
	return end
}

// insteadOf passes over what somebody did not do: "threw it over instead of
// hitting it". It gives the place after it, 0 where nothing is put aside.
func (s *scene) insteadOf(c *clauseState, i int) int {
	if i < c.from+2 || s.atoms[i-1].word != "of" || s.atoms[i-2].word != "instead" {
		return 0
	}
	j := i + 1
	for j < c.to && (s.atoms[j].class == cBall || s.atoms[j].class == cFiller || s.atoms[j].class == cDest || s.atoms[j].class == cShe) {
		j++
	}
	s.settled(i, j)
	return j
}
