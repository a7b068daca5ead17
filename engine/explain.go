package engine

import (
	"slices"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Because is a minimal reason of a settled ruling: told facts that together
// settle it, none of which can be spared. Presumptions that were used stand
// in Presumed and are not repeated here. Nil when the play is not settled.
func (d Decision) Because() []Given {
	if !d.Settled() {
		return nil
	}
	want := d.Ruling.Key()
	s := d.Subject
	var read []play.Key
	for _, k := range s.Known() {
		for _, r := range d.Read {
			if r == k {
				read = append(read, k)
			}
		}
	}
	// One pass is not always enough: without one fact, another that says the
	// same in other words may be read, and a third can then be spared.
	for spared := true; spared; {
		spared = false
		for i := len(read) - 1; i >= 0; i-- {
			without := s.Tell(read[i], play.Unknown).Doubt(read[i])
			if settledAs(d.judge, without, d.Book, want) {
				s, spared = without, true
				read = slices.Delete(read, i, i+1)
			}
		}
	}
	out := make([]Given, len(read))
	for i, k := range read {
		out[i] = Given{k, s.Get(k)}
	}
	return out
}

// settledAs reports whether every run rules as wanted. It stops at the first
// that does not.
func settledAs(j Judge, s Subject, b *code.Book, want string) bool {
	r, ok := settled(j, s, b)
	return ok && r.Key() == want
}

// settled is the ruling on which every run agrees. It stops at the first run
// that does not, and needs no tree.
func settled(j Judge, s Subject, b *code.Book) (Ruling, bool) {
	budget := MaxLeaves
	var first Ruling
	found := false
	var try func(assumed []assumption) bool
	try = func(assumed []assumption) bool {
		if budget--; budget < 0 {
			return false
		}
		_, ruling, missing, ok := run(j, s, b, assumed)
		if ok && !found {
			first, found = ruling, true
			return len(ruling.Conflict) == 0
		}
		if ok {
			return ruling.Key() == first.Key() && len(ruling.Conflict) == 0
		}
		f, _ := s.Fact(missing.Fact)
		for _, c := range f.Values {
			if !try(append(assumed[:len(assumed):len(assumed)], assumption{missing, c.Value})) {
				return false
			}
		}
		return true
	}
	return first, try(nil)
}

// Change is a smallest set of facts whose change would change the ruling.
type Change struct {
	Facts  []Given // the new values
	Ruling Ruling
}

// Nearest lists the changes of fact that would change a settled ruling: all
// single ones, presumed facts first; where there are none, the pairs. At most
// limit are given, in the order of reading.
func (d Decision) Nearest(limit int) []Change {
	if !d.Settled() {
		return nil
	}
	flips := d.flips()
	var out []Change
	for _, g := range flips {
		if len(out) == limit {
			return out
		}
		if c, ok := d.changed([]Given{g}); ok {
			out = append(out, c)
		}
	}
	if len(out) > 0 {
		return out
	}
	for i, g := range flips {
		for _, h := range flips[i+1:] {
			if g.Key == h.Key {
				continue
			}
			if len(out) == limit {
				return out
			}
			if c, ok := d.changed([]Given{g, h}); ok {
				out = append(out, c)
			}
		}
	}
	return out
}

// Flips reports whether one other value of the fact would change, or unsettle,
// a settled ruling.
func (d Decision) Flips(k play.Key) bool {
	f, ok := d.Subject.Fact(k.Fact)
	if !ok {
		return false
	}
	now := d.value(k)
	for _, c := range f.Values {
		if c.Value != now && !settledAs(d.judge, d.Subject.Tell(k, c.Value), d.Book, d.Ruling.Key()) {
			return true
		}
	}
	return false
}

func (d Decision) value(k play.Key) play.Value {
	if v := d.Subject.Get(k); v != play.Unknown {
		return v
	}
	return d.Subject.Presumption(k)
}

func (d Decision) flips() []Given {
	var out []Given
	add := func(k play.Key) {
		f, _ := d.Subject.Fact(k.Fact)
		now := d.value(k)
		for _, c := range f.Values {
			if c.Value != now {
				out = append(out, Given{k, c.Value})
			}
		}
	}
	for _, k := range d.Presumed {
		add(k)
	}
	for _, k := range d.Read {
		if d.Subject.Get(k) != play.Unknown {
			add(k)
		}
	}
	return out
}

func (d Decision) changed(gs []Given) (Change, bool) {
	s := d.Subject
	for _, g := range gs {
		s = s.Tell(g.Key, g.Value)
	}
	r, ok := settled(d.judge, s, d.Book)
	if !ok || r.Key() == d.Ruling.Key() {
		return Change{}, false
	}
	return Change{gs, r}, true
}

// Compare decides the same subject under every code, each in the season given
// (the newest held for the zero season), in the codes' order. Codes that do
// not hold the season are left out.
func Compare(j Judge, s Subject, season code.Season) ([]Decision, error) {
	var out []Decision
	for _, c := range code.All() {
		b, err := code.Open(c, season)
		if err != nil {
			continue
		}
		d, err := Decide(j, s, b)
		if err != nil {
			return nil, err
		}
		out = append(out, d)
	}
	return out, nil
}
