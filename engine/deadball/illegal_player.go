package deadball

import (
	"example.org/netpost/engine"
)

var illegalPlayer = Rule{
	ID: "illegal-player", Title: "player who may not play",
	Text: "A player who may not play - not on the sheet, sent off, or under a wrong number - leaves. Before the " +
		"serve is hit it is put right and is a delay; after it the team loses the rally.",
	Cite:  "players.illegal",
	judge: judgeIllegalPlayer,
}

func judgeIllegalPlayer(l *look, r string) engine.Ruling {
	if l.is(Found, AfterContact) {
		l.param(r, "players.illegal")
		return l.fault("illegal-player")
	}
	l.cite(r, "players.illegal")
	return l.corrected()
}
