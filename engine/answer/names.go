package answer

import (
	"slices"

	"example.org/netpost/engine"
	"example.org/netpost/engine/play"
)

// names are all that a side may go by: its letter, what the asker called it,
// then what the play proves of it.
func names(s engine.Subject, t play.Team) []string {
	if t == play.NoTeam {
		return nil
	}
	p, ok := s.(*play.Rally)
	if !ok {
		return s.(play.Spoken).Called(t)
	}
	out := []string{t.String()}
	add := func(s string) {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	for _, n := range p.Names[t] {
		add(n)
	}
	switch serving(p) {
	case t:
		add("serving")
	case t.Other():
		add("receiving")
	}
	attack, block := doing(p)
	if attack == t && block != t {
		add("attackers")
	}
	if block == t && attack != t {
		add("blockers")
	}
	return out
}

// serving is the side that served, NoTeam when the play does not tell.
func serving(p *play.Rally) play.Team {
	switch p.Get(play.Key{Fact: play.Serving}) {
	case play.ValueA:
		return play.A
	case play.ValueB:
		return play.B
	}
	for _, e := range p.Events {
		if e.Kind == play.Serve || e.Kind == play.Toss || e.Kind == play.Lapse {
			return e.Team
		}
	}
	return play.NoTeam
}

// doing is the one side that attacks and the one that blocks; NoTeam where
// neither or both do, for then the word would not tell the sides apart.
func doing(p *play.Rally) (attack, block play.Team) {
	var attacks, blocks [3]bool
	for _, e := range p.Events {
		switch {
		case e.Kind == play.Contact && e.Action.Attacking():
			attacks[e.Team] = true
		case e.Kind == play.Attempt, e.Kind == play.Contact && e.Action == play.Block:
			blocks[e.Team] = true
		}
	}
	return only(attacks), only(blocks)
}

func only(of [3]bool) play.Team {
	switch {
	case of[play.A] && !of[play.B]:
		return play.A
	case of[play.B] && !of[play.A]:
		return play.B
	}
	return play.NoTeam
}
