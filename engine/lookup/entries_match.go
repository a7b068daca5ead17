package lookup

import (
	"strconv"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// matchEntries are the measures of the court, the net, the ball and the match.
var matchEntries = []Entry{
	{
		ID: "antenna-height", Title: "antenna above the net", Ask: "How far does the antenna rise above the net?",
		Words:  []string{"antenna high | above net stick-out", "antenna long above net | stick-out", "antenna stick-out far | above net"},
		Params: []code.Param{"match.antenna-above", "match.measures"}, says: length("match.antenna-above"),
	},
	{
		ID: "attack-line-distance", Title: "attack line", Ask: "How far is the attack line from the centre line?",
		Words:  []string{"attack-line far | centre-line net from-net", "attack-line distance | centre-line net"},
		Params: []code.Param{"match.attack-line", "match.measures"}, says: length("match.attack-line"),
	},
	{
		ID: "ball-pressure", Title: "pressure of the ball", Ask: "How much pressure does the ball have?",
		Words:  []string{"ball pressure | many high inside psi", "ball psi | many pressure", "pressure psi | many"},
		Params: []code.Param{"match.ball-pressure-min", "match.ball-pressure-max"},
		says:   span("match.ball-pressure-min", "match.ball-pressure-max", "psi"),
	},
	{
		ID: "ball-size", Title: "circumference of the ball", Ask: "What is the circumference of the ball?",
		Words:  []string{"ball size | around", "ball circumference | many", "ball big | around"},
		Params: []code.Param{"match.ball-circumference-min", "match.ball-circumference-max"},
		says:   span("match.ball-circumference-min", "match.ball-circumference-max", "cm"),
	},
	{
		ID: "ball-texture", Title: "textured ball", Ask: "May a textured ball be used?",
		Words:  []string{"textured ball may | used", "textured ball"},
		Params: []code.Param{"match.ball-texture"},
		says: by("match.ball-texture",
			clause{"smooth", "no: the ball is smooth"},
			clause{"trial", "no: the ball is smooth; a textured ball is on trial"},
			clause{"state-adoption", "yes: where the state association adopts it"}),
	},
	{
		ID: "ball-weight", Title: "weight of the ball", Ask: "What does the ball weigh?",
		Words:  []string{"ball weight | many", "ball heavy"},
		Params: []code.Param{"match.ball-weight-min", "match.ball-weight-max"},
		says:   span("match.ball-weight-min", "match.ball-weight-max", "g"),
	},
	{
		ID: "ceiling-height", Title: "free height above the court", Ask: "How high is the free space above the court?",
		Words:  []string{"ceiling high must | court above gym", "ceiling high need | court above gym", "free-space above court high | must", "ceiling height | court"},
		Params: []code.Param{"match.ceiling", "match.measures"}, says: length("match.ceiling"),
	},
	{
		ID: "centre-line-belongs", Title: "whose the centre line is", Ask: "To which court does the centre line belong?",
		Words:  []string{"centre-line belong | court which side both", "centre-line part court | both side which"},
		Params: []code.Param{"match.centre-line-belongs-to"},
		says: by("match.centre-line-belongs-to", clause{"both", "both: it belongs to the two courts equally"},
			clause{"neither", "neither: it belongs to no court"}),
	},
	{
		ID: "centre-line-marking", Title: "marking of the centre line", Ask: "How may the centre line be marked?",
		Words:  []string{"centre-line solid may | must broken shadow", "centre-line solid must | broken shadow", "centre-line shadow may | bordered", "centre-line marked | how may must"},
		Params: []code.Param{"match.centre-line-marking"},
		says: by("match.centre-line-marking", clause{"solid", "solid: it must be a solid line"},
			clause{"solid-or-shadow", "solid, or bordered by a shadow"},
			clause{"solid-broken-or-shadow", "solid, broken, or bordered by a shadow"}),
	},
	{
		ID: "court-change", Title: "change of courts in the deciding set", Ask: "At how many points are the courts changed in the deciding set?",
		Words: []string{"switch-sides deciding-set | when points many score", "switch-sides deciding-set number | when points",
			"switch-sides when points | many"},
		Params: []code.Param{"match.court-change-deciding"}, says: number("match.court-change-deciding", "points"),
	},
	{
		ID: "court-size", Title: "size of the court", Ask: "How long and how wide is the court?",
		Words:  []string{"court size | whole full", "court long | wide whole", "court wide | long whole", "court dimension"},
		Params: []code.Param{"match.court-length", "match.court-width", "match.measures"},
		says:   courtSize,
	},
	{
		ID: "deciding-set-points", Title: "points of the deciding set", Ask: "How many points win the deciding set?",
		Words: []string{"deciding-set points | many win to played go play-to", "deciding-set win-by | many points", "deciding-set many | win to played go points",
			"deciding-set to number | played go points or number"},
		Params: []code.Param{"match.deciding-set-points", "match.lead"},
		says:   joined(", with a lead of ", number("match.deciding-set-points", "points"), bare("match.lead")),
	},
	{
		ID: "free-zone", Title: "free space around the court", Ask: "How much free space must there be around the court?",
		Words:  []string{"free-space | many must wide around court need large", "free-space long | around court"},
		Params: []code.Param{"match.free-zone", "match.measures"},
		says: func(r *engine.Read, _ string) string {
			if s := measured(r, "match.free-zone"); s != "" {
				return s + " at least"
			}
			return ""
		},
	},
	{
		ID: "interval", Title: "interval between sets", Ask: "How long is the interval between sets?",
		Words: []string{"between-sets long | time interval break", "interval long | between-sets", "between-sets time | interval", "between-sets minutes | interval many time break",
			"between-sets break | long time"},
		Params: []code.Param{"match.interval"}, says: time("match.interval"),
	},
	{
		ID: "line-judge-count", Title: "number of line judges", Ask: "How many line judges are there?",
		Words:  []string{"line-judge many | need must use"},
		Params: []code.Param{"line-judges.count"},
		says: func(r *engine.Read, _ string) string {
			v := r.Param("line-judges.count")
			if v == "two-or-four" {
				return "2 or 4 line judges"
			}
			return v + " line judges"
		},
	},
	{
		ID: "line-judge-flags", Title: "flags of line judges", Ask: "Do line judges have flags?",
		Words:  []string{"line-judge flag | must use need may have", "flag line-judge must"},
		Params: []code.Param{"line-judges.flags"},
		says: by("line-judges.flags", clause{"yes", "yes: they have flags"}, clause{"as-available", "yes: where there are flags"},
			clause{"state-adoption", "no: only where the state association adopts them"}),
	},
	{
		ID: "line-width", Title: "width of the lines", Ask: "How wide are the lines?",
		Words:  []string{"lines wide | court boundary", "lines thick | court boundary"},
		Params: []code.Param{"match.line-width"},
		says: func(r *engine.Read, _ string) string {
			v, err := strconv.ParseFloat(r.Param("match.line-width"), 64)
			if err != nil {
				return ""
			}
			if r.Param("match.measures") == "feet" {
				return feet(v/100) + " (" + strconv.FormatFloat(v, 'f', -1, 64) + " cm)"
			}
			return strconv.FormatFloat(v, 'f', -1, 64) + " cm"
		},
	},
	{
		ID: "net-height", Title: "height of the net", Ask: "How high is the net?",
		Words:  []string{"net high | women men juniors older", "net-height | women men juniors older many set"},
		Params: []code.Param{"match.net-height-women", "match.net-height-men", "match.measures"},
		says: func(r *engine.Read, _ string) string {
			men := measured(r, "match.net-height-men")
			if men != "" && r.Is(NetFor, "", MenNet) {
				return men
			}
			return measured(r, "match.net-height-women")
		},
	},
	{
		ID: "players-to-start", Title: "players to start", Ask: "How many players does a team need to start?",
		Words:  []string{"player many start | need must have least on-court", "player few start | need must have least", "few start | need must have may", "player many on-court | need must", "player least start | need must", "player many must start"},
		Params: []code.Param{"team.players-to-start"}, says: number("team.players-to-start", "players"),
	},
	{
		ID: "service-zone", Title: "service zone", Ask: "How wide is the service zone?",
		Words:  []string{"service-zone wide | long size", "service-zone size"},
		Params: []code.Param{"match.service-zone", "match.measures"}, says: length("match.service-zone"),
	},
	{
		ID: "set-cap", Title: "cap of a set", Ask: "Is there a cap on the points of a set?",
		Words:  []string{"cap | points may have number score be-there", "cap points"},
		Params: []code.Param{"match.cap"},
		says: func(r *engine.Read, _ string) string {
			v := r.Param("match.cap")
			switch v {
			case "none":
				return "no: a set goes on until the lead is " + r.Param("match.lead")
			case notStated:
				return ""
			}
			return "yes: at " + v + " points"
		},
	},
	{
		ID: "set-points", Title: "points to win a set", Ask: "How many points win a set?",
		Words:  []string{"points many win | to play", "set points many | win to played", "points win-by | many win", "set play-to | points many", "set many points | win"},
		Params: []code.Param{"match.set-points", "match.lead"},
		says:   joined(", with a lead of ", number("match.set-points", "points"), bare("match.lead")),
	},
	{
		ID: "sets", Title: "sets of a match", Ask: "Best of how many sets is a match?",
		Words:  []string{"sets many | match played best-of win", "best-of many | sets match played", "best-of number | sets match played or"},
		Params: []code.Param{"match.sets"},
		says: func(r *engine.Read, _ string) string {
			return r.Param("match.sets") + " sets at most: best of " + r.Param("match.sets")
		},
	},
}

// bare answers with a number alone.
func bare(p code.Param) func(*engine.Read, string) string {
	return func(r *engine.Read, _ string) string {
		v := r.Param(p)
		if _, err := strconv.ParseFloat(v, 64); err != nil {
			return ""
		}
		return v
	}
}

// span answers with a least and a greatest number.
func span(least, greatest code.Param, unit string) func(*engine.Read, string) string {
	return joined(" to ", bare(least), number(greatest, unit))
}

func courtSize(r *engine.Read, _ string) string {
	long, err := strconv.ParseFloat(r.Param("match.court-length"), 64)
	wide, err2 := strconv.ParseFloat(r.Param("match.court-width"), 64)
	switch {
	case err != nil || err2 != nil:
		return ""
	case r.Param("match.measures") == "feet":
		return feet(long) + " by " + feet(wide)
	}
	return bare("match.court-length")(r, "") + " m by " + number("match.court-width", "m")(r, "")
}
