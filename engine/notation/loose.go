package notation

import (
	"slices"
	"strings"
)

// doubtful are words of plain English that say that a thing was not what it is
// called, or only perhaps. None of them is passed over.
var doubtful = []string{"alleged", "almost", "apparent", "asserted", "fake", "faked", "feigned", "hypothetical", "imaginary", "imagined", "missing", "non", "nonexistent", "partial", "phantom", "possible", "potential", "pretend", "probable", "purported", "supposed", "unsuccessful"}

// loose reports whether a word nobody knows only describes: an adjective before
// something known ("a nasty spike"), or what somebody or something is doing in
// passing ("ducking by the net"). What touches the ball or the net is told in
// words of the trade; such a word with one of them as its object stays unread.
func (s *scene) loose(i int) bool {
	a := s.atoms[i]
	t := s.toks[a.from]
	if a.class != cNone || t.label != "" || numeric(t.form) || slices.Contains(doubtful, t.form) || len(t.form) < 3 {
		return false
	}
	if i+1 >= len(s.atoms) {
		return false
	}
	n := s.atoms[i+1]
	if a.art != 0 || i > 0 && (s.atoms[i-1].poss || s.atoms[i-1].class == cShe && (s.atoms[i-1].word == "her" || s.atoms[i-1].word == "his")) {
		switch n.class {
		case cRole, cPerson, cLibero, cBody, cBall, cThing, cFloor, cRow:
			return true
		case cVerb:
			return s.toks[n.from].base == ""
		case cFiller, cScenery:
			return false
		}
		return false
	}
	if !strings.HasSuffix(t.form, "ing") || len(t.form) < 6 {
		return false
	}
	for j := i + 1; j < len(s.atoms) && j < i+4; j++ {
		switch b := s.atoms[j]; b.class {
		case cBall, cThing, cBody, cNumber:
			return false
		case cFiller, cScenery:
			if b.class == cFiller && slices.Contains([]string{"at", "around", "beside", "by", "for", "near", "next to", "toward", "towards", "to"}, b.word) {
				return true
			}
			continue
		case cStop, cJoin:
			return true
		}
		break
	}
	return true
}
