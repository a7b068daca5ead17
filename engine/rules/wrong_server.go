package rules

import "example.org/netpost/engine/play"

var wrongServer = Rule{
	ID: "wrong-server", Title: "wrong server", Rank: 4,
	Text: "A player who serves out of the order of service loses the rally. The right one may still step in before the hit, " +
		"within the same count where the code says so.",
	Cite: "serve.wrong-server", Also: []paramID{"serve.right-server-before-hit"},
	Call:  Call{By: []string{"scorer", "R2", "R1"}, Signal: "position"},
	Lifts: []string{"out-of-position"},
}

var illegalLibero = Rule{
	ID: "illegal-libero-replacement", Title: "illegal libero replacement", Rank: 5,
	Text: "A libero may not serve in one code. In the others the libero serves in one place of the order in a set; a serve in a " +
		"second place is found at the hit as a fault.",
	Cite: "libero.serve", Also: []paramID{"libero.second-serve-position"},
	Call:  Call{By: []string{"R2", "R1"}, Signal: "position"},
	Lifts: []string{"out-of-position"},
}

func judgeWrongServer(w *Walk, r *Rule, e play.Event) {
	switch w.Get(play.ServerTurn, e.ID) {
	case play.WrongServer:
		if w.Param(r.Cite) == "replay" {
			w.replay(&doubleFault, e, r.Cite)
			return
		}
		w.fault(r, e, e.Team, w.now(), r.Cite)
	case play.StepsIn:
		w.clear(r.ID, "serve.right-server-before-hit", e)
	default:
		if w.Told(play.ServerTurn, e.ID) {
			w.clear(r.ID, r.Cite, e)
		}
	}
}

func judgeServingLibero(w *Walk, r *Rule, e play.Event) {
	if e.Player == "" || !w.libero(e) {
		return
	}
	if w.Param(r.Cite) == "not-allowed" {
		w.fault(r, e, e.Team, w.now(), r.Cite)
		return
	}
	if w.Is(play.Spot, e.ID, play.No) {
		w.fault(r, e, e.Team, w.now(), "libero.second-serve-position")
		return
	}
	w.clear(r.ID, r.Cite, e)
}
