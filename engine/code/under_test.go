package code

import (
	"slices"
	"testing"
)

func TestUnder(t *testing.T) {
	for _, c := range []struct {
		code   Code
		number string
		want   Param
	}{
		{International, "12.4.4", "serve.clock-seconds"},
		{International, "15.7", "subs.re-entry"}, // in the range 15.6-15.7
		{International, "6.3", "match.set-points"},
		{Scholastic, "10-3-2", "subs.per-set"},
		{Scholastic, "8-2-5e", "serve.before-signal"},
		{Scholastic, "9-5", "serve.block-of-serve"},
	} {
		if got := open(t, c.code, 0).Under(c.number); !slices.Contains(got, c.want) || !slices.IsSorted(got) {
			t.Errorf("%s %s: %v, want %s among them", c.code, c.number, got, c.want)
		}
	}
	for _, none := range []string{"99-1", "6.4.9", "9-5-55", ""} {
		if got := open(t, Scholastic, 0).Under(none); got != nil {
			t.Errorf("%q: %v, want nothing", none, got)
		}
	}
	// An own number goes before those below it, and a letter finds its rule.
	b := open(t, Scholastic, 0)
	if got := b.Under("8-2-5z"); !slices.Contains(got, "serve.clock-seconds") {
		t.Errorf("8-2-5z: %v", got)
	}
}
