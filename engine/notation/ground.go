package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// ground is the telling of a ball that meets what lies around the court, or of
// what comes into the rally from there, in the making.
type ground struct {
	s       *scene
	m       *matcher
	used    []bool
	evs     []grounded
	subj    play.Kind // what the next verb is said of: a contact's ball, or a player
	who     grounded  // the player
	asked   bool
	area    bool // a place that is not for play was told
	areaAt  int  // the first event that can be there
	feet    play.Value
	special int // rows of which no other reader knows
	clash   bool
	hinder  play.Value
	on      play.Team // the side that plays the ball
	named   bool      // a side was named that plays the ball
	setting map[play.FactID]play.Value
}

// grounded is one event with what was told of it.
type grounded struct {
	play.Event
	role  play.Role
	label string
	facts map[play.FactID]play.Value
}

// readGround reads a text that tells of the ball and a thing or a person around
// the court, of a place that is not for play, or of something that comes into
// the rally, in words of which every one has a part in it or is known not to
// matter. It leaves any other text to the reader of rallies.
func (s *scene) readGround() (*play.Rally, []Unread, bool) {
	if !slices.ContainsFunc(s.toks, func(t token) bool { return groundWord(t.form) }) {
		return nil, nil, false
	}
	g := &ground{s: s, m: newMatcher(s, groundBook()), used: make([]bool, len(s.toks)), setting: map[play.FactID]play.Value{}}
	v := &service{s: s, m: g.m, used: g.used, fact: make([]bool, len(s.toks))}
	for i := 0; i < len(s.toks); {
		if s.toks[i].mark != 0 {
			i++
			continue
		}
		c, ok := g.m.at(i)
		if n := v.talk(i); n > c.to {
			for ; i < n; i++ {
				g.used[i] = true
			}
			continue
		}
		if !ok {
			i++
			continue
		}
		for j := c.from; j < c.to; j++ {
			g.used[j], v.fact[j] = true, c.row.tells()
		}
		g.take(c)
		i = c.to
	}
	g.settle()
	left, whole := v.left()
	if g.special == 0 || g.clash || !whole || len(g.evs) == 0 {
		return nil, nil, false
	}
	return g.rally(), left, true
}

func groundWord(w string) bool {
	for _, r := range roots(nil, w) {
		if groundGate[r] {
			return true
		}
	}
	return false
}

// team is the side of a name; "own" and "opponents" are of whoever plays.
func (g *ground) team(r sideRef) play.Team {
	if r.fam == relative {
		if g.on == play.NoTeam {
			return play.NoTeam
		}
		return r.team(g.on)
	}
	return g.s.team(r)
}

// add puts an event behind those told.
func (g *ground) add(e grounded) *grounded {
	if e.facts == nil {
		e.facts = map[play.FactID]play.Value{}
	}
	g.evs = append(g.evs, e)
	return &g.evs[len(g.evs)-1]
}

// last is the event told last of a kind, nil for none.
func (g *ground) last(k play.Kind) *grounded {
	for i := len(g.evs) - 1; i >= 0; i-- {
		if g.evs[i].Kind == k {
			return &g.evs[i]
		}
	}
	return nil
}

// plays makes a contact by a side; the side that has the ball where none was
// named.
func (g *ground) plays(t play.Team, a play.Action) *grounded {
	if t == play.NoTeam {
		t = g.on
	}
	if t == play.NoTeam {
		t = play.A
		g.asked = true // by nobody in particular
	} else {
		g.named = true
	}
	g.on = t
	e := g.add(grounded{Event: play.Event{Kind: play.Contact, Team: t, Action: a}})
	g.subj = play.Contact
	return e
}

// meets makes the ball touch something.
func (g *ground) meets(v play.Value) *grounded {
	e := g.add(grounded{Event: play.Event{Kind: play.Strike}})
	e.facts[play.Struck] = v
	return e
}

