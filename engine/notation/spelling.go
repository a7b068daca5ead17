package notation

import (
	"slices"
	"strings"
	"sync"
)

// vocabulary is every word of the lexicon that a wrong spelling can stand for,
// sorted.
var vocabulary = sync.OnceValue(func() []string {
	var out []string
	for w := range lex().words {
		if len(w) >= 4 && w[0] != '<' {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return out
})

// correct replaces words that nobody knows by the one near word of the
// lexicon, and says which. A word with two near ones, and a common word, stay.
func correct(ts []token) []Correction {
	var out []Correction
	for i := range ts {
		t := &ts[i]
		if t.mark != 0 || t.form == "" || t.form[0] == '<' || numeric(t.form) || lex().words[t.form] || lookupWords()[t.form] {
			continue
		}
		if _, ok := stem(t.form); ok {
			continue
		}
		to := nearest(t.form)
		if to == "" {
			continue
		}
		out = append(out, Correction{t.raw, to})
		t.from, t.form = t.form, to
	}
	return out
}

// nearest is the only word of the vocabulary near to s, or "".
func nearest(s string) string {
	if len(s) < 4 || len(s) > 16 {
		return ""
	}
	for _, end := range []string{"", "s", "ed", "ing"} {
		head, ok := strings.CutSuffix(s, end)
		if !ok || len(head) < 4 {
			continue
		}
		limit := 1
		if len(head) >= 10 {
			limit = 2
		}
		best, at, several := "", limit+1, false
		for _, w := range vocabulary() {
			if w[0] != head[0] || len(w)-len(head) > limit || len(head)-len(w) > limit {
				continue
			}
			d := distance(head, w, limit)
			if len(head) < 6 && d == 1 && len(w) == len(head) && !swapped(head, w) {
				d = limit + 1 // one letter for another makes too many short words
			}
			switch {
			case d < at:
				best, at, several = w, d, false
			case d == at && d <= limit:
				several = true
			}
		}
		if best != "" && !several {
			if !trade()[best] || len(best) < 5 && !swapped(head, best) || end != "" && !lex().verb(best) && end != "s" || strings.HasSuffix(best, "s") && end != "" {
				return ""
			}
			return best + end
		}
		if several {
			return ""
		}
	}
	return ""
}

// swapped reports whether two words differ by two neighbours changed over.
func swapped(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := 0; i+1 < len(a); i++ {
		if a[i] != b[i] {
			return a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
		}
	}
	return false
}

// distance counts the letters to add, drop, change or swap with a neighbour to
// make b of a; more than limit is limit+1.
func distance(a, b string, limit int) int {
	var rows [3][20]int
	for j := 0; j <= len(b); j++ {
		rows[1][j] = j
	}
	for i := 1; i <= len(a); i++ {
		cur := &rows[2]
		cur[0] = i
		least := i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			d := min(rows[1][j]+1, cur[j-1]+1, rows[1][j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				d = min(d, rows[0][j-2]+1)
			}
			cur[j] = d
			least = min(least, d)
		}
		if least > limit {
			return limit + 1
		}
		rows[0], rows[1] = rows[1], rows[2]
	}
	return rows[1][len(b)]
}
