package rules

import "example.org/netpost/engine/play"

var backRowAttack = Rule{
	ID: "back-row-attack", Title: "back-row attack", Rank: 30,
	Text: "A back-row player may not complete an attack on a ball that is wholly above the net after taking off on or in front " +
		"of the attack line. The attack is complete when the ball has crossed the plane or an opponent legally touches it; " +
		"where the player lands does not matter.",
	Cite: "backrow.attack-test", Also: []paramID{"backrow.attack-completed"},
	Call:  Call{By: []string{"R1", "R2"}, Signal: "attack-fault"},
	Judge: judgeBackRowAttack,
}

var backRowBlock = Rule{
	ID: "back-row-block", Title: "back-row block", Rank: 31,
	Text: "Only front-row players may complete a block. A back-row player who reaches above the net and touches a ball that " +
		"comes from the opponents, or is part of a collective block that a teammate's touch completes, blocks illegally. " +
		"An attempt that touches nothing is no fault, and a ball that hits a player below the top of the net is a first hit.",
	Cite: "backrow.block-completed", Also: []paramID{"backrow.block-attempt", "backrow.below-net-first-hit",
		"backrow.setter-simultaneous-blocker", "backrow.blocker-first-then-setter", "block.collective"},
	Call:  Call{By: []string{"R1", "R2"}, Signal: "block-or-screen"},
	Judge: judgeBackRowBlock,
}

func judgeBackRowAttack(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact {
		return
	}
	if _, ok := w.joust(e); ok && !e.Action.Attacking() {
		return // not an attack but a block, when it is above the net
	}
	if _, chased := w.pursued(w.g); chased {
		return // a ball played back from beyond the antenna is no attack
	}
	at, done := w.completion(e)
	if !done {
		if w.Told(play.Row, e.Player) && w.row(e) == play.Back && e.Action != play.Pass && e.Action != play.Dig {
			w.clear(r.ID, "backrow.attack-completed", e)
		}
		return
	}
	if e.Action == play.Block {
		return
	}
	if w.row(e) == play.Front {
		if e.Action.Attacking() {
			w.clear(r.ID, "backrow.attack-test", e)
		}
		return
	}
	if w.libero(e) {
		return // the libero's own rule is wider
	}
	if w.isBlock(e) {
		return
	}
	if w.Is(play.Height, e.ID, play.NotAbove) || w.Is(play.TakeOff, e.ID, play.Behind) {
		w.clear(r.ID, "backrow.attack-test", e)
		return
	}
	w.fault(r, e, e.Team, at, "backrow.attack-test")
}

func judgeBackRowBlock(w *Walk, r *Rule, e play.Event) {
	switch e.Kind {
	case play.Attempt:
		judgeBackRowAttempt(w, r, e)
	case play.Contact:
		if e.Action.Attacking() || e.Action == play.Pass || e.Action == play.Dig {
			return
		}
		if !w.fromOpponents(e) {
			return
		}
		if w.row(e) == play.Front {
			if w.Told(play.ReachHeight, e.ID) && w.Is(play.ReachHeight, e.ID, play.Below) {
				w.clear(r.ID, "backrow.below-net-first-hit", e)
			} else if w.Told(play.Row, e.Player) {
				w.clear(r.ID, r.Cite, e)
			}
			return
		}
		if w.libero(e) {
			return
		}
		if !w.isBlock(e) && w.Param("backrow.below-net-first-hit") == "first-hit" {
			w.clear(r.ID, "backrow.below-net-first-hit", e)
			return
		}
		p := paramID("backrow.block-completed")
		if _, ok := w.joust(e); ok {
			p = "backrow.setter-simultaneous-blocker"
		} else if e.Action != play.Block {
			p = "backrow.blocker-first-then-setter"
		}
		w.fault(r, e, e.Team, w.now(), p)
	}
}

// judgeBackRowAttempt looks at a player who was up to block and touched
// nothing: only a teammate's touch in the same block makes it a fault.
func judgeBackRowAttempt(w *Walk, r *Rule, e play.Event) {
	if w.libero(e) || w.row(e) == play.Front {
		return
	}
	for _, i := range w.blockOf(e) {
		for _, f := range w.seq[i] {
			if f.Kind != play.Contact || f.Team != e.Team || !w.isBlock(f) {
				continue
			}
			if w.Param("block.collective") == "one-touch-completes" && w.Is(play.Together, e.ID, play.Yes) && w.Is(play.ReachHeight, e.ID, play.Above) {
				w.fault(r, e, e.Team, 2*i, "backrow.block-completed")
				return
			}
		}
	}
	if w.Param("backrow.block-attempt") == "fault" && w.Is(play.ReachHeight, e.ID, play.Above) {
		w.fault(r, e, e.Team, w.now(), "backrow.block-attempt")
		return
	}
	w.clear(r.ID, "backrow.block-attempt", e)
}

// blockOf is the groups in which the touch of the same block can be told: back
// to the last contact, and on, past what the opponents do, to the first own one.
func (w *Walk) blockOf(e play.Event) []int {
	var out []int
	if t, i := w.before(w.g); i >= 0 && t[0].Team == e.Team {
		out = append(out, i)
	}
	for i := w.g; i < len(w.seq); i++ {
		for _, f := range w.seq[i] {
			if f.Kind == play.Land {
				return out
			}
			if f.Kind == play.Contact && f.Team == e.Team {
				return append(out, i)
			}
		}
	}
	return out
}
