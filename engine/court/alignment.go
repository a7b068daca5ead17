package court

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// Person is one who is told of. Two persons of an alignment differ in what
// they are called by: side, role, number or position.
type Person struct {
	ID     string
	Team   play.Team
	Role   play.Role
	Label  string   // a shirt number
	Place  Position // NoPosition when it was not told
	Feet   []Tread  // where they last touched the floor, if that was given in lengths
	Vacant bool     // nobody: the position is empty
	Bench  bool     // a bench player who comes in during play
}

// Wanted is what is asked of an alignment.
type Wanted string

// What is asked. The zero value asks whether it is a fault.
const (
	WantRuling Wanted = ""
	WantPairs  Wanted = "pairs" // who is compared with whom
)

// Alignment is where players stood at a service. It is a value: With and the
// others return changed copies.
type Alignment struct {
	play.Told
	Names  [3][]string // by team: what the asker calls the sides
	People []Person
	Asked  Wanted
}

// New is the alignment of two sixes seen from above, with the side that
// serves; NoTeam when that is not known. Feet are in the team's own terms, see
// Tread and Seen. The server's feet, position 1 of the serving team, may be
// left out. Its error names the stand that cannot be used.
func New(serving play.Team, a, b Six) (*Alignment, error) {
	out := &Alignment{}
	for i, six := range []Six{a, b} {
		t := play.A + play.Team(i)
		for j, s := range six {
			at := fmt.Sprintf("%s%d", t, j+1)
			if len(s.Feet) > 2 {
				return nil, fmt.Errorf("%s: %d feet are given; give one or two", at, len(s.Feet))
			}
			for _, f := range s.Feet {
				if f.Left > f.Right || f.Near > f.Far {
					return nil, fmt.Errorf("%s: a foot from %v to %v and from %v to %v: give the smaller number first", at, f.Left, f.Right, f.Near, f.Far)
				}
				for _, l := range []Length{f.Left, f.Right, f.Near, f.Far} {
					if l > farthest || l < -farthest {
						return nil, fmt.Errorf("%s: %v is farther than any hall", at, l)
					}
				}
			}
			if !s.Vacant && len(s.Feet) == 0 {
				continue
			}
			p := Person{ID: at, Team: t, Place: Position(j + 1), Label: s.Label, Feet: slices.Clone(s.Feet), Vacant: s.Vacant}
			if s.Libero {
				p.Role = play.Libero
			}
			if s.Vacant {
				p.Feet = nil
			}
			out.People = append(out.People, p)
		}
	}
	switch serving {
	case play.A:
		out = out.With(play.Key{Fact: ServingSide}, play.ValueA)
	case play.B:
		out = out.With(play.Key{Fact: ServingSide}, play.ValueB)
	}
	return out, nil
}

// PairOf is the key part of two persons, in the order of People, and whether
// they had to change over for it.
func (a *Alignment) PairOf(x, y string) (of string, turned bool) {
	if a.index(x) > a.index(y) {
		return y + "-" + x, true
	}
	return x + "-" + y, false
}

func (a *Alignment) index(id string) int {
	return slices.IndexFunc(a.People, func(p Person) bool { return p.ID == id })
}

// Person finds a person.
func (a *Alignment) Person(id string) (Person, bool) {
	if i := a.index(id); i >= 0 {
		return a.People[i], true
	}
	return Person{}, false
}

// pair finds the two persons of a key part.
func (a *Alignment) pair(of string) (x, y Person, ok bool) {
	first, second, _ := strings.Cut(of, "-")
	i, j := a.index(first), a.index(second)
	if i < 0 || j < 0 || i >= j || a.People[i].Team != a.People[j].Team {
		return Person{}, Person{}, false
	}
	return a.People[i], a.People[j], true
}

// Get is a fact: told, or computed from where the feet were given.
func (a *Alignment) Get(k play.Key) play.Value {
	if v := a.Told.Get(k); v != play.Unknown || a.Void(k) {
		return v
	}
	switch k.Fact {
	case StandsPlace:
		if p, ok := a.Person(k.Of); ok && p.Place.OK() {
			return play.Value(p.Place.String())
		}
	case StandsInside:
		if p, ok := a.Person(k.Of); ok {
			return p.inside()
		}
	case StandsDepth, StandsAcross, FeetDepth, FeetAcross:
		if x, y, ok := a.pair(k.Of); ok {
			return measured(k.Fact, x, y)
		}
	}
	return play.Unknown
}

