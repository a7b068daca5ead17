package notation

import "example.org/netpost/engine/play"

// An area reads questions about one kind of subject that is no play of the
// ball. Areas are tried in their order; the one that uses most of the words
// wins.
//
// A new area is a row of areaReaders. Its reader walks the whole text, and most
// texts are plays of the ball: so it declares a gate, the words without which
// it reads nothing, taken from its own table where it has one. A gate may let
// through what the reader then gives back; it may never keep away what the
// reader would have read. A reader changes nothing of the scene, for it is not
// run on every text.
type area struct {
	name string
	read func(s *scene) (heard, bool)
	// gate is what a text must have for read to be tried; nil lets everything
	// through. It is asked for once, when the first text is read.
	gate func() gate
	// reprint reads a text that is word for word a print of the area's
	// subject; it takes nothing else.
	reprint func(text string) (play.Spoken, bool)
}

// heard is what an area made of a text.
type heard struct {
	subject play.Spoken
	// used marks the words that have a part in the subject, or are known not
	// to matter to it, by their place among the scene's tokens.
	used []bool
	// scenery marks words that are only listed.
	scenery []bool
	// sure: the text is of this area even where it reads as a play of the ball.
	sure bool
	more []string // further questions in the same text
}

// areaReaders lists the areas. Look-ups have no gate: their reader gives up at
// the first word that no question about the rules has.
var areaReaders = []area{
	{name: "facts", read: readLookup},
	{name: "dead ball", read: readDeadBall, gate: deadGate, reprint: deadPrint},
	{name: "libero", read: readLibero, gate: liberoGate},
	{name: "alignment", read: readAlignment, gate: alignmentGate, reprint: readCourtPrint},
	{name: "alignment", read: readOrder, gate: orderGate},
}

// inPrint reads a text that is a print of a subject of another area.
func inPrint(text string) (play.Spoken, string, bool) {
	for _, a := range areaReaders {
		if a.reprint == nil {
			continue
		}
		if p, ok := a.reprint(text); ok {
			return p, a.name, true
		}
	}
	return nil, "", false
}

// inArea reads the text as a subject of another area than the rally. Where
// the words are a play of the ball only a sure reading is taken.
func (s *scene) inArea(rally bool) (heard, string, bool) {
	var best heard
	most, name := 0, ""
	s.linkSides()
	has := s.gateWords()
	for i, a := range areaReaders {
		if a.gate != nil && !s.ungated && !readyGates().lets(i, has) {
			continue
		}
		h, ok := a.read(s)
		if !ok || rally && !h.sure {
			continue
		}
		n := 0
		for i, u := range h.used {
			if u && !h.scenery[i] {
				n++
			}
		}
		if n > most || h.sure && !best.sure {
			best, most, name = h, n, a.name
		}
	}
	return best, name, name != ""
}

// left lists the words that an area did not use.
func (s *scene) left(h heard) []Unread {
	var out []Unread
	last := -1
	for i, t := range s.toks {
		if t.mark != 0 || t.start == last || h.used[i] && !h.scenery[i] {
			continue
		}
		last = t.start
		out = append(out, Unread{Word: t.raw, Scenery: h.scenery[i]})
	}
	return out
}
