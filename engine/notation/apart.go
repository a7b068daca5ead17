package notation

import "example.org/netpost/engine/play"

// elsewhere reads a fact whose words say something else where they stand:
// "letting go" of a ball, "in the play" of who touches the net, "on purpose"
// where nobody touches it.
func (s *scene) elsewhere(a *atom, f play.FactID) bool {
	n := len(s.evs)
	switch f {
	case play.Holding:
		for _, e := range s.evs {
			if e.Kind == play.Support {
				return false
			}
		}
		return s.contacts() > 0
	case play.Playing:
		if n > 0 && s.evs[n-1].Kind != play.NetTouch && s.willed(a) {
			return true
		}
	case play.Ball:
		if a.word == "in play" && n > 0 && s.evs[n-1].Kind == play.NetTouch && s.toks[a.to-1].art == 't' {
			for k := n - 1; k >= 0 && s.evs[k].Kind == play.NetTouch; k-- {
				s.evs[k].set(play.Playing, play.Yes)
			}
			return true
		}
	}
	return false
}

// willed reports whether the words say only that somebody meant to do it.
func (s *scene) willed(a *atom) bool {
	switch a.word {
	case "on purpose", "purposely", "intentionally", "deliberately":
		return true
	}
	return false
}

// retold reports whether a sentence that begins with a verb and names nobody
// tells again of the contact told last.
func (s *scene) retold(c *clauseState, a *atom, noun bool) bool {
	k := len(s.evs) - 1
	if noun || s.fresh || k < 0 || k >= c.first || s.link != play.Unknown || s.again(c) || len(s.subj) != 1 || !s.subj[0].one {
		return false
	}
	if s.atoms[c.from].from != a.from || c.from == 0 || s.atoms[c.from-1].mark != '.' {
		return false
	}
	e := s.evs[k]
	return e.Kind == play.Contact && e.who >= 0 && e.who == s.subj[0].pid && !e.Action.Attacking() && !a.action.Attacking()
}

func (s *scene) evsBy(t play.Team) bool {
	for _, e := range s.evs {
		if e.Team == t && e.Kind == play.Contact {
			return true
		}
	}
	return false
}

// action0 reports whether a verb does not say what kind of contact it is.

func action0(a *atom) bool { return a.action == play.Touch && a.verb == vSend }
