package rules

import "example.org/netpost/engine/play"

var outOfPosition = Rule{
	ID: "out-of-position", Title: "out of position", Rank: 6,
	Text: "At the service hit the receivers must stand in their positions, and in most codes the serving team too. A serve that " +
		"is faulty at the hit prevails over the receivers' misalignment; one that fails in flight comes after it and yields.",
	Cite: "align.receiving-team", Also: []paramID{"align.serving-team", "align.both-teams-out", "align.penalty", "serve.fault-vs-alignment"},
	Call: Call{By: []string{"R2", "R1"}, Signal: "position"},
}

func judgeOutOfPosition(w *Walk, r *Rule, e play.Event) {
	own := w.Param("align.serving-team") == "bound" && w.Is(play.ServingSix, e.ID, play.Misaligned)
	theirs := w.Param(r.Cite) == "bound" && w.Is(play.Receivers, e.ID, play.Misaligned)
	switch {
	case own && theirs && w.Param("align.both-teams-out") == "replay":
		w.replay(&doubleFault, e, "align.both-teams-out")
	case (own || theirs) && w.Param("align.penalty") == "replay":
		w.replay(&doubleFault, e, "align.penalty")
	case theirs:
		w.fault(r, e, e.Team.Other(), w.misaligned(e), r.Cite)
	case own:
		w.fault(r, e, e.Team, w.now(), "align.serving-team")
	default:
		if w.Told(play.ServingSix, e.ID) {
			w.clear(r.ID, "align.serving-team", e)
		}
		if w.Told(play.Receivers, e.ID) {
			w.clear(r.ID, r.Cite, e)
		}
	}
}

// misaligned is the moment from which the receivers' misalignment counts: the
// hit. Where every service fault prevails, it counts only once the serve has
// reached somebody or something.
func (w *Walk) misaligned(e play.Event) int {
	if w.Param("serve.fault-vs-alignment") == "by-moment" {
		return w.now()
	}
	for i := w.g + 1; i < len(w.seq); i++ {
		if t := touches(w.seq[i]); len(t) > 0 && t[0].Team != e.Team {
			return 2 * i
		}
	}
	return 2*len(w.seq) + 1
}
