package bot

import (
	"fmt"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// Week is a week of the calendar, from Monday to Sunday, numbered as ISO 8601
// does: week 1 is the one with the year's first Thursday. The zero value is no
// week.
type Week struct{ Year, Number int }

// WeekOf is the week that a moment is in, in the moment's own zone.
func WeekOf(t time.Time) Week {
	y, n := t.ISOWeek()
	return Week{y, n}
}

// ParseWeek reads 2026-W47 and nothing else.
func ParseWeek(s string) (Week, error) {
	var w Week
	if _, err := fmt.Sscanf(s, "%d-W%d", &w.Year, &w.Number); err != nil || w.String() != s || WeekOf(w.First().Time()) != w {
		return Week{}, fmt.Errorf("“%s” is no week; write year and number, such as 2026-W47", Clip(s, 40))
	}
	return w, nil
}

func (w Week) String() string { return fmt.Sprintf("%04d-W%02d", w.Year, w.Number) }

// First is the week's Monday.
func (w Week) First() casebook.Date {
	jan4 := time.Date(w.Year, time.January, 4, 0, 0, 0, 0, time.UTC) // always in week 1
	return casebook.DateOf(jan4.AddDate(0, 0, 7*(w.Number-1)-(int(jan4.Weekday())+6)%7))
}

// Last is the week's Sunday.
func (w Week) Last() casebook.Date { return casebook.DateOf(w.First().Time().AddDate(0, 0, 6)) }

// Before is the week before.
func (w Week) Before() Week { return WeekOf(w.First().Time().AddDate(0, 0, -7)) }

// Span is the week in a zone, from Monday's first moment to the next Monday's.
func (w Week) Span(zone *time.Location) store.Span {
	y, m, d := w.First().Time().Date()
	return store.Span{From: wall(zone, y, m, d, 0), To: wall(zone, y, m, d+7, 0)}
}

// Schedule is a time of the week. The zero value is never.
type Schedule struct {
	On   bool
	Day  time.Weekday
	At   time.Duration  // after midnight, as the clock on the wall shows it
	Zone *time.Location // nil: UTC
}

func (s Schedule) zone() *time.Location {
	if s.Zone == nil {
		return time.UTC
	}
	return s.Zone
}

// Last is the latest moment of the schedule that is not after now. It reports
// false for a schedule that is never.
//
// A time that the clock shows twice, when it is put back, is the first of the
// two; one that it leaves out, when it is put forward, is as long after
// midnight as on other days: 02:00 is the moment when it becomes 03:00.
func (s Schedule) Last(now time.Time) (time.Time, bool) {
	if !s.On {
		return time.Time{}, false
	}
	y, m, d := now.In(s.zone()).Date()
	back := int(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Weekday()-s.Day+7) % 7
	at := wall(s.zone(), y, m, d-back, s.At)
	if at.After(now) {
		at = wall(s.zone(), y, m, d-back-7, s.At)
	}
	return at, true
}

// wall is the moment when the clock on the wall shows a time of a day. It does
// not leave to the library what that is where the clock is changed.
func wall(zone *time.Location, y int, m time.Month, d int, after time.Duration) time.Time {
	shown := time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Add(after)
	// The offsets in force on either side of any change of that day.
	_, before := shown.Add(-24 * time.Hour).In(zone).Zone()
	_, behind := shown.Add(24 * time.Hour).In(zone).Zone()
	first := shown.Add(-time.Duration(before) * time.Second).In(zone)
	other := shown.Add(-time.Duration(behind) * time.Second).In(zone)
	is := func(t time.Time) bool {
		_, offset := t.Zone()
		return t.UTC().Add(time.Duration(offset) * time.Second).Equal(shown)
	}
	switch {
	case is(first) && is(other) && other.Before(first):
		return other
	case is(first) || !is(other):
		return first
	}
	return other
}
