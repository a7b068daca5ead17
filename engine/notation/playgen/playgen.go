// Package playgen makes plays for property tests: random ones, and every
// short one of a small alphabet. It is test support; no program imports it.
//
// The same source gives the same play, so a seed that failed can be kept:
//
//	p := playgen.Rally(rand.New(rand.NewPCG(1, 2)), playgen.Options{})
package playgen

import (
	"strconv"

	"example.org/netpost/engine/play"
)

// Source draws whole numbers in [0,n). *rand.Rand of math/rand/v2 is one, and
// so is Bytes.
type Source interface{ IntN(n int) int }

// Bytes is a source that is used up: each draw takes one byte, and an empty
// source draws 0. A fuzzing engine that changes one byte changes one choice.
type Bytes []byte

// IntN is the next byte modulo n.
func (b *Bytes) IntN(n int) int {
	if len(*b) == 0 || n <= 1 {
		return 0
	}
	v := int((*b)[0])
	*b = (*b)[1:]
	return v % n
}

// Options bounds a random play. The zero value gives realistic plays of one to
// six events.
type Options struct {
	Events int  // the most events, 6 when zero
	Wild   bool // any actor does anything in any order, and many facts are told
	Names  bool // the sides may go by names of their own
	Voids  bool // presumptions may be set aside, and the point asked for
}

// Rally is a random well-formed play: Check passes, ids are e1, e2, ... and
// p1, p2, ... in the order of first mention, every player acts, and a ball
// event's Team is the side that its side fact names. Each kind, action, role,
// fact and order turns up in a long enough run.
func Rally(r Source, o Options) *play.Rally {
	g := gen{r: r, o: o, p: &play.Rally{}}
	n := o.Events
	if n <= 0 {
		n = 6
	}
	n = 1 + r.IntN(n)
	g.side = play.A + play.Team(r.IntN(2))
	for len(g.p.Events) < n {
		if o.Wild {
			g.wild()
		} else {
			g.next()
		}
	}
	g.facts()
	if o.Names && r.IntN(2) == 0 {
		pair := names[r.IntN(len(names))]
		g.p.Names[play.A], g.p.Names[play.B] = []string{pair[0]}, []string{pair[1]}
	}
	if o.Voids && r.IntN(8) == 0 {
		g.p.Asked = play.AskedPoint
	}
	return g.p
}

// names are what crews call the two sides.
var names = [][2]string{{"us", "them"}, {"them", "us"}, {"home", "visitors"}, {"red", "white"}, {"A", "B"}}

type gen struct {
	r    Source
	o    Options
	p    *play.Rally
	side play.Team // who has the ball
	used int
}

func (g *gen) one(in int) bool { return g.r.IntN(in) == 0 }

func pick[T any](r Source, of ...T) T { return of[r.IntN(len(of))] }

func (g *gen) add(e play.Event) {
	e.ID = "e" + strconv.Itoa(len(g.p.Events)+1)
	g.p.Events = append(g.p.Events, e)
}

// player is somebody of the team with the role: one who is there already, two
// times in three, or somebody new. Empty: the words named the team alone.
func (g *gen) player(t play.Team, role play.Role) string {
	if role == play.NoRole && g.one(3) {
		return ""
	}
	if !g.one(3) {
		for _, pl := range g.p.Players {
			if pl.Team == t && pl.Role == role {
				return pl.ID
			}
		}
	}
	pl := play.Player{ID: "p" + strconv.Itoa(len(g.p.Players)+1), Team: t, Role: role}
	if g.one(4) {
		pl.Label = strconv.Itoa(1 + g.r.IntN(20))
	}
	g.p.Players = append(g.p.Players, pl)
	return pl.ID
}

func (g *gen) act(k play.Kind, t play.Team, a play.Action, role play.Role) {
	e := play.Event{Kind: k, Team: t, Action: a, Player: g.player(t, role)}
	if k == play.Contact && g.one(6) {
		e.Number = 1 + g.r.IntN(4)
	}
	g.add(e)
}

func (g *gen) anyRole() play.Role { return pick(g.r, play.Roles()...) }

// wild adds any event whatever.
func (g *gen) wild() {
	k := pick(g.r, play.Kinds()...)
	a := play.Touch
	if k == play.Contact {
		a = pick(g.r, play.Actions()...)
	}
	switch k {
	case play.Land, play.Strike, play.Cross, play.Whistle, play.Intrusion, play.Dispute:
		g.add(play.Event{Kind: k})
	default:
		g.act(k, play.A+play.Team(g.r.IntN(2)), a, g.anyRole())
	}
}

// next adds an event that can follow the ones there: the side with the ball
// plays it, at most three times, and the others wait at the net.
func (g *gen) next() {
	other := g.side.Other()
	if len(g.p.Events) == 0 && g.one(5) {
		g.act(play.Serve, g.side, play.Touch, play.Server)
		g.side = other
		return
	}
	switch g.r.IntN(14) {
	case 0:
		g.act(play.NetTouch, pick(g.r, g.side, other), play.Touch, g.anyRole())
	case 1:
		g.act(play.Line, pick(g.r, g.side, other), play.Touch, g.anyRole())
	case 2:
		g.act(play.Attempt, other, play.Touch, pick(g.r, play.Blocker, play.Middle, play.Setter))
	case 3:
		k := pick(g.r, play.Reach, play.Bump, play.Support, play.Toss, play.Lapse, play.Injury)
		g.act(k, pick(g.r, g.side, other), play.Touch, g.anyRole())
	case 4:
		g.add(play.Event{Kind: pick(g.r, play.Land, play.Strike, play.Cross, play.Whistle, play.Intrusion, play.Dispute)})
	case 5, 6, 7:
		a := pick(g.r, play.Block, play.Block, play.Press, play.Touch)
		g.act(play.Contact, other, a, pick(g.r, play.Blocker, play.Blocker, play.Middle, play.Setter, play.Libero, play.NoRole))
		if a != play.Block {
			g.side, g.used = other, 1
		}
	default:
		g.contact()
	}
}

// contact adds the next contact of the side with the ball.
func (g *gen) contact() {
	switch g.used {
	case 0:
		g.act(play.Contact, g.side, pick(g.r, play.Pass, play.Dig, play.Touch), pick(g.r, play.Defender, play.Libero, play.NoRole))
	case 1:
		g.act(play.Contact, g.side, pick(g.r, play.Set, play.Set, play.Tip, play.Save, play.Touch), pick(g.r, play.Setter, play.Setter, play.Libero, play.NoRole))
	default:
		g.act(play.Contact, g.side, pick(g.r, play.Attack, play.Attack, play.Tip, play.Touch, play.Press),
			pick(g.r, play.Hitter, play.Outside, play.Opposite, play.Middle, play.Setter, play.NoRole))
	}
	if g.used++; g.used >= 3 || g.p.Events[len(g.p.Events)-1].Action.Attacking() {
		g.side, g.used = g.side.Other(), 0
	}
}
