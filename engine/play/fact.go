package play

import (
	"fmt"
	"slices"
	"strings"
)

// FactID names a row of the fact table.
type FactID string

// About says what a fact is an attribute of.
type About string

// What facts are about.
const (
	OfSetting About = "setting" // the opening of the play
	OfPlayer  About = "player"
	OfEvent   About = "event"
	OfPair    About = "pair" // two told events that follow one another
)

// Choice is one value of a fact's domain. Words is the plain clause that says
// it, with no subject: it labels a button and prints in a play.
type Choice struct {
	Value Value
	Words string
}

// Fact is one row of the fact table: an attribute with a small closed domain.
type Fact struct {
	ID    FactID
	About About
	Kinds []Kind // of an event fact: the kinds of event that can have it
	Ask   string // the question to a crew, %s is the thing it is about
	Doc   string // what it means and where its borders are
	// Values is the domain, in the order in which a crew is offered it.
	Values []Choice
	// Presume gives the value that every official would grant when nobody
	// told it. It looks at what was told of the events, never at other facts.
	// Nil: it is never presumed.
	Presume func(p *Rally, of string) Value
	// Why says in a clause what the presumption rests on.
	Why string
	// Quiet marks a presumption that the telling itself implies; an answer
	// does not list it.
	Quiet bool
	// Sided marks a fact whose values name a team.
	Sided bool
}

// Has reports whether v is in the fact's domain.
func (f Fact) Has(v Value) bool {
	return slices.ContainsFunc(f.Values, func(c Choice) bool { return c.Value == v })
}

// Words is the clause of one value, or the value's id where it has none.
func (f Fact) Words(v Value) string {
	for _, c := range f.Values {
		if c.Value == v {
			return c.Words
		}
	}
	return string(v)
}

func (f Fact) values() string {
	var s []string
	for _, c := range f.Values {
		s = append(s, string(c.Value))
	}
	return strings.Join(s, ", ")
}

// about checks that the thing named can have the fact.
func (f Fact) about(p *Rally, of string) error {
	switch f.About {
	case OfSetting:
		if of != "" {
			return fmt.Errorf("belongs to the setting, not to %q", of)
		}
	case OfPlayer:
		if _, ok := p.Player(of); !ok {
			return fmt.Errorf("there is no player %q", of)
		}
	case OfEvent:
		e, ok := p.Event(of)
		if !ok {
			return fmt.Errorf("there is no event %q", of)
		}
		if !slices.Contains(f.Kinds, e.Kind) {
			return fmt.Errorf("an event of kind %s cannot have it", e.Kind)
		}
	case OfPair:
		i := p.pair(of)
		if i < 0 {
			return fmt.Errorf("%q is not two events that follow one another", of)
		}
	}
	return nil
}

// Pair is the key part for the order of event i and the one told after it.
func (p *Rally) Pair(i int) string { return p.Events[i].ID + "-" + p.Events[i+1].ID }

func (p *Rally) pair(of string) int {
	for i := 0; i+1 < len(p.Events); i++ {
		if p.Pair(i) == of {
			return i
		}
	}
	return -1
}

// Presumption is the value that every official would grant for an untold
// fact, or Unknown. It is void where the play says so.
func (p *Rally) Presumption(k Key) Value {
	f, ok := FactByID(k.Fact)
	if !ok || f.Presume == nil || p.void[k] {
		return Unknown
	}
	return f.Presume(p, k.Of)
}

// FactByID finds a row of the table.
func FactByID(id FactID) (Fact, bool) {
	if i, ok := factIndex[id]; ok {
		return facts[i], true
	}
	return Fact{}, false
}

// Facts is the whole table, sorted by id.
func Facts() []Fact { return slices.Clone(facts) }

var factIndex = func() map[FactID]int {
	m := make(map[FactID]int, len(facts))
	for i, f := range facts {
		m[f.ID] = i
	}
	return m
}()

func factRank(id FactID) int { return factIndex[id] }

func factIDs() []string {
	var s []string
	for _, f := range facts {
		s = append(s, string(f.ID))
	}
	return s
}
