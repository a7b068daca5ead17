package deadball

import (
	"slices"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

var misconduct = Rule{
	ID: "misconduct", Title: "misconduct",
	Text: "Misconduct is sanctioned by its gravity and by what the person has had before: a warning, a penalty with point and " +
		"service to the opponents, then out for the set or the match. One code grades it by classes, another leaves the card to " +
		"the first referee's judgement; whether cards count for the set or the match, and for the person or the team, differs.",
	Cite: "conduct.yellow",
	Also: []code.Param{"conduct.aggression", "conduct.cards-apart", "conduct.cards-together", "conduct.cards-together-point",
		"conduct.coach-standing", "conduct.offensive", "conduct.red", "conduct.rude", "conduct.scope", "conduct.warning-scope"},
	judge: judgeMisconduct,
}

// withPoint says that sending somebody off also costs a point.
const withPoint = "with loss of rally and point"

// steps are the sanctions in their order.
var steps = []string{"warning", "penalty", "expulsion", "disqualification"}

func judgeMisconduct(l *look, r string) engine.Ruling {
	if !l.told(Gravity) {
		if step, ok := l.anyClass(r); ok {
			return step
		}
		return l.openStep(r, "conduct.yellow", "by its gravity and by what the person has had before: a warning, a penalty (point and service), or out")
	}
	switch l.get(Gravity) {
	case Minor:
		return l.minor(r)
	case Rude:
		return l.graded(r, "conduct.rude", "penalty")
	case Offensive:
		return l.graded(r, "conduct.offensive", "expulsion")
	}
	if l.param(r, "conduct.aggression") == "disqualification" {
		return l.out(r, "disqualification")
	}
	return l.openStep(r, "conduct.aggression", "a red card at least, by its gravity; disqualification where it is grave")
}

// anyClass is the step where every class of conduct short of aggression comes
// to the same one after the card that the person had.
func (l *look) anyClass(r string) (engine.Ruling, bool) {
	if !l.told(CardBefore) || l.is(CardBefore, None) {
		return engine.Ruling{}, false
	}
	step := l.minor(r)
	for _, other := range []engine.Ruling{l.graded(r, "conduct.rude", "penalty"), l.graded(r, "conduct.offensive", "expulsion")} {
		if !slices.Equal(other.Measure, step.Measure) {
			return engine.Ruling{}, false
		}
	}
	if step.Answer == "" {
		step.Answer = "whatever its class, short of aggression"
	}
	step.Cites = l.cites
	return step, !slices.Contains(step.Measure, "misconduct")
}

// openStep is misconduct whose step is open.
func (l *look) openStep(r string, p code.Param, how string) engine.Ruling {
	l.param(r, p)
	return saying(l.against("misconduct"), how)
}

// minor is the warning, or the step after the one that was reached before.
func (l *look) minor(r string) engine.Ruling {
	if l.param(r, "conduct.yellow") != "warning" {
		return l.openStep(r, "conduct.yellow", "a word, then a card")
	}
	if !l.told(CardBefore) {
		return l.openStep(r, "conduct.yellow", "a warning the first time, a penalty (point and service) after a warning")
	}
	step := 0
	switch before := l.had(r); {
	case before >= 0:
		step = before + 1
	case l.param(r, "conduct.warning-scope") == "team" && l.is(TeamWarned, "yes"):
		step = 1
	}
	return l.step(r, step)
}

// graded is a class of conduct with a ladder of its own, or one that the first
// referee grades.
func (l *look) graded(r string, p code.Param, first string) engine.Ruling {
	byJudgement := l.param(r, p) == "by-judgement"
	if !l.told(CardBefore) {
		if byJudgement {
			return l.openStep(r, p, "a warning or a penalty by its gravity, and more after a card")
		}
		return l.openStep(r, p, first+" the first time, the next step each time after")
	}
	before := l.had(r)
	switch {
	case !byJudgement:
		return l.step(r, max(before+1, slices.Index(steps, first)))
	case before >= 0:
		return l.step(r, before+1)
	}
	return l.openStep(r, p, "a warning, or a penalty at once where it is serious")
}

// had is the step that the person reached before, as an index of steps, or -1;
// a card of an earlier set is none where cards count for the set.
func (l *look) had(r string) int {
	before := l.get(CardBefore)
	if before == None {
		return -1
	}
	if l.param(r, "conduct.scope") == "set" && l.is(CardSet, EarlierSet) {
		return -1
	}
	return slices.Index([]play.Value{Warned, Penalised, Expelled}, before)
}

// step is the sanction of a step. A code without expulsion goes from the
// penalty to the disqualification.
func (l *look) step(r string, i int) engine.Ruling {
	switch i {
	case 0:
		l.param(r, "conduct.yellow")
		return l.against("warning")
	case 1:
		l.param(r, "conduct.red")
		return l.seated(r)
	case 2:
		switch l.param(r, "conduct.cards-together") {
		case "expulsion":
			return l.out(r, "expulsion")
		case "disqualification":
			return l.out(r, "disqualification")
		}
		return l.openStep(r, "conduct.cards-together", "a step beyond the penalty: expulsion or disqualification, which was not seen")
	}
	return l.out(r, "disqualification")
}

// seated is a penalty, which costs the head coach the right to stand where the
// code says so and the card went to the bench.
func (l *look) seated(r string) engine.Ruling {
	out := l.against("penalty")
	if l.told(Member) && !l.is(Member, PlayerOf) && l.param(r, "conduct.coach-standing") == "after-red" {
		out = saying(out, "and the head coach sits for the rest of the match")
		out.Cites = l.cites
	}
	return out
}

// out sends a person off.
func (l *look) out(r, how string) engine.Ruling {
	together := l.param(r, "conduct.cards-together") == how
	if !together {
		l.param(r, "conduct.cards-apart")
	}
	out := l.against(how)
	if together && l.param(r, "conduct.cards-together-point") == "yes" {
		out = saying(out, withPoint)
	}
	out.Cites = l.cites
	return out
}
