package rules

import "example.org/netpost/engine/play"

var attackOfServe = Rule{
	ID: "attack-of-serve", Title: "attack of the serve", Rank: 10,
	Text: "The receiving team may not complete an attack on the served ball while it is wholly above the net and, in most " +
		"codes, in the front zone.",
	Cite: "serve.attack-of-serve", Call: Call{By: []string{"R1"}, Signal: "attack-fault"},
	Judge: judgeAttackOfServe,
}

var blockOfServe = Rule{
	ID: "block-of-serve", Title: "block of the serve", Rank: 11,
	Text: "The served ball may not be blocked: a receiver at the net may not reach above it and touch the ball.",
	Cite: "serve.block-of-serve", Call: Call{By: []string{"R1", "R2"}, Signal: "block-or-screen"},
	Judge: judgeBlockOfServe,
}

func judgeAttackOfServe(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact || !w.served(e) || !w.fromOpponents(e) || w.isBlock(e) {
		return
	}
	at, done := w.completion(e)
	if !done || w.Is(play.Height, e.ID, play.NotAbove) {
		return
	}
	if w.Param("serve.attack-of-serve") == "front-zone" && w.Is(play.TakeOff, e.ID, play.Behind) {
		w.clear(r.ID, "serve.attack-of-serve", e)
		return
	}
	w.fault(r, e, e.Team, at, "serve.attack-of-serve")
}

func judgeBlockOfServe(w *Walk, r *Rule, e play.Event) {
	if e.Kind == play.Contact && w.served(e) && w.fromOpponents(e) && w.isBlock(e) {
		w.fault(r, e, e.Team, w.now(), "serve.block-of-serve")
	}
}
