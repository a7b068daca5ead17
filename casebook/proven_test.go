package casebook

import "testing"

func TestRulingWords(t *testing.T) {
	for _, test := range []struct {
		ruling Ruling
		want   string
	}{
		{Ruling{}, ""},
		{Ruling{Outcome: "play-on"}, "play on, no fault"},
		{Ruling{Outcome: "fault", Fault: "back-row-block", Against: "A"}, "fault: back-row block, against A"},
		{Ruling{Measure: []string{"penalty"}, Against: "A"}, "penalty, against A"},
		{Ruling{Measure: []string{"deny", "penalty"}, Against: "B"}, "deny; penalty, against B"},
		{Ruling{Outcome: "fault", Fault: "back-row-block", Against: "A", Measure: []string{"penalty"}}, "fault: back-row block, against A; penalty"},
		{Ruling{Against: "A", Answer: "6 per set"}, "6 per set"},
	} {
		if got := test.ruling.Words(); got != test.want {
			t.Errorf("%+v is in words %q, want %q", test.ruling, got, test.want)
		}
	}
}
