package code

// blockRows are the rows about the block.
var blockRows = []Row{
	{
		Param: "block.beyond-after-attack",
		Title: "Block beyond the net after an attack hit",
		Doc:   "A blocker touches a ball on the opponents' side after they made an attack hit.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "over the net"},
			{"judgement", "the referee judges whether the opponents could still play it"},
		},
		cells: table{
			intl: {pub("legal", "14.3; 14.6.1; 11.1.1", fivb2025,
				"legal once an opponent has made an attack hit")},
			club: {pub("legal", "14.3; 14.6.1", refereeTest,
				"legal after the attack hit")},
			coll: {pub("legal", "14.6.3; 15.1", stateQA+"; "+refereeTest,
				"legal after an attack")},
			scho: {pub("legal", "9-6-4", refereeTest,
				"legal after an attack").
				doubt("list from memory for this code; simultaneous = fault inferred from a test item without key; " +
					"confidence medium-high")},
		},
	},
	{
		Param: "block.beyond-nobody-can-play",
		Title: "Block beyond the net of a ball nobody can play",
		Doc: "A blocker touches a ball on the opponents' side that crosses, or falls near the net, with none " +
			"of them able to play it.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "over the net"},
			{"judgement", "the referee judges whether the opponents could still play it"},
		},
		cells: table{
			intl: {mem("judgement", "14.3; 14.6.1; 11.1.1",
				"not listed; a ball that nobody can play is treated by judgement").
				doubt("the book does not list this opening: whether anybody could still play the ball is the first referee's judgement")},
			club: {mem("judgement", "14.3; 14.6.1",
				"not listed; a ball that nobody can play is treated by judgement").
				doubt("inherited from the international reading, not seen in a club source; confidence medium; whether anybody " +
					"could still play the ball is the first referee's judgement")},
			coll: {pub("legal", "14.6.3; 15.1", stateQA+"; "+refereeTest,
				"legal: a ball clearly crossing with no teammate able to play it, or falling near the net where "+
					"no one can play it")},
			scho: {mem("legal", "9-6-4",
				"legal: a ball clearly crossing with no teammate able to play it, or falling near the net where "+
					"no one can play it").
				doubt("list of openings from memory; confidence medium-high")},
		},
	},
	{
		Param: "block.beyond-simultaneous",
		Title: "Block beyond the net at the moment of the attack",
		Doc:   "A blocker touches the ball on the opponents' side at the same moment as their attack hit.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "over the net"},
			{"judgement", "the referee judges whether the opponents could still play it"},
		},
		cells: table{
			intl: {
				pub("fault", "14.3; 14.6.1; 11.1.1", fivb2025,
					"a touch beyond the net simultaneous with the attack hit is a fault").until(2024).
					doubt("the exact edition in which the word was dropped is uncertain"),
				pub("legal", "14.3; 14.6.1; 11.1.1", fivb2025,
					"no fault: only a touch before the attack hit is named").since(2025).
					doubt("the exact edition in which 'simultaneously' was dropped is uncertain, and the language versions " +
						"of 14.3 and 14.6.1 differ: 'before' or 'before or during'"),
			},
			club: {pub("fault", "14.3; 14.6.1", refereeTest,
				"a simultaneous touch beyond the net is a fault").
				doubt("answer key not shown, inferred because the other options are legal; 2025-27 may follow the " +
					"international deletion; confidence medium")},
			coll: {pub("fault", "14.6.3; 15.1", stateQA+"; "+refereeTest,
				"a simultaneous touch beyond the net is a fault").
				doubt("inferred from a test item without key; confidence medium")},
			scho: {pub("fault", "9-6-4", refereeTest,
				"a simultaneous touch beyond the net is a fault").
				doubt("inferred from a test item without key; confidence medium-high")},
		},
	},
	{
		Param: "block.beyond-third-hit",
		Title: "Block beyond the net after the third hit",
		Doc:   "A blocker touches a ball on the opponents' side after their third hit.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "over the net"},
			{"judgement", "the referee judges whether the opponents could still play it"},
		},
		cells: table{
			intl: {mem("legal", "14.3; 14.6.1; 11.1.1",
				"legal: a third hit is taken as the attack").
				doubt("the book names only the attack hit; that a third hit is one is a reading")},
			club: {mem("legal", "14.3; 14.6.1",
				"legal: a third hit is taken as the attack").
				doubt("the book names only the attack hit; that a third hit is one is a reading; confidence medium")},
			coll: {pub("legal", "14.6.3; 15.1", stateQA+"; "+refereeTest,
				"legal after the third hit")},
			scho: {mem("legal", "9-6-4",
				"legal after the third hit").
				doubt("list of openings from memory; confidence medium-high")},
		},
	},
	{
		Param: "block.collective",
		Title: "Collective block",
		Doc:   "Two or three blockers close together of whom one touches the ball.",
		Values: []Value{
			{"one-touch-completes", "the block of all of them is complete"},
			{"toucher-only", "only the one who touched has blocked"},
		},
		cells: table{
			intl: {pub("one-touch-completes", "14.1.4", fivb2025,
				"2 or 3 players close together; complete when one touches")},
			club: {mem("one-touch-completes", "14.1.4",
				"2 or 3 players close together; complete when one touches")},
			coll: {pub("one-touch-completes", "14.6", refereeBlocks,
				"2 or 3 players close together; complete when one touches")},
			scho: {pub("one-touch-completes", "9-5-1c", schoolColumn+"; "+refereeBlocks,
				"complete when one touches; two blockers touching together is one block, no double")},
		},
	},
	{
		Param: "block.definition",
		Title: "What is a block",
		Doc:   "What makes a touch a block.",
		Values: []Value{
			{"near-net-above-top", "near the net, part of the body above the top of the net at contact, ball coming from the opponents"},
			{"any-touch-at-net", "any touch at the net"},
		},
		cells: table{
			intl: {pub("near-net-above-top", "14.1.1", fivb2025,
				"player(s) close to the net, reaching higher than its top, deflect a ball coming from opponents; "+
					"part of the body must be above net height at contact; ball height is irrelevant")},
			club: {pub("near-net-above-top", "14.1.1", refereeCaseplays+"; "+refereeBlocks,
				"player(s) close to the net, reaching higher than its top, deflect a ball coming from opponents; "+
					"part of the body must be above net height at contact; ball height is irrelevant")},
			coll: {pub("near-net-above-top", "14.6.1", refereeCaseplays+"; "+refereeBlocks,
				"player(s) close to the net, reaching higher than its top, deflect a ball coming from opponents; "+
					"part of the body must be above net height at contact; ball height is irrelevant")},
			scho: {pub("near-net-above-top", "9-5-1c", refereeCaseplays+"; "+refereeBlocks+"; "+schoolBlocks,
				"players close to the net (about arm's length), reaching higher than its top, deflect a ball "+
					"coming from the opponents; part of the body must be above net height at contact")},
		},
	},
	{
		Param: "block.not-a-hit",
		Title: "Block and the hit count",
		Doc:   "Whether a completed block is one of the three hits, and whether the blocker may play next.",
		Values: []Value{
			{"not-a-hit", "three hits remain and the blocker may play next"},
			{"first-hit", "it is the first of the three"},
		},
		cells: table{
			intl: {pub("not-a-hit", "14.4.1-14.4.2", fivb2025,
				"not a hit; three hits remain; blocker may play next")},
			club: {mem("not-a-hit", "14.4",
				"not a hit; three hits remain; the blocker may play next")},
			coll: {pub("not-a-hit", "14.1.1; 14.6.2.2", ncaa2012Playing,
				"not a hit; blocker may play next")},
			scho: {pub("not-a-hit", "9-4-6; 9-5-1c", schoolColumn,
				"not a hit; three remain")},
		},
	},
	{
		Param: "block.of-a-set",
		Title: "Blocking a set/pass wholly on opponents' side",
		Doc:   "A blocker touches a set or pass that is wholly on the opponents' side.",
		Values: []Value{
			{"fault", "over the net"},
			{"fault-unless-nobody-can-play", "over the net, unless the ball is going over and none of them can play it"},
		},
		cells: table{
			intl: {pub("fault-unless-nobody-can-play", "14.3; 11.4.1", fivb2025,
				"fault (no attack hit yet) unless the ball is going over and no one else could play it (casebook "+
					"judgement)").
				doubt("confidence medium-high")},
			club: {pub("fault-unless-nobody-can-play", "14.3", usaNetPlay,
				"fault; once the set drifts into the plane the blocker may play it").
				doubt("the exception for a ball that nobody can play is inherited from the international reading; the " +
					"source names only the fault")},
			coll: {pub("fault-unless-nobody-can-play", "15.1", stateQA,
				"fault if a teammate could have played the ball").
				doubt("rule number from memory")},
			scho: {pub("fault-unless-nobody-can-play", "9-6-4", schoolExams,
				"fault if a legal player could have played the ball")},
		},
	},
	{
		Param: "block.out",
		Title: "Block sends the ball out",
		Doc:   "The block sends the ball out.",
		Values: []Value{
			{"blocking-team", "fault of the blocking team"},
			{"attacking-team", "fault of the attacking team"},
		},
		cells: table{
			intl: {pub("blocking-team", "14.6.4", fivb2025,
				"fault of the blocking team")},
			club: {mem("blocking-team", "14.6.4",
				"fault of the blocking team")},
			coll: {mem("blocking-team", "14.6; 16",
				"fault of the blocking team")},
			scho: {mem("blocking-team", "9-3",
				"fault of the blocking team")},
		},
	},
	{
		Param: "block.outside-antenna",
		Title: "Block beyond the net outside the antenna",
		Doc:   "A blocker touches a ball beyond the net outside the antenna.",
		Values: []Value{
			{"fault", "a blocking fault"},
			{"unclear", "no text on it was seen"},
		},
		cells: table{
			intl: {pub("fault", "14.6.5", fivb2025,
				"fault")},
			club: {mem("fault", "14.6.5",
				"fault")},
			coll: {mem("unclear", "",
				"unclear: no text seen").
				doubt("from memory, confidence low")},
			scho: {mem("unclear", "",
				"unclear: no text seen").
				doubt("from memory, confidence low")},
		},
	},
	{
		Param: "block.redirect",
		Title: "Directing the ball with the block",
		Doc:   "A blocker directs the ball with the block.",
		Values: []Value{
			{"legal-if-rebounds", "legal when it rebounds, a fault when caught or thrown"},
			{"fault", "a fault"},
		},
		cells: table{
			intl: {pub("legal-if-rebounds", "9.2.2", fivbCasebook,
				"legal if it rebounds; fault if caught/thrown")},
			club: {mem("legal-if-rebounds", "9.2.2",
				"legal if it rebounds; fault if caught/thrown")},
			coll: {pub("legal-if-rebounds", "14.2.3.1", ncaa2012Playing,
				"legal if it rebounds; prolonged contact is a fault")},
			scho: {mem("legal-if-rebounds", "9-4",
				"legal if it rebounds; fault if caught/thrown")},
		},
	},
	{
		Param: "block.successive",
		Title: "Successive contacts while blocking",
		Doc:   "Several touches in one action by one or more blockers.",
		Values: []Value{
			{"legal", "one block"},
			{"fault", "a double contact"},
		},
		cells: table{
			intl: {pub("legal", "14.2; 9.2.3.1", fivb2025,
				"allowed by one or more blockers in one action")},
			club: {mem("legal", "14.2",
				"allowed by one or more blockers in one action")},
			coll: {pub("legal", "14.2.3.1", ncaa2012Playing,
				"allowed in a single attempt")},
			scho: {pub("legal", "9-4-8", schoolChanges2025,
				"allowed in one action")},
		},
	},
}
