package code

// netRows are the rows about players at the net.
var netRows = []Row{
	{
		Param: "net.action-of-playing",
		Title: "What counts as playing action",
		Doc:   "What belongs to the action of playing the ball.",
		Values: []Value{
			{"take-off-to-landing", "take-off, hit or attempt, and a secure landing"},
			{"irrelevant", "it does not matter, any contact counts"},
		},
		cells: table{
			intl: {pub("take-off-to-landing", "11.3.1; 11.4.4", fivb2025+"; "+canadaGuidelines,
				"take-off, hit or attempt, and a secure landing ready for a new action; a player near the ball "+
					"who tries to play it counts even without touching it. A brush after a secure landing is not a "+
					"fault")},
			club: {mem("take-off-to-landing", "11.3.1",
				"take-off, hit or attempt, and a secure landing ready for a new action; a player near the ball "+
					"who tries to play it counts even without touching it")},
			coll: {mem("take-off-to-landing", "15.2",
				"take-off, hit or attempt, and a secure landing").
				doubt("from memory, confidence medium-high")},
			scho: {pub("irrelevant", "9-6-7", refereeNet,
				"not relevant: any contact counts")},
		},
	},
	{
		Param: "net.after-landing",
		Title: "Net brushed after a secure landing",
		Doc: "A player brushes the net after a secure landing, ready for a new action, without hindering " +
			"anyone.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "a net fault like any other"},
		},
		cells: table{
			intl: {pub("legal", "11.3.1; 11.4.4", fivb2025+"; "+canadaGuidelines,
				"a brush after a secure landing is not a fault")},
			club: {mem("legal", "11.3.1",
				"a brush after a secure landing is not a fault")},
			coll: {mem("legal", "15.2",
				"a brush after a secure landing is not a fault").
				doubt("from memory, confidence medium-high")},
			scho: {pub("fault", "9-6-7", refereeNet,
				"any contact is a fault, after a landing too")},
		},
	},
	{
		Param: "net.antenna-by-player",
		Title: "Player touches antenna",
		Doc:   "When it is a fault for a player to touch an antenna.",
		Values: []Value{
			{"playing-action", "only in the action of playing the ball, or when it interferes with play"},
			{"always", "whenever the ball is in play"},
		},
		cells: table{
			intl: {pub("playing-action", "11.4.4", fivb2025,
				"fault when done while playing the ball or when it interferes")},
			club: {mem("playing-action", "11.4.4",
				"fault when done while playing the ball or when it interferes")},
			coll: {mem("playing-action", "15.2",
				"fault when done while playing the ball or when it interferes").
				doubt("from memory, confidence medium-high")},
			scho: {pub("always", "9-6-7", refereeNet,
				"always a fault while ball is in play")},
		},
	},
	{
		Param: "net.ball-driven",
		Title: "Ball drives the net into a player",
		Doc:   "The ball drives the net into a player.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "a net fault"},
		},
		cells: table{
			intl: {pub("legal", "11.3.3", fivb2025,
				"no fault")},
			club: {mem("legal", "11.3.3",
				"no fault")},
			coll: {mem("legal", "15.2",
				"no fault")},
			scho: {pub("legal", "9-6-7a", schoolColumn+"; "+refereeNet,
				"no fault")},
		},
	},
	{
		Param: "net.ball-entirely-opp-side",
		Title: "Hitting (not blocking) a ball wholly on opponents' side",
		Doc:   "A player other than a blocker touches a ball that is wholly on the opponents' side.",
		Values: []Value{
			{"fault", "over the net"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "13.3.1; 13.2.1", fivb2025,
				"fault: attack contact must be in own playing space")},
			club: {mem("fault", "13.3.1",
				"fault")},
			coll: {mem("fault", "14.5; 15.1",
				"fault")},
			scho: {pub("fault", "9-6-3; 9-6-4", schoolExams,
				"fault unless it is a legal block")},
		},
	},
	{
		Param: "net.ball-in-plane",
		Title: "Ball partly in the plane of the net",
		Doc:   "Who may play a ball that is partly in the plane of the net.",
		Values: []Value{
			{"either-side", "either team may play it"},
			{"own-side-only", "only the team on whose side most of it is"},
		},
		cells: table{
			intl: {mem("either-side", "11.1; 13.2.1",
				"either side may play it")},
			club: {pub("either-side", "11.1", usaNetPlay,
				"either side may play it")},
			coll: {mem("either-side", "15.1",
				"either side may play it")},
			scho: {mem("either-side", "9-6",
				"either side may play it")},
		},
	},
	{
		Param: "net.contact-rule",
		Title: "Player touches the net",
		Doc:   "When it is a fault for a player to touch the net between the antennas.",
		Values: []Value{
			{"playing-action", "only in the action of playing the ball, or when it interferes with play"},
			{"always", "whenever the ball is in play"},
		},
		cells: table{
			intl: {pub("playing-action", "11.3.1; 11.4.4", fivb2025+"; "+fivbChanges2015,
				"fault only between the antennas and during the action of playing the ball, or when it interferes "+
					"with play")},
			club: {mem("playing-action", "11.3",
				"fault only between the antennas and during the action of playing the ball, or when it interferes "+
					"with play").
				doubt("inherited from the international text, not seen")},
			coll: {mem("playing-action", "15.2",
				"fault between/including antennas during the action of playing the ball or when it interferes").
				doubt("from memory, confidence medium-high; a three-code article says only the high-school code is " +
					"'always'")},
			scho: {pub("always", "9-6-7", refereeNet+"; "+schoolColumn,
				"always a fault while the ball is in play: net, antenna or net cable, playing action or not; "+
					"loose hair and a net driven by the ball excepted")},
		},
	},
	{
		Param: "net.follow-through",
		Title: "Hand beyond the net after own hit",
		Doc:   "A hand passes beyond the net after the player's own hit, begun in the own space.",
		Values: []Value{
			{"legal", "no fault"},
			{"fault", "over the net"},
		},
		cells: table{
			intl: {pub("legal", "11.1.2", fivb2025,
				"legal if first contact was in own space and the ball was not caught/thrown")},
			club: {mem("legal", "11.1.2",
				"legal")},
			coll: {mem("legal", "15.1",
				"legal")},
			scho: {mem("legal", "9-6",
				"legal")},
		},
	},
	{
		Param: "net.hair",
		Title: "Hair touches the net",
		Doc:   "A player's hair touches the net.",
		Values: []Value{
			{"legal", "no fault"},
			{"legal-unless-affects-play", "no fault unless it affects play"},
		},
		cells: table{
			intl: {mem("legal-unless-affects-play", "11.3",
				"no fault unless it affects play (casebook idea)").
				doubt("from memory, confidence medium")},
			club: {mem("legal-unless-affects-play", "",
				"no fault unless it affects play").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("legal", "15.2",
				"no fault").
				doubt("from memory, confidence medium")},
			scho: {pub("legal", "9-6-7", refereeNet,
				"no fault (loose hair)")},
		},
	},
	{
		Param: "net.opponent-touched-over-net",
		Title: "Touching an opponent beyond the net",
		Doc:   "A player touches an opponent in the opponents' space above the net before the attack hit.",
		Values: []Value{
			{"fault", "over the net"},
			{"legal-unless-interferes", "no fault unless it interferes with play"},
		},
		cells: table{
			intl: {pub("fault", "11.1.1; 11.4.1", fivb2025,
				"touching an opponent in the opponents' space before the attack hit is a fault").
				doubt("the language versions of 11.1.1 and 11.4.1 differ: 'before' or 'before or during' the attack hit")},
			club: {mem("fault", "11.4.1",
				"touching an opponent in the opponents' space before the attack hit is a fault")},
			coll: {pub("legal-unless-interferes", "15.1", ncaa2024,
				"fault when it interferes; touching an opponent above the net is reviewable since 2024").
				doubt("whether the touch alone is a fault was not seen; confidence medium; rule number from memory")},
			scho: {pub("legal-unless-interferes", "9-6-3", refereeDaily,
				"legal without interference, even when hands brush after the set")},
		},
	},
	{
		Param: "net.outside-antennas-posts",
		Title: "Touching posts, cables or net outside the antennas",
		Doc:   "A player touches a post, a cable or the net outside the antennas.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes or gives support"},
			{"cables-fault", "a cable is a net fault, a post only when used for advantage"},
		},
		cells: table{
			intl: {pub("legal-unless-interferes", "11.3.2", fivb2025,
				"allowed unless it interferes (or is used as support to hit, 9.1.3)")},
			club: {mem("legal-unless-interferes", "11.3.2",
				"allowed unless it interferes (or is used as support to hit)")},
			coll: {mem("legal-unless-interferes", "15.2",
				"allowed unless it interferes or gives advantage").
				doubt("from memory, confidence medium-high")},
			scho: {pub("cables-fault", "9-6-7; 2-4-1b", refereeNet,
				"net cables: fault. Posts/standards: no net foul unless used for advantage").
				doubt("cables published, posts memory")},
		},
	},
	{
		Param: "net.reach-no-ball-touch",
		Title: "Reaching over without touching the ball",
		Doc:   "A player reaches over the net without touching the ball.",
		Values: []Value{
			{"legal-unless-interferes", "no fault unless it interferes with play"},
			{"fault", "over the net"},
		},
		cells: table{
			intl: {pub("legal-unless-interferes", "11.1.1; 11.4.1", fivb2025,
				"legal if there is no interference").
				doubt("the language versions of 11.1.1 and 11.4.1 differ: 'before' or 'before or during' the attack hit")},
			club: {mem("legal-unless-interferes", "11.4.1",
				"legal if there is no interference")},
			coll: {pub("legal-unless-interferes", "15.1", ncaa2024,
				"a fault only when it interferes").
				doubt("confidence medium; rule number from memory")},
			scho: {pub("legal-unless-interferes", "9-6-3", refereeDaily,
				"legal if no interference even when hands brush after the set")},
		},
	},
	{
		Param: "net.support-or-advantage",
		Title: "Using the net for support, holding it, gaining advantage",
		Doc:   "A player uses the net for support, holds it or gains an advantage by it.",
		Values: []Value{
			{"fault", "a fault at any time in the rally"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "11.4.4", fivb2025,
				"fault at any time in the rally between the antennas")},
			club: {mem("fault", "11.4.4",
				"fault")},
			coll: {mem("fault", "15.2",
				"fault")},
			scho: {pub("fault", "9-6-7", refereeNet,
				"fault (any contact)")},
		},
	},
}
