package notation

import (
	"slices"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// segment is one clause: the atoms between two marks or joining words.
type segment struct {
	from, to int
	mark     byte // the mark after it
	join     string
}

func (s *scene) segments() []segment {
	var out []segment
	from := 0
	for i, a := range s.atoms {
		if a.class == cStop || a.class == cJoin {
			if i > from || a.mark == '?' {
				out = append(out, segment{from, i, a.mark, a.id})
			} else if len(out) > 0 && a.mark != 0 && out[len(out)-1].mark != '?' {
				out[len(out)-1].mark = a.mark
			}
			from = i + 1
			s.atoms[i].used = true
			continue
		}
		if a.class == cOrder && a.id == "then" && i > from {
			out = append(out, segment{from, i, 0, "then"})
			from = i
		}
	}
	if from < len(s.atoms) {
		out = append(out, segment{from, len(s.atoms), 0, ""})
	}
	return out
}

// run tells the story clause by clause.
func (s *scene) run() {
	for i, g := range s.segments() {
		if i > 0 && g.from > 0 && (s.atoms[g.from-1].class == cStop || s.atoms[g.from-1].class == cJoin) {
			s.between(s.atoms[g.from-1])
		}
		s.side0(g)
		if s.choice(g) {
			g.mark = '?' // "legal or double"
		}
		g.from = s.askedIf(g)
		by, verb := s.claims(g)
		switch {
		case s.maxim(g):
		case s.supposes(g):
			s.suppose(g)
		case s.wallOf(g), s.general(g), s.lone(g), s.counts(g), s.kind0(g):
		case s.unknown(g):
		case s.able(g):
		case by == saysOther && s.toldAlready(g, verb):
		case by == saysOther: // in dispute: its words stay unread
			for j := g.from; j < g.to; j++ {
				if s.atoms[j].class == cTopic && s.bystander(j) {
					s.asides++
				}
			}
		case by == saysAsker:
			s.mark(g.from, verb+1)
			g.from = verb + 1
			s.narrate(g)
		case s.aftermath(g), s.intrudes(g):
		case s.chatter(g):
		case s.reported(g):
		case s.asking(g):
		default:
			s.narrate(g)
		}
	}
	s.flush()
	for _, id := range s.early {
		s.touchedBy(id)
	}
}

// between notes what parts a clause from the one before it.
func (s *scene) between(a atom) {
	switch {
	case a.mark == ',':
		s.comma = true
	case a.mark != 0:
		s.comma, s.link, s.swap = false, play.Unknown, false
		s.named = play.NoTeam
		s.object = nil
	}
}

// side0 marks what says nothing of the play itself, wherever it stands: codes,
// evidence, cautions, other areas.
func (s *scene) side0(g segment) {
	report := false
	for i := g.from; i < g.to; i++ {
		switch s.atoms[i].class {
		case cElse, cClaim:
			report = true
		}
	}
	for i := g.from; i < g.to; i++ {
		a := &s.atoms[i]
		switch a.class {
		case cCode:
			a.used = true
			if !report && s.code == "" {
				s.code = a.id
			}
		case cElse:
			a.used = true
		case cEvidence:
			a.used = true
			if !slices.Contains(s.evidence, a.id) {
				s.evidence = append(s.evidence, a.id)
			}
		case cCaution:
			a.used = true
		case cTopic:
			s.topics = append(s.topics, a.id)
		case cAgo:
			a.used, s.ago = true, a.n
		case cPoint:
			a.used = true
			s.asked = play.AskedPoint
		case cDigits:
			if _, err := code.ParseSeason(a.word); err == nil && len(a.word) > 4 {
				s.season, a.used = a.word, true
			}
		}
	}
}

// faultOf is the fault that a word names in a question or a reported call.
func faultOf(a atom) string {
	switch {
	case a.class == cFault:
		return a.id
	case a.class == cVerb:
		switch a.verb {
		case vHeld:
			return "caught-or-thrown"
		case vDouble:
			return "double-contact"
		case vNet:
			return "net-contact"
		case vReachOver:
			return "over-net"
		case vLine:
			return "centre-line"
		}
	case a.class == cThing && a.value == play.NetBand:
		return "net-contact"
	case (a.class == cNumber || a.class == cCard) && a.n == 4:
		return "four-contacts"
	case a.class == cLine:
		return "centre-line"
	case a.class == cFact && a.fact == play.Manner && a.value == play.Held:
		return "caught-or-thrown"
	case a.class == cDest && a.dest == dOver && a.row:
		return "over-net"
	case a.class == cDest && a.dest == dNet:
		return "net-contact"
	}
	return ""
}

// reported reads a call that somebody made or claims.
func (s *scene) reported(g segment) bool {
	who, verb := -1, -1
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		switch {
		case a.class == cOfficial, a.word == "i", a.class == cClaim && who < 0:
			if who < 0 {
				who = i
			}
			if a.class == cClaim {
				verb = i
			}
		case who >= 0 && verb < 0 && (a.class == cCall || a.class == cClaim || a.class == cVerb && a.verb == vWhistle):
			verb = i
		}
	}
	if who < 0 || verb < 0 || who > verb {
		return false
	}
	var calls []string
	for i := verb; i < g.to; i++ {
		if id := faultOf(s.atoms[i]); id != "" && id != "illegal" {
			calls = append(calls, id)
		}
	}
	if len(calls) == 0 && s.atoms[verb].class == cVerb || s.slip(g) {
		return false
	}
	if len(calls) == 0 {
		return true // what was said is no fact, and its words stay unread
	}
	s.calledOn(g, verb)
	claim := s.atoms[verb].class == cClaim
	for i := g.from; i < g.to; i++ {
		s.atoms[i].used = s.atoms[i].used || s.known(i)
	}
	for _, id := range calls {
		s.touchedBy(id)
		if !claim && !slices.Contains(s.calls, id) {
			s.calls = append(s.calls, id)
		}
	}
	return true
}