func (g *ground) take(c serveMatch) {
	r := c.row
	acts, place := play.NoTeam, play.NoTeam
	if c.serving.ok() {
		acts = g.team(c.serving)
		g.clash = g.clash || acts == play.NoTeam
	}
	if c.place.ok() {
		place = g.team(c.place)
		g.clash = g.clash || place == play.NoTeam
	}
	switch r.op {
	case grIgnore, svAsk:
	case grShot:
		if n := len(g.evs); n > 0 && g.evs[n-1].Kind == play.Contact && acts == play.NoTeam && g.evs[n-1].Action == play.Action(r.value) {
			g.subj = play.Contact // "digs it, dig hits the ceiling"
			return
		}
		e := g.plays(acts, play.Action(r.value))
		e.Number = c.number
	case grNth:
		e := g.plays(acts, play.Touch)
		e.Number = int(r.value[0] - '0')
	case grBall:
		g.subj = play.Contact
	case grWho:
		g.who = grounded{Event: play.Event{Team: acts}, role: g.role(c), label: g.label(c)}
		g.subj = play.Bump
	case grPlay:
		if r.pattern[0] == '$' || c.serving.ok() {
			g.who = grounded{Event: play.Event{Team: acts}, role: g.role(c), label: g.label(c)}
		}
		t := g.who.Team
		e := g.plays(t, play.Action(r.value))
		e.role, e.label = g.who.role, g.who.label
		g.foot(e)
	case grStrike, grTear, grLandsOn:
		if r.op == grLandsOn && g.area && g.last(play.Contact) != nil { // the player who was in the air
			g.feet = play.OffSurface
			for i := range g.evs {
				if i >= g.areaAt && g.evs[i].Kind == play.Contact {
					g.foot(&g.evs[i])
				}
			}
			return
		}
		if g.subj == play.Bump && r.op == grStrike {
			g.clash = true // a player who runs into it
		}
		e := g.meets(r.value)
		if r.op == grTear {
			e.facts[play.Stuck] = play.Yes
		}
		if place != play.NoTeam {
			e.facts[play.Side] = play.Value(place.String())
			e.Team = place
		}
		g.special++
	case grPlace:
		e := g.last(play.Strike)
		if e == nil || place == play.NoTeam {
			g.clash = true
			return
		}
		if e.Team != play.NoTeam && e.Team != place {
			g.clash = true
		}
		e.Team, e.facts[play.Side] = place, play.Value(place.String())
	case grHigh:
		e := g.last(play.Strike)
		if e == nil {
			g.clash = true
			return
		}
		switch {
		case r.value != play.Unknown:
			e.facts[play.High] = r.value
		case c.number >= 15:
			e.facts[play.High] = play.Yes
		default:
			e.facts[play.High] = play.No
		}
	case grCould:
		if e := g.last(play.Strike); e != nil {
			g.clash = g.clash || e.facts[play.CouldPlay] != play.Unknown && e.facts[play.CouldPlay] != r.value
			e.facts[play.CouldPlay] = r.value
			return
		}
		g.clash = true
	case grDown:
		g.down(place, r.value)
	case grCross, grCrossPart:
		e := g.add(grounded{Event: play.Event{Kind: play.Cross}})
		e.facts[play.How] = r.value
		if r.op == grCrossPart {
			e.facts[play.Wholly] = play.No
		}
		if r.value == play.Under || r.value == play.OutsideAnt {
			g.special++
		}
		t := play.NoTeam
		if g.on != play.NoTeam {
			t = g.on.Other()
		}
		if place != play.NoTeam {
			g.clash = g.clash || t != play.NoTeam && place != t
			t = place
		}
		if t != play.NoTeam {
			e.Team, e.facts[play.Side] = t, play.Value(t.String())
		}
	case grPartly:
		if e := g.last(play.Cross); e != nil {
			e.facts[play.Wholly] = r.value
			return
		}
		g.clash = true
	case grArea, grAreaBy:
		if r.op == grAreaBy {
			g.who = grounded{Event: play.Event{Team: acts}, role: g.role(c), label: g.label(c)}
			g.subj = play.Bump
		}
		if !g.area {
			g.area, g.areaAt = true, len(g.evs)
			if n := len(g.evs) - 1; g.subj == play.Contact && n >= 0 && g.evs[n].Kind == play.Contact {
				g.areaAt = n // "plays it over the bench"
			}
		}
		g.special++
	case grReturn:
		if c.serving.ok() {
			g.who = grounded{Event: play.Event{Team: acts}, role: g.role(c), label: g.label(c)}
		}
		e := g.plays(g.who.Team, play.Save)
		e.role, e.label = g.who.role, g.who.label
		t := e.Team
		x := g.add(grounded{Event: play.Event{Kind: play.Cross, Team: t}})
		x.facts[play.How], x.facts[play.Side] = r.value, play.Value(t.String())
	case grPlayAir:
		g.feet = play.OffSurface
		e := g.plays(g.who.Team, play.Save)
		e.role, e.label = g.who.role, g.who.label
		g.foot(e)
	case grFoot, grOff:
		if r.op == grOff && !g.area {
			g.area, g.areaAt = true, max(0, len(g.evs)-1)
			g.special++
		}
		g.clash = g.clash || g.feet != play.Unknown && g.feet != r.value && !(g.feet == play.OffSurface && r.value == play.LandsOn)
		g.feet = r.value
		for i := range g.evs {
			if g.area && i >= g.areaAt && g.evs[i].Kind == play.Contact {
				g.foot(&g.evs[i])
			}
		}
	case grIntrude:
		g.add(grounded{Event: play.Event{Kind: play.Intrusion}})
		g.special++
	case grGear:
		e := g.add(grounded{Event: play.Event{Kind: play.Intrusion}})
		e.facts[play.Gear] = play.Yes
		g.special++
	case grHinder:
		g.clash = g.clash || g.hinder != play.Unknown && g.hinder != r.value
		g.hinder = r.value
	case grChased:
		if acts == play.NoTeam && place != play.NoTeam {
			acts = place.Other()
		}
		g.plays(acts, play.Pass)
	case grBlocks:
		e := g.add(grounded{Event: play.Event{Kind: play.Bump, Team: acts}})
		e.facts[play.Hinders] = play.Unknown
		g.special++
	case grInWay:
		e := g.add(grounded{Event: play.Event{Kind: play.Intrusion}})
		e.facts[play.Hinders] = play.Unknown
		g.special++
	}
}

