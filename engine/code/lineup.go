package code

// lineupRows are the rows about the order of service and who is missing in it.
var lineupRows = []Row{
	{
		Param: "lineup.officials-error",
		Title: "Wrong order given by the officials",
		Doc:   "An official or the table gives a team a wrong order of service, and it is found after points.",
		Values: []Value{
			{"until-opponents-serve", "corrected until the opponents have served: points of the term come off, no loss of rally"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "7.7", "not stated").doubt("no line seen")},
			club: {mem("not-stated", "7.7", "not stated").doubt("no line seen")},
			coll: {mem("not-stated", "10.3", "not stated").doubt("no line seen")},
			scho: {pub("until-opponents-serve", "6-4; 8-1", schoolWrongOrder,
				"an official's error may be put right until the opponents serve: the points come off, the right player "+
					"serves, and the rally is not lost").
				doubt("an answer in a forum; the article was not seen; confidence medium")},
		},
	},
	{
		Param: "lineup.vacant-serves",
		Title: "Vacant position reaches the serve",
		Doc:   "A team that plays with fewer than six has its vacant position rotate to serve.",
		Values: []Value{
			{"loss-of-rally", "point and service to the opponents, then play goes on"},
			{"incomplete-team", "a team with fewer than six is incomplete and loses the set"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("incomplete-team", "6.4.3; 7.3.1",
				"six players must always be in play; a team with fewer is incomplete and loses the set")},
			club: {mem("not-stated", "6.4.3; 7.3.1", "not stated").doubt("club competitions may let five play; no line seen")},
			coll: {mem("not-stated", "10", "not stated").doubt("no line seen")},
			scho: {pub("loss-of-rally", "6-4; 8-2", schoolColumn,
				"point and service to the opponents each time the vacant position reaches right back").
				doubt("a newspaper column's answer; the article was not seen; confidence medium-high")},
		},
	},
}
