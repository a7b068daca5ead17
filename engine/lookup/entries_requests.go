package lookup

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// requestEntries are what a team may ask for: time-outs and substitutions.
var requestEntries = []Entry{
	{
		ID: "re-entry", Title: "re-entry of a player", Ask: "How often may a player who was taken out come back?",
		Words: []string{"re-enter many | player starter sub times may", "re-enter may | player starter sub again", "starter come-back may | again",
			"starter come-back many | times may", "re-enter times | player starter sub may"},
		Params: []code.Param{"subs.re-entry"},
		says: by("subs.re-entry",
			clause{"once-for-the-starter", "1 time: a starter goes out and comes back once, for the same player; a substitute enters once"},
			clause{"same-position", "no limit but the substitutions of the set: always into the same position of the order"}),
	},
	{
		ID: "re-entry-for-whom", Title: "re-entry for the same player", Ask: "Must a starter who comes back go in for the same player?",
		Words:  []string{"re-enter same-player | must player starter may sub back in go start", "starter come-back same-player | must back in go start player", "sub same-player must | re-enter come-back starter player back in"},
		Params: []code.Param{"subs.re-entry"},
		says: by("subs.re-entry",
			clause{"once-for-the-starter", "yes: only for the player who took her place"},
			clause{"same-position", "no: her own position in the serving order, whoever holds it"}),
	},
	{
		ID: "substitution-count", Title: "substitutions per set", Ask: "How many substitutions does a team have in a set?",
		Words:  []string{"sub many | may have allowed each get", "sub limit | many"},
		Params: []code.Param{"subs.per-set"},
		says: func(r *engine.Read, _ string) string {
			s := r.Param("subs.per-set") + " per set"
			if r.Param("subs.re-entry") == "once-for-the-starter" {
				return s + ": a starter may come back once"
			}
			return s + ": each player in one position of the order"
		},
	},
	{
		ID: "time-out-coach-on-court", Title: "coach on the court in a time-out", Ask: "May a coach go onto the court in a time-out?",
		Words:  []string{"timeout coach on-court may | step-on own-side huddle", "timeout coach step-on may | own-side court on-court", "timeout assistant on-court may | step-on own-side", "timeout huddle on-court may | team player step-on"},
		Params: []code.Param{"timeouts.coach-on-court"},
		says: by("timeouts.coach-on-court", clause{"not-allowed", "no: the players come to the bench"},
			clause{"own-side", "yes: on the own side of the court"}),
	},
	{
		ID: "time-out-count", Title: "time-outs per set", Ask: "How many time-outs does a team have in a set?",
		Words:  []string{"timeout many | may have each get ask"},
		Params: []code.Param{"timeouts.count"}, says: number("timeouts.count", "per set"),
	},
	{
		ID: "time-out-early", Title: "end of a time-out before its time", Ask: "May a time-out end early when both teams are ready?",
		Words: []string{"timeout both-back may start | number seconds early play", "both-back may start | number seconds early play", "timeout early may | end start both-back number seconds play",
			"timeout end early | may both-back", "both-back early may | start play"},
		Params: []code.Param{"timeouts.early-end"},
		says: by("timeouts.early-end", clause{"allowed", "yes: it may end early when both teams are ready"},
			clause{"not-allowed", "no: it runs its full time"}),
	},
	{
		ID: "time-out-length", Title: "length of a time-out", Ask: "How long is a time-out?",
		Words:  []string{"timeout long | each full", "timeout seconds | many each", "timeout minutes | many each", "timeout seconds long | many"},
		Params: []code.Param{"timeouts.length"}, says: timeOutLength,
	},
	{
		ID: "time-out-requester", Title: "who may ask for a time-out", Ask: "May %s ask for a time-out?",
		Words: []string{"asktime may player=player | any", "asktime may captain=captain | player", "asktime may assistant=assistant", "asktime may head-coach=head-coach", "asktime may libero=player",
			"asktime who=who | may", "timeout ask may player=player | any", "timeout ask may captain=captain | player", "timeout ask may assistant=assistant", "timeout ask may head-coach=head-coach",
			"timeout ask who=who | may", "timeout ask may libero=player", "asktime player=player | any", "asktime captain=captain | may", "timeout who=who may | ask"},
		Params: []code.Param{"timeouts.requester"},
		of:     oneOf("player", "captain", "assistant", "head-coach", "who"),
		says:   requester,
	},
	{
		ID: "time-out-warning", Title: "warning before the end of a time-out", Ask: "When is the end of a time-out warned?",
		Words:  []string{"timeout warning-whistle | when seconds left many long", "warning-whistle when | seconds left many timeout end", "timeout warning-whistle may | seconds"},
		Params: []code.Param{"timeouts.warning"},
		says: func(r *engine.Read, _ string) string {
			if r.Param("timeouts.warning") == "none" {
				return "no warning is given"
			}
			return count(r, "timeouts.warning", "seconds before its end")
		},
	},
	{
		ID: "time-outs", Title: "time-outs of a set and their length", Ask: "How many time-outs does a team have in a set, and how long is each?",
		Words:  []string{"timeout many long | each seconds have may get", "timeout many seconds | each long have"},
		Params: []code.Param{"timeouts.count", "timeouts.length"},
		says:   joined(", ", number("timeouts.count", "per set"), timeOutLength),
	},
}

// timeOutLength is the length of a time-out, with what else its cell allows.
func timeOutLength(r *engine.Read, _ string) string {
	s := time("timeouts.length")(r, "")
	if r.Param("timeouts.length-by-agreement") == allowed {
		s += ", or 60 or 90 where both coaches agree"
	}
	return s
}

func requester(r *engine.Read, who string) string {
	switch v := r.Param("timeouts.requester"); {
	case v == "coach-or-captain-in-absence" && who == "who":
		return "the coach, or the game captain in the coach's absence"
	case v == "coach-or-captain-in-absence" && who == "head-coach":
		return "yes: the coach may"
	case v == "coach-or-captain-in-absence" && who == "captain":
		return "no: only in the coach's absence"
	case v == "coach-or-captain-in-absence":
		return "no: the coach, or the game captain in the coach's absence"
	case who == "who":
		return "the head coach or the playing captain"
	case who == "head-coach", who == "captain":
		return "yes: the head coach or the playing captain may"
	}
	return "no: the head coach or the playing captain"
}
