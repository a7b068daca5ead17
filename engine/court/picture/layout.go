package picture

import (
	"slices"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// placed is where somebody is drawn.
type placed struct {
	at    Point
	feet  []Point // where two feet were given
	known bool    // the place was given; false: it only agrees with what was told
}

// lane is how far from the own left side line, and depth how far from the net,
// a position is drawn of which no more is known; in metres.
var (
	lane  = [3]float64{1.6, 4.5, 7.4}
	depth = [2]float64{2, 6.2} // front and back
)

// apart is how far from one another two are drawn of whom only the order was
// told.
const apart = 2.2

// body is one on the way to a place, in metres of the own side.
type body struct {
	left, near float64
	known      bool
	p          court.Person
}

// layout gives everybody of whom anything of a place was told a point. Those
// whose feet were given stand there. The others stand by their position, moved
// until all that was told of how they stand to one another holds.
func layout(a *court.Alignment) map[string]placed {
	var all []*body
	odd := 0
	for _, p := range a.People {
		if p.Bench {
			continue
		}
		b := &body{p: p, left: 4.5, near: 4}
		switch {
		case len(p.Feet) > 0:
			b.known, b.left, b.near = true, 0, 0
			for _, f := range p.Feet {
				b.left += metres(f.Left+f.Right) / 2 / float64(len(p.Feet))
				b.near += metres(f.Near+f.Far) / 2 / float64(len(p.Feet))
			}
		case p.Place.OK():
			b.left, b.near = lane[p.Place.Lane()], depth[1]
			if p.Place.Front() {
				b.near = depth[0]
			}
			if p.Place == court.RightBack && (serves(a) == play.Value(p.Team.String()) || p.Role == play.Server) {
				b.near = 9.8
			}
		default:
			b.left = 2.4 + 2.1*float64(odd%3)
			b.near = 4.2 + 1.4*float64(odd/3%3)
			odd++
		}
		switch a.Get(play.Key{Fact: court.StandsInside, Of: p.ID}) {
		case court.OverTheLine:
			if !b.known {
				b.near = 0.2
			}
		case court.OutsideHalf, court.BetweenSize:
			if !b.known {
				b.left = 9.6
				if p.Place.OK() && p.Place.Lane() == 0 {
					b.left = -0.6
				}
			}
		}
		all = append(all, b)
	}
	settle(a, all)
	out := map[string]placed{}
	for _, b := range all {
		pl := placed{at: onCourt(b.p.Team, b.left, b.near), known: b.known}
		if len(b.p.Feet) > 1 {
			for _, f := range b.p.Feet {
				pl.feet = append(pl.feet, onCourt(b.p.Team, metres(f.Left+f.Right)/2, metres(f.Near+f.Far)/2))
			}
		}
		out[b.p.ID] = pl
	}
	return out
}

func metres(l court.Length) float64 { return float64(l) / float64(court.Metre) }

// onCourt is the point of a place, kept inside the picture.
func onCourt(t play.Team, left, near float64) Point {
	at := spot(t, near, 9-left)
	at.X = min(max(at.X, 24), width-24)
	at.Y = min(max(at.Y, 40), aboveH-58)
	return at
}

// settle moves those of whom no feet were given until each pair stands as was
// told. What cannot hold at once is left as it comes out.
func settle(a *court.Alignment, all []*body) {
	const rounds = 40
	for range rounds {
		moved := false
		for i, p := range all {
			for _, q := range all[i+1:] {
				if p.p.Team != q.p.Team || p.known && q.known {
					continue
				}
				of, turned := a.PairOf(p.p.ID, q.p.ID)
				x, y := p, q
				if turned {
					x, y = q, p
				}
				told := func(fs ...play.FactID) play.Value {
					i := slices.IndexFunc(fs, func(f play.FactID) bool { return a.Get(play.Key{Fact: f, Of: of}) != play.Unknown })
					if i < 0 {
						return play.Unknown
					}
					return a.Get(play.Key{Fact: fs[i], Of: of})
				}
				order := func(told, first, last play.Value, of func(*body) *float64) bool {
					lesser := func(p, q *body, by float64) bool { return less(of(p), of(q), by, p.known, q.known) }
					switch told {
					case first:
						return lesser(x, y, apart)
					case last:
						return lesser(y, x, apart)
					case court.LevelWith:
						return lesser(x, y, 0) || lesser(y, x, 0)
					}
					return false
				}
				depth := order(told(court.StandsDepth, court.AirDepth), court.Ahead, court.Behind, func(b *body) *float64 { return &b.near })
				across := order(told(court.StandsAcross, court.AirAcross), court.ToTheLeft, court.ToTheRight, func(b *body) *float64 { return &b.left })
				moved = moved || depth || across
			}
		}
		if !moved {
			return
		}
	}
}

// less moves x and y until x is less than y by a gap; whoever is known stays.
// It reports whether it moved anybody.
func less(x, y *float64, gap float64, xKnown, yKnown bool) bool {
	const enough = 0.01
	short := *x + gap - *y
	if short < enough {
		return false
	}
	switch {
	case xKnown && yKnown:
		return false
	case xKnown:
		*y += short
	case yKnown:
		*x -= short
	default:
		*x -= short / 2
		*y += short / 2
	}
	return true
}
