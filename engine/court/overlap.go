package court

import "example.org/netpost/engine/code"

// Axis is the direction in which two players are compared.
type Axis uint8

// The axes.
const (
	Depth  Axis = iota // how far from the centre line
	Across             // how far from a side line
)

// Relation is how the first player of a pair stands to the other: the front-row
// player to the back-row partner by the distance from the centre line, a side
// player to another one of the row by the distance from that side line.
type Relation uint8

// The relations, from what every wording allows to what none does.
const (
	NoRelation Relation = iota
	// InOrder: part of a foot is nearer than both feet of the other.
	InOrder
	// Level: the nearest parts are exactly level.
	Level
	// Astride: the other is nearer, but their feet reach level with one another:
	// the other's farther foot is level with the first player's nearer one, or
	// farther.
	Astride
	// Unclear: as Astride, but only by a part of a foot. The wordings do not say
	// which part of it counts.
	Unclear
	// OutOfOrder: both feet of the other are nearer.
	OutOfOrder
)

// Pair is two positions that are compared. First is the one that has to be
// nearer: the front-row player to the centre line, the side player to the side
// line. Of the two side players of a row it is the right one.
type Pair struct {
	First, Other Position
	Axis         Axis
}

// pairs are all that any code compares: partners, neighbours, then the two
// sides of a row.
var pairs = [...]Pair{
	{RightFront, RightBack, Depth}, {CentreFront, CentreBack, Depth}, {LeftFront, LeftBack, Depth},
	{RightFront, CentreFront, Across}, {LeftFront, CentreFront, Across},
	{RightBack, CentreBack, Across}, {LeftBack, CentreBack, Across},
	{RightFront, LeftFront, Across}, {RightBack, LeftBack, Across},
}

// neighbours is how many of pairs, from the first, every code compares.
const neighbours = 7

// Law is what a code says of two players who overlap.
type Law struct {
	WholeRow   bool // a side player is compared with every player of the row, not with the centre player only
	LevelDepth bool // level, or a foot level with or behind the front foot, is in order between partners
	LevelRow   bool // the same within a row
	Serving    bool // the serving team is bound to its positions
	Receiving  bool // the receivers are
}

// LawOf is the law of a code in its season, with an association's adoptions.
func LawOf(b *code.Book) Law {
	return Law{
		WholeRow:   b.Cell("align.same-row").Value == "every-player",
		LevelDepth: b.Cell("align.front-back-pair").Value == "level-is-legal",
		LevelRow:   b.Cell("align.same-row-level").Value == "level-is-legal",
		Serving:    b.Cell("align.serving-team").Value == "bound",
		Receiving:  b.Cell("align.receiving-team").Value == "bound",
	}
}

// Pairs lists the pairs that the law compares.
func (l Law) Pairs() []Pair {
	if l.WholeRow {
		return pairs[:]
	}
	return pairs[:neighbours]
}

// Fault reports whether a relation is an overlap, and false, false where the
// wording does not tell.
func (l Law) Fault(p Pair, r Relation) (fault, told bool) {
	level := l.LevelDepth
	if p.Axis == Across {
		level = l.LevelRow
	}
	switch r {
	case InOrder:
		return false, true
	case Level, Astride:
		return !level, true
	case Unclear:
		return !level, !level
	case OutOfOrder:
		return true, true
	}
	return false, false
}

// Overlap is a pair that stands out of order, or that cannot be told.
type Overlap struct {
	Pair
	Relation Relation
	Told     bool // false: the wording does not tell whether it is one
}

// Overlaps lists the overlaps of a six, in the order of Pairs. The server, the
// player in position 1 of a serving team, is compared with nobody; nor is a
// vacant position or a player whose feet are not known. Whether the team is
// bound at all is Serving and Receiving, and not asked here.
func (l Law) Overlaps(six *Six, serving bool) []Overlap {
	var out []Overlap
	for _, p := range l.Pairs() {
		if serving && (p.First == RightBack || p.Other == RightBack) {
			continue
		}
		r := six.Relation(p)
		if r == NoRelation || r == InOrder {
			continue
		}
		if fault, told := l.Fault(p, r); fault || !told {
			out = append(out, Overlap{p, r, told})
		}
	}
	return out
}

// Relation compares the two of a pair; NoRelation where one of them is not
// there or not known.
//
// The wordings with "level" ask for part of a foot of the back-row player that
// is level with the front foot of the partner or farther, and for part of a
// foot of the side player that is level with the far foot of the other or
// nearer. Where a foot was given by more than one point and only part of it is
// passed, they do not tell.
func (six *Six) Relation(p Pair) Relation {
	first, other := &six[p.First-1], &six[p.Other-1]
	if !first.known() || !other.known() {
		return NoRelation
	}
	a, b := first.extent(), other.extent()
	switch {
	case p.Axis == Depth:
		front := first.foot(func(f Tread) (Length, Length) { return f.Near, f.Far })
		return relate(a.Near, b.Near, b.Far < front.Near, b.Far < front.Far)
	case p.First.Lane() == 0:
		far := other.foot(func(f Tread) (Length, Length) { return -f.Right, -f.Left })
		return relate(a.Left, b.Left, a.Left > far.Right, a.Left > far.Left)
	}
	far := other.foot(func(f Tread) (Length, Length) { return f.Left, f.Right })
	return relate(-a.Right, -b.Right, a.Right < far.Left, a.Right < far.Right)
}

// relate compares along one axis, less being nearer: the nearest part of the
// first player and of the other, whether no part of their feet is level, and
// whether some part is not.
func relate(first, other Length, none, some bool) Relation {
	switch {
	case first < other:
		return InOrder
	case first == other:
		return Level
	case none:
		return OutOfOrder
	case some:
		return Unclear
	}
	return Astride
}
