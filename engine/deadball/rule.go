package deadball

import (
	"slices"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Rule is one rule of a dead ball.
type Rule struct {
	ID    string
	Title string     // a name a crew would use
	Text  string     // our summary; never a book's sentence
	Cite  code.Param // the parameter whose cell gives number, edition and basis
	Also  []code.Param
	// judge rules on the act. A rule that only serves others has none.
	judge func(l *look, r string) engine.Ruling
}

// Params lists the parameters that the rule's text names, the leading first.
func (r Rule) Params() []code.Param { return append([]code.Param{r.Cite}, r.Also...) }

// all is every rule, sorted by id. It is filled before anything is judged,
// since the rules call one another.
var all []Rule

func init() {
	all = []Rule{coachOnCourt, delay, dispute, facility, illegalPlayer, illegalSubstitution, improperRequest, injuryStop, liberoOut, liberoReplacement, liberoServing, lineUpCheck,
		lineUpSheet, misconduct, playerOut, playersOnCourt, substitutionRequest, timeOutRequest, worn}
}

// All is every rule, sorted by id.
func All() []Rule { return slices.Clone(all) }

// ByID finds a rule.
func ByID(id string) (Rule, bool) {
	for _, r := range all {
		if r.ID == id {
			return r, true
		}
	}
	return Rule{}, false
}

// Judge rules on an act. It panics on a subject of another kind.
func Judge(r *engine.Read, s engine.Subject) engine.Ruling {
	a := s.(*Act)
	k, _ := KindByID(a.Kind)
	rule, _ := ByID(k.Rule)
	return rule.judge(&look{Read: r, act: a}, rule.ID)
}

// look is one judging of an act: the door to facts and parameters, and what
// was cited on the way.
type look struct {
	*engine.Read
	act   *Act
	cites []engine.Cite
}

func (l *look) get(f play.FactID) play.Value        { return l.Get(f, "") }
func (l *look) is(f play.FactID, v play.Value) bool { return l.Is(f, "", v) }
func (l *look) told(f play.FactID) bool             { return l.Told(f, "") }

// param reads a parameter and cites it for a rule.
func (l *look) param(r string, p code.Param) string {
	l.cite(r, p)
	return l.Param(p)
}

func (l *look) cite(r string, p code.Param) {
	c := engine.Cite{Rule: r, Param: p}
	if !slices.Contains(l.cites, c) {
		l.cites = append(l.cites, c)
	}
}

// measure is a ruling of measures that apply together.
func (l *look) measure(ids ...string) engine.Ruling {
	return engine.Ruling{Measure: ids, Cites: l.cites}
}

// against is a ruling of measures against the team whose act it is.
func (l *look) against(ids ...string) engine.Ruling {
	r := l.measure(ids...)
	r.Against = l.act.By
	return r
}

// fault is a fault of the team whose act it is.
func (l *look) fault(id string) engine.Ruling {
	return engine.Ruling{Outcome: engine.Fault, Fault: id, Against: l.act.By, Cites: l.cites}
}

// replay is a replay for a reason.
func (l *look) replay(why string) engine.Ruling {
	return engine.Ruling{Outcome: engine.Replay, Replay: why, Cites: l.cites}
}

// saying is a ruling with a clause that explains it.
func saying(r engine.Ruling, answer string) engine.Ruling {
	r.Answer = answer
	return r
}

// Next is who gets the point and who serves after a ruling: a fault, a penalty
// and a disqualification that costs a point give both to the opponents.
func Next(r engine.Ruling) (point, serves play.Team) {
	if r.Outcome == engine.Fault || slices.Contains(r.Measure, "penalty") || slices.Contains(r.Measure, "delay-penalty") || r.Answer == withPoint {
		return r.Against.Other(), r.Against.Other()
	}
	return play.NoTeam, play.NoTeam
}
