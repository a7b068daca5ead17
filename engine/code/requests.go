package code

// The sources of these rows.
const (
	fivbCasebookRequests  = "FIVB Casebook, chapter 4 (interruptions and delays), edition not shown"
	usaBulletin           = "USA Volleyball rules interpretation bulletins, 2011 and undated"
	disputes              = "Officials' forum thread on captains, protests and coaches at the stand (high-school rules), undated"
	schoolInterpretations = "US high-school rules book, official interpretations 2018-19, situation 2"
	schoolNotListed       = "Officials' forum thread on a player who was not on the line-up and played from the start (high-school rules), undated"
	schoolShort           = "Rules column and officials' forum on short-handed teams and exceptional substitutions (high-school rules), undated"
)

// requestRows are the rows about requests in a dead ball: when, by whom, and
// what an illegal one comes to.
var requestRows = []Row{
	{
		Param: "requests.before-whistle",
		Title: "Moment of a request",
		Doc:   "Whether a time-out or a substitution must be asked for before the whistle for service.",
		Values: []Value{
			{"required", "while the ball is dead and before the whistle for service"},
			{"not-required", "also later"},
		},
		cells: table{
			intl: {mem("required", "15.2.1",
				"while the ball is out of play and before the whistle for service")},
			club: {mem("required", "15.2.1",
				"while the ball is out of play and before the whistle for service")},
			coll: {mem("required", "11.2; 11.3",
				"during a dead ball, before the service is authorized")},
			scho: {mem("required", "10-2; 11-2",
				"during a dead ball, before the signal for serve")},
		},
	},
	{
		Param: "requests.illegal-substitution",
		Title: "Request for an illegal substitution",
		Doc:   "A substitution beyond the limit or into a wrong position is asked for and noticed at once.",
		Values: []Value{
			{"delay", "refused, and a delay sanction"},
			{"refused", "refused"},
		},
		cells: table{
			intl: {mem("delay", "16.1.3",
				"refused; to ask for an illegal substitution is a delay")},
			club: {mem("delay", "16.1.3",
				"refused; to ask for an illegal substitution is a delay").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("refused", "11.3",
				"refused, or a delay if it delays").
				doubt("from memory, confidence low")},
			scho: {mem("delay", "9-9-1; 10-2",
				"refused; unnecessary delay").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "requests.penalty-between",
		Title: "Penalty point between two requests",
		Doc:   "Whether a penalty point stands for a completed rally between two requests.",
		Values: []Value{
			{"counts-as-rally", "as a completed rally"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {pub("counts-as-rally", "6.1.3; 15.2", fivbCasebookRequests,
				"a penalty, not a warning, is a completed rally, so a new request may follow")},
			club: {pub("counts-as-rally", "15.2", usaBulletin,
				"a delay penalty or a red card counts as a completed rally, so a regular request may follow")},
			coll: {mem("counts-as-rally", "12.2",
				"a penalty point counts as a completed rally").
				doubt("from memory, confidence medium; seen for libero replacements only")},
			scho: {mem("not-stated", "",
				"not stated").
				doubt("no line seen")},
		},
	},
	{
		Param: "requests.substitution-by",
		Title: "Who may ask for a substitution",
		Doc:   "Which persons of a team may ask for a substitution, beside the substitute who enters the zone.",
		Values: []Value{
			{"coach-or-captain", "the head coach or the captain on court"},
			{"coach-captain-or-assistant", "the head coach, an assistant or the captain on court"},
			{"anybody", "anybody of the team"},
		},
		cells: table{
			intl: {mem("anybody", "15.10.3",
				"the entry of the substitute into the zone is the request").
				doubt("who sends the player in is not asked")},
			club: {mem("anybody", "15.10.3",
				"the entry of the substitute into the zone is the request").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("coach-captain-or-assistant", "11.3",
				"head coach, assistant or playing captain; or the substitute enters the zone").
				doubt("from memory, confidence low")},
			scho: {mem("coach-captain-or-assistant", "10-2",
				"coach or playing captain; or the substitute enters the zone").
				doubt("from memory, confidence low")},
		},
	},
}

// peopleInPlayRows are the rows about players who may not be there, or may not
// go on, and about what a team disputes.
var peopleInPlayRows = []Row{
	{
		Param: "disputes.judgement",
		Title: "Dispute of a judgement",
		Doc:   "What becomes of a dispute of a judgement: in or out, a lift, a touch.",
		Values: []Value{
			{"not-reviewed", "it is final"},
		},
		cells: table{
			intl: {mem("not-reviewed", "5.1.2.1; 23.2.4", "a judgement is final; the captain may ask for its reason")},
			club: {mem("not-reviewed", "5.1.2.1; 23.2.4", "a judgement is final; the captain may ask for its reason")},
			coll: {mem("not-reviewed", "", "a judgement is final, a challenge review apart").doubt("confidence medium; the challenge review is not held")},
			scho: {pub("not-reviewed", "11-2-3", disputes, "a judgement is no ground for a review").doubt("number from memory")},
		},
	},
	{
		Param: "disputes.rule",
		Title: "Dispute of a rule",
		Doc:   "How a team disputes the application of a rule.",
		Values: []Value{
			{"captain-asks", "the captain on court asks the first referee, and may have a protest noted"},
			{"coach-time-out", "the head coach asks for a review; a time-out is charged where the ruling stands"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("captain-asks", "5.1.2.1; 5.1.3.2", "the captain on court asks for an explanation and says at once that a protest is kept open; it is written down after the match")},
			club: {mem("captain-asks", "5.1.2.1; 5.1.3.2", "the captain on court asks and may protest the application of a rule before the next service").doubt("inherited from the international text, not seen")},
			coll: {mem("not-stated", "", "not stated").doubt("the collegiate protest text was not seen")},
			scho: {pub("coach-time-out", "11-2-3", disputes, "the head coach may have the application of a rule reviewed in a time-out, which is charged where the ruling stands").doubt("number from memory")},
		},
	},
	{
		Param: "players.illegal",
		Title: "Illegal player found after the serve",
		Doc:   "A player who may not play is found on court after the ball was served: not on the sheet, sent off, or under a wrong number.",
		Values: []Value{
			{"loss-of-rally", "point and service to the opponents, and the player leaves"},
		},
		cells: table{
			intl: {mem("loss-of-rally", "7.3.5.4; 15.9.2", "point and service to the opponents, points won with the player are cancelled")},
			club: {mem("loss-of-rally", "7.3.5.4; 15.9.2", "point and service to the opponents, points won with the player are cancelled").doubt("inherited from the international text, not seen")},
			coll: {mem("loss-of-rally", "10.3.2.3", "loss of rally, and the player is replaced").doubt("confidence low-medium")},
			scho: {mem("loss-of-rally", "6-4; 10-2", "illegal alignment: loss of rally and point, and the player is replaced").doubt("confidence medium")},
		},
	},
	{
		Param: "players.line-up-check",
		Title: "Line-up check on request",
		Doc:   "Whether a team may have its line-up checked in a dead ball.",
		Values: []Value{
			{"courtesy", "as a courtesy, which is no regular interruption and needs no completed rally"},
		},
		cells: table{
			intl: {mem("courtesy", "5.1.2.2", "the captain may ask for a check of the positions of both teams, while the ball is dead")},
			club: {pub("courtesy", "5.1.2.2", usaBulletin, "a line-up check is a courtesy and no regular interruption; no completed rally is needed")},
			coll: {mem("courtesy", "", "a courtesy of the second referee").doubt("confidence low-medium")},
			scho: {pub("courtesy", "5-5", schoolInterpretations, "the second referee may grant it, also before a replay").doubt("number from memory")},
		},
	},
	{
		Param: "players.line-up-error",
		Title: "Fault of the line-up sheet before the set",
		Doc:   "A line-up sheet that cannot be right, found before the set begins.",
		Values: []Value{
			{"corrected", "it is corrected so that six different players start, without sanction"},
			{"substitution", "it is corrected by a legal substitution, which counts"},
		},
		cells: table{
			intl: {mem("corrected", "7.3.5.2", "it is corrected before the set, without sanction")},
			club: {pub("corrected", "7.3.5.2", usaBulletin, "it is corrected before the set so that six different players start").doubt("number from memory")},
			coll: {mem("corrected", "9.1", "it is corrected before the set").doubt("confidence low")},
			scho: {mem("substitution", "7-1", "it is corrected by a legal substitution").doubt("confidence medium")},
		},
	},
	{
		Param: "players.must-replace",
		Title: "Player who cannot go on",
		Doc:   "Whether a player who cannot go on must be replaced while somebody on the bench may enter.",
		Values: []Value{
			{"must", "yes: by a legal substitution, else an exceptional one"},
		},
		cells: table{
			intl: {pub("must", "15.7; 17.1", fivb2025, "by a legal substitution, and where none is possible by an exceptional one")},
			club: {mem("must", "15.7; 17.1", "by a legal substitution, and where none is possible by an exceptional one")},
			coll: {pub("must", "11.4", stateQA, "the injured player is replaced if not ready in time").doubt("confidence medium-high")},
			scho: {pub("must", "10-3-5; 11-4", schoolShort, "an eligible substitute must enter, an exceptional one where no other is left; a team may not choose to play short").doubt("number from memory")},
		},
	},
	{
		Param: "players.short",
		Title: "Team with fewer than six",
		Doc:   "What becomes of a team that is left with fewer than six players in a set.",
		Values: []Value{
			{"incomplete", "it is incomplete and loses the set, or the match, and keeps its points"},
			{"plays-on", "it plays on with those who are left"},
		},
		cells: table{
			intl: {pub("incomplete", "6.4.3", fivb2025, "it is declared incomplete and loses the set, or the match, and keeps its points and sets")},
			club: {mem("incomplete", "6.4.3", "it is declared incomplete and loses the set, or the match").doubt("events may let a team go on short; inherited from the international text, not seen")},
			coll: {mem("incomplete", "", "it defaults").doubt("confidence low-medium")},
			scho: {mem("plays-on", "6-4-1", "a match begins with six; a team that loses players goes on with those who are left").doubt("confidence medium-high")},
		},
	},
	{
		Param: "players.wrong-number",
		Title: "Service authorised with a wrong number of players",
		Doc:   "The service was authorised while a team had too many or too few players on court.",
		Values: []Value{
			{"replay", "stopped and replayed without sanction: the whistle was the crew's mistake"},
			{"alignment-fault", "a fault of positions once the ball is served"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {pub("replay", "7.1; 12.3", fivbCasebookRequests, "stopped and replayed without sanction; chapter 2 of the casebook").doubt("edition not shown; confidence medium")},
			club: {mem("replay", "7.1; 12.3", "stopped and replayed without sanction").doubt("inherited from the international text, not seen")},
			coll: {mem("unknown", "", "not known").doubt("no text on it was seen")},
			scho: {mem("alignment-fault", "6-4; 7-2", "illegal alignment once the ball is served").doubt("confidence medium")},
		},
	},
}
