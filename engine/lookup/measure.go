package lookup

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// number answers with a number and its unit, nothing where the cell has none.
func number(p code.Param, unit string) func(*engine.Read, string) string {
	return func(r *engine.Read, _ string) string { return count(r, p, unit) }
}

func count(r *engine.Read, p code.Param, unit string) string {
	v := r.Param(p)
	if _, err := strconv.ParseFloat(v, 64); err != nil {
		return ""
	}
	return v + " " + unit
}

// time answers with seconds, in whole minutes from two on.
func time(p code.Param) func(*engine.Read, string) string {
	return func(r *engine.Read, _ string) string {
		n, err := strconv.Atoi(r.Param(p))
		switch {
		case err != nil:
			return ""
		case n >= 120 && n%60 == 0:
			return fmt.Sprintf("%d minutes", n/60)
		}
		return fmt.Sprintf("%d seconds", n)
	}
}

// length answers with a length in the book's own measures.
func length(p code.Param) func(*engine.Read, string) string {
	return func(r *engine.Read, _ string) string { return measured(r, p) }
}

func measured(r *engine.Read, p code.Param) string {
	m, err := strconv.ParseFloat(r.Param(p), 64)
	if err != nil {
		return ""
	}
	metric := strconv.FormatFloat(math.Round(m*100)/100, 'f', -1, 64) + " m"
	if m < 1 {
		metric = strconv.FormatFloat(math.Round(m*1000)/10, 'f', -1, 64) + " cm"
	}
	switch v := r.Param("match.measures"); {
	case v == "feet":
		return feet(m) + " (" + metric + ")"
	case v == "metric-and-feet" && m >= 1:
		return metric + " (" + feet(m) + ")"
	}
	return metric
}

// feet says a length in feet and inches, to the nearest eighth of an inch, as
// tapes are marked.
func feet(m float64) string {
	eighths := int(math.Round(m / 0.0254 * 8))
	ft, in, part := eighths/96, eighths%96/8, eighths%8
	var out []string
	if ft > 0 {
		out = append(out, fmt.Sprintf("%d ft", ft))
	}
	if in > 0 || part > 0 {
		s := ""
		if in > 0 || part == 0 {
			s = strconv.Itoa(in)
		}
		if part > 0 {
			den := 8
			for part%2 == 0 {
				part, den = part/2, den/2
			}
			s = strings.TrimSpace(s + fmt.Sprintf(" %d/%d", part, den))
		}
		out = append(out, s+" in")
	}
	return strings.Join(out, " ")
}

// joined puts two answers into one clause; nothing where either is missing.
func joined(between string, of ...func(*engine.Read, string) string) func(*engine.Read, string) string {
	return func(r *engine.Read, s string) string {
		var out []string
		for _, f := range of {
			a := f(r, s)
			if a == "" {
				return ""
			}
			out = append(out, a)
		}
		return strings.Join(out, between)
	}
}
