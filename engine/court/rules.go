package court

import (
	"slices"

	"example.org/netpost/engine/code"
)

// Rule is one rule of positions or of the order of service.
type Rule struct {
	ID    string
	Title string     // a name a crew would use
	Text  string     // our summary; never a book's sentence
	Cite  code.Param // the parameter whose cell gives number, edition and basis
}

// The ids of the rules.
const (
	ruleBench      = "bench-player-on-court"
	ruleBothOut    = "both-teams-out-of-position"
	ruleBound      = "bound-to-positions"
	ruleFeetDecide = "feet-decide-positions"
	ruleOverCentre = "foot-over-centre-at-serve"
	ruleInside     = "inside-own-court"
	ruleLibero     = "libero-position"
	rulePartners   = "overlap-front-back"
	ruleRow        = "overlap-row"
)

// ruleTable is every rule of an alignment, sorted by id.
var ruleTable = []Rule{
	{ruleBench, "bench player on the court", "A bench player who comes onto the court during play is, by code, out of position or a matter of conduct.", "align.bench-player-on-court"},
	{ruleBothOut, "both teams out of position", "Where both teams are bound to their positions and both are out of them at the service contact, the rally is replayed.", "align.both-teams-out"},
	{ruleBound, "bound to positions", "At the service contact the receivers must be in their order of positions, and in some codes the serving team too. The server is compared with nobody.", "align.receiving-team"},
	{ruleFeetDecide, "the feet decide", "Players are compared by their feet on the floor; one in the air stands where the feet last touched it.", "align.judged-by"},
	{ruleOverCentre, "foot over the centre line at the serve", "A foot over the centre line at the service contact is no fault of position; what it hinders in the rally is judged there.", "align.foot-over-centre"},
	{ruleInside, "inside the own court", "All but the server stand inside their own court at the service contact. The lines belong to it.", "align.inside-court"},
	{ruleLibero, "the libero's position", "The libero stands in the order for the player replaced.", "align.libero-counts"},
	{rulePartners, "front row and back row", "A front-row player is compared with the back-row player of the same lane only: 2 with 1, 3 with 6, 4 with 5. By code level feet are in order or not.", "align.front-back-pair"},
	{ruleRow, "left, centre and right", "Within a row a side player is compared with the centre player, and in some codes with the other side player too.", "align.same-row"},
}

// Rules is every rule of an alignment, sorted by id.
func Rules() []Rule { return slices.Clone(ruleTable) }
