package code

// peopleRows are the rows about substitutions, time-outs and the crew.
var peopleRows = []Row{
	{
		Param: "line-judges.count",
		Title: "Number of line judges",
		Doc:   "How many line judges there are.",
		Unit:  "line judges",
		Values: []Value{
			{"two-or-four", "two or four"},
		},
		cells: table{
			intl: {pub("two-or-four", "29", fivb2025,
				"2 or 4")},
			club: {mem("2", "29",
				"2").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("two-or-four", "27-28",
				"2 or 4").
				doubt("from memory, confidence medium")},
			scho: {mem("2", "5-8; 5-9",
				"2").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "line-judges.flags",
		Title: "Flags of line judges",
		Doc:   "Whether line judges have flags.",
		Values: []Value{
			{"yes", "yes"},
			{"as-available", "where there are some"},
			{"state-adoption", "where the state association adopts them"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {pub("yes", "29", fivb2025,
				"with flags")},
			club: {mem("as-available", "29",
				"flags as available").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("not-stated", "27-28",
				"not stated").
				doubt("from memory, confidence medium")},
			scho: {mem("state-adoption", "5-8; 5-9",
				"flags by state adoption").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "r2.duties",
		Title: "Second referee whistles",
		Doc:   "Which faults the second referee whistles.",
		Values: []Value{
			{"whistles-listed-faults", "a list: receiving positions, penetration, net and antenna of the blockers, back-row and libero faults, ball on an outside object, unseen floor contact, ball outside or on the antenna on that side"},
			{"signal-fault-first", "receiving alignment, net and centre line; signals the fault first, the first referee then awards"},
		},
		cells: table{
			intl: {pub("whistles-listed-faults", "24.3.2", fivb2025,
				"receiving-team positions, penetration, net/antenna contact mainly blocker side, back-row/libero "+
					"block and attack faults, ball on external object, unseen floor contact, ball crossing outside or "+
					"touching antenna on his/her side")},
			club: {mem("whistles-listed-faults", "24.3.2",
				"receiving-team positions, penetration, net/antenna contact mainly blocker side, back-row/libero "+
					"block and attack faults, ball on external object, unseen floor contact, ball crossing outside or "+
					"touching antenna on his/her side")},
			coll: {mem("whistles-listed-faults", "24-25",
				"receiving-team positions, penetration, net contact and back-row faults, much as in the "+
					"international list").
				doubt("from memory, confidence medium")},
			scho: {pub("signal-fault-first", "5-5", schoolPursuit,
				"receiving-team alignment, net and centre-line faults; signals the fault first, the first referee "+
					"then awards")},
		},
	},
	{
		Param: "subs.consecutive",
		Title: "Second substitution request in one interruption",
		Doc:   "A second substitution request by a team in one interruption.",
		Values: []Value{
			{"not-allowed", "not before a completed rally, unless forced"},
			{"allowed-unless-delayed", "allowed, unless the team was charged a delay"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {pub("not-allowed", "15.2.2-15.2.3; 15.10.4", fivb2025,
				"not allowed before a completed rally (except forced); several players in one request are fine")},
			club: {mem("not-allowed", "15.2",
				"not allowed before a completed rally (except forced); several players in one request are fine").
				doubt("club lines on multiple requests may be looser; inherited from the international text, not seen; " +
					"confidence low")},
			coll: {mem("unknown", "",
				"not known").
				doubt("from memory, confidence low")},
			scho: {pub("allowed-unless-delayed", "10-2", schoolChanges2018,
				"allowed in the same dead ball unless the team was charged an unnecessary delay, then none until "+
					"the next completed rally").
				doubt("only the delay part was published")},
		},
	},
	{
		Param: "subs.illegal",
		Title: "Illegal substitution found after play resumed",
		Doc:   "An illegal substitution found after play resumed.",
		Values: []Value{
			{"loss-of-rally", "point and service to the opponents, corrected"},
			{"position-fault", "a fault of position: loss of rally"},
		},
		cells: table{
			intl: {pub("loss-of-rally", "15.9.2", fivb2025,
				"point and service to the opponents, corrected")},
			club: {mem("loss-of-rally", "15.9.2",
				"point and service to the opponents, corrected").
				doubt("from memory, confidence medium-high; inherited from the international text, not seen")},
			coll: {pub("position-fault", "10.3.2.3; 11.3", ncaa2026Note,
				"position fault").
				doubt("confidence medium")},
			scho: {pub("position-fault", "10-2", schoolSignals,
				"illegal alignment: loss of rally and point")},
		},
	},
	{
		Param: "subs.illegal-points",
		Title: "Points since an illegal substitution",
		Doc:   "Whether points scored since an illegal substitution are cancelled.",
		Values: []Value{
			{"cancelled", "those the team scored since"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {pub("cancelled", "15.9.2", fivb2025,
				"points scored by the team since are cancelled")},
			club: {mem("cancelled", "15.9.2",
				"points scored by the team since are cancelled").
				doubt("from memory, confidence medium-high; inherited from the international text, not seen")},
			coll: {pub("cancelled", "10.3.2.3; 11.3", ncaa2026Note,
				"points are cancelled").
				doubt("confidence medium")},
			scho: {pub("cancelled", "10-2", schoolNotListed,
				"points of the present term of service come off, as long as the opponents have not served").
				doubt("number from memory; confidence medium")},
		},
	},
	{
		Param: "subs.per-set",
		Title: "Substitutions per set",
		Doc:   "How many substitutions a team has in a set.",
		Unit:  "substitutions",
		cells: table{
			intl: {pub("6", "15.1; 15.6-15.7", fivb2025,
				"6; exceptional substitution for injury or expulsion apart")},
			club: {pub("12", "15.6", usaSubstitutions,
				"12").
				doubt("check the 2025-27 book (12 or 15); confidence medium-high")},
			coll: {pub("15", "11.3", ncaa2005,
				"15")},
			scho: {pub("18", "10-3-2", schoolExam2024+"; "+schoolExams,
				"18")},
		},
	},
	{
		Param: "subs.re-entry",
		Title: "Re-entry of players",
		Doc:   "How often and for whom a player may come back.",
		Values: []Value{
			{"once-for-the-starter", "a starter goes out and returns once, a substitute enters once, for that player"},
			{"same-position", "without limit, always into the same position of the order"},
		},
		cells: table{
			intl: {pub("once-for-the-starter", "15.1; 15.6-15.7", fivb2025,
				"a starter may go out and return once, a substitute enters once, for that same player")},
			club: {pub("same-position", "15.6", usaSubstitutions,
				"a player who has entered is tied to one position in the order, unlimited re-entry into it").
				doubt("check the 2025-27 book; confidence medium-high")},
			coll: {mem("same-position", "11.3",
				"the same position in the order")},
			scho: {pub("same-position", "10-3-2", schoolExam2024+"; "+schoolExams,
				"unlimited entries, same position in the order")},
		},
	},
	{
		Param: "timeouts.coach-on-court",
		Title: "Coach on the court in a time-out",
		Doc:   "Whether a coach may be on the court in a time-out.",
		Values: []Value{
			{"not-allowed", "no, players go to the bench"},
			{"own-side", "yes, on the own side"},
		},
		cells: table{
			intl: {pub("not-allowed", "15.4.2", fivb2025,
				"players go to the free zone by the bench")},
			club: {pub("not-allowed", "15.4.2", refereeCaseplays,
				"coaches may not enter the court")},
			coll: {pub("own-side", "11.2.4.1", refereeCaseplays,
				"allowed on own side")},
			scho: {pub("own-side", "11-2-4", refereeCaseplays,
				"allowed on own side")},
		},
	},
	{
		Param: "timeouts.count",
		Title: "Time-outs per set",
		Doc:   "How many time-outs a team has in a set.",
		Unit:  "time-outs per set",
		cells: table{
			intl: {pub("2", "15.1; 15.4.1", fivb2025,
				"2 per set")},
			club: {pub("2", "15.4", refereeFive,
				"2 per set")},
			coll: {mem("2", "11.2",
				"2 per set").
				doubt("from memory, confidence high")},
			scho: {pub("2", "11-2", refereeFive+"; "+schoolExams,
				"2 per set")},
		},
	},
	{
		Param: "timeouts.early-end",
		Title: "Ending a time-out early",
		Doc:   "Whether a time-out may end before its time.",
		Values: []Value{
			{"allowed", "yes, when both teams are ready"},
			{"not-allowed", "no"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "15.1; 15.4.1",
				"not stated").
				doubt("no line seen")},
			club: {pub("not-allowed", "15.4", refereeFive,
				"no early end")},
			coll: {pub("allowed", "11.2", refereeFive,
				"may end early")},
			scho: {pub("allowed", "11-2", refereeFive+"; "+schoolExams,
				"may end early if both teams are ready")},
		},
	},
	{
		Param: "timeouts.length",
		Title: "Length of a time-out",
		Doc:   "How long a time-out lasts.",
		Unit:  "seconds",
		cells: table{
			intl: {pub("30", "15.1; 15.4.1", fivb2025,
				"30 s (may be adjusted at official events)")},
			club: {pub("30", "15.4", refereeFive,
				"30 s")},
			coll: {pub("75", "11.2", refereeFive,
				"75 s by default, 60 or 90 s if both coaches agree")},
			scho: {pub("60", "11-2", refereeFive+"; "+schoolExams,
				"60 s")},
		},
	},
	{
		Param: "timeouts.warning",
		Title: "Warning before the end of a time-out",
		Doc:   "When before its end a time-out is warned.",
		Unit:  "seconds left",
		Values: []Value{
			{"none", "no warning"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "15.1; 15.4.1",
				"not stated").
				doubt("no line seen")},
			club: {pub("none", "15.4", refereeFive,
				"no warning whistle")},
			coll: {pub("15", "11.2", refereeFive,
				"warning at 15 s")},
			scho: {pub("15", "11-2", refereeFive+"; "+schoolExams,
				"warning at 15 s left")},
		},
	},
}
