package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// unknown reads a clause that says what nobody knows: "height not known",
// "libero's feet unknown", "did not see where she took off". The fact that it
// names is open, whatever would be presumed of it.
func (s *scene) unknown(g segment) bool {
	at := -1
	for i := g.from; i < g.to; i++ {
		if a := s.atoms[i]; a.class == cUnknown || a.class == cFact && a.fact == play.Seen && a.value == play.No && g.to-g.from > 1 {
			at = i
		}
	}
	if at < 0 {
		at = s.cannotSay(g)
	}
	if at < 0 || len(s.evs) == 0 {
		return false
	}
	f, ok := s.unknownFact(g)
	if !ok {
		return false
	}
	k := s.lastContact()
	role := play.NoRole
	for i := g.from; i < g.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cLibero:
			role = play.Libero
		case cRole:
			role = a.role
		}
	}
	switch f {
	case play.Order:
		if len(s.evs) < 2 { // one thing happened: before or after the ball was dead
			s.voids[play.Ball] = true
			break
		}
		s.pairAsked = true
		s.evs[len(s.evs)-1].split = true
		s.evs[len(s.evs)-1].link = play.Unknown
	case play.Row:
		p := s.lastWho
		for i := len(s.people) - 1; i >= 0; i-- {
			if role != play.NoRole && s.people[i].Role == role {
				p = i
				break
			}
		}
		if p < 0 {
			return false
		}
		s.people[p].void, s.people[p].row = true, play.Unknown
	default:
		for i := k; i >= 0 && role != play.NoRole; i-- {
			if e := s.evs[i]; e.Kind == play.Contact && e.who >= 0 && s.people[e.who].Role == role {
				k = i
				break
			}
		}
		if k < 0 || s.evs[k].Kind != play.Contact {
			return false
		}
		delete(s.evs[k].facts, f)
		s.evs[k].set(f, play.Unknown)
	}
	s.settled(g.from, g.to)
	s.heard = true
	return true
}

// unknownFact is the fact that a clause of what nobody knows is about.
func (s *scene) unknownFact(g segment) (play.FactID, bool) {
	var forms []string
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch {
		case a.class == cFact || a.class == cDoubt:
			switch a.fact {
			case play.Height, play.Place, play.TakeOff, play.Completes:
				return a.fact, true
			}
		case a.class == cPlace:
			return play.Place, true
		case a.class == cRow:
			return play.Row, true
		}
		for _, t := range s.toks[a.from:a.to] {
			forms = append(forms, t.form)
		}
	}
	for _, w := range []struct {
		words string
		fact  play.FactID
	}{
		{"height", play.Height}, {"high", play.Height}, {"top", play.Height}, {"order", play.Order}, {"first", play.Order},
		{"foot feet zone <aline> took take off takeoff", play.TakeOff}, {"row", play.Row}, {"place position side plane where", play.Place},
	} {
		for f := range strings.FieldsSeq(w.words) {
			if slices.Contains(forms, f) {
				return w.fact, true
			}
		}
	}
	if slices.Contains(forms, "who") && len(forms) > 1 && !slices.Contains(forms, "set") {
		return play.Completes, true
	}
	return "", false
}

// cannotSay finds the word of a clause that says that somebody cannot tell:
// "I honestly can't say which came first"; -1 where none does.
func (s *scene) cannotSay(g segment) int {
	not := false
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		not = not || a.class == cNot || a.class == cNobody
		if !not {
			switch a.class {
			case cFiller, cScenery, cAsk, cAround, cOfficial:
			default:
				return -1
			}
			continue
		}
		switch w := s.toks[a.to-1].form; w {
		case "say", "tell", "know", "sure", "swear", "see", "saw", "remember", "call":
			return i
		}
	}
	return -1
}
