package code

// liberoRows are the rows about the libero.
var liberoRows = []Row{
	{
		Param: "libero.as-substitute",
		Title: "Libero as exceptional substitute",
		Doc:   "Whether the libero may go in for an injured player when nobody else is left.",
		Values: []Value{
			{"last", "yes, when nobody else is left"},
			{"not-allowed", "no"},
			{"unknown", "not seen"},
		},
		cells: table{
			intl: {mem("not-allowed", "15.7",
				"neither a libero nor the player whom the libero replaces may come in by an exceptional substitution").
				doubt("from memory, confidence medium")},
			club: {mem("unknown", "",
				"not known").
				doubt("no text on it was seen")},
			coll: {mem("unknown", "",
				"not known").
				doubt("no text on it was seen")},
			scho: {pub("last", "10-3-6; 10-4", officialsForum,
				"the order of exceptional substitutes applies, the libero last").
				doubt("confidence medium; the wording was not seen")},
		},
	},
	{
		Param: "libero.attack",
		Title: "Libero attack",
		Doc:   "The libero completes an attack on a ball entirely above the net.",
		Values: []Value{
			{"fault", "a fault from anywhere"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "19.3.1.2; 13.3.5", fivb2025,
				"fault to complete an attack from anywhere if the ball is entirely above the net at contact")},
			club: {pub("fault", "19.3.1", refereeLibero,
				"fault to complete an attack from anywhere if the ball is entirely above the net at contact")},
			coll: {pub("fault", "12.1.2", refereeLibero,
				"fault to complete an attack from anywhere if the ball is entirely above the net at contact")},
			scho: {pub("fault", "9-5-6", refereeLibero,
				"fault to complete an attack from anywhere if the ball is entirely above the net at contact")},
		},
	},
	{
		Param: "libero.block-attempt",
		Title: "Libero block or attempt",
		Doc:   "The libero blocks or tries to block.",
		Values: []Value{
			{"fault", "a fault, even without touching the ball"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "19.3.1.3; 14.6.6", fivb2025,
				"fault even without touching the ball")},
			club: {pub("fault", "19.3.1", refereeLibero+"; "+refereeBlocks,
				"fault even as an attempt")},
			coll: {pub("fault", "12.1.2", refereeLibero+"; "+refereeBlocks,
				"fault even as an attempt")},
			scho: {pub("fault", "9-5-6", refereeLibero+"; "+refereeBlocks,
				"fault even as an attempt")},
		},
	},
	{
		Param: "libero.captain",
		Title: "Libero as captain",
		Doc:   "Whether the libero may be captain.",
		Values: []Value{
			{"allowed", "yes"},
			{"not-allowed", "no"},
		},
		cells: table{
			intl: {pub("allowed", "5; 19", fivb2025,
				"allowed")},
			club: {mem("allowed", "5",
				"allowed").
				doubt("from memory, confidence medium")},
			coll: {mem("allowed", "5; 12",
				"allowed").
				doubt("from memory, confidence medium")},
			scho: {pub("allowed", "10-4; 6-4", schoolLibero2005,
				"allowed")},
		},
	},
	{
		Param: "libero.count",
		Title: "Liberos per team",
		Doc:   "How many liberos a team may name; libero.count-scope says for what.",
		Unit:  "liberos",
		cells: table{
			intl: {pub("2", "19.1", fivb2025,
				"up to 2 on the score sheet for the match; one on court. Two are required if more than 12 players "+
					"are listed at senior official events")},
			club: {mem("2", "19.1",
				"up to 2").
				doubt("from memory, confidence medium-high")},
			coll: {
				pub("1", "12.1.1", ncaa2024,
					"1").until(2023),
				pub("2", "12.1.1", ncaa2024,
					"up to 2, on the line-up sheet").since(2024),
			},
			scho: {
				pub("1", "6-4-2; 10-4-3a,d", schoolChanges2026+"; "+schoolComments2026,
					"0 or 1").until(2025),
				pub("2", "6-4-2; 10-4-3a,d", schoolChanges2026+"; "+schoolComments2026,
					"0, 1 or 2, on the line-up sheet").since(2026),
			},
		},
	},
	{
		Param: "libero.count-scope",
		Title: "Liberos named for",
		Doc:   "For how long liberos are named.",
		Values: []Value{
			{"match", "for the match"},
			{"set", "for one set, on the line-up sheet"},
		},
		cells: table{
			intl: {pub("match", "19.1", fivb2025,
				"on the score sheet for the match")},
			club: {mem("match", "19.1",
				"for the match").
				doubt("from memory, confidence medium-high")},
			coll: {pub("set", "12.1.1", ncaa2024,
				"per set, on the line-up sheet")},
			scho: {pub("set", "6-4-2; 10-4-3a,d", schoolChanges2026+"; "+schoolComments2026,
				"per set, on the line-up sheet")},
		},
	},
	{
		Param: "libero.finger-set-front",
		Title: "Attack after libero's overhand finger pass",
		Doc: "A teammate attacks a ball entirely above the net that came off the libero's overhand finger pass " +
			"in the front zone.",
		Values: []Value{
			{"fault", "the attacker's fault once the attack is complete"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "19.3.1.4; 13.3.6; 1.4.1", fivb2025,
				"fault by the attacker to complete an attack entirely above the net off a libero's overhand "+
					"finger pass made in the front zone or its extension past the side lines; free if made behind it")},
			club: {pub("fault", "19.3.1", refereeLibero,
				"fault by the attacker to complete an attack entirely above the net off a libero's overhand "+
					"finger pass made in the front zone or its extension past the side lines; free if made behind it")},
			coll: {pub("fault", "12.1.2", refereeLibero+"; "+ncaa2022,
				"fault by the attacker to complete an attack entirely above the net off a libero's overhand "+
					"finger pass made in the front zone; reviewable since 2022")},
			scho: {pub("fault", "9-5-6", refereeLibero,
				"fault by the attacker to complete an attack entirely above the net off a libero's overhand "+
					"finger pass made in the front zone or its extension past the side lines; free if made behind it")},
		},
	},
	{
		Param: "libero.illegal-replacement-after",
		Title: "Illegal libero replacement found after the serve",
		Doc:   "An illegal libero replacement found after the dividing moment.",
		Values: []Value{
			{"illegal-substitution", "as an illegal substitution: point and service, corrected, points scored since cancelled"},
			{"position-fault", "a fault of position: loss of rally"},
		},
		cells: table{
			intl: {pub("illegal-substitution", "19.3.2.9; 15.9.2", fivb2025,
				"as an illegal substitution: point and service, corrected, points scored since cancelled")},
			club: {pub("position-fault", "19.3.2.9; 7.5", stateQA,
				"positional fault").
				doubt("confidence medium")},
			coll: {pub("position-fault", "12.2; 6.3.2.11", stateQA+"; "+refereeLibero+"; "+ncaa2002,
				"position fault")},
			scho: {pub("position-fault", "10-4", schoolChanges2025,
				"illegal alignment, loss of rally and point")},
		},
	},
	{
		Param: "libero.illegal-replacement-before",
		Title: "Illegal libero replacement found before the serve",
		Doc:   "An illegal libero replacement that officials stop before the dividing moment.",
		Values: []Value{
			{"delay", "corrected, and a delay sanction"},
			{"correct", "corrected, no sanction"},
		},
		cells: table{
			intl: {pub("delay", "19.3.2.9; 15.9.2", fivb2025,
				"corrected, delay sanction")},
			club: {pub("delay", "19.3.2.9; 7.5", stateQA,
				"delay sanction if the officials step in").
				doubt("confidence medium")},
			coll: {pub("delay", "12.2; 6.3.2.11", stateQA+"; "+refereeLibero+"; "+ncaa2002,
				"delay sanction if the officials step in; the team may mend it first; an illegal libero server is "+
					"a delay sanction before contact")},
			scho: {pub("delay", "10-4", schoolChanges2025,
				"unnecessary delay")},
		},
	},
	{
		Param: "libero.illegal-replacement-cut-off",
		Title: "Illegal libero replacement: the dividing moment",
		Doc:   "The moment that divides a delay from a fault when a libero replacement was illegal.",
		Values: []Value{
			{"service-contact", "the service hit"},
			{"authorization", "the whistle or signal for service"},
		},
		cells: table{
			intl: {pub("service-contact", "19.3.2.9; 15.9.2", fivb2025,
				"noticed before the next rally, or after the service hit")},
			club: {pub("service-contact", "19.3.2.9; 7.5", stateQA,
				"before or after the service contact").
				doubt("confidence medium")},
			coll: {pub("service-contact", "12.2; 6.3.2.11", stateQA+"; "+refereeLibero+"; "+ncaa2002,
				"before or after the service contact; the team may mend it before contact")},
			scho: {
				pub("authorization", "10-4", schoolChanges2025,
					"before or after the authorization of service").until(2024),
				pub("service-contact", "10-4", schoolChanges2025,
					"before or after the service contact").since(2025),
			},
		},
	},
	{
		Param: "libero.injured",
		Title: "Injured or disqualified libero",
		Doc:   "Who goes on when the libero cannot.",
		Values: []Value{
			{"second-libero-first", "the second libero; another is designated only when none is left"},
			{"re-designation-allowed", "another libero may be designated"},
		},
		cells: table{
			intl: {pub("second-libero-first", "19.4", fivb2025,
				"second libero continues; re-designation only when none is left")},
			club: {mem("second-libero-first", "19.4",
				"the second libero continues; another is designated only when none is left").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {mem("re-designation-allowed", "12",
				"another libero may be designated once one is injured").
				doubt("from memory, confidence low-medium")},
			scho: {
				pub("re-designation-allowed", "10-4-3a,d", schoolChanges2026,
					"a regular player or a newly designated libero").until(2025).
					doubt("read in the 2026-27 change; the earlier wording was not seen"),
				pub("re-designation-allowed", "10-4-3a,d", schoolChanges2026,
					"injured: regular player, second libero, or a newly designated libero. Disqualified with two "+
						"designated: continue with one").since(2026),
			},
		},
	},
	{
		Param: "libero.penalty-between",
		Title: "Penalty point between two libero replacements",
		Doc:   "Whether a penalty point stands for the completed rally between two libero replacements.",
		Values: []Value{
			{"counts-as-rally", "as a completed rally"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {pub("counts-as-rally", "6.1.3; 19.3.2.1", fivbCasebookRequests,
				"a penalty is a completed rally; one that rotates the libero to the front row is named as an exception").
				doubt("a reading: the case is about requests")},
			club: {pub("counts-as-rally", "6.1.3; 19.3.2.1", usaBulletin,
				"a delay penalty or a red card counts as a completed rally").
				doubt("a reading: the bulletin is about requests")},
			coll: {pub("counts-as-rally", "12.2", ncaa2002,
				"a penalty point counts as a completed rally, so the libero may come back")},
			scho: {mem("not-stated", "",
				"not stated").
				doubt("no line seen")},
		},
	},
	{
		Param: "libero.rally-between",
		Title: "Rally required between two libero replacements",
		Doc:   "Whether a completed rally must lie between two libero replacements.",
		Values: []Value{
			{"required", "yes, a penalty that forces a rotation or a libero unable to play excepted"},
			{"waived-when-next-server", "yes, except when the libero is the next server"},
		},
		cells: table{
			intl: {pub("required", "19.3.2.1", fivb2025,
				"yes, a completed rally; exceptions: forced rotation by a penalty, or acting libero unable to "+
					"play")},
			club: {pub("waived-when-next-server", "19.3.2.1", stateQA+"; "+refereeLibero,
				"yes; no rally needed when the libero's next action is to serve").
				doubt("confidence medium-high")},
			coll: {pub("waived-when-next-server", "12.2", stateQA+"; "+ncaa2002,
				"yes; no rally needed when the libero's next action is to serve")},
			scho: {pub("waived-when-next-server", "10-4-5a", schoolLibero+"; "+refereeLibero,
				"yes; no rally needed when the libero is the next legal server")},
		},
	},
	{
		Param: "libero.second-serve-position",
		Title: "Libero serves in a second position",
		Doc:   "The libero serves in a second position of the order in one set.",
		Values: []Value{
			{"not-applicable", "the libero may not serve at all"},
			{"illegal-replacement", "an illegal replacement: a delay before the dividing moment, a position fault after it"},
		},
		cells: table{
			intl: {pub("not-applicable", "19.3.1.3", fivb2025,
				"the libero may not serve at all")},
			club: {pub("illegal-replacement", "19.3.2.9", refereeLibero,
				"illegal replacement: delay sanction if caught before contact; after contact treat as "+
					"positional/service-order fault").
				doubt("after-contact part memory")},
			coll: {pub("illegal-replacement", "6.3.2.11", refereeLibero+"; "+stateQA,
				"illegal replacement: delay sanction if caught before contact; after contact position fault")},
			scho: {
				pub("illegal-replacement", "10-4-5a", refereeLibero+"; "+schoolChanges2025+"; "+schoolLibero,
					"unnecessary delay when caught before the authorization signal; after it illegal alignment, loss "+
						"of rally and point").until(2024),
				pub("illegal-replacement", "10-4-5a", refereeLibero+"; "+schoolChanges2025+"; "+schoolLibero,
					"unnecessary delay when caught before the service contact; after it illegal alignment, loss of "+
						"rally and point").since(2025),
			},
		},
	},
	{
		Param: "libero.serve",
		Title: "Libero serving",
		Doc:   "Whether the libero may serve.",
		Values: []Value{
			{"not-allowed", "never"},
			{"one-position", "in one position of the order per set"},
		},
		cells: table{
			intl: {pub("not-allowed", "19.3.1.3", fivb2025,
				"not allowed")},
			club: {mem("one-position", "19.3",
				"allowed in one rotation position per set")},
			coll: {pub("one-position", "12.1.1", ncaa2024,
				"allowed in one position per set")},
			scho: {pub("one-position", "6-4-2; 10-4-5", schoolChanges2007,
				"allowed in one position in the order per set").
				doubt("with two liberos (2026-27), whether the one position is shared is not seen")},
		},
	},
	{
		Param: "libero.team-mends",
		Title: "Team that mends its own libero replacement",
		Doc:   "Whether a team may put an illegal libero replacement right by itself, before the serve, without a sanction.",
		Values: []Value{
			{"allowed", "yes, as long as the officials need not step in and play is not held up"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "19.3.2.9", "noticed before the next rally it is corrected with a delay sanction; nothing is said of a team that mends it first")},
			club: {pub("allowed", "19.3.2.9; 7.5", stateQA,
				"a sanction only if the officials step in").
				doubt("confidence medium")},
			coll: {pub("allowed", "12.2; 6.3.2.11", stateQA+"; "+ncaa2002,
				"the team may mend it before the contact of the serve")},
			scho: {mem("not-stated", "10-4", "an unnecessary delay before the contact of the serve; nothing is said of a team that mends it first")},
		},
	},
	{
		Param: "libero.timing",
		Title: "When a replacement may be made",
		Doc:   "Until when a libero replacement may be made.",
		Values: []Value{
			{"before-whistle-first-late-tolerated", "before the whistle for service; the first late one is let go with a word to the captain, a repeat is a delay"},
			{"before-authorization", "before the service is authorized"},
		},
		cells: table{
			intl: {pub("before-whistle-first-late-tolerated", "19.3.2.4-19.3.2.6", fivb2025,
				"ball dead and before the service whistle. After the whistle but before the hit, first time: let "+
					"it go and tell the captain after the rally; a repeat of a late replacement: stop play at once, "+
					"delay sanction")},
			club: {mem("before-whistle-first-late-tolerated", "19.3.2.4-19.3.2.6",
				"ball dead and before the service whistle; the first late one is let go with a word to the "+
					"captain, a repeat is stopped as a delay").
				doubt("from memory, confidence medium; inherited from the international text, not seen")},
			coll: {pub("before-authorization", "12.2", ncaa2002,
				"before authorization of service").
				doubt("confidence medium-high")},
			scho: {pub("before-authorization", "10-4", schoolChanges2007+"; "+schoolSignals,
				"before the whistle/signal for serve; a replacement after it is treated as illegal alignment").
				doubt("2025-26 penalty split may soften this; confidence medium")},
		},
	},
}
