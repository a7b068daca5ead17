package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// clauses say one fact with its subject, in a reason, a branch or a
// presumption. In a row {is} is the words of the value, {who} the player,
// {past} the event. A fact of the setting has no row: its words are whole.
var clauses = []struct {
	fact play.FactID
	form string
}{
	{play.Again, "{is} when {past}"},
	{play.Aids, "{is} when {past}"},
	{play.Attempts, "{past} {is}"},
	{play.BodyPart, "{past} {is}"},
	{play.Cause, "{past}, {is}"},
	{play.Certain, "{is} when {past}"},
	{play.ClockTime, "{past} {is}"},
	{play.Completes, "{is} after {past}"},
	{play.CouldPlay, "{is} when {past}"},
	{play.Crossed, "{past} {is}"},
	{play.Decides, "{is} when {past}"},
	{play.Deliberate, "{past} {is}"},
	{play.EndsAs, "{is} when {past}"},
	{play.ErrorWhistle, "{is}"},
	{play.Extent, "{past}, {is}"},
	{play.Feet, "{past} with {is}"},
	{play.Fingers, "{past} {is}"},
	{play.Footing, "{is} when {past}"},
	{play.Gear, "{past}, {is}"},
	{play.Grouped, "{is} when {past}"},
	{play.HandsUp, "{is} when {past}"},
	{play.Hazard, "{past}, {is}"},
	{play.Height, "{is} when {past}"},
	{play.Hidden, "{is} when {past}"},
	{play.High, "{past}, {is}"},
	{play.Hinders, "{is} when {past}"},
	{play.HitWith, "{is} when {past}"},
	{play.Holding, "{past}, {is}"},
	{play.How, "the ball went {is}"},
	{play.Inside, "{past}, {is}"},
	{play.Lands, "{past} {is}"},
	{play.IsLibero, "{who} was {is}"},
	{play.LowOver, "{past} {is}"},
	{play.Manner, "{past}, {is}"},
	{play.Part, "{who} touched {is}"},
	{play.Place, "{is} when {past}"},
	{play.Playing, "{past} {is}"},
	{play.ReachHeight, "{is} when {past}"},
	{play.Ready, "{is} when {past}"},
	{play.Receivers, "{is} when {past}"},
	{play.Row, "{who} was {is}"},
	{play.Seen, "{past}, {is}"},
	{play.Serious, "{past}, {is}"},
	{play.ServingSix, "{is} when {past}"},
	{play.Side, "{past} {is}"},
	{play.Signalled, "{past} {is}"},
	{play.Spot, "{past} {is}"},
	{play.Struck, "the ball hit {is}"},
	{play.Stuck, "{past}, {is}"},
	{play.TakeOff, "{past} {is}"},
	{play.Together, "{past}, {is}"},
	{play.Touches, "{past}, {is}"},
	{play.ServerTurn, "{past} {is}"},
	{play.What, "{who} took hold of {is}"},
	{play.Where, "{past} {is}"},
	{play.Wholly, "{past} {is}"},
}

// Clause says that a fact has a value, with its subject: "A's setter was front
// row", "ball in the plane when B's blocker touched it".
func Clause(p *play.Rally, k play.Key, v play.Value) string {
	f, ok := play.FactByID(k.Fact)
	if !ok {
		return k.String() + " is " + string(v)
	}
	if k.Fact == play.Order {
		return orderClause(p, k, v)
	}
	form := "{is}"
	for _, c := range clauses {
		if c.fact == k.Fact {
			form = c.form
		}
	}
	e, _ := p.Event(k.Of)
	if !strings.Contains(form, "{past}") {
		form = join(form, times(p, e))
	}
	return strings.NewReplacer(
		"{is}", in(p, f.Words(v), teamOf(p, k)),
		"{who}", Who(p, k.Of),
		"{past}", past(p, e, k.Fact),
	).Replace(form)
}

func teamOf(p *play.Rally, k play.Key) play.Team {
	if pl, ok := p.Player(k.Of); ok {
		return pl.Team
	}
	e, _ := p.Event(k.Of)
	return e.Team
}

// pair is the two events of an order key.
func pair(p *play.Rally, k play.Key) (first, second play.Event) {
	a, b, _ := strings.Cut(k.Of, "-")
	first, _ = p.Event(a)
	second, _ = p.Event(b)
	return first, second
}

func orderClause(p *play.Rally, k play.Key, v play.Value) string {
	a, b := pair(p, k)
	first, second := past(p, a, k.Fact), past(p, b, k.Fact)
	switch v {
	case play.Same:
		return first + " and " + second + " at the same time"
	case play.After:
		return first + " after " + second
	}
	return first + " before " + second
}
