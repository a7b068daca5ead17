package notation

import "example.org/netpost/engine/play"

// twiceTold reports whether the story itself tells what "double?" asks about:
// a double contact, or two contacts of one player in a row.
func (s *scene) twiceTold() bool {
	last := -1
	for i, e := range s.evs {
		if e.Kind != play.Contact {
			continue
		}
		if e.facts[play.Manner] == play.Double || last >= 0 && e.who == last || s.fromBlock(i) {
			return true
		}
		last = e.who
	}
	if k := s.lastContact(); k >= 0 && s.evs[k].facts[play.Attempts] == play.One && s.evs[k].facts[play.Manner] == play.Unknown {
		s.evs[k].set(play.Manner, play.Double) // "off her arm and her head in one motion, double?"
		return true
	}
	return false
}

// countTold reports whether the story tells the contacts of the side that
// plays the ball last from the first on: it begins with the ball of the
// others, or with the side's own block.
func (s *scene) countTold() bool {
	k := s.lastContact()
	if k < 0 || s.pairAsked {
		return false
	}
	for i, e := range s.evs[:k] {
		switch {
		case s.evs[i+1].link == play.Same && s.evs[i+1].Team != e.Team:
			return false
		case e.Kind == play.Serve, e.Kind != play.Contact:
		case e.Team != s.evs[k].Team, e.Action == play.Block:
			return true
		default:
			return false
		}
	}
	return false
}

// nearOnly reports whether a thing is only where something happens: "toward
// the net", "near the antenna".
func (s *scene) nearOnly(a *atom) bool {
	b := s.before(a)
	if b == nil || b.class != cFiller {
		return false
	}
	switch b.word {
	case "toward", "towards", "near", "by", "at", "beside":
		return true
	}
	return false
}

// during reads a contact as a noun that only says in which action a player
// touched the net or the line: "touches the net in the attack". Of a contact
// told before it says when: "after the contact".
func (s *scene) during(c *clauseState, i int) bool {
	n := len(s.evs)
	if n == 0 || i == c.from || s.atoms[i-1].class != cFiller && s.atoms[i-1].class != cOrder {
		return false
	}
	a, before := s.atoms[i], s.atoms[i-1].word
	switch before {
	case "in", "on", "during", "while", "after", "at", "right after":
	default:
		return false
	}
	if k := s.lastContact(); a.verb == vTouch && k >= 0 && a.art != 'a' && !s.ballSubj {
		return true
	}
	if before == "after" || before == "right after" || n <= c.first || s.evs[n-1].Kind != play.NetTouch {
		return false
	}
	for j := c.first; j < n; j++ {
		if s.evs[j].Kind == play.NetTouch {
			s.evs[j].set(play.Playing, play.Yes)
		}
	}
	return true
}

// before is the atom before another one, nil at the start.
func (s *scene) before(a *atom) *atom {
	for i := 1; i < len(s.atoms); i++ {
		if s.atoms[i].from == a.from {
			return &s.atoms[i-1]
		}
	}
	return nil
}

// afterBall reports whether the ball stands right before an atom.
func (s *scene) afterBall(a *atom) bool {
	b := s.before(a)
	return b != nil && b.class == cBall
}

// afterPerson reports whether a player's word stands right before an atom.
func (s *scene) afterPerson(a *atom) bool {
	b := s.before(a)
	return b != nil && (b.class == cRole || b.class == cPerson || b.class == cLibero || b.class == cLabel)
}

// fromBlock reports whether contact i comes right after a block or a ball
// pressed by the same side: whether it was one of those is what is asked.
func (s *scene) fromBlock(i int) bool {
	for k := i - 1; k >= 0; k-- {
		if d := s.evs[k]; d.Kind == play.Contact {
			return d.Team == s.evs[i].Team && (d.Action == play.Block || d.Action == play.Press || d.link == play.Same)
		}
	}
	return false
}
