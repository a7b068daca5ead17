package lookup

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// crewEntries are the crew's own work: who decides, what is waited for, the
// meeting before the match, what can still be corrected.
var crewEntries = []Entry{
	{
		ID: "card-by-second-referee", Title: "cards by the second referee", Ask: "May the second referee show a card?",
		Words:  []string{"r2 card may | give show red-card yellow-card coach player", "r2 yellow-card may | give show coach player", "r2 red-card may | give show coach player", "who show card | give may red-card yellow-card"},
		Params: []code.Param{"crew.cards"},
		says:   by("crew.cards", clause{"first-referee", "no: the first referee alone shows cards"}),
	},
	{
		ID: "check-before-serve", Title: "the scan before the serve", Ask: "What does the crew check before the serve?",
		Words:  []string{"check before-serve | what-is r1 r2 must crew scan"},
		Params: []code.Param{"crew.wait-hazard"},
		says: by("crew.wait-hazard", clause{"hazards-only",
			"requests and benches, both teams in place and the alignment, who is front row, the libero, the line judges, a clear floor"}),
	},
	{
		ID: "captains-at-toss", Title: "captains at the coin toss", Ask: "Must the captains attend the coin toss?",
		Words:  []string{"coin-toss captain must | attend be-there", "coin-toss captain attend | must may"},
		Params: []code.Param{"crew.pre-match-captains"},
		says:   by("crew.pre-match-captains", clause{"attend", "yes: captains attend"}),
	},
	{
		ID: "coin-toss-assistant", Title: "assistant at the coin toss", Ask: "May the assistant attend the coin toss?",
		Words:  []string{"coin-toss assistant | may attend head-coach late instead come", "coin-toss assistant may attend | head-coach late instead come"},
		Params: []code.Param{"crew.pre-match-coach"},
		says:   by("crew.pre-match-coach", clause{"assistant-may", "yes: the assistant may, and stands for the head coach"}),
	},
	{
		ID: "coin-toss-attendance", Title: "who attends the coin toss", Ask: "May the assistant attend the coin toss, and must the captains?",
		Words:  []string{"coin-toss assistant captain | must may attend head-coach late instead come be-there", "who attend coin-toss | must"},
		Params: []code.Param{"crew.pre-match-coach", "crew.pre-match-captains"},
		says: joined("; ", by("crew.pre-match-coach", clause{"assistant-may", "yes, the assistant may"}),
			by("crew.pre-match-captains", clause{"attend", "yes, captains attend"})),
	},
	{
		ID: "coin-toss-call", Title: "calling the teams to the coin toss", Ask: "Does the first referee walk to each bench for the coin toss?",
		Words:  []string{"coin-toss walk bench | r1 captain get each must may to", "toss walk bench captain | r1 get each must may to"},
		Params: []code.Param{"crew.pre-match-call"},
		says:   by("crew.pre-match-call", clause{"double-whistle", "no: double whistle, coin raised, meet at the table"}),
	},
	{
		ID: "explanation", Title: "who may ask for an explanation", Ask: "Who may ask the officials for an explanation?",
		Words:  []string{"who ask explanation | may r1 official speak-to", "who speak-to official | may r1 captain", "who speak-to r1 | may official"},
		Params: []code.Param{"team.captain-speaks"},
		says: by("team.captain-speaks", clause{"captain", "the game captain alone, when the ball is dead"},
			clause{"captain-and-coach", "the playing captain, and the head coach within the rules of the bench"}),
	},
	{
		ID: "line-judge-in-the-way", Title: "line judge where the server stands", Ask: "Who gives way when the server wants the line judge's corner?",
		Words:  []string{"line-judge server spot | want refuse who-decides serve stand service-zone of-zone in-way says win be", "line-judge serve in-way | spot stand who-decides server must refuse"},
		Params: []code.Param{"crew.line-judge-in-the-way"},
		says:   by("crew.line-judge-in-the-way", clause{"judge-steps-aside", "the server: the line judge steps aside for the serve and back after it"}),
	},
	{
		ID: "officials-differ", Title: "officials who differ", Ask: "Who decides when the officials differ?",
		Words: []string{"r1 r2 who-decides | signal see says thing no-touch out in line-judge discreet clean not differ",
			"r1 line-judge who-decides | signal see says out in thing not clean differ", "r2 line-judge who-decides | r1 signal see says out in thing not clean discreet differ",
			"official differ who-decides | r1 r2 line-judge", "r2 line-judge go-with | r1 signal see says out in thing not clean discreet", "r1 r2 go-with | signal see says out in thing not clean discreet"},
		Params:  []code.Param{"crew.final-decision"},
		says:    by("crew.final-decision", clause{"first-referee", "R1: the first referee decides, and may take the word of whoever saw it best"}),
		measure: []string{"who-decides"},
	},
	{
		ID: "overrule", Title: "overruling a line judge or the second referee", Ask: "May the first referee overrule the other officials?",
		Words:  []string{"< may r1 overrule | line-judge r2 out in says official", "< may overrule line-judge", "< may overrule r2"},
		Params: []code.Param{"crew.final-decision"},
		says:   by("crew.final-decision", clause{"first-referee", "yes: the first referee's decision is final"}),
	},
	{
		ID: "overrule-first-referee", Title: "overruling the first referee", Ask: "May the second referee or a line judge overrule the first referee?",
		Words:  []string{"< may r2 overrule r1", "< may line-judge overrule r1"},
		Params: []code.Param{"crew.final-decision"},
		says:   by("crew.final-decision", clause{"first-referee", "no: the first referee's decision is final"}),
	},
	{
		ID: "point-to-the-wrong-team", Title: "point given to the wrong team", Ask: "Can a point given to the wrong team be corrected after it has served again?",
		Words:  []string{"point-given mistake serve more | number noticed table has", "point-given mistake served-more | number noticed table has"},
		Params: []code.Param{"crew.point-correction"},
		says:   by("crew.point-correction", clause{"until-opponents-serve", "too late: the score stands, and the team that serves keeps serving"}),
	},
	{
		ID: "table-reports-wrong-server", Title: "wrong server reported by the table", Ask: "What is checked first when the table reports a wrong server?",
		Words:  []string{"table wrong-server check-first | report no-subs rotated rotate number out-of-turn says what-is to"},
		Params: []code.Param{"crew.line-up-report"},
		says:   by("crew.line-up-report", clause{"sheets-first", "the line-up sheet against the score sheet, before any whistle"}),
	},
	{
		ID: "wait-before-serve", Title: "what the serve waits for", Ask: "Does the serve wait for %s?",
		Words: []string{"wait hazard=* | before-serve r1 player serve to must", "wait hazard=* may | before-serve r1 player serve", "wait dawdle=* | before-serve r1 player serve still to must huddle", "wait dawdle=* may | before-serve r1 player serve still",
			"authorise hazard=* may | before-serve player", "authorise dawdle=* may | before-serve player still"},
		Params: []code.Param{"crew.wait-hazard"}, of: oneOf("shoelace", "wet-floor", "loose-ball", "huddle", "hair", "slow-walk"),
		says: func(r *engine.Read, of string) string {
			v := r.Param("crew.wait-hazard")
			switch of {
			case "shoelace", "wet-floor", "loose-ball":
				return pick(v, clause{"hazards-only", "yes: it is a hazard, the serve waits until it is mended"})
			}
			return pick(v, clause{"hazards-only", "no: only a hazard is waited for; authorise the serve"})
		},
	},
}
