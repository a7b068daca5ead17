package notation

import (
	"slices"

	"example.org/netpost/engine/play"
)

// scene is the play in the making. Times, people and facts are held by their
// place in the lists until the play is finished.
type scene struct {
	toks   []token
	forms  []wordForms // of the tokens, once a reader wants them
	court  []courtWord // the tokens as the court's lexicon sees them, likewise
	atoms  []atom
	evs    []happening
	people []person
	// ungated: every area is tried, whatever its gate says.
	ungated bool
	open    map[play.FactID]play.Value
	voids   map[play.FactID]bool // of the opening
	asked   play.Asked
	lost    []string // words that were taken up and not understood

	first   map[family]play.Team // the team of a family's first name
	primary family               // whose names the sides go by
	neutral bool                 // no side is named at all
	slash   bool                 // one terse sentence: its commas state the order

	over        bool      // the ball comes from the other side: an overpass, a free ball
	numberBy    *party    // whose contact the number is of
	object      *party    // who was named after a preposition
	subj        []party   // who acts
	fresh       bool      // the subject was named and has not acted yet
	ballSubj    bool      // the ball is what the next verb is said of
	reception   bool      // a serve is received, by nobody in particular yet
	lastWho     int       // the person last named, -1 for none
	heard       bool      // something was said of the subject
	named       play.Team // the side last named in this sentence
	on          play.Team // the side on which the ball is
	next        []stated1 // facts for the next contact
	number      int       // a contact number waiting for its contact
	numberOf    play.Team
	link        play.Value // the order of the next event to the last one
	swap        bool       // the next event came before the last one
	back        bool       // so did what the clause tells after that
	comma       bool       // a comma parts the next event from the last one
	body        play.Value // the part of the body named in this clause
	extent      play.Value // how much of it
	mayReach    bool       // the one who acts reaches across the plane
	reachUp     play.Value
	reacher     *party // who reaches across the plane
	reaching    *party // who goes for the ball
	both        bool   // two people of the two sides are told of together
	bothRow     play.Value
	missed      bool // the ball missed the block
	clauseEv    int  // the first event of this clause
	passiveVerb bool // the verb in hand is done to the ball by nobody named
	bodyHits    int  // parts of one body that the ball touched

	wanted, calls, evidence []string
	early                   []string // calls that somebody claims before any contact is told
	topics                  []string
	asides                  int // topics that are only people of whom a clause says nothing of the play
	code, season            string
	ago                     int       // seasons before the newest
	group                   int       // so many went up to block, of whom some are named after that
	groupOf                 play.Team // whose they are, where it was told
	pairAsked               bool      // which of two touched first is the question
}

type stated1 struct {
	fact  play.FactID
	value play.Value // Unknown: the presumption is void
	side  play.Team  // of a place told by the name of a side
	at    *atom      // the words that say it
}

// happening is an event with what was told of it.
type happening struct {
	play.Event
	who   int // the person, -1 for none
	facts map[play.FactID]play.Value
	voids map[play.FactID]bool
	link  play.Value // the order of the event before it and this one
	split bool       // that order is what the question is about
	maybe bool       // a ball that drops on a side: it is down unless it is played
	taken bool       // "takes it", "gets to it": how she then plays it may follow
	soft  bool       // a ball on its way out, which lands there if nothing more is told
	joint bool       // one of several contacts told of in one breath
	wall  bool       // one of several who block together
	whole play.Team  // the side that the ball was told to be wholly on
}

type person struct {
	play.Player
	row    play.Value
	libero play.Value
	from   int // the words that only name somebody
	to     int
	bare   bool // nothing but the side was said
	mate   bool // named as another one
	void   bool
	acts   bool
}

// party is a noun phrase of people.
type party struct {
	team  play.Team
	pid   int // -1: nobody in particular yet
	role  play.Role
	row   play.Value
	lib   bool
	label string
	fresh bool // "another", "a second": not one of those named before
	from  int  // where its words are
	to    int
	n     int  // how many they are, 0 when it was not said
	one   bool // more was said than the name of a side
}

