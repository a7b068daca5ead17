package rules

import "example.org/netpost/engine/play"

var liberoAttack = Rule{
	ID: "libero-attack", Title: "libero attack", Rank: 20,
	Text: "The libero may not complete an attack from anywhere on a ball that is wholly above the net.",
	Cite: "libero.attack", Call: Call{By: []string{"R1", "R2"}, Signal: "attack-fault"},
	Judge: judgeLiberoAttack,
}

var liberoBlock = Rule{
	ID: "libero-block", Title: "libero block", Rank: 21,
	Text: "The libero may not block and may not attempt to block, touch or no touch.",
	Cite: "libero.block-attempt", Call: Call{By: []string{"R1", "R2"}, Signal: "block-or-screen"},
	Judge: judgeLiberoBlock,
}

var liberoSet = Rule{
	ID: "libero-set-attack", Title: "attack from the libero's finger set", Rank: 22,
	Text: "A teammate may not complete an attack on a ball wholly above the net that the libero sent with an overhand finger " +
		"action from in front of the attack line or its extension. From behind it, or with the forearms, the libero may set.",
	Cite: "libero.finger-set-front", Call: Call{By: []string{"R1", "R2"}, Signal: "attack-fault"},
	Judge: judgeLiberoSet,
}

func judgeLiberoAttack(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact || e.Action == play.Block {
		return
	}
	if _, ok := w.joust(e); ok && !e.Action.Attacking() {
		return
	}
	at, done := w.completion(e)
	if !done || !w.libero(e) || w.isBlock(e) {
		return
	}
	if w.Is(play.Height, e.ID, play.NotAbove) {
		w.clear(r.ID, "libero.attack", e)
		return
	}
	w.fault(r, e, e.Team, at, "libero.attack")
}

func judgeLiberoBlock(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact && e.Kind != play.Attempt || !w.libero(e) {
		return
	}
	if e.Kind == play.Attempt {
		if w.Is(play.ReachHeight, e.ID, play.Above) {
			w.fault(r, e, e.Team, w.now(), "libero.block-attempt")
		}
		return
	}
	if w.isBlock(e) {
		w.fault(r, e, e.Team, w.now(), "libero.block-attempt")
	}
}

func judgeLiberoSet(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact || e.Action == play.Block {
		return
	}
	t, g := w.before(w.g)
	if g < 0 || both(t) || t[0].Kind != play.Contact || t[0].Team != e.Team {
		return
	}
	for _, f := range t {
		if f.Player == e.Player || !w.libero(f) {
			continue
		}
		if f.Action == play.Dig && !w.Told(play.Fingers, f.ID) {
			continue // a dig is no finger set
		}
		at, done := w.completion(e)
		if !done {
			return
		}
		if w.Is(play.Fingers, f.ID, play.No) || w.Is(play.TakeOff, f.ID, play.Behind) || w.Is(play.Height, e.ID, play.NotAbove) {
			w.clear(r.ID, "libero.finger-set-front", e)
			return
		}
		w.fault(r, e, e.Team, at, "libero.finger-set-front")
	}
}
