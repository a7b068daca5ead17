package deadball

import (
	"slices"

	"example.org/netpost/engine/play"
)

// Kind says what sort of request or act it is.
type Kind string

// The kinds of act. The set is closed; Kinds lists it.
const (
	CoachOnCourt        Kind = "coach-on-court"
	Delay               Kind = "delay"
	Dispute             Kind = "dispute"
	Facility            Kind = "facility"
	IllegalPlayer       Kind = "illegal-player"
	IllegalSubstitution Kind = "illegal-substitution"
	InjuryStop          Kind = "injury-stop"
	LiberoOut           Kind = "libero-out"
	LiberoReplacement   Kind = "libero-replacement"
	LiberoServe         Kind = "libero-serve"
	LineUpCheck         Kind = "line-up-check"
	LineUpSheet         Kind = "line-up-sheet"
	Misconduct          Kind = "misconduct"
	PlayerOut           Kind = "player-out"
	Substitution        Kind = "substitution"
	TimeOut             Kind = "time-out"
	TooFew              Kind = "too-few"
	TooMany             Kind = "too-many"
	Worn                Kind = "worn"
)

// A KindRow is one row of the table of kinds.
type KindRow struct {
	ID    Kind
	Says  string // the act in a sentence; {team} is whose it is
	Rule  string // the rule that judges it
	Facts []play.FactID
	Doc   string
}

// improperFacts are what the answer to a request at a wrong moment turns on.
var improperFacts = []play.FactID{HeldUp, ImproperBefore, DelayBefore, DelaySet}

// kinds is the table, sorted by id.
var kinds = []KindRow{
	{
		ID: CoachOnCourt, Says: "{team}'s coach steps onto the court in a time-out", Rule: "coach-on-court",
		Facts: []play.FactID{OwnSide},
		Doc:   "A coach, head or assistant, is on the court while a time-out runs.",
	},
	{
		ID: Delay, Says: "{team} delays the game", Rule: "delay",
		Facts: []play.FactID{DelayBefore, DelaySet, DelayReason},
		Doc:   "A team is not ready, prolongs a stoppage or otherwise holds up the match.",
	},
	{
		ID: Dispute, Says: "{team} disputes a decision", Rule: "dispute",
		Facts: []play.FactID{Changed, DisputeOf, Speaker},
		Doc:   "A team argues a decision, asks for a review or protests.",
	},
	{
		ID: Facility, Says: "{team} asks about the net or the court", Rule: "facility",
		Facts: []play.FactID{FacilityItem},
		Doc:   "Something about the net and its posts is found before play.",
	},
	{
		ID: IllegalPlayer, Says: "{team} has a player on court who may not play", Rule: "illegal-player",
		Facts: []play.FactID{DelayBefore, DelaySet, Found},
		Doc:   "A player is on court who is not on the sheet, was sent off or wears a wrong number.",
	},
	{
		ID: IllegalSubstitution, Says: "{team}'s illegal substitution is found", Rule: "illegal-substitution",
		Facts: []play.FactID{DelayBefore, DelaySet, Found},
		Doc:   "A substitution that was made turns out to be illegal: wrong position, beyond the limit, never asked for.",
	},
	{
		ID: InjuryStop, Says: "play is stopped in the rally for {team}'s injured player", Rule: "injury-stop",
		Doc: "A rally is stopped because a player is hurt.",
	},
	{
		ID: LiberoOut, Says: "{team}'s libero cannot go on", Rule: "libero-out",
		Facts: []play.FactID{OutFor, SecondLibero},
		Doc:   "The libero is injured, ill or sent off, and the question is who goes on as libero.",
	},
	{
		ID: LiberoReplacement, Says: "{team} makes a libero replacement", Rule: "libero-replacement",
		Facts: []play.FactID{Exchange, Between, LiberoUnable, NextServer, ServedElsewhere, Moment, LateBefore, Made, Found, Mended, DelayBefore, DelaySet},
		Doc:   "The libero comes in for a player, or somebody comes in for the libero; or it is asked whether that may be.",
	},
	{
		ID: LiberoServe, Says: "{team}'s libero goes to serve", Rule: "libero-serving",
		Facts: []play.FactID{ServedElsewhere, Made, Found, Mended, DelayBefore, DelaySet},
		Doc:   "The libero serves or is about to.",
	},
	{
		ID: LineUpCheck, Says: "{team} asks for a line-up check", Rule: "line-up-check",
		Facts: []play.FactID{Moment, HeldUp, DelayBefore, DelaySet},
		Doc:   "A team asks whether it stands right.",
	},
	{
		ID: LineUpSheet, Says: "{team}'s line-up sheet is wrong", Rule: "line-up-sheet",
		Facts: []play.FactID{SheetFound},
		Doc:   "A line-up sheet that cannot be right: a number twice, a number missing, a player who is not there.",
	},
	{
		ID: Misconduct, Says: "a member of {team} misbehaves", Rule: "misconduct",
		Facts: []play.FactID{CardBefore, CardSet, Gravity, Member, TeamWarned},
		Doc:   "Conduct towards officials, opponents, teammates or spectators.",
	},
	{
		ID: PlayerOut, Says: "{team}'s player cannot go on", Rule: "player-out",
		Facts: []play.FactID{BenchLeft, ReadyAgain},
		Doc:   "A player is injured, ill or sent off and somebody has to come in.",
	},
	{
		ID: Substitution, Says: "{team} requests a substitution", Rule: "substitution-request",
		Facts: slices.Concat([]play.FactID{Moment, AskedBy, CoachThere, Stoppage, Forced, SubstitutionsLeft, OwnPosition, InZone, Substituted, PenaltyBetween, ChargedDelay}, improperFacts),
		Doc:   "A team asks to substitute one or several players. That they enter the zone is the request where a code has it so.",
	},
	{
		ID: TimeOut, Says: "{team} requests a time-out", Rule: "time-out-request",
		Facts: slices.Concat([]play.FactID{Moment, AskedBy, CoachThere, Stoppage, TimeOutsLeft, PenaltyBetween}, improperFacts),
		Doc:   "A team asks for a time-out.",
	},
	{
		ID: TooFew, Says: "{team} has too few players on court", Rule: "players-on-court",
		Facts: []play.FactID{DelayBefore, DelaySet, Found},
		Doc:   "Fewer than six stand on the court though the team has six.",
	},
	{
		ID: TooMany, Says: "{team} has too many players on court", Rule: "players-on-court",
		Facts: []play.FactID{DelayBefore, DelaySet, Found},
		Doc:   "Seven or more stand on the court.",
	},
	{
		ID: Worn, Says: "{team}'s player wears or carries something", Rule: "worn",
		Facts: []play.FactID{AboveChin, Item},
		Doc:   "Jewelry, a device, shorts, a brace: whether a player may play with it.",
	},
}

// Kinds is the whole table, sorted by id.
func Kinds() []KindRow { return slices.Clone(kinds) }

// KindByID finds a row of the table.
func KindByID(id Kind) (KindRow, bool) {
	for _, k := range kinds {
		if k.ID == id {
			return k, true
		}
	}
	return KindRow{}, false
}

func kindIDs() []string {
	var s []string
	for _, k := range kinds {
		s = append(s, string(k.ID))
	}
	return s
}
