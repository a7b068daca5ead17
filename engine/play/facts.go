package play

// The ids of the facts.
const (
	Again        FactID = "again"
	Aids         FactID = "aids"
	Attempts     FactID = "attempt"
	Ball         FactID = "ball"
	BodyPart     FactID = "body"
	Cause        FactID = "cause"
	Certain      FactID = "certain"
	ClockTime    FactID = "clock"
	Completes    FactID = "completes"
	CouldPlay    FactID = "could-play"
	Crossed      FactID = "crossed"
	Decides      FactID = "decides"
	Deliberate   FactID = "deliberate"
	EndsAs       FactID = "ends"
	ErrorWhistle FactID = "error"
	Extent       FactID = "extent"
	Feet         FactID = "feet"
	Fingers      FactID = "fingers"
	Footing      FactID = "footing"
	Gear         FactID = "gear"
	Grouped      FactID = "grouped"
	HandsUp      FactID = "hands"
	Has          FactID = "has"
	Hazard       FactID = "hazard"
	Height       FactID = "height"
	Hidden       FactID = "hidden"
	High         FactID = "high"
	Hinders      FactID = "hinders"
	HitWith      FactID = "hit-with"
	Holding      FactID = "holding"
	How          FactID = "how"
	Inside       FactID = "inside"
	IsLibero     FactID = "libero"
	Juniors      FactID = "juniors"
	Lands        FactID = "lands"
	LowOver      FactID = "low"
	Manner       FactID = "manner"
	Order        FactID = "order"
	Part         FactID = "part"
	Place        FactID = "place"
	Playing      FactID = "playing"
	PursuitSpace FactID = "pursuit-space"
	ReachHeight  FactID = "reach"
	Ready        FactID = "ready"
	Receivers    FactID = "receivers"
	Row          FactID = "row"
	Seen         FactID = "seen"
	Serious      FactID = "serious"
	ServerTurn   FactID = "turn"
	Serving      FactID = "serving"
	ServingSix   FactID = "serving-six"
	Side         FactID = "side"
	Signalled    FactID = "signal"
	Spent        FactID = "spent"
	Spot         FactID = "spot"
	Struck       FactID = "struck"
	Stuck        FactID = "stuck"
	TakeOff      FactID = "take-off"
	Together     FactID = "together"
	Touches      FactID = "touches"
	Used         FactID = "used"
	What         FactID = "what"
	Where        FactID = "where"
	Wholly       FactID = "wholly"
)

// The values of the facts. Several facts share yes and no.
const (
	Yes         Value = "yes"
	No          Value = "no"
	ValueA      Value = "A"
	ValueB      Value = "B"
	Live        Value = "live"
	Dead        Value = "dead"
	Front       Value = "front"
	Back        Value = "back"
	Own         Value = "own"
	Plane       Value = "plane"
	Beyond      Value = "beyond"
	Above       Value = "above"
	NotAbove    Value = "not-above"
	Below       Value = "below"
	InFront     Value = "in-front"
	Behind      Value = "behind"
	Clean       Value = "clean"
	Double      Value = "double"
	Held        Value = "held"
	One         Value = "one"
	Two         Value = "two"
	Before      Value = "before"
	Same        Value = "same"
	After       Value = "after"
	Zero        Value = "0"
	N1          Value = "1"
	N2          Value = "2"
	N3          Value = "3"
	PartNet     Value = "net"
	PartAntenna Value = "antenna"
	PartOutside Value = "outside"
	PartPost    Value = "post"
	ByPlayer    Value = "player"
	ByBall      Value = "ball"
	ByHair      Value = "hair"
	Foot        Value = "foot"
	Hand        Value = "hand"
	OtherPart   Value = "other"
	Partly      Value = "partly"
	WhollyOver  Value = "wholly"
	OnCourt     Value = "court"
	OffCourt    Value = "outside"
	In          Value = "in"
	Out         Value = "out"
	Ceiling     Value = "ceiling"
	Antenna     Value = "antenna"
	LowObject   Value = "low-object"
	Posts       Value = "posts"
	Official    Value = "official"
	Bystander   Value = "person"
	OtherThing  Value = "object"
	NetBand     Value = "net"
	Between     Value = "between"
	OutsideAnt  Value = "outside"
	Under       Value = "under"
	IntoNet     Value = "net"
	Teammate    Value = "teammate"
	Structure   Value = "structure"
	OnTime      Value = "on-time"
	Within5     Value = "within-5"
	Within8     Value = "within-8"
	Over8       Value = "over-8"
	RunOut      Value = "run-out"
	EndLine     Value = "end-line"
	BesideZone  Value = "beside"
	OneHand     Value = "one-hand"
	TwoHands    Value = "two-hands"
	NotLetGo    Value = "not-let-go"
	Thrown      Value = "thrown"
	RightServer Value = "right"
	WrongServer Value = "wrong"
	StepsIn     Value = "steps-in"
	InSight     Value = "in-sight"
	PartHidden  Value = "part-hidden"
	AllHidden   Value = "hidden"
	Apart       Value = "apart"
	OneStill    Value = "one-still"
	CloseBy     Value = "close"
	Moving      Value = "moving"
	Aligned     Value = "in-order"
	Misaligned  Value = "out-of-order"
	AllReady    Value = "ready"
	WrongCount  Value = "wrong-count"
	NotReady    Value = "not-ready"
	Dropped     Value = "dropped"
	CaughtToss  Value = "caught"
	HitsThing   Value = "hits-object"
	HitsServer  Value = "hits-server"
	OnSurface   Value = "on-surface"
	LandsOn     Value = "lands-on"
	OffSurface  Value = "off-surface"
)

