package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// harmless makes scenery of what was not read and cannot change what happened:
// how something was done, how far or how many steps, a sentence in which nobody
// of the play and no ball is named. The words stay listed.
func (s *scene) harmless() {
	for _, g := range s.sentences() {
		if s.idle(g) {
			for i := g.from; i < g.to; i++ {
				s.asScenery(i)
			}
		}
	}
	for i := range s.atoms {
		a := &s.atoms[i]
		if a.used || a.class == cStop || a.class == cJoin {
			continue
		}
		if a.class == cFloor && i+1 < len(s.atoms) && s.atoms[i+1].class == cDigits && !s.atoms[i+1].used { // "court 40"
			a.class, s.atoms[i+1].class = cScenery, cScenery
			continue
		}
		switch {
		case (a.class == cDest || a.class == cPlace) && s.whileLive(i):
			a.class = cScenery
		case a.class == cNone && s.manner(i), s.measured(i), s.loose(i):
			a.class = cScenery
		case a.class == cSide && a.poss && s.ownsScenery(i):
			a.class = cScenery
		case s.passerBy(i):
		case a.class == cBy && s.nearBy(i):
			a.class = cScenery
		case a.class == cOfficial && s.idler(i):
			a.class = cScenery
		case a.class == cCall || a.class == cClaim || a.class == cAsk:
			if s.talkOnly(i) {
				a.class = cScenery
			}
		case a.class == cSide && !a.poss, a.class == cPerson, a.class == cFloor && i > 0 && s.atoms[i-1].poss, a.class == cSide && i+1 < len(s.atoms) && s.atoms[i+1].class == cFloor:
			if s.onlyNamed(i) {
				a.class = cScenery
			}
		case a.class == cRole && s.knownRole(i):
			a.class = cScenery
		}
	}
}

// asScenery makes scenery of a word that nobody knows or that was not used.
func (s *scene) asScenery(i int) {
	if a := &s.atoms[i]; !a.used && (a.class == cNone || a.class == cClaim || a.class == cCall || a.class == cAsk || a.class == cDigits || a.class == cAround || a.class == cCard) {
		a.class = cScenery
	}
}

// sentences are the stretches between full stops and question marks.
func (s *scene) sentences() []segment {
	var out []segment
	from := 0
	for i, a := range s.atoms {
		if a.class == cStop && a.mark != ',' {
			if i > from {
				out = append(out, segment{from: from, to: i, mark: a.mark})
			}
			from = i + 1
		}
	}
	if from < len(s.atoms) {
		out = append(out, segment{from: from, to: len(s.atoms)})
	}
	return out
}

// idle reports whether a sentence names nobody of the play, no ball, no thing
// and nothing that happens. One word alone may be a verb, and is not idle.
func (s *scene) idle(g segment) bool {
	words := 0
	for i := g.from; i < g.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cNone:
			words++
		case cFiller, cScenery, cAround, cStop, cJoin, cCode, cElse, cEvidence, cPoint, cAsk, cClaim, cDigits, cOfficial, cNot:
		default:
			return false
		}
	}
	return words > 0 && g.to-g.from > 1
}

// weightyAdverbs end like those that say only how something was done, and say
// more: how much, how often, how sure.
var weightyAdverbs = []string{"barely", "hardly", "illegally", "improperly", "nearly", "partially", "partly", "rarely", "scarcely", "simultaneously", "supposedly", "unlawfully"}

// manner reports whether a word nobody knows only says how something was done.
func (s *scene) manner(i int) bool {
	w := s.toks[s.atoms[i].from].form
	return len(w) > 4 && strings.HasSuffix(w, "ly") && !slices.Contains(weightyAdverbs, w)
}

// measures are what distance, time and steps are counted in.
var measures = []string{"beat", "couple", "cm", "feet", "foot", "ft", "hour", "inch", "inches", "meter", "meters", "metre", "metres", "minute", "minutes", "row", "rows", "sec", "seconds", "step", "steps", "yard", "yards"}

// measured reports whether a number or its unit says how far, how long or how
// many steps: "five meters away", "two steps in front of", "by a yard".
func (s *scene) measured(i int) bool {
	unit := func(j int) bool {
		return j < len(s.atoms) && slices.Contains(measures, s.toks[s.atoms[j].from].form)
	}
	a := s.atoms[i]
	switch a.class {
	case cDigits, cCard:
		j := i + 1
		for j < len(s.atoms) && (s.atoms[j].class == cScenery || s.atoms[j].class == cNone && !unit(j)) {
			j++
		}
		return unit(j) || j < len(s.atoms) && s.atoms[j].class == cBody && a.n != 1
	case cBy:
		j := i + 1
		for j < len(s.atoms) && (s.atoms[j].class == cScenery || s.atoms[j].class == cFiller || s.atoms[j].class == cDigits || s.atoms[j].class == cCard) {
			j++
		}
		return unit(j) && !s.atoms[j].used
	case cNone, cVerb, cBody:
		if !unit(i) || i == 0 {
			return false
		}
		p := s.atoms[i-1]
		return p.class == cDigits || p.class == cCard || a.art == 'a' || a.class == cNone
	}
	return false
}

