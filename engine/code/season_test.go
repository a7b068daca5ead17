package code

import (
	"strings"
	"testing"
)

func TestParseSeason(t *testing.T) {
	good := map[string]Season{
		"2025-26": 2025, "2025-2026": 2025, "2025-28": 2025, "2025-2028": 2025, "2025": 2025,
		"2017-20": 2017, "2025-27": 2025, "1999-00": 1999, "1999-2000": 1999,
	}
	for s, want := range good {
		if got, err := ParseSeason(s); got != want || err != nil {
			t.Errorf("ParseSeason(%q) = %d, %v; want %d", s, got, err, want)
		}
	}
	for _, s := range []string{"", "25", "25-26", "2025-", "2025-6", "2025-25", "2025-24", "2025-29", "2025-2029", "2025-262", "2025/26",
		"+025-26", "2025-+6", "-2025", "2025-26-27", "0025-26", "٢٠٢٥"} {
		if got, err := ParseSeason(s); err == nil || !strings.Contains(err.Error(), "2025-26") {
			t.Errorf("ParseSeason(%q) = %d, %v; want an error that shows how", s, got, err)
		}
	}
}

func TestSeasonString(t *testing.T) {
	for s, want := range map[Season]string{0: "", 2025: "2025-26", 1999: "1999-00", 2009: "2009-10"} {
		if got := s.String(); got != want {
			t.Errorf("Season(%d) = %q, want %q", int(s), got, want)
		}
	}
}

func FuzzParseSeason(f *testing.F) {
	for _, s := range []string{"2025-26", "2025-28", "2025", "1999-00", "x", "2025-"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		season, err := ParseSeason(s)
		if err != nil {
			return
		}
		if again, err := ParseSeason(season.String()); again != season || err != nil {
			t.Errorf("%q is %d, whose string reads as %d, %v", s, season, again, err)
		}
	})
}
