package rules

import "example.org/netpost/engine/play"

var fourContacts = Rule{
	ID: "four-contacts", Title: "four contacts", Rank: 40,
	Text: "A team has three hits to return the ball; a block is not one of them. A team that has used three may not be the " +
		"next to touch the ball, and may not touch it in the same moment as an opponent.",
	Cite: "hits.max", Also: []paramID{"joust.after-three-hits", "hits.teammates-simultaneous", "block.not-a-hit"},
	Call:  Call{By: []string{"R1"}, Signal: "four-contacts"},
	Judge: judgeFourContacts,
}

func judgeFourContacts(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact || !w.spent(e) {
		return
	}
	if _, ok := w.joust(e); ok {
		if w.Param("joust.after-three-hits") == "fourth-contact" {
			w.fault(r, e, e.Team, w.now(), "joust.after-three-hits")
		}
		return
	}
	w.fault(r, e, e.Team, w.now(), "hits.max")
}
