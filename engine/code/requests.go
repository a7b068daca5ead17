package code

// The sources of these rows.
const (
	fivbCasebookRequests = "FIVB Casebook, chapter 4 (interruptions and delays), edition not shown"
	usaBulletin          = "USA Volleyball rules interpretation bulletins, 2011 and undated"
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
