package notation

import (
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// deadTables are the tables of the lexicon of dead-ball acts.
var deadTables = [][]deadPhrase{deadRequests, deadConduct, deadPeople}

// deadBeside are the kinds that may be told beside the act asked about, which
// is named first, without changing what it is.
var deadBeside = [][2]deadball.Kind{
	{deadball.Dispute, deadball.Misconduct},
	{deadball.LineUpCheck, deadball.InjuryStop},
	{deadball.LineUpSheet, deadball.LineUpCheck},
	{deadball.PlayerOut, deadball.InjuryStop},
	{deadball.PlayerOut, deadball.Substitution},
	{deadball.Substitution, deadball.Delay},
	{deadball.Substitution, deadball.InjuryStop},
	{deadball.Substitution, deadball.Misconduct},
	{deadball.Substitution, deadball.TimeOut},
	{deadball.TimeOut, deadball.InjuryStop},
	{deadball.TimeOut, deadball.Misconduct},
	{deadball.TimeOut, deadball.Substitution},
}

// passed is a fact that means nothing for a kind of act: its words are passed
// over.
type passed struct {
	kind deadball.Kind
	fact play.FactID
}

var deadPassed = []passed{
	{deadball.Delay, deadball.Found},
	{deadball.Delay, deadball.Moment},
	{deadball.Dispute, deadball.Moment},
	{deadball.Facility, deadball.SheetFound},
	{deadball.LineUpCheck, deadball.PenaltyBetween},
	{deadball.LineUpCheck, deadball.Stoppage},
	{deadball.LineUpSheet, deadball.Found},
	{deadball.Misconduct, deadball.Moment},
	{deadball.Misconduct, deadball.Found},
	{deadball.PlayerOut, deadball.Moment},
	{deadball.PlayerOut, deadball.Stoppage},
	{deadball.PlayerOut, deadball.SubstitutionsLeft},
	{deadball.PlayerOut, deadball.TimeOutsLeft},
	{deadball.Substitution, deadball.BenchLeft},
	{deadball.Substitution, deadball.Found},
	{deadball.Substitution, deadball.TimeOutsLeft},
	{deadball.TimeOut, deadball.Found},
	{deadball.TooFew, deadball.Moment},
	{deadball.TooMany, deadball.Moment},
	{deadball.Worn, deadball.Moment},
}

// deadFillers carry nothing in the telling of a dead-ball act.
const deadFillers = "a accept allow allowed also am an and anybody anything as be book but by call can correct could did " +
	"do does doing done each everybody everyone fans fine for from game get give got grant had has have " +
	"he her here him his how hs i idk if in into is it its just legal let like match may me might must my " +
	"need next now of official officials ok okay on or other our own permit please r1 r2 ref referee " +
	"right rule rules ruling say sets she should side so some still take team teams than that the then " +
	"there they this to too try up us want was we well were what when where which while who will with " +
	"would yes yet you"
