package code

import (
	"fmt"
	"slices"
	"strings"
)

// Book is a code in one season: the rules that a crew works under. It is
// immutable and safe to share.
type Book struct {
	code   Code
	season Season
	cells  []Cell // parallel to rows
}

// Open gives a code's book for a season. Season zero means the newest season
// held. The error of a season outside the tables names the range.
func Open(c Code, s Season) (*Book, error) {
	column, ok := c.column()
	if !ok {
		_, err := Parse(string(c))
		return nil, err
	}
	first, last := c.held()
	if s == 0 {
		s = last
	}
	if s < first || s > last {
		return nil, fmt.Errorf("the %s rules for %s are not held: %s", c, s, c.heldWords())
	}
	b := &Book{code: c, season: s, cells: make([]Cell, len(rows))}
	for i, r := range rows {
		b.cells[i] = cellIn(r.cells[column], s)
	}
	return b, nil
}

// heldWords says in words which seasons are held.
func (c Code) heldWords() string {
	first, last := c.held()
	held := fmt.Sprintf("ask for a season from %s to %s", first, last)
	if c != International {
		return held
	}
	var editions []string
	for s := first; s <= last; s++ {
		if e := c.edition(s); !slices.Contains(editions, e) {
			editions = append(editions, e)
		}
	}
	return held + " (editions " + strings.Join(editions, ", ") + ")"
}

// Code is the book's code.
func (b *Book) Code() Code { return b.code }

// Season is the season the book was opened for.
func (b *Book) Season() Season { return b.season }

// Edition names the edition in force: "2025-28" of the international rules,
// the season itself of the yearly ones.
func (b *Book) Edition() string { return b.code.edition(b.season) }

// Doubt is what is doubtful about the edition as a whole, empty when nothing
// is. It holds for every cell, beside the cell's own doubt.
func (b *Book) Doubt() string {
	switch {
	case b.code == International && b.season < 2025:
		return "read in the 2025-28 edition unless a cell says otherwise; the " + b.Edition() +
			" text was not seen, and only changes that a source records are told apart"
	case b.code == Club && b.season >= 2025:
		return "the 2025-27 club book was not seen"
	case b.code == Collegiate && b.season >= 2026:
		return "for 2026 only the recommendations of January 2026 were seen, not their approval"
	}
	return ""
}

// Cell gives what the book says of a parameter. It panics on a parameter that
// is not in the table: parameters are written in the program, never by a user.
func (b *Book) Cell(p Param) Cell {
	i, ok := index[p]
	if !ok {
		panic(fmt.Sprintf("code: unknown parameter %q", p))
	}
	return b.cells[i]
}

// Overlay is one adoption of an association: another value for a parameter,
// the rule number of its own book, or both.
type Overlay struct {
	Param  Param
	Code   Code   // the code it is for; empty: every code
	Value  string // empty: the value stays, only the rule number is the association's
	Rule   string // empty: the rule number stays
	Reason string // why or by what decision; shown with every ruling that rests on it
}

// With gives the book with an association's adoptions laid over it. Overlays of
// other codes are checked and otherwise passed over; the last overlay of a
// parameter wins. It fails on an unknown code or parameter, a value outside the
// domain or an overlay that says nothing, and then lists what is valid.
func (b *Book) With(overlays ...Overlay) (*Book, error) {
	out := *b
	out.cells = slices.Clone(b.cells)
	for n, o := range overlays {
		i, err := o.check()
		if err != nil {
			return nil, fmt.Errorf("overlay %d: %w", n+1, err)
		}
		if o.Code != "" && o.Code != b.code {
			continue
		}
		cell := &out.cells[i]
		if o.Value != "" {
			cell.Value = o.Value
			cell.Text = rows[i].doc(o.Value)
			cell.Basis = Published
			cell.Source = "the association's own adoption"
			cell.Doubt = ""
		}
		if o.Rule != "" {
			cell.Rule = o.Rule
		}
		cell.Adopted = o.Reason
	}
	return &out, nil
}

// check finds the overlay's row, or says what is wrong with it.
func (o Overlay) check() (int, error) {
	i, ok := index[o.Param]
	if !ok {
		return 0, fmt.Errorf("unknown parameter %q: use one of %s", o.Param, strings.Join(near(o.Param), ", "))
	}
	if o.Code != "" {
		if _, err := Parse(string(o.Code)); err != nil {
			return 0, fmt.Errorf("%s: %w", o.Param, err)
		}
	}
	if o.Value == "" && o.Rule == "" {
		return 0, fmt.Errorf("%s: give a value, a rule number or both", o.Param)
	}
	if o.Value != "" {
		if err := rows[i].Check(o.Value); err != nil {
			return 0, err
		}
	}
	if strings.TrimSpace(o.Reason) == "" {
		return 0, fmt.Errorf("%s: give a reason", o.Param)
	}
	return i, nil
}

// near lists the parameters of the same area, or all of them when the area is
// unknown too.
func near(p Param) []string {
	area, _, _ := strings.Cut(string(p), ".")
	var same, all []string
	for _, r := range rows {
		all = append(all, string(r.Param))
		if strings.HasPrefix(string(r.Param), area+".") {
			same = append(same, string(r.Param))
		}
	}
	if same != nil {
		return same
	}
	return all
}
