package deadball

import (
	"slices"

	"example.org/netpost/engine/play"
)

// The ids of the facts.
const (
	AboveChin         play.FactID = "above-chin"
	AskedBy           play.FactID = "asked-by"
	BenchLeft         play.FactID = "bench-left"
	Between           play.FactID = "between"
	CardBefore        play.FactID = "card-before"
	CardSet           play.FactID = "card-set"
	Changed           play.FactID = "changed"
	ChargedDelay      play.FactID = "charged-delay"
	CoachThere        play.FactID = "coach-there"
	DelayBefore       play.FactID = "delay-before"
	DelayReason       play.FactID = "delay-reason"
	DelaySet          play.FactID = "delay-set"
	DisputeOf         play.FactID = "dispute-of"
	Exchange          play.FactID = "exchange"
	FacilityItem      play.FactID = "facility-item"
	Forced            play.FactID = "forced"
	Found             play.FactID = "found"
	Gravity           play.FactID = "gravity"
	HeldUp            play.FactID = "held-up"
	ImproperBefore    play.FactID = "improper-before"
	InZone            play.FactID = "in-zone"
	Item              play.FactID = "item"
	LateBefore        play.FactID = "late-before"
	LiberoUnable      play.FactID = "libero-unable"
	Made              play.FactID = "made"
	Member            play.FactID = "member"
	Mended            play.FactID = "mended"
	Moment            play.FactID = "moment"
	NextServer        play.FactID = "next-server"
	OutFor            play.FactID = "out-for"
	OwnPosition       play.FactID = "own-position"
	OwnSide           play.FactID = "own-side"
	PenaltyBetween    play.FactID = "penalty-between"
	ReadyAgain        play.FactID = "ready-again"
	SecondLibero      play.FactID = "second-libero"
	ServedElsewhere   play.FactID = "served-elsewhere"
	SheetFound        play.FactID = "sheet-found"
	Speaker           play.FactID = "speaker"
	Stoppage          play.FactID = "stoppage"
	Substituted       play.FactID = "substituted"
	SubstitutionsLeft play.FactID = "substitutions-left"
	TeamWarned        play.FactID = "team-warned"
	TimeOutsLeft      play.FactID = "time-outs-left"
)

// The values that rules name; yes and no are those of package play.
const (
	AfterContact   play.Value = "after-contact"
	Aggression     play.Value = "aggression"
	AnotherIn      play.Value = "another"
	Antenna        play.Value = "antenna"
	AnyBench       play.Value = "bench"
	Assistant      play.Value = "assistant"
	BeforeContact  play.Value = "before-contact"
	BeforeServe    play.Value = "before-whistle"
	BeforeSet      play.Value = "before-set"
	BothOn         play.Value = "both"
	Brace          play.Value = "brace"
	ByCrew         play.Value = "crew"
	ByTeam         play.Value = "team"
	Captain        play.Value = "captain"
	Coach          play.Value = "coach"
	Completed      play.Value = "completed"
	DuringRally    play.Value = "rally"
	EarlierSet     play.Value = "earlier-set"
	Electronics    play.Value = "electronics"
	Exceptional    play.Value = "exceptional"
	Expelled       play.Value = "expulsion"
	ForFront       play.Value = "front"
	ForcedRotation play.Value = "forced"
	Hazard         play.Value = "hazard"
	InSet          play.Value = "in-set"
	Injury         play.Value = "injury"
	Jewelry        play.Value = "jewelry"
	Judgement      play.Value = "judgement"
	LateServe      play.Value = "after-whistle"
	LegalSub       play.Value = "legal"
	LiberoLeft     play.Value = "libero"
	Minor          play.Value = "minor"
	NetSleeve      play.Value = "net-sleeve"
	NoRally        play.Value = "no-rally"
	None           play.Value = "none"
	OfRule         play.Value = "rule"
	Offensive      play.Value = "offensive"
	OtherLibero    play.Value = "other-libero"
	OtherPerson    play.Value = "other"
	Penalised      play.Value = "penalty"
	PenaltyPoint   play.Value = "penalty-point"
	PlayerOf       play.Value = "player"
	Religious      play.Value = "religious"
	Replay         play.Value = "replay"
	Replayed       play.Value = "replayed"
	RightPair      play.Value = "right"
	Rude           play.Value = "rude"
	SentOff        play.Value = "sent-off"
	Shorts         play.Value = "shorts"
	Slow           play.Value = "slow"
	StaysFront     play.Value = "stays"
	ThisSet        play.Value = "this-set"
	ToldIllegal    play.Value = "illegal"
	Warned         play.Value = "warning"
)

