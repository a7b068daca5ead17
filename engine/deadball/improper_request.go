package deadball

import (
	"example.org/netpost/engine"
)

var improperRequest = Rule{
	ID: "improper-request", Title: "improper request",
	Text: "A request at a wrong moment, by somebody who may not make it, or beyond the limit is refused. Whether it is only " +
		"recorded the first time, or is a delay when it holds up play, depends on the code.",
	Cite: "delay.improper-request",
}

// improper refuses a request, with the delay that it may be.
func (l *look) improper() engine.Ruling {
	switch l.param("improper-request", "delay.improper-request") {
	case "first-harmless-rejected":
		if l.is(HeldUp, "yes") || l.is(ImproperBefore, "yes") {
			return l.delayed()
		}
	default:
		if l.is(HeldUp, "yes") {
			return l.delayed()
		}
	}
	return l.against("improper-request", "deny")
}
