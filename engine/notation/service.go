package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/play"
)

// service is the telling of a serve in the making: what was told of the hit,
// the tosses before it, and the way of the ball after it.
type service struct {
	s       *scene
	m       *matcher
	used    []bool
	at      int // the first thing told of the hit, -1 for none
	facts   map[play.FactID]play.Value
	setting map[play.FactID]play.Value
	tosses  []tossTold
	toss    bool // a toss was told whose end was not
	again   play.Value
	lapse   bool
	libero  bool
	flight  []flown
	stops   []flown
	mates   int
	special int // rows of which only a serve or a stop is told
	serving play.Team
	clash   bool // two things told that can't both be
	asks    bool
	served  bool // a hit was told
	count   bool // so many players on the court
	from    int  // the row that is being read
	feet    int  // where the feet, and what came after the hit, were told: one more than the place
	after   int
	under   bool // a thing hangs above the server
	first   bool // a whistle that came before the hit or after it
	landed  bool // where the server came down was told
	hinder  play.Value
	fact    []bool // words of rows that tell something
	aside   []bool // words of a clause of talk, and sides that do nothing
	unnamed bool   // no name of a side tells who serves
}

// tossTold is a toss that was not hit.
type tossTold struct {
	ends  play.Value
	again play.Value
	at    int
}

// flown is an event of the ball after the hit, or of a stop of play.
type flown struct {
	kind  play.Kind
	fact  play.FactID
	value play.Value
	mate  bool // by a teammate of the server
	place sideRef
}

// readService reads a text that tells of a serve, or of a stop of play, in
// words of which every one has a part in it or is known not to matter. It
// leaves any other text to the reader of rallies.
func (s *scene) readService() (*play.Rally, []Unread, bool) {
	if !slices.ContainsFunc(s.toks, func(t token) bool {
		return t.side.fam == serveRec || serveWord(t.form) || t.from != "" && serveWord(t.from)
	}) {
		return nil, nil, false
	}
	v := &service{s: s, m: newMatcher(s, serveBook()), used: make([]bool, len(s.toks)), aside: make([]bool, len(s.toks)), fact: make([]bool, len(s.toks)), at: -1,
		facts: map[play.FactID]play.Value{}, setting: map[play.FactID]play.Value{}}
	var rows []serveMatch
	for i := 0; i < len(s.toks); {
		if s.toks[i].mark != 0 {
			i++
			continue
		}
		c, ok := v.m.at(i)
		if n := v.talk(i); n > c.to {
			for ; i < n; i++ {
				v.used[i], v.aside[i] = true, true
			}
			continue
		}
		if !ok {
			i++
			continue
		}
		rows = append(rows, c)
		i = c.to
	}
	for i, c := range rows {
		for j := c.from; j < c.to; j++ {
			v.used[j] = true
			v.fact[j] = c.row.tells()
			v.aside[j] = v.aside[j] || !(c.serving.ok() && j == c.sAt || c.receive.ok() && j == c.rAt || c.place.ok() && j == c.pAt)
		}
		if c.row.calls && (v.onlyAsked(rows, i) || v.reported(c)) {
			v.asks = true
			continue
		}
		v.take(c)
	}
	v.settle()
	if v.special == 0 || v.clash || v.toss && len(v.tosses) == 0 && !v.served {
		return nil, nil, false
	}
	left, whole := v.left()
	if !whole {
		return nil, nil, false
	}
	p := v.rally()
	if p == nil {
		return nil, nil, false
	}
	return p, left, true
}

// clause is where the clause of a token begins and ends, and the mark after it.
func (v *service) clause(i int) (from, to int, mark byte) {
	for from = i; from > 0 && v.s.toks[from-1].mark == 0; from-- {
	}
	for to = i; to < len(v.s.toks) && v.s.toks[to].mark == 0; to++ {
	}
	if to < len(v.s.toks) {
		mark = v.s.toks[to].mark
	}
	return from, to, mark
}

// onlyAsked reports whether the name of a fault stands in a question that tells
// nothing else.
func (v *service) onlyAsked(rows []serveMatch, i int) bool {
	from, to, mark := v.clause(rows[i].from)
	if mark != '?' {
		return false
	}
	for _, c := range rows {
		if c.from >= from && c.to <= to && !c.row.calls && c.row.op != svAsk && c.row.op != svIgnore && c.row.op != svServer {
			return false
		}
	}
	return true
}

