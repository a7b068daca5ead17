package answer

import (
	"slices"
	"testing"

	"example.org/netpost/engine/code"
)

// Of many who stand together the reason is who of them is out of order.
func TestBecauseOfMany(t *testing.T) {
	const rest = "3 at 4.5 m 2 m; 4 at 1.5 m 2 m; 5 at 1.5 m 6 m; 6 at 4.5 m 6 m | serving: 1 at 8 m 9.6 m; 2 at 7.5 m 2 m; 3 at 4.5 m 2 m; 4 at 1.5 m 2 m; 5 at 1.5 m 6 m; 6 at 4.5 m 6 m"
	for _, test := range []struct {
		text, outcome string
		because       []string
	}{
		{"receiving: 1 at 7.5 m 1 m; 2 at 7.5 m 2 m; " + rest, "fault", []string{"the receiving team's player in 1 stands ahead of the player in 2"}},
		{"receiving: 1 at 7.5 m 6 m; 2 at 7.5 m 2 m; " + rest, "play-on", []string{}},
	} {
		a := Ask(test.text, Options{Code: code.Scholastic})
		if string(a.Outcome) != test.outcome || !slices.Equal(a.Because, test.because) {
			t.Errorf("%q: %s because of %q", test.text, a.Outcome, a.Because)
		}
	}
}

func BenchmarkAskTwelve(b *testing.B) {
	const six = "1 at 7.5 m 6 m; 2 at 7.5 m 2 m; 3 at 4.5 m 2 m; 4 at 1.5 m 2 m; 5 at 1.5 m 6 m; 6 at 4.5 m 6 m"
	for b.Loop() {
		Ask("receiving: "+six+" | serving: "+six, Options{Code: code.Scholastic})
	}
}
