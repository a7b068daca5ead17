package casebook

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// shape is a play with its events counted instead of named, the first side to
// act called A, so that plays of different notes can be laid over each other.
type shape struct {
	kinds string       // what happens, in order, and by which side: only plays of one kind can be the same play
	rally *play.Rally  // with the sides changed over where needed
	swap  bool         // they were
	order []play.Event // the events by count
	facts []shapeFact  // all that is told, and what was presumed
}

// shapeFact is one thing that a play says. Two plays that say different things
// of one name can't be the same play.
type shapeFact struct {
	name  string
	value string
	of    int // count of the event, the player's first event or the pair's first; -1 for the setting
	key   play.Key
	told  bool
}

// shapes gives a play's shapes: one, and one more for each way in which events
// of the same moment could have been told. Presumed are the presumptions that
// its ruling rests on.
func shapes(p *play.Rally, presumed []play.Key) []shape {
	swaps := []bool{false, true}
	for _, e := range p.Events {
		if e.Team != play.NoTeam && !e.Ball() {
			swaps = []bool{e.Team == play.B}
			break
		}
	}
	var out []shape
	for _, order := range orders(p) {
		for _, swap := range swaps {
			if len(order) > 0 && len(swaps) == 1 {
				// Of events of one moment another side's can come first.
				swap = firstTeam(order) == play.B
			}
			out = append(out, makeShape(p, order, swap, presumed))
		}
	}
	return out
}

func firstTeam(order []play.Event) play.Team {
	for _, e := range order {
		if e.Team != play.NoTeam && !e.Ball() {
			return e.Team
		}
	}
	return play.NoTeam
}

// most orders of one play that are looked at.
const mostOrders = 24

// orders lists the tellings of the events: those of one moment, told next to
// each other, in any order. The told one comes first.
func orders(p *play.Rally) [][]play.Event {
	out := [][]play.Event{p.Events}
	for i := 0; i+1 < len(p.Events); {
		j := i
		for j+1 < len(p.Events) && p.Get(play.Key{Fact: play.Order, Of: p.Pair(j)}) == play.Same {
			j++
		}
		if j > i {
			var next [][]play.Event
			for _, o := range out {
				permute(slices.Clone(o), i, j, func(perm []play.Event) { next = append(next, slices.Clone(perm)) })
			}
			out = next[:min(len(next), mostOrders)]
		}
		i = j + 1
	}
	return out
}

func permute(o []play.Event, from, to int, visit func([]play.Event)) {
	if from == to {
		visit(o)
		return
	}
	for k := from; k <= to; k++ {
		o[from], o[k] = o[k], o[from]
		permute(o, from+1, to, visit)
		o[from], o[k] = o[k], o[from]
	}
}

// positions are roles by a player's place; the others say what a player does.
var positions = []play.Role{play.Setter, play.Middle, play.Outside, play.Opposite, play.Libero}

