package court

import "strconv"

// Position is a place in the order of service, 1 to 6: 1 is right back, where
// the server is, and the numbers run against the clock as seen from above, 2
// right front, 3 centre front, 4 left front, 5 left back, 6 centre back. The
// zero value is no position.
type Position uint8

// The positions.
const (
	NoPosition Position = iota
	RightBack
	RightFront
	CentreFront
	LeftFront
	LeftBack
	CentreBack
)

// Positions lists the six.
func Positions() [6]Position { return [6]Position{1, 2, 3, 4, 5, 6} }

// OK reports whether it is one of the six.
func (p Position) OK() bool { return p >= RightBack && p <= CentreBack }

// Front reports whether the position is in the front row: 2, 3 and 4.
func (p Position) Front() bool { return p >= RightFront && p <= LeftFront }

// Partner is the corresponding position of the other row: 1 and 2, 6 and 3, 5
// and 4. No position has none.
func (p Position) Partner() Position {
	switch p {
	case RightBack:
		return RightFront
	case RightFront:
		return RightBack
	case CentreFront:
		return CentreBack
	case CentreBack:
		return CentreFront
	case LeftFront:
		return LeftBack
	case LeftBack:
		return LeftFront
	}
	return NoPosition
}

// Lane is the place across the court: 0 left, 1 centre, 2 right.
func (p Position) Lane() int {
	switch p {
	case LeftFront, LeftBack:
		return 0
	case CentreFront, CentreBack:
		return 1
	}
	return 2
}

// Next is the position that its player rotates to, one place with the clock: 2
// goes to 1, 1 to 6.
func (p Position) Next() Position {
	switch {
	case !p.OK():
		return NoPosition
	case p == RightBack:
		return CentreBack
	}
	return p - 1
}

func (p Position) String() string { return strconv.Itoa(int(p)) }

// Name is the position in words: "right back".
func (p Position) Name() string {
	if !p.OK() {
		return ""
	}
	return [...]string{"right back", "right front", "centre front", "left front", "left back", "centre back"}[p-1]
}

// Rotated is the order after n rotations with the clock: whoever was in 2 is in
// 1 after one. n may be negative.
func Rotated[T any](six [6]T, n int) [6]T {
	n = (n%6 + 6) % 6
	var out [6]T
	for i := range out {
		out[i] = six[(i+n)%6]
	}
	return out
}
