package notation

import (
	"slices"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// aligned is an alignment in the making.
type aligned struct {
	s    *scene
	ws   []courtWord
	used []bool
	a    *court.Alignment

	team   play.Team // of whoever has no side
	subj   int       // the person whom the next words are said of, -1 for none
	side   play.Team // the side that they are said of, where it is no person
	upon   *relating // a relation that waits for the other one
	spots  []spot
	line   bool // a line was named, which "it" can be
	denied bool
	both   bool // both teams are told of
	air    bool // the relation that follows is of somebody in the air
	inFor  bool // whoever is named next is off the court: the libero stands there
	told   int  // things told of positions
	asks   bool // a fault of position is asked about or named
	clash  bool
}

// relating is a relation told of the subject, with its axis still open for
// "level".
type relating struct {
	op    courtOp
	value play.Value
}

// spot is how far from the net somebody was told to be: between two lengths
// from the net, or from the attack line.
type spot struct {
	who      int
	line     bool // counted from the attack line, away from the net
	from, to court.Length
}

// farOff is farther than anybody stands.
const farOff = 50 * court.Metre

// readAlignment reads where players stand at the service. Every word must have
// a part in it or be known not to matter; else it is listed as unread.
func readAlignment(s *scene) (heard, bool) {
	r := &aligned{s: s, ws: s.courtWords(), used: make([]bool, len(s.toks)), a: &court.Alignment{}, subj: -1}
	r.sides()
	for i := 0; i < len(r.ws); {
		if r.ws[i].mark != 0 {
			r.stop(r.ws[i].mark)
			i++
			continue
		}
		i += max(r.take(i), 1)
	}
	r.bySpots()
	if r.upon != nil {
		r.clash = true
	}
	if r.clash || r.told == 0 && r.a.Asked != court.WantPairs || !r.asks && !r.positional() {
		return heard{}, false
	}
	r.name()
	if r.a.Check() != nil {
		return heard{}, false
	}
	h := heard{subject: r.a, used: r.used, scenery: make([]bool, len(r.used))}
	left, ok := sceneryOf(s, &h)
	if !ok {
		return heard{}, false
	}
	h.sure = left == 0
	return h, true
}

// positional reports whether what was told can only be of positions.
func (r *aligned) positional() bool {
	for _, k := range r.a.Known() {
		if k.Fact != court.StandsPlace && k.Fact != court.ServingSide && k.Fact != court.StandsWhen {
			return true
		}
	}
	return false
}

// linkSides links the part in the serve to the names of the sides where the one
// stands right after the other: "their serving team's setter".
func (s *scene) linkSides() {
	for i, t := range s.toks {
		if i > 0 && t.side.fam == serveRec && s.toks[i-1].side.ok() && s.toks[i-1].side.fam != serveRec {
			if owner := s.team(s.toks[i-1].side); owner != play.NoTeam && s.first[serveRec] == play.NoTeam {
				s.first[serveRec] = owner
				if t.side.n == 1 {
					s.first[serveRec] = owner.Other()
				}
			}
		}
	}
}

// sides settles whose names the sides go by.
func (r *aligned) sides() {
	r.team = play.A
	s := r.s
	for _, t := range s.toks {
		if t.side.ok() {
			if team := s.team(t.side); team != play.NoTeam {
				r.team = team
				return
			}
		}
	}
}

func (r *aligned) mark(from, to int) {
	for _, w := range r.ws[from:to] {
		for i := w.from; i < w.to; i++ {
			r.used[i] = true
		}
	}
}

// stop ends a clause.
func (r *aligned) stop(m byte) {
	if r.upon != nil && m != ',' {
		r.clash = true
	}
	r.denied, r.air, r.inFor = false, false, false
}

// take reads what begins at word i; it gives the number of words read.
func (r *aligned) take(i int) int {
	if l, known, n := lengthAt(r.ws, i); n > 0 {
		if row, k := courtRowAt(r.ws, i+n); row != nil && (row.op == coDepth || row.op == coAcross || row.op == coPlace && known) {
			r.mark(i, i+n+k)
			if row.op == coPlace && !(row.value == byLineBehind && r.ws[i+n+k-1].form == "it" && !r.line) {
				r.place(row.value, l)
				return n + k
			}
			r.row(row, i+n, i+n+k)
			return n + k
		}
	}
	row, k := courtRowAt(r.ws, i)
	if p, ok := someoneAt(r.ws, i); ok && p.n >= k && (row == nil || row.op != coReceive) {
		if p.she && r.subj < 0 {
			return 0
		}
		r.mark(i, i+p.n)
		if !p.named && i > 0 && r.ws[i-1].is("of") && r.subj >= 0 && r.upon == nil { // "right back of the receiving team"
			if t := r.s.team(p.side); p.side.fam == relative || t != play.NoTeam && t != r.a.People[r.subj].Team {
				r.clash = true
			}
			return p.n
		}
		r.who(p)
		return p.n
	}
	if row == nil {
		return 0
	}
	r.mark(i, i+k)
	if row.op == coPlace {
		if row.value != byNet && (r.ws[i+k-1].form != "it" || r.line) {
			r.place(row.value, -1)
			return k
		}
		if row.value == byLineBehind || row.value == byLineFront { // "behind it": of whoever was named
			r.clash = true
		}
		return k
	}
	r.row(row, i, i+k)
	return k
}

// who takes a person or a side.
func (r *aligned) who(p someone) {
	if p.she {
		if r.upon != nil {
			r.clash = true
		}
		return
	}
	team := r.team
	if p.side.ok() {
		if t := r.s.team(p.side); t != play.NoTeam {
			team = t
		} else if p.side.fam == serveRec { // beside other names: of the side told of
			team = r.team
		} else {
			r.clash = true
			return
		}
		if r.upon == nil {
			r.team = team
		}
	}
	if !p.named {
		if r.upon != nil {
			r.clash = true
		}
		r.side, r.subj = team, -1
		return
	}
	if r.inFor {
		r.inFor = false
		if r.subj < 0 || !p.place.OK() {
			return
		}
		if q := &r.a.People[r.subj]; !q.Place.OK() {
			q.Place = p.place
		}
		return
	}
	if p.row && !p.place.OK() && p.role == play.NoRole && p.label == "" && !p.side.ok() && p.n == 2 && r.subj >= 0 && r.upon == nil {
		return // "the setter is back row": which of the three positions was not told
	}
	at := r.person(team, p)
	if r.upon == nil {
		r.subj, r.side = at, play.NoTeam
		return
	}
	r.relate(*r.upon, r.subj, at)
	r.upon = nil
}

// person finds or adds somebody.
func (r *aligned) person(team play.Team, p someone) int {
	best := -1
	for i, q := range r.a.People {
		if q.Team != team || p.role != play.NoRole && q.Role != play.NoRole && p.role != q.Role || p.label != "" && q.Label != "" && p.label != q.Label ||
			p.place.OK() && q.Place.OK() && p.place != q.Place {
			continue
		}
		if p.place.OK() && p.place == q.Place || p.label != "" && p.label == q.Label || p.role != play.NoRole && p.role == q.Role {
			best = i
		}
	}
	if best < 0 {
		r.a.People = append(r.a.People, court.Person{ID: "p" + string(rune('1'+len(r.a.People))), Team: team})
		best = len(r.a.People) - 1
		if best > 8 {
			r.clash = true
		}
	}
	q := &r.a.People[best]
	if p.role != play.NoRole {
		q.Role = p.role
	}
	if p.label != "" {
		q.Label = p.label
	}
	if p.place.OK() {
		q.Place = p.place
	}
	return best
}

// relate tells how one stands to another.
func (r *aligned) relate(rel relating, x, y int) {
	a := r.a
	if x < 0 || x == y || a.People[x].Team != a.People[y].Team {
		r.clash = true
		return
	}
	fact, value := court.StandsDepth, rel.value
	switch rel.op {
	case coAcross:
		fact = court.StandsAcross
	case coEven:
		if r.air {
			r.clash = true
			return
		}
		value = court.LevelWith
		p, q := a.People[x].Place, a.People[y].Place
		switch {
		case p.OK() && q.OK() && p.Front() == q.Front():
			fact = court.StandsAcross
		case p.OK() && q.OK() && p.Partner() == q:
		default:
			r.clash = true // which way they are level was not said
			return
		}
	}
	if r.air { // in the air at the contact: where the feet last were is another matter
		if fact = court.AirDepth; rel.op == coAcross {
			fact = court.AirAcross
		}
	}
	of, turned := a.PairOf(a.People[x].ID, a.People[y].ID)
	if turned {
		value = turn(value)
	}
	k := play.Key{Fact: fact, Of: of}
	if a.Get(k) != play.Unknown && a.Get(k) != value {
		r.clash = true
	}
	r.a = a.With(k, value)
	r.told++
}

func turn(v play.Value) play.Value {
	switch v {
	case court.Ahead:
		return court.Behind
	case court.Behind:
		return court.Ahead
	case court.ToTheLeft:
		return court.ToTheRight
	case court.ToTheRight:
		return court.ToTheLeft
	}
	return v
}

// place tells how far from the net the subject is. A negative length: none was
// told.
func (r *aligned) place(v play.Value, l court.Length) {
	p := spot{who: r.subj, line: true}
	switch {
	case v == byLineOn:
	case v == byLineBehind && l < 0:
		p.to = farOff
	case v == byLineBehind:
		p.from, p.to = l, l
	case v == byLineFront && l < 0:
		p.from = -farOff
	case v == byLineFront:
		p.from, p.to = -l, -l
	default:
		p.line, p.from, p.to = false, l, l
	}
	r.line = r.line || p.line
	if r.subj < 0 {
		r.clash = true
		return
	}
	r.spots = append(r.spots, p)
}

// bySpots compares those who were told to be so far from the net. A distance
// from the attack line and one from the net are compared where the line at 3 m
// and at 10 ft give the same.
func (r *aligned) bySpots() {
	for i, p := range r.spots {
		for _, q := range r.spots[i+1:] {
			if p.who == q.who || r.a.People[p.who].Team != r.a.People[q.who].Team {
				continue
			}
			x, ok := nearer(p, q, 3*court.Metre)
			y, ok2 := nearer(p, q, 10*court.Foot)
			if !ok || !ok2 || x != y {
				continue
			}
			r.relate(relating{coDepth, []play.Value{court.Ahead, court.LevelWith, court.Behind}[x+1]}, p.who, q.who)
		}
	}
	if len(r.spots) > 0 && r.told == 0 {
		r.clash = true // a distance that is compared with nothing
	}
}

// nearer is -1 where p is nearer the net than q, 0 where they are level, 1
// where p is farther; false where that is not told.
func nearer(p, q spot, line court.Length) (int, bool) {
	at := func(s spot) (from, to court.Length) {
		if s.line {
			return s.from + line, s.to + line
		}
		return s.from, s.to
	}
	a, b := at(p)
	c, d := at(q)
	switch {
	case b < c || b == c && (a < b || c < d): // an end that is only bounded lies beyond its bound
		return -1, true
	case d < a || d == a && (a < b || c < d):
		return 1, true
	case a == b && c == d:
		return 0, true
	}
	return 0, false
}

// row takes a row of the lexicon found in the words from i to j.
func (r *aligned) row(row *courtRow, i, j int) {
	a := r.a
	of := play.Key{}
	if r.subj >= 0 {
		of.Of = a.People[r.subj].ID
	}
	tell := func(f play.FactID, v play.Value) {
		k := play.Key{Fact: f, Of: of.Of}
		if f == court.StandsWhen {
			k.Of = ""
		}
		if old := a.Get(k); old != play.Unknown && old != v {
			r.clash = true
		}
		r.a = a.With(k, v)
	}
	if r.denied && row.op != coIgnore && row.op != coAsk && row.op != coTime {
		r.clash = true // what is denied is not read as told
		return
	}
	switch row.op {
	case coNot:
		r.denied = true
	case coAsk:
		r.asks = true
	case coDepth, coAcross, coEven:
		if r.upon != nil || r.subj < 0 {
			r.clash = true
			return
		}
		r.upon = &relating{row.op, row.value}
	case coAir:
		if r.subj < 0 {
			r.clash = true
			return
		}
		tell(court.InTheAir, play.Yes)
		r.air = true
	case coInside:
		if r.subj < 0 {
			r.clash = true
			return
		}
		if a.People[r.subj].Role == play.Server && row.value != court.OutsideHalf {
			r.clash = true // a matter of the serve
		}
		tell(court.StandsInside, row.value)
		r.told++
	case coTime:
		if k := (play.Key{Fact: court.StandsWhen}); row.value == play.Unknown {
			r.a = a.WithVoid(k)
			return
		}
		tell(court.StandsWhen, row.value)
	case coOrder:
		if r.both && !r.asked(i, j) {
			if k := (play.Key{Fact: court.ServingSide}); r.s.neutral && r.a.Get(k) == play.Unknown {
				r.a = r.a.With(k, play.ValueA) // neither is named: A is the one that serves
			}
			for _, t := range []string{"A", "B"} {
				r.a = r.a.With(play.Key{Fact: court.TeamOrder, Of: t}, row.value)
			}
			r.told++
			return
		}
		t := r.side
		if t == play.NoTeam && r.subj >= 0 {
			t = a.People[r.subj].Team
		}
		if t == play.NoTeam && r.asked(i, j) {
			r.asks = true
			return
		}
		if t == play.NoTeam {
			t = r.team
		}
		if r.asked(i, j) {
			r.asks = true
			return
		}
		k := play.Key{Fact: court.TeamOrder, Of: t.String()}
		r.a = a.With(k, row.value)
		r.told++
	case coEarly:
		r.asks = true
		t := r.team
		if r.subj >= 0 {
			t = a.People[r.subj].Team
		}
		if k := (play.Key{Fact: court.TeamOrder, Of: t.String()}); a.Get(k) == play.Unknown {
			r.a = a.WithVoid(k)
		}
		r.told++
	case coReceive:
		t := r.team
		r.a = a.With(play.Key{Fact: court.ServingSide}, play.Value(t.Other().String()))
	case coFor:
		if r.subj < 0 || a.People[r.subj].Role != play.Libero {
			r.clash = true
			return
		}
		r.inFor = true
	case coPairs:
		r.a.Asked = court.WantPairs
		r.asks = true
	case coOrNot:
		for _, t := range []string{"A", "B"} {
			if k := (play.Key{Fact: court.TeamOrder, Of: t}); r.a.Get(k) != play.Unknown {
				r.a = r.a.With(k, play.Unknown).WithVoid(k)
			}
		}
	case coBoth:
		r.both, r.subj, r.side = true, -1, play.NoTeam
	}
}

// asked reports whether the words from i to j are a question of their own: they
// stand alone before a question mark, or after what already tells a pair.
func (r *aligned) asked(i, j int) bool {
	end := j
	for end < len(r.ws) && r.ws[end].mark == 0 {
		end++
	}
	if end == len(r.ws) || r.ws[end].mark != '?' {
		return false
	}
	if r.told > 0 {
		return true
	}
	for k := i - 1; k >= 0 && r.ws[k].mark == 0; k-- {
		if _, ok := someoneAt(r.ws, k); ok {
			return false
		}
	}
	return true
}

// name gives the sides their names and tells who serves where they say so.
func (r *aligned) name() {
	s, a := r.s, r.a
	put := func(t play.Team, n string) {
		if t != play.NoTeam && !slices.Contains(a.Names[t], n) {
			a.Names[t] = append(a.Names[t], n)
		}
	}
	pairs := map[family][2]string{letters: {"A", "B"}, usThem: {"us", "them"}, homeAway: {"home", "visitors"}, colours: s.colourNames()}
	if n, ok := pairs[s.primary]; ok {
		put(s.first[s.primary], n[0])
		put(s.first[s.primary].Other(), n[1])
	}
	for _, t := range s.toks {
		if t.side.fam != serveRec {
			continue
		}
		serves := s.team(sideRef{serveRec, 0})
		if serves == play.NoTeam { // "receivers" beside other names: the side told of
			serves = r.team
			if t.side.n == 1 {
				serves = r.team.Other()
			}
		}
		a = a.With(play.Key{Fact: court.ServingSide}, play.Value(serves.String()))
		break
	}
	if s.primary == serveRec {
		t := s.team(sideRef{serveRec, 0})
		put(t, "serving")
		put(t.Other(), "receiving")
	}
	for _, p := range a.People {
		if p.Role == play.Server && a.Get(play.Key{Fact: court.ServingSide}) == play.Unknown {
			a = a.With(play.Key{Fact: court.ServingSide}, play.Value(p.Team.String()))
		}
	}
	r.a = a
}
