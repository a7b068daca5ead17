package court

import (
	"slices"

	"example.org/netpost/engine/play"
)

// The facts of an alignment.
const (
	AirAcross    play.FactID = "stands-air-across"
	AirDepth     play.FactID = "stands-air-depth"
	InTheAir     play.FactID = "stands-airborne"
	BenchConduct play.FactID = "stands-bench-conduct"
	StandsAcross play.FactID = "stands-across"
	StandsDepth  play.FactID = "stands-depth"
	FeetAcross   play.FactID = "stands-feet-across"
	FeetDepth    play.FactID = "stands-feet-depth"
	StandsInside play.FactID = "stands-inside"
	TeamOrder    play.FactID = "stands-order"
	StandsPlace  play.FactID = "stands-place"
	ServingSide  play.FactID = "stands-serving"
	StandsWhen   play.FactID = "stands-when"
)

// The values of those facts.
const (
	Ahead     play.Value = "ahead"
	LevelWith play.Value = "level"
	Behind    play.Value = "behind"

	ToTheRight play.Value = "right"
	ToTheLeft  play.Value = "left"

	ReachLevel play.Value = "reach-level"
	ApartFeet  play.Value = "apart"

	InsideHalf  play.Value = "inside"
	OnTheLine   play.Value = "on-line"
	BetweenSize play.Value = "past-9-metres" // outside a court of 9 by 18 m, inside one of 30 by 60 ft
	OverTheLine play.Value = "over-centre"
	OutsideHalf play.Value = "outside"

	AtContact     play.Value = "at"
	BeforeContact play.Value = "before"
	AfterContact  play.Value = "after"

	InTheOrder  play.Value = "in-order"
	OutOfTheOne play.Value = "out-of-order"
)

