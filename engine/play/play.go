// Package play holds what is known of one situation: the setting, then the
// told events in time order, each with facts that are known or unknown.
//
// A play is a value. With, Without and Swap return changed copies; nothing
// that was handed out changes afterwards. Nothing here rules on anything: the
// rules read a play through engine.Read.
package play

import (
	"fmt"
	"slices"
	"strings"
)

// Team is one of the two sides. The zero value is no team.
type Team uint8

// The two sides. They are named A and B inside; Rally.Names holds what the
// asker called them.
const (
	NoTeam Team = iota
	A
	B
)

// Other is the opposing side; no team has no opponent.
func (t Team) Other() Team {
	switch t {
	case A:
		return B
	case B:
		return A
	}
	return NoTeam
}

func (t Team) String() string {
	switch t {
	case A:
		return "A"
	case B:
		return "B"
	}
	return ""
}

// Kind says what sort of thing happened in an event.
type Kind string

// The kinds of event. The set is closed; Kinds lists it.
const (
	Contact   Kind = "contact"   // a player plays or touches the ball
	Attempt   Kind = "attempt"   // a player is up to block and does not touch the ball
	NetTouch  Kind = "net"       // a player touches the net, a cable, a post or an antenna
	Line      Kind = "line"      // part of a player is beyond the centre line or its extension
	Reach     Kind = "reach"     // a hand beyond the plane of the net that does not touch the ball
	Bump      Kind = "bump"      // a player touches an opponent or is in an opponent's way
	Support   Kind = "support"   // a player takes hold of a teammate or of a structure
	Serve     Kind = "serve"     // the service hit
	Land      Kind = "land"      // the ball touches the floor
	Strike    Kind = "strike"    // the ball touches something that is neither player nor floor
	Cross     Kind = "cross"     // the ball goes to or through the plane of the net
	Whistle   Kind = "whistle"   // an official's whistle in the rally
	Intrusion Kind = "intrusion" // something from outside comes into the rally
	Toss      Kind = "toss"      // the server lets go of the ball and does not hit it
	Lapse     Kind = "lapse"     // the server does not serve while the time for it runs
	Injury    Kind = "injury"    // a player is hurt in the rally
	Dispute   Kind = "dispute"   // the officials make different calls of the rally
)

// Kinds lists every kind of event in a fixed order.
func Kinds() []Kind {
	return []Kind{Contact, Attempt, NetTouch, Line, Reach, Bump, Support, Serve, Land, Strike, Cross, Whistle, Intrusion, Toss, Lapse, Injury, Dispute}
}

// Action is what the words called a contact. It is told, never asked.
type Action string

// The actions of a contact. Touch is a contact that the words did not name.
const (
	Touch  Action = ""
	Pass   Action = "pass"   // serve receive, bump, platform, free ball
	Dig    Action = "dig"    // first ball off an attack
	Set    Action = "set"    // a pass meant for a hitter
	Attack Action = "attack" // spike, swing, hit over
	Tip    Action = "tip"    // tip, dump, roll: an attack without a swing
	Block  Action = "block"  // hands up against an opponents' ball
	Save   Action = "save"   // an emergency touch, a tight save
	Press  Action = "press"  // a push at the net against an opponent: the joust
)

// Actions lists every action in a fixed order.
func Actions() []Action {
	return []Action{Touch, Pass, Dig, Set, Attack, Tip, Block, Save, Press}
}

// Attacking reports whether the words called the contact an attack hit.
func (a Action) Attacking() bool { return a == Attack || a == Tip }

// Role is what the words called a player.
type Role string

// The roles. NoRole is a player whom the words did not describe.
const (
	NoRole   Role = ""
	Setter   Role = "setter"
	Hitter   Role = "hitter"
	Blocker  Role = "blocker"
	Middle   Role = "middle"
	Outside  Role = "outside"
	Opposite Role = "opposite"
	Libero   Role = "libero"
	Defender Role = "defender"
	Server   Role = "server"
)

