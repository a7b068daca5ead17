package rules

import "example.org/netpost/engine/play"

var injury = Rule{
	ID: "injury", Title: "injury in the rally", Rank: 205,
	Text: "For a serious injury in the rally play stops at once and the rally is replayed. Care of the player comes first; who " +
		"returns is for local policy and qualified medical people.",
	Cite: "replay.injury", Call: Call{By: []string{"R1", "R2"}, Signal: "replay"},
	Judge: judgeInjury,
	// In the moment of a fault the fault has ended the rally.
	Yields: true,
}

var crewDisagreement = Rule{
	ID: "crew-disagreement", Title: "calls that cannot be settled", Rank: 206,
	Text: "When the crew's calls conflict the first referee decides; where nobody can, the rally is replayed.",
	Cite: "replay.official-conflict", Call: Call{By: []string{"R1"}, Signal: "replay"},
	Judge:  judgeDispute,
	Yields: true,
}

func judgeInjury(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Injury {
		return
	}
	if w.Is(play.Serious, e.ID, play.Yes) && w.Param(r.Cite) == "replay" {
		w.replay(r, e, r.Cite)
		return
	}
	w.clear(r.ID, r.Cite, e)
}

func judgeDispute(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Dispute {
		return
	}
	w.dead = true
	if w.Is(play.Decides, e.ID, play.No) && w.Param(r.Cite) == "replay-if-unable" {
		w.replay(r, e, r.Cite)
		return
	}
	w.clear(r.ID, r.Cite, e)
}
