package court

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// Trouble is what is wrong with an order of service.
type Trouble string

// The troubles. None: a history is told and asked about.
const (
	NoTrouble     Trouble = ""
	WrongServer   Trouble = "wrong-server"    // a player of By served out of the order
	WrongOrder    Trouble = "wrong-order"     // By stood in a wrong order of positions over several rallies
	OfficialOrder Trouble = "officials-order" // an official gave By a wrong order
	BothLost      Trouble = "both-lost"       // both teams lost their order
	VacantServes  Trouble = "vacant-serves"   // a vacant position of By rotates to serve
)

// What is asked of a line-up.
const (
	WantPoints Wanted = "points" // how many points it costs
	WantServer Wanted = "server" // who serves next
	WantFront  Wanted = "front"  // who is front row
	WantWhere  Wanted = "where"  // who is where
)

// The facts of a line-up.
const (
	OrderFound  play.FactID = "order-found"
	OrderMoment play.FactID = "order-moment"
)

// The values of those facts.
const (
	FoundBefore play.Value = "before"
	FoundRally  play.Value = "rally"
	FoundTerm   play.Value = "term"
	FoundLater  play.Value = "later"
)

// lineupFacts is the table of a line-up, sorted by id.
var lineupFacts = []play.Fact{
	{ID: OrderFound, About: play.OfSetting,
		Ask:    "When was it found?",
		Doc:    "How late a wrong server or a wrong order was found. In the same term: the team that was wrong has scored, and the opponents have not served since.",
		Values: []play.Choice{{Value: FoundBefore, Words: "it is found before the service contact"}, {Value: FoundRally, Words: "it is found in or right after that first rally"}, {Value: FoundTerm, Words: "it is found after points and before the opponents have served"}, {Value: FoundLater, Words: "it is found after the opponents have served"}}},
	{ID: OrderMoment, About: play.OfSetting,
		Ask:    "Does the score sheet show when it began?",
		Doc:    "Whether the moment from which the order was wrong can be fixed, so that the points since are known.",
		Values: []play.Choice{{Value: play.Yes, Words: "the score sheet shows when it began"}, {Value: play.No, Words: "nobody can tell when it began"}},
		Why:    "the score sheet shows when it began"},
}

// LineupFact finds a row of the table of a line-up.
func LineupFact(id play.FactID) (play.Fact, bool) {
	i := slices.IndexFunc(lineupFacts, func(f play.Fact) bool { return f.ID == id })
	if i < 0 {
		return play.Fact{}, false
	}
	return lineupFacts[i], true
}

// Lineup is a question about the order of service: a trouble with it, or the
// history of a set. It is a value.
type Lineup struct {
	play.Told
	Names   [3][]string
	By      play.Team // whose order it is
	Trouble Trouble
	History *History // never changed once it is in a line-up
	Asked   Wanted
}

// Presumption is what every official would grant for an untold fact.
func (l *Lineup) Presumption(k play.Key) play.Value {
	if k.Fact == OrderMoment && !l.Void(k) {
		return play.Yes
	}
	return play.Unknown
}

func byLineupFact(a, b play.Key) int { return strings.Compare(string(a.Fact), string(b.Fact)) }

// Known lists the told facts, sorted.
func (l *Lineup) Known() []play.Key { return l.Keys(byLineupFact) }

// Fact is a row of the table.
func (l *Lineup) Fact(id play.FactID) (play.Fact, bool) { return LineupFact(id) }

// With is the line-up with one more fact told.
func (l *Lineup) With(f play.FactID, v play.Value) *Lineup {
	m := *l
	m.Told = l.Told.With(play.Key{Fact: f}, v)
	return &m
}

// Tell is the line-up with one more fact told; an unknown value takes it away.
func (l *Lineup) Tell(k play.Key, v play.Value) play.Subject {
	m := *l
	m.Told = l.Told.With(k, v)
	return &m
}

// Doubt is the line-up with one presumption set aside.
func (l *Lineup) Doubt(k play.Key) play.Subject {
	m := *l
	m.Told = l.Told.WithVoid(k)
	return &m
}

// Things lists what the facts can be about: only the line-up itself.
func (l *Lineup) Things() []string { return nil }

// Check reports the first thing that makes the line-up malformed.
func (l *Lineup) Check() error {
	for _, k := range append(l.Known(), l.Voided(byLineupFact)...) {
		f, ok := LineupFact(k.Fact)
		switch v := l.Get(k); {
		case !ok:
			return fmt.Errorf("fact %q: there is no such fact of a line-up", k.Fact)
		case k.Of != "":
			return fmt.Errorf("%s: it is of the line-up, not of %q", k, k.Of)
		case v != play.Unknown && !f.Has(v):
			return fmt.Errorf("%s: is never %q", k, v)
		}
	}
	switch {
	case l.History == nil && l.Trouble == NoTrouble:
		return fmt.Errorf("line-up: neither a trouble nor a history was told")
	case l.Trouble != NoTrouble && troubleWords(l.Trouble) == "":
		return fmt.Errorf("line-up: there is no trouble %q", l.Trouble)
	case l.Trouble != NoTrouble && l.Trouble != BothLost && l.By == play.NoTeam:
		return fmt.Errorf("line-up: it does not say whose order is wrong")
	}
	if l.History != nil {
		if _, err := l.History.Replay(); err != nil {
			return err
		}
	}
	return nil
}

