package deadball_test

import (
	"slices"
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// The ladders, written out case by case and apart from the rules that compute
// them. A cell is the sanction by what the person had before: nothing, a
// warning, a penalty, an expulsion.
var ladders = []struct {
	code    code.Code
	gravity play.Value
	had     [4]string
}{
	// International volleyball rules 2025-28, 21.2-21.3, diagram 9a.
	{code.International, deadball.Minor, [4]string{"warning", "penalty", "expulsion", "disqualification"}},
	{code.International, deadball.Rude, [4]string{"penalty", "penalty", "expulsion", "disqualification"}},
	{code.International, deadball.Offensive, [4]string{"expulsion", "expulsion", "expulsion", "disqualification"}},
	{code.International, deadball.Aggression, [4]string{"disqualification", "disqualification", "disqualification", "disqualification"}},
	// As the international one: officials' forum on the cards of three codes.
	{code.Club, deadball.Minor, [4]string{"warning", "penalty", "expulsion", "disqualification"}},
	{code.Club, deadball.Rude, [4]string{"penalty", "penalty", "expulsion", "disqualification"}},
	{code.Club, deadball.Offensive, [4]string{"expulsion", "expulsion", "expulsion", "disqualification"}},
	{code.Club, deadball.Aggression, [4]string{"disqualification", "disqualification", "disqualification", "disqualification"}},
	// Officials' magazine, five rule differences: yellow, red, then a harsher
	// step that was not seen.
	{code.Collegiate, deadball.Minor, [4]string{"warning", "penalty", "misconduct", "disqualification"}},
	{code.Collegiate, deadball.Rude, [4]string{"misconduct", "penalty", "misconduct", "disqualification"}},
	{code.Collegiate, deadball.Offensive, [4]string{"misconduct", "penalty", "misconduct", "disqualification"}},
	{code.Collegiate, deadball.Aggression, [4]string{"misconduct", "misconduct", "misconduct", "misconduct"}},
	// High-school conduct slides 2011: yellow, red, then both together.
	{code.Scholastic, deadball.Minor, [4]string{"warning", "penalty", "disqualification", "disqualification"}},
	{code.Scholastic, deadball.Rude, [4]string{"misconduct", "penalty", "disqualification", "disqualification"}},
	{code.Scholastic, deadball.Offensive, [4]string{"misconduct", "penalty", "disqualification", "disqualification"}},
	{code.Scholastic, deadball.Aggression, [4]string{"misconduct", "misconduct", "misconduct", "misconduct"}},
}

// TestMisconductLadder judges every code, gravity, earlier card, set of that
// card, person and warning of the team.
func TestMisconductLadder(t *testing.T) {
	before := []play.Value{deadball.None, deadball.Warned, deadball.Penalised, deadball.Expelled}
	n := 0
	for _, row := range ladders {
		for i, had := range before {
			for _, set := range []play.Value{deadball.ThisSet, deadball.EarlierSet} {
				for _, warned := range []play.Value{play.Yes, play.No} {
					for _, who := range []play.Value{deadball.PlayerOf, deadball.Coach, deadball.Assistant, deadball.AnyBench} {
						a := deadball.New(deadball.Misconduct, play.A).With(deadball.Gravity, row.gravity).With(deadball.CardBefore, had).
							With(deadball.CardSet, set).With(deadball.TeamWarned, warned).With(deadball.Member, who)
						want := row.had[i]
						if row.code == code.Collegiate && set == deadball.EarlierSet { // cards count for the set
							want = row.had[0]
						}
						if row.code == code.Club && row.gravity == deadball.Minor && had == deadball.None && warned == play.Yes {
							want = "penalty" // a warning is the team's
						}
						d := decide(t, a, row.code)
						if !d.Settled() || !slices.Equal(d.Ruling.Measure, []string{want}) || d.Ruling.Against != play.A {
							t.Errorf("%s: %s: ruled %s, want %s", row.code, a.Print(), d.Ruling, want)
						}
						point, _ := deadball.Next(d.Ruling)
						if loses := want == "penalty" || want == "disqualification" && row.code == code.Scholastic; loses != (point == play.B) {
							t.Errorf("%s: %s: point to %q after %s", row.code, a.Print(), point, want)
						}
						sits := row.code == code.Scholastic && want == "penalty" && who != deadball.PlayerOf
						if got := d.Ruling.Answer == "and the head coach sits for the rest of the match"; got != sits {
							t.Errorf("%s: %s: head coach seated: %v", row.code, a.Print(), got)
						}
						n++
					}
				}
			}
		}
	}
	if n != 4*4*4*2*2*4 {
		t.Errorf("%d cases judged", n)
	}
}

// TestDelayLadder judges every code and history of delays.
func TestDelayLadder(t *testing.T) {
	match := map[code.Code]bool{code.International: true, code.Club: true} // delays count for the whole match
	for _, c := range code.All() {
		for _, row := range []struct {
			had, set play.Value
			want     string
		}{
			{play.Unknown, play.Unknown, "delay"},
			{play.No, play.Unknown, "delay-warning"},
			{play.Yes, deadball.ThisSet, "delay-penalty"},
			{play.Yes, deadball.EarlierSet, "delay-warning"},
		} {
			want := row.want
			if row.set == deadball.EarlierSet && match[c] {
				want = "delay-penalty"
			}
			a := deadball.New(deadball.Delay, play.B).With(deadball.DelayBefore, row.had).With(deadball.DelaySet, row.set)
			d := decide(t, a, c)
			if !d.Settled() || !slices.Equal(d.Ruling.Measure, []string{want}) {
				t.Errorf("%s: %s: ruled %s, want %s", c, a.Print(), d.Ruling, want)
			}
			if point, serves := deadball.Next(d.Ruling); (point == play.A) != (want == "delay-penalty") || serves != point {
				t.Errorf("%s: %s: point to %q, %q serves", c, a.Print(), point, serves)
			}
		}
		a := deadball.New(deadball.Delay, play.A).With(deadball.DelayBefore, play.Yes)
		if d := decide(t, a, c); d.Settled() != match[c] {
			t.Errorf("%s: %s: settled %v though the set was not told", c, a.Print(), d.Settled())
		}
	}
}
