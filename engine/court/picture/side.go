package picture

import (
	"fmt"
	"slices"

	"example.org/netpost/engine/play"
)

// The side view, in pixels: the plane of the net in the middle, A's side on
// the left.
const (
	width   = 720.0
	planeX  = width / 2
	topY    = 118.0 // the top of the net
	bandY   = 172.0 // the bottom of the net
	groundY = 262.0
	sideH   = 318.0
	nearest = 66.0 // of a player to the plane
	column  = 72.0 // from one player to the next
	columns = 4    // of each side
	ballR   = 11.0
)

// side draws a play at the net from the side; false where nothing in it is at
// the net.
func side(p *play.Rally, m Mark) (Scene, bool) {
	s := Scene{Width: width, Height: sideH}
	s.add(
		Rect{Point{0, 0}, width, sideH, 0, Style{Fill: paper}},
		Rect{Point{30, groundY}, width - 60, 8, 0, Style{Fill: floor}},
		Line{Point{30, groundY}, Point{width - 30, groundY}, Style{Stroke: lines, Width: 2}},
		Line{Point{planeX, topY}, Point{planeX, groundY}, Style{Stroke: lines, Width: 1, Dash: true}},
		Rect{Point{planeX - 3, topY}, 6, bandY - topY, 0, Style{Fill: net}},
		Line{Point{planeX, topY - 44}, Point{planeX, topY}, Style{Stroke: wrong, Width: 2, Dash: true}},
		text(Point{30, 22}, 13, Start, faint, "From the side, along the net"),
		text(Point{96, 44}, 14, Middle, ofA, ownSide(p.Name(play.A))),
		text(Point{width - 96, 44}, 14, Middle, ofB, ownSide(p.Name(play.B))),
	)
	v := &sideView{p: p, s: &s, m: m, place: map[string]float64{}}
	shown := 0
	for _, e := range steps(p) {
		if v.step(e) {
			shown++
		}
	}
	if n := len(v.left); n > 0 {
		s.add(text(Point{width - 30, 22}, 14, End, faint, fmt.Sprintf("%d more not drawn here", n)))
	}
	return s, shown > 0 && v.atNet
}

type sideView struct {
	p     *play.Rally
	s     *Scene
	m     Mark
	place map[string]float64 // of a player, by id
	count [3]int             // players of a side that have a place
	balls []Point            // where a ball is drawn
	left  []string           // events without room
	atNet bool
}

// dir is -1 on A's side, 1 on B's.
func dir(t play.Team) float64 {
	if t == play.A {
		return -1
	}
	return 1
}

func (v *sideView) get(f play.FactID, e play.Event) play.Value {
	return v.p.Get(play.Key{Fact: f, Of: e.ID})
}

// step draws one event; false where it has no place in this view.
func (v *sideView) step(e step) bool {
	switch e.Kind {
	case play.Contact, play.Attempt, play.Reach, play.NetTouch, play.Line, play.Bump, play.Support:
		x, ok := v.player(e.Event)
		if !ok {
			v.left = append(v.left, e.ID)
			return false
		}
		v.atNet = v.atNet || e.Kind != play.Contact || v.get(play.Place, e.Event) != play.Unknown || v.get(play.Height, e.Event) != play.Unknown ||
			e.Action == play.Block || e.Action == play.Press || e.Action.Attacking()
		v.act(e, x)
	case play.Land:
		t := v.sideOf(e.Event)
		if t == play.NoTeam {
			v.left = append(v.left, e.ID) // on neither side as far as was told
			return false
		}
		x := planeX + dir(t)*270
		words := string(v.get(play.Lands, e.Event))
		if words == "" {
			words = "in or out?"
		}
		v.ball(e, Point{x, groundY - ballR}, v.get(play.Lands, e.Event) == play.Unknown)
		v.s.add(text(Point{x, groundY + 24}, 14, Middle, ink, "lands "+words))
	case play.Cross:
		to := v.sideOf(e.Event)
		if to == play.NoTeam {
			return false
		}
		y := topY - 58
		if h := v.get(play.How, e.Event); h == play.Under {
			y = bandY + 40
		} else if h == play.IntoNet {
			y = topY + 24
		}
		from, at := Point{planeX - dir(to)*60, y}, Point{planeX + dir(to)*60, y}
		if v.get(play.How, e.Event) == play.IntoNet {
			at.X = planeX - dir(to)*8
		}
		v.s.add(arrow(from, at, ink, v.get(play.How, e.Event) == play.Unknown)...)
		v.numbered(e, Point{from.X - dir(to)*14, y})
	default:
		return false
	}
	return true
}

