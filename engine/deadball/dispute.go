package deadball

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

var dispute = Rule{
	ID: "dispute", Title: "dispute of a decision",
	Text: "A judgement is final. The application of a rule may be questioned: by the captain on court with the first " +
		"referee, who may have a protest noted, or by the head coach in a time-out that is charged where the " +
		"ruling stands.",
	Cite:  "disputes.rule",
	Also:  []code.Param{"disputes.judgement"},
	judge: judgeDispute,
}

func judgeDispute(l *look, r string) engine.Ruling {
	if l.is(DisputeOf, Judgement) {
		l.param(r, "disputes.judgement")
		return l.against("deny")
	}
	switch l.param(r, "disputes.rule") {
	case "coach-time-out":
		if l.is(Changed, "yes") {
			return saying(l.measure("allow"), "no time-out is charged, since the ruling is changed")
		}
		return l.against("charge-time-out")
	case "captain-asks":
		if l.is(Speaker, Captain) {
			return saying(l.measure("allow"), "the first referee explains; a protest is announced at once and written down after the match")
		}
		return l.against("deny")
	}
	return l.unsettled()
}
