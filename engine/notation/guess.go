package notation

import (
	"example.org/netpost/engine/play"
)

func (s *scene) lastTwo() []int {
	var a, b = -1, -1
	for i, p := range s.people {
		if p.Team == play.A {
			a = i
		} else {
			b = i
		}
	}
	switch {
	case a < 0 || b < 0:
		return nil
	case a < b:
		return []int{a, b}
	}
	return []int{b, a}
}

func (s *scene) guess(w party) play.Team {
	if w.role != play.NoRole || w.label != "" {
		for i := len(s.people) - 1; i >= 0; i-- {
			if p := s.people[i]; p.Role == w.role && p.Label == w.label && p.acts {
				return p.Team
			}
		}
	}
	last := s.lastContact()
	switch w.role {
	case play.Hitter, play.Outside, play.Opposite: // whose set it was
		if last > 0 && s.evs[last-1].Kind == play.Contact && s.evs[last-1].Action == play.Set && s.evs[last-1].Team != s.evs[last].Team && !s.evs[last].Action.Attacking() {
			return s.evs[last-1].Team
		}
	}
	if w.role == play.Blocker {
		if last >= 0 && s.evs[last].Action != play.Block {
			return s.evs[last].Team.Other()
		}
		if last >= 0 {
			return s.evs[last].Team
		}
		switch s.open[play.Has] {
		case play.ValueA:
			return play.B
		case play.ValueB:
			return play.A
		}
		if t := s.roleAhead(play.Hitter, play.Outside, play.Opposite, play.Setter); t != play.NoTeam {
			return t.Other()
		}
		return s.alone()
	}
	if s.on != play.NoTeam {
		return s.on
	}
	if last >= 0 && s.evs[last].Action == play.Block && w.role != play.NoRole {
		return s.evs[last].Team.Other()
	}
	if t := s.actor(); t != play.NoTeam {
		return t
	}
	if t := s.roleAhead(play.Blocker); t != play.NoTeam && w.role != play.NoRole {
		return t.Other()
	}
	return s.alone()
}

func (s *scene) alone() play.Team {
	if s.neutral || s.primary == letters || s.primary == usThem {
		return play.A
	}
	return play.NoTeam
}

func (s *scene) roleAhead(roles ...play.Role) play.Team {
	for i := 1; i < len(s.atoms); i++ {
		for _, r := range roles {
			if s.atoms[i].class != cRole || s.atoms[i].role != r {
				continue
			}
			for j := i - 1; j >= 0 && j >= i-2; j-- {
				if s.atoms[j].class == cSide && s.atoms[j].side.fam != relative {
					return s.team(s.atoms[j].side)
				}
			}
		}
	}
	return play.NoTeam
}

func (s *scene) roleOf(w party) play.Role {
	if w.role == play.NoRole && w.pid >= 0 {
		return s.people[w.pid].Role
	}
	return w.role
}

func (s *scene) unheard() {
	if !s.fresh || s.heard {
		return
	}
	for n := range s.subj {
		w := &s.subj[n]
		if w.pid >= 0 && s.people[w.pid].acts || w.to == 0 {
			continue
		}
		if w.pid < 0 && w.one && w.team != play.NoTeam && !w.fresh { // told of again further on
			pid := s.settle(w)
			if p := &s.people[pid]; !p.acts && p.to == 0 {
				p.from, p.to = w.from, w.to
			}
			s.lastWho = pid
		}
		for i := w.from; i < w.to; i++ {
			s.atoms[i].used = s.atoms[i].class == cFiller
		}
	}
}
