package notation

// account is how much a clause that says who claims something tells of the play.
type account uint8

const (
	saysCall  account = iota // of the call, or nothing
	saysAsker                // what the asker saw
	saysOther                // what somebody else says that a player did
)

// claims finds a claim that somebody did something: "I think she was in the
// net" is the asker's own account, "coach says she was in the net" is in
// dispute. "Coach says net" only names a call.
func (s *scene) claims(g segment) (account, int) {
	verb := -1
	own := false
	for i := g.from; i < g.to; i++ {
		a := s.atoms[i]
		if verb < 0 {
			if a.word == "i" || a.class == cSide && !a.poss && a.side == (sideRef{usThem, 0}) {
				own = true
			}
			if a.class == cClaim || a.class == cCall && (a.word == "say" || a.word == "says" || a.word == "said") {
				verb = i
			}
			if a.class == cVerb || a.class == cThing && !s.bystander(i) {
				return saysCall, -1
			}
			continue
		}
		switch a.class {
		case cShe, cPerson, cRole, cLibero, cSame, cSide:
			if a.class == cSide && a.poss || !s.acts(g, i+1) {
				continue
			}
			if own {
				return saysAsker, verb
			}
			return saysOther, verb
		}
	}
	return saysCall, -1
}

// acts reports whether what follows a person says what she did, and not which
// call somebody wants on her: a foul on the ball alone is one of judgement.
func (s *scene) acts(g segment, i int) bool {
	for ; i < g.to; i++ {
		switch a := s.atoms[i]; a.class {
		case cCall, cClaim:
			return false
		case cVerb, cThing, cLine, cInto, cDest, cFault:
			switch faultOf(a) {
			case "double-contact", "caught-or-thrown", "four-contacts":
				return false
			}
			return true
		}
	}
	return false
}
