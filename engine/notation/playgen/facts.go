package playgen

import (
	"slices"

	"example.org/netpost/engine/play"
)

// facts tells some facts of the setting and of each thing, and sets some
// presumptions aside.
func (g *gen) facts() {
	often := 4
	if g.o.Wild {
		often = 2
	}
	for _, k := range Keys(g.p) {
		f, _ := play.FactByID(k.Fact)
		switch {
		case g.one(often):
			g.tell(k, pick(g.r, f.Values...).Value)
		case g.o.Voids && f.Presume != nil && g.one(12):
			g.p = g.p.WithVoid(k)
		}
	}
}

// tell tells one fact. The side of a ball event is also its team.
func (g *gen) tell(k play.Key, v play.Value) {
	g.p = g.p.With(k, v)
	if k.Fact != play.Side {
		return
	}
	i := slices.IndexFunc(g.p.Events, func(e play.Event) bool { return e.ID == k.Of })
	g.p.Events[i].Team = play.A
	if v == play.ValueB {
		g.p.Events[i].Team = play.B
	}
}

// Keys lists every fact that the setting, the players, the events and the
// pairs of the play can have, in that order, each by the fact table.
func Keys(p *play.Rally) []play.Key {
	var out []play.Key
	each := func(about play.About, of string, kind play.Kind) {
		for _, f := range play.Facts() {
			if f.About == about && (about != play.OfEvent || slices.Contains(f.Kinds, kind)) {
				out = append(out, play.Key{Fact: f.ID, Of: of})
			}
		}
	}
	each(play.OfSetting, "", "")
	for _, pl := range p.Players {
		each(play.OfPlayer, pl.ID, "")
	}
	for _, e := range p.Events {
		each(play.OfEvent, e.ID, e.Kind)
	}
	for i := 0; i+1 < len(p.Events); i++ {
		each(play.OfPair, p.Pair(i), "")
	}
	return out
}