// reported reports whether somebody calls or claims the fault that is named.
func (v *service) reported(c serveMatch) bool {
	from, _, _ := v.clause(c.from)
	for j := from; j < c.from; j++ {
		for _, w := range v.m.roots[j] {
			switch w {
			case "call", "say", "yell", "claim", "flag", "think", "argue", "scream", "shout", "want", "insist", "rule", "blow", "whistle":
				for k := from; k < c.from; k++ {
					v.used[k] = true
				}
				return true
			}
		}
	}
	return false
}

// talk is where a clause ends in which somebody only says something, asks for
// something or makes a call: what is said there is no fact. It is 0 for none.
func (v *service) talk(i int) int {
	from, to, _ := v.clause(i)
	for j := from; j < i; j++ {
		if v.s.joins(j) {
			from = j + 1
		}
	}
	for j := from; j < i; j++ {
		if !v.m.skip[j] {
			return 0
		}
	}
	j := from
	for j < to && (v.s.toks[j].form == "<side>" && v.s.toks[j].poss || v.m.skip[j] || serveWhose[v.s.toks[j].form]) {
		j++
	}
	if j >= to || !serveTalkers[v.s.toks[j].form] && v.s.toks[j].form != "<side>" {
		return 0
	}
	for j++; j < to && (v.m.skip[j] || serveAuxiliary[v.s.toks[j].form] || serveTalkers[v.s.toks[j].form]); j++ {
	}
	if j >= to {
		return 0
	}
	says := false
	for _, r := range v.m.roots[j] {
		says = says || serveSays[r]
	}
	if !says {
		return 0
	}
	for j++; j < to && !v.s.joins(j); j++ {
	}
	return j
}

// joins reports whether a word joins another clause.
func (s *scene) joins(j int) bool {
	switch s.toks[j].form {
	case "and", "but", "because", "so", "then", "after", "before", "when", "while":
		return true
	}
	return false
}

// told notes where something of the hit was told first.
func (v *service) told(c serveMatch) {
	if v.at < 0 {
		v.at = c.from
	}
}

func (v *service) side(c serveMatch) {
	set := func(t play.Team) {
		if t == play.NoTeam {
			return
		}
		v.clash = v.clash || v.serving != play.NoTeam && v.serving != t
		v.serving = t
	}
	// A side that goes by the other part in the serve is not the one meant.
	v.clash = v.clash || c.serving == sideRef{serveRec, 1} || c.receive == sideRef{serveRec, 0}
	if c.serving.ok() {
		set(v.team(c.serving))
	}
	if c.receive.ok() {
		set(v.team(c.receive).Other())
	}
}

// team is the side of a name: serving and receiving are the sides themselves.
func (v *service) team(r sideRef) play.Team {
	if r.fam == serveRec {
		if first, ok := v.s.first[serveRec]; ok && v.s.primary != serveRec {
			return r.team(first)
		}
		if v.s.primary == serveRec {
			return r.team(play.A)
		}
		return play.NoTeam
	}
	if first, ok := v.s.first[r.fam]; ok {
		return r.team(first)
	}
	return play.NoTeam
}

