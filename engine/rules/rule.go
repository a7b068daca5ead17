package rules

import (
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Rule is one rule of the game: its text in our own words, where the codes
// state it, and the function that judges it.
type Rule struct {
	ID    string     // the id of the fault or replay that it finds
	Title string     // a name a crew would use
	Text  string     // our summary; never a book's sentence
	Cite  code.Param // the parameter whose cell gives number, edition and basis
	Also  []code.Param
	Call  Call // who calls it and how
	// Rank orders faults of one team at one moment; the lowest leads.
	Rank int
	// Lifts names the rules, or the parameters of rules, whose finding against
	// the other team at the same moment falls away.
	Lifts []string
	// LiftsAll marks a finding that prevails over every fault of its moment.
	LiftsAll bool
	// Yields marks a finding that falls away before any fault of its moment.
	Yields bool
	// Judge looks at one event, in time order, with the walk standing before
	// the event's moment. It reads a fact only where it needs it.
	Judge func(w *Walk, r *Rule, e play.Event)
}

// Params lists the parameters that the rule's text names, the leading first.
func (r Rule) Params() []code.Param { return append([]code.Param{r.Cite}, r.Also...) }

// All is every rule, sorted by id.
func All() []Rule { return append([]Rule(nil), all...) }

// ByID finds a rule.
func ByID(id string) (Rule, bool) {
	for _, r := range all {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}
