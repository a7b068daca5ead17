package code

// backRowRows are the rows about what a back-row player may not do.
var backRowRows = []Row{
	{
		Param: "backrow.attack-completed",
		Title: "When an attack is complete",
		Doc:   "When an attack hit is complete.",
		Values: []Value{
			{"crosses-or-touched", "the ball has wholly crossed the plane, or an opponent touches it"},
			{"crosses", "only when the ball has wholly crossed the plane"},
		},
		cells: table{
			intl: {pub("crosses-or-touched", "13.1.3", fivb2025,
				"ball wholly across the plane, or touched by an opponent")},
			club: {mem("crosses-or-touched", "13.1.3",
				"ball wholly across the plane, or touched by an opponent")},
			coll: {mem("crosses-or-touched", "14.5.1",
				"ball wholly across the plane, or touched by an opponent")},
			scho: {pub("crosses-or-touched", "9-5-4", schoolState2002+"; "+schoolBlocks,
				"wholly across the plane, or legally touched by a blocker").
				doubt("an old gloss (2002) let play go on when an opponent legally touched a back-row set or save " +
					"before it had fully crossed; whether it survives is unknown; confidence medium")},
		},
	},
	{
		Param: "backrow.attack-test",
		Title: "Back-row attack fault",
		Doc:   "What makes an attack by a back-row player a fault.",
		Values: []Value{
			{"front-zone-above-net-completed", "taken off in the front zone, ball entirely above the net at the hit, and the attack completed"},
			{"legal", "no limit"},
		},
		cells: table{
			intl: {pub("front-zone-above-net-completed", "13.2.2-13.2.3; 13.3.3", fivb2025,
				"ball entirely above the net at the hit, taken from the front zone (foot touched or crossed the "+
					"attack line at take-off), and the attack completed. Landing in front is fine; part of the ball "+
					"below the top = legal anywhere")},
			club: {mem("front-zone-above-net-completed", "13.2.2-13.2.3; 13.3.3",
				"ball entirely above the net at the hit, taken from the front zone (foot touched or crossed the "+
					"attack line at take-off), and the attack completed")},
			coll: {pub("front-zone-above-net-completed", "14.5", stateQA,
				"taken from the front zone, the attack line included, with the ball entirely above the net, and "+
					"the attack completed").
				doubt("rule number from memory")},
			scho: {pub("front-zone-above-net-completed", "9-5-5", schoolExams+"; "+schoolBlocks,
				"on or in front of the attack line with the ball completely above the net, and the attack "+
					"completed").
				doubt("letter a/b order not seen")},
		},
	},
	{
		Param: "backrow.below-net-first-hit",
		Title: "Ball hits a back-row player at the net who is not above net height",
		Doc:   "The ball comes off a back-row player at the net no part of whom is above net height.",
		Values: []Value{
			{"first-hit", "the first team hit, not a block"},
			{"block", "a block"},
		},
		cells: table{
			intl: {pub("first-hit", "14.1.1", fivb2025,
				"first team hit, not a block")},
			club: {pub("first-hit", "14.1.1", refereeCaseplays,
				"first team hit")},
			coll: {pub("first-hit", "14.6.1", refereeCaseplays,
				"first team hit")},
			scho: {pub("first-hit", "9-5-1c", refereeCaseplays+"; "+schoolBlocks,
				"first team hit")},
		},
	},
	{
		Param: "backrow.block-attempt",
		Title: "Back-row block attempt with no touch",
		Doc:   "A back-row player tries to block and nobody of the block touches the ball.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "a back-row block"},
		},
		cells: table{
			intl: {pub("legal", "14.1.2; 14.6.2", fivb2025,
				"no fault")},
			club: {mem("legal", "14.1.2",
				"no fault")},
			coll: {pub("legal", "14.6", refereeBlocks,
				"no fault")},
			scho: {pub("legal", "9-5-5", refereeBlocks+"; "+schoolBlocks,
				"no fault on recent reading (needs a touch by someone in the block); mid-2000s text also named "+
					"the attempt").
				doubt("confidence medium-high")},
		},
	},
	{
		Param: "backrow.block-completed",
		Title: "Back-row player in a block",
		Doc:   "A back-row player completes a block, or belongs to a collective block that is completed.",
		Values: []Value{
			{"fault", "a back-row block"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "14.6.2; 14.1.4", fivb2025,
				"fault if he/she completes a block or is part of a completed collective block (a teammate's touch "+
					"is enough)")},
			club: {mem("fault", "14.6.2",
				"fault if he/she completes a block or is part of a completed collective block (a teammate's touch "+
					"is enough)")},
			coll: {pub("fault", "14.6", refereeBlocks,
				"fault if he/she completes a block or is part of a completed collective block (a teammate's touch "+
					"is enough)")},
			scho: {pub("fault", "9-5-5", refereeBlocks+"; "+schoolBlocks,
				"fault if he/she completes a block or is part of a completed collective block (a teammate's touch "+
					"is enough)")},
		},
	},
	{
		Param: "backrow.blocker-first-then-setter",
		Title: "Blocker touches first, ball rebounds into a back-row setter's raised hands",
		Doc: "An opposing blocker touches the ball first and it rebounds into a back-row setter's raised " +
			"hands.",
		Values: []Value{
			{"block-if-above-net", "a back-row block when the setter reaches above the net, else the first hit"},
			{"play-on", "play goes on"},
		},
		cells: table{
			intl: {mem("block-if-above-net", "14.1.1; 14.6.2",
				"if the setter is above net height: completed back-row block; if below: first hit").
				doubt("from memory, confidence medium")},
			club: {mem("block-if-above-net", "14.6.2",
				"if the setter is above net height: completed back-row block; if below: first hit").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("block-if-above-net", "14.6",
				"if the setter is above net height: completed back-row block; if below: first hit").
				doubt("from memory, confidence medium")},
			scho: {pub("block-if-above-net", "9-5-4; 9-5-5", schoolBlocks,
				"hands above the net: illegal block; below: first hit").
				doubt("confidence medium-high")},
		},
	},
	{
		Param: "backrow.setter-simultaneous-blocker",
		Title: "Back-row setter above net height and opposing blocker touch the ball together in the plane",
		Doc:   "A back-row setter above net height and an opposing blocker touch the ball together in the plane.",
		Values: []Value{
			{"back-row-block", "a back-row block"},
			{"legal", "play goes on"},
		},
		cells: table{
			intl: {mem("back-row-block", "14.6.2",
				"back-row block fault (reading of 14.1/14.6.2)").
				doubt("from memory, confidence medium")},
			club: {pub("back-row-block", "14.6.2", usaNetPlay,
				"illegal block on the back-row player when reaching above the net to a ball from opponents").
				doubt("exact simultaneous case cut in source; confidence medium")},
			coll: {mem("back-row-block", "14.6",
				"back-row block fault").
				doubt("from memory, confidence medium")},
			scho: {mem("back-row-block", "9-5-5",
				"illegal block").
				doubt("from memory, confidence medium; answer key not shown")},
		},
	},
	{
		Param: "backrow.third-hit-is-attack",
		Title: "Is a third hit always an attack",
		Doc:   "Whether a third hit is an attack whatever its aim.",
		Values: []Value{
			{"yes", "a third hit is always an attack"},
			{"not-stated", "only an action that directs the ball to the opponents is one"},
		},
		cells: table{
			intl: {pub("not-stated", "13.1.1", fivb2025,
				"not stated; any action directing the ball to opponents is one")},
			club: {mem("not-stated", "13.1.1",
				"not stated; any action directing the ball to the opponents is an attack").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("yes", "14.5",
				"yes in effect").
				doubt("from memory, confidence low-medium")},
			scho: {pub("yes", "9-5-1b", schoolAttack,
				"yes: a third hit is always an attack")},
		},
	},
}
