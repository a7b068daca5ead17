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

// pasts are past forms of plain verbs that do not end in -ed. Sorted.
var pasts = []string{"bent", "bit", "bled", "bound", "bred", "built", "burnt", "burst", "cast", "clung", "cost", "cut", "dealt", "drank", "felt", "fled", "fought", "froze", "gave", "ground", "heard", "hid", "hurt", "kept", "knelt", "laid", "leant", "led", "let", "lost", "met", "paid", "put", "quit", "read", "rid", "rode", "rose", "sank", "saw", "sewn", "shed", "shone", "shrank", "shut", "slept", "slew", "slit", "snuck", "sped", "spent", "spilt", "spit", "split", "spread", "stank", "stole", "stung", "strode", "swam", "swept", "swore", "taught", "thrust", "trod", "upset", "wept", "woke", "wore", "wove", "wrung"}

// verbal reports whether a word nobody knows can be a verb where it stands: it
// has the ending of one, or stands after many, after "to" or after an auxiliary.
func (s *scene) verbal(i int) bool {
	w := s.toks[s.atoms[i].from].form
	for _, end := range []string{"s", "ed", "ing", "ew", "uck", "ought", "ung", "ang", "ept", "oke", "ove", "ook", "ank", "ode"} {
		if strings.HasSuffix(w, end) && !strings.HasSuffix(w, "ss") {
			return true
		}
	}
	if slices.Contains(pasts, w) || i == 0 {
		return true
	}
	for j := i - 1; j >= 0; j-- {
		switch p := s.atoms[j]; p.class {
		case cScenery, cCard:
			continue
		case cFiller, cAsk, cNot:
			switch p.word {
			case "can", "could", "did", "do", "does", "i", "may", "might", "must", "not", "should", "to", "who", "will", "would", "you":
				return true
			}
			if p.class == cFiller {
				return false
			}
			return true
		case cSide:
			return !p.poss
		case cBoth, cNobody, cBody:
			return true
		case cRole, cPerson, cMate:
			return strings.HasSuffix(s.toks[p.to-1].form, "s")
		}
		return false
	}
	return true
}

// nearBy reports whether "by" says where something is, and not who does it: "the
// ball by her waist", "by the antenna".
func (s *scene) nearBy(i int) bool {
	if i+1 >= len(s.atoms) {
		return false
	}
	switch n := s.atoms[i+1]; n.class {
	case cThing, cBody, cFloor, cNone:
		return true
	case cShe:
		return i+2 < len(s.atoms) && s.atoms[i+2].class == cBody
	}
	return false
}
