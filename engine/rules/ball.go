package rules

import (
	"example.org/netpost/engine/play"
)

// touches are the contacts and the service hit of one group.
func touches(group []play.Event) []play.Event {
	var out []play.Event
	for _, e := range group {
		if e.Kind == play.Contact || e.Kind == play.Serve {
			out = append(out, e)
		}
	}
	return out
}

// before is the group of touches last before group g, and its number; -1 when
// the opening comes before.
func (w *Walk) before(g int) ([]play.Event, int) {
	for i := g - 1; i >= 0; i-- {
		if t := touches(w.seq[i]); len(t) > 0 {
			return t, i
		}
	}
	return nil, -1
}

// group is the number of the group that holds an event.
func (w *Walk) group(e play.Event) int {
	for i, g := range w.seq {
		for _, f := range g {
			if f.ID == e.ID {
				return i
			}
		}
	}
	return -1
}

// joust is the contact by an opponent in the same moment, if there is one.
func (w *Walk) joust(e play.Event) (play.Event, bool) {
	if e.Kind != play.Contact {
		return play.Event{}, false
	}
	for _, f := range w.seq[w.group(e)] {
		if f.Kind == play.Contact && f.Team != e.Team {
			return f, true
		}
	}
	return play.Event{}, false
}

// both reports whether a group of touches holds both teams.
func both(t []play.Event) bool {
	for _, e := range t {
		if e.Team != t[0].Team {
			return true
		}
	}
	return false
}

// fromOpponents reports whether the ball came to a contact, or to an attempt
// to block, from the other side: the last touch was an opponent's, or an
// opponent touches it in the same moment.
func (w *Walk) fromOpponents(e play.Event) bool {
	if _, ok := w.joust(e); ok {
		return true
	}
	t, g := w.before(w.group(e))
	if g < 0 {
		return w.Get(play.Has, "") != play.Value(e.Team.String())
	}
	if both(t) {
		return e.Action == play.Block
	}
	return t[0].Team != e.Team
}

// isBlock reports whether a contact is a block: a ball that comes from the
// opponents, touched close to the net by a player reaching higher than its
// top. The height of the ball does not matter.
func (w *Walk) isBlock(e play.Event) bool {
	if v, ok := w.block[e.ID]; ok {
		return v
	}
	v := w.judgeBlock(e)
	if w.block == nil {
		w.block = map[string]bool{}
	}
	w.block[e.ID] = v
	return v
}

func (w *Walk) judgeBlock(e play.Event) bool {
	if e.Kind != play.Contact || e.Action.Attacking() || !w.fromOpponents(e) {
		return false
	}
	if _, ok := w.joust(e); !ok {
		switch e.Action {
		case play.Pass, play.Dig, play.Set:
			return false
		}
		if pl, _ := w.Rally.Player(e.Player); pl.Role == play.Defender {
			return false
		}
	}
	return w.Is(play.ReachHeight, e.ID, play.Above)
}

// hits is the number of team hits that a team has used before group g. When
// the count reaches back to the opening it is open: the opening's own count
// is still to be added.
func (w *Walk) hits(t play.Team, g int) (n int, open bool) {
	for i := g - 1; i >= 0; i-- {
		c := touches(w.seq[i])
		if len(c) == 0 {
			continue
		}
		if c[0].Kind == play.Serve || c[0].Team != t || both(c) {
			return n, false
		}
		if c[0].Number > 0 {
			return n + c[0].Number, false
		}
		if w.isBlock(c[0]) {
			return n, false
		}
		n += w.size(c)
	}
	if w.Get(play.Has, "") != play.Value(t.String()) {
		return n, false
	}
	return n, true
}

// size is how many team hits the touches of one moment by one team count for.
func (w *Walk) size(c []play.Event) int {
	if len(c) > 1 && w.Param("hits.teammates-simultaneous") == "two" {
		return len(c)
	}
	return 1
}

// number is which of its team's hits a contact is, 1 for the first.
func (w *Walk) number(e play.Event) int {
	if e.Number > 0 {
		return e.Number
	}
	n, open := w.hits(e.Team, w.group(e))
	if open {
		n += int(w.Get(play.Used, "")[0] - '0')
	}
	return n + 1
}

// spent reports whether a team had used its three hits before a contact.
func (w *Walk) spent(e play.Event) bool {
	if e.Number > 0 {
		return e.Number > w.most()
	}
	size := 1
	if own := w.teammates(e); len(own) > 0 {
		size = w.size(append(own, e))
	}
	g := w.group(e)
	if _, i := w.before(g); i < 0 {
		// The opening: its count is the other side's business when that side
		// has the ball. The question of who has it comes last.
		left := !w.openingSpent(size - 1)
		return !left && w.Is(play.Has, "", play.Value(e.Team.String()))
	}
	n, open := w.hits(e.Team, g)
	if n+size > w.most() {
		return true
	}
	return open && w.openingSpent(n+size-1)
}