// stand is the person as one of a six.
func (p *Person) stand() Stand { return Stand{Feet: p.Feet, Vacant: p.Vacant} }

// inside places feet that were given in lengths on the courts of both sizes.
func (p *Person) inside() play.Value {
	s := p.stand()
	metric, feet := s.Where(9*Metre, 9*Metre), s.Where(30*Foot, 30*Foot)
	switch {
	case metric == NoPlace:
		return play.Unknown
	case metric == OverCentre:
		return OverTheLine
	case feet == Outside:
		return OutsideHalf
	case metric == Outside:
		return BetweenSize
	}
	return InsideHalf
}

// measured compares two persons whose positions and feet were given.
func measured(f play.FactID, x, y Person) play.Value {
	if !x.Place.OK() || !y.Place.OK() {
		return play.Unknown
	}
	axis := Across
	if f == StandsDepth || f == FeetDepth {
		axis = Depth
	}
	p, turned, ok := between(x.Place, y.Place, axis)
	if !ok {
		return play.Unknown
	}
	var six Six
	six[x.Place-1], six[y.Place-1] = x.stand(), y.stand()
	rel := six.Relation(p)
	if f == FeetDepth || f == FeetAcross {
		switch rel {
		case OutOfOrder:
			return ApartFeet
		case Astride:
			return ReachLevel
		}
		return play.Unknown
	}
	if rel == NoRelation {
		return play.Unknown
	}
	// nearer: the first of the pair is; as a relation of x to y on the axis.
	nearer := 0
	switch rel {
	case InOrder:
		nearer = 1
	case Astride, Unclear, OutOfOrder:
		nearer = -1
	}
	if turned {
		nearer = -nearer
	}
	if axis == Across && p.First.Lane() == 0 {
		nearer = -nearer // nearer to the left line is farther left
	}
	vs := [3]play.Value{ToTheLeft, LevelWith, ToTheRight}
	if axis == Depth {
		vs = [3]play.Value{Behind, LevelWith, Ahead}
	}
	return vs[nearer+1]
}

// between is the pair of two positions on an axis, whatever code compares it,
// and whether the second given is its first.
func between(x, y Position, axis Axis) (p Pair, turned, ok bool) {
	for _, p := range pairs {
		if p.Axis != axis {
			continue
		}
		switch {
		case p.First == x && p.Other == y:
			return p, false, true
		case p.First == y && p.Other == x:
			return p, true, true
		}
	}
	return Pair{}, false, false
}

// Presumption is what every official would grant for an untold fact.
func (a *Alignment) Presumption(k play.Key) play.Value {
	if a.Void(k) {
		return play.Unknown
	}
	switch k.Fact {
	case InTheAir, BenchConduct:
		return play.No
	case FeetDepth, FeetAcross:
		if x, y, ok := a.pair(k.Of); ok && len(x.Feet) > 0 && len(y.Feet) > 0 {
			return play.Unknown // the feet were given and do not tell
		}
		return ApartFeet
	case StandsWhen:
		return AtContact
	case ServingSide:
		// A player in position 1 who is told to stand somewhere on the court is
		// no server.
		var on [3]bool
		for _, p := range a.People {
			if p.Place == RightBack && p.Role != play.Server && !p.Vacant && a.related(p.ID) {
				on[p.Team] = true
			}
		}
		switch {
		case on[play.A] && !on[play.B]:
			return play.ValueB
		case on[play.B] && !on[play.A]:
			return play.ValueA
		}
	}
	return play.Unknown
}

// related reports whether it was told or given how a person stands to another.
func (a *Alignment) related(id string) bool {
	for _, q := range a.People {
		of, _ := a.PairOf(id, q.ID)
		if _, _, ok := a.pair(of); ok && a.mentioned(of, Depth, Across) {
			return true
		}
	}
	return false
}

// compare orders keys: by the table of facts, then by the people.
func (a *Alignment) compare(x, y play.Key) int {
	rank := func(k play.Key) int {
		return slices.IndexFunc(facts, func(f play.Fact) bool { return f.ID == k.Fact })
	}
	if d := rank(x) - rank(y); d != 0 {
		return d
	}
	return strings.Compare(x.Of, y.Of)
}

