package casebook

import (
	"slices"

	"example.org/netpost/engine/play"
)

// Covers reports whether a play is a case of a note's play: the same events by
// the same sides, and whatever the note's play tells is told of it too, or is
// what every official would grant of it. A play that tells less than the note
// is not covered: it could be another.
func Covers(note, p *play.Rally) bool {
	if note == nil || p == nil || len(note.Events) == 0 {
		return false
	}
	for _, general := range shapes(note, nil) {
		for _, special := range shapes(p, nil) {
			if general.kinds != special.kinds {
				continue
			}
			if !slices.ContainsFunc(general.facts, func(f shapeFact) bool { return !special.holds(f) }) {
				return true
			}
		}
	}
	return false
}

// holds reports whether a fact of another shape of the same kind is true of this one.
func (s shape) holds(f shapeFact) bool {
	if i := slices.IndexFunc(s.facts, func(g shapeFact) bool { return g.name == f.name }); i >= 0 {
		return s.facts[i].value == f.value
	}
	if f.key.Fact == "" {
		return false // who or what it was, and this play leaves it open
	}
	k := play.Key{Fact: f.key.Fact}
	about, _ := play.FactByID(k.Fact)
	switch {
	case about.About == play.OfSetting:
	case f.of < 0:
		return false
	case about.About == play.OfEvent:
		k.Of = s.order[f.of].ID
	case about.About == play.OfPlayer:
		if k.Of = s.order[f.of].Player; k.Of == "" {
			return false
		}
	case about.About == play.OfPair:
		k.Of = s.rally.Pair(f.of)
	}
	return s.rally.Presumption(k) == play.Value(f.value)
}
