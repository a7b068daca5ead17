package code

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Param names a parameter: lower-case words in two parts, "hits.second-double".
type Param string

// Basis says on what ground a cell is held.
type Basis string

// The grounds.
const (
	Published Basis = "published" // seen in the source named
	Practice  Basis = "practice"  // common practice of the trade, no source
	Memory    Basis = "memory"    // from memory, the text was not seen
)

// Cell is what one code says of one parameter for a span of seasons.
type Cell struct {
	Value  string // machine-readable: out of the row's domain, or a number in its unit
	Text   string // our own short summary for people
	Rule   string // rule numbers, joined by "; "; empty where none was seen
	Basis  Basis
	Source string // book or article with its edition or year, spelled out
	Doubt  string // what is uncertain about it; empty when nothing is known to be
	// Since and Until are the first and the last season it holds for.
	Since, Until Season
	// Adopted is the association's reason where an overlay changed the cell.
	Adopted string
}

// Int is a whole-number value. It panics on any other value: asking a cell
// without a number for one is a programming error.
func (c Cell) Int() int {
	n, err := strconv.Atoi(c.Value)
	if err != nil {
		panic(fmt.Sprintf("code: cell %q (rule %s) is not a whole number", c.Value, c.Rule))
	}
	return n
}

// Number is a numeric value in the row's unit, and false where the cell holds
// none ("not-stated").
func (c Cell) Number() (float64, bool) {
	n, err := strconv.ParseFloat(c.Value, 64)
	return n, err == nil
}

// Value is one member of a row's closed domain.
type Value struct {
	ID  string
	Doc string // what it means, as a clause
}

// Row is one parameter with its cells.
type Row struct {
	Param Param
	Title string
	Doc   string // what is being decided
	// Values is the closed domain. A row with a Unit holds numbers instead; its
	// Values, if any, are what a cell may say in place of a number.
	Values []Value
	Unit   string // unit of a number: "seconds"; empty for a row without numbers
	cells  table
}

// table holds a row's cells per code, ascending by season.
type table [codes][]Cell

// Cells gives a code's cells, ascending by Since. They cover every season that
// is held, without a gap. It is nil for an unknown code.
func (r Row) Cells(c Code) []Cell {
	i, ok := c.column()
	if !ok {
		return nil
	}
	return slices.Clone(r.cells[i])
}

// Check reports what is wrong with a value for this row: the error lists what
// is allowed.
func (r Row) Check(value string) error {
	if r.Unit != "" && isNumber(value) {
		return nil
	}
	var ids []string
	for _, v := range r.Values {
		if v.ID == value {
			return nil
		}
		ids = append(ids, v.ID)
	}
	if r.Unit != "" {
		ids = append([]string{"a number (" + r.Unit + ")"}, ids...)
	}
	return fmt.Errorf("%s: unknown value %q: use one of %s", r.Param, value, strings.Join(ids, ", "))
}

// isNumber accepts digits with at most one decimal point between them.
func isNumber(s string) bool {
	whole, part, dotted := strings.Cut(s, ".")
	digits := func(s string) bool {
		return s != "" && strings.Trim(s, "0123456789") == ""
	}
	return digits(whole) && (!dotted || digits(part))
}

// doc is the meaning of a value in this row, for a cell that has no text of its own.
func (r Row) doc(value string) string {
	for _, v := range r.Values {
		if v.ID == value {
			return v.Doc
		}
	}
	return value + " " + r.Unit
}

// The constructors below keep the tables readable. Seasons that are left out
// are filled in: a cell without a first season begins where the code's held
// range begins, one without a last season ends where it ends.

// pub is a cell seen in a source.
func pub(value, rule, source, text string) Cell {
	return Cell{Value: value, Rule: rule, Basis: Published, Source: source, Text: text}
}

// mem is a cell from memory; its source is filled in from the code.
func mem(value, rule, text string) Cell {
	return Cell{Value: value, Rule: rule, Basis: Memory, Text: text}
}

// practice is a cell of what the trade does without a text.
func practice(value, rule, text string) Cell {
	return Cell{Value: value, Rule: rule, Basis: Practice, Source: noSource, Text: text}
}

func (c Cell) doubt(d string) Cell  { c.Doubt = d; return c }
func (c Cell) since(s Season) Cell  { c.Since = s; return c }
func (c Cell) until(s Season) Cell  { c.Until = s; return c }
func (c Cell) has(s Season) bool    { return c.Since <= s && s <= c.Until }
func (c Cell) same(other Cell) bool { return c.Value == other.Value && c.Text == other.Text }
