package casebook

import (
	"cmp"
	"slices"
)

// Changes is what happened to the notes of a book in a span of days. Each list
// is sorted by day, then by id.
type Changes struct {
	New       []*Note // issued in the span, in place of nothing
	Changed   []*Note // issued in the span, in place of earlier notes
	Withdrawn []*Note // taken back in the span
	Expired   []*Note // in force until a day of the span, and not replaced
}

// IsZero reports whether nothing happened.
func (c Changes) IsZero() bool {
	return len(c.New)+len(c.Changed)+len(c.Withdrawn)+len(c.Expired) == 0
}

// Between gathers what happened to the notes from a first day to a last one,
// both included. A note that was replaced since still counts in the span in
// which it was issued; a draft never does.
func (b *Book) Between(first, last Date) Changes {
	var c Changes
	in := func(d Date) bool { return !d.IsZero() && !d.Before(first) && !last.Before(d) }
	for _, n := range b.notes {
		switch {
		case n.Status == Draft:
		case in(n.Issued) && len(n.Supersedes) > 0:
			c.Changed = append(c.Changed, n)
		case in(n.Issued):
			c.New = append(c.New, n)
		}
		switch {
		case n.Status == Withdrawn && in(n.Withdrawn):
			c.Withdrawn = append(c.Withdrawn, n)
		case n.Status == Published && in(n.Expires):
			c.Expired = append(c.Expired, n)
		}
	}
	by := func(notes []*Note, day func(*Note) Date) {
		slices.SortFunc(notes, func(x, y *Note) int {
			return cmp.Or(day(x).Compare(day(y)), cmp.Compare(x.ID, y.ID))
		})
	}
	issued := func(n *Note) Date { return n.Issued }
	by(c.New, issued)
	by(c.Changed, issued)
	by(c.Withdrawn, func(n *Note) Date { return n.Withdrawn })
	by(c.Expired, func(n *Note) Date { return n.Expires })
	return c
}
