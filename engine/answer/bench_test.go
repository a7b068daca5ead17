package answer

import (
	"encoding/json"
	"math/rand/v2"
	"testing"

	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
)

// BenchmarkOf answers readings of random short plays: what a question costs
// after the reading, comparison of the codes and JSON included.
func BenchmarkOf(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var readings []notation.Reading
	for range 256 {
		readings = append(readings, notation.Reading{Rally: playgen.Rally(r, playgen.Options{Events: 2})})
	}
	for _, o := range []Options{{Code: "scholastic"}, {}} {
		name := string(o.Code)
		if name == "" {
			name = AnyCode
		}
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				if _, err := json.Marshal(Of(readings[i%len(readings)], o)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