func yesNo(yes, no string) []Choice { return []Choice{{Yes, yes}, {No, no}} }

func always(v Value) func(*Rally, string) Value {
	return func(*Rally, string) Value { return v }
}

// facts is the table, sorted by id. An event fact lists the kinds of event
// that can have it.
var facts = []Fact{
	{ID: Again, About: OfEvent, Kinds: []Kind{Toss},
		Ask:    "Had a re-serve been given before in this term of service?",
		Doc:    "Whether the server has already had a re-serve since the team got the right to serve.",
		Values: yesNo("a re-serve used before in this term of service", "no re-serve used before in this term of service"), Presume: presumeAgain, Why: "it was the first re-serve of this term of service"},
	{ID: Aids, About: OfEvent, Kinds: []Kind{Support},
		Ask:    "Did the hold help %s to reach or play the ball?",
		Doc:    "Support taken to reach the ball, or held to gain an advantage. Holding a teammate back from a net or line fault is not support.",
		Values: yesNo("the hold helps to reach the ball", "the hold gives no help to reach the ball")},
	{ID: Attempts, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "Were the touches by %s one action, or two separate attempts?",
		Doc:    "Whether successive touches of the ball by one player came in one action to play it.",
		Values: []Choice{{One, "in one action"}, {Two, "in two separate actions"}}, Presume: always(One), Why: "one attempt to play the ball"},
	{ID: Ball, About: OfSetting,
		Ask:    "Was the ball live when this began?",
		Doc:    "Whether the rally is on when the first told event happens.",
		Values: []Choice{{Live, "the ball is live"}, {Dead, "the ball is dead"}}, Presume: always(Live), Why: "the ball was live"},
	{ID: BodyPart, About: OfEvent, Kinds: []Kind{Line},
		Ask:    "Which part of %s was beyond the centre line?",
		Doc:    "The part of the body on or over the opponents' floor. Other is any part that is neither foot nor hand: knee, hip, elbow.",
		Values: []Choice{{Foot, "with a foot"}, {Hand, "with a hand"}, {OtherPart, "with another part of the body"}}},
	{ID: Cause, About: OfEvent, Kinds: []Kind{NetTouch},
		Ask:    "What brought %s and the net together?",
		Doc:    "The player moved into the net; or the ball drove the net into the player; or only loose hair touched.",
		Values: []Choice{{ByPlayer, "by the player's own movement"}, {ByBall, "the ball drives the net into the player"}, {ByHair, "only with the hair"}}, Presume: always(ByPlayer), Why: "the player went into the net"},
	{ID: Certain, About: OfEvent, Kinds: []Kind{Whistle},
		Ask:    "Was the end of the rally already certain at the whistle?",
		Doc:    "Whether the whistle could no longer change who won the rally: the ball was about to land with nobody near it.",
		Values: yesNo("the result was already certain", "the result was still open"), Presume: always(No), Why: "the rally could still have gone either way"},
	{ID: ClockTime, About: OfEvent, Kinds: []Kind{Serve, Lapse},
		Ask:     "How long after the signal did %s serve?",
		Doc:     "The time from the signal for service to the hit, as the crew has it: in seconds, or against the code's own limit.",
		Values:  []Choice{{OnTime, "within the time for the serve"}, {Within5, "within 5 seconds of the signal"}, {Within8, "more than 5 and at most 8 seconds after the signal"}, {Over8, "more than 8 seconds after the signal"}, {RunOut, "with the time for the serve run out"}},
		Presume: presumeClock, Why: "the serve was in time", Quiet: true},
	{ID: Completes, About: OfEvent, Kinds: []Kind{Contact, Strike},
		Ask:     "Did the ball then cross the net, or an opponent touch it?",
		Doc:     "Whether the ball that this contact sent goes wholly across the plane of the net or is touched by an opponent. Read only when no told event shows it.",
		Values:  yesNo("the ball crosses the net", "the ball does not cross the net"),
		Presume: presumeCompletes, Why: "an attack goes over; a pass or a set stays on its side"},
	{ID: CouldPlay, About: OfEvent, Kinds: []Kind{Contact, Strike, Reach},
		Ask:     "Could a player of the ball's own team still have made a legal play on it?",
		Doc:     "Of a contact beyond the net: whether a player of the side that the ball was on could have played it. Of a ball that struck something: whether a legal play was there but for it.",
		Values:  yesNo("a teammate could have played the ball", "nobody could have played the ball"),
		Presume: presumeCouldPlay, Why: "a set is there for a hitter to play"},
	{ID: Crossed, About: OfEvent, Kinds: []Kind{Line, NetTouch},
		Ask:    "When %s touched the net or crossed the line, was the ball already over, or touched by an opponent?",
		Doc:    "Whether the attack told before was complete by then. Read only when no told event shows when it was.",
		Values: yesNo("with the ball already across the net", "with the ball not yet across the net")},
	{ID: Decides, About: OfEvent, Kinds: []Kind{Dispute},
		Ask:    "Could the first referee decide between the calls?",
		Doc:    "Whether the crew could settle which of its calls stands after it talked.",
		Values: yesNo("the first referee decides", "nobody can decide")},
	{ID: Deliberate, About: OfEvent, Kinds: []Kind{NetTouch, Serve},
		Ask:    "Did %s do it on purpose?",
		Doc:    "Of a net touch: to deceive, to hinder or to gain something. Of a serve before the signal: in defiance, not by mistake.",
		Values: yesNo("on purpose", "not on purpose"), Presume: always(No), Why: "it was not done on purpose", Quiet: true},
	{ID: EndsAs, About: OfEvent, Kinds: []Kind{Toss},
		Ask:    "What became of the ball that %s tossed?",
		Doc:    "What the ball met after the server let go of it and did not hit it.",
		Values: []Choice{{Dropped, "the toss drops to the floor"}, {CaughtToss, "the server catches the toss"}, {HitsThing, "the toss touches an object"}, {HitsServer, "the toss touches the server"}}},
	{ID: ErrorWhistle, About: OfEvent, Kinds: []Kind{Whistle},
		Ask:    "Was the whistle blown for something that was no fault?",
		Doc:    "An inadvertent or mistaken whistle in a live rally.",
		Values: yesNo("the whistle is a mistake", "the whistle is right"), Presume: always(Yes), Why: "no fault came before the whistle"},
	{ID: Extent, About: OfEvent, Kinds: []Kind{Line},
		Ask:    "Was any of it still on or above the centre line?",
		Doc:    "Wholly means that no part of that foot or hand touched or was above the centre line.",
		Values: []Choice{{Partly, "part of it on or above the centre line"}, {WhollyOver, "wholly beyond the centre line"}}},
	{ID: Feet, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Where were the feet of %s at the hit, or at the take-off of a jump?",
		Doc:    "In the zone: behind the end line and between the side marks, which belong to it. The end line belongs to the court.",
		Values: []Choice{{Own, "the feet in the service zone"}, {EndLine, "a foot on the end line or the court"}, {BesideZone, "a foot outside the service zone"}}, Presume: always(Own), Why: "the server stood in the zone", Quiet: true},
	{ID: Fingers, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "Did %s play it overhand with the fingers?",
		Doc:    "An overhand finger action, as against forearms, a fist or one hand.",
		Values: yesNo("overhand with the fingers", "without an overhand finger action")},
	{ID: Footing, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "Was %s still in touch with the playing surface at the contact?",
		Doc:    "On it: some part of the body touches it. Lands on it: in the air over a place that is not for play, and down on the playing surface after. Off it: neither.",
		Values: []Choice{{OnSurface, "in touch with the playing surface"}, {LandsOn, "in the air and landing on the playing surface"}, {OffSurface, "off the playing surface"}}, Presume: always(OnSurface), Why: "the player was on the playing surface", Quiet: true},
	{ID: Gear, About: OfEvent, Kinds: []Kind{Intrusion},
		Ask:    "Was it something of a player's own, such as a shoe or a pad?",
		Doc:    "Gear that a player lost in the rally, as against a thing or a person from outside.",
		Values: yesNo("a player's own gear", "nothing that a player lost"), Presume: always(No), Why: "it came from outside", Quiet: true},
	{ID: Grouped, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "How did the teammates of the server stand before the serve?",
		Doc:    "What the players of the serving team do between the server and the receivers: stand apart, one alone and still, close together, or wave, jump or move sideways.",
		Values: []Choice{{Apart, "teammates of the server apart"}, {OneStill, "one teammate still before the server"}, {CloseBy, "teammates of the server close together"}, {Moving, "teammates of the server waving or moving"}}, Presume: always(Apart), Why: "nobody screened the serve", Quiet: true},
	{ID: HandsUp, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Did teammates of %s hold their hands above their heads?",
		Doc:    "Hands higher than the top of the head during the service. Hands behind or beside the head are not above it.",
		Values: yesNo("hands of teammates above the head", "hands of teammates not above the head"), Presume: always(No), Why: "nobody held the hands up", Quiet: true},
	{ID: Has, About: OfSetting, Sided: true,
		Ask:     "Which side had last played the ball before this?",
		Doc:     "The side whose hits were being counted when the first told event happens.",
		Values:  []Choice{{ValueA, "{A} has the ball"}, {ValueB, "{B} has the ball"}},
		Presume: presumeHas, Why: "the first contact told is by the side that has the ball", Quiet: true},
	{ID: Hazard, About: OfEvent, Kinds: []Kind{Line},
		Ask:    "Was it a danger to an opponent?",
		Doc:    "A safety hazard to an opponent, judged by the referee.",
		Values: yesNo("a hazard to an opponent", "no hazard"), Presume: always(No), Why: "nobody was put at risk"},
	{ID: Height, About: OfEvent, Kinds: []Kind{Contact},
		Ask:     "When %s touched it, was the ball wholly above the top of the net?",
		Doc:     "Above means the whole ball was higher than the top of the net at the contact. Not above: some part of it was lower.",
		Values:  []Choice{{Above, "ball wholly above the net"}, {NotAbove, "ball not wholly above the net"}},
		Presume: presumeHeight, Why: "away from the net a ball is not played wholly above it"},
	{ID: Hidden, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Could the receivers see the server and the path of the ball?",
		Doc:    "In sight: nothing was hidden. Partly: the server or the path of the ball could be seen. Hidden: neither could.",
		Values: []Choice{{InSight, "the serve in sight of the receivers"}, {PartHidden, "the server or the path of the ball hidden"}, {AllHidden, "the server and the path of the ball hidden"}}, Presume: presumeHidden, Why: "the receivers saw the serve", Quiet: true},
	{ID: High, About: OfEvent, Kinds: []Kind{Strike},
		Ask:    "Was the thing 15 feet (4.6 m) or more above the playing area?",
		Doc:    "Whether an overhead object is at least 4.6 m (15 ft) up.",
		Values: yesNo("at least 15 feet up", "lower than 15 feet"), Presume: always(Yes), Why: "a ceiling is more than 15 feet up"},
	{ID: Hinders, About: OfEvent, Kinds: []Kind{NetTouch, Line, Bump, Reach, Intrusion, Strike},
		Ask:     "Did it hinder anybody's play, or gain an advantage?",
		Doc:     "Interference: an opponent was kept from playing the ball or moving to it, or an advantage was gained. Of something from outside: a player was distracted or hindered.",
		Values:  yesNo("play is hindered", "nobody is hindered"),
		Presume: presumeHinders, Why: "nobody was hindered"},
	{ID: HitWith, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "With what did %s strike the ball?",
		Doc:    "With one hand or any part of one arm after the ball was let go; with both; before it was let go; thrown or carried; or with another part of the body.",
		Values: []Choice{{OneHand, "struck with one hand or arm"}, {TwoHands, "struck with both hands or arms"}, {NotLetGo, "struck before it was let go"}, {Thrown, "thrown or carried and not struck"}, {OtherPart, "struck with the body"}}, Presume: always(OneHand), Why: "the ball was struck with one hand", Quiet: true},
	{ID: Holding, About: OfEvent, Kinds: []Kind{Support},
		Ask:    "Was %s still holding on when the ball was hit?",
		Doc:    "Whether the hold lasted to the contact.",
		Values: yesNo("still holding at the hit", "lets go before the hit")},
	{ID: How, About: OfEvent, Kinds: []Kind{Cross},
		Ask:    "Where did the ball go to the plane of the net?",
		Doc:    "Over the net between the antennas; over or outside an antenna; under the net; or into the net.",
		Values: []Choice{{Between, "over the net between the antennas"}, {OutsideAnt, "outside the antenna"}, {Under, "under the net"}, {IntoNet, "into the net"}}, Presume: always(Between), Why: "the ball crossed between the antennas"},
	{ID: Inside, About: OfEvent, Kinds: []Kind{Support},
		Ask:    "Was it inside the playing area?",
		Doc:    "The court and its free zone. A structure outside it may not be used in some codes and may in others.",
		Values: yesNo("inside the playing area", "outside the playing area"), Presume: always(Yes), Why: "inside the playing area"},
	{ID: Juniors, About: OfSetting,
		Ask:    "Is it a match of 14-and-under players?",
		Doc:    "Whether the match is of an age group of 14 and under, which had its own toss rule.",
		Values: yesNo("a match of 14 and under", "no match of 14 and under")},
	{ID: Lands, About: OfEvent, Kinds: []Kind{Land},
		Ask:    "Was the ball in or out?",
		Doc:    "In means that some part of the ball touched the court, lines included.",
		Values: []Choice{{In, "in"}, {Out, "out"}}},
	{ID: IsLibero, About: OfPlayer,
		Ask:    "Is %s the acting libero?",
		Doc:    "Whether the player is the libero on the court.",
		Values: yesNo("libero", "not the libero"), Presume: presumeLibero, Why: "not the libero", Quiet: true},
	{ID: LowOver, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Did the serve go low over those players?",
		Doc:    "Whether the ball passed low and directly over the teammates who stood between.",
		Values: yesNo("low over those players", "not low over those players")},
	{ID: Manner, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "How was the contact by %s: clean, more than one touch, or caught or thrown?",
		Doc:    "Clean rebounds at once. Double is successive touches by the player. Held is caught, carried or thrown.",
		Values: []Choice{{Clean, "a clean contact"}, {Double, "a double contact"}, {Held, "caught or thrown"}}, Presume: always(Clean), Why: "one clean contact"},
	{ID: Order, About: OfPair,
		Ask:    "Which came first: %s?",
		Doc:    "The time order of two told events that follow one another in the telling.",
		Values: []Choice{{Before, "first"}, {Same, "at the same time"}, {After, "afterwards"}}, Presume: always(Before), Why: "it happened in the order told", Quiet: true},
	{ID: Part, About: OfEvent, Kinds: []Kind{NetTouch},
		Ask:    "What did %s touch?",
		Doc:    "The net between the antennas, an antenna, the net or cables outside the antennas, or a post.",
		Values: []Choice{{PartNet, "the net between the antennas"}, {PartAntenna, "the antenna"}, {PartOutside, "the net or a cable outside the antennas"}, {PartPost, "the post"}}, Presume: always(PartNet), Why: "between the antennas"},
	{ID: Place, About: OfEvent, Kinds: []Kind{Contact},
		Ask:     "When %s touched it, where was the ball?",
		Doc:     "Wholly on the toucher's own side, with some part in the plane of the net, or wholly on the opponents' side.",
		Values:  []Choice{{Own, "ball wholly on {own} side"}, {Plane, "ball in the plane"}, {Beyond, "ball wholly on {opp} side"}},
		Presume: presumePlace, Why: "the ball was on the player's own side"},
	{ID: Playing, About: OfEvent, Kinds: []Kind{NetTouch},
		Ask:     "Was %s in the action of playing the ball?",
		Doc:     "Take-off, hit or attempt, and landing under control, ready for a new action.",
		Values:  yesNo("in the action of playing the ball", "not in the action of playing the ball"),
		Presume: presumePlaying, Why: "the player was playing the ball"},
	{ID: PursuitSpace, About: OfSetting,
		Ask:    "Does this court have the clear space that lets a team chase a ball outside the antenna?",
		Doc:    "Whether the event has declared pursuit outside the antenna on this court.",
		Values: yesNo("pursuit is allowed on this court", "no pursuit on this court")},
	{ID: ReachHeight, About: OfEvent, Kinds: []Kind{Contact, Attempt},
		Ask:     "Did %s reach above the top of the net?",
		Doc:     "Whether some part of the body that plays or blocks was higher than the top of the net at the contact.",
		Values:  []Choice{{Above, "reaching above the net"}, {Below, "not reaching above the net"}},
		Presume: presumeReach, Why: "a block reaches above the net"},
	{ID: Ready, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Were both teams ready, with six players each, at the signal?",
		Doc:    "Whether the first referee could give the signal: a team with five or seven on the court, or one not ready, was overlooked.",
		Values: []Choice{{AllReady, "both teams ready for the signal"}, {WrongCount, "a team with a wrong number of players"}, {NotReady, "a team not ready for the signal"}}, Presume: always(AllReady), Why: "both teams were ready", Quiet: true},
	{ID: Receivers, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Was the receiving team in its positions at the hit?",
		Doc:    "Whether each of the receivers stood in order, as the code compares them, at the service hit.",
		Values: []Choice{{Aligned, "the receivers in position"}, {Misaligned, "the receivers out of position"}}, Presume: always(Aligned), Why: "the receivers were in position", Quiet: true},
	{ID: Row, About: OfPlayer,
		Ask:     "Was %s front row or back row?",
		Doc:     "The row in which the player stood at the service hit.",
		Values:  []Choice{{Front, "front row"}, {Back, "back row"}},
		Presume: presumeRow, Why: "a blocker or hitter at the net is front row"},
	{ID: Seen, About: OfEvent, Kinds: []Kind{Contact, NetTouch, Line, Strike},
		Ask:    "Did anybody of the crew see it?",
		Doc:    "A contact that nobody of the crew saw is not called.",
		Values: yesNo("seen by the crew", "not seen by the crew"), Presume: always(Yes), Why: "the crew saw it", Quiet: true},
	{ID: Serious, About: OfEvent, Kinds: []Kind{Injury},
		Ask:    "Was it serious enough to stop the rally?",
		Doc:    "Whether the first referee saw an injury for which play must stop at once.",
		Values: yesNo("serious enough to stop the rally", "no reason to stop the rally"), Presume: always(Yes), Why: "the injury was serious"},
	{ID: Serving, About: OfSetting, Sided: true,
		Ask:    "Which side was serving?",
		Doc:    "The side that served this rally.",
		Values: []Choice{{ValueA, "{A} is serving"}, {ValueB, "{B} is serving"}}},
	{ID: ServingSix, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Were the teammates of %s in their positions at the hit?",
		Doc:    "Whether each of the serving team but the server stood in order at the service hit.",
		Values: []Choice{{Aligned, "the serving six in position"}, {Misaligned, "the serving six out of position"}}, Presume: always(Aligned), Why: "the serving team was in position", Quiet: true},
	{ID: Side, About: OfEvent, Kinds: []Kind{Land, Strike, Cross}, Sided: true,
		Ask:     "On or above which side?",
		Doc:     "Whose floor the ball came down on or beside, whose side a thing it struck is above, or the side it went to.",
		Values:  []Choice{{ValueA, "on {A} side"}, {ValueB, "on {B} side"}},
		Presume: presumeSide, Why: "an attack or a serve goes to the other side"},
	{ID: Signalled, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Had the first referee signalled for the serve when %s hit it?",
		Doc:    "Whether the service was authorised before the hit.",
		Values: yesNo("after the signal for service", "before the signal for service"), Presume: always(Yes), Why: "the serve was authorised", Quiet: true},
	{ID: Spent, About: OfSetting,
		Ask:    "Had that side already used its three contacts?",
		Doc:    "Whether the side that has the ball when the first told event happens has no contact left. Read only when the number used was not told.",
		Values: yesNo("no contact left", "a contact left"), Presume: always(No), Why: "each contact is within its team's three"},
	{ID: Spot, About: OfEvent, Kinds: []Kind{Serve},
		Ask:    "Did %s serve in the one place in the order in which the libero serves this set?",
		Doc:    "Where a libero may serve, it is in one place of the order in a set. Read only when a libero serves.",
		Values: yesNo("in the one serving place of the libero", "in a second serving place of the libero"), Presume: always(Yes), Why: "the libero serves in one place of the order only"},
	{ID: Struck, About: OfEvent, Kinds: []Kind{Strike},
		Ask:    "What did the ball touch?",
		Doc:    "The thing, other than a player or the floor of the court, that the ball touched.",
		Values: []Choice{{Ceiling, "the ceiling"}, {Antenna, "the antenna"}, {LowObject, "a low obstruction"}, {Posts, "the post or a cable"}, {Official, "an official"}, {Bystander, "a person"}, {OtherThing, "an outside object"}, {NetBand, "the net"}}},
	{ID: Stuck, About: OfEvent, Kinds: []Kind{Strike},
		Ask:    "Did the ball tear the net or stick in it?",
		Doc:    "Whether the ball came to rest in the net or tore it, as against rebounding or dropping from it.",
		Values: yesNo("sticking in the net or tearing it", "not sticking in the net"), Presume: always(No), Why: "the ball came off the net", Quiet: true},
	{ID: TakeOff, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "Where did %s last touch the floor before the contact?",
		Doc:    "In front: a foot on or in front of the attack line, its extension included. Behind: both feet behind it.",
		Values: []Choice{{InFront, "from in front of the attack line"}, {Behind, "from behind the attack line"}}},
	{ID: Together, About: OfEvent, Kinds: []Kind{Attempt},
		Ask:    "Was %s close beside the player who touched the ball, in the same block?",
		Doc:    "Whether the players were close enough to make one collective block.",
		Values: yesNo("in the same block", "not in the same block"), Presume: presumeTogether, Why: "players who block together make one block"},
	{ID: Touches, About: OfEvent, Kinds: []Kind{Reach},
		Ask:    "Did %s touch an opponent there?",
		Doc:    "Whether the hand beyond the net met an opponent.",
		Values: yesNo("touching an opponent", "touching nobody"), Presume: always(No), Why: "no opponent was touched"},
	{ID: ServerTurn, About: OfEvent, Kinds: []Kind{Serve, Toss},
		Ask:    "Was it %s's turn to serve?",
		Doc:    "Whether the one who serves is the next in the order of service, or stepped in for a wrong one before the hit.",
		Values: []Choice{{RightServer, "in the order of service"}, {WrongServer, "out of the order of service"}, {StepsIn, "in place of a wrong server before the hit"}}, Presume: always(RightServer), Why: "the right player served", Quiet: true},
	{ID: Used, About: OfSetting,
		Ask:     "How many contacts had that side used before this?",
		Doc:     "Team hits already counted for the side that has the ball when the first told event happens; a block is not counted.",
		Values:  []Choice{{Zero, "no contact used"}, {N1, "one contact used"}, {N2, "two contacts used"}, {N3, "three contacts used"}},
		Presume: presumeUsed, Why: "a dig or pass is a first contact, a set a second"},
	{ID: What, About: OfEvent, Kinds: []Kind{Support},
		Ask:    "What did %s take hold of?",
		Doc:    "A teammate, or a structure or object.",
		Values: []Choice{{Teammate, "a teammate"}, {Structure, "a structure"}}},
	{ID: Where, About: OfEvent, Kinds: []Kind{Line},
		Ask:    "Was it on the opponents' court or on the floor outside it?",
		Doc:    "The opponents' court, or the free zone beyond the extension of the centre line.",
		Values: []Choice{{OnCourt, "on the opponents' court"}, {OffCourt, "outside the court"}}, Presume: always(OnCourt), Why: "on the opponents' court"},
	{ID: Wholly, About: OfEvent, Kinds: []Kind{Cross},
		Ask:    "Had the ball gone completely through the plane of the net?",
		Doc:    "Whether the whole ball passed the vertical plane of the net.",
		Values: yesNo("completely", "not yet completely"), Presume: presumeWholly, Why: "it went completely through"},
}
