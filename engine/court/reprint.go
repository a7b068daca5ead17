package court

import (
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/engine/play"
)

// ReadPrint reads sentences as an alignment prints them and nothing else: what
// it makes of them says itself in those very sentences. Sides that go by other
// names than their letters are told apart only by these.
func ReadPrint(sentences []string) (*Alignment, bool) {
	for _, first := range []play.Team{play.A, play.B} {
		r := &reprint{a: &Alignment{}, first: first}
		if r.read(sentences) && r.a.Check() == nil && slices.Equal(r.a.Sentences(), sentences) {
			return r.a, true
		}
	}
	return nil, false
}

// reprint is an alignment on its way back from its sentences.
type reprint struct {
	a     *Alignment
	first play.Team
}

func (r *reprint) read(sentences []string) bool {
	for i, s := range sentences {
		if s == askedPairs && i == len(sentences)-1 && len(sentences) > 0 {
			r.a.Asked = WantPairs
			continue
		}
		if !r.sentence(s) {
			return false
		}
	}
	if v := r.a.Get(play.Key{Fact: ServingSide}); v == play.Unknown {
		for _, t := range []play.Team{play.A, play.B} {
			if v := play.Value(t.String()); r.a.namesTell(v, sentences) {
				r.a = r.a.With(play.Key{Fact: ServingSide}, v)
			}
		}
	}
	return len(sentences) > 0
}

func (r *reprint) sentence(s string) bool {
	if rest, ok := strings.CutPrefix(s, thereIs); ok {
		_, ok := r.person(rest)
		return ok
	}
	if rest, ok := strings.CutSuffix(s, vacant); ok {
		own, place, ok := strings.Cut(rest, isVacant)
		t := r.owner(own)
		if !ok || t == play.NoTeam || len(place) != 1 {
			return false
		}
		_, ok = r.find(Person{Team: t, Place: Position(place[0] - '0'), Vacant: true})
		return ok
	}
	if who, ok := strings.CutSuffix(s, comesIn); ok {
		_, ok := r.person(who)
		return ok
	}
	if who, where, ok := strings.Cut(s, hasAFoot); ok {
		if left, rest, ok := strings.Cut(where, fromLeft); ok {
			return r.foot(who, left, strings.TrimSuffix(rest, fromTheLine))
		}
	}
	words, doubt := strings.CutSuffix(s, orNot)
	for _, f := range facts {
		for _, c := range f.Values {
			of, ok := r.fits(f, c.Words, words)
			if !ok {
				continue
			}
			k := play.Key{Fact: f.ID, Of: of}
			if doubt {
				r.a = r.a.WithVoid(k)
			} else {
				r.a = r.a.With(k, c.Value)
			}
			return true
		}
	}
	return false
}

func (r *reprint) foot(who, left, near string) bool {
	id, ok := r.person(who)
	f := Tread{}
	var ok1, ok2 bool
	f.Left, f.Right, ok1 = spanOf(left)
	f.Near, f.Far, ok2 = spanOf(near)
	if !ok || !ok1 || !ok2 {
		return false
	}
	i := r.a.index(id)
	r.a.People[i].Feet = append(r.a.People[i].Feet, f)
	return true
}

func spanOf(s string) (from, to Length, ok bool) {
	lo, hi, two := strings.Cut(s, " to ")
	if !two {
		hi = lo
	}
	from, ok1 := lengthOf(lo)
	to, ok2 := lengthOf(hi)
	return from, to, ok1 && ok2
}

func lengthOf(s string) (Length, bool) {
	rest, minus := strings.CutPrefix(s, "-")
	l, err := ParseLength(rest)
	if minus {
		l = -l
	}
	return l, err == nil
}

