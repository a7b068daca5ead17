package play

// The ids of the facts.
const (
	Aids         FactID = "aids"
	Attempts     FactID = "attempt"
	Ball         FactID = "ball"
	BodyPart     FactID = "body"
	Cause        FactID = "cause"
	Certain      FactID = "certain"
	Completes    FactID = "completes"
	CouldPlay    FactID = "could-play"
	ErrorWhistle FactID = "error"
	Extent       FactID = "extent"
	Fingers      FactID = "fingers"
	Has          FactID = "has"
	Hazard       FactID = "hazard"
	Height       FactID = "height"
	High         FactID = "high"
	Hinders      FactID = "hinders"
	Holding      FactID = "holding"
	How          FactID = "how"
	Inside       FactID = "inside"
	IsLibero     FactID = "libero"
	Lands        FactID = "lands"
	Manner       FactID = "manner"
	Order        FactID = "order"
	Part         FactID = "part"
	Place        FactID = "place"
	Playing      FactID = "playing"
	PursuitSpace FactID = "pursuit-space"
	ReachHeight  FactID = "reach"
	Row          FactID = "row"
	Seen         FactID = "seen"
	Serving      FactID = "serving"
	Side         FactID = "side"
	Spent        FactID = "spent"
	Struck       FactID = "struck"
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
)

func yesNo(yes, no string) []Choice { return []Choice{{Yes, yes}, {No, no}} }

func always(v Value) func(*Rally, string) Value {
	return func(*Rally, string) Value { return v }
}

// facts is the table, sorted by id. An event fact lists the kinds of event
// that can have it.
var facts = []Fact{
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
	{ID: ErrorWhistle, About: OfEvent, Kinds: []Kind{Whistle},
		Ask:    "Was the whistle blown for something that was no fault?",
		Doc:    "An inadvertent or mistaken whistle in a live rally.",
		Values: yesNo("the whistle is a mistake", "the whistle is right"), Presume: always(Yes), Why: "no fault came before the whistle"},
	{ID: Extent, About: OfEvent, Kinds: []Kind{Line},
		Ask:    "Was any of it still on or above the centre line?",
		Doc:    "Wholly means that no part of that foot or hand touched or was above the centre line.",
		Values: []Choice{{Partly, "part of it on or above the centre line"}, {WhollyOver, "wholly beyond the centre line"}}},
	{ID: Fingers, About: OfEvent, Kinds: []Kind{Contact},
		Ask:    "Did %s play it overhand with the fingers?",
		Doc:    "An overhand finger action, as against forearms, a fist or one hand.",
		Values: yesNo("overhand with the fingers", "without an overhand finger action")},
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
	{ID: High, About: OfEvent, Kinds: []Kind{Strike},
		Ask:    "Was the thing 15 feet (4.6 m) or more above the playing area?",
		Doc:    "Whether an overhead object is at least 4.6 m (15 ft) up.",
		Values: yesNo("at least 15 feet up", "lower than 15 feet"), Presume: always(Yes), Why: "a ceiling is more than 15 feet up"},
	{ID: Hinders, About: OfEvent, Kinds: []Kind{NetTouch, Line, Bump, Reach, Intrusion},
		Ask:     "Did it hinder anybody's play, or gain an advantage?",
		Doc:     "Interference: an opponent was kept from playing the ball or moving to it, or an advantage was gained. Of something from outside: a player was distracted or hindered.",
		Values:  yesNo("play is hindered", "nobody is hindered"),
		Presume: presumeHinders, Why: "nobody was hindered"},
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
	{ID: Lands, About: OfEvent, Kinds: []Kind{Land},
		Ask:    "Was the ball in or out?",
		Doc:    "In means that some part of the ball touched the court, lines included.",
		Values: []Choice{{In, "in"}, {Out, "out"}}},
	{ID: IsLibero, About: OfPlayer,
		Ask:    "Is %s the acting libero?",
		Doc:    "Whether the player is the libero on the court.",
		Values: yesNo("libero", "not the libero"), Presume: presumeLibero, Why: "not the libero", Quiet: true},
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
	{ID: Row, About: OfPlayer,
		Ask:     "Was %s front row or back row?",
		Doc:     "The row in which the player stood at the service hit.",
		Values:  []Choice{{Front, "front row"}, {Back, "back row"}},
		Presume: presumeRow, Why: "a blocker or hitter at the net is front row"},
	{ID: Seen, About: OfEvent, Kinds: []Kind{Contact, NetTouch, Line, Strike},
		Ask:    "Did anybody of the crew see it?",
		Doc:    "A contact that nobody of the crew saw is not called.",
		Values: yesNo("seen by the crew", "not seen by the crew"), Presume: always(Yes), Why: "the crew saw it", Quiet: true},
	{ID: Serving, About: OfSetting, Sided: true,
		Ask:    "Which side was serving?",
		Doc:    "The side that served this rally.",
		Values: []Choice{{ValueA, "{A} is serving"}, {ValueB, "{B} is serving"}}},
	{ID: Side, About: OfEvent, Kinds: []Kind{Land, Strike, Cross}, Sided: true,
		Ask:     "On or above which side?",
		Doc:     "Whose floor the ball came down on or beside, whose side a thing it struck is above, or the side it went to.",
		Values:  []Choice{{ValueA, "on {A} side"}, {ValueB, "on {B} side"}},
		Presume: presumeSide, Why: "an attack or a serve goes to the other side"},
	{ID: Spent, About: OfSetting,
		Ask:    "Had that side already used its three contacts?",
		Doc:    "Whether the side that has the ball when the first told event happens has no contact left. Read only when the number used was not told.",
		Values: yesNo("no contact left", "a contact left"), Presume: always(No), Why: "each contact is within its team's three"},
	{ID: Struck, About: OfEvent, Kinds: []Kind{Strike},
		Ask:    "What did the ball touch?",
		Doc:    "The thing, other than a player or the floor of the court, that the ball touched.",
		Values: []Choice{{Ceiling, "the ceiling"}, {Antenna, "the antenna"}, {LowObject, "a low obstruction"}, {Posts, "the post or a cable"}, {Official, "an official"}, {Bystander, "a person"}, {OtherThing, "an outside object"}, {NetBand, "the net"}}},
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
		Values: yesNo("completely", "not yet completely"), Presume: always(Yes), Why: "it went completely through"},
}
