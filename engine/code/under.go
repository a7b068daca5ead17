package code

import "strings"

// Under lists the parameters that the book has under a rule's number, sorted.
// A number finds its own cells, and those of a range that it stands in. Where
// it has none, it finds the cells of the rules below it ("9-5" finds 9-5-5),
// then those of the rule that it is a letter of.
func (b *Book) Under(number string) []Param {
	find := func(is func(ref string) bool) []Param {
		var out []Param
		for i, c := range b.cells {
			for _, ref := range strings.Split(c.Rule, "; ") {
				if ref != "" && is(ref) {
					out = append(out, rows[i].Param)
					break
				}
			}
		}
		return out
	}
	if ps := find(func(ref string) bool { return ref == number || inRange(number, ref) }); ps != nil {
		return ps
	}
	if ps := find(func(ref string) bool {
		return strings.HasPrefix(ref, number+".") || strings.HasPrefix(ref, number+"-")
	}); ps != nil {
		return ps
	}
	if whole := strings.TrimRight(number, "abcdefghijklmnopqrstuvwxyz"); whole != number {
		return find(func(ref string) bool { return ref == whole })
	}
	return nil
}

// inRange reports whether a dotted number is an end of a range, "6.2-6.3", or
// between the ends.
func inRange(number, ref string) bool {
	from, to, ok := strings.Cut(ref, "-")
	return ok && strings.Contains(from, ".") && strings.Contains(to, ".") && strings.Contains(number, ".") &&
		order(from, number) <= 0 && order(number, to) <= 0
}

// order compares two dotted numbers part by part.
func order(a, b string) int {
	as, bs := strings.Split(a, "."), strings.Split(b, ".")
	for i := range min(len(as), len(bs)) {
		if len(as[i]) != len(bs[i]) {
			return len(as[i]) - len(bs[i])
		}
		if c := strings.Compare(as[i], bs[i]); c != 0 {
			return c
		}
	}
	return len(as) - len(bs)
}
