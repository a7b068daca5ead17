package notation

import (
	"math/rand/v2"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// What a print says is read back as the play that was printed.
func TestReadPrint(t *testing.T) {
	check := func(p *play.Rally) {
		t.Helper()
		q, ok := readPrint(Print(p))
		if !ok {
			t.Fatalf("not read: %s", Print(p))
		}
		if got, want := canon(q), canon(p); got != want {
			t.Fatalf("%s\ngot\n%s\nwant\n%s", Print(p), got, want)
		}
	}
	r := rand.New(rand.NewPCG(20, 21))
	for _, o := range options {
		for range 1000 {
			check(playgen.Rally(r, o))
		}
	}
	playgen.Short(2, func(p *play.Rally) bool { check(p); return true })
}

// Nothing but a print is taken for one.
func TestReadPrintRefuses(t *testing.T) {
	for _, text := range []string{
		"", "ball in plane, both front row, fourth contact?",
		"A's setter sets the ball, B's blocker touches the ball", // a comma tells an order
		"A's setter sets the ball well",
		"A's setter sets the ball, ball in the plane, in one action", // out of the order of the table
		"our setter sets the ball; then their blocker touches the ball",
		"then A's setter sets the ball",
		"A's second setter sets the ball",
		"which first", "front row", "there is nobody",
	} {
		if p, ok := readPrint(text); ok {
			t.Errorf("%q was taken for a print of %q", text, Print(p))
		}
	}
}
