package index

import (
	"math"
	"slices"
	"strings"
)

// alike says how much of two signatures is the same, by weight: 1 when all of it is, 0 when
// nothing is. What one tells otherwise than the other counts against it: a play with the
// ball above the net is not one with the ball below it.
func alike(a, b []sign) float64 {
	same := 0.0
	for _, s := range a {
		if _, ok := slices.BinarySearch(b, s); ok {
			same += weights[s.class()]
		}
	}
	if same == 0 {
		return 0
	}
	for _, s := range a {
		if f, ok := told(s); ok && !slices.Contains(b, s) {
			for _, o := range b {
				if g, ok := told(o); ok && f == g && !slices.Contains(a, o) {
					same -= weightOtherwise
				}
			}
		}
	}
	return max(0, same/(math.Sqrt(weigh(a)*weigh(b))+weightLittle))
}

// weigh adds up the weights of a signature.
func weigh(signs []sign) float64 {
	sum := 0.0
	for _, s := range signs {
		sum += weights[s.class()]
	}
	return sum
}

// told gives what a sign of the class whose tells of, without what it tells: the fact, and
// the player or event that has it.
func told(s sign) (string, bool) {
	if s.class() != signWhose {
		return "", false
	}
	fact, rest, _ := strings.Cut(s.value(), "=")
	_, who, _ := strings.Cut(rest, "@")
	return fact + "@" + who, true
}

// trust is how much a play counts beside the words: less when words of it were not read.
func (a asked) trust() float64 {
	if a.Reading.Whole() {
		return weightPlay
	}
	return weightPlay * weightPart
}