// Roles lists every role in a fixed order.
func Roles() []Role {
	return []Role{NoRole, Setter, Hitter, Blocker, Middle, Outside, Opposite, Libero, Defender, Server}
}

// Player is one person of a play. Label is a shirt number as the words gave
// it ("8"), or empty.
type Player struct {
	ID    string
	Team  Team
	Role  Role
	Label string
}

// Event is one told thing. Team is who did it; of a ball event (Land, Strike,
// Cross) it is the side that the ball is over or comes to, NoTeam when it was
// not told. Number is a contact number as told, 0 when it was not.
type Event struct {
	ID     string
	Kind   Kind
	Team   Team
	Player string
	Action Action
	Number int
}

// Ball reports whether the event is of the ball alone.
func (e Event) Ball() bool { return e.Kind == Land || e.Kind == Strike || e.Kind == Cross }

// Value is one member of a fact's small closed domain. The empty value is
// unknown.
type Value string

// Unknown is the value of a fact that nobody told.
const Unknown Value = ""

// Key names one fact of one thing. Of is empty for the setting, an event's id,
// a player's id, or two event ids joined by "-" for their order.
type Key struct {
	Fact FactID
	Of   string
}

func (k Key) String() string {
	if k.Of == "" {
		return string(k.Fact)
	}
	return string(k.Fact) + "@" + k.Of
}

// ParseKey reads FACT or FACT@OF.
func ParseKey(s string) (Key, error) {
	fact, of, _ := strings.Cut(s, "@")
	if _, ok := FactByID(FactID(fact)); !ok {
		return Key{}, fmt.Errorf("fact %q: there is no such fact; known are %s", fact, strings.Join(factIDs(), ", "))
	}
	return Key{FactID(fact), of}, nil
}

// Asked is what the words want ruled on.
type Asked string

// What can be asked. AskedAct is the zero value: is there a fault in it?
const (
	AskedAct   Asked = ""      // rule the act told
	AskedPoint Asked = "point" // who gets the point: a ball that lands ends the rally
)

// Rally is a play of the ball: the first of the subjects. The zero value is a
// rally of which nothing is known.
type Rally struct {
	Events  []Event
	Players []Player
	Names   [3][]string // by Team: what the asker called each side, first name first
	Asked   Asked

	facts map[Key]Value
	void  map[Key]bool
}

// Get is the told value of a fact, Unknown when it was not told.
func (p *Rally) Get(k Key) Value { return p.facts[k] }

// Void reports whether the presumption of a fact does not hold in this play,
// because the question asks about it or an event told touches it.
func (p *Rally) Void(k Key) bool { return p.void[k] }

// Known lists the told facts in a fixed order: setting, players, events,
// orders, each by the fact table.
func (p *Rally) Known() []Key { return sorted(p, p.facts) }

// Voided lists the facts whose presumption was set aside, in the same order.
func (p *Rally) Voided() []Key { return sorted(p, p.void) }

func sorted[V any](p *Rally, m map[Key]V) []Key {
	out := make([]Key, 0, len(m))
	for k := range m {
		out = append(out, k)
	}
	slices.SortFunc(out, func(a, b Key) int {
		if c := p.rank(a.Of) - p.rank(b.Of); c != 0 {
			return c
		}
		return factRank(a.Fact) - factRank(b.Fact)
	})
	return out
}

// rank orders the things facts are about: the setting, players, events, pairs.
func (p *Rally) rank(of string) int {
	if of == "" {
		return 0
	}
	for i := range p.Players {
		if p.Players[i].ID == of {
			return 1 + i
		}
	}
	first, _, pair := strings.Cut(of, "-")
	for i := range p.Events {
		if p.Events[i].ID == first {
			if pair {
				return 1 + len(p.Players) + len(p.Events) + i
			}
			return 1 + len(p.Players) + i
		}
	}
	return 1 << 20
}

func (p *Rally) clone() *Rally {
	q := *p
	q.facts = make(map[Key]Value, len(p.facts)+1)
	for k, v := range p.facts {
		q.facts[k] = v
	}
	q.void = make(map[Key]bool, len(p.void)+1)
	for k := range p.void {
		q.void[k] = true
	}
	return &q
}

