package code

// alignmentRows are the rows about positions at the service.
var alignmentRows = []Row{
	{
		Param: "align.bench-player-on-court",
		Title: "Bench player enters the court during play",
		Doc:   "A bench player comes onto the court during play.",
		Values: []Value{
			{"illegal-alignment", "an alignment fault, unless the entry is itself misconduct"},
			{"conduct-matter", "not a matter of alignment: interference or misconduct"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("conduct-matter", "7.5.1; 20-21",
				"not an alignment rule; handled as an external or extra player, or as misconduct").
				doubt("from memory, confidence low")},
			club: {mem("conduct-matter", "",
				"not an alignment rule").
				doubt("from memory, confidence low; inherited from the international text, not seen")},
			coll: {mem("unknown", "",
				"not known").
				doubt("from memory, confidence low")},
			scho: {
				pub("conduct-matter", "6-4; 12-2-8b", schoolComments2026,
					"a conduct matter").until(2025),
				pub("illegal-alignment", "6-4; 12-2-8b", schoolComments2026,
					"illegal alignment (loss of rally and point), unless the entry is itself misconduct; a coach or "+
						"attendant who enters stays a conduct matter").since(2026),
			},
		},
	},
	{
		Param: "align.both-teams-out",
		Title: "Both teams out of position",
		Doc:   "Both teams are out of position at the service hit.",
		Values: []Value{
			{"replay", "simultaneous faults, replay"},
			{"cannot-happen", "only the receivers can be out of position"},
		},
		cells: table{
			intl: {
				pub("replay", "6.1.2.2", fivb2025,
					"double fault, replay").until(2024),
				pub("cannot-happen", "7.4; 12.7.1", fivb2025,
					"cannot happen for positions; a fault in the order of service at the hit prevails over the "+
						"receivers").since(2025),
			},
			club: {mem("replay", "6.1.2.2",
				"replay (double fault) while both teams are bound").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("replay", "11.4; 16",
				"replay (simultaneous faults)").
				doubt("from memory, confidence medium-high")},
			scho: {mem("replay", "9-8-1",
				"replay (simultaneous faults)").
				doubt("from memory, confidence medium-high")},
		},
	},
	{
		Param: "align.foot-over-centre",
		Title: "Foot over the centre line at the serve",
		Doc:   "Whether a foot over the centre line at the service hit is a fault of position.",
		Values: []Value{
			{"judged-in-the-rally", "no fault of position; crossing the line is judged in the rally"},
			{"fault", "a fault of position"},
		},
		cells: table{
			intl: {pub("judged-in-the-rally", "7.4; 11.2.2", fivbPositions,
				"no fault of position: a foot across the line is judged during the rally").
				doubt("the edition of the case is not shown; confidence medium")},
			club: {mem("judged-in-the-rally", "7.4; 11.2.2",
				"no fault of position: a foot across the line is judged during the rally").
				doubt("inherited from the international text, not seen")},
			coll: {mem("judged-in-the-rally", "10.3; 15.2",
				"no fault of position: a foot across the line is judged during the rally").
				doubt("from memory, confidence medium; no line seen")},
			scho: {mem("judged-in-the-rally", "6-4; 9-6",
				"no fault of position: a foot across the line is judged during the rally").
				doubt("from memory, confidence medium; no line seen")},
		},
	},
	{
		Param: "align.front-back-pair",
		Title: "Front-row v corresponding back-row (1-2, 6-3, 5-4)",
		Doc:   "A front-row player and the back-row partner (1-2, 6-3, 5-4): whether level feet are in order.",
		Values: []Value{
			{"level-is-legal", "level feet are in order"},
			{"must-be-nearer", "part of one foot must be nearer than the partner's feet, level is out of order"},
		},
		cells: table{
			intl: {
				pub("must-be-nearer", "7.4.3.1", fivb2025+"; "+italianPrimer,
					"the front-row player needed part of a foot closer to the centre line than the partner's feet; "+
						"level was not enough").until(2020).
					doubt("the edition of the change is inferred"),
				pub("level-is-legal", "7.4.3.1", fivb2025+"; "+italianPrimer,
					"the back-row player must be level with, or have part of one foot further from the centre line "+
						"than, the front foot of the front-row partner; level is legal").since(2021).
					doubt("the edition in which 'level' entered is inferred"),
			},
			club: {mem("level-is-legal", "7.4.3.1",
				"the back-row player must be level with, or have part of one foot further from the centre line "+
					"than, the front foot of the front-row partner; level is legal").
				doubt("inherited from the international text of the matching edition, not seen; confidence medium")},
			coll: {mem("must-be-nearer", "10.3",
				"front-row needs part of one foot closer to the centre line than both feet of the back-row "+
					"partner").
				doubt("from memory, confidence medium; level = fault is uncertain")},
			scho: {mem("must-be-nearer", "6-4",
				"front-row needs part of one foot closer to the centre line than both feet of the back-row "+
					"partner").
				doubt("from memory, confidence medium; level = fault is uncertain")},
		},
	},
	{
		Param: "align.inside-court",
		Title: "Players must be inside their own court at contact",
		Doc:   "Whether all players but the server must be inside their court at the service hit.",
		Values: []Value{
			{"required", "yes, the lines belong to the court"},
			{"not-required", "no"},
		},
		cells: table{
			intl: {pub("required", "7.4; 1.3.2", fivb2025,
				"yes, all but the server; lines belong to the court").
				doubt("that it also limits the freed serving team is read as yes")},
			club: {mem("required", "7.4",
				"yes, all but the server")},
			coll: {mem("required", "10.3",
				"yes")},
			scho: {pub("required", "6-4", schoolSignals+"; "+schoolExams,
				"yes: a non-server outside the boundary at contact is an alignment fault; standing on the line is "+
					"inside")},
		},
	},
	{
		Param: "align.judged-by",
		Title: "What is compared",
		Doc:   "By what the place of a player is judged.",
		Values: []Value{
			{"feet-on-floor", "the feet on the floor, of a player in the air the last contact with it"},
			{"body", "the whole body"},
		},
		cells: table{
			intl: {pub("feet-on-floor", "7.4.3", fivb2025,
				"feet in contact with the floor; for a player in the air the last floor contact fixes the "+
					"position")},
			club: {mem("feet-on-floor", "7.4.3",
				"feet in contact with the floor")},
			coll: {mem("feet-on-floor", "10.3",
				"feet in contact with the floor")},
			scho: {pub("feet-on-floor", "6-4", schoolSignals,
				"feet of adjacent players").
				doubt("'adjacent players' was seen, that the feet are compared is from memory")},
		},
	},
	{
		Param: "align.libero-counts",
		Title: "Libero in the overlap check",
		Doc:   "As whom the libero counts in the order.",
		Values: []Value{
			{"as-replaced-player", "as the back-row player replaced"},
			{"free", "not at all"},
		},
		cells: table{
			intl: {pub("as-replaced-player", "19.3.1.1", fivb2025,
				"counts as the back-row player replaced")},
			club: {mem("as-replaced-player", "19.3.1.1",
				"counts as the back-row player replaced")},
			coll: {mem("as-replaced-player", "12",
				"counts as the back-row player replaced")},
			scho: {mem("as-replaced-player", "10-4",
				"counts as the back-row player replaced")},
		},
	},
	{
		Param: "align.penalty",
		Title: "Result of an alignment fault",
		Doc:   "What an alignment fault costs.",
		Values: []Value{
			{"loss-of-rally", "point and service to the opponents, positions corrected"},
			{"replay", "replay"},
		},
		cells: table{
			intl: {pub("loss-of-rally", "7.5.4", fivb2025,
				"point and service to opponents; positions corrected")},
			club: {mem("loss-of-rally", "7.5.4",
				"point and service to opponents; positions corrected")},
			coll: {pub("loss-of-rally", "10.3.2.3", ncaa2026Note,
				"loss of rally")},
			scho: {pub("loss-of-rally", "6-4", schoolSignals,
				"loss of rally and point")},
		},
	},
	{
		Param: "align.points",
		Title: "Points scored while out of position",
		Doc:   "Whether earlier points are cancelled when an alignment fault had persisted.",
		Values: []Value{
			{"cancelled", "those scored while the fault persisted"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "7.5.4",
				"no cancellation stated").
				doubt("no line seen")},
			club: {mem("not-stated", "7.5.4",
				"no cancellation stated").
				doubt("no line seen")},
			coll: {pub("cancelled", "10.3.2.3", ncaa2026Note,
				"points are cancelled where the fault persisted").
				doubt("extent of the cancellation from memory")},
			scho: {mem("not-stated", "6-4",
				"no cancellation stated").
				doubt("no line seen")},
		},
	},
	{
		Param: "align.receiving-team",
		Title: "Receiving-team positions at service contact",
		Doc:   "Whether the receiving team must be in its order of positions at the service hit.",
		Values: []Value{
			{"bound", "the team must be in its order"},
			{"free", "its players may stand anywhere in their court"},
		},
		cells: table{
			intl: {pub("bound", "7.4; 7.5.1", fivb2025+"; "+fivb2025Note,
				"must be in rotational order")},
			club: {mem("bound", "7.4",
				"must be in order")},
			coll: {mem("bound", "10.3",
				"must be in order")},
			scho: {pub("bound", "6-4", schoolSignals,
				"must be in order")},
		},
	},
	{
		Param: "align.same-row",
		Title: "Left / centre / right within a row",
		Doc:   "Within a row, with whom a right or left player is compared.",
		Values: []Value{
			{"every-player", "with every other player of the row"},
			{"centre-player", "with the centre player only"},
		},
		cells: table{
			intl: {
				pub("centre-player", "7.4.3.2", fivb2025+"; "+italianPrimer,
					"a side player was compared with the centre player only").until(2020).
					doubt("the edition of the change is inferred"),
				pub("every-player", "7.4.3.2", fivb2025+"; "+italianPrimer,
					"a right (left) player must be level with, or have part of one foot nearer the right (left) side "+
						"line than, the far foot of every other player in that row").since(2021).
					doubt("the edition in which 'every other player' entered is inferred"),
			},
			club: {mem("every-player", "7.4.3.2",
				"a right (left) player must be level with, or have part of one foot nearer the right (left) side "+
					"line than, the far foot of every other player in that row").
				doubt("inherited from the international text of the matching edition, not seen; confidence medium")},
			coll: {mem("centre-player", "10.3",
				"side player against centre player only").
				doubt("from memory, confidence medium")},
			scho: {pub("centre-player", "6-4", schoolSignals,
				"side player against centre player (adjacent pairs)").
				doubt("'adjacent' published; confidence medium-high")},
		},
	},
	{
		Param: "align.same-row-level",
		Title: "Level feet within a row",
		Doc:   "Within a row, whether level feet are in order.",
		Values: []Value{
			{"level-is-legal", "level feet are in order"},
			{"must-be-nearer", "part of one foot must be nearer than the partner's feet, level is out of order"},
		},
		cells: table{
			intl: {
				mem("must-be-nearer", "7.4.3.2",
					"part of a foot had to be nearer the side line; level was not enough").until(2020).
					doubt("read as matching the front-back pair of that edition; the edition of the change is inferred"),
				pub("level-is-legal", "7.4.3.2", fivb2025+"; "+italianPrimer,
					"level with the far foot is legal").since(2021).
					doubt("the edition in which 'level' entered is inferred"),
			},
			club: {mem("level-is-legal", "7.4.3.2",
				"level with the far foot is legal").
				doubt("inherited from the international text of the matching edition, not seen; confidence medium")},
			coll: {mem("must-be-nearer", "10.3",
				"part of a foot must be nearer the side line than the adjacent player; level is out of order").
				doubt("that level is out of order is uncertain; confidence medium")},
			scho: {mem("must-be-nearer", "6-4",
				"part of a foot must be nearer the side line than the adjacent player; level is out of order").
				doubt("that level is out of order is uncertain; confidence medium")},
		},
	},
	{
		Param: "align.serving-team",
		Title: "Serving-team positions at service contact",
		Doc: "Whether the serving team must be in its order of positions at the service hit; the order of " +
			"service binds always.",
		Values: []Value{
			{"bound", "the team must be in its order"},
			{"free", "its players may stand anywhere in their court"},
		},
		cells: table{
			intl: {
				pub("bound", "7.4", fivb2025+"; "+fivb2025Note,
					"both teams had to be in rotational order").until(2024),
				pub("free", "7.4", fivb2025+"; "+fivb2025Note,
					"free: the serving team may stand anywhere in its court; the order of service still binds").since(2025).
					doubt("one language version of 7.4 swaps the serving and the receiving team"),
			},
			club: {
				mem("bound", "7.4",
					"bound like the receivers").until(2024).
					doubt("from memory"),
				mem("free", "7.4",
					"free: follows the international change").since(2025).
					doubt("unconfirmed: probably follows the international change from the 2025-27 book; no club source " +
						"seen either way; confidence low"),
			},
			coll: {mem("bound", "10.3",
				"bound: both teams must be in order").
				doubt("from memory, confidence medium-high; 2026 list seen does not mention a change")},
			scho: {pub("bound", "6-4", schoolSignals+"; "+schoolComments2026,
				"bound: all players of both teams, the server excepted, in order")},
		},
	},
}