// known reports whether an atom is a phrase at all.
func (s *scene) known(i int) bool { return s.atoms[i].class != cNone }

// asking reads a clause that only asks: "lift?", "legal or four hits?".
func (s *scene) asking(g segment) bool {
	var ids []string
	rest, asks := 0, g.mark == '?'
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		id := faultOf(a)
		switch {
		case id != "":
			ids = append(ids, id)
		case a.class == cAsk || a.class == cPoint:
			asks = true
		case a.class == cFiller, a.class == cScenery, a.class == cOfficial, a.class == cCall, a.class == cCode, a.class == cElse,
			a.class == cEvidence, a.class == cTopic, a.class == cOrder && (a.id == "unsure" || a.id == "then" && g.mark == '?' && s.bare(g)), a.class == cShe, a.class == cNot && g.mark == '?':
		case a.class == cVerb && g.mark == '?' && (a.verb == vPress || a.verb == vTouch || a.verb == vHit) && s.bare(g):
		case a.class == cBall && g.mark == '?':
		case a.class == cSide && !a.poss && g.mark == '?' && len(s.evs) > 0:
		default:
			rest++
		}
	}
	// The last word before "or" of a question is part of the question.
	if g.join == "or" && len(ids) > 0 && rest == 0 {
		asks = true
	}
	if g.mark != '?' && s.endsOut(g) {
		return false
	}
	if rest > 0 || len(ids) == 0 && !asks || !asks && !onlyFault(s.atoms[g.from:g.to]) {
		return false
	}
	for i := g.from; i < g.to; i++ {
		s.atoms[i].used = s.atoms[i].used || s.known(i) && s.atoms[i].class != cTopic
		if s.atoms[i].class == cOrder {
			s.pairAsked = true
		}
	}
	for _, id := range ids {
		s.want(id)
	}
	return true
}

// onlyFault reports whether a clause is nothing but a fault's name of several
// words, told without a question mark: "back row attack".
func onlyFault(as []atom) bool {
	n := 0
	for _, a := range as {
		switch a.class {
		case cFault:
			n++
		case cFiller, cAsk, cCall:
		default:
			return false
		}
	}
	return n > 0
}

func (s *scene) want(id string) {
	if id == "illegal" {
		return
	}
	if !slices.Contains(s.wanted, id) {
		s.wanted = append(s.wanted, id)
	}
	if id == "four-contacts" && s.contacts() < 3 {
		s.fourth()
	}
	s.touchedBy(id)
}

func (s *scene) contacts() int {
	n := 0
	for _, e := range s.evs {
		if e.Kind == play.Contact {
			n++
		}
	}
	return n
}

// fourth takes "fourth contact?" for what it says of the opening: that side
// had used three when two people of the two sides touched the ball.
func (s *scene) fourth() {
	if _, told := s.open[play.Used]; told {
		return
	}
	if s.both && s.contacts() == 0 || s.contacts() == 2 && s.opposed() {
		s.open[play.Used] = play.N3
		if _, told := s.open[play.Has]; !told && (s.neutral || s.first[s.primary] == play.A) {
			s.open[play.Has] = play.ValueA
		}
		s.pairAsked = true
	}
}

// opposed reports whether the only two contacts are by opponents, with no
// order told between them.
func (s *scene) opposed() bool {
	var c []happening
	for _, e := range s.evs {
		if e.Kind == play.Contact {
			c = append(c, e)
		}
	}
	return len(c) == 2 && c[0].Team != c[1].Team && c[1].link != play.Before
}

// touchedBy sets aside the presumptions that a question or a claim about a
// fault touches.
func (s *scene) touchedBy(id string) {
	switch id {
	case "double-contact", "caught-or-thrown":
		if id == "double-contact" && s.twiceTold() {
			return
		}
		for i := len(s.evs) - 1; i >= 0; i-- {
			e := &s.evs[i]
			if e.Kind != play.Contact {
				continue
			}
			if _, told := e.facts[play.Manner]; !told {
				e.voids[play.Manner] = true
			}
			break
		}
	case "four-contacts":
		if !s.countTold() {
			s.voids[play.Spent] = true
		}
	case "interference":
		for i := range s.evs {
			switch s.evs[i].Kind {
			case play.NetTouch, play.Line, play.Reach:
				if _, told := s.evs[i].facts[play.Hinders]; !told {
					s.evs[i].voids[play.Hinders] = true
				}
			}
		}
	case "over-net":
		if i := s.lastContact(); i >= 0 && s.evs[i].Kind == play.Contact {
			if _, told := s.evs[i].facts[play.Place]; !told {
				s.evs[i].voids[play.Place] = true
			}
		}
	}
}

// bare reports whether a clause names nobody and no ball: "next contact?".
func (s *scene) bare(g segment) bool {
	for i := g.from; i < g.to; i++ {
		switch s.atoms[i].class {
		case cSide, cRole, cPerson, cLibero, cBall, cMate, cSame, cShe, cLabel:
			return false
		}
	}
	return true
}

// slip reports whether a clause tells of a whistle blown by mistake: that is
// an event, not a call.
func (s *scene) slip(g segment) bool {
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		if a.class == cFact && a.fact == play.ErrorWhistle || a.class == cVerb && a.verb == vWhistle && (strings.HasPrefix(a.word, "inadvertent") || strings.HasPrefix(a.word, "accidental")) {
			return true
		}
	}
	return false
}
