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

// What completes a question tells the fact that it says.
func TestCompleteReads(t *testing.T) {
	const text = "A's setter sets the ball; B's blocker touches the ball"
	p, ok := readPrint(text)
	if !ok {
		t.Fatal("the question is no print")
	}
	k, _ := firstUntold(p)
	f, _ := play.FactByID(k.Fact)
	for i, c := range Complete(text, firstUntold, len(f.Values)) {
		r, err := Read(c.Text)
		if err != nil || r.Rally == nil {
			t.Fatalf("%q: %v", c.Text, err)
		}
		if got := r.Rally.Get(k); got != f.Values[i].Value || c.Label != Choices(p, k)[i] {
			t.Errorf("%q, labelled %q, tells %s=%s", c.Text, c.Label, k, got)
		}
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
