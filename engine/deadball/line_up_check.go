package deadball

import (
	"example.org/netpost/engine"
)

var lineUpCheck = Rule{
	ID: "line-up-check", Title: "line-up check",
	Text: "A team may have its line-up checked while the ball is dead. It is a courtesy and no regular interruption, " +
		"so it needs no completed rally; it must not hold up play.",
	Cite:  "players.line-up-check",
	judge: judgeLineUpCheck,
}

func judgeLineUpCheck(l *look, r string) engine.Ruling {
	l.param(r, "players.line-up-check")
	if !l.is(Moment, BeforeServe) {
		return l.against("deny")
	}
	if l.is(HeldUp, "yes") {
		return l.delayed()
	}
	return l.measure("allow")
}
