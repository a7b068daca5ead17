package notation

import (
	"strings"
)

func (s *scene) bodyNext(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if b := s.atoms[i]; b.from >= a.to {
			if b.class == cFiller || b.class == cShe {
				continue
			}
			return b.class == cBody
		}
	}
	return false
}

func (s *scene) ballNext(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if b := s.atoms[i]; b.from >= a.to {
			return b.class == cBall
		}
	}
	return strings.HasSuffix(a.word, " ball")
}

func (s *scene) ballAhead(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if b := s.atoms[i]; b.from >= a.to && (b.class == cBall || b.class == cNumber || b.class == cFact && strings.HasPrefix(b.word, "ball ")) {
			return true
		}
	}
	return false
}

func (s *scene) owned(c *clauseState, a *atom) bool {
	for i := c.from + 1; i < c.to; i++ {
		if s.atoms[i].from == a.from {
			p := s.atoms[i-1]
			return p.poss || p.class == cShe || p.class == cNumber
		}
	}
	return false
}

func (s *scene) wayAhead(c *clauseState, a *atom) bool {
	for i := c.from; i < c.to; i++ {
		if b := s.atoms[i]; b.from >= a.to && b.class == cDest {
			return true
		}
	}
	return false
}

func (s *scene) usedBy(c *clauseState, a *atom) bool {
	for i := c.from + 1; i < c.to; i++ {
		if s.atoms[i].from == a.from {
			switch base(s.atoms[i-1].word) {
			case "use", "make", "run", "do", "with", "play":
				return len(s.subj) > 0
			}
		}
	}
	return false
}

func (s *scene) again(c *clauseState) bool {
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].class == cSame || s.atoms[i].word == "again" {
			return true
		}
	}
	return false
}

func (s *scene) after(c *clauseState, a *atom) *atom {
	for i := c.from; i < c.to; i++ {
		if s.atoms[i].from >= a.to {
			return &s.atoms[i]
		}
	}
	return nil
}
