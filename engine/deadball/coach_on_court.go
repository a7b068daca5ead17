package deadball

import (
	"example.org/netpost/engine"
)

var coachOnCourt = Rule{
	ID: "coach-on-court", Title: "coach on the court in a time-out",
	Text: "Whether a coach may step onto the own half of the court in a time-out depends on the code; the opponents' " +
		"half is nobody's but theirs.",
	Cite:  "timeouts.coach-on-court",
	judge: judgeCoachOnCourt,
}

func judgeCoachOnCourt(l *look, r string) engine.Ruling {
	if l.param(r, "timeouts.coach-on-court") == "own-side" && l.is(OwnSide, "yes") {
		return l.measure("allow")
	}
	return l.against("deny")
}