// down settles a ball that comes down on a side, or out.
func (g *ground) down(t play.Team, v play.Value) {
	n := len(g.evs)
	if n == 0 {
		g.clash = true
		return
	}
	if e := &g.evs[n-1]; e.Kind == play.Strike && v == play.Unknown {
		if t == play.NoTeam {
			t = g.on // "comes back down"
		}
		switch t {
		case e.Team, g.on:
			if e.Team == play.NoTeam {
				e.Team, e.facts[play.Side] = t, play.Value(t.String())
			}
			if e.Team == t {
				e.facts[play.Completes] = play.No
				return
			}
		}
	}
	e := g.add(grounded{Event: play.Event{Kind: play.Land, Team: t}})
	if v != play.Unknown {
		e.facts[play.Lands] = v
	}
	if t != play.NoTeam {
		e.facts[play.Side] = play.Value(t.String())
	}
}

// foot notes where the player who plays the ball over a place that is not for
// play stands.
func (g *ground) foot(e *grounded) {
	if g.feet != play.Unknown && g.area {
		e.facts[play.Footing] = g.feet
	}
}

// role is what a row's words call a player.
func (g *ground) role(c serveMatch) play.Role {
	for j := c.from; j < c.to; j++ {
		n, ok := lex().step(node{}, g.s.toks[j].form)
		if !ok {
			if n, ok = lex().step(node{}, g.s.toks[j].base); !ok || g.s.toks[j].base == "" {
				continue
			}
		}
		if r, ok := lex().ends(n); ok {
			switch {
			case r.means.class == cRole:
				return r.means.role
			case r.means.class == cLibero:
				return play.Libero
			}
		}
	}
	return play.NoRole
}

