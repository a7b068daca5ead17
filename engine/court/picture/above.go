package picture

import (
	"example.org/netpost/engine/play"
)

// The view from above, in pixels: 18 m by 9 m of court and the free zone
// around, A's court on the left.
const (
	meter  = 30.0
	courtX = planeX - 9*meter
	courtY = 64.0
	courtW = 18 * meter
	courtH = 9 * meter
	aboveH = courtY + courtH + 66
)

// ground draws the empty court, with a heading for each side.
func ground(headA, headB string) Scene {
	s := Scene{Width: width, Height: aboveH}
	line := Style{Stroke: lines, Width: 2}
	s.add(
		Rect{Point{0, 0}, width, aboveH, 0, Style{Fill: paper}},
		Rect{Point{courtX, courtY}, courtW, courtH, 0, Style{Fill: floor, Stroke: lines, Width: 2}},
	)
	for _, x := range []float64{planeX - 3*meter, planeX + 3*meter} {
		s.add(Line{Point{x, courtY}, Point{x, courtY + courtH}, line})
	}
	s.add(
		Line{Point{planeX, courtY - 14}, Point{planeX, courtY + courtH + 14}, Style{Stroke: net, Width: 4}},
		Circle{Point{planeX, courtY}, 4, Style{Fill: wrong}},
		Circle{Point{planeX, courtY + courtH}, 4, Style{Fill: wrong}},
		text(Point{30, 22}, 13, Start, faint, "From above"),
		text(Point{courtX + 4.5*meter, courtY - 12}, 14, Middle, ofA, headA),
		text(Point{courtX + 13.5*meter, courtY - 12}, 14, Middle, ofB, headB),
	)
	return s
}

// spot is a place on the court: meters from the net on the own side, and from
// the side line on the right of one who faces the net.
func spot(t play.Team, fromNet, fromRight float64) Point {
	if t == play.A {
		return Point{planeX - fromNet*meter, courtY + (9-fromRight)*meter}
	}
	return Point{planeX + fromNet*meter, courtY + fromRight*meter}
}

// above draws a play from above; false where nobody and no ball has a place.
func above(p *play.Rally, m Mark) (Scene, bool) {
	s := ground(ownSide(p.Name(play.A)), ownSide(p.Name(play.B)))
	v := &topView{p: p, s: &s, place: map[string]Point{}}
	var path []Point
	var after []Shape
	loose := false
	for _, e := range steps(p) {
		at, known, ok := v.step(e)
		if !ok {
			continue
		}
		if ballEvent(e.Kind) {
			if n := len(path); n > 0 && !e.same {
				s.add(arrow(path[n-1], at, ink, loose || e.loose || !known)...)
			}
			path = append(path, at)
			loose = !known
		}
		if e.ID == m.Event && m.Event != "" {
			after = append(after, Circle{at, 21, Style{Stroke: wrong, Width: 3}})
		}
	}
	s.add(v.tokens...)
	s.add(after...)
	s.add(
		token(play.A, Point{42, aboveH - 22}, 7, false), text(Point{56, aboveH - 18}, 14, Start, ink, p.Name(play.A)),
		token(play.B, Point{142, aboveH - 22}, 7, false), text(Point{156, aboveH - 18}, 14, Start, ink, p.Name(play.B)),
		token(play.A, Point{242, aboveH - 22}, 7, true), text(Point{256, aboveH - 18}, 14, Start, ink, "dashed: the place was not told"),
	)
	return s, len(v.tokens) > 0 || len(path) > 0
}

func ballEvent(k play.Kind) bool {
	return k == play.Contact || k == play.Serve || k == play.Land || k == play.Strike || k == play.Cross
}

type topView struct {
	p      *play.Rally
	s      *Scene
	place  map[string]Point
	count  [3]int
	tokens []Shape
}

