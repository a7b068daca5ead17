// Package judge knows the rules of every kind of subject: which judge decides
// it, what a rule that it cites is called, who calls the ruling and what
// follows. It is the one place that lists the kinds; engine decides any of
// them without knowing which.
package judge

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// A Rule is what an answer says of a rule that a ruling rests on.
type Rule struct {
	ID    string
	Title string     // a name that a crew would use
	Text  string     // our summary; never a book's sentence
	Cite  code.Param // the parameter whose cell gives number, edition and basis
}

// A kind is one member of the closed set of subjects with its rules.
type kind struct {
	name string
	// is reports whether a subject is of the kind.
	is    func(engine.Subject) bool
	judge engine.Judge
	// rules lists the rules that its rulings cite.
	rules func() []Rule
	fact  func(play.FactID) (play.Fact, bool)
	// call is who calls a ruling and how; nil where nobody does.
	call func(engine.Ruling, *code.Book) rules.Call
	// next is who gets the point and who serves after a ruling; nil where the
	// kind does not tell.
	next func(engine.Ruling, engine.Subject) (point, serves play.Team)
}

// kinds lists every kind of subject. No two of their rules, and no two of
// their facts, share an id.
var kinds = []kind{
	{
		name:  "rally",
		is:    func(s engine.Subject) bool { _, ok := s.(*play.Rally); return ok },
		judge: rules.Judge,
		rules: func() []Rule {
			var out []Rule
			for _, r := range rules.All() {
				out = append(out, Rule{r.ID, r.Title, r.Text, r.Cite})
			}
			return out
		},
		fact: play.FactByID,
		call: rules.CallFor,
		next: func(r engine.Ruling, s engine.Subject) (point, serves play.Team) {
			return rules.Next(r, s.(*play.Rally))
		},
	},
	{
		name:  "look-up",
		is:    func(s engine.Subject) bool { _, ok := s.(*lookup.Query); return ok },
		judge: lookup.Judge,
		rules: func() []Rule {
			var out []Rule
			for _, e := range lookup.Entries() {
				out = append(out, Rule{e.ID, e.Title, e.Text(), e.Params[0]})
			}
			return out
		},
		fact: lookup.FactByID,
	},
	{
		name:  "alignment",
		is:    func(s engine.Subject) bool { _, ok := s.(*court.Alignment); return ok },
		judge: court.Judge,
		rules: func() []Rule {
			var out []Rule
			for _, r := range court.Rules() {
				out = append(out, Rule{r.ID, r.Title, r.Text, r.Cite})
			}
			return out
		},
		fact: court.FactByID,
		call: rules.CallFor,
		next: func(r engine.Ruling, _ engine.Subject) (point, serves play.Team) { return court.Next(r) },
	},
	{
		name:  "line-up",
		is:    func(s engine.Subject) bool { _, ok := s.(*court.Lineup); return ok },
		judge: court.JudgeLineup,
		rules: func() []Rule {
			var out []Rule
			for _, r := range court.LineupRules() {
				out = append(out, Rule{r.ID, r.Title, r.Text, r.Cite})
			}
			return out
		},
		fact: court.LineupFact,
		call: rules.CallFor,
		next: func(r engine.Ruling, _ engine.Subject) (point, serves play.Team) { return court.Next(r) },
	},
	{
		name:  "dead ball",
		is:    func(s engine.Subject) bool { _, ok := s.(*deadball.Act); return ok },
		judge: deadball.Judge,
		rules: func() []Rule {
			var out []Rule
			for _, r := range deadball.All() {
				out = append(out, Rule{r.ID, r.Title, r.Text, r.Cite})
			}
			return out
		},
		fact: deadball.FactByID,
		next: func(r engine.Ruling, _ engine.Subject) (point, serves play.Team) { return deadball.Next(r) },
	},
}

// of is the kind of a subject. It panics outside the closed set.
func of(s engine.Subject) kind {
	for _, k := range kinds {
		if k.is(s) {
			return k
		}
	}
	panic(fmt.Sprintf("judge: a subject outside the closed set: %T", s))
}

// Decide decides a subject of any kind under a book. Its errors are those of
// engine.Decide.
func Decide(s engine.Subject, b *code.Book) (engine.Decision, error) {
	return engine.Decide(of(s).judge, s, b)
}

// all is every rule of every kind of subject, sorted by id.
var all = sync.OnceValue(func() []Rule {
	var out []Rule
	for _, k := range kinds {
		out = append(out, k.rules()...)
	}
	slices.SortFunc(out, func(a, b Rule) int { return strings.Compare(a.ID, b.ID) })
	return out
})

// All is every rule of every kind of subject, sorted by id.
func All() []Rule { return slices.Clone(all()) }

// ByID finds a rule of any kind of subject.
func ByID(id string) (Rule, bool) {
	i, ok := slices.BinarySearchFunc(all(), id, func(r Rule, id string) int { return strings.Compare(r.ID, id) })
	if !ok {
		return Rule{}, false
	}
	return all()[i], true
}

// FactByID finds a fact of any kind of subject.
func FactByID(id play.FactID) (play.Fact, bool) {
	for _, k := range kinds {
		if f, ok := k.fact(id); ok {
			return f, true
		}
	}
	return play.Fact{}, false
}

// Call is who calls a ruling on a subject, and how; the zero value where
// nobody does.
func Call(r engine.Ruling, s engine.Subject, b *code.Book) rules.Call {
	if k := of(s); k.call != nil {
		return k.call(r, b)
	}
	return rules.Call{}
}

// Next is who gets the point and who serves after a ruling on a subject; no
// team where it does not tell.
func Next(r engine.Ruling, s engine.Subject) (point, serves play.Team) {
	if k := of(s); k.next != nil {
		return k.next(r, s)
	}
	return play.NoTeam, play.NoTeam
}
