package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var substitutionRequest = Rule{
	ID: "substitution-request", Title: "request for a substitution",
	Text: "A substitution is asked for while the ball is dead and before the whistle for service, with the substitute ready at " +
		"the zone. A second request in one dead ball, one in a rally that is still to be replayed, one beyond the limit and one " +
		"into a wrong position are refused; a player who is injured or sent off is replaced whatever came before.",
	Cite: "subs.consecutive",
	Also: []code.Param{"requests.before-whistle", "requests.illegal-substitution", "requests.penalty-between", "requests.substitution-by",
		"replay.requests-before-replay", "subs.per-set", "subs.re-entry"},
	judge: judgeSubstitution,
}

func judgeSubstitution(l *look, r string) engine.Ruling {
	if l.is(Forced, "yes") {
		l.cite(r, "subs.per-set")
		l.Param("subs.per-set")
		return l.measure("allow")
	}
	if l.is(InZone, "no") { // there is no request yet
		l.param(r, "requests.before-whistle")
		return l.against("deny")
	}
	if !l.mayAsk(r, "requests.substitution-by") || !l.inTime(r) {
		return l.improper()
	}
	if l.stopped(r) {
		switch l.param(r, "replay.requests-before-replay") {
		case "none", "time-out-only":
			return l.improper()
		case "unknown":
			return l.unsettled()
		}
	}
	if l.is(Substituted, "yes") && l.noPenalty(r) {
		switch l.param(r, "subs.consecutive") {
		case "not-allowed":
			return l.improper()
		case "allowed-unless-delayed":
			if l.is(ChargedDelay, "yes") {
				return l.improper()
			}
		default:
			return l.unsettled()
		}
	}
	if l.is(SubstitutionsLeft, "no") {
		l.param(r, "subs.per-set")
		return l.refused(r)
	}
	if l.is(OwnPosition, "no") {
		l.param(r, "subs.re-entry")
		return l.refused(r)
	}
	l.param(r, "subs.consecutive")
	return l.measure("allow")
}

// refused answers a request for a substitution that would be illegal.
func (l *look) refused(r string) engine.Ruling {
	if l.param(r, "requests.illegal-substitution") == "delay" {
		d := l.delayed()
		d.Measure = append([]string{"deny"}, d.Measure...)
		return d
	}
	return l.against("deny")
}
