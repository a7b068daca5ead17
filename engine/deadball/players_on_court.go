package deadball

import (
	"example.org/netpost/engine"
)

var playersOnCourt = Rule{
	ID: "players-on-court", Title: "wrong number of players on court",
	Text: "A team that does not stand with six when the whistle for service is due is not ready, which is a delay. " +
		"Where the crew authorised the service all the same, the code says whether the rally is replayed or the " +
		"team is at fault.",
	Cite:  "players.wrong-number",
	judge: judgePlayersOnCourt,
}

func judgePlayersOnCourt(l *look, r string) engine.Ruling {
	how := l.param(r, "players.wrong-number")
	if l.is(Found, BeforeServe) {
		return l.delayed()
	}
	switch how {
	case "replay":
		return l.replay("premature-signal")
	case "alignment-fault":
		if l.is(Found, AfterContact) {
			return l.fault("out-of-position")
		}
		return l.corrected()
	}
	return l.unsettled()
}
