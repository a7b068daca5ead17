// Package lookup answers questions about the rules themselves: a number, a yes
// or no, who calls what and with which signal. A question is a [Query]; what
// can be looked up is the table [Entries], and each entry's judge answers from
// the code's parameters alone, through the same reader, replay and tree as any
// ruling. Where the answer turns on something about the match (the age of the
// players, for whom the net hangs), that is a fact, and it is asked.
package lookup

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// Query is one thing looked up. It is a value; the zero Query is malformed.
type Query struct {
	play.Told
	Entry string // the id of the entry
	// Of is what the entry is asked of, where it needs that: a fault, an
	// official, a rule's number. Empty where it does not.
	Of string
}

// The facts that an answer can turn on.
const (
	AgeGroup play.FactID = "age-group"
	NetFor   play.FactID = "net-for"
)

// Values of the facts.
const (
	Juniors   play.Value = "14-and-under"
	Older     play.Value = "15-and-over"
	WomenNet  play.Value = "women"
	MenNet    play.Value = "men"
	allowed              = "allowed"
	notStated            = "not-stated"
	notKnown             = "unknown"
)

// facts is the table of facts, in the order in which they are asked.
var facts = []play.Fact{
	{
		ID: AgeGroup, About: play.OfSetting, Ask: "How old are the players?",
		Doc: "The age group of the match; only the youngest juniors have another count.",
		Values: []play.Choice{
			{Value: Juniors, Words: "the players are 14 and under"},
			{Value: Older, Words: "the players are 15 and over, or adults"},
		},
	},
	{
		ID: NetFor, About: play.OfSetting, Ask: "For whom does the net hang?",
		Doc: "Whether the net hangs for women and girls or for men and boys.",
		Values: []play.Choice{
			{Value: WomenNet, Words: "it is the net for women and girls"},
			{Value: MenNet, Words: "it is the net for men and boys"},
		},
	},
}

// Facts lists the facts that an answer can turn on.
func Facts() []play.Fact { return slices.Clone(facts) }

// FactByID finds a fact of a look-up.
func FactByID(id play.FactID) (play.Fact, bool) {
	i := slices.IndexFunc(facts, func(f play.Fact) bool { return f.ID == id })
	if i < 0 {
		return play.Fact{}, false
	}
	return facts[i], true
}

// Presumption is Unknown: nothing about a match is granted here.
func (q *Query) Presumption(play.Key) play.Value { return play.Unknown }

// Known lists the told facts in the table's order.
func (q *Query) Known() []play.Key {
	return q.Keys(func(a, b play.Key) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(a.Of, b.Of))
	})
}

func rank(k play.Key) int {
	return slices.IndexFunc(facts, func(f play.Fact) bool { return f.ID == k.Fact })
}

// Fact is a row of the table of facts.
func (q *Query) Fact(id play.FactID) (play.Fact, bool) { return FactByID(id) }

// Tell is the query with one more fact told.
func (q *Query) Tell(k play.Key, v play.Value) play.Subject {
	out := *q
	out.Told = q.With(k, v)
	return &out
}

// Doubt is the query with the presumption of one fact set aside.
func (q *Query) Doubt(k play.Key) play.Subject {
	out := *q
	out.Told = q.WithVoid(k)
	return &out
}

// Check reports an entry that does not exist, one without what it is asked of,
// and a fact that is none of a look-up.
func (q *Query) Check() error {
	e, ok := ByID(q.Entry)
	if !ok {
		return fmt.Errorf("there is no entry %q to look up", q.Entry)
	}
	if e.of != nil && !e.of(q.Of) || e.of == nil && q.Of != "" {
		return fmt.Errorf("%s is not asked of %q", q.Entry, q.Of)
	}
	for _, k := range q.Known() {
		f, ok := FactByID(k.Fact)
		switch v := q.Get(k); {
		case !ok:
			return fmt.Errorf("%s is no fact of a look-up", k.Fact)
		case k.Of != "":
			return fmt.Errorf("%s belongs to the match, not to %q", k.Fact, k.Of)
		case !f.Has(v):
			return fmt.Errorf("%s is never %q", k.Fact, v)
		}
	}
	return nil
}

// Sentences say the question, and what was told of the match.
func (q *Query) Sentences() []string {
	out := []string{q.ask()}
	for _, k := range q.Known() {
		out = append(out, upper(q.Clause(k, q.Get(k)))+".")
	}
	return out
}

// ask is the question in plain words.
func (q *Query) ask() string {
	e, _ := ByID(q.Entry)
	if e.of == nil {
		return e.Ask
	}
	return strings.Replace(e.Ask, "%s", words(q.Of), 1)
}

// Clause says that a fact has a value.
func (q *Query) Clause(k play.Key, v play.Value) string {
	f, _ := FactByID(k.Fact)
	return f.Words(v)
}

// Question asks a crew for a fact.
func (q *Query) Question(k play.Key) string {
	f, _ := FactByID(k.Fact)
	return f.Ask
}

// Choices are the labels of a fact's values.
func (q *Query) Choices(k play.Key) []string {
	f, _ := FactByID(k.Fact)
	var out []string
	for _, c := range f.Values {
		out = append(out, c.Words)
	}
	return out
}

// Called are the names of a side: a look-up has no sides of its own.
func (q *Query) Called(t play.Team) []string { return []string{t.String()} }

// Things lists what facts can be about: the match only.
func (q *Query) Things() []string { return nil }

func upper(s string) string { return strings.ToUpper(s[:1]) + s[1:] }