// fits matches a sentence against the words of a value. It adds the people
// that the sentence brings in.
func (r *reprint) fits(f play.Fact, words, s string) (string, bool) {
	switch {
	case f.ID == ServingSide:
		for _, t := range []play.Team{play.A, play.B} {
			if words != "{"+t.String()+"} serves" {
				continue
			}
			who, ok := strings.CutSuffix(s, " serves")
			if !ok {
				who, ok = strings.CutSuffix(s, " serve")
			}
			return "", ok && r.subject(who) == t
		}
	case f.About == play.OfSetting:
		return "", s == words
	case f.ID == TeamOrder:
		for _, rest := range []string{strings.TrimPrefix(words, "{1}"), strings.Replace(strings.TrimPrefix(words, "{1}"), " is ", " are ", 1)} {
			if who, ok := strings.CutSuffix(s, rest); ok {
				t := r.subject(who)
				return t.String(), t != play.NoTeam
			}
		}
		return "", false
	}
	before, after, _ := strings.Cut(words, "{1}")
	mid, end, two := strings.Cut(after, "{2}")
	s, ok := strings.CutPrefix(s, before)
	if !ok {
		return "", false
	}
	if !two {
		who, ok := strings.CutSuffix(s, after)
		if !ok {
			return "", false
		}
		id, ok := r.person(who)
		return id, ok
	}
	one, other, ok := strings.Cut(s, mid+"the ")
	other, ok2 := strings.CutSuffix(other, end)
	if !ok || !ok2 {
		return "", false
	}
	x, ok := r.person(one)
	if !ok {
		return "", false
	}
	p, _ := r.a.Person(x)
	q, ok := parsePerson(other)
	if !ok {
		return "", false
	}
	q.Team = p.Team
	y, ok := r.find(q)
	return x + "-" + y, ok && r.a.index(x) < r.a.index(y)
}

// person finds or adds the one whom words with an owner name.
func (r *reprint) person(s string) (string, bool) {
	for at := range len(s) {
		if s[at] != ' ' {
			continue
		}
		if p, ok := parsePerson(s[at+1:]); ok {
			if p.Team = r.owner(s[:at]); p.Team != play.NoTeam {
				return r.find(p)
			}
		}
	}
	return "", false
}

func (r *reprint) find(p Person) (string, bool) {
	for _, q := range r.a.People {
		if q.Team == p.Team && q.call() == p.call() {
			return q.ID, true
		}
	}
	p.ID = "p" + strconv.Itoa(len(r.a.People)+1)
	r.a.People = append(r.a.People, p)
	return p.ID, true
}

// parsePerson reads what Person.call says.
func parsePerson(s string) (Person, bool) {
	var p Person
	rest := s
	if before, place, ok := strings.Cut(rest, " in "); ok {
		if len(place) != 1 || !Position(place[0]-'0').OK() {
			return p, false
		}
		p.Place, rest = Position(place[0]-'0'), before
	}
	if before, label, ok := strings.Cut(rest, " #"); ok {
		p.Label, rest = label, before
	}
	rest, p.Bench = strings.CutPrefix(rest, "bench ")
	switch {
	case rest == "vacancy":
		p.Vacant = true
	case rest == "player":
	case slices.Contains(play.Roles(), play.Role(rest)) && rest != "":
		p.Role = play.Role(rest)
	default:
		return p, false
	}
	return p, p.call() == s
}

// side is the team that goes by a name; a new name goes to the team that is
// still free.
func (r *reprint) side(n string) play.Team {
	for _, t := range []play.Team{play.A, play.B} {
		if name(r.a.Names, t) == n {
			return t
		}
	}
	t := r.first
	switch n {
	case "A", "B", "", "the":
		return play.NoTeam
	case "them", "visitors":
		t = r.first.Other()
	}
	if len(r.a.Names[t]) > 0 {
		t = t.Other()
	}
	if len(r.a.Names[t]) > 0 || strings.ContainsAny(n, " ,;#") || slices.Contains(play.Roles(), play.Role(n)) { // "libero serves"
		return play.NoTeam
	}
	r.a.Names[t] = []string{n}
	return t
}

func (r *reprint) owner(s string) play.Team {
	for _, w := range sideWords {
		if w.owner == s {
			return r.side(w.name)
		}
	}
	if n, ok := strings.CutSuffix(s, "'s"); ok {
		return r.side(n)
	}
	return play.NoTeam
}

func (r *reprint) subject(s string) play.Team {
	for _, w := range sideWords {
		if w.subject == s {
			return r.side(w.name)
		}
	}
	return r.side(s)
}
