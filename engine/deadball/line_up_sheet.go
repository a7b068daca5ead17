package deadball

import (
	"example.org/netpost/engine"
)

var lineUpSheet = Rule{
	ID: "line-up-sheet", Title: "fault of the line-up sheet",
	Text: "A line-up sheet that cannot be right is corrected before the set begins, so that six different players " +
		"start. Once the set has begun, the players on court are put right by what the table can prove.",
	Cite:  "players.line-up-error",
	judge: judgeLineUpSheet,
}

func judgeLineUpSheet(l *look, r string) engine.Ruling {
	how := l.param(r, "players.line-up-error")
	if l.is(SheetFound, InSet) {
		return l.unsettled()
	}
	if how == "substitution" {
		return saying(l.measure("correct-and-go-on"), "by a legal substitution, which counts")
	}
	return saying(l.measure("correct-and-go-on"), "without sanction")
}
