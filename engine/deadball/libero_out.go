package deadball

import (
	"example.org/netpost/engine"
)

var liberoOut = Rule{
	ID: "libero-out", Title: "libero who cannot go on",
	Text: "When the libero is injured or ill the second libero goes on; where there is none, the coach may name another " +
		"player who is not on court, and the first libero does not come back. Some codes let the coach choose between a regular player, the second libero " +
		"and a new one.",
	Cite:  "libero.injured",
	judge: judgeLiberoOut,
}

func judgeLiberoOut(l *look, r string) engine.Ruling {
	how := l.param(r, "libero.injured")
	if l.is(OutFor, SentOff) && how == "re-designation-allowed" {
		if l.is(SecondLibero, "yes") {
			return saying(l.measure("allow"), "the team goes on with one libero")
		}
		return l.unsettled()
	}
	if how == "second-libero-first" {
		if l.is(SecondLibero, "yes") {
			return saying(l.measure("allow"), "the second libero goes on; no other is named while one is left")
		}
		return saying(l.measure("allow"), "another player may be named libero for the rest of the match")
	}
	return saying(l.measure("allow"), "a regular player, the second libero or a newly named one goes on")
}
