package rules

import "example.org/netpost/engine/play"

var assisted = Rule{
	ID: "assisted-contact", Title: "assisted hit", Rank: 65,
	Text: "Inside the playing area a player may not take support from a teammate or from a structure to reach the ball. " +
		"A player may hold a teammate back from a fault, and may let go before playing the ball.",
	Cite: "hits.assisted", Also: []paramID{"hits.assisted-hold-back"},
	Call:  Call{By: []string{"R1", "R2"}, Signal: "assisted"},
	Judge: judgeAssisted,
}

func judgeAssisted(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Support {
		return
	}
	if w.Is(play.Holding, e.ID, play.No) || w.Is(play.Inside, e.ID, play.No) {
		w.clear(r.ID, "hits.assisted", e)
		return
	}
	if w.Is(play.Aids, e.ID, play.No) {
		w.clear(r.ID, "hits.assisted-hold-back", e)
		return
	}
	w.fault(r, e, e.Team, w.now(), "hits.assisted")
}
