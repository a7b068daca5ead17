package code

// crewRows are the rows about what the crew does before, beside and after the play.
var crewRows = []Row{
	{
		Param: "bench.seated",
		Title: "Bench during play",
		Doc:   "Whether the players on the bench must sit while the ball is in play.",
		Values: []Value{
			{"seated-or-warm-up-area", "they sit on the bench or stay in the warm-up area"},
			{"seated-with-exceptions", "they sit, with listed exceptions: a short reaction, greeting a player who comes off, a warm-up without balls where nobody plays"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("seated-or-warm-up-area", "4.2.1", "players not in play sit on the bench or stay in the warm-up area")},
			club: {mem("seated-or-warm-up-area", "4.2.1", "players not in play sit on the bench or stay in the warm-up area").doubt("inherited from the international text, not seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("seated-with-exceptions", "12-2-8", schoolQuestions, "seated but for a short reaction, greeting a player who comes off, and a warm-up without balls where nobody plays").doubt("confidence medium; letter not seen")},
		},
	},
	{
		Param: "crew.cards",
		Title: "Who shows cards",
		Doc:   "Which official shows the cards for misconduct.",
		Values: []Value{
			{"first-referee", "the first referee alone"},
		},
		cells: table{
			intl: {mem("first-referee", "21; 23.3.2.2", "the first referee sanctions misconduct and delays")},
			club: {mem("first-referee", "21; 23.3.2.2", "the first referee sanctions misconduct and delays")},
			coll: {mem("first-referee", "6", "the first referee sanctions misconduct").doubt("confidence medium-high")},
			scho: {mem("first-referee", "5-4; 12-2", "the first referee administers cards").doubt("confidence medium-high")},
		},
	},
	{
		Param: "crew.final-decision",
		Title: "Who decides",
		Doc:   "Whose decision stands where officials differ.",
		Values: []Value{
			{"first-referee", "the first referee's, who may overrule the others"},
		},
		cells: table{
			intl: {mem("first-referee", "23.2.1", "the first referee decides and may overrule the other officials")},
			club: {mem("first-referee", "23.2.1", "the first referee decides and may overrule the other officials")},
			coll: {mem("first-referee", "24", "the first referee decides and may overrule the other officials")},
			scho: {mem("first-referee", "5-4", "the first referee decides and may overrule the other officials")},
		},
	},
	{
		Param: "crew.line-judge-in-the-way",
		Title: "Line judge where the server wants to stand",
		Doc:   "Who gives way when the server wants the corner in which a line judge stands.",
		Values: []Value{
			{"judge-steps-aside", "the line judge steps aside for the serve and back after it"},
		},
		cells: table{
			intl: {practice("judge-steps-aside", "", "the line judge steps aside for the serve")},
			club: {pub("judge-steps-aside", "12.4.3", officialsBulletin, "the server has the whole service zone; the line judge steps aside and back")},
			coll: {practice("judge-steps-aside", "", "the line judge steps aside for the serve")},
			scho: {practice("judge-steps-aside", "", "the line judge steps aside for the serve")},
		},
	},
	{
		Param: "crew.line-up-report",
		Title: "Wrong server reported by the table",
		Doc:   "What the crew checks first when the table reports a wrong server.",
		Values: []Value{
			{"sheets-first", "the line-up sheet against the score sheet, before any whistle: an error of the scorer is no fault of the team"},
		},
		cells: table{
			intl: {practice("sheets-first", "", "the line-up sheet is compared with the score sheet before any whistle")},
			club: {practice("sheets-first", "", "the line-up sheet is compared with the score sheet before any whistle")},
			coll: {practice("sheets-first", "", "the line-up sheet is compared with the score sheet before any whistle")},
			scho: {pub("sheets-first", "7-1", schoolQuestions, "the line-up sheet is compared with the score sheet before any whistle; an error of the scorer is no fault of the team").doubt("number from memory")},
		},
	},
	{
		Param: "crew.point-correction",
		Title: "Point given to the wrong team",
		Doc:   "Until when a point that the crew gave to the wrong team can be corrected.",
		Values: []Value{
			{"until-opponents-serve", "until the team that was given it has served next"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("until-opponents-serve", "5-4", officialsBulletin, "too late once the team that was given it has contacted a serve").doubt("number from memory; confidence medium")},
		},
	},
	{
		Param: "crew.pre-match-call",
		Title: "How the teams are called to the coin toss",
		Doc:   "How the first referee calls captains and coaches to the coin toss.",
		Values: []Value{
			{"double-whistle", "a double whistle with the coin raised, and the meeting is at the table"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("double-whistle", "5-4", schoolQuestions, "double whistle, coin raised, the meeting is at the table").doubt("number from memory; confidence medium")},
		},
	},
	{
		Param: "crew.pre-match-captains",
		Title: "Captains at the coin toss",
		Doc:   "Whether the captains attend the coin toss.",
		Values: []Value{
			{"attend", "they attend"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("attend", "7.1", "the toss is made in the presence of the two captains")},
			club: {mem("attend", "7.1", "the toss is made in the presence of the two captains")},
			coll: {mem("attend", "", "the captains attend the toss").doubt("confidence medium")},
			scho: {pub("attend", "5-4", schoolQuestions, "the captains attend").doubt("number from memory")},
		},
	},
	{
		Param: "crew.pre-match-coach",
		Title: "Who comes to the pre-match meeting",
		Doc:   "Whether an assistant may stand in for the head coach at the pre-match meeting.",
		Values: []Value{
			{"assistant-may", "an assistant may stand in"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			club: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {pub("assistant-may", "5-4", schoolQuestions, "an assistant may attend and then stands for the head coach").doubt("number from memory")},
		},
	},
	{
		Param: "crew.serving-positions",
		Title: "Who calls the serving team's positions",
		Doc:   "Which official calls a fault in the positions of the serving team.",
		Values: []Value{
			{"first-referee", "the first referee"},
		},
		cells: table{
			intl: {mem("first-referee", "23.3.2.3", "faults of the server and of the serving team's positions are the first referee's").doubt("where the serving team is free there is none to call")},
			club: {mem("first-referee", "23.3.2.3", "faults of the server and of the serving team's positions are the first referee's")},
			coll: {mem("first-referee", "24", "the serving team's alignment is the first referee's").doubt("confidence medium-high")},
			scho: {pub("first-referee", "5-4; 5-5", schoolQuestions, "the serving team's alignment is the first referee's; the second referee signals discreetly")},
		},
	},
	{
		Param: "crew.signals",
		Title: "List of signals",
		Doc:   "Where the signals of the officials are listed.",
		Values: []Value{
			{"diagram-11", "diagram 11 of the book"},
			{"listed", "a list of the book"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {pub("diagram-11", "11", fivb2025, "the official hand signals of diagram 11")},
			club: {pub("diagram-11", "11", usaSignals, "the international hand signals are reprinted")},
			coll: {mem("unknown", "", "the list was not seen; the international gestures are taken").doubt("the collegiate list of signals was not found")},
			scho: {pub("listed", "5", schoolSignals+"; "+schoolPictures, "the numbered list of signals").doubt("number of the rule from memory")},
		},
	},
	{
		Param: "crew.wait-hazard",
		Title: "What the serve waits for",
		Doc:   "What the crew waits for before the serve is authorised.",
		Values: []Value{
			{"hazards-only", "a hazard: a wet floor, a loose shoe or lace, a ball on the court; not a huddle, hair, or a slow walk to place"},
		},
		cells: table{
			intl: {practice("hazards-only", "", "a hazard is waited for; a team that takes its time is not")},
			club: {practice("hazards-only", "", "a hazard is waited for; a team that takes its time is not")},
			coll: {practice("hazards-only", "", "a hazard is waited for; a team that takes its time is not")},
			scho: {practice("hazards-only", "", "a hazard is waited for; a team that takes its time is not")},
		},
	},
	{
		Param: "r2.outside-scope",
		Title: "What the second referee may do outside the own scope",
		Doc:   "What the second referee does about a fault that is not the second referee's to call.",
		Values: []Value{
			{"signal-only", "a discreet signal without a whistle, and the first referee decides"},
		},
		cells: table{
			intl: {mem("signal-only", "24.2.2", "may signal faults outside the own scope without a whistle, and may not insist on them")},
			club: {mem("signal-only", "24.2.2", "may signal faults outside the own scope without a whistle, and may not insist on them")},
			coll: {mem("signal-only", "24-25", "helps the first referee by a discreet signal").doubt("confidence medium")},
			scho: {pub("signal-only", "5-5", schoolQuestions, "a discreet signal; the first referee decides")},
		},
	},
}
