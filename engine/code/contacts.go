package code

// contactRows are the rows about how often, by whom and how the ball may be touched.
var contactRows = []Row{
	{
		Param: "hits.assisted",
		Title: "Assisted hit",
		Doc:   "A player takes support from a teammate or an object to reach the ball inside the playing area.",
		Values: []Value{
			{"fault", "an assisted hit"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "9.1.3; 9.3.2", fivb2025,
				"fault inside the playing area to take support from teammate or structure; holding a teammate "+
					"back from a net/line fault is legal")},
			club: {mem("fault", "9.1.3",
				"fault inside the playing area to take support from teammate or structure; holding a teammate "+
					"back from a net/line fault is legal")},
			coll: {mem("fault", "14; 4",
				"fault to take support from a teammate or an object")},
			scho: {pub("fault", "2-4-1b", schoolChanges2018+"; "+schoolExams,
				"fault to gain advantage from bench, table, teammate or any team member")},
		},
	},
	{
		Param: "hits.assisted-hold-back",
		Title: "Holding a teammate back",
		Doc:   "A player holds or stops a teammate who is about to touch the net or cross the centre line.",
		Values: []Value{
			{"legal", "no fault"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {pub("legal", "9.1.3; 9.3.2", fivb2025,
				"holding a teammate back from a net or line fault is legal")},
			club: {mem("legal", "9.1.3",
				"holding a teammate back from a net or line fault is legal")},
			coll: {mem("not-stated", "14; 4",
				"no line about holding a teammate back seen").
				doubt("not seen")},
			scho: {mem("not-stated", "2-4-1b",
				"no line about holding a teammate back seen").
				doubt("not seen")},
		},
	},
	{
		Param: "hits.body-parts",
		Title: "Body parts allowed",
		Doc:   "With what part of the body the ball may be played.",
		Values: []Value{
			{"any", "any part, the foot included"},
			{"waist-up", "any part from the waist up"},
		},
		cells: table{
			intl: {pub("any", "9.2.1", fivb2025,
				"any")},
			club: {mem("any", "9.2.1",
				"any")},
			coll: {pub("any", "14.2.1; 14.1.2", ncaa2012Playing,
				"any; ball touched only by hair is no contact")},
			scho: {pub("any", "9-4", schoolExams,
				"any, foot included")},
		},
	},
	{
		Param: "hits.caught-thrown",
		Title: "Caught / lifted / prolonged contact",
		Doc:   "A ball that comes to rest in the contact or is carried, on any hit.",
		Values: []Value{
			{"fault", "caught or thrown"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "9.2.2; 9.3.3", fivb2025+"; "+fivbCasebook,
				"fault on any hit, including a block and the first hit; judged by rebound, not hand shape "+
					"(palm-up is legal)")},
			club: {mem("fault", "9.2.2",
				"fault on any hit")},
			coll: {pub("fault", "14.2.2", ncaa2012Playing,
				"fault; stays a fault on second hits")},
			scho: {pub("fault", "9-4", schoolSignals,
				"fault when the ball visibly comes to rest or the contact is prolonged; the second-hit relief of "+
					"2025-26 does not cover a lift")},
		},
	},
	{
		Param: "hits.first-multiple",
		Title: "Multiple contacts on the first team hit",
		Doc:   "Several touches in a row by one player in one action on the team's first hit.",
		Values: []Value{
			{"legal-in-one-action", "legal when they are one action"},
			{"fault", "a double contact"},
		},
		cells: table{
			intl: {pub("legal-in-one-action", "9.2.3.2", fivb2025+"; "+fivbCasebook,
				"legal in one action (serve receive, attack receive, ball off either block); a two-phase "+
					"catch-then-throw is still a catch")},
			club: {mem("legal-in-one-action", "9.2.3.2",
				"legal in one action (serve receive, attack receive, ball off either block); a two-phase "+
					"catch-then-throw is still a catch")},
			coll: {pub("legal-in-one-action", "14.2.3.1", ncaa2012Playing,
				"legal in one attempt; prolonged contact is a fault")},
			scho: {pub("legal-in-one-action", "9-4-8a,b", schoolColumn,
				"legal in one attempt; prolonged contact is a fault")},
		},
	},
	{
		Param: "hits.hair-contact",
		Title: "Ball touches only hair",
		Doc:   "Whether a ball that touches only hair has been contacted.",
		Values: []Value{
			{"no-contact", "not a contact"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "9.2.1",
				"no line about hair").
				doubt("no line found is not the same as none")},
			club: {mem("not-stated", "9.2.1",
				"no line about hair").
				doubt("not seen")},
			coll: {pub("no-contact", "14.2.1; 14.1.2", ncaa2012Playing,
				"a ball touched only by hair is no contact")},
			scho: {mem("not-stated", "9-4",
				"no line about hair seen").
				doubt("not seen")},
		},
	},
	{
		Param: "hits.max",
		Title: "Team hits allowed",
		Doc:   "How many hits a team has to return the ball, a completed block not counted.",
		Unit:  "hits",
		cells: table{
			intl: {pub("3", "9.1; 9.3.1", fivb2025,
				"3, plus the block")},
			club: {mem("3", "9.1",
				"3, plus the block")},
			coll: {pub("3", "14.1.1", ncaa2012Playing,
				"3, plus the block")},
			scho: {pub("3", "9-4; 9-5-1", schoolAttack+"; "+schoolColumn,
				"3, not counting a completed block")},
		},
	},
	{
		Param: "hits.same-player-twice",
		Title: "Same player twice in succession",
		Doc: "Whether one player may touch the ball twice in a row, apart from the exceptions that have rows " +
			"of their own.",
		Values: []Value{
			{"fault", "it is a double contact"},
			{"legal", "the same player may play it again"},
		},
		cells: table{
			intl: {pub("fault", "9.1.1; 9.3.4; 14.4.2", fivb2025,
				"fault, except after own block and one-action multiple contacts")},
			club: {mem("fault", "9.1.1",
				"fault, except after own block and one-action multiple contacts")},
			coll: {pub("fault", "14.1.3; 14.3.3; 14.6.2.2", ncaa2012Playing,
				"fault, except after a block or a simultaneous contact with a teammate")},
			scho: {mem("fault", "9-4",
				"fault, except after a block and in a simultaneous contact with a teammate")},
		},
	},
	{
		Param: "hits.second-double",
		Title: "Multiple contacts on the second team hit",
		Doc:   "Several touches in a row by one player in one action on the team's second hit.",
		Values: []Value{
			{"fault", "a double contact"},
			{"allowed-if-teammate-next", "legal in one attempt when a teammate is the next to touch the ball"},
		},
		cells: table{
			intl: {pub("fault", "9.2.3; 9.3.4", fivb2025,
				"fault")},
			club: {
				pub("fault", "9.2.3", press2025,
					"fault: multiple contacts on a second hit were a double contact").until(2024).
					doubt("the start season of the relief is unconfirmed: it may already have been in force in 2024-25"),
				pub("allowed-if-teammate-next", "9.2.3", press2025,
					"allowed in one attempt when a teammate plays the ball next").since(2025).
					doubt("adoption seen only in the press and a weak list; exact words and start season unconfirmed " +
						"(2024-25 or 2025-26); confidence medium"),
			},
			coll: {
				pub("fault", "14.2.3.2", ncaa2024,
					"fault: multiple contacts on a second hit were a double contact (a trial of the relief ran in "+
						"spring 2022)").until(2023),
				pub("allowed-if-teammate-next", "14.2.3.2", ncaa2024,
					"not a fault in a single attempt if the ball is next contacted by a teammate; if it goes over the "+
						"net it is a fault").since(2024),
			},
			scho: {
				pub("fault", "9-4-8c", schoolChanges2025,
					"fault: multiple contacts on a second hit were a double contact").until(2024),
				pub("allowed-if-teammate-next", "9-4-8c", schoolChanges2025,
					"allowed in one attempt when the next contact is by a teammate on the same side of the net").since(2025),
			},
		},
	},
	{
		Param: "hits.second-double-goes-over",
		Title: "Second-hit double then ball crosses / opponent plays it next",
		Doc:   "A second-hit double after which the ball crosses the net or an opponent is the next to touch it.",
		Values: []Value{
			{"fault", "a double contact"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "9.3.4", fivb2025,
				"fault anyway (the double itself)")},
			club: {pub("fault", "9.2.3", press2025,
				"fault: relief for a second-hit double ends when the ball goes over").
				doubt("confidence medium")},
			coll: {pub("fault", "14.2.3.2", ncaa2024,
				"fault, point to the opponents; a ball that an opponent touches first in the plane was not next "+
					"contacted by a teammate either").
				doubt("that an opponent's touch in the plane ends the relief is a reading")},
			scho: {pub("fault", "9-4-8c", schoolChanges2025,
				"fault; a ball that an opponent touches first was not next contacted by a teammate either").
				doubt("that an opponent's touch in the plane ends the relief is a reading")},
		},
	},
	{
		Param: "hits.teammates-simultaneous",
		Title: "Two teammates touch together",
		Doc:   "How many hits it is when two teammates touch the ball together, a block apart.",
		Values: []Value{
			{"one", "one hit"},
			{"two", "two hits (three touch: three)"},
		},
		cells: table{
			intl: {pub("two", "9.1.2.1", fivb2025,
				"counts as two (three) hits, except on a block; if only one actually touches, one hit")},
			club: {mem("two", "9.1.2.1",
				"counts as two hits, except on a block").
				doubt("from memory, confidence medium-high; inherited from the international text, not seen")},
			coll: {pub("one", "14.1.3; 14.3.3", ncaa2012Playing,
				"counts as one; any of them may play next").
				doubt("exception published, 'one contact' wording memory")},
			scho: {mem("one", "9-4",
				"counts as one; any of them may play next").
				doubt("from memory, confidence medium-high; article 9-4-6 or 9-4-7, number uncertain")},
		},
	},
	{
		Param: "hits.teammates-simultaneous-next",
		Title: "Next player after teammates touch together",
		Doc:   "Who may play the ball next after teammates touched it together.",
		Values: []Value{
			{"any", "any player, one of those who touched it included"},
			{"others-only", "only a player who did not touch it"},
		},
		cells: table{
			intl: {pub("others-only", "9.1.2.1", fivb2025,
				"counted as two hits, so a player who touched it may not be the next to touch it").
				doubt("a reading of the consecutive-hit rule; the text does not name the next player")},
			club: {mem("others-only", "9.1.2.1",
				"counted as two hits, so a player who touched it may not be the next to touch it").
				doubt("a reading of the consecutive-hit rule, inherited from the international text, not seen")},
			coll: {pub("any", "14.1.3; 14.3.3", ncaa2012Playing,
				"any of them may play next").
				doubt("exception published, 'one contact' wording memory")},
			scho: {mem("any", "9-4",
				"any of them may play next").
				doubt("from memory, confidence medium-high; article 9-4-6 or 9-4-7, number uncertain")},
		},
	},
	{
		Param: "hits.third-double",
		Title: "Multiple contacts on the third hit",
		Doc:   "Several touches in a row by one player on the team's third hit.",
		Values: []Value{
			{"fault", "a double contact"},
			{"legal-in-one-action", "legal when they are one action"},
		},
		cells: table{
			intl: {pub("fault", "9.3.4", fivb2025,
				"fault")},
			club: {mem("fault", "9.3.4",
				"fault")},
			coll: {pub("fault", "14.2.3.2", ncaa2024,
				"fault")},
			scho: {pub("fault", "9-4-8", schoolChanges2025,
				"fault")},
		},
	},
}
