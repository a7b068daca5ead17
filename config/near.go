package config

// nearest is the one word of a list that differs from s by at most two letters,
// or empty when there is none or more than one.
func nearest(s string, words []string) string {
	best, found := 3, ""
	for _, w := range words {
		switch d := distance(s, w); {
		case d >= len(w):
		case d < best:
			best, found = d, w
		case d == best:
			found = ""
		}
	}
	return found
}

// distance counts the letters to change, add, take out or swap with their
// neighbour from a to b. Words that differ in length by more than two are far.
func distance(a, b string) int {
	if len(a)-len(b) > 2 || len(b)-len(a) > 2 {
		return 3
	}
	d := make([][]int, len(a)+1)
	for i := range d {
		d[i] = make([]int, len(b)+1)
		for j := range d[i] {
			switch {
			case i == 0 || j == 0:
				d[i][j] = i + j
			case a[i-1] == b[j-1]:
				d[i][j] = d[i-1][j-1]
			default:
				d[i][j] = 1 + min(d[i-1][j-1], d[i-1][j], d[i][j-1])
				if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
					d[i][j] = min(d[i][j], 1+d[i-2][j-2])
				}
			}
		}
	}
	return d[len(a)][len(b)]
}
