package notation

import "slices"

// chatter reads a clause in which nothing happens: who was there, what somebody
// says of the call, how people felt. What is said of a call sets aside what
// would else be presumed of it, and is no fact.
func (s *scene) chatter(g segment) bool {
	talk, side, scene := false, false, false
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
		case cCall:
			talk = talk || a.word == "say" || a.word == "says" || a.word == "said" || a.word == "rule" || a.word == "rules"
		case cSide:
			if a.poss && !s.aloof(g, i) {
				return false // a player of that side
			}
			side = side || !a.poss
		case cScenery:
			scene = true
		case cOrder:
			if a.id == "unsure" || a.id == "first" {
				return false
			}
		case cUsed:
			if !talk {
				return false
			}
		case cFiller, cAsk, cShe, cPoint, cCode, cElse, cEvidence, cNot, cNobody, cBall, cPerson, cDigits, cTopic, cMate, cUnknown:
		default:
			return false
		}
	}
	only := g.to-g.from == 1 && side && len(s.evs) > 0 && g.from > 0 && s.atoms[g.from-1].id == "or" // "us or them?"
	last := g.to == len(s.atoms) || g.mark == '.' || g.mark == '?' || g.mark == ';'                  // what follows has a subject of its own
	if !talk && !only && !(last && side && (scene && len(ids) == 0 || g.mark != '?' && len(ids) > 0 && len(ids) == count(ids, "play-on"))) {
		return false
	}
	has := func(cs ...class) bool {
		return slices.ContainsFunc(s.atoms[g.from:g.to], func(a atom) bool { return slices.Contains(cs, a.class) })
	}
	called := has(cOfficial) && has(cCall, cFault) && !has(cClaim, cAround, cNot, cNobody)
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
		if s.contacts() == 0 { // said before the play is told
			s.early = append(s.early, id)
		}
		s.touchedBy(id)
		if called && !slices.Contains(s.calls, id) {
			s.calls = append(s.calls, id)
		}
	}
	return true
}

func count(ids []string, id string) int {
	n := 0
	for _, x := range ids {
		if x == id {
			n++
		}
	}
	return n
}

// aloof reports whether what a possessive owns is somebody or something that
// takes no part in the play: "our coach", "their call".
func (s *scene) aloof(g segment, i int) bool {
	for i++; i < g.to; i++ {
		switch a := s.atoms[i]; {
		case a.class == cScenery:
		case a.class == cOfficial, a.class == cPoint, a.class == cBall, s.bystander(i), s.claimed(g, i) != "":
			return true
		default:
			return a.class == cCall || a.class == cAsk
		}
	}
	return i == g.to
}

// bystander reports whether a word names people around the court, though it
// is the name of a thing too: "the bench yells".
func (s *scene) bystander(i int) bool {
	a := s.atoms[i]
	switch a.word {
	case "bench", "captain", "captains", "coach", "scorer", "scorekeeper", "coaches", "crowd", "fan", "fans", "spectator", "spectators", "stand", "stands", "table":
		return a.class == cThing || a.class == cTopic || a.class == cEvidence
	}
	return a.class == cAround
}

// claimed is the call that a word names in what somebody says; a bare 4 or 2,
// a row, or where the ball went too, where a claim stands before it.
func (s *scene) claimed(g segment, i int) string {
	a := s.atoms[i]
	if id := faultOf(a); id != "" {
		return id
	}
	said := false
	for j := g.from; j < i; j++ {
		said = said || s.atoms[j].class == cClaim || s.atoms[j].class == cCall
	}
	switch {
	case !said:
	case a.class == cCard && (i+1 >= g.to || s.atoms[i+1].class == cFiller || s.atoms[i+1].class == cAsk):
		return map[int]string{2: "double-contact", 4: "four-contacts"}[a.n]
	case a.class == cVerb && a.word == "touch" && i+1 >= g.to:
		return "illegal" // a touch of the block, which is told or not
	case a.class == cDigits:
		return map[string]string{"2": "double-contact", "4": "four-contacts"}[a.word]
	case a.class == cRow && a.value == "back":
		return "back-row-attack"
	case a.class == cDest && (a.dest == dOut || a.dest == dWide):
		return "ball-out"
	}
	return ""
}

// silent reports whether somebody of the crew does nothing in a clause that
// could matter: blows the whistle, makes a call, stops the play.
func (s *scene) silent(c *clauseState, i int) bool {
	for j := i + 1; j < c.to; j++ {
		a := s.atoms[j]
		if a.class == cNot || a.class == cClaim || a.class == cAsk || a.class == cVerb && a.verb != vWhistle || a.class == cNone {
			return false
		}
	}
	for j := c.from; j < i; j++ {
		if a := s.atoms[j]; a.class == cVerb || a.class == cInto {
			return false
		}
	}
	return true
}
