package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// readPrint reads a text that is word for word a print, with or without a full
// stop. It takes nothing else:
// what it makes of the text must print as that very text, so no word is
// guessed at or passed over. A print tells a side by its name, so a play and
// its swap are the same to it.
func readPrint(text string) (*play.Rally, bool) {
	text = strings.TrimSuffix(strings.TrimSpace(text), ".")
	if text == "" {
		return nil, false
	}
	for _, first := range []play.Team{play.A, play.B} {
		r := &reprint{p: &play.Rally{}, first: first, who: map[naming]string{}}
		if r.read(text) && r.p.Check() == nil && Print(r.p) == text {
			return r.pairNames(text), true
		}
	}
	return nil, false
}

// namePairs are names of which one tells the other.
var namePairs = [][2]string{{"home", "visitors"}, {"serving", "receiving"}, {"us", "them"}}

// pairNames gives a side that the print does not name the counterpart of the
// other side's name.
func (r *reprint) pairNames(text string) *play.Rally {
	for _, pair := range namePairs {
		for i, n := range pair {
			for _, t := range []play.Team{play.A, play.B} {
				if r.p.Name(t) != n || len(r.p.Names[t.Other()]) > 0 {
					continue
				}
				q := r.p.With(play.Key{}, play.Unknown) // a copy
				if q.Names[t.Other()] = []string{pair[1-i]}; Print(q) == text {
					return q
				}
			}
		}
	}
	return r.p
}

// reprint is a play on its way back from its print.
type reprint struct {
	p     *play.Rally
	first play.Team // the side that us, home or any other first name stands for
	who   map[naming]string
	last  string // the player whose clauses may follow
}

// naming is what a print calls a player by.
type naming struct {
	team  play.Team
	nth   int
	role  play.Role
	label string
}

func (r *reprint) read(text string) bool {
	for i, piece := range strings.Split(text, "; ") {
		for j, clause := range strings.Split(piece, ", ") {
			if !r.clause(clause, i > 0 && j == 0) {
				return false
			}
		}
	}
	return true
}

// clause takes one clause: of the opening, an event, or said of the last
// event or its player. Only an event can follow a semicolon.
func (r *reprint) clause(s string, event bool) bool {
	switch {
	case event:
		return r.event(s, play.Unknown)
	case s == whosePoint:
		r.p.Asked = play.AskedPoint
		return true
	case s == whichFirst:
		return len(r.p.Events) > 1 && r.void(play.Key{Fact: play.Order, Of: r.p.Pair(len(r.p.Events) - 2)})
	case strings.HasPrefix(s, thereIs):
		id, ok := r.player(strings.TrimPrefix(s, thereIs))
		r.last = id
		return ok
	}
	n := len(r.p.Events)
	if n == 0 && r.last == "" {
		return r.said(s, play.OfSetting, "", play.Event{}) || r.event(s, play.Unknown)
	}
	if r.last != "" && r.said(s, play.OfPlayer, r.last, play.Event{}) {
		return true
	}
	if n == 0 {
		return false
	}
	if r.said(s, play.OfEvent, r.p.Events[n-1].ID, r.p.Events[n-1]) {
		return true
	}
	for _, w := range orderWords {
		if rest, ok := strings.CutPrefix(s, w.words+" "); ok && r.event(rest, w.is) {
			return true
		}
	}
	return false
}

func (r *reprint) void(k play.Key) bool {
	r.p = r.p.WithVoid(k)
	return true
}

// said takes a clause of a fact about a thing, told or in doubt.
func (r *reprint) said(s string, about play.About, of string, e play.Event) bool {
	words, doubt := strings.CutSuffix(s, orNot)
	for _, f := range factTable {
		if f.About != about || about == play.OfEvent && !slices.Contains(f.Kinds, e.Kind) {
			continue
		}
		k := play.Key{Fact: f.ID, Of: of}
		for _, c := range f.Values {
			if !r.fits(words, c.Words, e.Team) {
				continue
			}
			if doubt {
				return r.void(k)
			}
			r.p = telling(r.p, k, c.Value)
			return true
		}
	}
	return false
}

// telling is the play with one fact told; the side of a ball event is its team
// too.
func telling(p *play.Rally, k play.Key, v play.Value) *play.Rally {
	p = p.With(k, v)
	if k.Fact != play.Side {
		return p
	}
	p.Events = slices.Clone(p.Events)
	for i := range p.Events {
		if p.Events[i].ID == k.Of {
			p.Events[i].Team = play.A
			if v == play.ValueB {
				p.Events[i].Team = play.B
			}
		}
	}
	return p
}

// fits reports whether a clause is the words of a fact's value, with the sides
// by their names.
func (r *reprint) fits(s, words string, own play.Team) bool {
	open := strings.IndexByte(words, '{')
	if open < 0 {
		return s == words
	}
	end := strings.IndexByte(words, '}')
	before, slot, after := words[:open], words[open+1:end], words[end+1:]
	want := own
	switch slot {
	case "A":
		want = play.A
	case "B":
		want = play.B
	case "opp":
		want = own.Other()
	}
	if before != "" { // "ball wholly on A's side"
		s, okBefore := strings.CutPrefix(s, before)
		s, okAfter := strings.CutSuffix(s, after)
		return okBefore && okAfter && r.owner(s) == want && want != play.NoTeam
	}
	for _, verb := range []string{after, strings.Replace(after, " has ", " have ", 1), strings.Replace(after, " is ", " are ", 1)} {
		if name, ok := strings.CutSuffix(s, verb); ok && r.subject(name) == want {
			return true
		}
	}
	return false
}

// side is the team that goes by a name; a new name goes to the team that is
// still free.
func (r *reprint) side(name string) play.Team {
	for _, t := range []play.Team{play.A, play.B} {
		if r.p.Name(t) == name {
			return t
		}
	}
	t := r.first
	switch name {
	case "A", "B", "", "somebody", "the ball", "something":
		return play.NoTeam // no name, or the letter of a side that goes by one
	case "them", "visitors":
		t = r.first.Other()
	}
	if len(r.p.Names[t]) > 0 {
		t = t.Other()
	}
	if len(r.p.Names[t]) > 0 || strings.ContainsAny(name, " ,;#") || slices.Contains(play.Roles(), play.Role(name)) { // "libero serves"
		return play.NoTeam
	}
	r.p = r.p.With(play.Key{}, play.Unknown) // a copy
	r.p.Names[t] = []string{name}
	return t
}

// subject is the team that a subject names.
func (r *reprint) subject(s string) play.Team {
	for _, w := range sideWords {
		if w.subject == s {
			return r.side(w.name)
		}
	}
	return r.side(s)
}

// owner is the team that an owner names.
func (r *reprint) owner(s string) play.Team {
	for _, w := range sideWords {
		if w.owner == s {
			return r.side(w.name)
		}
	}
	if name, ok := strings.CutSuffix(s, "'s"); ok {
		return r.side(name)
	}
	if name, ok := strings.CutSuffix(s, "'"); ok {
		return r.side(name)
	}
	return play.NoTeam
}
