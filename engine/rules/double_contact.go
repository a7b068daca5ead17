package rules

import "example.org/netpost/engine/play"

var doubleContact = Rule{
	ID: "double-contact", Title: "double contact", Rank: 50,
	Text: "A player may not play the ball twice in a row, except after a block of his or her own. More than one touch in a " +
		"single action is legal on a team's first hit and in a block; on the second hit some codes allow it when a teammate " +
		"plays the ball next; on the third it is a fault.",
	Cite: "hits.same-player-twice", Also: []paramID{"hits.first-multiple", "hits.second-double", "hits.second-double-goes-over",
		"hits.third-double", "block.successive",
		"hits.teammates-simultaneous-next", "block.not-a-hit", "joust.next-player"},
	Call:  Call{By: []string{"R1"}, Signal: "double-contact"},
	Judge: judgeDoubleContact,
}

func judgeDoubleContact(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Contact {
		return
	}
	judgeTwice(w, r, e)
	if !w.Is(play.Manner, e.ID, play.Double) {
		return
	}
	if _, ok := w.joust(e); ok && e.Action != play.Set {
		w.clear(r.ID, "joust.extended", e) // two who press the same ball
		return
	}
	if e.Action == play.Block || w.fromOpponents(e) && w.isBlock(e) {
		w.clear(r.ID, "block.successive", e)
		return
	}
	switch w.number(e) {
	case 1:
		if w.Is(play.Attempts, e.ID, play.Two) {
			w.fault(r, e, e.Team, w.now(), "hits.first-multiple")
			return
		}
		w.clear(r.ID, "hits.first-multiple", e)
	case 2:
		if w.Param("hits.second-double") == "fault" {
			w.fault(r, e, e.Team, w.now(), "hits.second-double")
			return
		}
		if w.Is(play.Attempts, e.ID, play.Two) {
			w.fault(r, e, e.Team, w.now(), "hits.same-player-twice")
			return
		}
		if at, over := w.completion(e); over {
			w.fault(r, e, e.Team, at, "hits.second-double-goes-over")
			return
		}
		w.clear(r.ID, "hits.second-double", e)
	default:
		w.fault(r, e, e.Team, w.now(), "hits.third-double")
	}
}

// judgeTwice looks for the same player as the one who touched the ball last.
func judgeTwice(w *Walk, r *Rule, e play.Event) {
	t, g := w.before(w.g)
	if g < 0 || e.Player == "" {
		return
	}
	same := false
	for _, f := range t {
		same = same || f.Kind == play.Contact && f.Player == e.Player
	}
	if !same {
		return
	}
	if both(t) {
		if w.Param("joust.next-player") == "any" {
			w.clear(r.ID, "joust.next-player", e)
			return
		}
	} else if w.isBlock(t[0]) {
		w.clear(r.ID, "block.not-a-hit", e)
		return
	}
	if len(t) > 1 && w.Param("hits.teammates-simultaneous-next") == "any" {
		w.clear(r.ID, "hits.teammates-simultaneous-next", e)
		return
	}
	w.fault(r, e, e.Team, w.now(), "hits.same-player-twice")
}