func (g *ground) label(c serveMatch) string {
	for j := c.from; j < c.to; j++ {
		if l := g.s.toks[j].label; l != "" {
			return l
		}
	}
	return ""
}

// settle puts together what was told in several places.
func (g *ground) settle() {
	if g.hinder != play.Unknown {
		e := g.last(play.Intrusion)
		if e == nil {
			g.clash = true
		} else {
			e.facts[play.Hinders] = g.hinder
		}
	} else if e := g.last(play.Intrusion); e != nil {
		if _, told := e.facts[play.Hinders]; told {
			g.clash = true // somebody in the way, and of what it did nothing was told
		}
	}
	if g.feet != play.Unknown && !slices.ContainsFunc(g.evs, func(e grounded) bool { return e.facts[play.Footing] != play.Unknown }) {
		g.clash = true // a player may jump who plays over the court
	}
	for i := 0; i+1 < len(g.evs); i++ { // what is played on did not land
		e, next := &g.evs[i], g.evs[i+1]
		if e.Kind != play.Land || next.Kind != play.Contact || e.facts[play.Lands] != play.Unknown || e.Team != next.Team {
			continue
		}
		crosses := false
		for j := i - 1; j >= 0 && !crosses; j-- {
			if g.evs[j].Kind == play.Contact {
				crosses = g.evs[j].Team != next.Team
				break
			}
		}
		if !crosses {
			g.evs = slices.Delete(g.evs, i, i+1)
			i--
			continue
		}
		e.Kind = play.Cross
		e.facts[play.How] = play.Between
	}
	if g.asked && !g.named {
		// A ball that nobody in particular played is of the side above which it met
		// the thing.
		side := play.NoTeam
		for _, e := range g.evs {
			if e.Kind == play.Strike && e.Team != play.NoTeam && side == play.NoTeam {
				side = e.Team
			}
		}
		if side == play.B {
			for i := range g.evs {
				if e := &g.evs[i]; e.Kind == play.Contact {
					e.Team = side
				}
			}
		}
	}
}

// rally makes the play.
func (g *ground) rally() *play.Rally {
	p := &play.Rally{Asked: play.AskedAct}
	for i, h := range g.evs {
		e := h.Event
		e.ID = "e" + itoa(len(p.Events)+1)
		if e.Kind == play.Contact && (h.role != play.NoRole || h.label != "") {
			id := ""
			for _, pl := range p.Players {
				if pl.Team == e.Team && pl.Role == h.role && pl.Label == h.label {
					id = pl.ID
				}
			}
			if id == "" {
				id = "p" + itoa(len(p.Players)+1)
				p.Players = append(p.Players, play.Player{ID: id, Team: e.Team, Role: h.role, Label: h.label})
			}
			e.Player = id
		}
		p.Events = append(p.Events, e)
		for _, f := range factTable {
			if is, ok := h.facts[f.ID]; ok && is != play.Unknown && f.About == play.OfEvent && slices.Contains(f.Kinds, e.Kind) {
				p = p.With(play.Key{Fact: f.ID, Of: e.ID}, is)
			}
		}
		if e.Kind == play.Bump {
			p = p.WithVoid(play.Key{Fact: play.Hinders, Of: e.ID})
		}
		if e.Kind == play.Contact && g.area && i >= g.areaAt && h.facts[play.Footing] == play.Unknown {
			p = p.WithVoid(play.Key{Fact: play.Footing, Of: e.ID})
		}
	}
	g.s.name(p)
	return p
}
