package code

// joustRows are the rows about opponents who touch the ball together.
var joustRows = []Row{
	{
		Param: "joust.after-three-hits",
		Title: "Team that has used three hits then jousts",
		Doc:   "A team that has used its three hits touches the ball together with an opponent above the net.",
		Values: []Value{
			{"fourth-contact", "four hits by that team"},
			{"fresh-count", "a new count, no fault"},
		},
		cells: table{
			intl: {mem("fourth-contact", "9.1; 9.1.2.2",
				"text silent; usual reading: a fourth hit by that team").
				doubt("from memory, confidence low")},
			club: {mem("fourth-contact", "",
				"as the international reading: a fourth hit by that team").
				doubt("from memory, confidence low; inherited from the international text, not seen")},
			coll: {pub("fourth-contact", "14.3.2.1", ncaa2012Playing,
				"fourth contact: fault")},
			scho: {pub("fourth-contact", "9-4", schoolSituations,
				"four hits: the opponents must be the first to touch the ball after three hits")},
		},
	},
	{
		Param: "joust.extended",
		Title: "Extended contact ('held') between opponents above the net",
		Doc:   "Opponents press the ball between them above the net for a moment.",
		Values: []Value{
			{"play-on", "play goes on"},
			{"replay", "the rally is replayed"},
			{"unclear", "the book in force was not seen to settle it"},
		},
		cells: table{
			intl: {pub("play-on", "9.1.2.3", fivb2025+"; "+fivb2013,
				"play on, even if the contact ends over the opponents' court").
				doubt("the tail about a contact that ends over the opponents' court is newer than 2013-16; its edition " +
					"is not pinned")},
			club: {mem("play-on", "9.1.2.3",
				"play on").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("play-on", "14.3.2",
				"play on").
				doubt("older books had a replay; confidence low-medium")},
			scho: {mem("unclear", "9-4; 9-8",
				"unclear: play on in recent practice, replay in older books").
				doubt("play on in recent practice, replay in older books; confidence low")},
		},
	},
	{
		Param: "joust.goes-out",
		Title: "Ball goes out after opponents' simultaneous touch",
		Doc:   "Whose fault it is when the ball goes out after a simultaneous touch by opponents.",
		Values: []Value{
			{"opposite-side", "the team on the side opposite to where it lands"},
			{"same-side", "the team on the side where it lands"},
		},
		cells: table{
			intl: {pub("opposite-side", "9.1.2.2", fivb2025,
				"fault of the team on the side opposite to where it lands")},
			club: {mem("opposite-side", "9.1.2.2",
				"fault of the team on the side opposite to where it lands")},
			coll: {mem("opposite-side", "14.3.2.2",
				"fault of the team on the side opposite to where it lands").
				doubt("from memory, confidence medium; text cut in source")},
			scho: {mem("opposite-side", "9-4",
				"fault of the team on the side opposite to where it lands").
				doubt("from memory, confidence medium")},
		},
	},
	{
		Param: "joust.next-hits",
		Title: "Opponents touch together above the net, ball stays in",
		Doc: "What hits the receiving team has when opponents touched the ball together above the net and it " +
			"stays in play.",
		Values: []Value{
			{"three-fresh", "three new hits"},
			{"count-goes-on", "what is left of its three"},
		},
		cells: table{
			intl: {pub("three-fresh", "9.1.2.2", fivb2025,
				"side that receives the ball gets three fresh hits; any player may play it next")},
			club: {mem("three-fresh", "9.1.2.2",
				"side that receives the ball gets three fresh hits; any player may play it next")},
			coll: {pub("three-fresh", "14.3.2.1", ncaa2012Playing,
				"three fresh contacts")},
			scho: {mem("three-fresh", "9-4",
				"fresh three hits for the side that receives it").
				doubt("from memory, confidence medium-high")},
		},
	},
	{
		Param: "joust.next-player",
		Title: "Next player after opponents touch together",
		Doc:   "Whether a player of the simultaneous touch may be the next to play the ball.",
		Values: []Value{
			{"any", "any player may"},
			{"others-only", "only a player who did not touch it"},
		},
		cells: table{
			intl: {pub("any", "9.1.2.2", fivb2025,
				"any player may play it next")},
			club: {mem("any", "9.1.2.2",
				"any player may play it next")},
			coll: {mem("any", "14.3.2.1",
				"any player may play it next; it is the first of the team's three").
				doubt("the next player is not named in the text seen")},
			scho: {mem("any", "9-4",
				"any player may play it next; it is the first of the team's three").
				doubt("the next player is not named in the text seen")},
		},
	},
	{
		Param: "net.ball-pushed-by-both",
		Title: "Opponents press on the same ball through the net mesh",
		Doc:   "Opponents press on the same ball through the mesh of the net.",
		Values: []Value{
			{"judge-separately", "judge net contact, hits and prolonged contact each by its own rule"},
			{"unclear", "no text on it was seen"},
		},
		cells: table{
			intl: {mem("judge-separately", "10.3; 11.3",
				"text silent: net contact, hits and prolonged contact are judged separately").
				doubt("from memory, confidence low")},
			club: {mem("judge-separately", "10.3",
				"text silent: net contact, hits and prolonged contact are judged separately").
				doubt("from memory, confidence low; inherited from the international text, not seen")},
			coll: {mem("unclear", "15",
				"text not seen").
				doubt("from memory, confidence low")},
			scho: {mem("unclear", "9-6-7",
				"text not seen; any player contact with the net itself is a net foul").
				doubt("from memory, confidence low")},
		},
	},
}
