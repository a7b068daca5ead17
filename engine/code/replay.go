package code

// replayRows are the rows about rallies that are played again or not.
var replayRows = []Row{
	{
		Param: "replay.double-fault",
		Title: "Simultaneous faults by opponents",
		Doc:   "Opponents commit faults at the same moment.",
		Values: []Value{
			{"replay", "double fault, replay"},
			{"first-team", "one of the faults prevails"},
		},
		cells: table{
			intl: {pub("replay", "6.1.2.1-6.1.2.2", fivb2025,
				"double fault, replay (signal 23); successive faults: only the first counts")},
			club: {mem("replay", "6.1.2",
				"double fault, replay (signal 23); successive faults: only the first counts")},
			coll: {mem("replay", "11.4; 16",
				"replay")},
			scho: {mem("replay", "9-8-1",
				"replay")},
		},
	},
	{
		Param: "replay.external",
		Title: "Foreign ball / external interference",
		Doc:   "A foreign ball, a person or a thing comes onto the court during the rally.",
		Values: []Value{
			{"replay", "the rally is stopped and replayed"},
			{"replay-if-interferes", "replayed only when it distracts or interferes"},
		},
		cells: table{
			intl: {pub("replay", "17.2", fivb2025,
				"stop, replay")},
			club: {pub("replay-if-interferes", "17.2", refereeCaseplays,
				"replay only if it distracts or interferes")},
			coll: {pub("replay-if-interferes", "11.4.1", refereeCaseplays,
				"replay only if it distracts or interferes")},
			scho: {pub("replay-if-interferes", "9-8-1g", refereeCaseplays,
				"replay only if it distracts or interferes")},
		},
	},
	{
		Param: "replay.false-start",
		Title: "Serve before the signal: what follows",
		Doc:   "The serve is hit before the signal, or while a team was not ready.",
		Values: []Value{
			{"repeat", "cancelled and repeated"},
			{"fault", "a service fault"},
		},
		cells: table{
			intl: {pub("repeat", "12.4.5", fivb2025,
				"cancel and repeat")},
			club: {mem("repeat", "12.4.5",
				"cancel and repeat")},
			coll: {mem("repeat", "13.1.3",
				"cancel and repeat").
				doubt("from memory, confidence medium-high")},
			scho: {mem("repeat", "8-1; 9-8-1",
				"re-serve/replay; not charged as a toss re-serve").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "replay.inadvertent-whistle",
		Title: "Inadvertent whistle",
		Doc:   "An official whistles by mistake during the rally.",
		Values: []Value{
			{"replay-unless-certain", "replay, unless the outcome was already certain"},
			{"referee-decides", "the first referee rules so that neither side is penalized"},
			{"replay", "replay"},
		},
		cells: table{
			intl: {mem("replay-unless-certain", "8.2; 6.1.2",
				"rally ends; replay unless the outcome was already certain").
				doubt("from memory, confidence medium")},
			club: {pub("referee-decides", "8.2", usaRegulations,
				"rally ends; first referee rules so neither side is penalised")},
			coll: {mem("replay-unless-certain", "11.4; 16",
				"replay unless outcome unaffected").
				doubt("from memory, confidence medium-high")},
			scho: {pub("replay", "9-3-3l; 9-8-1", schoolChanges2003,
				"ball dead at the whistle; replay").
				doubt("replay part memory, confidence high")},
		},
	},
	{
		Param: "replay.injury",
		Title: "Serious injury during a rally",
		Doc:   "A serious injury during the rally.",
		Values: []Value{
			{"replay", "stopped at once and replayed"},
			{"play-on", "play goes on"},
		},
		cells: table{
			intl: {pub("replay", "17.1.1-17.1.2", fivb2025,
				"stop at once, replay; if no legal or exceptional substitution, 3 min recovery once per player "+
					"per match")},
			club: {mem("replay", "17.1",
				"stop at once, replay; if no substitution is possible a recovery time, which may be longer than "+
					"the international 3 min").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {pub("replay", "11.4", stateQA,
				"replay; injured player replaced if not ready in about 30 s; 3 min team injury time-out when no "+
					"substitute").
				doubt("confidence medium-high")},
			scho: {pub("replay", "9-8-1; 11-4", schoolExams,
				"replay; coach has 30 s to substitute, use a time-out, or play on")},
		},
	},
	{
		Param: "replay.injury-decision-time",
		Title: "Time to decide after an injury",
		Doc:   "How long the team has before the injured player must be replaced or a time-out used.",
		Unit:  "seconds",
		Values: []Value{
			{"not-stated", "no such time is named"},
		},
		cells: table{
			intl: {mem("not-stated", "17.1.1-17.1.2",
				"substitution at once; no decision time named").
				doubt("no line seen")},
			club: {mem("not-stated", "17.1",
				"no decision time named").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {pub("30", "11.4", stateQA,
				"the injured player is replaced if not ready in about 30 s").
				doubt("confidence medium-high")},
			scho: {pub("30", "9-8-1; 11-4", schoolExams,
				"the coach has 30 s to substitute, use a time-out or play on")},
		},
	},
	{
		Param: "replay.injury-recovery",
		Title: "Recovery time without a substitute",
		Doc:   "How long the set waits for an injured player when no substitution is possible.",
		Unit:  "seconds",
		Values: []Value{
			{"not-stated", "no such time is named"},
		},
		cells: table{
			intl: {pub("180", "17.1.1-17.1.2", fivb2025,
				"3 min when no legal or exceptional substitution is possible, once per player per match")},
			club: {mem("180", "17.1",
				"3 min, with a longer allowance possible").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {pub("180", "11.4", stateQA,
				"3 min team injury time-out when there is no substitute").
				doubt("confidence medium-high")},
			scho: {mem("not-stated", "9-8-1; 11-4",
				"no recovery time seen").
				doubt("no line seen")},
		},
	},
	{
		Param: "replay.lost-equipment",
		Title: "Shoe, pad or other gear on the floor during the rally",
		Doc:   "A shoe, a pad or other gear lies on the floor during the rally.",
		Values: []Value{
			{"play-on-unless-hazard", "play goes on unless it is a hazard or interferes, then replay"},
			{"replay", "replay"},
		},
		cells: table{
			intl: {mem("play-on-unless-hazard", "17.2",
				"play on unless it is a hazard or interferes; then external interference, replay").
				doubt("from memory, confidence low-medium")},
			club: {mem("play-on-unless-hazard", "17.2",
				"play on unless it is a hazard or interferes; then external interference, replay").
				doubt("from memory, confidence low-medium; inherited from the international text, not seen")},
			coll: {mem("play-on-unless-hazard", "11.4.1",
				"play on unless it is a hazard or interferes; then replay").
				doubt("from memory, confidence low-medium")},
			scho: {mem("play-on-unless-hazard", "9-8-1g",
				"play on unless it is a hazard or interferes; then replay").
				doubt("from memory, confidence low-medium")},
		},
	},
	{
		Param: "replay.official-conflict",
		Title: "Conflicting calls that cannot be settled",
		Doc:   "Calls of the crew conflict and cannot be settled.",
		Values: []Value{
			{"replay-if-unable", "the first referee decides; replay when unable"},
			{"first-referee", "the first referee always decides"},
		},
		cells: table{
			intl: {mem("replay-if-unable", "23.2",
				"first referee decides; replay if unable").
				doubt("from memory, confidence medium")},
			club: {mem("replay-if-unable", "23.2",
				"first referee decides; replay if unable").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("replay-if-unable", "16; 11.4",
				"the first referee decides; replay if unable").
				doubt("from memory, confidence medium")},
			scho: {mem("replay-if-unable", "9-8-1",
				"the first referee decides; replay if unable").
				doubt("from memory, confidence medium-high")},
		},
	},
	{
		Param: "replay.requests-before-re-serve",
		Title: "Requests before a re-serve",
		Doc:   "Requests between a directed re-serve and its serve.",
		Values: []Value{
			{"none", "no new request"},
			{"not-applicable", "the code has no re-serve of its own"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("not-applicable", "15.2-15.11",
				"no re-serve apart from a repeated serve").
				doubt("from memory, confidence medium")},
			club: {mem("not-applicable", "15",
				"no re-serve apart from a repeated serve").
				doubt("from memory, confidence low-medium; inherited from the international text, not seen")},
			coll: {mem("unknown", "",
				"not known").
				doubt("from memory, confidence low")},
			scho: {pub("none", "8-1; 9-8", schoolExams,
				"none").
				doubt("option list only; confidence low-medium")},
		},
	},
	{
		Param: "replay.requests-before-replay",
		Title: "Requests before a replay",
		Doc:   "Requests between a directed replay and its serve.",
		Values: []Value{
			{"none", "no new request"},
			{"time-out-only", "a time-out and an order check, no substitution except for injury"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {pub("none", "15.2-15.11", fivb2025,
				"no new request until the replayed rally is complete (interruption continues)").
				doubt("confidence medium")},
			club: {mem("none", "15",
				"no new request until the replayed rally is complete").
				doubt("from memory, confidence low-medium; inherited from the international text, not seen")},
			coll: {mem("unknown", "",
				"not known").
				doubt("from memory, confidence low")},
			scho: {pub("time-out-only", "8-1; 9-8", schoolExams,
				"time-out and order checks allowed, no substitution except for injury").
				doubt("option list only; confidence low-medium")},
		},
	},
	{
		Param: "replay.torn-net",
		Title: "Ball tears or sticks in the net",
		Doc:   "The ball tears the net or comes to rest in it.",
		Values: []Value{
			{"replay", "the rally is cancelled and replayed"},
			{"loss-of-rally", "the side that sent it loses the rally"},
		},
		cells: table{
			intl: {pub("replay", "10.3.2", fivb2025,
				"rally cancelled, replay")},
			club: {mem("replay", "10.3.2",
				"replay")},
			coll: {mem("replay", "15",
				"replay").
				doubt("from memory, confidence medium")},
			scho: {mem("loss-of-rally", "9-3-3",
				"ball that comes to rest in the net is dead; loss of rally for the side that sent it (or replay "+
					"for damage)").
				doubt("from memory, confidence low")},
		},
	},
	{
		Param: "replay.wrong-number-at-signal",
		Title: "Five or seven players on the court, seen after the signal for service",
		Doc:   "The service was authorised while a team had too few or too many players on the court.",
		Values: []Value{
			{"repeat", "the rally is stopped and replayed, no sanction"},
			{"fault", "a fault of the team"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {pub("repeat", "7.3.1", fivbCasebookTwo,
				"the signal was given by mistake: stop at once and replay, no sanction").
				doubt("the casebook edition is older than the rules text held")},
			club: {mem("unknown", "",
				"not known").
				doubt("no line seen")},
			coll: {mem("unknown", "",
				"not known").
				doubt("no line seen")},
			scho: {mem("unknown", "",
				"not known").
				doubt("no line seen")},
		},
	},
}
