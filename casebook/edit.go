package casebook

import (
	"cmp"
	"slices"
)

// edit replaces the bytes [from, to) of a note's file.
type edit struct {
	from, to int
	text     string
}

// fix is what a machine can do about a finding: edits of the file, or another
// name for it. The zero value is nothing.
type fix struct {
	edits  []edit
	rename string
}

func (f fix) none() bool { return len(f.edits) == 0 && f.rename == "" }

// apply makes the edits that do not overlap an earlier one. The rest waits for
// the next round, when their places are known again.
func apply(text string, edits []edit) string {
	slices.SortStableFunc(edits, func(a, b edit) int {
		return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	var out []byte
	done := 0
	for i, e := range edits {
		if e.from < done || i > 0 && e == edits[i-1] {
			continue
		}
		out = append(out, text[done:e.from]...)
		out = append(out, e.text...)
		done = e.to
	}
	return string(append(out, text[done:]...))
}
