package rules

import "example.org/netpost/engine/play"

var screen = Rule{
	ID: "screen", Title: "screen", Rank: 98,
	Text: "The serving team may not hide the serve from the receivers. Most codes ask that the server and the path of the ball " +
		"both be hidden by players who move or stand close together; one asks for a low serve over them. Hands above the head " +
		"during the service are forbidden in some editions. A single player who stands still is no screen.",
	Cite: "serve.screen-definition", Also: []paramID{"serve.hands-above-head"},
	Call: Call{By: []string{"R1"}, Signal: "block-or-screen"},
}

// judgeScreen rules on the serving team between the server and the receivers.
// The fault exists once the ball passes over it, after the hit.
func judgeScreen(w *Walk, r *Rule, e play.Event) {
	if w.Param("serve.hands-above-head") == "forbidden" {
		if w.Is(play.HandsUp, e.ID, play.Yes) {
			w.fault(r, e, e.Team, w.now()+1, "serve.hands-above-head")
			return
		}
		if w.Told(play.HandsUp, e.ID) {
			w.clear(r.ID, "serve.hands-above-head", e)
		}
	}
	how := w.Get(play.Grouped, e.ID)
	if how == play.OneStill {
		w.clear(r.ID, r.Cite, e)
		return
	}
	if how == play.CloseBy && w.Param(r.Cite) == "low-over-players" {
		if w.Is(play.LowOver, e.ID, play.No) {
			w.clear(r.ID, r.Cite, e)
			return
		}
		if w.Is(play.HandsUp, e.ID, play.Yes) && !w.Told(play.Hidden, e.ID) {
			w.fault(r, e, e.Team, w.now()+1, r.Cite)
			return
		}
	}
	if w.Is(play.Hidden, e.ID, play.AllHidden) {
		w.fault(r, e, e.Team, w.now()+1, r.Cite)
		return
	}
	if how != play.Apart || w.Told(play.Hidden, e.ID) || w.Told(play.Grouped, e.ID) {
		w.clear(r.ID, r.Cite, e)
	}
}
