package bot

import (
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/answer"
)

func TestNames(t *testing.T) {
	for _, test := range []struct {
		text string
		want []string
	}{
		{"our setter tips the ball over", nil},
		{"Our setter tips the ball over. Their middle blocks it", nil},
		{"R1 calls it, R2 does not; LF and the OH jump", nil},
		{"OUR SETTER KELLY TIPS THE BALL OVER THE NET", nil},
		{"Our Setter Tips The Ball Over The Net Quickly", nil},
		{"our setter Kelly Smith tips the ball over", []string{"Kelly Smith"}},
		{"our setter tips the ball, Quill blocks it, quill complains", []string{"Quill"}},
		{"Kelly's setter tips the ball over", []string{"Kelly"}},
		{"Kelly’s setter tips the ball over", []string{"Kelly"}},
		{"coach Quill asked about the tip", []string{"Quill"}},
		{"Mr. Quill asked about the tip", []string{"Quill"}},
		{"our setter tips to @kelly over the net", []string{"@kelly"}},
		{"Kelly Smith blocks, then Kelly Smith tips", []string{"Kelly Smith"}},
		{"Zoë blocks the ball, our setter tips, Zoë again", []string{"Zoë"}},
	} {
		a := answer.Ask(test.text, answer.Options{})
		if got := Names(test.text, a.Unread); !slices.Equal(got, test.want) {
			t.Errorf("Names(%q) = %q, want %q (unread: %q)", test.text, got, test.want, a.Unread)
		}
	}
}

func TestWithoutNames(t *testing.T) {
	for _, test := range []struct {
		text  string
		names []string
		want  string
	}{
		{"Kelly Smith blocks, then Kelly", []string{"Kelly", "Kelly Smith"}, "someone blocks, then someone"},
		{"Kelly\n Smith's ball", []string{"Kelly Smith"}, "someone's ball"},
		{"Kellys ball by @kelly", []string{"Kelly", "@kelly"}, "Kellys ball by someone"},
		{"a (b blocks", []string{"(b"}, "a someone blocks"},
	} {
		if got := WithoutNames(test.text, test.names); got != test.want {
			t.Errorf("WithoutNames(%q, %q) = %q, want %q", test.text, test.names, got, test.want)
		}
	}
}

// A name that was found is not in the text without names, whatever the text.
func FuzzNames(f *testing.F) {
	f.Add("our setter Kelly Smith tips @quill the ball over")
	f.Add("Mr. Quill's ball")
	f.Fuzz(func(t *testing.T, text string) {
		a := answer.Ask(text, answer.Options{})
		names := Names(text, a.Unread)
		without := WithoutNames(text, names)
		for _, n := range names {
			if !strings.Contains("someone", n) && replaceWord(without, n, "") != without {
				t.Errorf("%q is still in %q, made of %q", n, without, text)
			}
		}
	})
}
