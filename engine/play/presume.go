package play

// The presumptions of the fact table. Each looks only at what was told of the
// events and players, so that settling another fact never changes it.

// presumeHeight grants that a ball which is passed, dug, set or just played is
// not wholly above the net, unless an opponent meets it at the net next: there
// its height is what crews fight over.
func presumeHeight(p *Rally, of string) Value {
	for i, e := range p.Events {
		if e.ID != of {
			continue
		}
		switch e.Action {
		case Attack, Tip, Block, Press:
			return Unknown
		case Pass, Dig:
			return NotAbove
		}
		for _, f := range near(p.Events, i) {
			if f.Kind == Contact && f.Team != e.Team && f.Action != Pass && f.Action != Dig {
				return Unknown
			}
		}
	}
	return NotAbove
}

// near are the events told right before and right after event i.
func near(events []Event, i int) []Event {
	return events[max(0, i-1):min(len(events), i+2)]
}

// presumeCompletes grants that an attack goes over and that any other contact
// stays on its side, when no told event shows it.
func presumeCompletes(p *Rally, of string) Value {
	e, _ := p.Event(of)
	switch {
	case e.Action.Attacking():
		return Yes
	case e.Kind == Strike, e.Action == Press:
		return Unknown
	}
	return No
}

// presumeCouldPlay grants that a set can be played by a hitter; any other ball
// near the net is fought over.
func presumeCouldPlay(p *Rally, of string) Value {
	e, _ := p.Event(of)
	if e.Kind == Strike {
		return Unknown
	}
	if prev, ok := p.contactBefore(of); ok && prev.Team != e.Team && prev.Action == Set {
		return Yes
	}
	return Unknown
}

// after is the pair of an event and the one told after it, empty for the last.
func (p *Rally) after(of string) string {
	for i := range p.Events {
		if p.Events[i].ID == of && i+1 < len(p.Events) {
			return p.Pair(i)
		}
	}
	return ""
}

// contactBefore is the contact told last before an event.
func (p *Rally) contactBefore(of string) (Event, bool) {
	prev, ok := Event{}, false
	for _, f := range p.Events {
		if f.ID == of {
			break
		}
		if f.Kind == Contact {
			prev, ok = f, true
		}
	}
	return prev, ok
}

// presumeAgain grants that nobody had a re-serve before, unless the telling has
// an earlier toss that was not hit.
func presumeAgain(p *Rally, of string) Value {
	for _, e := range p.Events {
		if e.ID == of {
			break
		}
		if e.Kind == Toss {
			return Yes
		}
	}
	return No
}

// presumeClock grants that a serve is in time, and that a server of whom it is
// told that the time ran let it run out.
func presumeClock(p *Rally, of string) Value {
	if e, _ := p.Event(of); e.Kind == Lapse {
		return RunOut
	}
	return OnTime
}

// presumeHidden grants that the receivers see a serve of whose team nobody
// stands close together or moves.
func presumeHidden(p *Rally, of string) Value {
	k := Key{Grouped, of}
	if v := p.facts[k]; v == CloseBy || v == Moving || p.void[k] {
		return Unknown
	}
	return InSight
}

func presumeHinders(p *Rally, of string) Value {
	e, _ := p.Event(of)
	if e.Kind == Bump || e.Kind == Intrusion {
		return Unknown
	}
	return No
}

func presumeLibero(p *Rally, of string) Value {
	pl, _ := p.Player(of)
	if pl.Role == Libero {
		return Yes
	}
	return No
}

// presumePlace grants the plane for a ball that is pressed from both sides, and
// a player's own side for everything but a block of a ball that the telling
// says an opponent played. A story that begins with a block began with an attack.
func presumePlace(p *Rally, of string) Value {
	e, _ := p.Event(of)
	pl, _ := p.Player(e.Player)
	switch {
	case e.Action == Press:
		return Plane
	case e.Action == Block, e.Action == Touch && pl.Role == Blocker:
		prev, ok := p.contactBefore(of)
		if !ok && p.facts[Key{Order, p.after(of)}] != Same && !p.void[Key{Order, p.after(of)}] || ok && prev.Team == e.Team {
			return Own
		}
		return Unknown
	}
	if p.atTheNet(of) {
		return Unknown
	}
	return Own
}

