package court

import (
	"fmt"
	"strconv"
	"strings"
)

// Length is a distance in micrometres. Feet, inches and their halves, quarters
// and eighths, metres and centimetres are all whole numbers of it.
type Length int64

// The units.
const (
	Micrometre Length = 1
	Millimetre        = 1000 * Micrometre
	Centimetre        = 10 * Millimetre
	Metre             = 100 * Centimetre
	Inch              = 25400 * Micrometre
	Foot              = 12 * Inch
)

// Cm is a whole number of centimetres.
func Cm(n int) Length { return Length(n) * Centimetre }

// Mm is a whole number of millimetres.
func Mm(n int) Length { return Length(n) * Millimetre }

// In is a number of feet and a number of inches.
func In(feet, inches int) Length { return Length(feet)*Foot + Length(inches)*Inch }

// units are what a number may be followed by. Sorted by name.
var units = []struct {
	name string
	size Length
}{
	{"\"", Inch}, {"'", Foot}, {"centimeter", Centimetre}, {"centimeters", Centimetre}, {"centimetre", Centimetre},
	{"centimetres", Centimetre}, {"cm", Centimetre}, {"feet", Foot}, {"foot", Foot}, {"ft", Foot}, {"in", Inch},
	{"inch", Inch}, {"inches", Inch}, {"m", Metre}, {"meter", Metre}, {"meters", Metre}, {"metre", Metre},
	{"metres", Metre}, {"mm", Millimetre},
}

// ParseLength reads "2.5 m", "250cm", "8 ft 2 in", `8'2"` or "3 ft". The error
// says what was wrong; a value that is no whole number of micrometres is one.
func ParseLength(s string) (Length, error) {
	var total Length
	rest := strings.ToLower(strings.NewReplacer("’", "'", "′", "'", "″", "\"", "”", "\"").Replace(strings.TrimSpace(s)))
	if rest == "" {
		return 0, fmt.Errorf("length: it is empty; write it like 2.5 m or 8 ft 2 in")
	}
	for rest != "" {
		n := strings.IndexFunc(rest, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
		if n <= 0 {
			return 0, fmt.Errorf("length %q: a number and its unit must be given, like 2.5 m or 8 ft 2 in", s)
		}
		number := rest[:n]
		rest = strings.TrimLeft(rest[n:], " ")
		m := strings.IndexFunc(rest, func(r rune) bool { return r == ' ' || r >= '0' && r <= '9' })
		if m < 0 {
			m = len(rest)
		}
		size := Length(0)
		for _, u := range units {
			if u.name == rest[:m] {
				size = u.size
			}
		}
		if size == 0 {
			return 0, fmt.Errorf("length %q: unknown unit %q; use m, cm, mm, ft or in", s, rest[:m])
		}
		part, err := times(number, size)
		if err != nil {
			return 0, fmt.Errorf("length %q: %w", s, err)
		}
		total += part
		rest = strings.TrimLeft(rest[m:], " ")
	}
	return total, nil
}

// farthest bounds what is read, well beyond any hall.
const farthest = 1000 * Metre

// times is a decimal number of a unit, exactly.
func times(number string, size Length) (Length, error) {
	whole, part, _ := strings.Cut(number, ".")
	if whole == "" || len(whole) > 7 || len(part) > 6 {
		return 0, fmt.Errorf("%q is no number that can be used; write at most 6 decimals", number)
	}
	w, err := strconv.Atoi(whole)
	if err != nil {
		return 0, fmt.Errorf("%q is no number", number)
	}
	out := Length(w) * size
	if part != "" {
		p, err := strconv.Atoi(part)
		if err != nil {
			return 0, fmt.Errorf("%q is no number", number)
		}
		scale := Length(1)
		for range part {
			scale *= 10
		}
		if Length(p)*size%scale != 0 {
			return 0, fmt.Errorf("%q is finer than a thousandth of a millimetre", number)
		}
		out += Length(p) * size / scale
	}
	if out > farthest {
		return 0, fmt.Errorf("%q is farther than any hall", number)
	}
	return out, nil
}

// String says it in centimetres where they are whole, else in millimetres.
func (l Length) String() string {
	switch {
	case l%Centimetre == 0:
		return fmt.Sprintf("%d cm", l/Centimetre)
	case l%Millimetre == 0:
		return fmt.Sprintf("%d mm", l/Millimetre)
	}
	return strconv.FormatFloat(float64(l)/float64(Millimetre), 'f', -1, 64) + " mm"
}
