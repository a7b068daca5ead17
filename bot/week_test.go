package bot

import (
	"testing"
	"time"
)

func TestWeek(t *testing.T) {
	for _, test := range []struct{ week, first, last, before string }{
		{"2026-W47", "2026-11-16", "2026-11-22", "2026-W46"},
		{"2026-W53", "2026-12-28", "2027-01-03", "2026-W52"},
		{"2027-W01", "2027-01-04", "2027-01-10", "2026-W53"},
		{"2026-W01", "2025-12-29", "2026-01-04", "2025-W52"},
	} {
		w, err := ParseWeek(test.week)
		if err != nil {
			t.Error(err)
			continue
		}
		if w.First().String() != test.first || w.Last().String() != test.last || w.Before().String() != test.before {
			t.Errorf("%s: %s to %s after %s", w, w.First(), w.Last(), w.Before())
		}
	}
	for _, bad := range []string{"", "2026", "2026-47", "2026-W7", "2025-W53", "2026-W54", "2026-W00", "2026-W47 ", "26-W47", "2026-w47", "2026-W+7"} {
		if w, err := ParseWeek(bad); err == nil {
			t.Errorf("%q was read as %s", bad, w)
		}
	}
}

func zone(t *testing.T, name string) *time.Location {
	t.Helper()
	z, err := time.LoadLocation(name)
	if err != nil {
		t.Fatal(err)
	}
	return z
}

// The clock is put forward and back on the hour, in the middle of it, and at
// midnight.
func TestScheduleLast(t *testing.T) {
	for _, test := range []struct {
		zone, day string
		weekday   time.Weekday
		at        time.Duration
		want      string // in UTC
	}{
		{"America/Chicago", "2026-11-23", time.Monday, 7 * time.Hour, "2026-11-23T13:00:00Z"},
		{"America/Chicago", "2026-03-08", time.Sunday, 2 * time.Hour, "2026-03-08T08:00:00Z"},                    // left out: it becomes 03:00
		{"America/Chicago", "2026-03-08", time.Sunday, 150 * time.Minute, "2026-03-08T08:30:00Z"},                // left out
		{"America/Chicago", "2026-03-08", time.Sunday, 3 * time.Hour, "2026-03-08T08:00:00Z"},                    // the same moment
		{"America/Chicago", "2026-11-01", time.Sunday, time.Hour, "2026-11-01T06:00:00Z"},                        // twice: the first
		{"America/Chicago", "2026-11-01", time.Sunday, 90 * time.Minute, "2026-11-01T06:30:00Z"},                 // twice
		{"America/Chicago", "2026-11-01", time.Sunday, 2 * time.Hour, "2026-11-01T08:00:00Z"},                    // after it
		{"Australia/Lord_Howe", "2026-04-05", time.Sunday, 105 * time.Minute, "2026-04-04T14:45:00Z"},            // put back by half an hour
		{"Africa/Cairo", "2026-04-24", time.Friday, 0, "2026-04-23T22:00:00Z"},                                   // midnight is left out
		{"America/Santiago", "2026-09-06", time.Sunday, 30 * time.Minute, "2026-09-06T04:30:00Z"},                // left out after midnight
		{"UTC", "2026-11-23", time.Monday, 0, "2026-11-23T00:00:00Z"},                                            //
		{"Pacific/Kiritimati", "2026-11-23", time.Monday, 23*time.Hour + 59*time.Minute, "2026-11-23T09:59:00Z"}, // fourteen hours ahead
	} {
		s := Schedule{On: true, Day: test.weekday, At: test.at, Zone: zone(t, test.zone)}
		want, err := time.Parse(time.RFC3339, test.want)
		if err != nil {
			t.Fatal(err)
		}
		for _, later := range []time.Duration{0, time.Second, 6 * 24 * time.Hour} {
			if got, _ := s.Last(want.Add(later)); !got.Equal(want) {
				t.Errorf("%s, %s at %s, %s later: %s, want %s", test.zone, test.day, test.at, later, got.UTC(), test.want)
			}
		}
		if got, _ := s.Last(want.Add(-time.Second)); !got.Before(want.Add(-6*24*time.Hour)) || want.Sub(got) > 8*24*time.Hour {
			t.Errorf("%s, a second before %s: %s", test.zone, test.want, got.UTC())
		}
	}
	if _, ok := (Schedule{}).Last(time.Now()); ok {
		t.Error("the zero schedule is due")
	}
}

// Over two years of quarters of an hour, each week has one moment in any zone
// and at any hour, and it never comes before the one before it.
func TestScheduleOnceAWeek(t *testing.T) {
	for _, name := range []string{"America/Chicago", "Europe/Lisbon", "Australia/Lord_Howe", "Africa/Cairo", "America/Santiago", "Asia/Kathmandu"} {
		for _, at := range []time.Duration{0, time.Hour, 2 * time.Hour, 150 * time.Minute, 23*time.Hour + 30*time.Minute} {
			s := Schedule{On: true, Day: time.Sunday, At: at, Zone: zone(t, name)}
			var last time.Time
			moments := 0
			begin := time.Date(2026, 1, 10, 0, 0, 0, 0, time.UTC)
			for now := begin; now.Before(begin.AddDate(2, 0, 0)); now = now.Add(15 * time.Minute) {
				got, _ := s.Last(now)
				if got.After(now) || got.Before(last) {
					t.Fatalf("%s %s: at %s it is %s after %s", name, at, now, got, last)
				}
				if !got.Equal(last) {
					if local := got.In(s.Zone); !last.IsZero() && local.Weekday() != time.Sunday {
						t.Fatalf("%s %s: due on %s", name, at, local)
					}
					moments++
					last = got
				}
			}
			if moments < 104 || moments > 106 {
				t.Errorf("%s %s: due %d times in two years", name, at, moments)
			}
		}
	}
}
