package notation

import "slices"

// chatter reads a clause in which nothing happens: who was there, what somebody
// says of the call, how people felt. What is said of a call sets aside what
// would else be presumed of it, and is no fact.
func (s *scene) chatter(g segment) bool {
	talk := false
	var ids []string
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		if id := s.claimed(g, i); id != "" {
			ids = append(ids, id)
			continue
		}
		if s.bystander(i) {
			talk = true
			continue
		}
		switch a.class {
		case cClaim, cOfficial:
			talk = true
		case cFiller, cScenery, cAsk, cCall, cShe, cPoint, cCode, cElse, cEvidence, cNot, cNobody, cBall, cSide, cPerson, cDigits, cTopic, cMate:
		default:
			return false
		}
	}
	if !talk {
		return false
	}
	called := slices.ContainsFunc(s.atoms[g.from:g.to], func(a atom) bool { return a.class == cOfficial }) &&
		!slices.ContainsFunc(s.atoms[g.from:g.to], func(a atom) bool { return a.class == cClaim || a.class == cAround })
	for i := g.from; i < g.to; i++ {
		a := &s.atoms[i]
		switch {
		case s.claimed(g, i) != "":
			a.used = true
		case a.class == cTopic && s.bystander(i):
			a.used = true
			s.asides++
		case a.class != cTopic && a.class != cDigits && s.known(i):
			a.used = true
		}
	}
	for _, id := range ids {
		if id == "illegal" {
			continue
		}
		s.touchedBy(id)
		if called && !slices.Contains(s.calls, id) {
			s.calls = append(s.calls, id)
		}
	}
	return true
}

// bystander reports whether a word names people around the court, though it
// is the name of a thing too: "the bench yells".
func (s *scene) bystander(i int) bool {
	a := s.atoms[i]
	switch a.word {
	case "bench", "captain", "captains", "coach", "coaches", "crowd", "fan", "fans", "spectator", "spectators", "stand", "stands", "table":
		return a.class == cThing || a.class == cTopic || a.class == cEvidence
	}
	return a.class == cAround
}

// claimed is the call that a word names in what somebody says; a bare 4 or 2
// too, where a claim stands before it.
func (s *scene) claimed(g segment, i int) string {
	a := s.atoms[i]
	if a.class == cDigits {
		for j := g.from; j < i; j++ {
			if s.atoms[j].class == cClaim || s.atoms[j].class == cCall {
				return map[string]string{"2": "double-contact", "4": "four-contacts"}[a.word]
			}
		}
		return ""
	}
	return faultOf(a)
}
