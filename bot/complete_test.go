package bot

import (
	"strings"
	"testing"
	"unicode/utf8"
)

// Completions go on with what was typed, fit every platform, and are the same
// each time; the answers to the deciding question lead.
func TestComplete(t *testing.T) {
	for _, typed := range []string{"", "o", "our setter tips the ball ov", "our setter tips the ball over from inside the 3m line, ball above the net, ", strings.Repeat("a ", 60), "\xff"} {
		got := complete(Complete{Name: "ask", Option: "text", Typed: typed})
		if len(got) > MaxChoices {
			t.Errorf("%q has %d completions", typed, len(got))
		}
		again := complete(Complete{Name: "ask", Option: "text", Typed: typed})
		for i, c := range got {
			if again[i] != c {
				t.Errorf("%q is completed by %q, then by %q", typed, c, again[i])
			}
			if c.Value == "" || utf8.RuneCountInString(c.Value) > longestChoice || utf8.RuneCountInString(c.Label) > longestChoice {
				t.Errorf("%q is completed by %q, which does not fit", typed, c)
			}
		}
	}
	got := complete(Complete{Name: "ask", Option: "text", Typed: "our setter tips the ball over, ball above the net, "})
	if len(got) == 0 || !strings.Contains(got[0].Value, "row") {
		t.Errorf("the setter's row decides, and yet it does not lead: %q", got)
	}
	if got := complete(Complete{Option: "weather"}); len(got) > 0 {
		t.Errorf("an option that is none is completed by %q", got)
	}
}
