package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// factTable is the table of facts; play.Facts copies it each time.
var factTable = play.Facts()

// Print says a play in plain trade English: the opening, then the events in
// the order told, each with what was told of it. Reading the print gives the
// same play. Nothing that was only presumed is in it: a comma and an order
// word stand between two events whose order was told, a semicolon between
// others, and "or not" after a clause means that its presumption was set
// aside.
func Print(p *play.Rally) string {
	s := ""
	for i, l := range lines(p) {
		switch {
		case i == 0:
		case l.loose:
			s += "; "
		default:
			s += ", "
		}
		s += l.words
	}
	return s
}

// Sentences is the print a line at a time: one for each clause of the opening,
// one for each event.
func Sentences(p *play.Rally) []string {
	var out []string
	for _, l := range lines(p) {
		out = append(out, l.words)
	}
	return out
}

// whichFirst follows an event whose order to the one before is in doubt.
const whichFirst = "which first"

// whosePoint ends a play of which the point is asked for.
const whosePoint = "who gets the point"

// thereIs introduces a player who does nothing.
const thereIs = "there is "

// orNot follows a clause whose presumption was set aside.
const orNot = " or not"

// line is one piece of a print. A loose one is an event whose order to the one
// before it was not told.
type line struct {
	words string
	loose bool
}

func lines(p *play.Rally) []line {
	var out []line
	for _, f := range factTable {
		if f.About == play.OfSetting {
			for _, s := range told(p, play.Key{Fact: f.ID}, play.NoTeam) {
				out = append(out, line{words: s})
			}
		}
	}
	met := map[string]bool{}
	for i, e := range p.Events {
		l := line{words: join(orderWord(p, i), sentence(p, e, met))}
		if i > 0 {
			k := play.Key{Fact: play.Order, Of: p.Pair(i - 1)}
			l.loose = p.Get(k) == play.Unknown
			if l.loose && p.Void(k) {
				l.words += ", " + whichFirst
			}
		}
		out = append(out, l)
	}
	for _, pl := range p.Players {
		if !met[pl.ID] {
			out = append(out, line{words: strings.Join(append([]string{thereIs + introduce(p, pl)}, playerClauses(p, pl)...), ", ")})
		}
	}
	if p.Asked == play.AskedPoint {
		out = append(out, line{words: whosePoint})
	}
	return out
}

// orderWords say how an event lies to the one told before it.
var orderWords = []struct {
	is    play.Value
	words string
}{
	{play.Before, "then"},
	{play.Same, "at the same time"},
	{play.After, "before that"},
}

func orderWord(p *play.Rally, i int) string {
	if i == 0 {
		return ""
	}
	v := p.Get(play.Key{Fact: play.Order, Of: p.Pair(i - 1)})
	for _, w := range orderWords {
		if w.is == v {
			return w.words
		}
	}
	return ""
}

// sentence is one event with its attributes. It marks its player as met.
func sentence(p *play.Rally, e play.Event, met map[string]bool) string {
	v := verbOf(e)
	var clauses []string
	name, plural := "", false
	pl, known := p.Player(e.Player)
	switch {
	case known && met[pl.ID]:
		name = again(p, pl)
	case known:
		met[pl.ID] = true
		name = introduce(p, pl)
		clauses = playerClauses(p, pl)
	case e.Ball():
		name = "the ball"
	case e.Kind == play.Whistle:
		name = "the whistle"
	case e.Kind == play.Intrusion:
		name = "something"
	case e.Kind == play.Dispute:
		name, plural = "the officials", true
	default:
		name, plural = subject(p, e.Team)
	}
	does := v.one
	if plural {
		does = v.many
	}
	s := join(name, does, object(p, e, v.object))
	if e.Number > 0 {
		s += " on the " + ordinal(e.Number) + " contact"
	}
	for _, f := range factTable {
		if f.About == play.OfEvent && slices.Contains(f.Kinds, e.Kind) {
			k := play.Key{Fact: f.ID, Of: e.ID}
			if isObject(f.ID) && p.Get(k) != play.Unknown {
				continue
			}
			clauses = append(clauses, told(p, k, e.Team)...)
		}
	}
	if e.Ball() && e.Team != play.NoTeam && p.Get(play.Key{Fact: play.Side, Of: e.ID}) == play.Unknown {
		s += " on " + owner(p, e.Team) + " side"
	}
	return strings.Join(append([]string{s}, clauses...), ", ")
}

// introduce names a player at the first mention, with the row if it was told.
func introduce(p *play.Rally, pl play.Player) string {
	switch p.Get(play.Key{Fact: play.Row, Of: pl.ID}) {
	case play.Front:
		return who(p, pl, "front-row")
	case play.Back:
		return who(p, pl, "back-row")
	}
	return who(p, pl, "")
}

// again names a player met before. A definite role or number does for one;
// "player" alone would be anybody.
func again(p *play.Rally, pl play.Player) string {
	if _, of := twin(p, pl); of > 1 || pl.Role != play.NoRole || pl.Label != "" {
		return who(p, pl, "")
	}
	return who(p, pl, "same")
}

// playerClauses is what was told of a player and is not in the name.
func playerClauses(p *play.Rally, pl play.Player) []string {
	var out []string
	for _, f := range factTable {
		k := play.Key{Fact: f.ID, Of: pl.ID}
		if f.About == play.OfPlayer && (f.ID != play.Row || p.Get(k) == play.Unknown) {
			out = append(out, told(p, k, pl.Team)...)
		}
	}
	return out
}

// told is the clause of one fact of a thing of team t, or that it is in
// doubt; none when nothing was said of it.
func told(p *play.Rally, k play.Key, t play.Team) []string {
	f, _ := play.FactByID(k.Fact)
	if v := p.Get(k); v != play.Unknown {
		return []string{in(p, f.Words(v), t)}
	}
	if p.Void(k) {
		return []string{in(p, f.Values[0].Words, t) + orNot}
	}
	return nil
}
