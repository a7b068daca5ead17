package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var delay = Rule{
	ID: "delay", Title: "delay",
	Text: "A team that holds up the match is sanctioned as a team: a warning first, a penalty (point and service to the " +
		"opponents) for every later delay in the span for which delays count.",
	Cite: "delay.ladder", Also: []code.Param{"crew.wait-hazard", "delay.scope"},
	judge: judgeDelay,
}

func judgeDelay(l *look, r string) engine.Ruling {
	if l.is(DelayReason, Hazard) && l.param(r, "crew.wait-hazard") == "hazards-only" {
		return l.measure("allow")
	}
	return l.delayed()
}

// delayed is the step of the delay sanctions that the team has reached; delay
// where what it had before was not told.
func (l *look) delayed() engine.Ruling {
	if l.param("delay", "delay.ladder") == "time-out" {
		return l.against("charge-time-out")
	}
	scope := l.param("delay", "delay.scope")
	if !l.told(DelayBefore) {
		return saying(l.against("delay"), "a warning for the first delay of the "+scope+", a penalty (point and service) for every later one")
	}
	if l.is(DelayBefore, "yes") && (scope == "match" || l.is(DelaySet, ThisSet)) {
		return l.against("delay-penalty")
	}
	return l.against("delay-warning")
}