// take does what a row says.
func (v *service) take(c serveMatch) {
	v.from = c.from
	v.side(c)
	r := c.row
	switch r.op {
	case svIgnore, svServer:
	case svAsk:
		v.asks = true
	case svServe:
		v.told(c)
		v.served = true
	case svTell:
		v.told(c)
		v.tell(r.fact, r.value)
		v.served = v.served || r.fact == play.HitWith
	case svSeconds:
		v.told(c)
		switch n := c.number; {
		case n <= 5:
			v.tell(play.ClockTime, play.Within5)
		case n <= 8:
			v.tell(play.ClockTime, play.Within8)
		default:
			v.tell(play.ClockTime, play.Over8)
		}
	case svNoServe:
		v.told(c)
		v.lapse = true
		if r.value != play.Unknown {
			v.tell(play.ClockTime, r.value)
		}
		if c.number > 0 {
			switch n := c.number; {
			case n < 5:
				v.tell(play.ClockTime, play.Within5)
			case n < 8:
				v.tell(play.ClockTime, play.Within8)
			default:
				v.tell(play.ClockTime, play.Over8)
			}
		}
	case svToss:
		v.toss = true
	case svTossed:
		v.tosses = append(v.tosses, tossTold{ends: r.value, at: c.from})
		v.toss = false
	case svReServe:
		if len(v.tosses) == 0 && !v.toss {
			v.asks = true
			return
		}
	case svAgain:
		v.again = r.value
	case svAfterHit:
		v.after = c.from + 1
	case svSetting:
		v.setting[r.fact] = r.value
	case svCount:
		v.count = true
		if c.number == 6 {
			return
		}
		v.told(c)
		v.tell(play.Ready, play.WrongCount)
	case svLands:
		v.told(c)
		v.flight = append(v.flight, flown{kind: play.Land, fact: play.Lands, value: r.value})
	case svFalls:
		v.told(c)
		v.flight = append(v.flight, flown{kind: play.Land, fact: play.Lands, value: play.In, place: c.place})
	case svCross:
		v.told(c)
		v.flight = append(v.flight, flown{kind: play.Cross, fact: play.How, value: r.value})
	case svStrike:
		v.told(c)
		v.flight = append(v.flight, flown{kind: play.Strike, fact: play.Struck, value: r.value})
	case svMate:
		v.told(c)
		v.flight = append(v.flight, flown{kind: play.Contact, mate: true})
		v.mates++
	case svLibero:
		v.told(c)
		v.libero, v.served = true, true
		v.special++
	case svInjury:
		v.stops = append(v.stops, flown{kind: play.Injury})
		v.special++
	case svDispute:
		v.stops = append(v.stops, flown{kind: play.Dispute})
		v.special++
	case svDecides:
		v.setting[play.Decides] = r.value
	case svLanding:
		v.told(c)
		v.landed = true
		v.special++
	case svIntrude:
		v.stops = append(v.stops, flown{kind: play.Intrusion})
		v.special++
	case svHinder:
		v.clash = v.clash || v.hinder != play.Unknown && v.hinder != r.value
		v.hinder = r.value
	case svBefore:
		v.served = true
		switch {
		case c.number <= 5:
			v.tell(play.ClockTime, play.Within5)
		case c.number == 8:
			v.tell(play.ClockTime, play.OnTime)
		default:
			v.clash = true
		}
	case svInTime:
		v.served = true
		v.tell(play.ClockTime, play.OnTime)
	case svUnsure:
		v.clash = true
	case svUnder:
		v.under = true
	case svTossedIt:
		v.clash = v.clash || !v.under
		v.tosses = append(v.tosses, tossTold{ends: r.value, at: c.from})
		v.toss = false
		v.special++
	case svStops:
		v.first = true
		v.special++
	case svWhistle:
		v.stops = append(v.stops, flown{kind: play.Whistle})
		v.special++
	}
	switch r.op {
	case svTell, svSeconds, svNoServe, svTossed, svCount, svStrike, svMate, svCross:
		v.special++
	}
}

// tell tells a fact of the hit. Two values of one fact can't both be.
func (v *service) tell(f play.FactID, is play.Value) {
	if f == play.Feet {
		v.feet = v.from + 1
	}
	was, ok := v.facts[f]
	switch {
	case !ok || was == is:
		v.facts[f] = is
	case f == play.ClockTime && is == play.RunOut:
	case f == play.ClockTime && was == play.RunOut:
		v.facts[f] = is
	case f == play.Grouped && was == play.CloseBy && is == play.OneStill, f == play.Grouped && was == play.OneStill && is == play.CloseBy:
		v.clash = true
	case f == play.Hidden && (was == play.PartHidden || is == play.PartHidden):
		v.facts[f] = play.PartHidden
	default:
		v.clash = true
	}
}

