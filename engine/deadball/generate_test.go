package deadball_test

import (
	"math/rand/v2"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// random is an act of a kind with some of its facts told and some in doubt.
func random(r *rand.Rand, k deadball.KindRow) *deadball.Act {
	a := deadball.New(k.ID, play.A)
	if r.IntN(2) == 0 {
		a.By = play.B
	}
	for _, id := range k.Facts {
		f, _ := deadball.FactByID(id)
		switch r.IntN(4) {
		case 0, 1:
			a = a.With(id, f.Values[r.IntN(len(f.Values))].Value)
		case 2:
			a = a.WithVoid(id)
		}
	}
	return a
}
