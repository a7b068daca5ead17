package engine

import (
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Outcome is what a ruling does to the rally.
type Outcome string

// The outcomes. A measure in a dead ball and an answer of a look-up have none.
const (
	PlayOn  Outcome = "play-on"
	Fault   Outcome = "fault"
	Replay  Outcome = "replay"
	ReServe Outcome = "re-serve"
	// Unsettled is no decision: the text that is held does not say what
	// follows, and the rules interpreter is to be asked.
	Unsettled Outcome = "unsettled"
)

// Cite names a rule that a ruling rests on and the table cell that says so.
type Cite struct {
	Rule  string     // the rule's id
	Param code.Param // the cell of the code that gives number, basis and source
	Event string     // the event it was applied to
}

// Ruling is one decision. The zero value is no ruling. Two rulings are the
// same decision when their Key is the same; Cites and Moment explain it.
type Ruling struct {
	Outcome Outcome
	Fault   string    // the fault's id, for Fault
	Also    []string  // further faults of the same team at the same moment
	Replay  string    // why it is replayed, for Replay
	Measure []string  // administrative measures, all applying together
	Answer  string    // of a look-up or a measure: one clause that opens with the number, or yes or no
	Against play.Team // the team at fault
	Event   string    // the event in which the fault exists
	Lost    play.Team // of a play-on: the side on whose floor the rally then legally ended
	Cites   []Cite    // the rules it rests on, the leading one first
	Moment  int       // when the fault exists, counted along the events
	// Conflict names rules of equal standing that rule differently on the same
	// moment. It is an error of the rules, never a tie to be broken: Decide
	// fails on it.
	Conflict []string
}

// Key identifies the decision: what a crew would do, not why.
func (r Ruling) Key() string {
	var b strings.Builder
	b.WriteString(string(r.Outcome))
	for _, s := range []string{r.Fault, r.Replay, r.Against.String()} {
		b.WriteByte('|')
		b.WriteString(s)
	}
	for _, s := range r.Also {
		b.WriteByte('+')
		b.WriteString(s)
	}
	for _, s := range r.Measure {
		b.WriteByte('!')
		b.WriteString(s)
	}
	if r.Answer != "" {
		b.WriteByte('=')
		b.WriteString(r.Answer)
	}
	return b.String()
}

// Swap is the same ruling with the teams changed over.
func (r Ruling) Swap() Ruling {
	r.Against, r.Lost = r.Against.Other(), r.Lost.Other()
	return r
}

func (r Ruling) String() string {
	s := string(r.Outcome)
	if r.Fault != "" {
		s += " " + r.Fault
	}
	if r.Replay != "" {
		s += " " + r.Replay
	}
	if r.Against != play.NoTeam {
		s += " against " + r.Against.String()
	}
	if len(r.Also) > 0 {
		s += " also " + strings.Join(r.Also, ",")
	}
	if len(r.Measure) > 0 {
		s += " measure " + strings.Join(r.Measure, ",")
	}
	if r.Answer != "" {
		s += " answer " + r.Answer
	}
	return s
}
