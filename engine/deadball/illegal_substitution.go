package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var illegalSubstitution = Rule{
	ID: "illegal-substitution", Title: "illegal substitution",
	Text: "An illegal substitution that is noticed before the serve is hit is put right and is a delay. After the " +
		"serve it is a fault of the team: point and service to the opponents, the players change back, and where " +
		"the code says so the points won since are cancelled.",
	Cite:  "subs.illegal",
	Also:  []code.Param{"subs.illegal-points"},
	judge: judgeIllegalSubstitution,
}

func judgeIllegalSubstitution(l *look, r string) engine.Ruling {
	if !l.is(Found, AfterContact) {
		l.cite(r, "subs.illegal")
		return l.corrected()
	}
	l.param(r, "subs.illegal")
	out := l.fault("illegal-substitution")
	if l.param(r, "subs.illegal-points") == "cancelled" {
		out.Measure = []string{"cancel-points"}
		out.Cites = l.cites
	}
	return out
}

// corrected puts something right before the serve is hit, with the delay that
// it is for the team.
func (l *look) corrected() engine.Ruling {
	d := l.delayed()
	d.Measure = append([]string{"correct-and-go-on"}, d.Measure...)
	return d
}
