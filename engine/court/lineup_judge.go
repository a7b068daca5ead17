package court

import (
	"fmt"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// The ids of the rules of the order of service.
const (
	ruleOfficials = "order-given-by-officials"
	ruleLost      = "order-lost"
	ruleFoundLate = "order-wrong-found-late"
	ruleWrong     = "order-wrong-server"
	ruleRotate    = "rotation-order"
	ruleVacant    = "vacant-position-serves"
)

// lineupRules is every rule of a line-up, sorted by id.
var lineupRules = []Rule{
	{ruleOfficials, "wrong order given by officials", "Where an official gave a team the wrong order, it is put right and the rally is not lost; by code points of that term of service come off.", "lineup.officials-error"},
	{ruleLost, "order of service lost", "Where nobody can tell when the order went wrong, it is restored from the line-up sheets and substitutions, no earlier point is cancelled, and play goes on.", "serve.wrong-server-points"},
	{ruleFoundLate, "wrong order found late", "Points that a team scored while it was wrong are cancelled, how far back depends on the code and on whether the opponents have served. The opponents keep theirs.", "serve.wrong-server-points"},
	{ruleWrong, "served out of the order", "A player who serves out of the order costs the rally: point and service to the opponents, and the order is corrected. Before the hit it is only put right.", "serve.wrong-server"},
	{ruleRotate, "order of rotation", "A team that wins the right to serve rotates one place with the clock first; whoever comes to right back serves.", "serve.wrong-server"},
	{ruleVacant, "vacant position serves", "What happens when a team with fewer than six has its vacant position come to serve.", "lineup.vacant-serves"},
}

// LineupRules is every rule of a line-up, sorted by id.
func LineupRules() []Rule { return append([]Rule(nil), lineupRules...) }

const wrongServerFault = "wrong-server"

// JudgeLineup rules on a line-up. It is an engine.Judge.
func JudgeLineup(r *engine.Read, s engine.Subject) engine.Ruling {
	l, ok := s.(*Lineup)
	if !ok {
		panic("court: a subject that is not a line-up")
	}
	o := &orders{Read: r, l: l}
	switch l.Trouble {
	case WrongServer:
		return o.late(wrongServerFault, "serve.wrong-server", "serve.wrong-server-points")
	case WrongOrder:
		return o.late(outOfPosition, "align.penalty", "align.points")
	case OfficialOrder:
		return o.officials()
	case BothLost:
		o.Param("serve.wrong-server-points")
		return measure(play.NoTeam, ruleLost, "serve.wrong-server-points", "correct-and-go-on")
	case VacantServes:
		return o.vacant()
	}
	return o.history()
}

// orders looks at one line-up.
type orders struct {
	*engine.Read
	l *Lineup
}

func measure(by play.Team, rule string, p code.Param, ms ...string) engine.Ruling {
	return engine.Ruling{Measure: ms, Against: by, Cites: []engine.Cite{{Rule: rule, Param: p}}}
}

// fault is the loss of the rally, or what the code makes of it.
func (o *orders) fault(id string, p code.Param) engine.Ruling {
	cites := []engine.Cite{{Rule: ruleWrong, Param: p}}
	if o.Param(p) == "replay" {
		return engine.Ruling{Outcome: engine.Replay, Replay: doubleFault, Cites: cites}
	}
	r := engine.Ruling{Outcome: engine.Fault, Fault: id, Against: o.l.By, Cites: cites}
	if o.l.Asked == WantPoints {
		r.Answer = "1 point to the receivers, and the service"
		if id == outOfPosition {
			r.Answer = "1 point to the opponents, and the service"
		}
	}
	return r
}

// late rules on a wrong server, or a wrong order, by when it was found.
func (o *orders) late(id string, p, points code.Param) engine.Ruling {
	switch o.Get(OrderFound, "") {
	case FoundBefore:
		o.Param("serve.right-server-before-hit")
		return measure(play.NoTeam, ruleWrong, "serve.right-server-before-hit", "correct-and-go-on")
	case FoundRally:
		return o.fault(id, p)
	case FoundTerm:
		r := o.fault(id, p)
		r.Cites = append(r.Cites, engine.Cite{Rule: ruleFoundLate, Param: points})
		if !o.off(points) || r.Outcome != engine.Fault {
			return r
		}
		r.Measure = []string{"cancel-points"}
		if id == wrongServerFault {
			r.Cites = append(r.Cites, engine.Cite{Rule: ruleFoundLate, Param: "serve.wrong-server-opponents"})
			if o.Param("serve.wrong-server-opponents") == "undone" {
				r.Answer = "the points of this term come off, point and service to the opponents; their time-outs, substitutions and sanctions in it are undone"
			}
		}
		return r
	}
	if o.Param(points) != "while-still-serving" && o.off(points) {
		return measure(o.l.By, ruleFoundLate, points, "cancel-points", "correct-and-go-on")
	}
	return measure(play.NoTeam, ruleFoundLate, points, "correct-and-go-on")
}

// off reports whether points come off where the moment is known.
func (o *orders) off(points code.Param) bool {
	switch o.Param(points) {
	case "while-still-serving":
		return true
	case "since-the-fault", "cancelled":
		return o.Is(OrderMoment, "", play.Yes)
	}
	return false
}

// officials rules on a wrong order that an official gave.
func (o *orders) officials() engine.Ruling {
	const p = "lineup.officials-error"
	if o.Param(p) != "until-opponents-serve" {
		return measure(play.NoTeam, ruleOfficials, p, "who-decides")
	}
	if o.Get(OrderFound, "") == FoundTerm {
		return measure(play.NoTeam, ruleOfficials, p, "cancel-points")
	}
	return measure(play.NoTeam, ruleOfficials, p, "correct-and-go-on")
}

// vacant rules on a vacant position that comes to serve.
func (o *orders) vacant() engine.Ruling {
	const p = "lineup.vacant-serves"
	switch o.Param(p) {
	case "loss-of-rally":
		return engine.Ruling{Outcome: engine.Fault, Fault: wrongServerFault, Against: o.l.By, Cites: []engine.Cite{{Rule: ruleVacant, Param: p}}}
	case "incomplete-team":
		return measure(o.l.By, ruleVacant, p, "forfeit")
	}
	return measure(o.l.By, ruleVacant, p, "who-decides")
}

// history answers what a set's history says.
func (o *orders) history() engine.Ruling {
	h := o.l.History
	cites := []engine.Cite{{Rule: ruleRotate, Param: "serve.wrong-server"}}
	o.Param("serve.wrong-server")
	s, err := h.Replay()
	if err != nil {
		return engine.Ruling{Conflict: []string{err.Error()}}
	}
	if at := h.found(s); at >= 0 {
		return o.wrong(s, s.Terms[at])
	}
	nm := func(t play.Team) string { return name(o.l.Names, t) }
	say := fmt.Sprintf("%d-%d for %s; ", s.Score[s.Serving], s.Score[s.Serving.Other()], nm(s.Serving))
	front := func(t play.Team) string { f := s.Front(t); return strings.Join(f[:], " ") }
	known := func(t play.Team) bool { return h.Start[t] != ([6]string{}) }
	switch {
	case !known(s.Serving) && o.l.Asked != WantWhere && o.l.Asked != WantFront:
		say += "the line-up of " + nm(s.Serving) + " is not told"
	case o.l.Asked == WantFront, o.l.Asked == WantWhere:
		for _, t := range []play.Team{play.A, play.B} {
			switch {
			case !known(t):
			case o.l.Asked == WantFront:
				say += "front row of " + nm(t) + ", from the left: " + front(t) + "; "
			default:
				say += nm(t) + " from position 1 to 6: " + strings.Join(s.Order[t][:], " ") + "; "
			}
		}
		say = strings.TrimSuffix(say, "; ")
	default:
		say = s.Server() + " serves for " + nm(s.Serving) + ", " + fmt.Sprintf("%d-%d", s.Score[s.Serving], s.Score[s.Serving.Other()])
	}
	return engine.Ruling{Answer: say, Cites: cites}
}

// found is the last term with a wrong server, -1 where there is none.
func (h *History) found(s *State) int {
	for i := len(s.Terms) - 1; i >= 0; i-- {
		if s.Terms[i].Since >= 0 {
			return i
		}
	}
	return -1
}

// wrong rules on a wrong server that the history itself shows, found now.
func (o *orders) wrong(s *State, t Term) engine.Ruling {
	h := o.l.History
	served := false
	for i := t.To; i < len(h.Entries); i++ {
		served = served || h.Entries[i].What == Won
	}
	say := fmt.Sprintf("%d points of %s come off: %s served for %s", t.Wrong, name(o.l.Names, t.Team), t.Served, t.Expected)
	const points = code.Param("serve.wrong-server-points")
	switch by := t.Team; {
	case served && o.Param(points) == "since-the-fault" && t.Wrong > 0:
		r := measure(by, ruleFoundLate, points, "cancel-points", "correct-and-go-on")
		r.Answer = say
		return r
	case served:
		o.Param(points)
		return measure(play.NoTeam, ruleFoundLate, points, "correct-and-go-on")
	default:
		o.Param("serve.wrong-server")
		o.Param(points)
		r := engine.Ruling{Outcome: engine.Fault, Fault: wrongServerFault, Against: by,
			Cites: []engine.Cite{{Rule: ruleWrong, Param: "serve.wrong-server"}, {Rule: ruleFoundLate, Param: points}}}
		if t.Wrong > 0 {
			r.Measure, r.Answer = []string{"cancel-points"}, say
			if o.Param("serve.wrong-server-opponents") == "undone" {
				r.Cites = append(r.Cites, engine.Cite{Rule: ruleFoundLate, Param: "serve.wrong-server-opponents"})
				r.Answer += "; the opponents' time-outs, substitutions and sanctions since are undone"
			}
		}
		return r
	}
}
