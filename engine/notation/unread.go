package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// What a story may leave open that no word of it names.
const (
	whoNext   = "who touched it next"
	whoServed = "who served"
)

// unread lists the words that have no part in the play. Words known not to
// matter are marked as scenery; words that carry nothing are left out.
func (s *scene) unread(noPlay bool) []Unread {
	for _, n := range s.next {
		if n.fact == play.Together && s.blocked() || n.fact == play.Playing && n.value == play.No && n.at != nil && strings.Contains(n.at.phrase, " back") || n.fact == play.Hinders && n.value == play.No {
			continue
		}
		if n.at != nil {
			n.at.used = false
		}
	}
	for _, p := range s.people {
		if !p.acts {
			for i := p.from; i < p.to; i++ {
				s.atoms[i].used = false
			}
		}
	}
	if !noPlay {
		s.account()
		s.harmless()
	}
	var out []Unread
	for _, w := range s.lost {
		out = append(out, Unread{Word: w, Open: w == whoNext || w == whoServed || strings.HasSuffix(w, " row")})
	}
	for i, a := range s.atoms {
		switch {
		case a.class == cStop, a.class == cJoin, a.class == cFiller:
			continue
		case a.class == cScenery:
			out = append(out, Unread{Word: s.words(a), Scenery: true})
			continue
		case a.class == cSide && a.side.fam == colours && !coloured(s.words(a)):
			// A name that owns a player is taken for a team's; it is listed,
			// since it may be a person's.
			out = append(out, Unread{Word: s.words(a), Scenery: true})
			continue
		case a.used:
			continue
		case noPlay && a.class == cTopic:
			continue
		}
		out = append(out, Unread{Word: s.words(a), Stray: a.class == cNone && !a.row && (!s.telling(i) || !s.verbal(i))})
	}
	return out
}

// coloured reports whether a team's name is a colour.
func coloured(w string) bool {
	w = strings.TrimSuffix(strings.ToLower(w), "'s")
	w = strings.TrimPrefix(w, "the ")
	return slices.Contains(colourWords, w) || slices.Contains(colourWords, strings.TrimSuffix(w, "s"))
}

// telling reports whether an unknown word stands where a verb can: after the
// one who acts, after a negation, at the beginning of a clause.
func (s *scene) telling(i int) bool {
	for j := i - 1; j >= 0; j-- {
		a := s.atoms[j]
		switch a.class {
		case cFiller, cScenery:
			continue
		case cSide:
			return !a.poss
		case cRole, cPerson, cShe, cLibero, cLabel, cMate, cBall, cBoth, cSame, cJoin, cNot, cNobody, cOrder, cRow, cBody:
			return true
		case cStop:
			return a.mark == ','
		}
		return false
	}
	return true
}

// words are the words of an atom as they were typed.
func (s *scene) words(a atom) string {
	w, last := "", -1
	for _, t := range s.toks[a.from:a.to] {
		if t.start == last {
			continue // two words that were typed as one
		}
		last = t.start
		if w != "" {
			w += " "
		}
		w += t.raw
	}
	return w
}

// blocked reports whether somebody blocked or went up to.
func (s *scene) blocked() bool {
	for _, e := range s.evs {
		if e.Kind == play.Attempt || e.Kind == play.Contact && e.Action == play.Block {
			return true
		}
	}
	return false
}