func makeShape(p *play.Rally, order []play.Event, swap bool, presumed []play.Key) shape {
	s := shape{rally: p, swap: swap}
	if swap {
		s.rally = p.Swap()
	}
	count := map[string]int{}
	for _, e := range order {
		e, _ := s.rally.Event(e.ID)
		count[e.ID] = len(s.order)
		s.order = append(s.order, e)
	}
	first := map[string]int{} // a player's first event
	var kinds strings.Builder
	fmt.Fprintf(&kinds, "%s", s.rally.Asked)
	for i, e := range s.order {
		fmt.Fprintf(&kinds, " %s", e.Kind)
		if !e.Ball() {
			kinds.WriteString(e.Team.String())
		} else if e.Team != play.NoTeam {
			s.say(fmt.Sprintf("side %d", i), e.Team.String(), i)
		}
		if c := actionClass(e.Action); c != "" {
			s.say(fmt.Sprintf("action %d", i), c, i)
		}
		if e.Number != 0 {
			s.say(fmt.Sprintf("number %d", i), fmt.Sprint(e.Number), i)
		}
		if _, seen := first[e.Player]; e.Player != "" && !seen {
			first[e.Player] = i
			if pl, _ := s.rally.Player(e.Player); slices.Contains(positions, pl.Role) {
				s.say(fmt.Sprintf("role %d", i), string(pl.Role), i)
			}
		}
		for j, other := range s.order[:i] {
			if e.Player != "" && other.Player != "" && e.Team == other.Team {
				s.say(fmt.Sprintf("one player %d %d", j, i), fmt.Sprint(e.Player == other.Player), i)
			}
		}
	}
	s.kinds = kinds.String()
	place := func(k play.Key) (string, int) {
		f, _ := play.FactByID(k.Fact)
		switch f.About {
		case play.OfEvent:
			return "event", count[k.Of]
		case play.OfPlayer:
			if i, ok := first[k.Of]; ok {
				return "player", i
			}
			return "player " + k.Of, -1
		case play.OfPair:
			// Events that changed places are of one moment, so what follows
			// what stays true by count.
			for i := 0; i+1 < len(s.rally.Events); i++ {
				if s.rally.Pair(i) == k.Of {
					return "pair", i
				}
			}
		}
		return "", -1
	}
	add := func(k play.Key, v play.Value, told bool) {
		kind, of := place(k)
		s.facts = append(s.facts, shapeFact{name: fmt.Sprintf("%s %s %d", k.Fact, kind, of), value: string(v), of: of, key: k, told: told})
	}
	for _, k := range s.rally.Known() {
		add(k, s.rally.Get(k), true)
	}
	for _, k := range presumed {
		if s.rally.Get(k) == play.Unknown {
			add(k, s.rally.Presumption(k), false)
		}
	}
	return s
}

func (s *shape) say(name, value string, of int) {
	s.facts = append(s.facts, shapeFact{name: name, value: value, of: of, told: true})
}

// actionClass is what a contact is, as far as two words for it can tell two
// plays apart; empty for a contact that the words left open.
func actionClass(a play.Action) string {
	switch a {
	case play.Attack, play.Tip:
		return "attack"
	case play.Pass, play.Dig:
		return "first ball"
	case play.Set, play.Block, play.Press:
		return string(a)
	}
	return ""
}

// over lays what another shape tells over this one: the play that both are.
func (s shape) over(t shape) *play.Rally {
	r := *s.rally
	r.Events = slices.Clone(r.Events)
	r.Players = slices.Clone(r.Players)
	for i, e := range t.order {
		mine := slices.IndexFunc(r.Events, func(x play.Event) bool { return x.ID == s.order[i].ID })
		m := &r.Events[mine]
		if m.Action == play.Touch {
			m.Action = e.Action
		}
		if m.Number == 0 {
			m.Number = e.Number
		}
		if pl := slices.IndexFunc(r.Players, func(x play.Player) bool { return x.ID == s.order[i].Player }); pl >= 0 && r.Players[pl].Role == play.NoRole {
			if theirs, ok := t.rally.Player(e.Player); ok {
				r.Players[pl].Role = theirs.Role
			}
		}
	}
	out := &r
	for _, f := range t.facts {
		if !f.told || f.key.Fact == "" {
			continue
		}
		k := f.key
		about, _ := play.FactByID(k.Fact)
		switch {
		case about.About == play.OfSetting:
		case f.of < 0:
			continue
		case about.About == play.OfEvent:
			k.Of = s.order[f.of].ID
		case about.About == play.OfPlayer:
			k.Of = s.order[f.of].Player
		case about.About == play.OfPair:
			k.Of = r.Pair(f.of)
		}
		if k.Of == "" && about.About != play.OfSetting {
			continue
		}
		if out.Get(k) == play.Unknown {
			out = out.With(k, play.Value(f.value))
		}
	}
	return out
}