// atTheNet reports whether a contact meets a ball that the opponents set, with
// no crossing told between: where it was is the question.
func (p *Rally) atTheNet(of string) bool {
	met := false
	for _, e := range p.Events {
		if e.ID == of {
			own := e.Action == Touch || e.Action == Save || e.Action.Attacking()
			prev, ok := p.contactBefore(of)
			return met && own && ok && prev.Team != e.Team && prev.Action == Set
		}
		if e.Kind == Contact {
			met = true
		}
		if e.Kind == Cross || e.Kind == Serve {
			met = false
		}
	}
	return false
}

// presumePlaying grants that a player who was told to hit, block or go up
// right before or after touching the net did so in that action.
func presumePlaying(p *Rally, of string) Value {
	for i, e := range p.Events {
		if e.ID != of {
			continue
		}
		for _, j := range []int{i - 1, i + 1} {
			if j < 0 || j >= len(p.Events) {
				continue
			}
			f := p.Events[j]
			if f.Player == e.Player && e.Player != "" && (f.Kind == Contact || f.Kind == Attempt) {
				return Yes
			}
		}
	}
	return Unknown
}

func presumeReach(p *Rally, of string) Value {
	e, _ := p.Event(of)
	pl, _ := p.Player(e.Player)
	switch {
	case e.Kind == Attempt, e.Action == Block, e.Action == Press, e.Action == Touch && pl.Role == Blocker:
		return Above
	case e.Action == Pass, e.Action == Dig:
		return Below
	}
	return Unknown
}

// presumeRow grants front row to those who play at the net by their name, and
// to a player of whom the telling says nothing at all. A setter's row, and a
// defender's, is never presumed.
func presumeRow(p *Rally, of string) Value {
	pl, _ := p.Player(of)
	switch pl.Role {
	case NoRole, Hitter, Blocker, Middle, Outside, Opposite:
		return Front
	case Libero:
		return Back
	}
	return Unknown
}

func presumeTogether(p *Rally, of string) Value {
	e, _ := p.Event(of)
	for _, f := range p.Events {
		if f.ID != of && f.Team == e.Team && f.Kind == Contact && (f.Action == Block || f.Action == Touch) {
			return Yes
		}
	}
	return Unknown
}

// presumeUsed grants the count that the first contact's name implies.
func presumeUsed(p *Rally, _ string) Value {
	for _, e := range p.Events {
		if e.Kind != Contact {
			continue
		}
		switch e.Action {
		case Pass, Dig:
			return Zero
		case Set:
			return N1
		}
		return Unknown
	}
	return Unknown
}

// presumeHas grants the ball to the side of the first contact told, or to its
// opponents when that contact answers a ball of theirs. Opponents who may have
// touched it together leave it open.
func presumeHas(p *Rally, _ string) Value {
	for i, e := range p.Events {
		if e.Kind != Contact && e.Kind != Attempt {
			continue
		}
		pl, _ := p.Player(e.Player)
		against := e.Kind == Attempt || e.Action == Block || e.Action == Dig || e.Action == Touch && pl.Role == Blocker
		if i+1 < len(p.Events) {
			f, k := p.Events[i+1], Key{Order, p.Pair(i)}
			if f.Kind == Contact && f.Team != e.Team && !against && (p.facts[k] == Same || p.void[k]) {
				return Unknown
			}
		}
		t := e.Team
		if against {
			t = t.Other()
		}
		return Value(t.String())
	}
	return Unknown
}

// presumeSide grants that an attack, a tip or a serve goes to the other side.
func presumeSide(p *Rally, of string) Value {
	var last Event
	for _, e := range p.Events {
		if e.ID == of {
			break
		}
		if e.Kind == Contact || e.Kind == Serve {
			last = e
		}
	}
	if last.Kind == Serve || last.Action.Attacking() {
		return Value(last.Team.Other().String())
	}
	return Unknown
}

// presumeWholly grants that a ball went all the way through, unless it is on
// its way outside the antenna when an opponent is told to touch the net or to
// cross the line: whether it was out by then is what decides.
func presumeWholly(p *Rally, of string) Value {
	for i, e := range p.Events {
		if e.ID != of || i+1 == len(p.Events) {
			continue
		}
		f := p.Events[i+1]
		prev, ok := p.contactBefore(of)
		if (f.Kind == NetTouch || f.Kind == Line) && p.facts[Key{How, of}] == OutsideAnt && (!ok || prev.Team != f.Team) {
			return Unknown
		}
	}
	return Yes
}