// settle puts together what was told in several places.
func (v *service) settle() {
	if v.toss && len(v.tosses) > 0 {
		v.toss = false
	}
	for i := range v.tosses {
		if i == len(v.tosses)-1 && v.again != play.Unknown {
			v.tosses[i].again = v.again
		}
	}
	if n := len(v.tosses); n > 1 && v.again != play.No {
		v.tosses = v.tosses[n-1:] // the one that is asked about
		v.tosses[0].again = play.Yes
	} else if n > 1 {
		v.tosses = v.tosses[n-1:]
	}
	if v.after > 0 && v.feet > 0 && v.facts[play.Feet] != play.Own {
		a, _, _ := v.clause(v.after - 1)
		b, _, _ := v.clause(v.feet - 1)
		v.clash = v.clash || a != b // of what it is told is not known
		v.facts[play.Feet] = play.Own
	}
	if v.facts[play.Ready] == play.WrongCount && v.facts[play.Signalled] == play.No {
		v.clash = true // seen in time: no play was on
	}
	if v.lapse {
		delete(v.facts, play.Signalled)
		v.clash = v.clash || v.served
	}
	v.fallen()
	v.clash = v.clash || v.returns()
	if v.facts[play.Spot] != play.Unknown { // told of a libero alone
		v.libero = slices.ContainsFunc(v.s.toks, func(t token) bool { return t.form == "libero" })
		v.clash = v.clash || !v.libero
	}
	if v.hinder != play.Unknown && !v.first && !slices.ContainsFunc(v.stops, func(f flown) bool { return f.kind == play.Intrusion || f.kind == play.Whistle }) {
		v.clash = true // "nobody noticed until later": of what came into no rally
	}
	if v.landed {
		if v.facts[play.Feet] == play.Unknown {
			v.facts[play.Feet] = play.Own // the take-off was not told, and is presumed good
		}
		v.served = true
	}
	if v.serving == play.NoTeam {
		v.serving, v.unnamed = play.A, true
		for i, t := range v.s.toks {
			if t.side.fam == usThem || t.side.fam == letters || t.side.fam == colours || t.side.fam == homeAway {
				v.clash = v.clash || len(v.stops) == 0 && !v.aside[i] // a side whose part is not known
			}
		}
	}
	if n := len(v.flight); n > 0 && v.flight[n-1].value == play.NetBand && v.flight[n-1].kind == play.Strike {
		v.clash = true // whether it then went over was not told
	}
	if v.facts[play.Grouped] != play.Unknown {
		for i, t := range v.s.toks { // how high it went over them is what a screen turns on
			switch t.form {
			case "low", "high", "flat", "over", "above":
				v.clash = v.clash || !v.used[i]
			}
		}
	}
}

// fallen settles what a serve is that comes down on a named side: on the other
// side it is in, on the own it did not go over.
func (v *service) fallen() {
	net := false
	for i := range v.flight {
		f := &v.flight[i]
		switch {
		case f.kind == play.Strike && f.value == play.NetBand:
			net = true
		case f.kind == play.Cross && f.value == play.Between:
			net = false
		}
		if !f.place.ok() {
			continue
		}
		t := v.team(f.place)
		if f.place.fam == serveRec {
			t = v.serving.Other()
			if f.place.n == 0 {
				t = v.serving
			}
		}
		switch {
		case v.serving == play.NoTeam && (t == play.NoTeam && f.place.fam != serveRec || net && t != play.NoTeam):
			v.clash = true // whose side it is was not told
		case v.serving == play.NoTeam && t != play.NoTeam:
			v.serving = t.Other()
		case t == v.serving && f.place != (sideRef{serveRec, 1}):
			f.kind, f.fact, f.value = play.Cross, play.How, play.IntoNet
		}
	}
}

// returns reports whether a serve that went over goes to the net again, with
// nobody touching it between.
func (v *service) returns() bool {
	over := false
	for _, f := range v.flight {
		switch {
		case f.kind == play.Contact:
			over = false
		case f.kind == play.Cross && over:
			return true
		case f.kind == play.Cross && f.value == play.Between:
			over = true
		}
	}
	return false
}

// left lists the words that have no part in it, and reports whether all of
// them are known not to matter.
func (v *service) left() ([]Unread, bool) {
	var out []Unread
	for _, a := range lex().atoms(v.s.toks) { // as they were read first
		free := true
		for j := a.from; j < a.to; j++ {
			free = free && !v.used[j]
		}
		if free && quiet(a) {
			if a.class == cScenery {
				out = append(out, Unread{Word: v.s.words(a), Scenery: true})
			}
			continue
		}
		for j := a.from; j < a.to; j++ {
			if v.used[j] || v.idle(j) {
				continue
			}
			if !v.apart(j) {
				return nil, false
			}
			out = append(out, Unread{Word: v.s.toks[j].raw, Stray: true})
		}
	}
	return out, true
}

// apart reports whether a word stands in a clause that tells nothing of the
// play: words nobody knows, with no player, no ball, no number and no negation
// among them.
func (v *service) apart(i int) bool {
	from, to, _ := v.clause(i)
	for j := i; j >= from; j-- {
		if v.s.joins(j) {
			from = j + 1
		}
	}
	for j := i; j < to; j++ {
		if v.s.joins(j) {
			to = j
		}
	}
	if to-from < 2 {
		return false // a word alone may be what somebody did
	}
	for _, a := range v.s.atoms {
		if a.to <= from || a.from >= to {
			continue
		}
		switch a.class {
		case cNone, cFiller, cScenery, cAround, cCode, cElse, cPoint, cAsk, cClaim, cJoin, cStop:
		default:
			return false
		}
	}
	for j := from; j < to; j++ {
		if v.fact[j] {
			return false
		}
	}
	return true
}

