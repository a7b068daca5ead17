package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var liberoServing = Rule{
	ID: "libero-serving", Title: "serving libero",
	Text: "Where the libero may serve at all, it is in one position of the serving order in a set. A libero who goes to serve in a " +
		"second one is an illegal replacement: a delay before the serve is hit, a fault of position after it.",
	Cite: "libero.serve",
	Also: []code.Param{"libero.illegal-replacement-after", "libero.illegal-replacement-before", "libero.illegal-replacement-cut-off",
		"libero.second-serve-position", "libero.team-mends"},
	judge: judgeLiberoServe,
}

func judgeLiberoServe(l *look, r string) engine.Ruling {
	if l.param(r, "libero.serve") == "not-allowed" {
		switch {
		case l.is(Made, "no"):
			return l.against("deny")
		case l.is(Found, AfterContact):
			return l.fault("wrong-server")
		}
		return l.corrected()
	}
	if l.is(ServedElsewhere, "yes") {
		l.param(r, "libero.second-serve-position")
		return l.illegalReplacement(r)
	}
	return l.measure("allow")
}