func newScene(ts []token) *scene {
	s := &scene{toks: ts, open: map[play.FactID]play.Value{}, voids: map[play.FactID]bool{}, first: map[family]play.Team{}, lastWho: -1}
	s.atoms = lex().atoms(ts)
	ownBody(s.atoms)
	crowds(s.atoms)
	s.sides()
	s.slash = slashForm(s.atoms)
	return s
}

// sides settles which family of names the sides go by, and links serving and
// receiving to it where a word does.
func (s *scene) sides() {
	has := map[family]bool{}
	for _, t := range s.toks {
		has[t.side.fam] = true
	}
	if s.onlyThem() && (has[homeAway] || has[colours]) {
		has[usThem] = false // "visitors in blue. their libero": theirs is the side named
	}
	s.neutral = true
	for _, f := range []family{letters, usThem, colours, homeAway, serveRec} {
		if !has[f] {
			continue
		}
		s.neutral = false
		if s.primary == noFamily {
			s.primary = f
			s.first[f] = play.A
		}
	}
	if s.primary == noFamily || s.primary == serveRec {
		return
	}
	for _, f := range []family{colours, homeAway} { // "our setter, white's blocker"
		if n, one := s.onlyName(f); s.primary == usThem && one {
			s.first[f] = sideRef{f, n}.team(play.B)
		}
	}
	if s.primary == letters && has[usThem] { // "B swings, our middle ...": we are the other one
		seen, us := [2]bool{}, false
		for _, t := range s.toks {
			switch {
			case t.side.fam == letters:
				seen[t.side.n] = true
			case t.side == sideRef{usThem, 0}:
				us = true
			}
		}
		if us && seen[0] != seen[1] {
			s.first[usThem] = play.B
			if seen[1] {
				s.first[usThem] = play.A
			}
		}
	}
	for i, a := range s.atoms {
		if a.class != cSide || a.side.fam != s.primary || i+1 >= len(s.atoms) {
			continue
		}
		t := a.side.team(play.A)
		switch n := s.atoms[i+1]; {
		case n.class == cVerb && n.verb == vServe, n.class == cRole && n.role == play.Server:
			s.first[serveRec] = t
		case n.class == cOpen && n.id == "receive":
			s.first[serveRec] = t.Other()
		}
	}
}

// slashForm reports whether a text is one terse run of clauses.
func slashForm(as []atom) bool {
	commas := 0
	for i, a := range as {
		if a.mark == ',' {
			commas++
		}
		if (a.mark == '.' || a.mark == ';' || a.mark == '?') && i+1 < len(as) {
			rest := 0
			for _, b := range as[i+1:] {
				if b.class == cVerb {
					rest++
				}
			}
			if rest > 0 {
				return false
			}
		}
	}
	return commas > 0
}

// team is the side that a name means where it stands.
func (s *scene) team(r sideRef) play.Team {
	switch r.fam {
	case noFamily:
		return play.NoTeam
	case relative:
		t := s.actor()
		if t == play.NoTeam { // the side of the asker
			t = s.alone()
		}
		if t == play.NoTeam {
			return play.NoTeam
		}
		return r.team(t)
	}
	if first, ok := s.first[r.fam]; ok {
		return r.team(first)
	}
	if r.fam == usThem && r.n == 1 { // "they", "their" beside other names: the side just named
		if s.named == play.NoTeam && s.primary != letters {
			return s.onlySide()
		}
		return s.named
	}
	return play.NoTeam
}

// actor is the side of whoever acts just here.
func (s *scene) actor() play.Team {
	if len(s.subj) > 0 && s.subj[0].team != play.NoTeam {
		return s.subj[0].team
	}
	for i := len(s.evs) - 1; i >= 0; i-- {
		if !s.evs[i].Ball() && s.evs[i].Team != play.NoTeam {
			return s.evs[i].Team
		}
	}
	return play.NoTeam
}

