package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// factsOf lists every fact that the play's setting, players, events and pairs
// can have, in that order.
func factsOf(p *play.Rally) []play.Key {
	var out []play.Key
	add := func(about play.About, of string, kind play.Kind) {
		for _, f := range factTable {
			if f.About == about && (about != play.OfEvent || slices.Contains(f.Kinds, kind)) {
				out = append(out, play.Key{Fact: f.ID, Of: of})
			}
		}
	}
	add(play.OfSetting, "", "")
	for _, pl := range p.Players {
		add(play.OfPlayer, pl.ID, "")
	}
	for _, e := range p.Events {
		add(play.OfEvent, e.ID, e.Kind)
	}
	for i := 0; i+1 < len(p.Events); i++ {
		add(play.OfPair, p.Pair(i), "")
	}
	return out
}

// claims takes the phrases of a clause, the longest first; among equal ones
// those of the fact asked for.
func (a *filling) claims(us []unit) []claim {
	var out []claim
	for {
		var best *saying
		at, s := -1, noSide
		for i := range sayings() {
			w := &sayings()[i]
			if best != nil && (len(w.units) < len(best.units) || w.fact != a.asked.Fact) {
				continue
			}
			if w.fact != a.asked.Fact && (!w.alone || !a.has(w.fact)) {
				continue
			}
			if j, t := find(us, w.units); j >= 0 {
				best, at, s = w, j, t
			}
		}
		if best == nil {
			return out
		}
		f, _ := play.FactByID(best.fact)
		out = append(out, claim{f, best.value, s, spoken(us[at : at+len(best.units)])})
		take(us, at, at+len(best.units))
	}
}

// has reports whether anything of the play can have the fact.
func (a *filling) has(id play.FactID) bool {
	return slices.ContainsFunc(a.keys, func(k play.Key) bool { return k.Fact == id })
}

// sideValue is the value that a side gives to a fact.
func (a *filling) sideValue(k play.Key, s side) play.Value {
	mine := teamOf(a.p, k)
	t := s.team(mine)
	f, _ := play.FactByID(k.Fact)
	switch {
	case t == play.NoTeam:
		return play.Unknown
	case f.Sided:
		if s == ownSide || s == otherSide {
			return play.Unknown // own of whom?
		}
		return play.Value(t.String())
	case t == mine:
		return play.Own
	}
	return play.Beyond
}

// actors takes the words for players left in a clause: a role or number with
// its side. It gives the ids of those they can mean; nil when none was named.
func (a *filling) actors(us []unit) []string {
	var out []string
	named := false
	for i := range us {
		if us[i].used {
			continue
		}
		ids, n := a.actorAt(us, i)
		if n == 0 {
			continue
		}
		named = true
		take(us, i, i+n)
		out = append(out, ids...)
	}
	if named && out == nil {
		return []string{}
	}
	return out
}

// actorAt reads "our second blocker #8" from i on: whom it can mean and how
// many units it takes, none when nobody is named there. A side alone is taken
// when one who is asked about is of it.
func (a *filling) actorAt(us []unit, i int) (ids []string, n int) {
	j, t, nth := i, noSide, 0
	if us[j].side != noSide {
		t = us[j].side
		j++
	}
	if j < len(us) && !us[j].used {
		if k := slices.Index(ordinals, us[j].form); k > 0 {
			nth = k
			j++
		}
	}
	role, label, named := play.NoRole, "", false
	if j < len(us) && !us[j].used {
		if r := play.Role(us[j].form); r != play.NoRole && slices.Contains(play.Roles(), r) {
			role, named = r, true
			j++
		} else if us[j].form == "player" && (t != noSide || nth > 0) {
			named = true
			j++
		}
	}
	if j < len(us) && !us[j].used && len(us[j].form) > 1 && us[j].form[0] == '#' {
		label, named = us[j].form[1:], true
		j++
	}
	mine := teamOf(a.p, a.asked)
	if !named {
		if t != noSide && t != lostSide && mine != play.NoTeam && t.team(mine) == mine {
			return []string{a.subject()}, 1
		}
		return nil, 0
	}
	if t == lostSide {
		return nil, 0
	}
	for _, pl := range a.p.Players {
		at, _ := twin(a.p, pl)
		if (role == play.NoRole || pl.Role == role) && (label == "" || pl.Label == label) &&
			(t == noSide || pl.Team == t.team(mine)) && (nth == 0 || at == nth) {
			ids = append(ids, pl.ID)
		}
	}
	return ids, j - i
}

// subject is the player whom the question is about.
func (a *filling) subject() string {
	if e, ok := a.p.Event(a.asked.Of); ok {
		return e.Player
	}
	return a.asked.Of
}

// place finds the thing that a claim is about: the one asked about where it
// can have the fact and nobody else was named, else the only one that can.
func (a *filling) place(c claim, who []string) (play.Key, error) {
	var can []play.Key
	for _, k := range a.keys {
		if k.Fact != c.fact.ID || c.fact.About == play.OfPair && k != a.asked {
			continue
		}
		id := k.Of
		if e, ok := a.p.Event(k.Of); ok {
			id = e.Player
		}
		if who == nil || c.fact.About == play.OfSetting || slices.Contains(who, id) {
			can = append(can, k)
		}
	}
	for _, k := range can {
		if k == a.asked || k.Of == a.asked.Of || k.Of == a.subject() && k.Of != "" {
			return k, nil
		}
	}
	switch len(can) {
	case 0:
		return play.Key{}, a.fail(c.words, "nothing in the play fits it")
	case 1:
		return can[0], nil
	}
	return play.Key{}, a.fail(c.words, "it could be said of more than one")
}