// row is a row of the table: the fact, and the value that every official
// grants when nobody told it.
type row struct {
	play.Fact
	granted play.Value
}

func yesNo(yes, no string) []play.Choice {
	return []play.Choice{{Value: play.Yes, Words: yes}, {Value: play.No, Words: no}}
}

// facts is the table, sorted by id. The facts are all about the act itself.
var facts = []row{
	{play.Fact{ID: AboveChin, About: play.OfSetting, Ask: "Is it a stud or post above the chin?",
		Doc:    "Whether the jewelry is a stud or post worn above the chin.",
		Values: yesNo("it is a stud or post above the chin", "it is no stud or post above the chin")}, play.Unknown},
	{play.Fact{ID: AskedBy, About: play.OfSetting, Ask: "Who asks for it?",
		Doc: "The person who makes the request.",
		Values: []play.Choice{{Value: Coach, Words: "asked for by the head coach"}, {Value: Captain, Words: "asked for by the captain on court"},
			{Value: Assistant, Words: "asked for by an assistant coach"}, {Value: OtherPerson, Words: "asked for by another person of the team"}},
		Why: "somebody asks who may ask"}, Coach},
	{play.Fact{ID: BenchLeft, About: play.OfSetting, Ask: "Who is left on the bench?",
		Doc: "Whether a legal substitute, or else one who may enter by an exceptional substitution, is left; the libero where there is nobody else.",
		Values: []play.Choice{{Value: LegalSub, Words: "a legal substitute is left"}, {Value: Exceptional, Words: "only an exceptional substitute is left"},
			{Value: LiberoLeft, Words: "only the libero is left"},
			{Value: None, Words: "nobody who may enter is left"}}}, play.Unknown},
	{play.Fact{ID: Between, About: play.OfSetting, Ask: "What lay between this replacement and the libero's last one?",
		Doc: "What happened between the last replacement of the libero and this one. A rally that is to be replayed was not completed.",
		Values: []play.Choice{{Value: Completed, Words: "a rally was completed since the libero's last replacement"},
			{Value: NoRally, Words: "no rally was played since the libero's last replacement"},
			{Value: PenaltyPoint, Words: "only a penalty point lies since the libero's last replacement"},
			{Value: ForcedRotation, Words: "only a penalty point that rotated the libero to the front row lies since the libero's last replacement"},
			{Value: Replayed, Words: "only a rally that is replayed lies since the libero's last replacement"}},
		Why: "a rally was completed since the libero's last replacement"}, Completed},
	{play.Fact{ID: CardBefore, About: play.OfSetting, Ask: "What card has this person had before?",
		Doc: "The gravest sanction for misconduct that the person has had before.",
		Values: []play.Choice{{Value: None, Words: "the person had no card before"}, {Value: Warned, Words: "the person had a warning before"},
			{Value: Penalised, Words: "the person had a penalty before"}, {Value: Expelled, Words: "the person was expelled before"}}}, play.Unknown},
	{play.Fact{ID: CardSet, About: play.OfSetting, Ask: "In which set was that card?",
		Doc:    "Whether the earlier card was shown in this set.",
		Values: []play.Choice{{Value: ThisSet, Words: "that card was in this set"}, {Value: EarlierSet, Words: "that card was in an earlier set"}}}, play.Unknown},
	{play.Fact{ID: Changed, About: play.OfSetting, Ask: "Was a rule misapplied, so that the ruling is changed?",
		Doc:    "Whether the review finds that a rule was misapplied and changes the ruling.",
		Values: yesNo("the ruling is changed", "the ruling stands")}, play.Unknown},
	{play.Fact{ID: ChargedDelay, About: play.OfSetting, Ask: "Was the team charged with a delay in this dead ball?",
		Doc:    "Whether the team was charged with a delay since the last rally.",
		Values: yesNo("the team was charged with a delay in this dead ball", "the team was charged with no delay in this dead ball"),
		Why:    "no delay was charged in this dead ball"}, play.No},
	{play.Fact{ID: CoachThere, About: play.OfSetting, Ask: "Was the head coach there?",
		Doc:    "Whether the head coach was on the bench when the captain asked.",
		Values: yesNo("the head coach was there", "the head coach was absent")}, play.Unknown},
	{play.Fact{ID: DelayBefore, About: play.OfSetting, Ask: "Has the team had a delay sanction before?",
		Doc:    "Whether the team has had a delay sanction earlier in the match.",
		Values: yesNo("the team had a delay sanction before", "the team had no delay sanction before")}, play.Unknown},
	{play.Fact{ID: DelayReason, About: play.OfSetting, Ask: "What holds the team up?",
		Doc:    "Whether the wait is for a hazard or for the team's own reasons.",
		Values: []play.Choice{{Value: Slow, Words: "it takes its time"}, {Value: Hazard, Words: "a hazard is mended: a wet floor or a loose shoe"}},
		Why:    "no hazard is mended"}, Slow},
	{play.Fact{ID: DelaySet, About: play.OfSetting, Ask: "In which set was that delay sanction?",
		Doc: "Whether the earlier delay sanction was in this set.",
		Values: []play.Choice{{Value: ThisSet, Words: "that delay sanction was in this set"},
			{Value: EarlierSet, Words: "that delay sanction was in an earlier set"}}}, play.Unknown},
	{play.Fact{ID: DisputeOf, About: play.OfSetting, Ask: "Is it about a judgement or about a rule?",
		Doc:    "Whether the team disputes a judgement, as in or out, or how a rule was applied.",
		Values: []play.Choice{{Value: Judgement, Words: "it is about a judgement"}, {Value: OfRule, Words: "it is about the application of a rule"}}}, play.Unknown},
	{play.Fact{ID: Exchange, About: play.OfSetting, Ask: "Who comes in for whom?",
		Doc: "Whether the libero and the players of the replacement are the right ones: the libero comes in for a back-row player, and only that player or the other libero comes in for the libero.",
		Values: []play.Choice{{Value: RightPair, Words: "the libero comes in for a back-row player or is replaced by that player"},
			{Value: OtherLibero, Words: "the other libero comes in for the libero"},
			{Value: AnotherIn, Words: "another player than the one replaced comes in for the libero"},
			{Value: ForFront, Words: "the libero comes in for a front-row player"},
			{Value: BothOn, Words: "two liberos are on court"},
			{Value: ToldIllegal, Words: "the replacement was illegal"},
			{Value: StaysFront, Words: "the libero stays on court in the front row"}},
		Why: "the libero comes in for a back-row player or is replaced by that player"}, RightPair},
	{play.Fact{ID: FacilityItem, About: play.OfSetting, Ask: "What is it about?",
		Doc:    "The part of the net that is in question.",
		Values: []play.Choice{{Value: Antenna, Words: "the antennas stand at a wrong place"}, {Value: NetSleeve, Words: "a sleeve on the net carries print"}}}, play.Unknown},
	{play.Fact{ID: Forced, About: play.OfSetting, Ask: "Is it for a player who is injured or sent off?",
		Doc:    "Whether the substitution is forced: the player is injured, expelled or disqualified.",
		Values: yesNo("it is for a player who is injured or sent off", "it is an ordinary one"),
		Why:    "it is an ordinary substitution"}, play.No},
	{play.Fact{ID: Found, About: play.OfSetting, Ask: "When was it noticed?",
		Doc: "When the crew or the table noticed it.",
		Values: []play.Choice{{Value: BeforeServe, Words: "noticed before the whistle for service"},
			{Value: BeforeContact, Words: "noticed after the whistle and before the serve was hit"},
			{Value: AfterContact, Words: "noticed after the serve was hit"}}}, play.Unknown},
	{play.Fact{ID: Gravity, About: play.OfSetting, Ask: "How grave was it?",
		Doc: "Minor: arguing, gestures. Rude: against good manners, contempt. Offensive: defaming or insulting words or gestures. Aggression: an attack on a person, or the threat of one.",
		Values: []play.Choice{{Value: Minor, Words: "it is minor"}, {Value: Rude, Words: "it is rude conduct"},
			{Value: Offensive, Words: "it is offensive conduct"}, {Value: Aggression, Words: "it is aggression"}}}, play.Unknown},
	{play.Fact{ID: HeldUp, About: play.OfSetting, Ask: "Did the request hold up play?",
		Doc:    "Whether the crew whistled for the request or the next serve had to wait for it.",
		Values: yesNo("the request held up play", "the request did not hold up play"),
		Why:    "the request did not hold up play"}, play.No},
	{play.Fact{ID: ImproperBefore, About: play.OfSetting, Ask: "Has the team made an improper request before in this match?",
		Doc:    "An improper request earlier in the match.",
		Values: yesNo("the team made an improper request before", "the team made no improper request before"),
		Why:    "it is the team's first improper request"}, play.No},
	{play.Fact{ID: InZone, About: play.OfSetting, Ask: "Was the substitute in the substitution zone in time?",
		Doc:    "Whether the substitute had entered the substitution zone, ready to play, when the request had to be there.",
		Values: yesNo("the substitute was in the zone in time", "the substitute was not in the zone in time"),
		Why:    "the substitute was in the zone in time"}, play.Yes},
	{play.Fact{ID: Item, About: play.OfSetting, Ask: "What is it?",
		Doc: "What the player wears or carries.",
		Values: []play.Choice{{Value: Jewelry, Words: "it is jewelry"}, {Value: Electronics, Words: "it is an electronic device for sound"},
			{Value: Shorts, Words: "it is shorts that differ in length alone"}, {Value: Religious, Words: "it is a religious or medical piece"},
			{Value: Brace, Words: "it is a brace or a cast"}}}, play.Unknown},
	{play.Fact{ID: LateBefore, About: play.OfSetting, Ask: "Has the team made a late libero replacement before in this match?",
		Doc:    "Whether an earlier libero replacement of the team came after the whistle for service.",
		Values: yesNo("the team made a late libero replacement before", "it is the team's first late libero replacement")}, play.Unknown},
	{play.Fact{ID: LiberoUnable, About: play.OfSetting, Ask: "Is the libero on court unable to play on?",
		Doc:    "Whether the libero on court is injured, ill or sent off, so that somebody must come in.",
		Values: yesNo("the libero on court cannot play on", "the libero on court can play on"),
		Why:    "the libero on court can play on"}, play.No},
	{play.Fact{ID: Made, About: play.OfSetting, Ask: "Was it done, or is it only asked?",
		Doc:    "Whether the libero has entered, left or gone to serve, or somebody asks whether that may be.",
		Values: yesNo("it was done", "it is only asked for")}, play.Unknown},
	{play.Fact{ID: Member, About: play.OfSetting, Ask: "Who was it?",
		Doc: "Which member of the team it was.",
		Values: []play.Choice{{Value: PlayerOf, Words: "it was a player"}, {Value: Coach, Words: "it was the head coach"},
			{Value: Assistant, Words: "it was an assistant coach"}, {Value: AnyBench, Words: "it was somebody else on the bench"}}}, play.Unknown},
	{play.Fact{ID: Mended, About: play.OfSetting, Ask: "Who puts it right?",
		Doc: "Whether the team put it right at once by itself, or the officials had to step in or play was held up.",
		Values: []play.Choice{{Value: ByTeam, Words: "the team puts it right at once by itself"},
			{Value: ByCrew, Words: "the officials step in or play is held up"}}}, play.Unknown},
	{play.Fact{ID: Moment, About: play.OfSetting, Ask: "When was it?",
		Doc: "When the request was made.",
		Values: []play.Choice{{Value: BeforeServe, Words: "before the whistle for service"},
			{Value: LateServe, Words: "after the whistle for service"}, {Value: DuringRally, Words: "during the rally"}},
		Why: "the ball was dead and the whistle for service had not gone"}, BeforeServe},
	{play.Fact{ID: NextServer, About: play.OfSetting, Ask: "Does the libero serve next?",
		Doc:    "Whether the libero, by this replacement, is the next server of the team.",
		Values: yesNo("the libero serves next", "the libero does not serve next"),
		Why:    "the libero does not serve next"}, play.No},
	{play.Fact{ID: OutFor, About: play.OfSetting, Ask: "Why can the libero not go on?",
		Doc:    "Whether the libero is injured or ill, or was sent off.",
		Values: []play.Choice{{Value: Injury, Words: "the libero is injured or ill"}, {Value: SentOff, Words: "the libero was sent off"}},
		Why:    "the libero is injured or ill"}, Injury},
	{play.Fact{ID: OwnPosition, About: play.OfSetting, Ask: "May the substitute enter in that position?",
		Doc:    "Whether the player may enter for that player: the position is the player's own, and the entries of that position allow it.",
		Values: yesNo("the substitute may enter in that position", "the substitute may not enter in that position"),
		Why:    "the substitute may enter in that position"}, play.Yes},
	{play.Fact{ID: OwnSide, About: play.OfSetting, Ask: "On which side of the court?",
		Doc:    "Whether the coach stays on the team's own side.",
		Values: yesNo("on the team's own side", "on the opponents' side"),
		Why:    "it is the team's own side"}, play.Yes},
	{play.Fact{ID: PenaltyBetween, About: play.OfSetting, Ask: "Was there a penalty point in between?",
		Doc:    "Whether a penalty, which gives a point, lay between this request and the stoppage or request before it.",
		Values: yesNo("a penalty point lies in between", "no penalty point lies in between"),
		Why:    "no penalty point lies in between"}, play.No},
	{play.Fact{ID: ReadyAgain, About: play.OfSetting, Ask: "Is the player ready to go on in time?",
		Doc:    "Whether the player is fit again within the time that the code gives.",
		Values: yesNo("the player is ready again in time", "the player is not ready in time"),
		Why:    "the player is not ready again in time"}, play.No},
	{play.Fact{ID: SecondLibero, About: play.OfSetting, Ask: "Has the team a second libero who can play?",
		Doc:    "Whether the team named a second libero who can play.",
		Values: yesNo("the team has a second libero who can play", "the team has no second libero")}, play.Unknown},
	{play.Fact{ID: ServedElsewhere, About: play.OfSetting, Ask: "Has a libero of the team served in another position of the order in this set?",
		Doc:    "Whether a libero of the team has served in another position of the serving order in this set.",
		Values: yesNo("a libero of the team has served in another position this set", "no libero of the team has served in another position this set"),
		Why:    "no libero of the team has served in another position this set"}, play.No},
	{play.Fact{ID: SheetFound, About: play.OfSetting, Ask: "Had the set begun?",
		Doc:    "Whether the fault of the sheet was found before the set began.",
		Values: []play.Choice{{Value: BeforeSet, Words: "found before the set began"}, {Value: InSet, Words: "found in the set"}},
		Why:    "it was found before the set began"}, BeforeSet},
	{play.Fact{ID: Speaker, About: play.OfSetting, Ask: "Who speaks to the officials?",
		Doc: "Who disputes the decision.",
		Values: []play.Choice{{Value: Captain, Words: "the captain on court speaks"}, {Value: Coach, Words: "the head coach speaks"},
			{Value: OtherPerson, Words: "another member of the team speaks"}}}, play.Unknown},
	{play.Fact{ID: Stoppage, About: play.OfSetting, Ask: "Was the rally completed?",
		Doc: "Whether the last rally was completed, or stopped and is to be played again.",
		Values: []play.Choice{{Value: None, Words: "the last rally was completed"}, {Value: Injury, Words: "the rally was stopped for an injury"},
			{Value: Replay, Words: "the rally is to be replayed"}},
		Why: "the last rally was completed"}, None},
	{play.Fact{ID: Substituted, About: play.OfSetting, Ask: "Has the team already substituted in this dead ball?",
		Doc:    "Whether the team made another request for substitution since the last rally.",
		Values: yesNo("the team already substituted in this dead ball", "it is the team's first substitution request in this dead ball"),
		Why:    "it is the team's first substitution request in this dead ball"}, play.No},
	{play.Fact{ID: SubstitutionsLeft, About: play.OfSetting, Ask: "Has the team a substitution left?",
		Doc:    "Whether the limit of substitutions in the set leaves room for the request.",
		Values: yesNo("the team has substitutions left", "the team has no substitution left"),
		Why:    "the team has substitutions left"}, play.Yes},
	{play.Fact{ID: TeamWarned, About: play.OfSetting, Ask: "Has another member of the team been warned?",
		Doc:    "Whether another member of the team has had a warning in the match.",
		Values: yesNo("another member of the team was warned before", "no other member of the team was warned before")}, play.Unknown},
	{play.Fact{ID: TimeOutsLeft, About: play.OfSetting, Ask: "Has the team a time-out left in this set?",
		Doc:    "Whether the team has not used all its time-outs of the set.",
		Values: yesNo("the team has a time-out left", "the team has no time-out left"),
		Why:    "the team has a time-out left"}, play.Yes},
}

var factIndex = func() map[play.FactID]int {
	m := make(map[play.FactID]int, len(facts))
	for i, f := range facts {
		m[f.ID] = i
	}
	return m
}()

func rowOf(id play.FactID) (row, bool) {
	i, ok := factIndex[id]
	if !ok {
		return row{}, false
	}
	return facts[i], true
}

// FactByID finds a row of the table of facts.
func FactByID(id play.FactID) (play.Fact, bool) {
	r, ok := rowOf(id)
	return r.Fact, ok
}

// Facts is the whole table, sorted by id.
func Facts() []play.Fact {
	var out []play.Fact
	for _, f := range facts {
		out = append(out, f.Fact)
	}
	return slices.Clip(out)
}
