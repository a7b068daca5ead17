package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var liberoReplacement = Rule{
	ID: "libero-replacement", Title: "libero replacement",
	Text: "The libero comes in for a back-row player, and only that player, or the other libero, comes in for the libero. " +
		"It needs no request and is no substitution, but the ball must be dead, the service not yet authorized, and a rally completed " +
		"since the libero's last replacement; a libero who cannot play, one whom a penalty rotates to the front row and, " +
		"where the code says so, one who serves next needs none. An illegal replacement is put right with a delay " +
		"before the serve is hit and is a fault after it.",
	Cite: "libero.timing",
	Also: []code.Param{"libero.illegal-replacement-after", "libero.illegal-replacement-before", "libero.illegal-replacement-cut-off",
		"libero.injured", "libero.penalty-between", "libero.rally-between", "libero.second-serve-position", "libero.serve", "libero.team-mends"},
	judge: judgeLiberoReplacement,
}

func judgeLiberoReplacement(l *look, r string) engine.Ruling {
	switch l.get(Exchange) {
	case AnotherIn, ForFront, BothOn, StaysFront, ToldIllegal:
		return l.illegalReplacement(r)
	}
	switch l.rallyLacks(r) {
	case unsettledRally:
		return l.unsettled()
	case noRally:
		return l.illegalReplacement(r)
	}
	if l.is(NextServer, "yes") {
		if l.param(r, "libero.serve") == "not-allowed" {
			return l.illegalReplacement(r)
		}
		if l.is(ServedElsewhere, "yes") {
			l.param(r, "libero.second-serve-position")
			return l.illegalReplacement(r)
		}
	}
	timing := l.param(r, "libero.timing")
	switch l.get(Moment) {
	case BeforeServe:
		return l.measure("allow")
	case DuringRally:
		return l.illegalReplacement(r)
	}
	if timing != "before-whistle-first-late-tolerated" {
		return l.illegalReplacement(r)
	}
	switch {
	case l.is(Made, "no"):
		return l.against("deny")
	case l.is(LateBefore, "yes"):
		return l.corrected()
	}
	return saying(l.measure("allow"), "it is let go the first time, with a word to the captain after the rally")
}

// rally says whether the rally that a replacement needs is missing.
type rally int

const (
	rallyPlayed rally = iota
	noRally
	unsettledRally
)

// rallyLacks looks for the completed rally since the libero's last
// replacement, or for what stands in its place.
func (l *look) rallyLacks(r string) rally {
	switch between := l.get(Between); {
	case between == Completed, between == ForcedRotation:
		l.param(r, "libero.rally-between")
		return rallyPlayed
	case l.is(LiberoUnable, "yes"):
		l.param(r, "libero.injured")
		return rallyPlayed
	case l.param(r, "libero.rally-between") == "waived-when-next-server" && l.is(NextServer, "yes"):
		return rallyPlayed
	case between == PenaltyPoint:
		if l.param(r, "libero.penalty-between") == "counts-as-rally" {
			return rallyPlayed
		}
		return unsettledRally
	}
	return noRally
}

// illegalReplacement is what becomes of an illegal replacement: refused where
// it is only asked for, put right before the dividing moment, a fault after it.
func (l *look) illegalReplacement(r string) engine.Ruling {
	if l.is(Made, "no") {
		l.cite(r, "libero.illegal-replacement-before")
		return l.against("deny")
	}
	if l.act.has(Moment) && l.is(Moment, DuringRally) {
		return l.replacementFault(r)
	}
	switch found := l.get(Found); {
	case found == AfterContact, found == BeforeContact && l.param(r, "libero.illegal-replacement-cut-off") == "authorization":
		return l.replacementFault(r)
	}
	if l.param(r, "libero.team-mends") == "allowed" && l.is(Mended, ByTeam) {
		return saying(l.measure("allow"), "put right by the team before anybody had to step in, without a sanction")
	}
	if l.param(r, "libero.illegal-replacement-before") == "correct" {
		return l.measure("correct-and-go-on")
	}
	return l.corrected()
}

// replacementFault is the fault of an illegal replacement that is found too
// late to put it right.
func (l *look) replacementFault(r string) engine.Ruling {
	after := l.param(r, "libero.illegal-replacement-after")
	out := l.fault("illegal-libero-replacement")
	if after == "illegal-substitution" {
		out.Measure = []string{"cancel-points"}
	}
	return out
}
