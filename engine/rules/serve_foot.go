package rules

import "example.org/netpost/engine/play"

var serveFoot = Rule{
	ID: "serve-foot", Title: "foot fault at the serve", Rank: 2,
	Text: "At the service hit, or at the take-off of a jump serve, the server may touch neither the court, its end line " +
		"included, nor the floor outside the service zone. Where the server lands after the hit is of no matter.",
	Cite: "serve.foot-fault", Call: Call{By: []string{"R1", "line judge"}, Signal: "line"},
	Lifts: []string{"out-of-position"},
}

func judgeServeFoot(w *Walk, r *Rule, e play.Event) {
	if !w.Is(play.Feet, e.ID, play.Own) {
		w.fault(r, e, e.Team, w.now(), r.Cite)
		return
	}
	if w.Told(play.Feet, e.ID) {
		w.clear(r.ID, r.Cite, e)
	}
}
