package notation

import "example.org/netpost/engine/play"

// unread lists the words that have no part in the play. Words known not to
// matter are marked as scenery; words that carry nothing are left out.
func (s *scene) unread(noPlay bool) []Unread {
	for _, n := range s.next {
		if n.fact == play.Together && s.blocked() {
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
	var out []Unread
	for _, a := range s.atoms {
		switch {
		case a.class == cStop, a.class == cJoin, a.class == cFiller:
			continue
		case a.class == cScenery:
			out = append(out, Unread{s.words(a), true})
			continue
		case a.used:
			continue
		case noPlay && a.class == cTopic:
			continue
		}
		out = append(out, Unread{s.words(a), false})
	}
	return out
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