// ownsScenery reports whether a side owns something that takes no part: "our
// mens match", "their gym".
func (s *scene) ownsScenery(i int) bool {
	n := 0
	for j := i + 1; j < len(s.atoms); j++ {
		switch s.atoms[j].class {
		case cScenery, cAround:
			n++
			continue
		case cNone:
			n++
			continue
		}
		break
	}
	if n == 0 {
		return false
	}
	k := i + n + 1
	return k >= len(s.atoms) || s.atoms[k].class != cPerson && s.atoms[k].class != cRole && s.atoms[k].class != cVerb && s.atoms[k].class != cBall
}

// clauseOf is the clause in which an atom stands, joining words not counted.
func (s *scene) clauseOf(i int) (from, to int) {
	from, to = i, i+1
	for from > 0 && s.atoms[from-1].class != cStop {
		from--
	}
	for to < len(s.atoms) && s.atoms[to].class != cStop {
		to++
	}
	return from, to
}

// idler reports whether somebody of the crew is told of in a clause with no
// whistle, and with nothing else unread that could be a call or an act.
func (s *scene) idler(i int) bool {
	from, to := s.clauseOf(i)
	for j := from; j < to; j++ {
		switch a := s.atoms[j]; {
		case a.class == cVerb && (a.verb == vWhistle || !a.used), a.class == cFault && !a.used, a.class == cNot && !a.used, a.class == cNone && strings.HasPrefix(a.word, "blew"):
			return false
		}
	}
	return true
}

// talkOnly reports whether everything else unread in the clause of a word of
// talk is talk too: nothing that happens hangs on it.
func (s *scene) talkOnly(i int) bool {
	from, to := s.clauseOf(i)
	for j := from; j < to; j++ {
		a := s.atoms[j]
		if a.used {
			continue
		}
		switch a.class {
		case cCall, cClaim, cAsk, cFiller, cScenery, cAround, cStop, cJoin, cOfficial, cDigits, cPoint, cEvidence, cCode, cElse:
		case cShe, cPerson:
		case cSide:
			if a.poss {
				return false
			}
		default:
			return false
		}
	}
	return true
}

// knownRole reports whether a role names once more somebody of the play, in a
// clause in which nothing else was left unread.
func (s *scene) knownRole(i int) bool {
	a := s.atoms[i]
	t := play.NoTeam
	if i > 0 && s.atoms[i-1].class == cSide && s.atoms[i-1].poss {
		t = s.team(s.atoms[i-1].side)
	}
	known := false
	for _, p := range s.people {
		known = known || p.acts && p.Role == a.role && (t == play.NoTeam || t == p.Team)
	}
	from, to := s.clauseOf(i)
	for j := from; j < to && !known; j++ {
		switch b := s.atoms[j]; b.class {
		case cStop, cJoin, cFiller, cScenery, cSide, cRole, cNot, cShe:
		default:
			return false // somebody does something
		}
	}
	for j := from; j < to; j++ {
		if b := s.atoms[j]; !b.used && j != i && b.class != cFiller && b.class != cScenery && b.class != cShe && b.class != cStop && b.class != cJoin && !(b.class == cSide && j == i-1) && b.class != cBy {
			return false
		}
	}
	return true
}

// onlyNamed reports whether a side, a person or half of the court is named in a
// clause in which nothing else that could matter was left unread: they do
// nothing there that was told.
func (s *scene) onlyNamed(i int) bool {
	from, to := s.clauseOf(i)
	place := s.atoms[i].class == cFloor || i+1 < to && s.atoms[i+1].class == cFloor
	contact := false
	for j := from; j < to; j++ {
		b := s.atoms[j]
		contact = contact || b.used && b.class == cVerb && b.verb == vContact
		switch b.class {
		case cStop, cJoin, cFiller, cScenery, cAround, cShe, cSide, cPerson, cFloor, cOfficial, cMate:
			continue
		case cNone:
			if s.telling(j) && !s.manner(j) {
				return false
			}
			continue
		case cVerb:
			if !b.used && b.verb != vGo {
				return false
			}
			continue
		}
		if !b.used {
			return false
		}
	}
	if place {
		return contact // where the ball then went
	}
	for j := from; j < to; j++ { // "B blocker" is somebody
		if b := s.atoms[j]; b.class == cVerb && !b.used || b.class == cNot && !b.used {
			return false
		}
	}
	return true
}

// whileLive reports whether a place is told in a clause that says only that the
// ball was still live: "it was still being played on their side".
func (s *scene) whileLive(i int) bool {
	from, to := s.clauseOf(i)
	live := false
	for j := from; j < to; j++ {
		switch b := s.atoms[j]; b.class {
		case cFact:
			if b.fact != play.Ball {
				return false
			}
			live = b.used
		case cVerb, cRole, cPerson, cThing, cBody:
			return false
		}
	}
	return live
}
