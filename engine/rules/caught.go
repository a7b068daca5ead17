package rules

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/play"
)

var caught = Rule{
	ID: "caught-or-thrown", Title: "caught or thrown ball", Rank: 60,
	Text: "The ball must rebound from the contact. To catch, carry or throw it is a fault on every hit and in a block; the " +
		"shape of the hand, the spin and the sound are no evidence.",
	Cite: "hits.caught-thrown", Also: []paramID{"block.redirect", "hits.body-parts", "joust.extended"},
	Call:  Call{By: []string{"R1"}, Signal: "caught"},
	Judge: judgeCaught,
}

func judgeCaught(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact {
		return
	}
	switch w.Get(play.Manner, e.ID) {
	case play.Held:
		if _, ok := w.joust(e); ok && e.Action != play.Set {
			w.held(r, e)
			return
		}
		w.fault(r, e, e.Team, w.now(), heldBy(e))
	case play.Clean:
		if w.Told(play.Manner, e.ID) {
			w.clear(r.ID, heldBy(e), e)
			return
		}
		if len(w.plain) == 0 && w.Param("hits.body-parts") == "any" {
			w.plain = []engine.Cite{{Rule: r.ID, Param: "hits.body-parts", Event: e.ID}}
		}
	}
}

// heldBy is the parameter that a catch breaks: a block may direct the ball
// and has its own.
func heldBy(e play.Event) paramID {
	if e.Action == play.Block {
		return "block.redirect"
	}
	return "hits.caught-thrown"
}

// held rules on a ball that opponents press together: play goes on; a code may
// have it replayed, and where no text settles it the interpreter is asked.
func (w *Walk) held(r *Rule, e play.Event) {
	switch w.Param("joust.extended") {
	case "replay":
		w.replay(&doubleFault, e, "joust.extended")
		return
	case "unclear":
		if f, _ := w.joust(e); w.spent(e) || w.spent(f) {
			return // four contacts whatever becomes of a held ball
		}
		w.unsettled(r, e, "joust.extended")
		return
	}
	w.clear(r.ID, "joust.extended", e)
}
