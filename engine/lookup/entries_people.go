package lookup

import (
	"strconv"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// liberoEntries are what the libero may do, and how many there are.
var liberoEntries = []Entry{
	{
		ID: "libero-captain", Title: "libero as captain", Ask: "May the libero be the captain?",
		Words:  []string{"libero captain may | playing be", "libero captain be"},
		Params: []code.Param{"libero.captain"},
		says: by("libero.captain", clause{"allowed", "yes: the libero may be captain"},
			clause{"not-allowed", "no: the libero may not be captain"}),
	},
	{
		ID: "libero-clock-ran-out", Title: "libero whose service clock ran out", Ask: "May a libero on whom the service clock ran out serve later in another position?",
		Words:  []string{"libero clock-out may serve-later | serve first-time at-line other-position out-of-turn unsure called r1 delay-of-serve yet player server back go start to number fault walk attend play-to first-serve"},
		Params: []code.Param{"libero.clock-fault-uses-position"},
		says: by("libero.clock-fault-uses-position", clause{"counts", "no: that was the one position of the set"},
			clause{"not-applicable", "no: the libero may not serve at all"}),
	},
	{
		ID: "libero-count", Title: "number of liberos", Ask: "How many liberos may a team have?",
		Words:  []string{"libero many | may have list roster use each"},
		Params: []code.Param{"libero.count", "libero.count-scope"},
		says: func(r *engine.Read, _ string) string {
			return r.Param("libero.count") + pick(r.Param("libero.count-scope"), clause{"match", " for the match"}, clause{"set", " for a set, on the line-up sheet"})
		},
	},
	{
		ID: "libero-rally-between", Title: "rally between libero replacements", Ask: "Must a rally be played between two libero replacements?",
		Words:  []string{"libero sit-out must | one rally replacement before come-back between", "rally between replacement must | libero one two played", "libero rally between replacement | must one two"},
		Params: []code.Param{"libero.rally-between"},
		says: by("libero.rally-between", clause{"required", "yes: one completed rally"},
			clause{"waived-when-next-server", "yes: one completed rally, except where the libero serves next"}),
	},
	{
		ID: "libero-replacements-counted", Title: "libero replacements and substitutions", Ask: "Does a libero replacement count as a substitution?",
		Words:  []string{"libero count-as sub | replacement", "replacement count-as sub", "replacement many | libero may limit sub have", "replacement limit | many libero"},
		Params: []code.Param{"libero.replacements-counted"},
		says:   by("libero.replacements-counted", clause{"not-counted", "no: replacements are not counted, and there is no limit on them"}),
	},
	{
		ID: "libero-serve", Title: "serving libero", Ask: "May the libero serve?",
		Words:  []string{"libero serve may | ever", "libero serve positions many | may"},
		Params: []code.Param{"libero.serve"},
		says: by("libero.serve", clause{"not-allowed", "no: the libero may not serve"},
			clause{"one-position", "yes: in 1 position of the serving order per set"}),
	},
	{
		ID: "libero-serve-second", Title: "libero serving in a second position", Ask: "May the libero serve in a second position of the order?",
		Words:  []string{"libero serve two-positions may", "libero serve other-position may"},
		Params: []code.Param{"libero.serve"},
		says: by("libero.serve", clause{"not-allowed", "no: the libero may not serve"},
			clause{"one-position", "no: in 1 position of the serving order per set"}),
	},
	{
		ID: "libero-served-out-of-turn", Title: "libero who served out of turn", Ask: "Is a libero who served out of turn tied to that position?",
		Words:  []string{"libero out-of-turn tied-to | serve called other-position", "libero wrong-server tied-to | serve called out-of-turn other-position"},
		Params: []code.Param{"libero.wrong-serve-uses-position"},
		says: by("libero.wrong-serve-uses-position", clause{"not-tied", "no: it was no legal turn, so one position is still open"},
			clause{"not-applicable", "no: the libero may not serve at all"}),
	},
	{
		ID: "two-liberos", Title: "two liberos", Ask: "May a team have two liberos?",
		Words:  []string{"libero two may | have list roster use on-court"},
		Params: []code.Param{"libero.count"},
		says: func(r *engine.Read, _ string) string {
			n, err := strconv.Atoi(r.Param("libero.count"))
			switch {
			case err != nil:
				return ""
			case n < 2:
				return "no: " + strconv.Itoa(n)
			}
			return "yes: up to " + strconv.Itoa(n) + ", one of them on the court"
		},
	},
}

// conductEntries are what cards and sanctions mean and how long they last.
var conductEntries = []Entry{
	{
		ID: "bench-seated", Title: "bench during play", Ask: "Must the players on the bench sit?",
		Words:  []string{"bench must sit | player stand all-set warm-up at-end may make whole be", "bench must stay-seated | player during rally"},
		Params: []code.Param{"bench.seated"},
		says: by("bench.seated", clause{"seated-or-warm-up-area", "yes: on the bench, or they stay in the warm-up area"},
			clause{"seated-with-exceptions", "yes, with listed exceptions: a short reaction, greeting a player who comes off, a warm-up without balls where nobody plays"}),
	},
	{
		ID: "bench-standing", Title: "standing at the bench", Ask: "May the players on the bench stand during play?",
		Words:  []string{"bench may stand | player all-set during rally"},
		Params: []code.Param{"bench.seated"},
		says: by("bench.seated", clause{"seated-or-warm-up-area", "no: they sit on the bench or stay in the warm-up area"},
			clause{"seated-with-exceptions", "no: they sit, and may stand for a short reaction or to greet a player who comes off"}),
	},
	{
		ID: "cards-carry", Title: "how long cards last", Ask: "Do cards for misconduct carry over to the next set?",
		Words:  []string{"card carry-over | next-set may red-card yellow-card", "yellow-card carry-over | next-set", "red-card carry-over | next-set", "misconduct carry-over | next-set sanction card", "sanction carry-over misconduct | next-set"},
		Params: []code.Param{"conduct.scope"},
		says:   by("conduct.scope", clause{"match", "yes: they hold for the match"}, clause{"set", "no: they hold for the set"}),
	},
	{
		ID: "cards-together", Title: "red and yellow together", Ask: "What do red and yellow cards shown together mean?",
		Words:  []string{"red-card yellow-card together | what-is card means", "card together | red-card yellow-card what-is means both", "both-cards means | what-is together"},
		Params: []code.Param{"conduct.cards-together", "conduct.cards-together-point"},
		says: func(r *engine.Read, _ string) string {
			s := pick(r.Param("conduct.cards-together"), clause{"expulsion", "expulsion: out for the set"}, clause{"disqualification", "disqualification: out for the match"})
			if s == "" {
				return ""
			}
			return s + pick(r.Param("conduct.cards-together-point"), clause{"yes", ", and a point to the opponents"}, clause{"no", ", no point"})
		},
	},
	{
		ID: "coach-standing", Title: "head coach's right to stand", Ask: "Does the head coach lose the right to stand when the bench gets a yellow card?",
		Words:  []string{"yellow-card coach lose-standing | assistant head-coach bench player got", "yellow-card head-coach lose-standing | assistant bench player got", "yellow-card must sit coach | assistant head-coach bench got", "yellow-card head-coach must sit | assistant bench got"},
		Params: []code.Param{"conduct.coach-standing"},
		says: by("conduct.coach-standing", clause{"after-red", "no: only a red card to the bench seats the head coach"},
			clause{"no-such-step", "no: no card takes the right to stand"}),
	},
	{
		ID: "coach-standing-red", Title: "head coach after a red card", Ask: "Does the head coach lose the right to stand when the bench gets a red card?",
		Words:  []string{"red-card coach lose-standing | assistant head-coach bench player got", "red-card head-coach lose-standing | assistant bench player got", "red-card must sit coach | assistant head-coach bench got", "red-card head-coach must sit | assistant bench got"},
		Params: []code.Param{"conduct.coach-standing"},
		says: by("conduct.coach-standing", clause{"after-red", "yes: for the rest of the match"},
			clause{"no-such-step", "no: no card takes the right to stand"}),
	},
	{
		ID: "delays-carry", Title: "how long delay sanctions last", Ask: "Do delay sanctions carry over to the next set?",
		Words:  []string{"delay carry-over | next-set card sanction warning", "delay reset | next-set each card sanction warning"},
		Params: []code.Param{"delay.scope"},
		says:   by("delay.scope", clause{"match", "yes: they hold for the match"}, clause{"set", "no: they hold for the set"}),
	},
	{
		ID: "red-card-point", Title: "point of a red card", Ask: "Does a red card give a point?",
		Words:  []string{"red-card point-won | may opponents", "red-card point-given"},
		Params: []code.Param{"conduct.red"},
		says:   by("conduct.red", clause{"point-and-service", "yes: point and service to the opponents"}, clause{"none", "no"}),
	},
	{
		ID: "yellow-card-point", Title: "point of a yellow card", Ask: "Does a yellow card give a point?",
		Words:  []string{"yellow-card point-won | may opponents", "yellow-card point-given"},
		Params: []code.Param{"conduct.yellow"},
		says:   by("conduct.yellow", clause{"warning", "no: it is a warning"}),
	},
}

// serveEntries are the counts of the serve and of the hits.
var serveEntries = []Entry{
	{
		ID: "contacts-after-block", Title: "hits after a block", Ask: "How many hits has a team after its own block?",
		Words: []string{"block many hits-left | ball off one other go blocker hand down on-side stay-side hits two have start", "blocker many hits-left | ball off one other go block hand down on-side stay-side two hits have start",
			"blocker many hits left | ball off one other go block hand down on-side side stay-side two have boundary", "block hits many | after have left may get off", "after block many hits-left | blocker hits"},
		Params: []code.Param{"block.not-a-hit", "hits.max"},
		says: func(r *engine.Read, _ string) string {
			n, err := strconv.Atoi(r.Param("hits.max"))
			if err != nil {
				return ""
			}
			return pick(r.Param("block.not-a-hit"), clause{"not-a-hit", strconv.Itoa(n) + " hits: the block is none of them"},
				clause{"first-hit", strconv.Itoa(n-1) + " hits: the block is the first"})
		},
	},
	{
		ID: "contacts-after-joust", Title: "hits after a joust", Ask: "How many hits has the side that the ball falls to after a joust?",
		Words:  []string{"joust many hits | down ball on-side come have get left", "joust many hits-left | down ball on-side come have get hits", "joust many | number or have get hits down ball on-side come"},
		Params: []code.Param{"joust.next-hits"},
		says:   joustHits,
	},
	{
		ID: "contacts-after-joust-and-who", Title: "hits after a joust, and who may play next", Ask: "How many hits has the side that the ball falls to after a joust, and may the player who jousted play next?",
		Words:  []string{"joust many hits may hits-next | down ball on-side come have get number or girl player after left", "joust number or may hits-next | down ball on-side come have get girl player after left hits many"},
		Params: []code.Param{"joust.next-hits", "joust.next-player"},
		says: joined("; ", joustHits, by("joust.next-player", clause{"any", "yes, the player who jousted may play it next"},
			clause{"others-only", "no, another player must play it next"})),
	},
	{
		ID: "contacts-per-side", Title: "hits of a team", Ask: "How many hits has a team?",
		Words:  []string{"hits many | have get each may allowed side"},
		Params: []code.Param{"hits.max"},
		says:   func(r *engine.Read, _ string) string { return r.Param("hits.max") + " hits, and the block" },
	},
	{
		ID: "play-with-feet", Title: "foot on the ball", Ask: "May the ball be played with the foot?",
		Words:  []string{"kick ball may | player use", "kicking ball may | player", "foot use may | ball player play hits", "kicking may | ball"},
		Params: []code.Param{"hits.body-parts"},
		says: by("hits.body-parts", clause{"any", "yes: any part of the body, the foot included"},
			clause{"waist-up", "no: only from the waist up"}),
	},
	{
		ID: "pursuit", Title: "pursuit outside the antenna", Ask: "May a ball be pursued outside the antenna?",
		Words:  []string{"pursuit may | ball outside-antenna rule", "pursuit rule have | may", "pursuit rule | may have"},
		Params: []code.Param{"ball.pursuit"},
		says: by("ball.pursuit", clause{"first-hit-only", "yes: a ball from the team's first hit"},
			clause{"any-before-third", "yes: any ball before the third hit was used up"},
			clause{"where-declared", "yes: on courts with the space, where the event declares it"},
			clause{"not-allowed", "no: the ball is out once it has wholly crossed outside the antenna"}),
	},
	{
		ID: "rotate-on-side-out", Title: "rotation before the first serve of a team", Ask: "Does a receiving team rotate before its first serve when it has won the rally?",
		Words:  []string{"first-serve foot-fault rotated | serve other-team or right-back next who be", "first-serve fault rotate | serve other-team or right-back foot-fault next who be rotated", "rotate first-serve may | other-team or right-back serve side-out", "first-serve foot-fault rotate | other-team or right-back serve next be rotated", "rotate side-out first | must other-team serve or right-back"},
		Params: []code.Param{"serve.side-out-rotation"},
		says:   by("serve.side-out-rotation", clause{"rotates", "they rotate: the right front moves back and serves"}),
	},
	{
		ID: "serve-clock-length", Title: "seconds to serve", Ask: "How many seconds does the server have?",
		Words: []string{"serve seconds | many have juniors older player get may must long server to", "serve long have | juniors older player may server", "server long have | juniors older player may serve must", "server seconds | many have get may must juniors older serve", "serve-clock | seconds long many juniors older what-is",
			"serve time long | have juniors older", "serve long | have juniors older seconds may"},
		Params: []code.Param{"serve.clock-seconds", "serve.clock-seconds-juniors"},
		says: func(r *engine.Read, _ string) string {
			if _, err := strconv.Atoi(r.Param("serve.clock-seconds-juniors")); err == nil && r.Is(AgeGroup, "", Juniors) {
				return count(r, "serve.clock-seconds-juniors", "seconds")
			}
			return count(r, "serve.clock-seconds", "seconds")
		},
	},
	{
		ID: "serve-net-live", Title: "serve that touches the net", Ask: "Is a let serve legal?",
		Words:  []string{"let-serve may", "let-serve live"},
		Params: []code.Param{"serve.net-touch-live"},
		says:   by("serve.net-touch-live", clause{"in-play", "yes: play goes on"}, clause{"fault", "no: a service fault"}),
	},
	{
		ID: "toss-count", Title: "tosses for a serve", Ask: "How many tosses does a server have?",
		Words:  []string{"toss many | serve have get may each allowed server"},
		Params: []code.Param{"serve.toss-dropped-or-caught"},
		says: by("serve.toss-dropped-or-caught", clause{"fault", "1 toss"},
			clause{"re-serve-once-per-term", "1 toss, and a re-serve once in a term of service"}),
	},
}

func joustHits(r *engine.Read, _ string) string {
	return pick(r.Param("joust.next-hits"), clause{"three-fresh", "3 hits"}, clause{"count-goes-on", "what is left of its 3 hits"})
}
