package deadball

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// orNot follows a clause whose presumption was set aside.
const orNot = " or not"

// Sentences say the act and what was told of it, one a line.
func (a *Act) Sentences() []string {
	k, _ := KindByID(a.Kind)
	out := []string{strings.Replace(k.Says, "{team}", a.team(a.By), 1)}
	for _, f := range facts {
		key := play.Key{Fact: f.ID}
		switch v := a.Get(key); {
		case v != play.Unknown:
			out = append(out, f.Words(v))
		case a.Void(key):
			out = append(out, f.Values[0].Words+orNot)
		}
	}
	return out
}

// Print is the sentences in one line; Parse reads it back.
func (a *Act) Print() string { return strings.Join(a.Sentences(), ", ") }

// Clause says that a fact has a value.
func (a *Act) Clause(k play.Key, v play.Value) string {
	f, ok := FactByID(k.Fact)
	if !ok {
		return string(k.Fact) + " " + string(v)
	}
	return f.Words(v)
}

// Question asks a crew for a fact.
func (a *Act) Question(k play.Key) string {
	f, ok := FactByID(k.Fact)
	if !ok {
		return string(k.Fact)
	}
	return f.Ask
}

// Choices are the labels of a fact's values, in the table's order.
func (a *Act) Choices(k play.Key) []string {
	f, _ := FactByID(k.Fact)
	var out []string
	for _, c := range f.Values {
		out = append(out, c.Words)
	}
	return out
}

// sideWords are the names of sides as a print has them. A name outside the
// table is a colour or another word, printed "the NAME team".
var sideWords = []struct{ name, words, other string }{
	{"home", "the home team", "visitors"},
	{"receiving", "the receiving team", "serving"},
	{"serving", "the serving team", "receiving"},
	{"them", "their team", "us"},
	{"us", "our team", "them"},
	{"visitors", "the visiting team", "home"},
}

// team is a side as a print names it: by the asker's first name for it, else
// by its letter.
func (a *Act) team(t play.Team) string {
	if len(a.Names[t]) == 0 {
		return t.String()
	}
	n := a.Names[t][0]
	for _, w := range sideWords {
		if w.name == n {
			return w.words
		}
	}
	return "the " + n + " team"
}

// Parse reads a print, with or without a full stop, and nothing else: what it
// makes of the text prints as that very text. A side that goes by a name is
// the first one; the counterpart of its name goes to the other.
func Parse(text string) (*Act, bool) {
	text = strings.TrimSuffix(strings.TrimSpace(text), ".")
	head, rest, more := strings.Cut(text, ", ")
	for _, k := range kinds {
		before, after, _ := strings.Cut(k.Says, "{team}")
		name, ok := strings.CutPrefix(head, before)
		if !ok {
			continue
		}
		if name, ok = strings.CutSuffix(name, after); !ok {
			continue
		}
		a, ok := named(k.ID, name)
		if !ok {
			continue
		}
		if more {
			for _, clause := range strings.Split(rest, ", ") {
				if a, ok = a.clause(clause); !ok {
					break
				}
			}
		}
		if ok && a.Check() == nil && a.Print() == text {
			return a, true
		}
	}
	return nil, false
}

// named is an act of the side that a print names.
func named(k Kind, name string) (*Act, bool) {
	switch name {
	case "A":
		return New(k, play.A), true
	case "B":
		return New(k, play.B), true
	}
	for _, w := range sideWords {
		if w.words == name {
			a := New(k, play.A)
			a.Names[play.A], a.Names[play.B] = []string{w.name}, []string{w.other}
			return a, true
		}
	}
	n, ok := strings.CutPrefix(name, "the ")
	if !ok {
		return nil, false
	}
	if n, ok = strings.CutSuffix(n, " team"); !ok || n == "" || strings.ContainsAny(n, " ,.") {
		return nil, false
	}
	a := New(k, play.A)
	a.Names[play.A] = []string{n}
	return a, true
}

// clause is the act with what one clause of a print tells.
func (a *Act) clause(s string) (*Act, bool) {
	k, _ := KindByID(a.Kind)
	for _, f := range facts {
		if !slices.Contains(k.Facts, f.ID) {
			continue
		}
		if s == f.Values[0].Words+orNot {
			return a.WithVoid(f.ID), true
		}
		for _, c := range f.Values {
			if c.Words == s {
				return a.With(f.ID, c.Value), true
			}
		}
	}
	return nil, false
}
