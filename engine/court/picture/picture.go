package picture

import (
	"strings"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// Of is the picture of a subject; false where there is nothing in it to draw.
// The mark rings the fault that a ruling found.
func Of(s play.Subject, m Mark) (Scene, bool) {
	switch s := s.(type) {
	case *play.Rally:
		return ofRally(s, m)
	case *court.Alignment:
		return places(s, m)
	}
	return Scene{}, false
}

func ofRally(p *play.Rally, m Mark) (Scene, bool) {
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
