package deadball

import (
	"example.org/netpost/engine"
)

var injuryStop = Rule{
	ID: "injury-stop", Title: "injury in the rally",
	Text: "Play is stopped at once for a serious injury, and the rally is replayed. People come first: local policy " +
		"and qualified medical people decide who returns.",
	Cite:  "replay.injury",
	judge: judgeInjuryStop,
}

func judgeInjuryStop(l *look, r string) engine.Ruling {
	if l.param(r, "replay.injury") == "play-on" {
		return l.measure("allow")
	}
	return l.replay("injury")
}