func (v *sideView) sideOf(e play.Event) play.Team {
	switch v.get(play.Side, e) {
	case play.ValueA:
		return play.A
	case play.ValueB:
		return play.B
	}
	return e.Team
}

// player gives a player a column of the own side; false where there is none
// left. Whom the words do not tell from others has one for each event.
func (v *sideView) player(e play.Event) (float64, bool) {
	if e.Team == play.NoTeam {
		return 0, false
	}
	id := e.Player
	if id == "" {
		id = "of " + e.ID
	}
	if x, ok := v.place[id]; ok && v.count[e.Team] == columns {
		return x, true
	}
	n := v.count[e.Team]
	if n == columns {
		return 0, false
	}
	v.count[e.Team]++
	x := planeX + dir(e.Team)*(nearest+float64(n)*column)
	v.place[id] = x
	name := who(v.p, e)
	if name == "" {
		name = "somebody"
	}
	v.s.add(text(Point{x, groundY + 24}, 14, Middle, ink, name))
	if e.Player != "" {
		row, told := rowOf(v.p, e)
		c := ink
		if !told {
			c = faint
		}
		v.s.add(text(Point{x, groundY + 40}, 13, Middle, c, row))
	}
	return x, true
}

// act draws what one does at the net.
func (v *sideView) act(e step, x float64) {
	d := dir(e.Team)
	hands, told := v.hands(e)
	feet := groundY
	if hands <= topY {
		feet -= 26 // in the air
	}
	hand := Point{x - d*14, hands}
	var at Point
	switch e.Kind {
	case play.Contact:
		at = v.ballAt(e, x, hands)
		hand = Point{at.X + d*(ballR+1), at.Y + 3}
	case play.Reach:
		hand = Point{planeX - d*24, topY - 12}
		at = hand
	case play.NetTouch:
		at = Point{planeX + d*3, topY + 22}
		if v.get(play.Part, e.Event) == play.PartAntenna {
			at = Point{planeX, topY - 24}
		}
		hand = at
	case play.Line:
		at = Point{planeX - d*10, groundY - 4}
	case play.Bump:
		at = Point{planeX - d*8, groundY - 60}
	default:
		at = hand
	}
	v.body(e.Team, x, feet, hand, told)
	switch e.Kind {
	case play.Contact:
		v.ball(e, at, v.get(play.Place, e.Event) == play.Unknown || v.get(play.Height, e.Event) == play.Unknown)
	case play.NetTouch, play.Bump:
		v.s.add(burst(at, 11, colorOf(e.Team)))
		v.numbered(e, Point{at.X + d*20, at.Y - 10})
	case play.Line:
		far := 16.0
		if v.get(play.Extent, e.Event) == play.WhollyOver {
			far = 40
		}
		from := planeX + d*10
		if far == 40 {
			from = planeX - d*10
		}
		v.s.add(Line{Point{from, groundY - 4}, Point{planeX - d*far, groundY - 4}, Style{Stroke: colorOf(e.Team), Width: 7, Dash: v.get(play.Extent, e.Event) == play.Unknown}})
		part := string(v.get(play.BodyPart, e.Event))
		if part == "" {
			part = "which part?"
		}
		v.s.add(text(Point{planeX - d*28, groundY - 14}, 13, Middle, ink, part))
		v.numbered(e, Point{planeX - d*56, groundY - 18})
	case play.Attempt, play.Reach, play.Support:
		words := map[play.Kind]string{play.Attempt: "no touch", play.Reach: "beyond the net", play.Support: "holds on"}[e.Kind]
		v.s.add(text(Point{hand.X + d*4, hand.Y - 12}, 13, Middle, ink, words))
		v.numbered(e, Point{hand.X + d*22, hand.Y + 4})
	}
	v.mark(e, at)
}

