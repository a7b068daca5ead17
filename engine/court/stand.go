package court

// Tread is where one foot touches the floor, as seen by its team facing the
// net: how far its parts are from the team's own left side line (its outer edge)
// and from the axis of the centre line. A foot given by one point has Left equal to
// Right and Near equal to Far. Outside the left line Left is negative; beyond
// the centre line Near is.
type Tread struct {
	Left, Right Length // from the own left side line: its leftmost and its rightmost part
	Near, Far   Length // from the centre line: its foremost and its hindmost part
}

// At is a foot given by one point: so far from the own left side line, so far
// from the centre line.
func At(fromLeft, fromNet Length) Tread { return Tread{fromLeft, fromLeft, fromNet, fromNet} }

// Seen is a foot given by one point of a picture from above with A's half below
// the net and A's left at the left: x from the picture's left side line, d
// from the net, width the court's. B looks the other way.
func Seen(a bool, width, x, d Length) Tread {
	if !a {
		x = width - x
	}
	return At(x, d)
}

// Stand is one player of a six.
type Stand struct {
	// Feet that touch the floor; of a player in the air those that touched it
	// last. At most two are looked at. None: nobody knows where.
	Feet   []Tread
	Vacant bool   // nobody is in the position
	Libero bool   // the libero is in it, for the player replaced
	Label  string // a shirt number, may be empty
}

// Six is a team by position: index 0 is position 1.
type Six [6]Stand

// known reports whether there is somebody whose feet can be compared.
func (s *Stand) known() bool { return !s.Vacant && len(s.Feet) > 0 }

// extent is how far the feet reach; each bound is that of the foot that goes
// farthest that way.
func (s *Stand) extent() Tread {
	e := s.Feet[0]
	for _, f := range s.Feet[1:] {
		e.Left, e.Right = min(e.Left, f.Left), max(e.Right, f.Right)
		e.Near, e.Far = min(e.Near, f.Near), max(e.Far, f.Far)
	}
	return e
}

// foot is the foot for which key is least, the first of two alike.
func (s *Stand) foot(key func(Tread) (Length, Length)) Tread {
	out := s.Feet[0]
	least, then := key(out)
	for _, f := range s.Feet[1:] {
		if k, t := key(f); k < least || k == least && t < then {
			out, least, then = f, k, t
		}
	}
	return out
}

// Place is where a foot or a player is with regard to the own half.
type Place uint8

// The places. A line belongs to the court.
const (
	NoPlace    Place = iota
	Inside           // on the own half, or touching one of its lines
	OverCentre       // some part beyond the centre line, none beside the court
	Outside          // no part of one foot on the own half or its lines
)

// Where is the place of a player on a half so wide and so long, from the axis
// of the centre line to the end line. Each foot counts; the farther out decides.
func (s *Stand) Where(width, length Length) Place {
	if !s.known() {
		return NoPlace
	}
	out := Inside
	for _, f := range s.Feet {
		switch {
		case f.Right < 0 || f.Left > width || f.Near > length:
			return Outside
		case f.Near < 0:
			out = OverCentre
		}
	}
	return out
}
