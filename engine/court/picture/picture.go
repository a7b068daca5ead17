package picture

import (
	"strings"

	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// Of is the picture of a subject; false where there is nothing in it to draw.
// The mark rings the fault that a ruling found.
func Of(s play.Subject, m Mark) (Scene, bool) {
	p, ok := s.(*play.Rally)
	if !ok {
		return Scene{}, false
	}
	out, atNet := side(p, m)
	top, seen := above(p, m)
	switch {
	case atNet && seen:
		out.below(top)
	case seen:
		out = top
	case !atNet:
		return Scene{}, false
	}
	out.Title = "The play as it was read"
	out.Alt = alt(p, m, atNet)
	return out, true
}

// alt says what the picture shows.
func alt(p *play.Rally, m Mark, atNet bool) string {
	from := "from above"
	if atNet {
		from = "from the side and from above"
	}
	s := "The play drawn " + from + ": " + strings.Join(notation.Sentences(p), "; ") + "."
	if m.Words != "" {
		s += " Marked: " + m.Words + "."
	}
	return s + " What was not told has a broken outline."
}