// facts is the table, sorted by id. In words, {1} is the thing or the first
// of a pair, {2} the other.
var facts = []play.Fact{
	{ID: StandsAcross, About: play.OfPair,
		Ask:    "Of {1} and {2}, who stood farther right?",
		Doc:    "Two players of a row, facing the net, by the parts of their feet that are nearest to the side line in question. Level: exactly in line.",
		Values: []play.Choice{{Value: ToTheRight, Words: "{1} stands to the right of {2}"}, {Value: LevelWith, Words: "{1} stands in line with {2}"}, {Value: ToTheLeft, Words: "{1} stands to the left of {2}"}}},
	{ID: AirAcross, About: play.OfPair,
		Ask:    "Of {1} and {2}, who was farther right at the contact, in the air?",
		Doc:    "Where a player in the air was at the service contact, as against where the feet last touched the floor.",
		Values: []play.Choice{{Value: ToTheRight, Words: "{1} is in the air to the right of {2}"}, {Value: LevelWith, Words: "{1} is in the air in line with {2}"}, {Value: ToTheLeft, Words: "{1} is in the air to the left of {2}"}}},
	{ID: AirDepth, About: play.OfPair,
		Ask:    "Of {1} and {2}, who was nearer the net at the contact, in the air?",
		Doc:    "Where a player in the air was at the service contact, as against where the feet last touched the floor.",
		Values: []play.Choice{{Value: Ahead, Words: "{1} is in the air ahead of {2}"}, {Value: LevelWith, Words: "{1} is in the air level with {2}"}, {Value: Behind, Words: "{1} is in the air behind {2}"}}},
	{ID: InTheAir, About: play.OfPlayer,
		Ask:    "Was {1} in the air at the service contact?",
		Doc:    "Both feet off the floor at the service contact.",
		Values: []play.Choice{{Value: play.Yes, Words: "{1} is in the air at the service contact"}, {Value: play.No, Words: "{1} is on the floor at the service contact"}},
		Why:    "everybody stood on the floor", Quiet: true},
	{ID: BenchConduct, About: play.OfPlayer,
		Ask:    "Was it misconduct for {1} to come in?",
		Doc:    "Whether a bench player who enters during play does so as misconduct, as against by mistake.",
		Values: []play.Choice{{Value: play.Yes, Words: "{1} comes in as misconduct"}, {Value: play.No, Words: "{1} comes in with no misconduct"}},
		Why:    "it was no misconduct"},
	{ID: StandsDepth, About: play.OfPair,
		Ask:    "Of {1} and {2}, who stood nearer the net at the service contact?",
		Doc:    "By the parts of their feet on the floor that are nearest to the centre line; of a player in the air where they last touched it. Level: exactly.",
		Values: []play.Choice{{Value: Ahead, Words: "{1} stands ahead of {2}"}, {Value: LevelWith, Words: "{1} stands level with {2}"}, {Value: Behind, Words: "{1} stands behind {2}"}}},
	{ID: FeetAcross, About: play.OfPair,
		Ask:    "From side to side, did a foot of one of {1} and {2} reach level with a foot of the other?",
		Doc:    "Whether the feet of two players of a row, who stand the wrong way round by their nearest parts, still reach level with one another. Some wordings then find no fault.",
		Values: []play.Choice{{Value: ReachLevel, Words: "the feet of {1} and {2} reach level with each other from side to side"}, {Value: ApartFeet, Words: "no feet of {1} and {2} are level from side to side"}},
		Why:    "neither stood astride the other"},
	{ID: FeetDepth, About: play.OfPair,
		Ask:    "From front to back, did a foot of one of {1} and {2} reach level with a foot of the other?",
		Doc:    "Whether the feet of two partners, who stand the wrong way round by their nearest parts, still reach level with one another. Some wordings then find no fault.",
		Values: []play.Choice{{Value: ReachLevel, Words: "the feet of {1} and {2} reach level with each other from front to back"}, {Value: ApartFeet, Words: "no feet of {1} and {2} are level from front to back"}},
		Why:    "neither stood astride the other"},
	{ID: StandsInside, About: play.OfPlayer,
		Ask:    "Was {1} inside the own court at the service contact?",
		Doc:    "Each foot on the own half or touching one of its lines. A foot beyond the centre line is a matter of its own.",
		Values: []play.Choice{{Value: InsideHalf, Words: "{1} is inside the court"}, {Value: OnTheLine, Words: "{1} has a foot on the line"}, {Value: BetweenSize, Words: "{1} is outside a court of 9 by 18 m and inside one of 30 by 60 ft"}, {Value: OverTheLine, Words: "{1} has a foot over the centre line"}, {Value: OutsideHalf, Words: "{1} is outside the court"}}},
	{ID: TeamOrder, About: play.OfPlayer,
		Ask:    "Was {1} in its order of positions at the service contact?",
		Doc:    "Whether every pair of a team that the code compares stood in order. Read only where no pair was told.",
		Values: []play.Choice{{Value: InTheOrder, Words: "{1} is in order"}, {Value: OutOfTheOne, Words: "{1} is out of position"}}},
	{ID: StandsPlace, About: play.OfPlayer,
		Ask:    "Which position was {1} in?",
		Doc:    "The place in the order of service at that rally: 1 right back, 2 right front, 3 centre front, 4 left front, 5 left back, 6 centre back. The libero's is that of the player replaced.",
		Values: []play.Choice{{Value: "1", Words: "{1} is in position 1"}, {Value: "2", Words: "{1} is in position 2"}, {Value: "3", Words: "{1} is in position 3"}, {Value: "4", Words: "{1} is in position 4"}, {Value: "5", Words: "{1} is in position 5"}, {Value: "6", Words: "{1} is in position 6"}}},
	{ID: ServingSide, About: play.OfSetting, Sided: true,
		Ask:    "Which side is serving?",
		Doc:    "The side that serves this rally. The server is compared with nobody; in some codes the serving team is not bound at all.",
		Values: []play.Choice{{Value: play.ValueA, Words: "{A} serves"}, {Value: play.ValueB, Words: "{B} serves"}},
		Why:    "a player in position 1 who stands on the court is no server"},
	{ID: StandsWhen, About: play.OfSetting,
		Ask:    "When did they stand so?",
		Doc:    "Positions are judged at one moment: when the server hits the ball.",
		Values: []play.Choice{{Value: AtContact, Words: "at the service contact"}, {Value: BeforeContact, Words: "before the service contact only"}, {Value: AfterContact, Words: "after the service contact only"}},
		Why:    "they stood so at the service contact"},
}

// FactByID finds a row of the table of an alignment.
func FactByID(id play.FactID) (play.Fact, bool) {
	i := slices.IndexFunc(facts, func(f play.Fact) bool { return f.ID == id })
	if i < 0 {
		return play.Fact{}, false
	}
	return facts[i], true
}

// Facts is the whole table of an alignment, sorted by id.
func Facts() []play.Fact { return slices.Clone(facts) }
