package notation

import (
	"example.org/netpost/engine/play"
)

// people0 reads a noun phrase of people, and makes it the subject of the verb

// that follows, or leaves it as the object of the one before.

func (s *scene) people0(c *clauseState, i int) int {
	start := i
	if a := &s.atoms[i]; a.class == cSide && a.poss { // "our coach"
		j := i + 1
		for j < c.to && s.atoms[j].class == cScenery {
			j++
		}
		if j < c.to && (s.atoms[j].class == cOfficial || s.bystander(j)) {
			a.used = true
			return j
		}
	}
	if a := &s.atoms[i]; i > c.from && a.class == cRole && a.role == play.Middle && a.art == 't' && s.atoms[i-1].class == cFiller && (i+1 >= c.to || s.atoms[i+1].class != cRole) {
		switch s.atoms[i-1].word {
		case "in", "through", "down", "up", "into", "over":
			a.used, a.class = true, cFiller // "a joust in the middle"
			return i + 1
		}
	}
	w, i, ok := s.phrase(c, i)
	if !ok {
		if b := &s.atoms[start]; i == start+1 && b.class == cShe && (b.word == "her" || b.word == "his") && i < c.to && (s.atoms[i].class == cFact && s.atoms[i].fact == play.TakeOff || s.atoms[i].class == cBody && s.ballSubj && len(s.people) == 0) {
			b.used = true // "her foot was on the line": whose is told further on
		}
		return i
	}
	said := start > 0 && (s.atoms[start-1].word == "is" || s.atoms[start-1].word == "was") // "she is back row and ..."
	if w.row != play.Unknown && c.join == "and" && i == c.to && !said {
		w.one = true // "a front-row and a back-row player"
	}
	onlyRow := w.row != play.Unknown && !w.one && w.team == play.NoTeam
	if onlyRow && start > c.from && (s.atoms[start-1].word == "to" || s.atoms[start-1].word == "toward" || s.atoms[start-1].word == "from") && s.atoms[start].word != "back row" {
		s.mark(start, i)
		return i // "sets it to zone 4": where, not whom
	}
	if j := s.setFor(c, start, i); j > 0 {
		return j
	}
	if onlyRow && !s.verbAhead(c, i) {
		s.rowOf(c, w.row, start, i)
		return i
	}
	if a := s.atoms[start]; i == start+1 && a.class == cShe && a.word != "she" && a.word != "he" && !s.verbAhead(c, i) {
		s.mark(start, i)
		return i // "her chest"
	}
	if s.fresh && len(s.subj) == 1 && w.pid >= 0 && s.subj[0].pid == w.pid {
		s.mark(start, i)
		if b := s.atoms[start]; b.class == cShe && s.ballSubj && (b.word == "she" || b.word == "he" || i < c.to && s.atoms[i].class == cBody && s.verbAhead(c, i)) {
			s.ballSubj = false // who acts again, after the ball
		}
		return i // "her foot", of the one who is the subject
	}
	joined := s.fresh && len(s.subj) > 0 && start > 0 && s.atoms[start-1].class == cJoin && s.atoms[start-1].id == "and" && s.besides(start-1)
	if joined && i == start+1 && s.atoms[start].poss && i < c.to && s.atoms[i].class == cVerb {
		joined = false // "and their hit": no second player
	}
	if w.team == play.NoTeam && joined {
		w.team = s.subj[0].team
	}
	if w.team == play.NoTeam && w.pid < 0 {
		w.team = s.guess(w)
	}
	if w.team == play.NoTeam {
		return i // its words stay unread
	}
	s.mark(start, i)
	s.named = w.team
	theirBlock := i == start+1 && s.atoms[start].poss && i < c.to && s.atoms[i].class == cVerb && s.atoms[i].action == play.Block
	if start > c.from && object0(s, start) && !theirBlock && (len(s.evs) > c.first || s.fresh && len(s.subj) == 1 && s.standsBy(c, start) || s.ballSubj || s.atoms[start-1].word == "to" && s.verbBefore(c, start)) {
		s.object = &w
		if k := s.lastContact(); k >= 0 && s.atoms[start-1].word == "to" && s.evs[k].Kind == play.Contact && s.evs[k].Team == w.team {
			s.evs[k].set(play.Completes, play.No)
		}
		s.settled(start, i)
		return i
	}
	w.from, w.to = start, i
	switch {
	case joined:
		s.subj = append(s.subj, w)
	case w.n == 2 && w.pid < 0:
		s.unheard()
		second := w
		second.fresh = true
		s.subj = []party{w, second}
	default:
		s.owed()
		s.unheard()
		s.subj = []party{w}
	}
	s.heard = false
	if w.row != play.Unknown && !joined && !s.verbAhead(c, i) {
		k := len(s.subj) - 1
		pid := s.settle(&s.subj[k]) // "A back row, B front row"
		if !s.people[pid].acts {
			s.people[pid].from, s.people[pid].to = start, i
		}
		s.heard = true
	}
	s.fresh, s.ballSubj = true, false
	if w.row != play.Unknown || w.lib || w.label != "" || w.role != play.NoRole {
		if w.pid >= 0 {
			s.describe(&w)
		}
	}
	return i
}