// openingSpent reports whether the opening's count and n more leave no hit.
func (w *Walk) openingSpent(n int) bool {
	if w.Told(play.Used, "") {
		return int(w.Get(play.Used, "")[0]-'0')+n >= w.most()
	}
	return w.Is(play.Spent, "", play.Yes)
}

// most is the number of team hits that the code allows.
func (w *Walk) most() int { return int(w.Param("hits.max")[0] - '0') }

// teammates are the contacts by others of the same team in the same moment.
func (w *Walk) teammates(e play.Event) []play.Event {
	var out []play.Event
	for _, f := range w.seq[w.group(e)] {
		if f.Kind == play.Contact && f.Team == e.Team && f.ID != e.ID {
			out = append(out, f)
		}
	}
	return out
}

// row is the row of an event's player.
func (w *Walk) row(e play.Event) play.Value { return w.Get(play.Row, e.Player) }

// libero reports whether an event's player is the libero.
func (w *Walk) libero(e play.Event) bool { return w.Is(play.IsLibero, e.Player, play.Yes) }

// place is where the ball was when a player touched it. In a joust the other
// player's place tells it as well.
func (w *Walk) place(e play.Event) play.Value {
	if f, ok := w.joust(e); ok && !w.Told(play.Place, e.ID) && w.Told(play.Place, f.ID) {
		switch w.Get(play.Place, f.ID) {
		case play.Own:
			return play.Beyond
		case play.Beyond:
			return play.Own
		}
		return play.Plane
	}
	return w.Get(play.Place, e.ID)
}

// completion is the moment at which the ball that a contact sent crosses the
// net or an opponent touches it; false when it does neither.
func (w *Walk) completion(e play.Event) (int, bool) {
	if _, ok := w.joust(e); ok {
		return w.now(), true
	}
	for i := w.group(e) + 1; i < len(w.seq); i++ {
		if c := touches(w.seq[i]); len(c) > 0 {
			return 2 * i, c[0].Team != e.Team || both(c)
		}
		for _, f := range w.seq[i] {
			switch f.Kind {
			case play.Cross:
				switch w.Get(play.How, f.ID) {
				case play.Between:
					if w.Is(play.Wholly, f.ID, play.Yes) {
						return 2 * i, true
					}
					continue // still on its way
				case play.IntoNet:
					continue
				}
				return 2 * i, false
			case play.Land:
				return 2 * i, w.side(f) == e.Team.Other()
			case play.Strike:
				if w.Is(play.Struck, f.ID, play.NetBand) {
					continue
				}
				return 2 * i, false
			}
		}
	}
	if !w.Is(play.Completes, e.ID, play.Yes) {
		return 0, false
	}
	return w.soonest(e), true
}

// soonest is the moment of a completion that no told event shows: right after
// the contact, or after what opponents did while the ball was not over yet.
func (w *Walk) soonest(e play.Event) int {
	at := 2*w.group(e) + 1
	for i := w.group(e) + 1; i < len(w.seq); i++ {
		id := "" // what is of one moment is asked about once, whoever told it first
		for _, f := range w.seq[i] {
			if f.Team != e.Team && (f.Kind == play.NetTouch || f.Kind == play.Line) && (id == "" || f.ID < id) {
				id = f.ID
			}
		}
		if id == "" {
			continue
		}
		if w.Is(play.Crossed, id, play.Yes) {
			return at
		}
		at = 2*i + 1
	}
	return at
}

// side is the side that a ball event is on or over.
func (w *Walk) side(e play.Event) play.Team {
	if w.Get(play.Side, e.ID) == play.ValueA {
		return play.A
	}
	return play.B
}

// lastTouch is the team that touched the ball last before an event. After
// opponents touched it together it is the team opposite to where it then goes.
func (w *Walk) lastTouch(e play.Event) play.Team {
	t, g := w.before(w.group(e))
	switch {
	case g < 0:
		if w.Get(play.Has, "") == play.ValueA {
			return play.A
		}
		return play.B
	case both(t):
		return w.side(e).Other()
	}
	return t[len(t)-1].Team
}

// served reports whether the last touch before an event is the service hit.
func (w *Walk) served(e play.Event) bool {
	t, g := w.before(w.group(e))
	return g >= 0 && t[0].Kind == play.Serve
}
