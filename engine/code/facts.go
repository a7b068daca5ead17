package code

// factRows are the rows about what is looked up and not ruled on, and no area of its own.
var factRows = []Row{
	{
		Param: "libero.clock-fault-uses-position",
		Title: "Libero's service clock runs out",
		Doc:   "Whether a service clock that ran out on the libero counts as having served in that position.",
		Values: []Value{
			{"counts", "it counts: it is the libero's one position of the set"},
			{"not-applicable", "the libero may not serve at all"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("not-applicable", "19.3.1.3", "the libero may not serve")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("counts", "10-4-5", schoolServeClock, "the fault counts as having served there, and it is the one position of the set").doubt("read for 2009-12; number from memory")},
		},
	},
	{
		Param: "libero.replacements-counted",
		Title: "Libero replacements and substitutions",
		Doc:   "Whether a libero replacement counts as a substitution.",
		Values: []Value{
			{"not-counted", "they are not counted as substitutions, and their number is not limited"},
		},
		cells: table{
			intl: {mem("not-counted", "19.3.2.1", "replacements are not counted as substitutions and are not limited")},
			club: {mem("not-counted", "19.3.2.1", "replacements are not counted as substitutions and are not limited")},
			coll: {mem("not-counted", "12.2", "replacements are not counted as substitutions and are not limited")},
			scho: {mem("not-counted", "10-4", "replacements are not counted as substitutions and are not limited")},
		},
	},
	{
		Param: "libero.wrong-serve-uses-position",
		Title: "Libero who served out of turn",
		Doc:   "Whether a serve out of turn ties the libero to that position of the order.",
		Values: []Value{
			{"not-tied", "no: it was no legal turn, and the libero may still serve in one position"},
			{"not-applicable", "the libero may not serve at all"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("not-applicable", "19.3.1.3", "the libero may not serve")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {pub("not-tied", "6.3.2.11; 12", officialsForum, "a serve out of turn is no legal turn and does not tie the libero to it").doubt("confidence medium")},
			scho: {mem("unknown", "", "not known").doubt("no text on it was seen")},
		},
	},
	{
		Param: "match.antenna-above",
		Title: "Antenna above the net",
		Doc:   "How far the antenna rises above the net.",
		Unit:  "metres",
		cells: table{
			intl: {mem("0.8", "2.4", "80 cm")},
			club: {mem("0.8", "2.4", "80 cm")},
			coll: {mem("0.8", "2", "80 cm").doubt("confidence medium")},
			scho: {mem("0.813", "2", "2 ft 8 in").doubt("confidence medium")},
		},
	},
	{
		Param: "match.interval",
		Title: "Interval between sets",
		Doc:   "How long the interval between two sets is.",
		Unit:  "seconds",
		cells: table{
			intl: {mem("180", "18.1", "3 minutes")},
			club: {mem("180", "18.1", "3 minutes")},
			coll: {mem("180", "", "3 minutes; longer between the second and the third set where the teams agree").doubt("confidence medium")},
			scho: {mem("180", "", "3 minutes").doubt("confidence medium-high")},
		},
	},
	{
		Param: "match.measures",
		Title: "Measures of the book",
		Doc:   "In which measures the book gives lengths.",
		Values: []Value{
			{"feet", "feet and inches"},
			{"metric", "metres and centimetres"},
			{"metric-and-feet", "metres, with feet and inches beside them"},
		},
		cells: table{
			intl: {pub("metric", "1.1-1.3", fivb2025, "metres")},
			club: {mem("metric-and-feet", "1.1", "metres, with feet and inches beside them")},
			coll: {mem("metric-and-feet", "1", "metres, with feet and inches beside them")},
			scho: {pub("feet", "2-1", comparison2020+"; "+schoolExam2024, "feet and inches")},
		},
	},
	{
		Param: "match.service-zone",
		Title: "Width of the service zone",
		Doc:   "How wide the service zone is.",
		Unit:  "metres",
		cells: table{
			intl: {mem("9", "1.4.2", "9 m, as wide as the court, between two marks that belong to it")},
			club: {mem("9", "1.4.2", "9 m, as wide as the court")},
			coll: {mem("9", "1", "9 m, as wide as the court").doubt("confidence medium-high")},
			scho: {mem("9.144", "2-1", "30 ft, as wide as the court").doubt("confidence medium-high")},
		},
	},
	{
		Param: "serve.clock-seconds-juniors",
		Title: "Seconds to serve, 14 and under",
		Doc:   "How long a server of 14 and under has to hit the ball.",
		Unit:  "seconds",
		Values: []Value{
			{"not-applicable", "no other count for juniors"},
		},
		cells: table{
			intl: {mem("not-applicable", "12.4.4", "no other count for juniors")},
			club: {pub("5", "12.4.4", usaScorekeepers, "5 s for 14 and under in the older books").doubt("whether it is still in the 2025-27 book is unchecked; confidence medium")},
			coll: {mem("not-applicable", "13.1.3.3", "no juniors")},
			scho: {mem("not-applicable", "8-2-5", "no other count for juniors")},
		},
	},
	{
		Param: "serve.side-out-rotation",
		Title: "Rotation on a won rally",
		Doc:   "What a receiving team does before its serve when it has won the rally.",
		Values: []Value{
			{"rotates", "it rotates one place clockwise: the player at right front moves back and serves, the first serve of a set included"},
		},
		cells: table{
			intl: {mem("rotates", "7.6.2", "the receiving team that wins the rally rotates one place clockwise")},
			club: {mem("rotates", "7.6.2", "the receiving team that wins the rally rotates one place clockwise")},
			coll: {mem("rotates", "10.3", "the receiving team that wins the rally rotates one place clockwise").doubt("number from memory, confidence medium")},
			scho: {pub("rotates", "6-4", schoolQuestions, "the team that wins the rally rotates, after the first serve of the match too").doubt("number from memory")},
		},
	},
	{
		Param: "team.captain-speaks",
		Title: "Who may speak to the officials",
		Doc:   "Who may ask the officials for an explanation of a call.",
		Values: []Value{
			{"captain", "the game captain alone, when the ball is dead"},
			{"captain-and-coach", "the playing captain, and the head coach within the rules of the bench"},
		},
		cells: table{
			intl: {mem("captain", "5.1.2; 20.2.1", "the game captain, when the ball is out of play")},
			club: {mem("captain", "5.1.2; 20.2.1", "the game captain, when the ball is out of play")},
			coll: {mem("captain-and-coach", "5; 6", "the captain; the head coach may ask the second referee").doubt("confidence low-medium")},
			scho: {mem("captain-and-coach", "12-2", "the playing captain; the head coach may ask the officials to review the decision").doubt("confidence medium")},
		},
	},
	{
		Param: "team.players-to-start",
		Title: "Players to start",
		Doc:   "How many players a team needs to start a set.",
		Unit:  "players",
		cells: table{
			intl: {mem("6", "7.3.1", "six players are in play for each team")},
			club: {mem("6", "7.3.1", "six players are in play for each team")},
			coll: {mem("6", "10", "six players start").doubt("number from memory")},
			scho: {pub("6", "6-3", schoolQuestions, "six to begin").doubt("number from memory")},
		},
	},
	{
		Param: "timeouts.length-by-agreement",
		Title: "Another length of a time-out",
		Doc:   "Whether the two coaches may agree on another length of the time-outs.",
		Values: []Value{
			{"allowed", "60 or 90 seconds where both coaches agree"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "15.1; 15.4.1", "not stated").doubt("no line seen")},
			club: {mem("not-stated", "15.4", "not stated").doubt("no line seen")},
			coll: {pub("allowed", "11.2", refereeFive, "60 or 90 s if both coaches agree")},
			scho: {mem("not-stated", "11-2", "not stated").doubt("no line seen")},
		},
	},
	{
		Param: "timeouts.requester",
		Title: "Request of a time-out",
		Doc:   "Who may ask for a time-out.",
		Values: []Value{
			{"coach-or-captain-in-absence", "the coach, or the game captain in the coach's absence"},
			{"head-coach-or-captain", "the head coach or the playing captain"},
		},
		cells: table{
			intl: {mem("coach-or-captain-in-absence", "5.2.3.3; 15.1", "the coach, or the game captain in the coach's absence").doubt("number from memory, confidence medium")},
			club: {mem("coach-or-captain-in-absence", "5.2.3.3; 15.1", "the coach, or the game captain in the coach's absence").doubt("club lines may be looser; inherited from the international text, not seen")},
			coll: {mem("head-coach-or-captain", "11.2", "the head coach or the playing captain").doubt("confidence medium")},
			scho: {mem("head-coach-or-captain", "11-2", "the head coach or the playing captain").doubt("confidence medium-high")},
		},
	},
}
