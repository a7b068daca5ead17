package casebook

import (
	"testing"

	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

func TestCovers(t *testing.T) {
	read := func(words string) *play.Rally {
		t.Helper()
		r, err := notation.Read(words)
		if err != nil || r.Rally == nil || !r.Whole() {
			t.Fatalf("%q is not read whole: %v %v", words, r.Unread, err)
		}
		return r.Rally
	}
	for _, test := range []struct {
		note, asked string
		want        bool
	}{
		{"A's back-row setter attacks the ball, ball entirely above the net", "B's back-row setter attacks the ball, ball entirely above the net", true},
		{"A's back-row setter attacks the ball", "A's back-row setter attacks the ball, ball entirely above the net", true},
		{"A's back-row setter attacks the ball, ball entirely above the net", "A's back-row setter attacks the ball", false}, // tells less
		{"A's back-row setter attacks the ball", "A's front-row setter attacks the ball", false},                             // tells otherwise
		{"A's back-row setter attacks the ball", "A's back-row player attacks the ball", false},                              // leaves open who
		{"A's front-row hitter attacks the ball", "A's hitter attacks the ball", true},                                       // granted by everybody
		{"A's back-row setter attacks the ball", "A passes the ball, then A's back-row setter attacks the ball", false},      // more happens
		{"A's blocker touches the net, nobody is hindered", "B's blocker touches the net", true},                             // granted
		{"A's blocker touches the net, play is hindered", "B's blocker touches the net", false},                              // granted otherwise
		{"A's middle and B's blocker touch the ball at the same time", "B's blocker and A's middle touch the ball at the same time", true},
	} {
		if got := Covers(read(test.note), read(test.asked)); got != test.want {
			t.Errorf("a note on %q covers %q: %t, want %t", test.note, test.asked, got, test.want)
		}
	}
	if Covers(nil, nil) || Covers(&play.Rally{}, &play.Rally{}) {
		t.Error("a note without a play covers something")
	}
}