// troubles are the words of each trouble; {A} is the side.
var troubles = []struct {
	is          Trouble
	words, many string
}{
	{WrongServer, "{A} serves out of the order", "{A} serve out of the order"},
	{WrongOrder, "{A} has played in a wrong order", "{A} have played in a wrong order"},
	{OfficialOrder, "{A} was given a wrong order by the officials", "{A} were given a wrong order by the officials"},
	{BothLost, "both teams lost their order", ""},
	{VacantServes, "{A} has a vacant position that rotates to serve", "{A} have a vacant position that rotates to serve"},
}

func troubleWords(t Trouble) string {
	for _, w := range troubles {
		if w.is == t {
			return w.words
		}
	}
	return ""
}

var wants = []struct {
	is    Wanted
	words string
}{
	{WantPoints, "how many points does it cost"},
	{WantServer, "who serves next"},
	{WantFront, "who is front row"},
	{WantWhere, "who is where"},
}

// Called are the names that a side goes by, its letter first. In a trouble the
// side that is wrong was serving, unless only positions were wrong.
func (l *Lineup) Called(t play.Team) []string {
	serving := play.Unknown
	switch l.Trouble {
	case WrongServer, OfficialOrder, VacantServes:
		serving = play.Value(l.By.String())
	}
	return called(l.Names, t, serving)
}

// Sentences say what is told, one a line. None has a comma.
func (l *Lineup) Sentences() []string {
	var out []string
	for _, w := range troubles {
		if w.is != l.Trouble {
			continue
		}
		who, many := subject(l.Names, l.By)
		words := w.words
		if many {
			words = w.many
		}
		out = append(out, strings.ReplaceAll(words, "{A}", who))
	}
	if h := l.History; h != nil {
		out = append(out, l.story(h)...)
	}
	for _, k := range l.Known() {
		out = append(out, l.Clause(k, l.Get(k)))
	}
	for _, k := range l.Voided(byLineupFact) {
		if l.Get(k) == play.Unknown {
			f, _ := LineupFact(k.Fact)
			out = append(out, l.Clause(k, f.Values[0].Value)+orNot)
		}
	}
	for _, w := range wants {
		if w.is == l.Asked {
			out = append(out, w.words)
		}
	}
	return out
}

// story says a history: the line-ups, the first server, then what happened,
// rallies that follow one another in one line.
func (l *Lineup) story(h *History) []string {
	var out []string
	for _, t := range []play.Team{play.A, play.B} {
		if h.Start[t] != ([6]string{}) {
			out = append(out, owner(l.Names, t)+lineupIs+strings.Join(h.Start[t][:], " "))
		}
	}
	who, many := subject(l.Names, h.First)
	out = append(out, who+verb(many, " serves", " serve")+" first")
	rallies := ""
	flush := func() {
		if rallies != "" {
			out = append(out, wonBy+rallies)
			rallies = ""
		}
	}
	for _, e := range h.Entries {
		if e.What == Won && e.Player == "" {
			rallies += " " + name(l.Names, e.Team)
			continue
		}
		flush()
		who := owner(l.Names, e.Team)
		switch e.What {
		case Won:
			out = append(out, "#"+e.Player+servesAnd+name(l.Names, e.Team))
		case Awarded:
			out = append(out, pointTo+name(l.Names, e.Team))
		case Substituted:
			out = append(out, who+" #"+e.Player+comesFor+e.Out)
		case LiberoIn:
			out = append(out, who+liberoIs+e.Player+comesFor+e.Out)
		case LiberoOut:
			out = append(out, who+" #"+e.Player+comesForLibero+e.Out)
		}
	}
	flush()
	return out
}

const (
	lineupIs       = " line-up is "
	wonBy          = "rallies won by"
	servesAnd      = " serves and the rally goes to "
	pointTo        = "a point is given to "
	comesFor       = " comes in for #"
	liberoIs       = " libero #"
	comesForLibero = " comes in for the libero #"
)

func verb(many bool, one, more string) string {
	if many {
		return more
	}
	return one
}

// Clause says that a fact has a value.
func (l *Lineup) Clause(k play.Key, v play.Value) string {
	f, _ := LineupFact(k.Fact)
	return f.Words(v)
}

// Question asks a crew for a fact.
func (l *Lineup) Question(k play.Key) string {
	f, _ := LineupFact(k.Fact)
	return f.Ask
}

// Choices are the labels of a fact's values.
func (l *Lineup) Choices(k play.Key) []string {
	f, _ := LineupFact(k.Fact)
	var out []string
	for _, c := range f.Values {
		out = append(out, c.Words)
	}
	return out
}
