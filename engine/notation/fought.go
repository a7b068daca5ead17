package notation

import "example.org/netpost/engine/play"

// fought sets aside what nobody would grant once the words bring it up: of a
// player who is told to be back row, or whose row is asked, the height of the
// ball is what the question is about.
func fought(p *play.Rally) *play.Rally {
	if p == nil {
		return nil
	}
	served, first := false, true
	for _, e := range p.Events {
		served = served || e.Kind == play.Serve
		if e.Kind != play.Contact || e.Action == play.Dig {
			continue
		}
		pl, _ := p.Player(e.Player)
		if k := (play.Key{Fact: play.Place, Of: e.ID}); first && p.Get(k) == play.Unknown && p.Get(play.Key{Fact: play.Used}) != play.Unknown && p.Get(play.Key{Fact: play.Has}) == play.Value(e.Team.Other().String()) {
			p = p.WithVoid(k) // what the others still had to play is told
		}
		first = false
		if k := (play.Key{Fact: play.Row, Of: e.Player}); pl.Role == play.NoRole && e.Action.Attacking() && !served && p.Get(k) == play.Unknown &&
			(p.Get(play.Key{Fact: play.Height, Of: e.ID}) == play.Above || p.Get(play.Key{Fact: play.TakeOff, Of: e.ID}) == play.InFront) {
			p = p.WithVoid(k) // height and take-off matter of a back-row player alone
		}
		row := play.Key{Fact: play.Row, Of: e.Player}
		libero := play.Key{Fact: play.IsLibero, Of: e.Player}
		if p.Get(row) == play.Back || p.Void(row) || p.Get(libero) == play.Yes && e.Action != play.Pass && e.Action != play.Set {
			if k := (play.Key{Fact: play.Height, Of: e.ID}); p.Get(k) == play.Unknown {
				p = p.WithVoid(k)
			}
		}
	}
	return p
}
