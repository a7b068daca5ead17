package rules

import "example.org/netpost/engine/play"

var caught = Rule{
	ID: "caught-or-thrown", Title: "caught or thrown ball", Rank: 60,
	Text: "The ball must rebound from the contact. To catch, carry or throw it is a fault on every hit and in a block; the " +
		"shape of the hand, the spin and the sound are no evidence.",
	Cite: "hits.caught-thrown", Also: []paramID{"block.redirect", "hits.body-parts", "joust.extended"},
	Call:  Call{By: []string{"R1"}, Signal: "caught"},
	Judge: judgeCaught,
}

func judgeCaught(w *Walk, e play.Event) {
	if e.Kind != play.Contact {
		return
	}
	switch w.Get(play.Manner, e.ID) {
	case play.Held:
		if _, ok := w.joust(e); ok && w.Param("joust.extended") == "play-on" {
			w.clear(caught.ID, "joust.extended", e)
			return
		}
		w.fault(&caught, e, e.Team, w.now(), "hits.caught-thrown")
	case play.Clean:
		if w.Told(play.Manner, e.ID) {
			w.clear(caught.ID, "hits.caught-thrown", e)
		}
	}
}