// With is the play with one more fact told. An unknown value takes it away.
func (p *Rally) With(k Key, v Value) *Rally {
	q := p.clone()
	if v == Unknown {
		delete(q.facts, k)
	} else {
		q.facts[k] = v
	}
	return q
}

// WithVoid is the play with the presumption of one fact set aside.
func (p *Rally) WithVoid(k Key) *Rally {
	q := p.clone()
	q.void[k] = true
	return q
}

// Event finds an event by id.
func (p *Rally) Event(id string) (Event, bool) {
	for _, e := range p.Events {
		if e.ID == id {
			return e, true
		}
	}
	return Event{}, false
}

// Player finds a player by id.
func (p *Rally) Player(id string) (Player, bool) {
	for _, pl := range p.Players {
		if pl.ID == id {
			return pl, true
		}
	}
	return Player{}, false
}

// Name is the first name that the asker gave a side, else A or B.
func (p *Rally) Name(t Team) string {
	if n := p.Names[t]; len(n) > 0 {
		return n[0]
	}
	return t.String()
}

// Swap is the same play with the two sides changed over, told facts whose
// values name a side included.
func (p *Rally) Swap() *Rally {
	q := p.clone()
	q.Events = slices.Clone(p.Events)
	for i := range q.Events {
		q.Events[i].Team = q.Events[i].Team.Other()
	}
	q.Players = slices.Clone(p.Players)
	for i := range q.Players {
		q.Players[i].Team = q.Players[i].Team.Other()
	}
	q.Names[A], q.Names[B] = p.Names[B], p.Names[A]
	for k, v := range q.facts {
		if f, ok := FactByID(k.Fact); ok && f.Sided {
			q.facts[k] = swapValue(v)
		}
	}
	return q
}

func swapValue(v Value) Value {
	switch v {
	case ValueA:
		return ValueB
	case ValueB:
		return ValueA
	}
	return v
}

// Check reports the first thing that makes a play malformed: an unknown kind,
// an id used twice, a fact that its thing cannot have, or a value outside the
// fact's domain. A play that a reader built passes.
func (p *Rally) Check() error {
	seen := map[string]bool{}
	for _, pl := range p.Players {
		if pl.ID == "" || seen[pl.ID] {
			return fmt.Errorf("player %q: ids must be given and differ", pl.ID)
		}
		if pl.Team == NoTeam {
			return fmt.Errorf("player %s: has no team", pl.ID)
		}
		if !slices.Contains(Roles(), pl.Role) {
			return fmt.Errorf("player %s: unknown role %q", pl.ID, pl.Role)
		}
		seen[pl.ID] = true
	}
	for _, e := range p.Events {
		if e.ID == "" || seen[e.ID] {
			return fmt.Errorf("event %q: ids must be given and differ", e.ID)
		}
		seen[e.ID] = true
		if !slices.Contains(Kinds(), e.Kind) {
			return fmt.Errorf("event %s: unknown kind %q", e.ID, e.Kind)
		}
		if !slices.Contains(Actions(), e.Action) {
			return fmt.Errorf("event %s: unknown action %q", e.ID, e.Action)
		}
		if e.Player != "" {
			pl, ok := p.Player(e.Player)
			if !ok {
				return fmt.Errorf("event %s: no player %q", e.ID, e.Player)
			}
			if pl.Team != e.Team {
				return fmt.Errorf("event %s: player %s is not of team %s", e.ID, e.Player, e.Team)
			}
		}
	}
	for _, k := range p.Known() {
		f, ok := FactByID(k.Fact)
		if !ok {
			return fmt.Errorf("fact %s: unknown", k)
		}
		if err := f.about(p, k.Of); err != nil {
			return fmt.Errorf("fact %s: %w", k, err)
		}
		if !f.Has(p.facts[k]) {
			return fmt.Errorf("fact %s: %q is not among its values (%s)", k, p.facts[k], f.values())
		}
	}
	return nil
}
