package play

import (
	"maps"
	"slices"
)

// Subject is what a question is about. The set is closed: package
// judge lists its kinds and refuses any other. They are
//
//   - *Rally: a play of the ball
//
// and every type that embeds Told: a request or act in a dead ball, an
// alignment, a line-up with its history, a look-up. Each brings a table of
// facts of its own; no two tables use one id.
type Subject interface {
	// Get is a told fact, Unknown when it was not told.
	Get(Key) Value
	// Presumption is what every official would grant for an untold fact.
	Presumption(Key) Value
	// Known lists the told facts in a fixed order.
	Known() []Key
	// Fact is a row of the subject's table of facts.
	Fact(FactID) (Fact, bool)
	// Tell is the subject with one more fact told; an unknown value takes the
	// fact away.
	Tell(Key, Value) Subject
	// Doubt is the subject with the presumption of one fact set aside.
	Doubt(Key) Subject
	// Check reports the first thing that makes the subject malformed, a told
	// fact that it cannot have included.
	Check() error
}

// Spoken is a subject that says itself in plain trade English. Every subject
// but the rally, whose words are many and have a package of their own, is one.
type Spoken interface {
	Subject
	// Sentences say what is told, one a line.
	Sentences() []string
	// Clause says that a fact has a value, with its subject.
	Clause(Key, Value) string
	// Question asks a crew for a fact.
	Question(Key) string
	// Choices are the labels of a fact's values, in the table's order.
	Choices(Key) []string
	// Called are the names that a side goes by, its letter first.
	Called(Team) []string
	// Things lists what the facts of the subject can be about, as ids.
	Things() []string
}

// Told is a set of told facts and of presumptions set aside. It is a value: no
// copy that was handed out changes. A subject embeds one.
type Told struct {
	facts map[Key]Value
	void  map[Key]bool
}

// Get is a told fact, Unknown when it was not told.
func (t Told) Get(k Key) Value { return t.facts[k] }

// Void reports whether the presumption of a fact was set aside.
func (t Told) Void(k Key) bool { return t.void[k] }

// With is the set with one more fact; an unknown value takes the fact away.
func (t Told) With(k Key, v Value) Told {
	t = t.clone()
	if v == Unknown {
		delete(t.facts, k)
	} else {
		t.facts[k] = v
	}
	return t
}

// WithVoid is the set with the presumption of one fact set aside.
func (t Told) WithVoid(k Key) Told {
	t = t.clone()
	t.void[k] = true
	return t
}

// Keys lists the told facts in the order that compare gives.
func (t Told) Keys(compare func(a, b Key) int) []Key { return keys(t.facts, compare) }

// Voided lists the facts whose presumption was set aside, in the same order.
func (t Told) Voided(compare func(a, b Key) int) []Key { return keys(t.void, compare) }

func (t Told) clone() Told { return Told{maps.Clone(t.made().facts), maps.Clone(t.made().void)} }

func (t Told) made() Told {
	if t.facts == nil {
		t.facts = map[Key]Value{}
	}
	if t.void == nil {
		t.void = map[Key]bool{}
	}
	return t
}

func keys[V any](m map[Key]V, compare func(a, b Key) int) []Key {
	return slices.SortedFunc(maps.Keys(m), compare)
}

// Fact is a row of the rally's table of facts.
func (p *Rally) Fact(id FactID) (Fact, bool) { return FactByID(id) }

// Tell is With, as a subject.
func (p *Rally) Tell(k Key, v Value) Subject { return p.With(k, v) }

// Doubt is WithVoid, as a subject.
func (p *Rally) Doubt(k Key) Subject { return p.WithVoid(k) }
