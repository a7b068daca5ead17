package notation

import (
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/play"
)

// firstUntold asks for the place, then the height, of the last contact.
func firstUntold(p *play.Rally) (play.Key, bool) {
	for _, e := range slices.Backward(p.Events) {
		for _, f := range []play.FactID{play.Place, play.Height} {
			if k := (play.Key{Fact: f, Of: e.ID}); e.Kind == play.Contact && p.Get(k) == play.Unknown {
				return k, true
			}
		}
	}
	return play.Key{}, false
}

func TestComplete(t *testing.T) {
	for _, test := range []struct {
		text string
		want []string // the first texts, in order
	}{
		// The answers to the deciding question lead.
		{"B's blocker touches the ball", []string{
			"B's blocker touches the ball, ball wholly on B's side",
			"B's blocker touches the ball, ball in the plane",
			"B's blocker touches the ball, ball wholly on A's side",
		}},
		{"B's blocker touches the ball, ball in the plane, ", []string{
			"B's blocker touches the ball, ball in the plane, ball wholly above the net",
			"B's blocker touches the ball, ball in the plane, ball not wholly above the net",
		}},
		// Also where their beginning is typed.
		{"B's blocker touches the ball, ball in", []string{"B's blocker touches the ball, ball in the plane"}},
		{"B's blocker touches the ball, ball wholly on A", []string{"B's blocker touches the ball, ball wholly on A's side"}},
		// A phrase of more typed words comes before one of fewer.
		{"A's setter touches the n", []string{"A's setter touches the net"}},
		{"A's bloc", []string{"A's blocker", "A's blocks the ball"}},
		{"both fro", []string{"both front row"}},
		{"B's blocker touches the ball, at the s", []string{"B's blocker touches the ball, at the same time"}},
		{"", []string{"the ball is live", "the ball is dead"}},
	} {
		var got []string
		for _, c := range Complete(test.text, firstUntold, 20) {
			got = append(got, c.Text)
		}
		if len(got) < len(test.want) || !slices.Equal(got[:len(test.want)], test.want) {
			t.Errorf("%q: got\n%s\nwant first\n%s", test.text, strings.Join(got, "\n"), strings.Join(test.want, "\n"))
		}
	}
}

// What completes a question with the answer to another is read as that answer,
// also of an event that is not the last.
func TestCompleteReads(t *testing.T) {
	offered := 0
	for _, text := range []string{
		"A's setter sets the ball; B's blocker touches the ball",
		"our setter tips it, their blocker touches it",
		"our setter dumps it then their middle hits the net",
		"A's outside attacks the ball, then B's blocker touches the net",
	} {
		p := readSoFar(text).Rally
		for _, k := range factsOf(p) {
			f, _ := play.FactByID(k.Fact)
			if p.Get(k) != play.Unknown {
				continue
			}
			first := func(*play.Rally) (play.Key, bool) { return k, true }
			labels := Choices(p, k)
			for _, c := range Complete(text, first, len(f.Values)) {
				i := slices.Index(labels, c.Label)
				if i < 0 {
					continue // another sort of completion
				}
				offered++
				if got := readSoFar(c.Text).Rally; got.Get(k) != f.Values[i].Value || len(got.Events) != len(p.Events) {
					t.Errorf("%q, labelled %q, tells %s=%s", c.Text, c.Label, k, got.Get(k))
				}
			}
		}
	}
	if offered < 100 {
		t.Errorf("only %d answers were offered", offered)
	}
}

func TestCompleteBounds(t *testing.T) {
	for _, n := range []int{-1, 0} {
		if got := Complete("A's setter", nil, n); got != nil {
			t.Errorf("asked for %d, got %q", n, got)
		}
	}
	if got := Complete("A's setter touches the ", nil, 3); len(got) != 3 {
		t.Errorf("asked for 3, got %q", got)
	}
	if got := Complete(strings.Repeat("x", MaxText+1), nil, 3); got != nil {
		t.Errorf("a text that is too long was completed: %q", got)
	}
	bad := func(*play.Rally) (play.Key, bool) { return play.Key{Fact: "colour"}, true }
	if got := Complete("A's setter touches the ball", bad, 3); len(got) != 3 {
		t.Errorf("a fact outside the table: got %q", got)
	}
}

// FuzzComplete completes any text: never more than asked for, none twice, each
// a going on of what was typed, and the same each time.
func FuzzComplete(f *testing.F) {
	for _, s := range []string{"", "ball in pl", "our setter du", "A's setter sets the ball; B's bl", "both front row, ", "x\x00\xff,é?", "the ball is  live"} {
		f.Add(s, byte(9))
	}
	f.Fuzz(func(t *testing.T, text string, n byte) {
		got := Complete(text, firstUntold, int(n))
		if len(got) > int(n) {
			t.Fatalf("%d of %d", len(got), n)
		}
		for i, c := range got {
			if c.Label == "" || len(c.Text) < len(c.Label) || slices.ContainsFunc(got[:i], func(o Completion) bool { return o.Text == c.Text }) {
				t.Errorf("%q completes to %+v", text, c)
			}
		}
		if again := Complete(text, firstUntold, int(n)); !slices.Equal(got, again) {
			t.Errorf("%q: %v, then %v", text, got, again)
		}
	})
}

func BenchmarkComplete(b *testing.B) {
	for _, text := range []string{"our back-row setter tips it on two at the net, ball in the pl", "A's setter sets the ball; B's blocker touches the ball", ""} {
		b.Run(text, func(b *testing.B) {
			for b.Loop() {
				Complete(text, firstUntold, 10)
			}
		})
	}
}
