package index

import (
	"slices"
	"testing"
)

func TestNormalRule(t *testing.T) {
	for _, test := range []struct{ in, want string }{
		{"10-4-1b", "10.4.1.b"},
		{"9.2.3", "9.2.3"},
		{"9.2.3(a)", "9.2.3.a"},
		{"9-4-8 (C)", "9.4.8.c"},
		{" 9–5–5 ", "9.5.5"},
		{"13.2.3.2", "13.2.3.2"},
		{"9", "9"},
		{"9-4-1-b", "9.4.1.b"},
		{"HL-3", "hl.3"},
		{"HL-3.2", "hl.3.2"},
		{"2025-26", ""},
		{"nine", ""},
		{"", ""},
		{"9-", ""},
		{"9-4-1bc", ""},
	} {
		if got := NormalRule(test.in); got != test.want {
			t.Errorf("NormalRule(%q) = %q, want %q", test.in, got, test.want)
		}
	}
	for _, in := range []string{"10-4-1b", "9.2.3(a)", "9"} {
		if once := NormalRule(in); NormalRule(once) != once {
			t.Errorf("normalising %q twice gives %q", in, NormalRule(once))
		}
	}
}

func TestRulesIn(t *testing.T) {
	for _, test := range []struct {
		in   string
		want []string
	}{
		{"what does 9-5-5 say of setters", []string{"9.5.5"}},
		{"rule 9-4, and 10-4-1b.", []string{"9.4", "10.4.1.b"}},
		{"see 9.2.3(a) and 9.2.3(a)", []string{"9.2.3.a"}},
		{"we were down 9-4 when it happened", nil},
		{"season 2025-26, set 3", nil},
		{"9-4", []string{"9.4"}},
		{"HL-3 and R1, R2 of A-side", []string{"hl.3"}},
		{"on 2026-11-15 we had 3", nil},
		{"Rule 14", []string{"14"}},
		{"the rule 9", []string{"9"}},
	} {
		if got := rulesIn(test.in); !slices.Equal(got, test.want) {
			t.Errorf("rulesIn(%q) = %q, want %q", test.in, got, test.want)
		}
	}
}

func TestParents(t *testing.T) {
	for rule, want := range map[string][]string{
		"9.5.5.a": {"9.5.5.a", "9.5.5", "9.5"},
		"9.5":     {"9.5"},
		"9":       {"9"},
		"":        nil,
	} {
		if got := parents(rule); !slices.Equal(got, want) {
			t.Errorf("parents(%q) = %q, want %q", rule, got, want)
		}
	}
}