// hands is how high somebody's hands are, and whether that was told.
func (v *sideView) hands(e step) (float64, bool) {
	switch v.get(play.ReachHeight, e.Event) {
	case play.Above:
		return topY - 12, true
	case play.Below:
		return topY + 18, true
	}
	switch e.Kind {
	case play.Contact:
		if h := v.get(play.Height, e.Event); h == play.Above {
			return topY - 20, true
		}
		if e.Action == play.Block || e.Action.Attacking() || e.Action == play.Press {
			return topY - 2, false
		}
		return topY + 44, false
	case play.Attempt, play.Reach:
		return topY - 2, false
	}
	return topY + 40, true
}

// ballAt is where the ball of a contact is drawn: where it was told to be, else
// at the hands of the one who plays it.
func (v *sideView) ballAt(e step, x, hands float64) Point {
	d := dir(e.Team)
	at := Point{x - d*26, hands - 4}
	switch v.get(play.Place, e.Event) {
	case play.Own:
		at.X = min(max(x-d*26, planeX-330), planeX+330)
		if diff := (at.X - planeX) * d; diff < 26 {
			at.X = planeX + d*26
		}
	case play.Plane:
		at.X = planeX + d*3
	case play.Beyond:
		at.X = planeX - d*30
	}
	switch v.get(play.Height, e.Event) {
	case play.Above:
		at.Y = topY - ballR - 7
	case play.NotAbove:
		at.Y = topY + 5
	}
	// A contact of the same moment is of the same ball; a later one is drawn
	// clear of it.
	for !e.same && slices.ContainsFunc(v.balls, func(b Point) bool { return hypot(b.X-at.X, b.Y-at.Y) < 2*ballR }) {
		at.Y -= 2*ballR + 3
	}
	return at
}

func (v *sideView) ball(e step, at Point, loose bool) {
	v.balls = append(v.balls, at)
	st := Style{Fill: ball, Stroke: ink, Width: 1.5, Dash: loose}
	v.s.add(Circle{at, ballR, st})
	v.s.add(Label{At: Point{at.X, at.Y + 4.5}, Text: e.number, Size: 13, Anchor: Middle, Color: ink, Bold: true})
	v.mark(e, at)
}

func (v *sideView) numbered(e step, at Point) {
	v.s.add(Circle{at, 8, Style{Fill: paper, Stroke: colorOf(e.Team), Width: 1.5}},
		Label{At: Point{at.X, at.Y + 4}, Text: e.number, Size: 11, Anchor: Middle, Color: ink, Bold: true})
}

// body draws a player: head, trunk, legs, arms to the hand. The head has the
// shape of the side.
func (v *sideView) body(t play.Team, x, feet float64, hand Point, told bool) {
	c := colorOf(t)
	head, hip := Point{x, feet - 96}, Point{x, feet - 42}
	limb := Style{Stroke: c, Width: 3}
	reach := limb
	reach.Dash = !told
	v.s.add(
		Line{Point{x, feet - 86}, hip, limb},
		Line{hip, Point{x - 9, feet}, limb},
		Line{hip, Point{x + 9, feet}, limb},
		Line{Point{x, feet - 78}, hand, reach},
		token(t, head, 9, false),
	)
}

// mark rings the event in which the fault exists.
func (v *sideView) mark(e step, at Point) {
	if v.m.Event == "" || e.ID != v.m.Event {
		return
	}
	v.s.add(Circle{at, ballR + 8, Style{Stroke: wrong, Width: 3}})
	v.s.add(Label{At: Point{planeX, 42}, Text: v.m.Words, Size: 14, Anchor: Middle, Color: wrong, Bold: true})
	v.m.Event = ""
}
