package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// Question asks a crew for one fact, with the thing that it is about named:
// "When A's setter touched it, where was the ball?". Where the question alone
// would not tell the event, the event leads it.
func Question(p *play.Rally, k play.Key) string {
	f, ok := play.FactByID(k.Fact)
	switch {
	case !ok:
		return k.String() + "?"
	case f.About == play.OfSetting:
		return f.Ask
	case f.About == play.OfPair:
		a, b := pair(p, k)
		return strings.Replace(f.Ask, "%s", past(p, a, k.Fact)+", or "+past(p, b, k.Fact), 1)
	}
	ask := strings.Replace(f.Ask, "%s", Who(p, k.Of), 1)
	if f.About == play.OfPlayer {
		return ask
	}
	e, _ := p.Event(k.Of)
	if strings.Contains(f.Ask, "%s") && !severalActs(p, e, f) {
		return ask
	}
	if e.Ball() && !severalActs(p, e, f) {
		return ask
	}
	lead := past(p, e, k.Fact)
	return upper(lead) + ": " + lower(ask)
}

// severalActs reports whether another event of the same actor could have the
// fact too.
func severalActs(p *play.Rally, e play.Event, f play.Fact) bool {
	for _, o := range p.Events {
		if o.ID != e.ID && f.About == play.OfEvent && hasKind(f, o.Kind) && Who(p, o.ID) == Who(p, e.ID) {
			return true
		}
	}
	return false
}

func hasKind(f play.Fact, k play.Kind) bool {
	for _, q := range f.Kinds {
		if q == k {
			return true
		}
	}
	return false
}

// Choices are the labels of a fact's values, in the table's order, each one
// saying what it means without the question: for an order "B's blocker first".
func Choices(p *play.Rally, k play.Key) []string {
	f, ok := play.FactByID(k.Fact)
	if !ok {
		return nil
	}
	var out []string
	for _, c := range f.Values {
		if f.About == play.OfPair {
			out = append(out, orderChoice(p, k, c.Value))
			continue
		}
		out = append(out, in(p, c.Words, teamOf(p, k)))
	}
	return out
}

func orderChoice(p *play.Rally, k play.Key, v play.Value) string {
	a, b := pair(p, k)
	first, second := Who(p, a.ID), Who(p, b.ID)
	if first == second {
		first, second = past(p, a, k.Fact), past(p, b, k.Fact)
	}
	switch v {
	case play.Before:
		return first + " first"
	case play.After:
		return second + " first"
	}
	return "at the same time"
}

func upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// lower makes the first letter small, but never that of a side's letter.
func lower(s string) string {
	if strings.HasPrefix(s, "A's ") || strings.HasPrefix(s, "B's ") || s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
