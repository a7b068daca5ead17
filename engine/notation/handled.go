package notation

import "example.org/netpost/engine/play"

// handled reads a verb of holding whose object is not the ball: "lifts the
// hitter", "catches the tape with her hand", "throws her arms up".
func (s *scene) handled(c *clauseState, i int) (int, bool) {
	a := &s.atoms[i]
	if a.verb != vHeld || len(s.subj) == 0 || s.ballSubj {
		return i, false
	}
	for j := i + 1; j < c.to; j++ {
		switch b := &s.atoms[j]; b.class {
		case cFiller, cShe, cCard:
			continue
		case cThing:
			if base(a.word) != "catch" || b.part == play.Unknown {
				return i, false
			}
			a.used, b.used = true, true
			if !c.deny {
				s.netTouch(s.subj[0], b.part)
			}
			c.deny = false
			return j + 1, true
		case cBody:
			s.mark(i, j+1)
			return j + 1, true
		case cSide, cRole, cPerson, cMate, cLabel:
			if base(a.word) != "lift" {
				return i, false
			}
			w, k, ok := s.phrase(c, j)
			if !ok || w.team != play.NoTeam && w.team != s.subj[0].team {
				return i, false
			}
			s.mark(i, k)
			if !c.deny {
				s.support(play.Teammate)
			}
			c.deny = false
			return k, true
		default:
			return i, false
		}
	}
	return i, false
}
