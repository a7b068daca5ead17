package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// stays reads a ball that stays on a side: it did not cross.
func (s *scene) stays(t play.Team) {
	k := s.lastContact()
	if k < 0 || s.evs[k].Kind != play.Contact {
		return
	}
	if s.evs[k].Action == play.Block || s.evs[k].Action == play.Press {
		s.on = t
		return
	}
	if s.evs[k].Team == t {
		s.evs[k].set(play.Completes, play.No)
		s.on = t
	}
}

// inNet reports whether "in the net" is said of the one who acted: "swings and
// is in the net with her arm".
func (s *scene) inNet(c *clauseState, a *atom) bool {
	if a.dest != dNet || s.ballSubj || len(s.subj) == 0 {
		return false
	}
	if b := &s.atoms[c.from]; b.class == cFiller && !strings.Contains(a.word, "hit") {
		switch s.toks[b.from].form {
		case "is", "are", "was", "were", "get", "got", "gets":
			return true
		}
	}
	return false
}

// contactOn reads the side on which a contact was: "blocks it on A's side".
func (s *scene) contactOn(c *clauseState, a *atom, h *happening, t play.Team, at int) {
	switch {
	case h.facts[play.Place] != play.Unknown:
		a.used = false
	case at >= c.first || s.atoms[c.from].class == cVerb && base(s.atoms[c.from].word) == "contact":
		if h.Team == t {
			h.set(play.Place, play.Own)
		} else {
			h.set(play.Place, play.Beyond)
		}
	case h.Team == t && s.ballSubj:
		s.stays(t)
	default:
		a.used = false
	}
}
