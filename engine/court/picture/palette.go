package picture

import "example.org/netpost/engine/play"

// The colours. The sides are blue circles and rust squares: they differ for
// every kind of sight, and by shape and label where there is no colour at all.
const (
	paper Color = "#FBF9F5"
	ink   Color = "#22262B"
	faint Color = "#6A6F76"
	floor Color = "#E9E1D3"
	lines Color = "#8A7F6C"
	net   Color = "#3D434A"
	ofA   Color = "#1D5C9E"
	ofB   Color = "#A4471A"
	ball  Color = "#FFFFFF"
	wrong Color = "#B0123B"
)

func colorOf(t play.Team) Color {
	switch t {
	case play.A:
		return ofA
	case play.B:
		return ofB
	}
	return faint
}

// token is the mark of a player: a circle for A, a square for B. Dashed where
// the place was not told.
func token(t play.Team, at Point, r float64, loose bool) Shape {
	st := Style{Fill: colorOf(t), Stroke: ink, Width: 1.5}
	if loose {
		st.Fill, st.Stroke, st.Dash = paper, colorOf(t), true
	}
	if t == play.B {
		return Rect{At: Point{at.X - r, at.Y - r}, Width: 2 * r, Height: 2 * r, Round: 2, Style: st}
	}
	return Circle{At: at, Radius: r, Style: st}
}

// burst is a star: something was touched here that is no ball.
func burst(at Point, r float64, c Color) Shape {
	var ps []Point
	for i := range 16 {
		d := r
		if i%2 == 1 {
			d = r * 0.45
		}
		ps = append(ps, Point{at.X + d*cos16[i], at.Y + d*cos16[(i+12)%16]})
	}
	return Polygon{Points: ps, Style: Style{Fill: c, Stroke: paper, Width: 1}}
}

// cos16 are the cosines of the sixteenths of a turn: the sine of one is the
// cosine of the twelfth after it.
var cos16 = [16]float64{1, 0.924, 0.707, 0.383, 0, -0.383, -0.707, -0.924, -1, -0.924, -0.707, -0.383, 0, 0.383, 0.707, 0.924}

// arrow is a line with a head.
func arrow(from, to Point, c Color, loose bool) []Shape {
	dx, dy := to.X-from.X, to.Y-from.Y
	d := hypot(dx, dy)
	if d < 1 {
		return nil
	}
	dx, dy = dx/d, dy/d
	const head = 9.0
	back := Point{to.X - head*dx, to.Y - head*dy}
	return []Shape{
		Line{from, back, Style{Stroke: c, Width: 2, Dash: loose}},
		Polygon{[]Point{to, {back.X - 4*dy, back.Y + 4*dx}, {back.X + 4*dy, back.Y - 4*dx}}, Style{Fill: c}},
	}
}

// ownSide heads a side of the court by what it is called.
func ownSide(name string) string {
	switch name {
	case "us":
		return "our side"
	case "them":
		return "their side"
	case "serving", "receiving":
		return name + " side"
	}
	return name + "'s side"
}

func text(at Point, size float64, a Anchor, c Color, s string) Label {
	return Label{At: at, Text: s, Size: size, Anchor: a, Color: c}
}