func (s *scene) mark(from, to int) {
	for ; from < to; from++ {
		s.atoms[from].used = true
	}
}

// object0 reports whether a phrase after a preposition is not the subject.

func object0(s *scene, i int) bool {
	p := s.atoms[i-1]
	if p.class != cFiller {
		return false
	}
	switch p.word {
	case "to", "near", "beside", "alongside", "for", "with", "at", "behind", "toward", "towards", "of", "from":
		return true
	}
	return false
}

// nounPhrase reads the words of a noun phrase: side, row, role, label, in the

// order in which people put them.

func (s *scene) nounPhrase(c *clauseState, i int) (party, int, bool) {
	w := party{pid: -1}
	start := i
	side := false
	for ; i < c.to; i++ {
		a := s.atoms[i]
		switch a.class {
		case cScenery: // "our tall setter"
			if i > start && (side || w.row != play.Unknown || w.fresh) && !w.one && s.adjective(c, i) {
				continue
			}
		case cSide:
			if i > start && s.atoms[i-1].class == cLabel && !side && !a.poss && a.side.fam == colours {
				side, w.team = true, s.team(a.side) // "#8 white"
				continue
			}
			if side && a.side == own && s.atoms[i-1].class == cShe {
				continue // "her own hitter"
			}
			if side || w.one && !w.fresh || w.row != play.Unknown && a.poss {
				return w, i, true
			}
			side = true
			w.team = s.team(a.side)
			if w.team == play.NoTeam {
				if i == start && !s.personAt(c, i+1) {
					return w, i + 1, false
				}
				return w, i + 1, false
			}
			if a.label != "" {
				w.label, w.one = a.label, true
			}
			if a.side == opp && a.art == 'a' {
				w.one = true
			}
			if !a.poss && a.side.fam == usThem {
				return w, i + 1, true
			}
			continue
		case cRow:
			if w.row != play.Unknown && w.row != a.value {
				return w, i, true
			}
			w.row = a.value
			w.one = w.one || s.spot(i)
			continue
		case cLibero:
			if w.role != play.NoRole {
				return w, i, true
			}
			w.role, w.lib, w.one = play.Libero, true, true
			if a.label != "" {
				w.label = a.label
			}
			if j := s.sideAfter(c, i+1, side, &w); j > 0 {
				return w, j, true
			}
			continue
		case cRole:
			if w.role != play.NoRole || w.pid >= 0 {
				return w, i, i > start
			}
			w.role, w.one = a.role, true
			if j := s.sideAfter(c, i+1, side, &w); j > 0 {
				return w, j, true
			}
			continue
		case cPerson:
			w.one = true
			if a.poss {
				return w, i + 1, true
			}
			if j := s.sideAfter(c, i+1, side, &w); j > 0 {
				return w, j, true
			}
			continue
		case cMate:
			if i > start && !side && w.row == play.Unknown && s.atoms[i-1].class != cCard {
				return w, i, true
			}
			w.fresh, w.one = true, true
			for p := range s.people { // "the third player", told of before
				if s.people[p].mate && !s.people[p].acts {
					w.pid, w.team = p, s.people[p].Team
				}
			}
			if w.team == play.NoTeam {
				w.team = s.actor()
			}
			continue
		case cSame, cShe:
			if i > start {
				if a.class == cSame && (side || w.row != play.Unknown) {
					continue
				}
				return w, i, true
			}
			if t := s.owns(c, i); t != play.NoTeam { // "her setter"
				w.team, side = t, true
				continue
			}
			pid := s.lastWho
			if len(s.subj) > 0 && s.subj[0].pid >= 0 && a.class == cShe {
				pid = s.subj[0].pid
			}
			if pid >= 0 && s.people[pid].bare && a.class == cShe {
				for p := len(s.people) - 1; p >= 0; p-- {
					if !s.people[p].bare {
						pid = p
						break
					}
				}
			}
			if s.fresh && len(s.subj) > 0 && a.class == cShe && s.subj[0].one && s.subj[0].pid < 0 {
				pid = s.settle(&s.subj[0])
			}
			if pid < 0 && a.class == cShe && len(s.evs) == 0 && (a.word == "she" || a.word == "he" || i+1 < c.to && s.atoms[i+1].class == cBody && s.verbAhead(c, i)) {
				w.team, w.one = s.alone(), true
				return w, i + 1, w.team != play.NoTeam
			}
			if pid < 0 {
				return w, i + 1, false
			}
			w.pid, w.team, w.one = pid, s.people[pid].Team, true
			if !(i+1 < c.to && (s.atoms[i+1].class == cLabel || s.atoms[i+1].class == cRow)) {
				return w, i + 1, true
			}
			continue
		case cLabel:
			w.label, w.one = a.label, true
			continue
		case cCard:
			if i+2 < c.to && s.atoms[i+1].word == "of" && s.atoms[i+2].class == cSide { // "two of ours"
				w.n = a.n
				i++
				continue
			}
			if a.n == 2 && i == start && i+1 < c.to && s.atoms[i+1].class == cSide && s.atoms[i+1].side == opp && !s.atoms[i+1].poss && s.actor() == play.NoTeam {
				s.mark(i, i+2) // "two opponents": one of each side
				s.both = true
				return s.bothOf(c, i+2)
			}
			if i+1 < c.to && s.personAt(c, i+1) || side {
				w.n = a.n
				continue
			}
			return w, i + 1, i > start
		case cBoth:
			s.both = s.both || !side && (i+1 >= c.to || s.atoms[i+1].class != cSide)
			s.atoms[i].used = true
			if i > start {
				return w, i + 1, true
			}
			return s.bothOf(c, i+1)
		case cFiller:
			if i+1 < c.to && s.atoms[i+1].class == cRow && w.one && (a.word == "is" || a.word == "was" || a.word == "in" || a.word == "from") {
				continue
			}
		}
		return w, i, i > start
	}
	return w, i, i > start
}

