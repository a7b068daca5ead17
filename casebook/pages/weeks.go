package pages

import (
	"fmt"
	"slices"
	"time"

	"example.org/netpost/casebook"
)

// week is one in which something happened to the notes.
type week struct {
	Name        string // such as 2026-W47
	First, Last casebook.Date
	casebook.Changes
}

// Part is one part of a bulletin.
type Part struct {
	Title string
	Cards []card
}

// monday is the first day of a day's week, as ISO 8601 counts them.
func monday(d casebook.Date) casebook.Date {
	t := d.Time()
	return casebook.DateOf(t.AddDate(0, 0, -(int(t.Weekday())+6)%7))
}

// weeksOf lists the weeks in which something happened, newest first.
func (s *Site) weeksOf() []week {
	seen := map[casebook.Date]bool{}
	var firsts []casebook.Date
	for _, n := range s.notes {
		for _, d := range []casebook.Date{n.Issued, n.Withdrawn, n.Expires} {
			if d.IsZero() || !s.On.IsZero() && s.On.Before(d) {
				continue
			}
			if m := monday(d); !seen[m] {
				seen[m] = true
				firsts = append(firsts, m)
			}
		}
	}
	slices.SortFunc(firsts, func(x, y casebook.Date) int { return y.Compare(x) })
	by := s.byWeek(firsts)
	var out []week
	for _, first := range firsts {
		year, n := first.Time().ISOWeek()
		w := week{Name: fmt.Sprintf("%d-W%02d", year, n), First: first, Last: casebook.DateOf(first.Time().AddDate(0, 0, 6))}
		w.Changes = casebook.NewBook(by[first], nil).Between(w.First, w.Last)
		if !w.IsZero() {
			out = append(out, w)
		}
	}
	return out
}

// byWeek are the notes to which something happened in each week.
func (s *Site) byWeek(firsts []casebook.Date) map[casebook.Date][]*casebook.Note {
	out := make(map[casebook.Date][]*casebook.Note, len(firsts))
	for _, n := range s.notes {
		var weeks []casebook.Date
		for _, d := range []casebook.Date{n.Issued, n.Withdrawn, n.Expires} {
			if m := monday(d); !d.IsZero() && !slices.Contains(weeks, m) {
				weeks = append(weeks, m)
				out[m] = append(out[m], n)
			}
		}
	}
	return out
}

// Days says from when to when the week is.
func (w week) Days() string { return day(w.First) + " to " + day(w.Last) }

func day(d casebook.Date) string { return d.Time().Format("2 January 2006") }

// Count is how many notes something happened to.
func (w week) Count() int {
	return len(w.New) + len(w.Changed) + len(w.Changes.Withdrawn) + len(w.Expired)
}

// Parts are the parts of the page's bulletin, those with nothing in them left out.
func (v view) Parts() []Part {
	var out []Part
	for _, p := range []struct {
		title string
		notes []*casebook.Note
	}{
		{"New", v.Week.New}, {"In place of earlier notes", v.Week.Changed},
		{"Withdrawn", v.Week.Changes.Withdrawn}, {"Expired", v.Week.Expired},
	} {
		if len(p.notes) > 0 {
			out = append(out, Part{p.title, v.Site.cards(p.notes, v.Up)})
		}
	}
	return out
}

func (s *Site) bulletins() (File, error) {
	return s.html("bulletins", view{Title: "Bulletins", Here: "bulletins", Up: "../", Weeks: s.weeks})
}

func (s *Site) bulletin(w week) (File, error) {
	return s.html("bulletin", view{Title: "Bulletin " + w.Name, Here: "bulletins", Up: "../", Week: &w, Lead: w.Days()})
}

// epoch stands where there is no note to take a day from.
var epoch = time.Unix(0, 0).UTC()
