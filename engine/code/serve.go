package code

// serveRows are the rows about the service.
var serveRows = []Row{
	{
		Param: "serve.attack-of-serve",
		Title: "Attacking the serve",
		Doc:   "From where it is a fault to complete an attack on a served ball entirely above the net.",
		Values: []Value{
			{"front-zone", "from the front zone"},
			{"anywhere", "from anywhere, behind the attack line too"},
		},
		cells: table{
			intl: {pub("front-zone", "13.2.4; 13.3.4", fivb2025,
				"fault to complete an attack on the serve when the ball is in the front zone and entirely above "+
					"the net")},
			club: {mem("front-zone", "13.2.4",
				"fault to complete an attack on the serve when the ball is in the front zone and entirely above "+
					"the net")},
			coll: {mem("front-zone", "14.5",
				"fault on a serve entirely above the net in the front zone").
				doubt("from memory, confidence medium")},
			scho: {mem("anywhere", "9-5",
				"fault to complete an attack on a serve entirely above the net, in front of or behind the attack "+
					"line").
				doubt("seen only in a scraped web summary of school rules; confidence low-medium")},
		},
	},
	{
		Param: "serve.before-signal",
		Title: "Ball served before the referee's signal",
		Doc:   "The ball is served before the signal for service.",
		Values: []Value{
			{"repeat", "cancelled and repeated"},
			{"fault", "a service fault"},
		},
		cells: table{
			intl: {pub("repeat", "12.4.5", fivb2025,
				"cancelled and repeated; no fault")},
			club: {mem("repeat", "12.4.5",
				"cancelled and repeated")},
			coll: {mem("repeat", "13.1.3",
				"cancelled and repeated").
				doubt("from memory, confidence medium-high")},
			scho: {pub("repeat", "8-1; 8-2-5e", refereeDaily,
				"not a live serve, a re-serve is directed; a deliberate early serve can be carded as unsporting").
				doubt("card part published; 're-serve' part memory, confidence medium")},
		},
	},
	{
		Param: "serve.block-of-serve",
		Title: "Blocking the serve",
		Doc:   "A receiver blocks the serve.",
		Values: []Value{
			{"fault", "a blocking fault"},
			{"legal", "no fault"},
		},
		cells: table{
			intl: {pub("fault", "14.5; 14.6.3", fivb2025,
				"forbidden; blocking fault")},
			club: {mem("fault", "14.5",
				"forbidden")},
			coll: {mem("fault", "14.6",
				"forbidden")},
			scho: {mem("fault", "9-5",
				"forbidden; illegal block").
				doubt("article letter not seen")},
		},
	},
	{
		Param: "serve.clock-seconds",
		Title: "Seconds to contact the ball after the signal",
		Doc:   "How long the server has to hit the ball after the signal for service.",
		Unit:  "seconds",
		cells: table{
			intl: {pub("8", "12.4.4", fivb2025,
				"8 s; later = service fault")},
			club: {pub("8", "12.4.4", usaScorekeepers,
				"8 s (adults, 15 and over); 14-and-under had 5 s in the older books").
				doubt("whether the 5 s of the younger juniors is still in the 2025-27 book is unchecked; confidence " +
					"medium")},
			coll: {pub("8", "13.1.3.3", ncaa2012Service+"; "+ncaa2001,
				"8 s")},
			scho: {pub("5", "8-2-5", schoolSignals+"; "+schoolExams,
				"5 s").
				doubt("article letter not seen")},
		},
	},
	{
		Param: "serve.contact-method",
		Title: "How the ball must be struck",
		Doc:   "With what the server hits the ball, and whether it must leave the hand first.",
		Values: []Value{
			{"one-hand-or-arm", "one hand or any part of one arm, after a toss or release"},
			{"any", "any way"},
		},
		cells: table{
			intl: {pub("one-hand-or-arm", "12.4.1", fivb2025,
				"one hand or any part of one arm, after a toss or release")},
			club: {mem("one-hand-or-arm", "12.4.1",
				"one hand or any part of one arm, after a toss or release")},
			coll: {pub("one-hand-or-arm", "13.1.1; 13.1.3.2", ncaa2012Service,
				"one hand (open or closed) or any part of one arm; must be clearly released first")},
			scho: {pub("one-hand-or-arm", "8-2-5", schoolServe,
				"one hand/arm; striking with two hands is an illegal serve")},
		},
	},
	{
		Param: "serve.fault-vs-alignment",
		Title: "Serve fault and receiving-team misalignment together",
		Doc:   "A service fault and a misalignment of the receivers fall together: which prevails.",
		Values: []Value{
			{"by-moment", "a fault at the hit prevails over the misalignment, a fault after the hit yields to it"},
			{"service-fault", "the service fault always prevails"},
		},
		cells: table{
			intl: {pub("by-moment", "7.5.2-7.5.3; 12.6; 12.7", fivb2025,
				"a fault at the hit (wrong order, bad execution) beats the misalignment; a fault after the hit "+
					"(out, net, over a screen) loses to it")},
			club: {mem("by-moment", "7.5.2-7.5.3; 12.7",
				"a fault at the hit (wrong order, bad execution) beats the misalignment; a fault after the hit "+
					"(out, net, over a screen) loses to it")},
			coll: {mem("by-moment", "10.3; 13.2",
				"a fault at the hit beats the misalignment; a fault after the hit loses to it").
				doubt("from memory, confidence medium-high")},
			scho: {pub("by-moment", "8-2-7", schoolServe,
				"an illegal serve (8-2-5) beats the misalignment; a service fault in flight (8-2-6) loses to it")},
		},
	},
	{
		Param: "serve.foot-fault",
		Title: "Server's feet at contact or take-off",
		Doc:   "Where the server's feet may be at the hit, or at the take-off of a jump serve.",
		Values: []Value{
			{"line-or-court-at-hit", "no touch of the court, the end line included, or outside the service zone"},
			{"legal", "no limit"},
		},
		cells: table{
			intl: {pub("line-or-court-at-hit", "12.4.3; 1.4.2", fivb2025,
				"may not touch the court (end line included) or floor outside the service zone at the hit, or at "+
					"take-off of a jump serve; may land anywhere after. The 15 cm zone marks belong to the zone")},
			club: {mem("line-or-court-at-hit", "12.4.3",
				"may not touch the court (end line included) or the floor outside the service zone at the hit, or "+
					"at take-off of a jump serve")},
			coll: {pub("line-or-court-at-hit", "13.1.3.6", ncaa2012Service,
				"no touch of the end line or of the playing area outside the width marks at contact or at jump "+
					"take-off")},
			scho: {pub("line-or-court-at-hit", "8-2-5", schoolSignals+"; "+schoolExams,
				"touching the end line or floor outside the service-area width at contact = line violation "+
					"(illegal serve)")},
		},
	},
	{
		Param: "serve.hands-above-head",
		Title: "Serving-team hands above the head during service",
		Doc:   "Players of the serving team hold their hands above the head during the service.",
		Values: []Value{
			{"forbidden", "not until the ball has passed the net"},
			{"no-rule", "nothing forbids it by itself"},
		},
		cells: table{
			intl: {
				pub("no-rule", "", fivb2025,
					"no such rule").until(2024),
				pub("forbidden", "12.5.3", fivb2025,
					"forbidden for every player of the serving team until the ball has passed over the net; the "+
						"referee may caution through the game captain when he suspects deliberate screening").since(2025).
					doubt("no sanction line of its own: it feeds the screening judgement"),
			},
			club: {
				mem("no-rule", "",
					"no such rule").until(2024).
					doubt("no club book was seen; confidence medium"),
				mem("forbidden", "12.5.3",
					"forbidden as in the international book").since(2025).
					doubt("unconfirmed: likely follows the international 12.5.3 from 2025-26; a weak source garbles the " +
						"line; confidence low"),
			},
			coll: {mem("no-rule", "",
				"no such rule known").
				doubt("from memory, confidence low-medium; 2026 not seen")},
			scho: {
				pub("no-rule", "", schoolComments2026,
					"no ban").until(2025),
				pub("forbidden", "6-5-1", schoolComments2026,
					"forbidden until the ball has passed beyond the net").since(2026),
			},
		},
	},
	{
		Param: "serve.hits-overhead",
		Title: "Served ball touches ceiling or overhead object",
		Doc:   "The served ball touches the ceiling or an overhead object.",
		Values: []Value{
			{"fault", "a service fault"},
			{"in-play", "play goes on"},
		},
		cells: table{
			intl: {pub("fault", "8.4.2; 12.6.2.2", fivb2025,
				"out")},
			club: {pub("fault", "8.4.2", usaRegulations,
				"out: the overhead allowance is for balls other than a serve")},
			coll: {mem("fault", "4; 13",
				"out / fault")},
			scho: {mem("fault", "8-2-6",
				"service fault")},
		},
	},
	{
		Param: "serve.hits-teammate-or-outside",
		Title: "Serve touches a server's teammate, does not fully cross, or crosses outside the antennas",
		Doc:   "The serve touches a teammate, does not fully cross, or crosses outside the antennas.",
		Values: []Value{
			{"fault", "a service fault after the hit"},
			{"replay", "replay"},
		},
		cells: table{
			intl: {pub("fault", "12.6.2.1; 8.4.4; 10.1.2.3", fivb2025,
				"service fault, a fault after the hit")},
			club: {mem("fault", "12.6.2.1",
				"service fault")},
			coll: {mem("fault", "13.2; 16.2",
				"service fault").
				doubt("article number not seen")},
			scho: {pub("fault", "8-2-6", schoolServe,
				"service fault (ball becomes dead)").
				doubt("the four items of the article were not all listed in the source")},
		},
	},
	{
		Param: "serve.net-touch-live",
		Title: "Serve touches the net and crosses between the antennas",
		Doc:   "The serve touches the net and crosses between the antennas.",
		Values: []Value{
			{"in-play", "play goes on"},
			{"fault", "a service fault"},
		},
		cells: table{
			intl: {pub("in-play", "10.2", fivb2025,
				"in play")},
			club: {mem("in-play", "10.2",
				"in play")},
			coll: {pub("in-play", "13; 14", ncaa2001,
				"in play")},
			scho: {pub("in-play", "8-2; 9-3", schoolChanges2003,
				"in play")},
		},
	},
	{
		Param: "serve.right-server-before-hit",
		Title: "Right server steps in before the hit",
		Doc:   "A wrong server stands ready and the right one steps in before the hit.",
		Values: []Value{
			{"within-the-clock", "allowed within the original count"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "7.7.1-7.7.2; 12.6.1.1",
				"not stated").
				doubt("no line seen")},
			club: {mem("not-stated", "7.7",
				"not stated").
				doubt("no line seen")},
			coll: {pub("within-the-clock", "13.1.3.5", ncaa2026Note+"; "+ncaa2012Service,
				"the right server may still step in before contact, within the original 8 s")},
			scho: {mem("not-stated", "8-1; 8-2",
				"not stated").
				doubt("no line seen")},
		},
	},
	{
		Param: "serve.screen-definition",
		Title: "What makes a screen",
		Doc:   "When players of the serving team hide the serve from the receivers.",
		Values: []Value{
			{"both-hidden", "the server and the path of the ball are both hidden from the receivers"},
			{"low-over-players", "potential when players wave, jump, move or stand close and the serve goes over them"},
		},
		cells: table{
			intl: {
				pub("both-hidden", "12.5.1-12.5.2; 12.6.2.3", fivb2025,
					"players of the serving team, alone or as a group, hide the server and the path of the ball, by "+
						"waving, jumping, moving sideways or standing grouped").until(2020).
					doubt("the line that it is no screen when either is visible had entered by 2021-24 (from memory); the " +
						"2017-20 wording was not seen"),
				pub("both-hidden", "12.5.1-12.5.2; 12.6.2.3", fivb2025,
					"players of the serving team, alone or as a group, hide both the server and the path of the ball "+
						"until it reaches the net plane, by waving, jumping, moving sideways or standing grouped; if "+
						"either is visible it is no screen; the fault exists when the ball passes over it").since(2021).
					doubt("12.5.2 reads 'either' or 'both' visible in different copies; high on the elements, medium on " +
						"this"),
			},
			club: {mem("both-hidden", "12.5",
				"players of the serving team, alone or as a group, hide both the server and the path of the ball, "+
					"by waving, jumping, moving sideways or standing grouped").
				doubt("from memory, confidence medium-high; inherited from the international text, not seen")},
			coll: {pub("both-hidden", "13.3", ncaaSurvey,
				"the serving team may not act to stop receivers seeing the contact and the path of the ball").
				doubt("wording of a 2021 coaches' survey; rule number from memory; confidence medium")},
			scho: {pub("low-over-players", "6-5", schoolExams,
				"potential screen: players waving, jumping, moving sideways or standing close to the server with "+
					"ball served over them; or two or more close together with a low serve directly over them").
				doubt("confidence medium-high")},
		},
	},
	{
		Param: "serve.toss-dropped-or-caught",
		Title: "Released toss is caught or allowed to drop",
		Doc:   "The server tosses or releases the ball and catches it or lets it drop.",
		Values: []Value{
			{"fault", "a service fault, there is only one toss"},
			{"re-serve-juniors", "a service fault; for 14-and-under a re-serve, once a service"},
			{"re-serve-once-per-term", "a re-serve, once in a term of service"},
		},
		cells: table{
			intl: {pub("fault", "12.4.2", fivb2025,
				"fault: only one toss/release. Bouncing or shifting the ball before release is fine")},
			club: {pub("re-serve-juniors", "12.4.2; 12.4.4", usaScorekeepers,
				"one toss only, a fault for adults and 15-and-over; 14-and-under may drop or catch one toss per "+
					"service, then a new count").
				doubt("unresolved for 2025-27: two weak notes say that one tossing error per term of service is allowed " +
					"to everyone if the ball drops to the floor; confidence low")},
			coll: {pub("fault", "13.1.3.4", ncaa2012Service+"; "+ncaa2001,
				"fault: one toss/release only, inside the 8 s")},
			scho: {pub("re-serve-once-per-term", "8-2-5; 8-1", schoolServe+"; "+schoolSignals,
				"re-serve allowed once per term of service (drop or catch, untouched), with a new 5 s count and "+
					"no libero replacement; a second one in the same term is an illegal serve")},
		},
	},
	{
		Param: "serve.toss-hits-object",
		Title: "Toss touches ceiling, backboard or another object before contact",
		Doc:   "The toss touches the ceiling, a backboard or another object before the hit.",
		Values: []Value{
			{"fault", "a service fault"},
			{"re-serve", "a re-serve"},
		},
		cells: table{
			intl: {mem("fault", "12.4.2; 12.6.1.2",
				"fault (service not executed properly)").
				doubt("from memory, confidence medium; reading, not explicit text")},
			club: {mem("fault", "12.4",
				"treated as a service fault").
				doubt("unknown: inherited from the international text, not seen; confidence low")},
			coll: {pub("fault", "13.1.3.2", ncaa2012Service,
				"loss of rally").
				doubt("confidence medium-high")},
			scho: {pub("fault", "8-1-6; 8-2-6; 8-2-7", schoolColumn+"; "+schoolServe,
				"toss touching a backboard or its supports hanging vertically over the serving area = service "+
					"fault, no re-serve")},
		},
	},
	{
		Param: "serve.wrong-server",
		Title: "Wrong server",
		Doc:   "A player serves out of order.",
		Values: []Value{
			{"loss-of-rally", "point and service to the opponents, order corrected"},
			{"replay", "replay"},
		},
		cells: table{
			intl: {pub("loss-of-rally", "7.7.1-7.7.2; 12.6.1.1", fivb2025,
				"point and service to the opponents, order corrected; found only after that rally ended, still "+
					"just one point; the scorer signals at once after the hit")},
			club: {mem("loss-of-rally", "7.7",
				"point and service to the opponents, order corrected")},
			coll: {pub("loss-of-rally", "13.2.3.2; 13.1.3.5", ncaa2026Note+"; "+ncaa2012Service,
				"loss of rally, order corrected")},
			scho: {pub("loss-of-rally", "8-1; 8-2", schoolWrongServer+"; "+schoolSignals,
				"loss of rally and point")},
		},
	},
	{
		Param: "serve.wrong-server-opponents",
		Title: "Wrong server: the opponents' requests",
		Doc: "What becomes of the opponents' time-outs, substitutions and sanctions in the span that is " +
			"cancelled.",
		Values: []Value{
			{"undone", "they are undone"},
			{"not-stated", "the text does not say"},
		},
		cells: table{
			intl: {mem("not-stated", "7.7.1-7.7.2; 12.6.1.1",
				"not stated").
				doubt("no line seen")},
			club: {mem("not-stated", "7.7",
				"not stated").
				doubt("no line seen")},
			coll: {mem("not-stated", "13.2.3.2; 13.1.3.5",
				"not stated").
				doubt("no line seen")},
			scho: {pub("undone", "8-1; 8-2", schoolWrongServer+"; "+schoolSignals,
				"the opponents' time-outs, substitutions and sanctions in that span are undone")},
		},
	},
	{
		Param: "serve.wrong-server-points",
		Title: "Wrong server: the team's points",
		Doc:   "Which points of the team at fault are cancelled when a wrong server is found late.",
		Values: []Value{
			{"since-the-fault", "those scored since the fault began, if that moment can be fixed; otherwise none"},
			{"while-still-serving", "those scored in this term of service, when found while the team still serves"},
		},
		cells: table{
			intl: {pub("since-the-fault", "7.7.1-7.7.2; 12.6.1.1", fivb2025,
				"points scored since the fault began are cancelled if the moment can be fixed; otherwise none")},
			club: {mem("since-the-fault", "7.7",
				"points scored since the fault began are cancelled if the moment can be fixed; otherwise none")},
			coll: {pub("while-still-serving", "13.2.3.2; 13.1.3.5", ncaa2026Note+"; "+ncaa2012Service,
				"points scored by the team at fault are cancelled").
				doubt("how far back the cancellation reaches is from memory (the same term of service); confidence " +
					"medium")},
			scho: {pub("while-still-serving", "8-1; 8-2", schoolWrongServer+"; "+schoolSignals,
				"found while that team still serves, points scored by the wrong server are removed; found after "+
					"the opponents have served, they stand").
				doubt("that points stand once the opponents have served is from memory; confidence medium")},
		},
	},
}
