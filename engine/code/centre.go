package code

// centreRows are the rows about players at and across the centre line.
var centreRows = []Row{
	{
		Param: "centre.after-dead-ball",
		Title: "Entering opponents' court after the ball is dead",
		Doc:   "A player enters the opponents' court after the ball is dead.",
		Values: []Value{
			{"legal", "no playing fault"},
			{"fault", "a line fault"},
		},
		cells: table{
			intl: {pub("legal", "11.2.3", fivb2025,
				"legal")},
			club: {mem("legal", "11.2.3",
				"legal")},
			coll: {mem("legal", "15.2",
				"no playing fault")},
			scho: {mem("legal", "9-5-7",
				"no playing fault")},
		},
	},
	{
		Param: "centre.foot",
		Title: "Foot beyond the centre line",
		Doc:   "A player's foot touches the opponents' court.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes with play or is a hazard"},
			{"fault-if-wholly-beyond", "a fault when no part of it is on or above the line"},
			{"fault-always", "a fault however little of it is across"},
		},
		cells: table{
			intl: {pub("fault-if-wholly-beyond", "11.2.2.1; 11.4.3", fivb2025,
				"legal while part of the foot touches or is above the line and no interference; wholly beyond = "+
					"fault")},
			club: {pub("legal-unless-interferes", "11.2.2", refereeOverLine,
				"legal unless it interferes or is a safety hazard, even wholly beyond").
				doubt("seen for 2023; only weak support for 2025-27; confidence medium-high")},
			coll: {
				pub("legal-unless-interferes", "15.2.4", refereeOverLine+"; "+ncaa2026,
					"legal unless it interferes or is a safety hazard, even wholly beyond").until(2025),
				pub("fault-if-wholly-beyond", "15.2.4", refereeOverLine+"; "+ncaa2026,
					"a foot wholly beyond the line is a fault, and reviewable").since(2026).
					doubt("recommended in January 2026; final approval not seen; confidence medium"),
			},
			scho: {pub("fault-if-wholly-beyond", "9-5-7", refereeOverLine+"; "+schoolSituations+"; "+schoolSignals,
				"legal while part of the foot is on or above the line; wholly beyond = fault whether or not it "+
					"interferes")},
		},
	},
	{
		Param: "centre.hand",
		Title: "Hand on opponents' floor",
		Doc:   "A player's hand touches the opponents' court.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes with play or is a hazard"},
			{"fault-if-wholly-beyond", "a fault when no part of it is on or above the line"},
			{"fault-always", "a fault however little of it is across"},
		},
		cells: table{
			intl: {pub("legal-unless-interferes", "11.2.2.2", fivb2025,
				"legal unless it interferes (any part above the feet)")},
			club: {pub("legal-unless-interferes", "11.2.2", refereeOverLine,
				"legal unless it interferes or is a hazard")},
			coll: {pub("legal-unless-interferes", "15.2.4", refereeOverLine,
				"partly over: legal. Wholly over: legal unless hazard/interference")},
			scho: {pub("fault-if-wholly-beyond", "9-5-7", refereeOverLine+"; "+schoolSituations,
				"legal while part of the hand is on or above the line; wholly beyond = fault")},
		},
	},
	{
		Param: "centre.hazard",
		Title: "Safety hazard under the net",
		Doc:   "Entering under the net in a way that endangers an opponent, without hindering play.",
		Values: []Value{
			{"fault", "a fault"},
			{"not-stated", "the text names only interference"},
		},
		cells: table{
			intl: {mem("not-stated", "11.2.2.1; 11.4.3",
				"only interference is named")},
			club: {pub("fault", "11.2.2", refereeOverLine,
				"a safety hazard is a fault as interference is").
				doubt("seen for 2023; only weak support for 2025-27; confidence medium-high")},
			coll: {pub("fault", "15.2.4", refereeOverLine+"; "+ncaa2026,
				"a safety hazard is a fault as interference is")},
			scho: {mem("not-stated", "9-5-7",
				"only interference is named")},
		},
	},
	{
		Param: "centre.other-body",
		Title: "Other body parts on opponents' floor",
		Doc:   "Another part of a player's body touches the opponents' court.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes with play or is a hazard"},
			{"fault-if-wholly-beyond", "a fault when no part of it is on or above the line"},
			{"fault-always", "a fault however little of it is across"},
		},
		cells: table{
			intl: {pub("legal-unless-interferes", "11.2.2.2", fivb2025,
				"legal unless it interferes")},
			club: {pub("legal-unless-interferes", "11.2.2", refereeOverLine,
				"legal unless it interferes or is a hazard")},
			coll: {pub("legal-unless-interferes", "15.2.4", refereeOverLine,
				"legal unless it interferes or is a hazard")},
			scho: {pub("fault-always", "9-5-7", refereeOverLine+"; "+schoolSignals,
				"fault always (any part other than hand or foot touching across)")},
		},
	},
	{
		Param: "centre.outside-court",
		Title: "Crossing the line's extension / opponents' free zone",
		Doc:   "A player crosses the extension of the centre line into the opponents' free zone.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes with play"},
			{"fault", "a line fault"},
		},
		cells: table{
			intl: {pub("legal-unless-interferes", "11.2.4", fivb2025,
				"legal unless it interferes")},
			club: {mem("legal-unless-interferes", "11.2.4",
				"legal unless it interferes")},
			coll: {pub("legal-unless-interferes", "15.2.4", refereeOverLine,
				"legal unless it interferes or is a hazard")},
			scho: {pub("legal-unless-interferes", "9-5-8", refereeOverLine,
				"legal unless it interferes")},
		},
	},
	{
		Param: "centre.under-net-interference",
		Title: "Contact or hindrance under the net",
		Doc:   "A player reaches or falls under the net and touches or hinders an opponent.",
		Values: []Value{
			{"fault-if-hinders", "a fault when it hinders the opponents' play"},
			{"fault", "a fault even without hindering"},
		},
		cells: table{
			intl: {pub("fault-if-hinders", "11.2.1; 11.4.2", fivb2025,
				"fault if it hinders opponents' play")},
			club: {mem("fault-if-hinders", "11.4.2",
				"fault if it hinders")},
			coll: {pub("fault-if-hinders", "15.2.4", refereeOverLine,
				"fault if it hinders or is a hazard")},
			scho: {pub("fault-if-hinders", "9-5-7", schoolSituations,
				"fault if it hinders; both partly over and tangled with no ball effect = play judged on "+
					"interference").
				doubt("answer to the tangled-arms case not shown in source; confidence medium")},
		},
	},
}
