package casebook

import (
	"cmp"
	"fmt"
	"time"
)

// Date is a day of the calendar, with no time and no zone. The zero value is
// no date.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// DateOf is the day of a time, in the time's own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date{y, m, d}
}

// ParseDate reads 2026-11-15 and nothing else.
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(time.DateOnly, s)
	if err != nil {
		return Date{}, fmt.Errorf("%q is not a date; write year-month-day, such as 2026-11-15", s)
	}
	return DateOf(t), nil
}

// IsZero reports whether there is no date.
func (d Date) IsZero() bool { return d == Date{} }

// Before reports whether d is an earlier day than e.
func (d Date) Before(e Date) bool { return d.Compare(e) < 0 }

// Compare orders days: -1, 0 or 1. No date comes before every date.
func (d Date) Compare(e Date) int {
	return cmp.Or(cmp.Compare(d.Year, e.Year), cmp.Compare(d.Month, e.Month), cmp.Compare(d.Day, e.Day))
}

// Time is the first moment of the day in UTC.
func (d Date) Time() time.Time { return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC) }

func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// MarshalText writes the date as 2026-11-15, no date as nothing.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (d *Date) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*d = Date{}
		return nil
	}
	e, err := ParseDate(string(b))
	if err != nil {
		return err
	}
	*d = e
	return nil
}
