package deadball

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// Act is one request or act in a dead ball. It is a value: Tell, Doubt and
// Swap give changed copies. Every fact is about the act itself; no key names a
// thing.
type Act struct {
	play.Told
	Kind Kind
	By   play.Team // whose act it is
	// Names are what the asker calls each side, without its letter.
	Names [3][]string
}

// New is an act of a side of which nothing else was told.
func New(k Kind, by play.Team) *Act { return &Act{Kind: k, By: by} }

func (a *Act) copy() *Act {
	b := *a
	return &b
}

// Tell is the act with one more fact told; an unknown value takes the fact
// away.
func (a *Act) Tell(k play.Key, v play.Value) play.Subject {
	b := a.copy()
	b.Told = a.Told.With(k, v)
	return b
}

// With is Tell for a fact of the act.
func (a *Act) With(f play.FactID, v play.Value) *Act {
	return a.Tell(play.Key{Fact: f}, v).(*Act)
}

// Doubt is the act with the presumption of one fact set aside.
func (a *Act) Doubt(k play.Key) play.Subject { return a.WithVoid(k.Fact) }

// WithVoid is Doubt for a fact of the act.
func (a *Act) WithVoid(f play.FactID) *Act {
	b := a.copy()
	b.Told = a.Told.WithVoid(play.Key{Fact: f})
	return b
}

// Fact is a row of the table of facts.
func (a *Act) Fact(id play.FactID) (play.Fact, bool) { return FactByID(id) }

// Known lists the told facts in the order of the table.
func (a *Act) Known() []play.Key { return a.Keys(byTable) }

// Presumption is what every official would grant of a dead ball.
func (a *Act) Presumption(k play.Key) play.Value {
	if a.Void(k) || k.Of != "" {
		return play.Unknown
	}
	row, ok := rowOf(k.Fact)
	if !ok {
		return play.Unknown
	}
	return row.granted
}

// Check reports the first thing that makes the act malformed.
func (a *Act) Check() error {
	k, ok := KindByID(a.Kind)
	if !ok {
		return fmt.Errorf("kind %q: unknown; use one of %s", a.Kind, strings.Join(kindIDs(), ", "))
	}
	if a.By != play.A && a.By != play.B {
		return fmt.Errorf("team: whose act it is must be told")
	}
	for _, key := range slices.Concat(a.Known(), a.Voided(byTable)) {
		f, ok := FactByID(key.Fact)
		switch {
		case !ok:
			return fmt.Errorf("%s: there is no such fact", key)
		case key.Of != "":
			return fmt.Errorf("%s: belongs to the act, not to %q", key.Fact, key.Of)
		case !slices.Contains(k.Facts, key.Fact):
			return fmt.Errorf("%s: an act of kind %s cannot have it", key.Fact, a.Kind)
		}
		if v := a.Get(key); v != play.Unknown && !f.Has(v) {
			return fmt.Errorf("%s: is never %q; use one of %s", key.Fact, v, values(f))
		}
	}
	return nil
}

// Swap is the same act with the sides changed over.
func (a *Act) Swap() *Act {
	b := a.copy()
	b.By = a.By.Other()
	b.Names[play.A], b.Names[play.B] = a.Names[play.B], a.Names[play.A]
	return b
}

// Called are the names that a side goes by, its letter first.
func (a *Act) Called(t play.Team) []string {
	if t == play.NoTeam {
		return nil
	}
	out := []string{t.String()}
	for _, n := range a.Names[t] {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

// Things lists what facts can be about: the act alone, which needs no name.
func (a *Act) Things() []string { return nil }

func byTable(a, b play.Key) int {
	return cmp.Or(cmp.Compare(factIndex[a.Fact], factIndex[b.Fact]), cmp.Compare(a.Of, b.Of))
}

func values(f play.Fact) string {
	var s []string
	for _, c := range f.Values {
		s = append(s, string(c.Value))
	}
	return strings.Join(s, ", ")
}

// has reports whether acts of this kind can have a fact.
func (a *Act) has(f play.FactID) bool {
	k, _ := KindByID(a.Kind)
	return slices.Contains(k.Facts, f)
}
