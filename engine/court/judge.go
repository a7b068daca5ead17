package court

import (
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// outOfPosition is the fault, doubleFault the replay of one by both teams.
const (
	outOfPosition = "out-of-position"
	doubleFault   = "double-fault"
)

// Judge rules on an alignment. It is an engine.Judge.
func Judge(r *engine.Read, s engine.Subject) engine.Ruling {
	a, ok := s.(*Alignment)
	if !ok {
		panic("court: a subject that is not an alignment")
	}
	c := &crew{Read: r, a: a}
	if a.Asked == WantPairs {
		return c.pairs()
	}
	for _, p := range a.People {
		if p.Bench {
			return c.bench(p)
		}
	}
	if v := c.Get(StandsWhen, ""); v != AtContact {
		c.clear(ruleBound, "align.receiving-team")
		return engine.Ruling{Outcome: engine.PlayOn, Cites: c.clears}
	}
	var out [3]*engine.Ruling
	for _, t := range []play.Team{play.A, play.B} {
		out[t] = c.team(t)
	}
	switch {
	case out[play.A] != nil && out[play.B] != nil && c.Param("align.both-teams-out") == "replay":
		return engine.Ruling{Outcome: engine.Replay, Replay: doubleFault, Cites: append([]engine.Cite{{Rule: ruleBothOut, Param: "align.both-teams-out"}},
			append(out[play.A].Cites, out[play.B].Cites...)...)}
	case out[play.A] != nil && out[play.B] != nil: // only the receivers can be out of position
		if c.serves(play.A) {
			return *out[play.B]
		}
		return *out[play.A]
	case out[play.A] != nil:
		return *out[play.A]
	case out[play.B] != nil:
		return *out[play.B]
	}
	return engine.Ruling{Outcome: engine.PlayOn, Cites: c.clears}
}

// Next is who gets the point and who serves after a ruling: after a fault the
// opponents, else it is not told.
func Next(r engine.Ruling) (point, serves play.Team) {
	if r.Outcome == engine.Fault {
		return r.Against.Other(), r.Against.Other()
	}
	return play.NoTeam, play.NoTeam
}

// crew looks at one alignment.
type crew struct {
	*engine.Read
	a      *Alignment
	clears []engine.Cite
}

// clear records a rule that was looked at and found kept.
func (c *crew) clear(rule string, p code.Param) {
	c.Param(p)
	for _, k := range c.clears {
		if k.Rule == rule && k.Param == p {
			return
		}
	}
	c.clears = append(c.clears, engine.Cite{Rule: rule, Param: p})
}

// fault is the fault of a team, or what the code makes of it.
func (c *crew) fault(t play.Team, rule string, p code.Param) *engine.Ruling {
	c.Param(p)
	cites := []engine.Cite{{Rule: rule, Param: p}}
	if c.Param("align.penalty") == "replay" {
		return &engine.Ruling{Outcome: engine.Replay, Replay: doubleFault, Cites: append(cites, engine.Cite{Rule: ruleBound, Param: "align.penalty"})}
	}
	return &engine.Ruling{Outcome: engine.Fault, Fault: outOfPosition, Against: t, Cites: cites}
}

// serves reports whether a team is the serving one.
func (c *crew) serves(t play.Team) bool {
	return c.Get(ServingSide, "") == play.Value(t.String())
}

// bound reports whether a team must be in its order. Where both teams are
// bound alike it does not ask which one serves.
func (c *crew) bound(t play.Team) bool {
	s, r := c.Param("align.serving-team"), c.Param("align.receiving-team")
	if s == r {
		return s == "bound"
	}
	if c.serves(t) {
		return s == "bound"
	}
	return r == "bound"
}

// boundBy is the parameter that binds a team.
func (c *crew) boundBy(t play.Team) code.Param {
	if c.Param("align.serving-team") != c.Param("align.receiving-team") && c.serves(t) {
		return "align.serving-team"
	}
	return "align.receiving-team"
}

// team is the fault of one team, nil when it has none.
func (c *crew) team(t play.Team) *engine.Ruling {
	a := c.a
	if f := c.inside(t); f != nil {
		return f
	}
	told, free := false, false
	for i, p := range a.People {
		for _, q := range a.People[i+1:] {
			of := p.ID + "-" + q.ID
			if p.Team != t || q.Team != t || !a.mentioned(of, Depth, Across) {
				continue
			}
			if told = true; free || !c.bound(t) {
				free = true
				continue
			}
			if f := c.two(t, p, q, of); f != nil {
				return f
			}
		}
	}
	order := play.Key{Fact: TeamOrder, Of: t.String()}
	if a.Get(order) != play.Unknown || a.Void(order) {
		if told = true; free || !c.bound(t) {
			free = true
		} else if c.Get(TeamOrder, t.String()) == OutOfTheOne {
			return c.fault(t, ruleBound, c.boundBy(t))
		}
	}
	if told {
		c.clear(ruleBound, c.boundBy(t))
	}
	return nil
}

// inside is the fault of a player who is outside the own court.
func (c *crew) inside(t play.Team) *engine.Ruling {
	for _, p := range c.a.People {
		k := play.Key{Fact: StandsInside, Of: p.ID}
		if p.Team != t || c.a.Get(k) == play.Unknown && !c.a.Void(k) {
			continue
		}
		if p.Role == play.Server {
			c.clear(ruleInside, "align.inside-court") // all but the server
			continue
		}
		v := c.Get(StandsInside, p.ID)
		if v == InsideHalf {
			continue
		}
		if p.Place == RightBack && v != OverTheLine && v != OnTheLine && c.serves(t) {
			c.clear(ruleInside, "align.inside-court")
			continue // the server stands behind the end line
		}
		switch {
		case v == OverTheLine:
			if c.Param("align.foot-over-centre") == "fault" {
				return c.fault(t, ruleOverCentre, "align.foot-over-centre")
			}
			c.clear(ruleOverCentre, "align.foot-over-centre")
		case v == OutsideHalf, v == BetweenSize && (c.Param("match.court-width") == "9" || c.Param("match.court-length") == "18"):
			if c.Param("align.inside-court") == "required" {
				return c.fault(t, ruleInside, "align.inside-court")
			}
			c.clear(ruleInside, "align.inside-court")
		default:
			c.clear(ruleInside, "align.inside-court")
		}
	}
	return nil
}

// two is the fault of two players of a team who overlap.
func (c *crew) two(t play.Team, p, q Person, of string) *engine.Ruling {
	if p.Role == play.Server || q.Role == play.Server || p.Vacant || q.Vacant {
		c.clear(ruleBound, "align.receiving-team")
		return nil
	}
	for _, w := range []Person{p, q} {
		if w.Role == play.Libero {
			if c.Param("align.libero-counts") == "free" {
				c.clear(ruleLibero, "align.libero-counts")
				return nil
			}
		}
	}
	x, y := c.place(p), c.place(q)
	if x == y {
		return nil // two who are said to be in one position: Check of the words finds it
	}
	if (x == RightBack || y == RightBack) && c.serves(t) {
		c.clear(ruleBound, "align.receiving-team")
		return nil // the server
	}
	for _, axis := range []Axis{Depth, Across} {
		if !c.a.mentioned(of, axis) {
			continue
		}
		rule, cite := rulePartners, code.Param("align.front-back-pair")
		if axis == Across {
			rule, cite = ruleRow, "align.same-row"
		}
		pair, turned, ok := between(x, y, axis)
		if ok && axis == Across && pair.First.Lane() != 1 && pair.Other.Lane() != 1 && c.Param("align.same-row") != "every-player" {
			ok = false
		}
		if !ok {
			c.clear(rule, cite)
			continue
		}
		if !c.overlap(p, q, of, pair, turned) {
			c.clear(rule, cite)
			continue
		}
		if f := c.fault(t, rule, cite); f.Outcome == engine.Fault {
			if axis == Across {
				f.Cites = append(f.Cites, engine.Cite{Rule: ruleRow, Param: "align.same-row-level"})
				c.Param("align.same-row-level")
			}
			if c.Is(InTheAir, p.ID, play.Yes) || c.Is(InTheAir, q.ID, play.Yes) {
				f.Cites = append(f.Cites, engine.Cite{Rule: ruleFeetDecide, Param: "align.judged-by"})
			}
			return f
		} else {
			return f
		}
	}
	return nil
}

// place is the position of a person.
func (c *crew) place(p Person) Position {
	v := c.Get(StandsPlace, p.ID)
	return Position(v[0] - '0')
}

// overlap reports whether two who are compared stand out of order.
func (c *crew) overlap(p, q Person, of string, pair Pair, turned bool) bool {
	stands, air, feet, level := StandsDepth, AirDepth, FeetDepth, code.Param("align.front-back-pair")
	want, not := Ahead, Behind
	if pair.Axis == Across {
		stands, air, feet, level = StandsAcross, AirAcross, FeetAcross, "align.same-row-level"
		if want, not = ToTheRight, ToTheLeft; pair.First.Lane() == 0 {
			want, not = not, want
		}
	}
	if turned {
		want, not = not, want
	}
	fact := stands
	if c.Is(InTheAir, p.ID, play.Yes) || c.Is(InTheAir, q.ID, play.Yes) {
		if c.Param("align.judged-by") == "body" {
			fact = air
		}
	}
	lenient := c.Param(level) == "level-is-legal"
	switch c.Get(fact, of) {
	case want:
		return false
	case not:
		return !lenient || fact == air || c.Is(feet, of, ApartFeet)
	}
	return !lenient
}

// bench rules on a bench player who comes in during play.
func (c *crew) bench(p Person) engine.Ruling {
	const param = "align.bench-player-on-court"
	cites := []engine.Cite{{Rule: ruleBench, Param: param}}
	switch c.Param(param) {
	case "illegal-alignment":
		if c.Is(BenchConduct, p.ID, play.No) {
			return *c.fault(p.Team, ruleBench, param)
		}
		return engine.Ruling{Measure: []string{"misconduct"}, Against: p.Team, Cites: cites}
	case "conduct-matter":
		return engine.Ruling{Measure: []string{"misconduct"}, Against: p.Team, Cites: cites}
	}
	return engine.Ruling{Measure: []string{"who-decides"}, Against: p.Team, Cites: cites}
}

// pairs answers who is compared with whom: of each person told, or of all.
func (c *crew) pairs() engine.Ruling {
	law := Law{WholeRow: c.Param("align.same-row") == "every-player"}
	cites := []engine.Cite{{Rule: rulePartners, Param: "align.front-back-pair"}, {Rule: ruleRow, Param: "align.same-row"}}
	c.Param("align.front-back-pair")
	var say []string
	for _, p := range c.a.People {
		if k := (play.Key{Fact: StandsPlace, Of: p.ID}); p.Bench || c.a.Get(k) == play.Unknown && !c.a.Void(k) {
			continue // nobody asks with whom somebody of no known position is compared
		}
		say = append(say, law.compared(c.place(p)))
	}
	if say == nil {
		for _, p := range Positions() {
			if p.Front() {
				say = append(say, p.Name()+" with "+p.Partner().Name())
			}
		}
		row := "in each row left and right with the centre player"
		if law.WholeRow {
			row += " and with each other"
		}
		say = append(say, row)
	}
	return engine.Ruling{Answer: strings.Join(say, "; "), Cites: cites}
}

// compared says with whom a position is compared.
func (l Law) compared(p Position) string {
	beside := ""
	for _, q := range l.Pairs() {
		if q.Axis != Across || q.First != p && q.Other != p {
			continue
		}
		other := q.First
		if other == p {
			other = q.Other
		}
		if beside != "" {
			beside += " and the "
		}
		beside += other.Name()
	}
	return p.Name() + " with " + p.Partner().Name() + ", and with the " + beside + " beside"
}
