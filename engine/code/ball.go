package code

// ballRows are the rows about where the ball is in play.
var ballRows = []Row{
	{
		Param: "ball.antenna-posts",
		Title: "Ball touches antenna, posts, cables or net outside the side bands",
		Doc:   "Ball touches an antenna, a post, a cable or the net outside the side bands.",
		Values: []Value{
			{"out", "out"},
			{"in-play", "play goes on"},
		},
		cells: table{
			intl: {pub("out", "8.4.3", fivb2025,
				"out")},
			club: {mem("out", "8.4.3",
				"out")},
			coll: {mem("out", "16.2",
				"out")},
			scho: {pub("out", "9-3-3a", schoolColumn,
				"out/dead")},
		},
	},
	{
		Param: "ball.line",
		Title: "Ball on the line",
		Doc:   "Ball that lands on a line.",
		Values: []Value{
			{"in", "in"},
			{"out", "out"},
		},
		cells: table{
			intl: {pub("in", "8.3; 8.4.1", fivb2025,
				"in if any part of the ball touches court or line at any moment of floor contact")},
			club: {pub("in", "8.4.1", refereeLines,
				"in")},
			coll: {pub("in", "16.2.2.1", refereeLines,
				"in")},
			scho: {pub("in", "2-3b", refereeLines,
				"in").
				doubt("rule number as printed, doubtful")},
		},
	},
	{
		Param: "ball.net-recovery",
		Title: "Ball driven into the net",
		Doc:   "Whether a ball driven into the net may be played on.",
		Values: []Value{
			{"playable", "it may be played on within the three hits"},
			{"dead", "it is dead"},
		},
		cells: table{
			intl: {pub("playable", "10.3.1-10.3.2", fivb2025,
				"may be played within the three hits; a torn net or trapped ball = replay")},
			club: {mem("playable", "10.3",
				"may be played within the three hits; a torn net or trapped ball = replay")},
			coll: {mem("playable", "15",
				"may be played within the three hits")},
			scho: {pub("playable", "9-6", schoolExams,
				"recoverable")},
		},
	},
	{
		Param: "ball.nonplayable-area",
		Title: "Playing a ball over or in a non-playing area",
		Doc:   "Playing a ball that is over or in a non-playing area.",
		Values: []Value{
			{"free", "the ball may be retrieved there"},
			{"touching-or-landing", "the player must touch the playing surface at contact, or land on it after"},
			{"touching-at-contact", "the player must touch the playing surface at contact"},
		},
		cells: table{
			intl: {pub("free", "9", fivb2025,
				"ball may be retrieved beyond the free zone (and over the scorer's table)")},
			club: {pub("touching-or-landing", "9", comparison2020,
				"beyond the free zone if the surface is no more than 1/2 in lower and free of obstacles; "+
					"otherwise must be touching the playing surface at contact or land on it after")},
			coll: {pub("touching-at-contact", "4.2", comparison2020,
				"the player must be touching the playable surface when playing a ball over a non-playable area; "+
					"only the player making the play may move a divider net or curtain")},
			scho: {pub("touching-at-contact", "2-4-2", comparison2020,
				"must be touching the playable area when playing a ball over a non-playable area")},
		},
	},
	{
		Param: "ball.person-or-object",
		Title: "Ball touches stand, official, bench or person out of play",
		Doc:   "Ball touches a stand, an official, a bench or a person who is not playing.",
		Values: []Value{
			{"out", "out"},
			{"out-or-replay", "out; a replay when a person or object stopped a legitimate play"},
			{"out-unless-told", "out, unless a legitimate play was stopped"},
		},
		cells: table{
			intl: {pub("out", "8.4.2", fivb2025,
				"out")},
			club: {pub("out-unless-told", "8.4.2", usaBulletin2008,
				"out: a ball that only hits an official is out; a replay if a legitimate play near the court was stopped").
				doubt("the replay is from memory, confidence medium; inherited from the international text, not seen")},
			coll: {pub("out-or-replay", "11.4.1", refereeCaseplays,
				"out; replay if a non-player interfered with a legitimate play").
				doubt("confidence medium")},
			scho: {pub("out-or-replay", "9-3-3; 9-8-1g", schoolExams+"; "+refereeCaseplays,
				"out; but a non-team person who interferes with a legitimate effort = replay").
				doubt("confidence medium-high")},
		},
	},
	{
		Param: "ball.pursuit",
		Title: "Ball crosses net plane outside/over the antenna into opponents' free zone and is chased",
		Doc: "Ball crosses the plane of the net outside or over the antenna into the opponents' free zone: may " +
			"the team chase it?",
		Values: []Value{
			{"first-hit-only", "only a ball from the team's first hit"},
			{"any-before-third", "any ball before the third hit was used up"},
			{"where-declared", "only on courts with the space, as the event declares"},
			{"not-allowed", "never: it is out when it has wholly crossed"},
		},
		cells: table{
			intl: {
				pub("any-before-third", "10.1.2-10.1.2.3", fivb2025,
					"a ball from any hit before the third could be chased; the player may not touch the opponents' "+
						"court; it must come back outside the same antenna within the team's hits").until(2024),
				pub("first-hit-only", "10.1.2-10.1.2.3", fivb2025,
					"only if it came from the team's first hit; player may not touch opponents' court; must come back "+
						"outside the same antenna within team hits; opponents may not hinder. From 2nd/3rd hit it is out "+
						"on crossing").since(2025),
			},
			club: {pub("where-declared", "10.1.2", schoolPursuit+"; "+usaRegulations,
				"allowed only where the court has the required clear space, as the event declares; otherwise out").
				doubt("whether the limit to the first hit applies is unconfirmed; confidence medium")},
			coll: {pub("not-allowed", "15.1; 16", schoolPursuit,
				"not allowed: out when it completely crosses outside the antenna").
				doubt("rule number from memory")},
			scho: {pub("not-allowed", "9-3-3a", schoolPursuit,
				"not allowed: dead when it completely crosses the plane outside the antenna; a ball still partly "+
					"on the own side may be played, even by a player wholly past the extended centre line")},
		},
	},
	{
		Param: "ball.pursuit-return-out-moment",
		Title: "When a pursued ball becomes out on a bad return",
		Doc:   "When a chased ball that comes back on the wrong path is out.",
		Values: []Value{
			{"over-opponents-court", "when it has left the space above the free zone and entered that above the opponents' court"},
			{"not-applicable", "no ball may be chased"},
		},
		cells: table{
			intl: {pub("over-opponents-court", "10.1.2.2", fivbCasebook,
				"when it has fully left the space above the free zone and entered the space above opponents' "+
					"court")},
			club: {mem("over-opponents-court", "10.1.2.2",
				"where pursuit is on: when it has fully left the space above the free zone and entered the space "+
					"above the opponents' court").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("not-applicable", "",
				"no ball may be chased")},
			scho: {mem("not-applicable", "",
				"no ball may be chased")},
		},
	},
	{
		Param: "ball.under-net",
		Title: "Ball passes under the net",
		Doc:   "Ball passes under the net toward the opponents.",
		Values: []Value{
			{"out-when-wholly-across", "out once all of it has crossed the plane, in play until then"},
			{"out-at-once", "out as soon as it begins to cross"},
		},
		cells: table{
			intl: {pub("out-when-wholly-across", "10.1.3; 8.4.5", fivb2025,
				"in play until it has completely crossed the plane; then out")},
			club: {mem("out-when-wholly-across", "10.1.3",
				"in play until it has completely crossed the plane; then out")},
			coll: {mem("out-when-wholly-across", "15; 16",
				"in play until it has completely crossed the plane; then out")},
			scho: {mem("out-when-wholly-across", "9-3-3",
				"dead once completely across")},
		},
	},
	{
		Param: "overhead.crosses-net",
		Title: "Ball touches ceiling on own side and then crosses to opponents",
		Doc:   "Ball off the ceiling above the team's own side, then across to the opponents.",
		Values: []Value{
			{"out", "out"},
			{"in-play", "play goes on"},
		},
		cells: table{
			intl: {pub("out", "8.4.2", fivb2025,
				"out at the touch")},
			club: {pub("out", "8.4.2", usaRegulations,
				"out when it crosses the net plane")},
			coll: {mem("out", "4; 16",
				"out")},
			scho: {pub("out", "9-3-3", schoolColumn,
				"dead, loss of rally")},
		},
	},
	{
		Param: "overhead.low-object",
		Title: "Backboards and other low objects over/near the court",
		Doc:   "A backboard or other low object over or near the court stops a ball that was otherwise playable.",
		Values: []Value{
			{"out", "out, an outside object like any other"},
			{"replay-if-playable", "replay when the ball would have been playable"},
		},
		cells: table{
			intl: {pub("out", "8.4.2", fivb2025,
				"out (external object)")},
			club: {pub("replay-if-playable", "8.4.2", usaRegulations,
				"replay when an object lower than 4.6 m over the playing area stops an otherwise playable ball; "+
					"obstacles closer than 2 m to the court may be a replay at referee discretion").
				doubt("confidence medium-high")},
			coll: {mem("replay-if-playable", "4; 11.4",
				"replay when a low object in an otherwise playable area interferes").
				doubt("from memory, confidence medium")},
			scho: {mem("replay-if-playable", "2; 9-8-1",
				"replay for a backboard/support in a vertical or low position over the playable area if the ball "+
					"would have been playable; ground rules at prematch").
				doubt("from memory, confidence medium; a serve toss is treated otherwise")},
		},
	},
	{
		Param: "overhead.min-height",
		Title: "Height of an overhead object in play",
		Doc:   "How high an overhead object must be for the ball to stay in play.",
		Unit:  "metres",
		Values: []Value{
			{"none", "no height is asked for"},
			{"not-applicable", "no overhead touch keeps the ball in play"},
		},
		cells: table{
			intl: {pub("not-applicable", "8.4.2", fivb2025,
				"no overhead touch keeps the ball in play")},
			club: {pub("4.6", "8.4.2", usaRegulations,
				"4.6 m (15 ft) or higher over the playing area").
				doubt("confidence high that the USA line persists; clause letters may differ now")},
			coll: {mem("none", "4.1; 16",
				"no height given").
				doubt("no height seen")},
			scho: {mem("none", "9-3-3",
				"no height given").
				doubt("no height seen")},
		},
	},
	{
		Param: "overhead.opponent-side",
		Title: "Ball touches ceiling above the opponents' side",
		Doc:   "Ball off the ceiling or an overhead object above the opponents' side.",
		Values: []Value{
			{"out", "out"},
			{"in-play", "play goes on"},
		},
		cells: table{
			intl: {pub("out", "8.4.2", fivb2025,
				"out")},
			club: {pub("out", "8.4.2", usaRegulations,
				"out")},
			coll: {mem("out", "4; 16",
				"out")},
			scho: {mem("out", "9-3-3",
				"out")},
		},
	},
	{
		Param: "overhead.own-side",
		Title: "Ball touches ceiling/overhead above own side, stays on own side",
		Doc:   "Ball off the ceiling or an overhead object above the team's own side, and stays on that side.",
		Values: []Value{
			{"out", "out at the touch"},
			{"in-play", "play goes on, not on a serve"},
			{"in-play-if-high", "play goes on when the object is at least overhead.min-height up, not on a serve"},
		},
		cells: table{
			intl: {pub("out", "8.4.2", fivb2025,
				"out")},
			club: {pub("in-play-if-high", "8.4.2", usaRegulations,
				"in play if the object is 4.6 m (15 ft) or higher over the playing area and the ball was not a "+
					"serve").
				doubt("confidence high that the USA line persists; clause letters may differ now")},
			coll: {mem("in-play", "4.1; 16",
				"in play (not on serve)")},
			scho: {pub("in-play", "9-3-3", schoolColumn,
				"in play on first or second hit")},
		},
	},
}
