package deadball

import (
	"slices"

	"example.org/netpost/engine/play"
)

// Kind says what sort of request or act it is.
type Kind string

// The kinds of act. The set is closed; Kinds lists it.
const (
	TimeOut      Kind = "time-out"
	Substitution Kind = "substitution"
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
var improperFacts = []play.FactID{HeldUp, ImproperBefore, DelayBefore}

// kinds is the table, sorted by id.
var kinds = []KindRow{
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
