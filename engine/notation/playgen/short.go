package playgen

import (
	"slices"
	"strconv"

	"example.org/netpost/engine/play"
)

// step is one event of the alphabet of short rallies.
type step struct {
	kind   play.Kind
	action play.Action
	team   play.Team
	row    play.Value
	place  play.Value
	height play.Value
}

// steps is the alphabet: by either side, by a front-row or back-row player of
// no told role, a touch or a block with the ball on the own side, in the plane
// or beyond, wholly above the net or not; or a touch of the net.
var steps = func() []step {
	var out []step
	for _, team := range []play.Team{play.A, play.B} {
		for _, row := range []play.Value{play.Front, play.Back} {
			for _, action := range []play.Action{play.Touch, play.Block} {
				for _, place := range []play.Value{play.Own, play.Plane, play.Beyond} {
					for _, height := range []play.Value{play.Above, play.NotAbove} {
						out = append(out, step{play.Contact, action, team, row, place, height})
					}
				}
			}
			out = append(out, step{kind: play.NetTouch, team: team, row: row})
		}
	}
	return out
}()

// Count is the number of short rallies of one event up to length events: 52
// for 1, 2756 for 2, 143364 for 3.
func Count(length int) int {
	n, total := 1, 0
	for range length {
		n *= len(steps)
		total += n
	}
	return total
}

// Short yields every short rally of one event up to length events, shortest
// first, until yield returns false. Each event has a player of its own; place
// and height are told of each contact, the opening and the order are not.
func Short(length int, yield func(*play.Rally) bool) {
	var grow func(p *play.Rally, more int) bool
	grow = func(p *play.Rally, more int) bool {
		if more == 0 {
			return yield(p)
		}
		for _, s := range steps {
			if !grow(s.after(p), more-1) {
				return false
			}
		}
		return true
	}
	for n := 1; n <= length; n++ {
		if !grow(&play.Rally{}, n) {
			return
		}
	}
}

// after is the play with the step told as its last event.
func (s step) after(p *play.Rally) *play.Rally {
	n := strconv.Itoa(len(p.Events) + 1)
	q := p.With(play.Key{Fact: play.Row, Of: "p" + n}, s.row)
	q.Players = append(slices.Clone(p.Players), play.Player{ID: "p" + n, Team: s.team})
	q.Events = append(slices.Clone(p.Events), play.Event{
		ID: "e" + n, Kind: s.kind, Action: s.action, Team: s.team, Player: "p" + n,
	})
	if s.kind != play.Contact {
		return q
	}
	return q.With(play.Key{Fact: play.Place, Of: "e" + n}, s.place).
		With(play.Key{Fact: play.Height, Of: "e" + n}, s.height)
}
