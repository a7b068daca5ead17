package code

import (
	"fmt"
	"strconv"
	"strings"
)

// Season is a playing season, named by its first calendar year: 2025 is the
// season 2025-26. Zero is no season.
type Season int

// longestCycle is how many years an edition's name may span: "2025-28".
const longestCycle = 3

// ParseSeason reads a season ("2025-26", "2025-2026"), the cycle of an edition
// ("2025-28", "2025-2028"), which means its first season, or a lone first year
// ("2025").
func ParseSeason(s string) (Season, error) {
	bad := func(why string) (Season, error) {
		return 0, fmt.Errorf("season %q: %s; write it like 2025-26, or a cycle like 2025-28", s, why)
	}
	from, to, pair := strings.Cut(s, "-")
	if len(from) != 4 {
		return bad("the first year needs four digits")
	}
	first, ok := year(from)
	if !ok || first < 1000 {
		return bad("the first year is not a year")
	}
	if !pair {
		return Season(first), nil
	}
	last, ok := year(to)
	switch {
	case !ok || len(to) != 2 && len(to) != 4:
		return bad("the second year needs two or four digits")
	case len(to) == 2:
		last += first / 100 * 100
		if last < first { // 1999-00
			last += 100
		}
	}
	if last <= first || last > first+longestCycle {
		return bad(fmt.Sprintf("it must end one to %d years after it begins", longestCycle))
	}
	return Season(first), nil
}

// year reads plain digits; strconv alone would take a sign.
func year(s string) (int, bool) {
	for _, r := range s {
		if r < '0' || r > '9' {
			return 0, false
		}
	}
	n, err := strconv.Atoi(s)
	return n, err == nil
}

// String is the season in two years: "2025-26". No season is "".
func (s Season) String() string {
	if s == 0 {
		return ""
	}
	return fmt.Sprintf("%d-%02d", int(s), (int(s)+1)%100)
}

// edition names the edition of a code that is in force in a season that is held.
func (c Code) edition(s Season) string {
	if c != International {
		return s.String()
	}
	switch {
	case s < 2021:
		return "2017-20"
	case s < 2025:
		return "2021-24"
	default:
		return "2025-28"
	}
}
