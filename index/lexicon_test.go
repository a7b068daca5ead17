package index

import (
	"slices"
	"testing"
)

func testLexicon(t *testing.T, groups [][]string) *lexicon {
	t.Helper()
	m, err := newMapping()
	if err != nil {
		t.Fatal(err)
	}
	return newLexicon(m.AnalyzerNamed(ruling), groups)
}

func TestConcepts(t *testing.T) {
	l := testLexicon(t, [][]string{
		{"joust", "push at the net"},
		{"net"},
		{"first referee", "R1", "up ref"},
		{"set", "second contact"},
		{"set of a match", "set"},
		{"illegal", "the"},
		{},
	})
	for _, test := range []struct {
		words string
		want  []string
	}{
		{"they jousted", []string{"joust"}},
		{"a push at the net, then the net", []string{"joust", "net"}}, // the phrase keeps its own net
		{"the push came at net height", []string{"net"}},
		{"up refs", []string{"first referee"}},
		{"r1's set", []string{"first referee", "set", "set of a match"}},
		{"the the the", nil},
		{"", nil},
	} {
		if got := l.concepts(test.words); !slices.Equal(got, test.want) {
			t.Errorf("concepts(%q) = %q, want %q", test.words, got, test.want)
		}
	}
	if got := l.said("A quick push at the net, no call", "joust"); got != "push at the net" {
		t.Errorf("said = %q", got)
	}
	if got := l.said("nothing of it", "joust"); got != "" {
		t.Errorf("said = %q, want nothing", got)
	}
}

// The words that a stock English analyzer drops tell rulings apart, so the index keeps them.
func TestStopWords(t *testing.T) {
	l := testLexicon(t, nil)
	kept := "not before after under during off only same no out over and back of"
	if got, want := len(l.stems(kept)), 14; got != want {
		t.Errorf("%d of %d words are kept: %q", got, want, l.stems(kept))
	}
	if got := l.stems("the ball is a blocked ball's blocking"); !slices.Equal(got, []string{"ball", "block", "ball", "block"}) {
		t.Errorf("stems = %q", got)
	}
}
