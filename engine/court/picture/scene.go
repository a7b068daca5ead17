package picture

// Color is a colour as #rrggbb; empty is none.
type Color string

// Style says how a shape is drawn.
type Style struct {
	Fill   Color
	Stroke Color
	Width  float64 // of the stroke, in pixels
	Dash   bool    // the outline is broken: it was not told
}

// Point is a place in a picture, in pixels from its left and its top.
type Point struct{ X, Y float64 }

// Shape is one thing drawn. The set is closed: Line, Path, Circle, Rect,
// Polygon, Label.
type Shape interface{ shape() }

// Line is a straight line.
type Line struct {
	From, To Point
	Style
}

// Path is an open run of straight lines.
type Path struct {
	Points []Point
	Style
}

// Circle is a circle.
type Circle struct {
	At     Point
	Radius float64
	Style
}

// Rect is a rectangle, its corners rounded by Round.
type Rect struct {
	At            Point // the corner on the left at the top
	Width, Height float64
	Round         float64
	Style
}

// Polygon is a closed run of straight lines.
type Polygon struct {
	Points []Point
	Style
}

// Anchor says where a label stands to its point.
type Anchor string

// The anchors.
const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// Label is one line of text. Its point is on the base line.
type Label struct {
	At     Point
	Text   string
	Size   float64 // in pixels
	Anchor Anchor
	Color  Color
	Bold   bool
}

func (Line) shape()    {}
func (Path) shape()    {}
func (Circle) shape()  {}
func (Rect) shape()    {}
func (Polygon) shape() {}
func (Label) shape()   {}

// Scene is a picture: its size in pixels, what it shows in words, and its
// shapes, the hindmost first.
type Scene struct {
	Width, Height float64
	Title         string
	Alt           string // what it shows, for those who do not see it
	Shapes        []Shape
}

func (s *Scene) add(shapes ...Shape) { s.Shapes = append(s.Shapes, shapes...) }

// below puts another scene under this one.
func (s *Scene) below(t Scene) {
	for _, x := range t.Shapes {
		s.add(moved(x, s.Height))
	}
	s.Height += t.Height
	s.Width = max(s.Width, t.Width)
}

// moved is a shape further down.
func moved(x Shape, dy float64) Shape {
	down := func(ps []Point) []Point {
		out := make([]Point, len(ps))
		for i, p := range ps {
			out[i] = Point{p.X, p.Y + dy}
		}
		return out
	}
	switch x := x.(type) {
	case Line:
		x.From.Y, x.To.Y = x.From.Y+dy, x.To.Y+dy
		return x
	case Path:
		x.Points = down(x.Points)
		return x
	case Circle:
		x.At.Y += dy
		return x
	case Rect:
		x.At.Y += dy
		return x
	case Polygon:
		x.Points = down(x.Points)
		return x
	case Label:
		x.At.Y += dy
		return x
	}
	panic("picture: a shape outside the closed set")
}
