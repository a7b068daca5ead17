package rules

import "example.org/netpost/engine/play"

var unplayableArea = Rule{
	ID: "unplayable-area", Title: "ball played in a non-playing area", Rank: 96,
	Text: "One code lets a ball be fetched from anywhere. In the others the player must touch the playing surface at the " +
		"contact; one of them also takes a landing on it after.",
	Cite: "ball.nonplayable-area", Call: Call{By: []string{"R1", "R2"}, Signal: "ball-out"},
	Judge: judgeUnplayableArea,
}

func judgeUnplayableArea(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact {
		return
	}
	at := w.Get(play.Footing, e.ID)
	if at == play.OnSurface {
		if w.Told(play.Footing, e.ID) {
			w.clear(r.ID, r.Cite, e)
		}
		return
	}
	switch w.Param(r.Cite) {
	case "touching-at-contact":
		w.fault(r, e, e.Team, w.now(), r.Cite)
		return
	case "touching-or-landing":
		if at == play.OffSurface {
			w.fault(r, e, e.Team, w.now(), r.Cite)
			return
		}
	}
	w.clear(r.ID, r.Cite, e)
}
