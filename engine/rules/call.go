package rules

import (
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

type paramID = code.Param

// Call is who calls a fault and how. By lists the officials, the one whose
// call it is first. Number is the signal's number in the code's list, empty
// where no source for one is held.
type Call struct {
	By      []string
	Signal  string // the id of the signal in the code's list
	Name    string // its name there
	Number  string
	Whistle string // whistle and signal sequence
}

// CallFor is how the crew calls a ruling under a code; the zero Call for a
// play-on, which nobody calls.
func CallFor(r engine.Ruling, b *code.Book) Call {
	id := r.Fault
	switch r.Outcome {
	case engine.Replay:
		id = r.Replay
	case engine.ReServe:
		id = reServe.ID
	}
	rule, ok := ByID(id)
	if !ok || r.Outcome == engine.PlayOn {
		return Call{}
	}
	c := rule.Call
	c.By = append([]string(nil), c.By...)
	switch {
	case r.Outcome == engine.ReServe:
		c.Whistle = "one whistle; signal the re-serve; a new signal for service begins a new count"
		if b.Cell("replay.requests-before-re-serve").Value == "none" {
			c.Whistle += "; no request is taken before it"
		}
	case r.Outcome == engine.Replay:
		c.Whistle = "one whistle; signal the replay; authorise the next serve anew"
		switch b.Cell("replay.requests-before-replay").Value {
		case "none":
			c.Whistle += "; no request is taken before it"
		case "time-out-only":
			c.Whistle += "; a time-out or an order check may come before it, a substitution only for an injury"
		}
	default:
		c.Whistle = "one whistle; signal the team to serve, then the fault, then the player where that helps"
		if b.Cell("r2.duties").Value == "signal-fault-first" {
			c.Whistle = "one whistle; the official whose call it is signals the fault, then the first referee signals the point"
		}
	}
	switch {
	case len(r.Cites) == 0:
	case id == serveFailed.ID && r.Cites[0].Param == serveFailed.Cite:
		c.Signal = "net" // the one signal for a net touched and for a serve that does not cross
	case r.Cites[0].Param == "ball.under-net":
		if s, ok := b.Signal("line"); ok && strings.Contains(s.Name+" "+s.Text, "under the net") {
			c.Signal = "line"
		}
	}
	if s, ok := b.Signal(c.Signal); ok {
		c.Name, c.Number = s.Name, s.Number
	}
	return c
}

// Next is who gets the point and who serves next. Both are no team when the
// ruling does not tell: a play-on whose rally has not ended. After a replay
// nobody scores and the same team serves again, where that is known.
func Next(r engine.Ruling, p *play.Rally) (point, serves play.Team) {
	switch r.Outcome {
	case engine.Fault:
		return r.Against.Other(), r.Against.Other()
	case engine.PlayOn:
		if r.Lost != play.NoTeam {
			return r.Lost.Other(), r.Lost.Other()
		}
	case engine.Replay, engine.ReServe:
		switch p.Get(play.Key{Fact: play.Serving}) {
		case play.ValueA:
			return play.NoTeam, play.A
		case play.ValueB:
			return play.NoTeam, play.B
		}
		for _, e := range p.Events {
			if e.Kind == play.Serve || e.Kind == play.Toss || e.Kind == play.Lapse {
				return play.NoTeam, e.Team
			}
		}
	}
	return play.NoTeam, play.NoTeam
}
