package notation_test

import (
	"slices"
	"testing"

	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// "Last season" puts the rules one season back; a season named by its years
// does not.
func TestSeasonsAgo(t *testing.T) {
	for _, c := range []struct {
		text string
		ago  int
	}{
		{"last season: our setter doubles the second contact, teammate plays it next", 1},
		{"this was two seasons ago. A's hitter touches the net", 2},
		{"A's hitter touches the net", 0},
	} {
		r, err := notation.Read(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Ago != c.ago {
			t.Errorf("%q: %d seasons ago, want %d", c.text, r.Ago, c.ago)
		}
	}
}

// Further questions are named in the words of the text; another call of the
// same act is none.
func TestFurtherQuestions(t *testing.T) {
	for _, c := range []struct {
		text string
		more []string
	}{
		{"B's blocker touches the net while blocking. net? does it matter that she had landed?", []string{"does it matter that she had landed?"}},
		{"A's setter sets it. lift? or double?", nil},
		{"our pass hits the ceiling over our side. replay? what if it is over the other side?", []string{"what if it is over the other side?"}},
	} {
		r, err := notation.Read(c.text)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(r.More, c.more) {
			t.Errorf("%q: further questions %q, want %q", c.text, r.More, c.more)
		}
	}
}

// Another case that is only asked about leaves what it would change open, and
// adds nothing that happened.
func TestSuppose(t *testing.T) {
	r, err := notation.Read("our pass hits the ceiling over our side. what if it is over their side?")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range r.Rally.Events {
		if e.Kind == play.Strike {
			if v := r.Rally.Get(play.Key{Fact: play.Side, Of: e.ID}); v != play.Unknown {
				t.Errorf("the side of the ceiling is %q; it is what is asked about", v)
			}
		}
	}
	if n := len(r.Rally.Events); n != 2 {
		t.Errorf("%d events, want the pass and the ceiling", n)
	}
}