// personAt reports whether a person's word stands at i.

func (s *scene) personAt(c *clauseState, i int) bool {
	if i >= c.to {
		return false
	}
	switch s.atoms[i].class {
	case cRole, cPerson, cRow, cLibero, cMate, cLabel, cSide:
		return true
	}
	return false
}

// bothOf reads what comes after "both": a row, or the two who act.

func (s *scene) bothOf(c *clauseState, i int) (party, int, bool) {
	for i < c.to {
		a := &s.atoms[i]
		switch {
		case a.class == cRow:
			a.used = true
			s.bothRow = a.value
			two := s.lastTwo()
			for _, p := range two {
				s.setRow(p, a.value)
			}
			if len(two) == 2 {
				s.both = s.contacts() == 0
			}
			i++
			continue
		case a.class == cPerson, a.class == cRole, a.class == cFiller && (a.word == "in" || a.word == "from"):
			a.used = true
			i++
			continue
		}
		break
	}
	if i < c.to && s.atoms[i].class == cSide {
		w, j, ok := s.phrase(c, i)
		if ok && w.one && w.role != play.NoRole && w.label == "" && j < c.to && s.atoms[j].class != cSide {
			w.n = 2 // "both our blockers"
		}
		return w, j, ok
	}
	if j := s.bothReach(c, i); j > 0 {
		return party{}, j, false
	}
	if n := len(s.evs); n > 1 && s.verbAhead(c, i) && s.evs[n-1].joint && s.evs[n-2].joint && s.evs[n-1].Team == s.evs[n-2].Team && s.evs[n-1].who >= 0 && s.evs[n-2].who >= 0 {
		s.subj = []party{{team: s.evs[n-2].Team, pid: s.evs[n-2].who, one: true}, {team: s.evs[n-1].Team, pid: s.evs[n-1].who, one: true}}
		s.both, s.fresh, s.ballSubj = false, true, false // the two who just touched it
		return party{}, i, false
	}
	if s.verbAhead(c, i) && len(s.subj) < 2 {
		s.subj = nil
		for _, t := range []play.Team{play.A, play.B} {
			w := party{team: t, pid: -1, row: s.bothRow}
			for _, p := range s.lastTwo() {
				if s.people[p].Team == t {
					w.pid = p
				}
			}
			s.subj = append(s.subj, w)
		}
		s.fresh, s.ballSubj = true, false
	}
	return party{}, i, false
}

// lastTwo are the last people of the two sides named, the first named first.

// rowOf gives a row told by itself to the person named last, or to the two.

func (s *scene) rowOf(c *clauseState, row play.Value, from, to int) {
	pid := s.lastWho
	if len(s.subj) > 0 && s.fresh {
		pid = s.settle(&s.subj[0])
	}
	if pid < 0 {
		return
	}
	if c.deny {
		row = map[play.Value]play.Value{play.Front: play.Back, play.Back: play.Front}[row]
		c.deny = false
	}
	s.heard = true
	if c.asks {
		s.people[pid].void = true
	} else {
		s.setRow(pid, row)
	}
	s.mark(from, to)
}

// guess is the side of somebody told without one: by what the role does and

// where the ball is.

// alone is the side of the first one told of when nothing says which.

// roleAhead is the side that the text gives to somebody of a role further on.

// roleOf is the role that somebody goes by.

// unheard leaves the words of a subject unread that neither acted nor had

// anything said of it.