// step is where an event is, whether that was told, and whether it has a place.
func (v *topView) step(e step) (at Point, known, ok bool) {
	get := func(f play.FactID) play.Value { return v.p.Get(play.Key{Fact: f, Of: e.ID}) }
	to := e.Team
	switch get(play.Side) {
	case play.ValueA:
		to = play.A
	case play.ValueB:
		to = play.B
	}
	switch e.Kind {
	case play.Land:
		if to == play.NoTeam {
			return Point{}, false, false
		}
		at, known = spot(to, 7.2, 3), true
		words := "in"
		switch get(play.Lands) {
		case play.Out:
			at, words = spot(to, 9.8, 3), "out"
		case play.In:
		default:
			at, words, known = spot(to, 9, 3), "in or out?", false
		}
		v.s.add(Circle{at, 8, Style{Fill: ball, Stroke: ink, Width: 1.5, Dash: !known}}, text(Point{at.X, at.Y + 22}, 13, Middle, ink, e.number+" "+words))
		return at, known, true
	case play.Cross:
		at, known = Point{planeX, courtY + 4.5*meter}, get(play.How) != play.Unknown
		if get(play.How) == play.OutsideAnt {
			at.Y = courtY - 20
		}
		return at, known, true
	case play.Strike:
		switch get(play.Struck) {
		case play.Antenna:
			at = Point{planeX, courtY}
		case play.NetBand:
			at = Point{planeX, courtY + 3*meter}
		default:
			if to == play.NoTeam {
				return Point{}, false, false
			}
			at = spot(to, 5, 8)
		}
		v.s.add(burst(at, 10, ink), text(Point{at.X, at.Y - 13}, 13, Middle, ink, e.number+" ball touches "+string(get(play.Struck))))
		return at, true, true
	case play.Whistle, play.Intrusion:
		return Point{}, false, false
	}
	if e.Team == play.NoTeam {
		return Point{}, false, false
	}
	return v.player(e)
}

// player is where one stands: the zone by the row or the take-off as told, else
// on the attack line with a broken outline.
func (v *topView) player(e step) (Point, bool, bool) {
	id := e.Player
	if id == "" {
		id = "of " + e.ID
	}
	if at, ok := v.place[id]; ok {
		return at, true, true
	}
	get := func(f play.FactID, of string) play.Value { return v.p.Get(play.Key{Fact: f, Of: of}) }
	fromNet, known := 3.0, true
	switch {
	case e.Kind == play.Serve:
		fromNet = 9.7
	case get(play.TakeOff, e.ID) == play.Behind:
		fromNet = 3.8
	case get(play.TakeOff, e.ID) == play.InFront:
		fromNet = 2.2
	case get(play.Place, e.ID) == play.Plane, get(play.Place, e.ID) == play.Beyond, e.Kind != play.Contact, e.Action == play.Block, e.Action == play.Press:
		fromNet = 0.9
	case get(play.Row, e.Player) == play.Front:
		fromNet = 1.8
	case get(play.Row, e.Player) == play.Back:
		fromNet = 5.8
	default:
		known = false
	}
	n := v.count[e.Team]
	v.count[e.Team]++
	across := []float64{4.5, 6.6, 2.4, 8.2, 0.8, 5.5, 3.5}[n%7]
	at := spot(e.Team, fromNet, across)
	v.place[id] = at
	name := who(v.p, e.Event)
	if name == "" {
		name = "somebody"
	}
	// Close to the net the words go outward, so that those of the two sides do
	// not run into one another.
	x, anchor := at.X, Middle
	if fromNet < 2 {
		x, anchor = at.X-12*dir(e.Team), Start
		if e.Team == play.A {
			anchor = End
		}
	}
	v.tokens = append(v.tokens, token(e.Team, at, 12, !known))
	c := paper
	if !known {
		c = colorOf(e.Team)
	}
	v.tokens = append(v.tokens, Label{At: Point{at.X, at.Y + 4.5}, Text: e.number, Size: 13, Anchor: Middle, Color: c, Bold: true},
		text(Point{x, at.Y + 26}, 13, anchor, ink, name))
	if e.Player != "" {
		row, told := rowOf(v.p, e.Event)
		c := ink
		if !told {
			c = faint
		}
		v.tokens = append(v.tokens, text(Point{x, at.Y + 40}, 12, anchor, c, row))
	}
	return at, known, true
}
