package rules

import "example.org/netpost/engine/play"

var overNet = Rule{
	ID: "over-net", Title: "over the net", Rank: 70,
	Text: "A ball in the plane of the net is anyone's. A ball wholly beyond the plane may be touched only in a block, once the " +
		"opponents have made their attack hit or used their third hit, or where none of them could play it. It may never be " +
		"attacked or pulled back from there. A hand beyond the net that touches no ball is no fault unless it hinders.",
	Cite: "block.of-a-set", Also: []paramID{"block.beyond-after-attack", "block.beyond-third-hit",
		"block.beyond-nobody-can-play", "block.beyond-simultaneous", "net.ball-entirely-opp-side",
		"net.ball-in-plane", "net.reach-no-ball-touch", "net.follow-through",
		"net.opponent-touched-over-net"},
	Call: Call{By: []string{"R1"}, Signal: "over-net"},
	// A touch beyond the net that is not allowed does not complete an attack,
	// and does not carry a doubled second ball over.
	Lifts: []string{"back-row-attack", "libero-attack", "libero-set-attack", "back-row-block", "hits.second-double-goes-over"},
	Judge: judgeOverNet,
}

func judgeOverNet(w *Walk, r *Rule, e play.Event) {
	switch e.Kind {
	case play.Reach:
		judgeReach(w, r, e)
	case play.Contact:
		judgeBeyond(w, r, e)
	}
}

func judgeReach(w *Walk, r *Rule, e play.Event) {
	if w.Param("net.reach-no-ball-touch") == "fault" || w.Is(play.Hinders, e.ID, play.Yes) {
		w.fault(r, e, e.Team, w.now(), "net.reach-no-ball-touch")
		return
	}
	if w.Is(play.Touches, e.ID, play.Yes) && w.Param("net.opponent-touched-over-net") == "fault" && w.theirs(e) {
		if _, ok := w.opened(e); !ok {
			w.fault(r, e, e.Team, w.now(), "net.opponent-touched-over-net")
			return
		}
	}
	p := paramID("net.reach-no-ball-touch")
	if t, g := w.before(w.g); g >= 0 && e.Player != "" && t[0].Player == e.Player {
		p = "net.follow-through"
	}
	w.clear(r.ID, p, e)
}

func judgeBeyond(w *Walk, r *Rule, e play.Event) {
	blocks := false
	if e.Action == play.Block || e.Action == play.Touch || e.Action == play.Press || e.Action == play.Save {
		if w.fromOpponents(e) {
			if p, ok := w.opened(e); ok && w.Param(p) != "fault" && w.isBlock(e) {
				w.clear(r.ID, p, e)
				return
			}
			blocks = true
		}
	}
	switch w.place(e) {
	case play.Own:
		return
	case play.Plane:
		w.clear(r.ID, "net.ball-in-plane", e)
		return
	}
	if !blocks || !w.isBlock(e) {
		w.fault(r, e, e.Team, w.now(), "net.ball-entirely-opp-side")
		return
	}
	if f, ok := w.joust(e); ok && f.Action.Attacking() {
		w.fault(r, e, e.Team, w.now(), "block.beyond-simultaneous")
		return
	}
	if w.Param("block.beyond-nobody-can-play") != "fault" && w.Is(play.CouldPlay, e.ID, play.No) {
		w.clear(r.ID, "block.beyond-nobody-can-play", e)
		return
	}
	if w.Param("block.beyond-third-hit") != "fault" && w.thirdUsed(e) {
		w.clear(r.ID, "block.beyond-third-hit", e)
		return
	}
	w.fault(r, e, e.Team, w.now(), "block.of-a-set")
}

// theirs reports whether the ball was the opponents' to play at an event.
func (w *Walk) theirs(e play.Event) bool {
	if t, g := w.before(w.g); g >= 0 {
		return t[len(t)-1].Team != e.Team
	}
	return w.Is(play.Has, "", play.Value(e.Team.Other().String()))
}

// opened reports whether the opponents' last touch before a block was their
// attack hit, after which the ball may be blocked beyond the net.
func (w *Walk) opened(e play.Event) (paramID, bool) {
	t, g := w.before(w.group(e))
	if g < 0 || both(t) || t[0].Team == e.Team || t[0].Kind != play.Contact {
		return "", false
	}
	if t[0].Action.Attacking() || t[0].Action == play.Press {
		return "block.beyond-after-attack", true
	}
	if t[0].Number == 3 {
		return "block.beyond-third-hit", true
	}
	return "", false
}

// thirdUsed reports whether the opponents had used their third hit before a
// contact.
func (w *Walk) thirdUsed(e play.Event) bool {
	n, open := w.hits(e.Team.Other(), w.group(e))
	if n >= 3 {
		return true
	}
	return open && w.openingSpent(n)
}
