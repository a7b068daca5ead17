package picture

import (
	"slices"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/play"
)

// Breach is what is at fault in an alignment: two players who overlap, or one,
// then Other is empty, who is where nobody may be.
type Breach struct {
	Who, Other string   // ids
	Key        play.Key // the fact that shows it
}

// Breaches lists all that is at fault in an alignment under a book. Each pair
// and each player is judged alone by the rules themselves, so that what is
// marked is what they find, the first as well as those after it.
func Breaches(a *court.Alignment, b *code.Book) []Breach {
	var out []Breach
	for _, p := range a.People {
		k := play.Key{Fact: court.StandsInside, Of: p.ID}
		if v := a.Get(k); v != play.Unknown && v != court.InsideHalf && atFault(alone(a, p), b) {
			out = append(out, Breach{Who: p.ID, Key: k})
		}
	}
	for i, p := range a.People {
		for _, q := range a.People[i+1:] {
			if p.Team != q.Team || p.Vacant || q.Vacant {
				continue
			}
			axis, compared := axisOf(a, p, q)
			if !compared {
				continue
			}
			of, _ := a.PairOf(p.ID, q.ID)
			if two, told := pairAlong(a, p, q, of, axis); told && atFault(two, b) {
				k := play.Key{Fact: axis.stands, Of: of}
				if a.Get(k) == play.Unknown {
					k.Fact = axis.air
				}
				out = append(out, Breach{p.ID, q.ID, k})
			}
		}
	}
	return out
}

// axisFacts are the facts of a pair along one axis.
type axisFacts struct{ stands, feet, air play.FactID }

var (
	depthFacts  = axisFacts{court.StandsDepth, court.FeetDepth, court.AirDepth}
	acrossFacts = axisFacts{court.StandsAcross, court.FeetAcross, court.AirAcross}
)

// axisOf is the axis along which two may be compared: partners from front to
// back, players of a row from side to side; false where they never are, or
// where a position was not told.
func axisOf(a *court.Alignment, p, q court.Person) (axisFacts, bool) {
	position := func(p court.Person) court.Position {
		if v := a.Get(play.Key{Fact: court.StandsPlace, Of: p.ID}); v != play.Unknown {
			return court.Position(v[0] - '0')
		}
		return court.NoPosition
	}
	x, y := position(p), position(q)
	switch {
	case !x.OK() || !y.OK():
		return axisFacts{}, false
	case x.Partner() == y:
		return depthFacts, true
	}
	return acrossFacts, x.Front() == y.Front()
}

// atFault reports whether the rules find a fault, whatever was not told.
func atFault(a *court.Alignment, b *code.Book) bool {
	d, err := judge.Decide(a, b)
	return err == nil && d.Settled() && (d.Ruling.Fault != "" || d.Ruling.Replay != "")
}

// alone is an alignment of some of its people: what was told of the setting
// and of each of them, and nothing of how they stand to one another.
func alone(a *court.Alignment, people ...court.Person) *court.Alignment {
	out := &court.Alignment{Names: a.Names, People: people}
	set := play.Key{Fact: court.ServingSide}
	for _, t := range []play.Team{play.A, play.B} {
		if v := play.Value(t.String()); serves(a) == v {
			out = out.With(set, v)
		}
	}
	if k := (play.Key{Fact: court.StandsWhen}); a.Get(k) != play.Unknown {
		out = out.With(k, a.Get(k))
	}
	for _, p := range people {
		for _, f := range []play.FactID{court.InTheAir, court.StandsInside, court.StandsPlace} {
			if k := (play.Key{Fact: f, Of: p.ID}); a.Told.Get(k) != play.Unknown {
				out = out.With(k, a.Told.Get(k))
			}
		}
	}
	return out
}

// pairAlong is an alignment of two people that tells of them along one axis
// alone; false where it tells nothing.
func pairAlong(a *court.Alignment, p, q court.Person, of string, axis axisFacts) (*court.Alignment, bool) {
	told := false
	p.Feet, q.Feet = nil, nil // what they tell of the pair is told below
	out := alone(a, p, q)
	for _, id := range []string{p.ID, q.ID} {
		if k := (play.Key{Fact: court.StandsInside, Of: id}); out.Get(k) != play.Unknown {
			out = out.With(k, court.InsideHalf) // a breach of its own
		}
	}
	for _, f := range []play.FactID{axis.stands, axis.feet, axis.air} {
		k := play.Key{Fact: f, Of: of}
		switch v := a.Get(k); {
		case v != play.Unknown:
			out, told = out.With(k, v), told || f != axis.feet
		case a.Void(k), f == axis.feet && a.Presumption(k) == play.Unknown:
			out = out.WithVoid(k)
		}
	}
	return out, told
}

// serves is the side that serves, as told or presumed; unknown where neither.
func serves(a *court.Alignment) play.Value {
	k := play.Key{Fact: court.ServingSide}
	if v := a.Get(k); v != play.Unknown {
		return v
	}
	return a.Presumption(k)
}

// has reports whether somebody is in a breach.
func has(all []Breach, id string) bool {
	return slices.ContainsFunc(all, func(b Breach) bool { return b.Who == id || b.Other == id })
}
