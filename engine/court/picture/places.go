package picture

import (
	"fmt"
	"strings"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// mostNamed is how many breaches are named below the court.
const mostNamed = 4

// places draws an alignment from above; false where nobody in it has a place.
func places(a *court.Alignment, m Mark) (Scene, bool) {
	l := layout(a)
	if len(l) == 0 {
		return Scene{}, false
	}
	header := func(t play.Team) string {
		n := t.String()
		if c := a.Called(t); len(c) > 1 {
			n = c[1]
		}
		if n != "serving" && serves(a) == play.Value(t.String()) {
			return ownSide(n) + ", serving"
		}
		return ownSide(n)
	}
	s := ground(header(play.A), header(play.B))
	var all []Breach
	if m.Book != nil {
		all = Breaches(a, m.Book)
	}
	for _, b := range all { // under the players
		if b.Other != "" {
			s.add(Line{l[b.Who].at, l[b.Other].at, Style{Stroke: wrong, Width: 4}})
		}
	}
	for _, p := range a.People {
		if at, ok := l[p.ID]; ok {
			s.add(player(a, p, at)...)
			if has(all, p.ID) {
				s.add(Circle{at.at, 18, Style{Stroke: wrong, Width: 3}})
			}
		}
	}
	for _, b := range all { // and a cross between them, for those who see no red
		if b.Other != "" {
			s.add(cross(between(l[b.Who].at, l[b.Other].at))...)
		}
	}
	legend(&s, l)
	words := m.Words
	if len(all) > 0 && words == "" {
		words = "fault: out of position"
	}
	for i, b := range all {
		if i == mostNamed {
			s.note(fmt.Sprintf("and %d more", len(all)-i))
			break
		}
		s.note(a.Clause(b.Key, a.Get(b.Key)))
	}
	s.Title = "Where the players stood"
	s.Alt = placesAlt(a, l, words, all)
	return s, true
}

// note adds a line of words below, about what is marked.
func (s *Scene) note(words string) {
	y := s.Height
	s.Height += 22
	s.Shapes[0] = Rect{Point{0, 0}, s.Width, s.Height, 0, Style{Fill: paper}}
	s.add(cross(Point{48, y + 2})...)
	s.add(text(Point{62, y + 6}, 13, Start, ink, words))
}

func legend(s *Scene, l map[string]placed) {
	y := s.Height - 22
	s.add(
		token(play.A, Point{42, y}, 8, false), nose(play.A, Point{42, y}, 8, ofA), text(Point{60, y + 4}, 14, Start, ink, "front row: points to the net"),
		token(play.A, Point{290, y}, 8, false), text(Point{304, y + 4}, 14, Start, ink, "back row"),
	)
	for _, p := range l {
		if !p.known {
			s.add(token(play.A, Point{400, y}, 8, true), text(Point{414, y + 4}, 14, Start, ink, "dashed: where exactly was not told"))
			return
		}
	}
}

// cross marks what is at fault.
func cross(at Point) []Shape {
	st := Style{Stroke: wrong, Width: 3}
	return []Shape{
		Circle{at, 9, Style{Fill: paper, Stroke: wrong, Width: 2}},
		Line{Point{at.X - 4, at.Y - 4}, Point{at.X + 4, at.Y + 4}, st},
		Line{Point{at.X - 4, at.Y + 4}, Point{at.X + 4, at.Y - 4}, st},
	}
}

// between is where the cross of a pair is drawn: in the middle, and beside it
// where that would hide whom it is about.
func between(a, b Point) Point {
	m := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	dx, dy := b.X-a.X, b.Y-a.Y
	d := hypot(dx, dy)
	switch {
	case d >= 50:
		return m
	case d < 1:
		return Point{m.X + 24, m.Y - 24}
	}
	return Point{m.X + 30*dy/d, m.Y - 30*dx/d}
}

// nose points from a token of a front-row player to the net.
func nose(t play.Team, at Point, r float64, c Color) Shape {
	d := -dir(t) // towards the net
	return Polygon{[]Point{{at.X + d*(r+7), at.Y}, {at.X + d*(r+1), at.Y - 5}, {at.X + d*(r+1), at.Y + 5}}, Style{Fill: c}}
}

// player draws one in the place: the position as a number, the row as a shape,
// the role or the shirt number below.
func player(a *court.Alignment, p court.Person, at placed) []Shape {
	n, c := p.Place.String(), paper
	if !at.known {
		c = colorOf(p.Team)
	}
	if !p.Place.OK() {
		n = "?"
	}
	var out []Shape
	for _, f := range at.feet {
		out = append(out, Circle{f, 4, Style{Fill: colorOf(p.Team), Stroke: ink, Width: 1}})
	}
	out = append(out, token(p.Team, at.at, 12, !at.known))
	if p.Place.Front() {
		out = append(out, nose(p.Team, at.at, 12, colorOf(p.Team)))
	}
	out = append(out, Label{At: Point{at.at.X, at.at.Y + 4.5}, Text: n, Size: 13, Anchor: Middle, Color: c, Bold: true})
	name := string(p.Role)
	if p.Label != "" {
		name = strings.TrimSpace("#" + p.Label + " " + name)
	}
	switch {
	case p.Vacant:
		name = "vacant"
	case !p.Place.OK():
		name = strings.TrimSpace(name + " position?")
	case p.Place == court.RightBack && serves(a) == play.Value(p.Team.String()):
		name = strings.TrimSpace(name + " (serves)")
	}
	if a.Get(play.Key{Fact: court.InTheAir, Of: p.ID}) == play.Yes {
		name = strings.TrimSpace(name + " in the air")
	}
	if name != "" {
		out = append(out, text(Point{at.at.X, at.at.Y + 26}, 13, Middle, ink, name))
	}
	return out
}

// placesAlt says what the picture shows.
func placesAlt(a *court.Alignment, l map[string]placed, words string, all []Breach) string {
	var who []string
	for _, t := range []play.Team{play.A, play.B} {
		n := 0
		for _, p := range a.People {
			if _, ok := l[p.ID]; ok && p.Team == t {
				n++
			}
		}
		if n > 0 {
			c := a.Called(t)
			who = append(who, fmt.Sprintf("%d of %s", n, c[min(1, len(c)-1)]))
		}
	}
	s := "Where the players stood at the service, from above: " + strings.Join(who, " and ") + "."
	if words != "" {
		s += " Marked: " + words
		for i, b := range all {
			sep := "; "
			if i == 0 {
				sep = ": "
			}
			s += sep + a.Clause(b.Key, a.Get(b.Key))
		}
		s += "."
	}
	for _, p := range l {
		if !p.known {
			return s + " What was not told has a broken outline."
		}
	}
	return s
}