// Known lists the facts that were told or follow from where the feet were
// given, in the table's order.
func (a *Alignment) Known() []play.Key {
	out := a.Told.Keys(a.compare)
	add := func(k play.Key) {
		if a.Get(k) != play.Unknown && a.Told.Get(k) == play.Unknown {
			out = append(out, k)
		}
	}
	for i, p := range a.People {
		add(play.Key{Fact: StandsPlace, Of: p.ID})
		add(play.Key{Fact: StandsInside, Of: p.ID})
		for _, q := range a.People[i+1:] {
			if q.Team == p.Team && len(p.Feet) > 0 && len(q.Feet) > 0 {
				for _, f := range []play.FactID{StandsDepth, FeetDepth, StandsAcross, FeetAcross} {
					add(play.Key{Fact: f, Of: p.ID + "-" + q.ID})
				}
			}
		}
	}
	slices.SortFunc(out, a.compare)
	return out
}

// Fact is a row of the table.
func (a *Alignment) Fact(id play.FactID) (play.Fact, bool) { return FactByID(id) }

// With is the alignment with one more fact told; an unknown value takes the
// fact away.
func (a *Alignment) With(k play.Key, v play.Value) *Alignment {
	b := *a
	b.Told = a.Told.With(k, v)
	return &b
}

// Tell is With, as a subject.
func (a *Alignment) Tell(k play.Key, v play.Value) play.Subject { return a.With(k, v) }

// WithVoid is the alignment with what was presumed or measured of one fact set
// aside.
func (a *Alignment) WithVoid(k play.Key) *Alignment {
	b := *a
	b.Told = a.Told.WithVoid(k)
	return &b
}

// Doubt is WithVoid, as a subject.
func (a *Alignment) Doubt(k play.Key) play.Subject { return a.WithVoid(k) }

// Check reports the first thing that makes the alignment malformed.
func (a *Alignment) Check() error {
	for i, p := range a.People {
		if p.ID == "" || a.index(p.ID) != i {
			return fmt.Errorf("person %d: the id %q is empty or used twice", i+1, p.ID)
		}
		if p.Team != play.A && p.Team != play.B {
			return fmt.Errorf("%s: has no side", p.ID)
		}
		for _, q := range a.People[:i] {
			if p.Team == q.Team && p.call() == q.call() {
				return fmt.Errorf("%s: is called the same as %s", p.ID, q.ID)
			}
		}
	}
	for _, k := range append(a.Told.Keys(a.compare), a.Told.Voided(a.compare)...) {
		f, ok := FactByID(k.Fact)
		if !ok {
			return fmt.Errorf("fact %q: there is no such fact of an alignment", k.Fact)
		}
		if v := a.Told.Get(k); v != play.Unknown && !f.Has(v) {
			return fmt.Errorf("%s: is never %q", k, v)
		}
		if err := a.about(f, k.Of); err != nil {
			return fmt.Errorf("%s: %w", k, err)
		}
	}
	return nil
}

func (a *Alignment) about(f play.Fact, of string) error {
	ok, want := true, ""
	switch {
	case f.About == play.OfSetting:
		ok, want = of == "", "the setting"
	case f.ID == TeamOrder:
		ok, want = of == "A" || of == "B", "A or B"
	case f.About == play.OfPlayer:
		ok, want = a.index(of) >= 0, "one of the people"
	case f.About == play.OfPair:
		_, _, ok = a.pair(of)
		want = "two people of a side in their order"
	}
	if !ok {
		return fmt.Errorf("it is of %s, not of %q", want, of)
	}
	return nil
}

// Things lists what the facts can be about.
func (a *Alignment) Things() []string {
	out := []string{"A", "B"}
	for i, p := range a.People {
		out = append(out, p.ID)
		for _, q := range a.People[i+1:] {
			if p.Team == q.Team && a.mentioned(p.ID+"-"+q.ID, Depth, Across) {
				out = append(out, p.ID+"-"+q.ID)
			}
		}
	}
	return out
}

// mentioned reports whether anything of a pair was told, measured or put in
// doubt, along one of the axes.
func (a *Alignment) mentioned(of string, axes ...Axis) bool {
	for _, axis := range axes {
		fs := []play.FactID{StandsAcross, AirAcross, FeetAcross}
		if axis == Depth {
			fs = []play.FactID{StandsDepth, AirDepth, FeetDepth}
		}
		for _, f := range fs {
			k := play.Key{Fact: f, Of: of}
			if a.Get(k) != play.Unknown || a.Void(k) {
				return true
			}
		}
	}
	return false
}
