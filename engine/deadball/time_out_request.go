package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var timeOutRequest = Rule{
	ID: "time-out-request", Title: "request for a time-out",
	Text: "The coach, or the captain on court, may ask for a time-out while the ball is dead and before the whistle for service, " +
		"as long as the team has one left. One time-out may follow another at once.",
	Cite:  "timeouts.count",
	Also:  []code.Param{"timeouts.requester", "requests.before-whistle", "requests.penalty-between", "replay.requests-before-replay"},
	judge: judgeTimeOut,
}

func judgeTimeOut(l *look, r string) engine.Ruling {
	if !l.mayAsk(r, "timeouts.requester") || !l.inTime(r) {
		return l.improper()
	}
	if l.stopped(r) {
		switch l.param(r, "replay.requests-before-replay") {
		case "none":
			return l.improper()
		case "unknown":
			return l.unsettled()
		}
	}
	if l.is(TimeOutsLeft, "no") {
		l.cite(r, "timeouts.count")
		return l.improper()
	}
	l.param(r, "timeouts.count")
	return l.measure("allow")
}

// mayAsk reports whether the code lets the person ask.
func (l *look) mayAsk(r string, p code.Param) bool {
	by := l.get(AskedBy)
	if by == Coach {
		return true
	}
	switch l.param(r, p) {
	case "head-coach-or-captain":
		return by == Captain
	case "coach-or-captain-in-absence":
		return by == Captain && l.is(CoachThere, "no")
	case "coach-captain-or-assistant":
		return by == Captain || by == Assistant
	}
	return true
}

// inTime reports whether a request came while the ball was dead and before
// the whistle for service.
func (l *look) inTime(r string) bool {
	if l.is(Moment, BeforeServe) {
		return true
	}
	return l.param(r, "requests.before-whistle") != "required"
}

// stopped reports whether the rally before the request was stopped and is
// still to be played, with no penalty point since, which stands for a rally.
func (l *look) stopped(r string) bool {
	if l.is(Stoppage, None) {
		return false
	}
	return l.noPenalty(r)
}

// noPenalty reports whether no penalty point, where it stands for a rally,
// lies in between.
func (l *look) noPenalty(r string) bool {
	return l.is(PenaltyBetween, "no") || l.param(r, "requests.penalty-between") != "counts-as-rally"
}

// unsettled is the answer where no text of the code was seen.
func (l *look) unsettled() engine.Ruling {
	return saying(l.measure("who-decides"), "no text that settles it is held for this code: the first referee decides, ask the rules interpreter")
}