// lastContact is the last contact told, or -1.
func (s *scene) lastContact() int {
	for i := len(s.evs) - 1; i >= 0; i-- {
		if s.evs[i].Kind == play.Contact || s.evs[i].Kind == play.Serve {
			return i
		}
	}
	return -1
}

// settle finds the person that a noun phrase means, and makes one where it is
// somebody new.
func (s *scene) settle(w *party) int {
	if w.pid >= 0 {
		s.describe(w)
		return w.pid
	}
	if !w.fresh && w.one && (w.role != play.NoRole || w.label != "" || w.row != play.Unknown) {
		for i := len(s.people) - 1; i >= 0; i-- {
			p := s.people[i]
			if p.Team != w.team || w.role != p.Role && (w.label == "" || w.label != p.Label) || p.bare && w.label != "" && p.Label == "" {
				continue
			}
			if w.label != "" && p.Label != "" && w.label != p.Label || w.row != play.Unknown && p.row != play.Unknown && w.row != p.row {
				continue
			}
			if w.role == play.NoRole && w.label == "" && w.row != p.row {
				continue
			}
			w.pid = i
			s.describe(w)
			return i
		}
	}
	s.people = append(s.people, person{Player: play.Player{Team: w.team, Role: w.role, Label: w.label}, row: w.row, mate: w.fresh, bare: !w.one})
	w.pid = len(s.people) - 1
	return w.pid
}

// setRow notes a player's row. A second row for the same player is no
// correction to be guessed at: the words of it were not understood.
func (s *scene) setRow(pid int, row play.Value) {
	if p := &s.people[pid]; p.row != play.Unknown && p.row != row {
		s.lost = append(s.lost, string(row)+" row")
		return
	}
	s.people[pid].row = row
}

func (s *scene) describe(w *party) {
	p := &s.people[w.pid]
	if w.row != play.Unknown {
		s.setRow(w.pid, w.row)
	}
	if w.label != "" {
		p.Label = w.label
	}
	if w.role != play.NoRole && p.Role == play.NoRole {
		p.Role = w.role
	}
}

// add puts an event at the end of the story.
func (s *scene) add(e play.Event, pid int) *happening {
	h := happening{Event: e, who: pid, facts: map[play.FactID]play.Value{}, voids: map[play.FactID]bool{}}
	if n := len(s.evs); n > 0 && (s.evs[n-1].soft || s.evs[n-1].maybe && e.Kind == play.Contact) {
		last := s.evs[n-1]
		s.evs = s.evs[:n-1]
		if k := s.lastContact(); last.Team != play.NoTeam && k >= 0 && s.evs[k].Team != last.Team && s.evs[n-2].Kind != play.Cross {
			s.evs = append(s.evs, happening{Event: play.Event{Kind: play.Cross, Team: last.Team}, who: -1, link: last.link,
				facts: map[play.FactID]play.Value{play.Side: play.Value(last.Team.String())}, voids: map[play.FactID]bool{}})
		}
	}
	if len(s.evs) > 0 {
		h.link = s.link
		if h.link == play.Unknown && s.comma && s.slash {
			h.link = play.Before
		}
	}
	at := len(s.evs)
	if s.back = s.back || s.swap; s.back && at > 0 {
		at--
		h.link, s.evs[at].link = s.evs[at].link, play.Before
		if at == 0 {
			h.link = play.Unknown
		}
	}
	s.link, s.swap, s.comma = play.Unknown, false, false
	s.evs = slices.Insert(s.evs, at, h)
	if pid >= 0 {
		s.people[pid].acts = true
		s.lastWho = pid
	}
	return &s.evs[at]
}

// ball adds an event of the ball on or to a side.
func (s *scene) ball(k play.Kind, t play.Team) *happening {
	h := s.add(play.Event{Kind: k, Team: t}, -1)
	if t != play.NoTeam {
		h.facts[play.Side] = play.Value(t.String())
	}
	return h
}
