package code

import (
	"cmp"
	"fmt"
	"slices"
)

// rows is the whole table, sorted by parameter; index finds a parameter in it.
var (
	rows  = collect(serveRows, alignmentRows, lineupRows, contactRows, joustRows, ballRows, netRows, centreRows, backRowRows, blockRows, liberoRows, replayRows, peopleRows, conductRows, matchRows, crewRows, factRows, requestRows, peopleInPlayRows, equipmentRows)
	index = indexOf(rows)
)

// collect joins the areas, sorts them and completes the cells.
func collect(areas ...[]Row) []Row {
	all := slices.Concat(areas...)
	slices.SortFunc(all, func(a, b Row) int { return cmp.Compare(a.Param, b.Param) })
	for _, r := range all {
		for i, c := range All() {
			complete(c, r.cells[i])
		}
	}
	return all
}

// complete fills in what the constructors leave out.
func complete(c Code, cells []Cell) {
	first, last := c.held()
	for i := range cells {
		cell := &cells[i]
		if cell.Since == 0 {
			cell.Since = first
		}
		if cell.Until == 0 {
			cell.Until = last
		}
		if cell.Basis == Memory && cell.Source == "" {
			cell.Source = c.fromMemory()
		}
	}
}

func indexOf(rows []Row) map[Param]int {
	m := make(map[Param]int, len(rows))
	for i, r := range rows {
		m[r.Param] = i
	}
	return m
}

// Rows gives every parameter, sorted.
func Rows() []Row { return slices.Clone(rows) }

// Find gives the row of a parameter.
func Find(p Param) (Row, bool) {
	i, ok := index[p]
	if !ok {
		return Row{}, false
	}
	return rows[i], true
}

// Change is a parameter that differs between two seasons of a code.
type Change struct {
	Param    Param
	From, To Cell
}

// Differences lists the parameters whose value or meaning differs between two
// seasons of a code, sorted. It fails on a season that is not held.
func Differences(c Code, from, to Season) ([]Change, error) {
	a, err := Open(c, from)
	if err != nil {
		return nil, err
	}
	b, err := Open(c, to)
	if err != nil {
		return nil, err
	}
	var changes []Change
	for i, r := range rows {
		if !a.cells[i].same(b.cells[i]) {
			changes = append(changes, Change{r.Param, a.cells[i], b.cells[i]})
		}
	}
	return changes, nil
}

// cellIn finds the cell that holds in a season. The guard test proves that
// there is one for every season held.
func cellIn(cells []Cell, s Season) Cell {
	for _, c := range cells {
		if c.has(s) {
			return c
		}
	}
	panic(fmt.Sprintf("code: no cell for %s", s))
}