// quiet reports whether a phrase tells nothing of a play.
func quiet(a atom) bool {
	switch a.class {
	case cStop, cJoin, cFiller, cScenery, cAsk, cShe, cCode, cElse, cPoint:
		return true
	case cFault:
		return a.id == "play-on" || a.id == "replay" || a.id == "illegal"
	case cOrder:
		return a.id == "then" || a.id == "when"
	case cOfficial, cLabel, cCall:
		return false
	}
	return false
}

// idle reports whether a word by itself tells nothing.
func (v *service) idle(j int) bool {
	t := v.s.toks[j]
	if t.mark != 0 || skippable[t.form] || scoreWord(t.form) && strings.ContainsAny(t.form, "-:") || t.form == "<label>" || serveAsides[t.form] {
		return true
	}
	n, ok := lex().step(node{}, t.form)
	if !ok {
		return false
	}
	r, ok := lex().ends(n)
	return ok && quiet(atom{meaning: *r.means})
}

// rally makes the play.
func (v *service) rally() *play.Rally {
	p := &play.Rally{Asked: play.AskedAct}
	add := func(e play.Event, fs map[play.FactID]play.Value) {
		e.ID = "e" + itoa(len(p.Events)+1)
		p.Events = append(p.Events, e)
		for _, f := range factTable {
			if is, ok := fs[f.ID]; ok && f.About == play.OfEvent && slices.Contains(f.Kinds, e.Kind) {
				p = p.With(play.Key{Fact: f.ID, Of: e.ID}, is)
			}
		}
	}
	hit := v.served || len(v.flight) > 0 || len(v.facts) > 0
	if v.lapse {
		hit = false
	}
	if len(v.tosses) > 0 && !v.served && len(v.flight) == 0 {
		hit = false
	}
	service := hit || v.lapse || len(v.tosses) > 0
	if service {
		role := play.Server
		if v.libero {
			role = play.Libero
		}
		p.Players = []play.Player{{ID: "p1", Team: v.serving, Role: role}}
	}
	for _, t := range v.tosses {
		fs := map[play.FactID]play.Value{play.EndsAs: t.ends}
		if t.again != play.Unknown {
			fs[play.Again] = t.again
		}
		add(play.Event{Kind: play.Toss, Team: v.serving, Player: "p1"}, fs)
	}
	if v.first && hit {
		add(play.Event{Kind: play.Whistle}, map[play.FactID]play.Value{play.ErrorWhistle: play.Yes})
	}
	switch {
	case v.lapse:
		add(play.Event{Kind: play.Lapse, Team: v.serving, Player: "p1"}, v.facts)
	case hit:
		add(play.Event{Kind: play.Serve, Team: v.serving, Player: "p1"}, v.facts)
	}
	for _, f := range v.flight {
		if !hit {
			return nil
		}
		e := play.Event{Kind: f.kind}
		fs := map[play.FactID]play.Value{}
		switch {
		case f.mate:
			e.Team = v.serving
		case f.kind == play.Land:
			e.Team = v.serving.Other()
			fs[play.Side] = play.Value(e.Team.String())
			fs[f.fact] = f.value
		default:
			fs[f.fact] = f.value
		}
		add(e, fs)
	}
	for _, f := range v.stops {
		fs := v.setting
		switch f.kind {
		case play.Intrusion:
			fs = map[play.FactID]play.Value{}
			if v.hinder != play.Unknown {
				fs[play.Hinders] = v.hinder
			}
		case play.Whistle:
			fs = map[play.FactID]play.Value{play.ErrorWhistle: play.Yes}
		}
		add(play.Event{Kind: f.kind}, fs)
	}
	if len(p.Events) == 0 || v.first && !hit {
		return nil
	}
	if v.first {
		p = p.WithVoid(play.Key{Fact: play.Order, Of: p.Pair(len(v.tosses))})
	}
	for _, f := range factTable {
		if is, ok := v.setting[f.ID]; ok && f.About == play.OfSetting {
			p = p.With(play.Key{Fact: f.ID}, is)
		}
	}
	if service {
		p = p.With(play.Key{Fact: play.Serving}, play.Value(v.serving.String()))
	}
	if v.unnamed && len(v.stops) == 0 {
		p.Names[play.A], p.Names[play.B] = []string{"A", "serving"}, []string{"B", "receiving"}
		return p
	}
	v.s.name(p)
	return p
}

// serveWord reports whether a word is one of those without which nothing is
// told of a serve or of a stop of play.
func serveWord(w string) bool {
	for _, r := range roots(nil, w) {
		if serveGate[r] {
			return true
		}
	}
	return false
}
