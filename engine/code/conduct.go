package code

// conductRows are the rows about delays and conduct.
var conductRows = []Row{
	{
		Param: "conduct.aggression",
		Title: "Aggression",
		Doc:   "An attack on a person, or the threat of one.",
		Values: []Value{
			{"disqualification", "disqualification at once"},
			{"by-judgement", "a card by the gravity of the offence"},
		},
		cells: table{
			intl: {pub("disqualification", "21.1-21.3", fivb2025,
				"disqualification at once")},
			club: {pub("disqualification", "21", cardsForum+"; "+refereeFive,
				"disqualification at once")},
			coll: {mem("by-judgement", "6.2",
				"a card by the gravity of the offence").
				doubt("no such class of conduct is named in what was seen; steps above red from memory; confidence " +
					"medium")},
			scho: {mem("by-judgement", "12-2",
				"red, or disqualification, by the gravity of the offence").
				doubt("no such class of conduct is named in what was seen")},
		},
	},
	{
		Param: "conduct.cards-apart",
		Title: "Red and yellow card apart",
		Doc:   "What red and yellow shown apart mean.",
		Values: []Value{
			{"disqualification", "out for the match, no point"},
			{"not-used", "not used"},
			{"unclear", "not seen"},
		},
		cells: table{
			intl: {pub("disqualification", "21.1-21.3", fivb2025,
				"disqualification for the match, no point")},
			club: {pub("disqualification", "21", cardsForum+"; "+refereeFive,
				"disqualification for the match, no point")},
			coll: {mem("unclear", "6.2",
				"not seen").
				doubt("steps above red not seen; confidence medium")},
			scho: {mem("not-used", "12-2",
				"not used: cards together already disqualify").
				doubt("no line seen")},
		},
	},
	{
		Param: "conduct.cards-together",
		Title: "Red and yellow card together",
		Doc:   "What red and yellow shown together mean.",
		Values: []Value{
			{"expulsion", "out for the set"},
			{"disqualification", "out for the match"},
			{"unclear", "not seen"},
		},
		cells: table{
			intl: {pub("expulsion", "21.1-21.3", fivb2025,
				"expulsion for the set, no point")},
			club: {pub("expulsion", "21", cardsForum+"; "+refereeFive,
				"expulsion for the set, no point")},
			coll: {mem("unclear", "6.2",
				"a harsher step than red").
				doubt("steps above red: a forum says disqualification, the expulsion step is from memory; confidence " +
					"medium")},
			scho: {pub("disqualification", "12-2", schoolConduct+"; "+cardsForum,
				"disqualification, and loss of rally and point")},
		},
	},
	{
		Param: "conduct.cards-together-point",
		Title: "Point with red and yellow together",
		Doc:   "Whether red and yellow together also cost a point.",
		Values: []Value{
			{"yes", "loss of rally and point"},
			{"no", "no point"},
			{"unclear", "not seen"},
		},
		cells: table{
			intl: {pub("no", "21.1-21.3", fivb2025,
				"no point")},
			club: {pub("no", "21", cardsForum+"; "+refereeFive,
				"no point")},
			coll: {mem("unclear", "6.2",
				"not seen").
				doubt("steps above red not seen; confidence medium")},
			scho: {pub("yes", "12-2", schoolConduct+"; "+cardsForum,
				"loss of rally and point")},
		},
	},
	{
		Param: "conduct.coach-standing",
		Title: "Coach loses the right to stand",
		Doc:   "Whether a card costs the head coach the right to stand.",
		Values: []Value{
			{"after-red", "the head coach sits for the rest of the match after a red conduct card to the bench"},
			{"no-such-step", "no"},
		},
		cells: table{
			intl: {mem("no-such-step", "21",
				"no such step").
				doubt("from memory, confidence medium")},
			club: {mem("no-such-step", "21",
				"no such step").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("no-such-step", "6",
				"no such step").
				doubt("from memory, confidence medium")},
			scho: {pub("after-red", "12-2", comparison2021+"; "+schoolChanges2020,
				"the head coach must sit for the rest of the match after a red conduct card to the bench").
				doubt("confidence medium-high")},
		},
	},
	{
		Param: "conduct.offensive",
		Title: "Offensive conduct",
		Doc:   "Offensive conduct, by its first and second time.",
		Values: []Value{
			{"expulsion-disqualification", "expulsion, disqualification"},
			{"by-judgement", "a card by the gravity of the offence"},
		},
		cells: table{
			intl: {pub("expulsion-disqualification", "21.1-21.3", fivb2025,
				"expulsion, disqualification")},
			club: {pub("expulsion-disqualification", "21", cardsForum+"; "+refereeFive,
				"expulsion, disqualification")},
			coll: {mem("by-judgement", "6.2",
				"a card by the gravity of the offence").
				doubt("no such class of conduct is named in what was seen; steps above red from memory; confidence " +
					"medium")},
			scho: {mem("by-judgement", "12-2",
				"red, or disqualification, by the gravity of the offence").
				doubt("no such class of conduct is named in what was seen")},
		},
	},
	{
		Param: "conduct.red",
		Title: "Red card",
		Doc:   "What a red card costs.",
		Values: []Value{
			{"point-and-service", "point and service to the opponents"},
			{"none", "no point"},
		},
		cells: table{
			intl: {pub("point-and-service", "21.1-21.3", fivb2025,
				"penalty: point and service")},
			club: {pub("point-and-service", "21", cardsForum+"; "+refereeFive,
				"penalty: point and service")},
			coll: {pub("point-and-service", "6.2", refereeFive+"; "+cardsForum,
				"penalty: point")},
			scho: {pub("point-and-service", "12-2", schoolConduct+"; "+cardsForum,
				"loss of rally and point, for a second offence or a serious one")},
		},
	},
	{
		Param: "conduct.rude",
		Title: "Rude conduct",
		Doc:   "Rude conduct, by its first, second and third time.",
		Values: []Value{
			{"penalty-expulsion-disqualification", "penalty, expulsion, disqualification"},
			{"by-judgement", "a card by the gravity of the offence"},
		},
		cells: table{
			intl: {pub("penalty-expulsion-disqualification", "21.1-21.3", fivb2025,
				"penalty, expulsion, disqualification")},
			club: {pub("penalty-expulsion-disqualification", "21", cardsForum+"; "+refereeFive,
				"penalty, expulsion, disqualification")},
			coll: {mem("by-judgement", "6.2",
				"yellow, then red, then harsher").
				doubt("no such class of conduct is named in what was seen; steps above red from memory; confidence " +
					"medium")},
			scho: {mem("by-judgement", "12-2",
				"yellow, or red at once when serious").
				doubt("no such class of conduct is named in what was seen")},
		},
	},
	{
		Param: "conduct.scope",
		Title: "Conduct sanctions counted per",
		Doc:   "For how long cards count.",
		Values: []Value{
			{"match", "the whole match"},
			{"set", "the set"},
		},
		cells: table{
			intl: {mem("match", "21.1-21.3",
				"carry through the match")},
			club: {pub("match", "21", cardsForum+"; "+refereeFive,
				"carry through the match")},
			coll: {pub("set", "6.2", refereeFive+"; "+cardsForum,
				"reset each set")},
			scho: {pub("match", "12-2", schoolConduct+"; "+cardsForum,
				"carry through the match")},
		},
	},
	{
		Param: "conduct.warning-scope",
		Title: "A warning counts for",
		Doc:   "For whom a warning counts.",
		Values: []Value{
			{"team", "for the team: the next member starts at red"},
			{"individual", "for the person"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "21.1-21.3",
				"not stated in what was read").
				doubt("no line seen")},
			club: {pub("team", "21", cardsForum+"; "+refereeFive,
				"a card to one member counts as the team's warning, so the next member starts at red")},
			coll: {pub("individual", "6.2", refereeFive+"; "+cardsForum,
				"individual")},
			scho: {pub("individual", "12-2", schoolConduct+"; "+cardsForum,
				"individual")},
		},
	},
	{
		Param: "conduct.yellow",
		Title: "Yellow card",
		Doc:   "What a yellow card is.",
		Values: []Value{
			{"warning", "a warning, no point"},
			{"none", "not used"},
		},
		cells: table{
			intl: {pub("warning", "21.1-21.3", fivb2025,
				"formal warning, no result; a verbal warning goes before it")},
			club: {pub("warning", "21", cardsForum+"; "+refereeFive,
				"formal warning, no result")},
			coll: {pub("warning", "6.2", refereeFive+"; "+cardsForum,
				"warning")},
			scho: {pub("warning", "12-2", schoolConduct+"; "+cardsForum,
				"warning")},
		},
	},
	{
		Param: "delay.improper-request",
		Title: "Improper request",
		Doc:   "A team makes an improper request.",
		Values: []Value{
			{"first-harmless-rejected", "the first in a match that does not affect play is rejected and recorded, a repeat is a delay"},
			{"delay-if-it-delays", "rejected; a delay only when it delays the set"},
		},
		cells: table{
			intl: {pub("first-harmless-rejected", "15.11", fivb2025,
				"first in a match that does not affect play: rejected and recorded, no sanction; a repeat is a "+
					"delay")},
			club: {mem("first-harmless-rejected", "15.11",
				"first in a match that does not affect play: rejected and recorded, no sanction; a repeat is a "+
					"delay")},
			coll: {mem("delay-if-it-delays", "6.3",
				"ignored, or a delay sanction if it delays").
				doubt("from memory, confidence low")},
			scho: {mem("delay-if-it-delays", "9-9-1",
				"unnecessary delay when it delays the set").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "delay.ladder",
		Title: "Delay sanctions",
		Doc:   "The steps of delay sanctions.",
		Values: []Value{
			{"warning-then-penalty", "the first is a warning, every further one a penalty: point and service"},
			{"time-out", "a time-out is charged"},
		},
		cells: table{
			intl: {pub("warning-then-penalty", "16.2", fivb2025,
				"the first by the team is a delay warning (yellow on the wrist), every later one a delay penalty "+
					"(red on the wrist): point and service")},
			club: {pub("warning-then-penalty", "16.2", refereeFive,
				"the first by the team is a delay warning (yellow on the wrist), every later one a delay penalty "+
					"(red on the wrist): point and service")},
			coll: {pub("warning-then-penalty", "6.3", refereeFive,
				"warning, then penalty (point)")},
			scho: {pub("warning-then-penalty", "9-9-1", schoolComments2015+"; "+schoolChanges2018,
				"unnecessary delay: administrative yellow first, red (loss of rally and point) for a second")},
		},
	},
	{
		Param: "delay.scope",
		Title: "Delay sanctions counted per",
		Doc:   "For how long delay sanctions count.",
		Values: []Value{
			{"match", "the whole match"},
			{"set", "the set"},
		},
		cells: table{
			intl: {pub("match", "16.2", fivb2025,
				"the whole match")},
			club: {pub("match", "16.2", refereeFive,
				"the whole match")},
			coll: {pub("set", "6.3", refereeFive,
				"the set")},
			scho: {pub("set", "9-9-1", schoolComments2015+"; "+schoolChanges2018,
				"the same set")},
		},
	},
}
