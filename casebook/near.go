package casebook

// nearest is the one word of a list that differs from s by at most two letters,
// or empty when there is none or more than one.
func nearest(s string, words []string) string {
	best, found := 3, ""
	for _, w := range words {
		d := distance(s, w)
		if d >= len(w) {
			continue
		}
		switch {
		case d < best:
			best, found = d, w
		case d == best:
			found = ""
		}
	}
	return found
}

// distance counts the letters to change, add or take out from a to b. Words that
// differ in length by more than two are simply far.
func distance(a, b string) int {
	if len(a)-len(b) > 2 || len(b)-len(a) > 2 {
		return 3
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			change := diagonal
			if a[i] != b[j] {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, row[j+1]+1, row[j]+1)
		}
	}
	return row[len(b)]
}
