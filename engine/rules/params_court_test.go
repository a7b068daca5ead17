package rules_test

import (
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// courtReads notes the parameters that positions and the order of service turn
// on.
func courtReads(t *testing.T, read map[code.Param]bool) {
	t.Helper()
	people := []court.Person{
		{ID: "p1", Team: play.A, Place: court.RightBack}, {ID: "p2", Team: play.A, Place: court.RightFront},
		{ID: "p3", Team: play.A, Role: play.Libero, Place: court.CentreBack}, {ID: "p4", Team: play.B, Place: court.LeftFront}, {ID: "p5", Team: play.B, Place: court.LeftBack},
	}
	told := func(facts map[play.Key]play.Value) *court.Alignment {
		a := &court.Alignment{People: people}
		for k, v := range facts {
			a = a.With(k, v)
		}
		return a
	}
	key := func(f play.FactID, of string) play.Key { return play.Key{Fact: f, Of: of} }
	subjects := []engine.Subject{
		told(map[play.Key]play.Value{key(court.StandsDepth, "p1-p2"): court.Ahead, key(court.StandsDepth, "p4-p5"): court.Behind, key(court.InTheAir, "p1"): play.Yes}),
		told(map[play.Key]play.Value{key(court.StandsAcross, "p1-p3"): court.ToTheLeft}),
		told(map[play.Key]play.Value{key(court.StandsInside, "p2"): court.OutsideHalf}),
		told(map[play.Key]play.Value{key(court.StandsInside, "p2"): court.OverTheLine}),
		&court.Alignment{People: []court.Person{{ID: "p1", Team: play.A, Bench: true}}},
	}
	for _, trouble := range []court.Trouble{court.WrongServer, court.WrongOrder, court.OfficialOrder, court.BothLost, court.VacantServes} {
		subjects = append(subjects, &court.Lineup{Trouble: trouble, By: play.A})
	}
	for _, s := range subjects {
		if err := s.Check(); err != nil {
			t.Fatal(err)
		}
		judge := court.Judge
		if _, ok := s.(*court.Lineup); ok {
			judge = court.JudgeLineup
		}
		for _, c := range code.All() {
			d, err := engine.Decide(judge, s, book(t, c))
			if err != nil {
				t.Fatal(err)
			}
			for _, p := range d.Params {
				read[p] = true
			}
		}
	}
}
