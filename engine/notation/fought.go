package notation

import "example.org/netpost/engine/play"

// fought sets aside what nobody would grant once the words bring it up: of a
// player who is told to be back row, or whose row is asked, the height of the
// ball is what the question is about.
func fought(p *play.Rally) *play.Rally {
	if p == nil {
		return nil
	}
	for _, e := range p.Events {
		if e.Kind != play.Contact || e.Action == play.Dig {
			continue
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
