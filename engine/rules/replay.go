package rules

import "example.org/netpost/engine/play"

var doubleFault = Rule{
	ID: "double-fault", Title: "double fault", Rank: 200,
	Text: "Faults by both teams in the same moment cancel each other and the rally is replayed; of faults one after the other " +
		"only the first counts.",
	Cite: "replay.double-fault", Call: Call{By: []string{"R1"}, Signal: "replay"},
	LiftsAll: true,
}

var inadvertentWhistle = Rule{
	ID: "inadvertent-whistle", Title: "inadvertent whistle", Rank: 201,
	Text: "A whistle ends the rally. When no fault came before it and the rally could still have gone either way, it is " +
		"replayed; when the result was already certain, the result stands.",
	Cite: "replay.inadvertent-whistle", Call: Call{By: []string{"R1"}, Signal: "replay"},
	Judge: judgeWhistle,
	// A whistle in the moment of a fault is that fault's whistle.
	Yields: true,
}

var outsideInterference = Rule{
	ID: "outside-interference", Title: "outside interference", Rank: 202,
	Text: "A ball, a person or a thing from outside that distracts or hinders a player stops the rally, which is replayed. One " +
		"that bothers nobody is no reason to stop.",
	Cite: "replay.external", Also: []paramID{"ball.person-or-object", "replay.lost-equipment", "replay.torn-net"},
	Call:  Call{By: []string{"R1", "R2"}, Signal: "replay"},
	Judge: judgeIntrusion,
	// What comes from outside in the very moment of a fault leaves nobody to
	// blame for it: a reading of 17.2, from memory.
	LiftsAll: true,
}

var overheadObstruction = Rule{
	ID: "overhead-obstruction", Title: "overhead obstruction", Rank: 203,
	Text: "A ball that a low object over the playing area stops may be replayed in some codes when it could otherwise have been " +
		"played; in another it is out.",
	Cite: "overhead.low-object", Call: Call{By: []string{"R1"}, Signal: "replay"},
	LiftsAll: true,
}

var deadBall = Rule{
	ID: "dead-ball", Title: "dead ball", Rank: 210,
	Text: "What a player touches or crosses after the ball is dead is no playing fault.",
	Cite: "centre.after-dead-ball", Call: Call{By: []string{"R1"}},
}

var unseen = Rule{
	ID: "unseen", Title: "not seen, not called", Rank: 211,
	Text: "A contact that nobody of the crew saw is not called; a line judge's or second referee's sight of it counts.",
	Cite: "r2.duties", Call: Call{By: []string{"R1"}},
}

func judgeWhistle(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Whistle {
		return
	}
	w.dead = true
	if w.Is(play.ErrorWhistle, e.ID, play.No) || w.Param(r.Cite) != "replay" && w.Is(play.Certain, e.ID, play.Yes) {
		w.clear(r.ID, r.Cite, e)
		return
	}
	w.replay(r, e, r.Cite)
}

func judgeIntrusion(w *Walk, r *Rule, e play.Event) {
	if e.Kind != play.Intrusion {
		return
	}
	if w.Is(play.Gear, e.ID, play.Yes) { // a shoe or a pad that a player lost
		if w.Param("replay.lost-equipment") == "replay" || w.Is(play.Hinders, e.ID, play.Yes) {
			w.replay(r, e, "replay.lost-equipment")
			return
		}
		w.clear(r.ID, "replay.lost-equipment", e)
		return
	}
	if w.Param(r.Cite) == "replay" || w.Is(play.Hinders, e.ID, play.Yes) {
		w.replay(r, e, r.Cite)
		return
	}
	w.clear(r.ID, r.Cite, e)
}
