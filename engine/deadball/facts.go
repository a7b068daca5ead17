package deadball

import (
	"slices"

	"example.org/netpost/engine/play"
)

// The ids of the facts.
const (
	AskedBy           play.FactID = "asked-by"
	CoachThere        play.FactID = "coach-there"
	ChargedDelay      play.FactID = "charged-delay"
	DelayBefore       play.FactID = "delay-before"
	Forced            play.FactID = "forced"
	HeldUp            play.FactID = "held-up"
	ImproperBefore    play.FactID = "improper-before"
	InZone            play.FactID = "in-zone"
	Moment            play.FactID = "moment"
	OwnPosition       play.FactID = "own-position"
	PenaltyBetween    play.FactID = "penalty-between"
	Stoppage          play.FactID = "stoppage"
	Substituted       play.FactID = "substituted"
	SubstitutionsLeft play.FactID = "substitutions-left"
	TimeOutsLeft      play.FactID = "time-outs-left"
)

// The values that rules name; yes and no are those of package play.
const (
	Assistant   play.Value = "assistant"
	BeforeServe play.Value = "before-whistle"
	Captain     play.Value = "captain"
	Coach       play.Value = "coach"
	DuringRally play.Value = "rally"
	EarlierSet  play.Value = "earlier-set"
	Injury      play.Value = "injury"
	LateServe   play.Value = "after-whistle"
	None        play.Value = "none"
	OtherPerson play.Value = "other"
	Replay      play.Value = "replay"
	ThisSet     play.Value = "this-set"
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
	{play.Fact{ID: AskedBy, About: play.OfSetting, Ask: "Who asks for it?",
		Doc: "The person who makes the request.",
		Values: []play.Choice{{Value: Coach, Words: "asked for by the head coach"}, {Value: Captain, Words: "asked for by the captain on court"},
			{Value: Assistant, Words: "asked for by an assistant coach"}, {Value: OtherPerson, Words: "asked for by another person of the team"}},
		Why: "somebody asks who may ask"}, Coach},
	{play.Fact{ID: ChargedDelay, About: play.OfSetting, Ask: "Was the team charged with a delay in this dead ball?",
		Doc:    "Whether the team was charged with a delay since the last rally.",
		Values: yesNo("the team was charged with a delay in this dead ball", "the team was charged with no delay in this dead ball"),
		Why:    "no delay was charged in this dead ball"}, play.No},
	{play.Fact{ID: CoachThere, About: play.OfSetting, Ask: "Was the head coach there?",
		Doc:    "Whether the head coach was on the bench when the captain asked.",
		Values: yesNo("the head coach was there", "the head coach was absent")}, play.Unknown},
	{play.Fact{ID: DelayBefore, About: play.OfSetting, Ask: "Has the team had a delay sanction before?",
		Doc: "The delay sanctions of the team earlier in the match.",
		Values: []play.Choice{{Value: None, Words: "the team had no delay sanction before"},
			{Value: ThisSet, Words: "the team had a delay sanction in this set"},
			{Value: EarlierSet, Words: "the team had a delay sanction in an earlier set only"}}}, play.Unknown},
	{play.Fact{ID: Forced, About: play.OfSetting, Ask: "Is it for a player who is injured or sent off?",
		Doc:    "Whether the substitution is forced: the player is injured, expelled or disqualified.",
		Values: yesNo("it is for a player who is injured or sent off", "it is an ordinary one"),
		Why:    "it is an ordinary substitution"}, play.No},
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
	{play.Fact{ID: Moment, About: play.OfSetting, Ask: "When was it?",
		Doc: "When the request was made.",
		Values: []play.Choice{{Value: BeforeServe, Words: "before the whistle for service"},
			{Value: LateServe, Words: "after the whistle for service"}, {Value: DuringRally, Words: "during the rally"}},
		Why: "the ball was dead and the whistle for service had not gone"}, BeforeServe},
	{play.Fact{ID: OwnPosition, About: play.OfSetting, Ask: "May the substitute enter in that position?",
		Doc:    "Whether the player may enter for that player: the position is the player's own, and the entries of that position allow it.",
		Values: yesNo("the substitute may enter in that position", "the substitute may not enter in that position"),
		Why:    "the substitute may enter in that position"}, play.Yes},
	{play.Fact{ID: PenaltyBetween, About: play.OfSetting, Ask: "Was there a penalty point in between?",
		Doc:    "Whether a penalty, which gives a point, lay between this request and the stoppage or request before it.",
		Values: yesNo("a penalty point lies in between", "no penalty point lies in between"),
		Why:    "no penalty point lies in between"}, play.No},
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
