// Package code holds the four rule codes as typed tables.
//
// A [Row] is one parameter of the game ("how many hits has a team?"), with a
// [Cell] for every code and for every edition in which it changed. A cell says
// its value in a small closed domain, the rule number, on what basis it is held
// and what is doubtful about it. A rule of the game opens a [Book] and branches
// on values only; it never asks which code it is in:
//
//	book, err := code.Open(code.Scholastic, 2025)
//	if book.Cell("hits.second-double").Value == "allowed-if-teammate-next" { … }
//
// An association lays its own adoptions over a book with [Book.With].
package code

import (
	"fmt"
	"strings"
)

// Code is a body of rules.
type Code string

// The four codes.
const (
	International Code = "international" // the world game: FIVB Official Volleyball Rules
	Club          Code = "club"          // US club play: USA Volleyball indoor book
	Collegiate    Code = "collegiate"    // US college women: NCAA women's rules
	Scholastic    Code = "scholastic"    // US high-school rules book
)

// All lists the codes in the order in which they are always shown.
func All() []Code {
	return []Code{International, Club, Collegiate, Scholastic}
}

// Parse reads a code's exact id. The error lists the ids.
func Parse(s string) (Code, error) {
	var ids []string
	for _, c := range All() {
		if string(c) == s {
			return c, nil
		}
		ids = append(ids, string(c))
	}
	return "", fmt.Errorf("unknown code %q: use one of %s", s, strings.Join(ids, ", "))
}

// Columns of a row's table, in the order of All.
const (
	intl = iota
	club
	coll
	scho
	codes // how many there are
)

// column gives a code's place in a row's table.
func (c Code) column() (int, bool) {
	switch c {
	case International:
		return intl, true
	case Club:
		return club, true
	case Collegiate:
		return coll, true
	case Scholastic:
		return scho, true
	}
	return 0, false
}

// held gives the first and the last season whose rules are in the tables.
// International editions run for four seasons, so it reaches the last season
// of the newest one.
func (c Code) held() (first, last Season) {
	if c == International {
		return 2017, 2028
	}
	return 2022, 2026
}

// Held gives the first and the last season that can be opened, and false for
// an unknown code.
func Held(c Code) (first, last Season, ok bool) {
	if _, ok := c.column(); !ok {
		return 0, 0, false
	}
	first, last = c.held()
	return first, last, true
}

// fromMemory is the source of a cell whose text was not seen.
func (c Code) fromMemory() string {
	switch c {
	case International:
		return "from memory of the FIVB Official Volleyball Rules"
	case Club:
		return "from memory of the USA Volleyball indoor book"
	case Collegiate:
		return "from memory of the NCAA women's rules"
	case Scholastic:
		return "from memory of the US high-school rules book"
	}
	panic(fmt.Sprintf("code: unknown code %q", c))
}
