package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var playerOut = Rule{
	ID: "player-out", Title: "player who cannot go on",
	Text: "A player who cannot go on is replaced: by a legal substitution, and where none is possible by an " +
		"exceptional one. A team may not choose to play short while somebody may enter. Where only the libero is " +
		"left, the code says whether the libero may. What becomes of a team with nobody left depends on the code.",
	Cite:  "players.must-replace",
	Also:  []code.Param{"libero.as-substitute", "players.short", "replay.injury-decision-time", "replay.injury-recovery"},
	judge: judgePlayerOut,
}

func judgePlayerOut(l *look, r string) engine.Ruling {
	wait := l.param(r, "replay.injury-decision-time")
	if l.is(ReadyAgain, "yes") {
		if wait == "not-stated" {
			return l.measure("allow")
		}
		return saying(l.measure("allow"), wait+" seconds to decide, then a substitution or a time-out")
	}
	switch l.get(BenchLeft) {
	case LegalSub, Exceptional:
		l.param(r, "players.must-replace")
		return l.against("must-substitute")
	case LiberoLeft:
		switch l.param(r, "libero.as-substitute") {
		case "last":
			return saying(l.measure("allow"), "the libero goes in as a player, and is libero no more")
		case "unknown":
			return l.unsettled()
		}
	}
	if l.param(r, "players.short") == "plays-on" {
		return saying(l.measure("allow"), "the team goes on with those who are left")
	}
	out := l.against("forfeit")
	if recovery := l.param(r, "replay.injury-recovery"); recovery != "not-stated" {
		out = saying(out, recovery+" seconds of recovery first, once for a player in the match")
	}
	out.Cites = l.cites
	return out
}
