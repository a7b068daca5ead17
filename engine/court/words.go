package court

import (
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/engine/play"
)

// sideWords are the names of sides that are not said with an 's. Sorted.
var sideWords = []struct {
	name, subject, owner string
	plural               bool
}{
	{"receiving", "the receiving team", "the receiving team's", false},
	{"serving", "the serving team", "the serving team's", false},
	{"them", "they", "their", true},
	{"us", "we", "our", true},
}

// name is what a side is printed by: the asker's name, else its letter.
func name(names [3][]string, t play.Team) string {
	if len(names[t]) > 0 {
		return names[t][0]
	}
	return t.String()
}

func owner(names [3][]string, t play.Team) string {
	n := name(names, t)
	for _, w := range sideWords {
		if w.name == n {
			return w.owner
		}
	}
	return n + "'s"
}

func subject(names [3][]string, t play.Team) (words string, plural bool) {
	n := name(names, t)
	for _, w := range sideWords {
		if w.name == n {
			return w.subject, w.plural
		}
	}
	return n, false
}

// called lists the names of a side, its letter first, then the asker's, then
// serving or receiving where that is known.
func called(names [3][]string, t play.Team, serving play.Value) []string {
	if t == play.NoTeam {
		return nil
	}
	out := []string{t.String()}
	add := func(n string) {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	for _, n := range names[t] {
		add(n)
	}
	switch serving {
	case play.Value(t.String()):
		add("serving")
	case play.Value(t.Other().String()):
		add("receiving")
	}
	return out
}

// Called are the names that a side goes by, its letter first.
func (a *Alignment) Called(t play.Team) []string {
	return called(a.Names, t, a.serving())
}

// serving is the side that serves, as told or presumed.
func (a *Alignment) serving() play.Value {
	k := play.Key{Fact: ServingSide}
	if v := a.Get(k); v != play.Unknown {
		return v
	}
	return a.Presumption(k)
}

// call is a person in words: "setter #8 in 1". It names nobody else of the
// side.
func (p *Person) call() string {
	s := "player"
	switch {
	case p.Vacant:
		s = "vacancy"
	case p.Role != play.NoRole:
		s = string(p.Role)
	}
	if p.Bench {
		s = "bench " + s
	}
	if p.Label != "" {
		s += " #" + p.Label
	}
	if p.Place.OK() {
		s += " in " + p.Place.String()
	}
	return s
}

// fill puts the things of a key into words with {1}, {2}, {A} and {B}.
func (a *Alignment) fill(words string, k play.Key, short bool) string {
	f, _ := FactByID(k.Fact)
	one, two := "", ""
	who := func(p Person) string {
		if short {
			return "the " + p.call()
		}
		return owner(a.Names, p.Team) + " " + p.call()
	}
	switch {
	case f.ID == TeamOrder:
		one, _ = subject(a.Names, teamOf(k.Of))
	case f.About == play.OfPlayer:
		if p, ok := a.Person(k.Of); ok {
			one = who(p)
		}
	case f.About == play.OfPair:
		if p, q, ok := a.pair(k.Of); ok {
			one, two = who(p), "the "+q.call()
		}
	}
	nameA, manyA := subject(a.Names, play.A)
	nameB, manyB := subject(a.Names, play.B)
	out := strings.NewReplacer("{1}", one, "{2}", two, "{A}", nameA, "{B}", nameB).Replace(words)
	if f.ID == ServingSide && (manyA && strings.HasPrefix(words, "{A}") || manyB && strings.HasPrefix(words, "{B}")) {
		out = strings.TrimSuffix(out, "s")
	}
	if _, many := subject(a.Names, teamOf(k.Of)); f.ID == TeamOrder && many {
		out = strings.Replace(out, " is ", " are ", 1)
	}
	return out
}

func teamOf(s string) play.Team {
	switch s {
	case "A":
		return play.A
	case "B":
		return play.B
	}
	return play.NoTeam
}

// Clause says that a fact has a value.
func (a *Alignment) Clause(k play.Key, v play.Value) string {
	f, ok := FactByID(k.Fact)
	if !ok {
		return string(v)
	}
	return a.fill(f.Words(v), k, false)
}

// Question asks a crew for a fact.
func (a *Alignment) Question(k play.Key) string {
	f, _ := FactByID(k.Fact)
	return a.fill(f.Ask, k, false)
}

// Choices are the labels of a fact's values.
func (a *Alignment) Choices(k play.Key) []string {
	f, _ := FactByID(k.Fact)
	var out []string
	for _, c := range f.Values {
		w := a.fill(c.Words, k, true)
		if f.ID == StandsPlace {
			w = "position " + string(c.Value)
		}
		out = append(out, w)
	}
	return out
}

const (
	thereIs     = "there is "
	orNot       = " or not"
	comesIn     = " comes onto the court during play"
	isVacant    = " position "
	vacant      = " is vacant"
	askedPairs  = "which pairs are compared"
	hasAFoot    = " has a foot "
	fromLeft    = " from the left side line and "
	fromTheLine = " from the centre line"
)

// Sentences say what is told, one a line. None has a comma.
func (a *Alignment) Sentences() []string {
	var out []string
	met := map[string]bool{}
	var order []int // of people, as the sentences bring them in
	meet := func(id string) {
		if !met[id] {
			met[id] = true
			order = append(order, a.index(id))
		}
	}
	for _, p := range a.People {
		who := owner(a.Names, p.Team) + " " + p.call()
		switch {
		case p.Vacant:
			meet(p.ID)
			out = append(out, owner(a.Names, p.Team)+isVacant+p.Place.String()+vacant)
		case p.Bench:
			meet(p.ID)
			out = append(out, who+comesIn)
		}
		for _, f := range p.Feet {
			meet(p.ID)
			out = append(out, who+hasAFoot+span(f.Left, f.Right)+fromLeft+span(f.Near, f.Far)+fromTheLine)
		}
	}
	for _, k := range a.told(func(f play.Fact) bool { return f.About != play.OfSetting }) {
		if x, y, ok := a.pair(k.Of); ok {
			meet(x.ID)
			meet(y.ID)
		} else if k.Fact != TeamOrder {
			meet(k.Of)
		}
		out = append(out, a.say(k))
	}
	if len(order) < len(a.People) || !slices.IsSorted(order) {
		var there []string
		for _, p := range a.People {
			there = append(there, thereIs+owner(a.Names, p.Team)+" "+p.call())
		}
		out = append(there, out...)
	}
	if a.Asked == WantPairs {
		out = append(out, askedPairs)
	}
	var setting []string
	for _, k := range a.told(func(f play.Fact) bool { return f.About == play.OfSetting }) {
		if v := a.Told.Get(k); k.Fact != ServingSide || v == play.Unknown || !a.namesTell(v, out) {
			setting = append(setting, a.say(k))
		}
	}
	return append(setting, out...)
}

// namesTell reports whether the names of the sides in sentences say who serves.
func (a *Alignment) namesTell(v play.Value, sentences []string) bool {
	t := teamOf(string(v))
	for _, s := range sentences {
		if name(a.Names, t) == "serving" && strings.Contains(s, "the serving team") ||
			name(a.Names, t.Other()) == "receiving" && strings.Contains(s, "the receiving team") {
			return true
		}
	}
	return false
}

// told lists the keys of the facts told or put in doubt, of one kind.
func (a *Alignment) told(of func(play.Fact) bool) []play.Key {
	var out []play.Key
	for _, k := range append(a.Told.Keys(a.compare), a.Told.Voided(a.compare)...) {
		if f, ok := FactByID(k.Fact); ok && of(f) && !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	slices.SortFunc(out, a.compare)
	return out
}

// say is the sentence of a fact told or in doubt.
func (a *Alignment) say(k play.Key) string {
	if v := a.Told.Get(k); v != play.Unknown {
		return a.Clause(k, v)
	}
	f, _ := FactByID(k.Fact)
	return a.Clause(k, f.Values[0].Value) + orNot
}

// span is a length, or from one to another.
func span(from, to Length) string {
	if from == to {
		return exact(from)
	}
	return exact(from) + " to " + exact(to)
}

// exact is a length as ParseLength reads it, a negative one with its sign.
func exact(l Length) string {
	sign := ""
	if l < 0 {
		sign, l = "-", -l
	}
	if l%Centimetre == 0 {
		return sign + strconv.Itoa(int(l/Centimetre)) + " cm"
	}
	whole, part := l/Millimetre, l%Millimetre
	s := sign + strconv.Itoa(int(whole))
	if part != 0 {
		s += "." + strings.TrimRight(strconv.Itoa(int(1000 + part))[1:], "0")
	}
	return s + " mm"
}
