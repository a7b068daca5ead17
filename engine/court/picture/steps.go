package picture

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

func hypot(x, y float64) float64 { return math.Sqrt(x*x + y*y) }

// Mark is what a ruling says of a picture: the event in which the fault
// exists, and the fault in words. The zero value marks nothing.
type Mark struct {
	Event string
	Words string
	// Book is the code by which players in their places are compared, pair by
	// pair; nil: no pair is marked. Of a play of the ball it is not used.
	Book *code.Book
}

// step is one event with its place in time: events of the same moment share a
// number, and one whose order was not told has a question mark.
type step struct {
	play.Event
	number string
	loose  bool // the order to the event before was not told, or is asked about
	same   bool // it is in the moment of the event before
}

// steps numbers the events in time order.
func steps(p *play.Rally) []step {
	out := make([]step, 0, len(p.Events))
	for i, e := range p.Events {
		s := step{Event: e}
		if i > 0 {
			k := play.Key{Fact: play.Order, Of: p.Pair(i - 1)}
			switch v := p.Get(k); {
			case v == play.Same:
				s.same = true
			case v == play.After: // it came before the one told first
				out = slices.Insert(out, len(out)-1, s)
				continue
			case p.Void(k):
				s.loose = true
			}
		}
		out = append(out, s)
	}
	n := 0
	for i := range out {
		if !out[i].same || i == 0 {
			n++
		}
		out[i].number = strconv.Itoa(n)
		if out[i].loose {
			out[i].number = "?"
			out[i-1].number = "?"
		}
	}
	return out
}

// who names the one who acts, short enough for a label.
func who(p *play.Rally, e play.Event) string {
	pl, ok := p.Player(e.Player)
	switch {
	case !ok:
		return ""
	case pl.Label != "":
		return strings.TrimSpace("#" + pl.Label + " " + string(pl.Role))
	case pl.Role != play.NoRole:
		return string(pl.Role)
	}
	return "player"
}

// rowOf is what was told of a player's row: in words, and whether it was told.
func rowOf(p *play.Rally, e play.Event) (string, bool) {
	switch v := p.Get(play.Key{Fact: play.Row, Of: e.Player}); {
	case p.Get(play.Key{Fact: play.IsLibero, Of: e.Player}) == play.Yes:
		return "libero", true
	case v == play.Front:
		return "front row", true
	case v == play.Back:
		return "back row", true
	}
	return "row?", false
}
