package court

import (
	"strings"
	"testing"
)

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		text string
		want Length
	}{
		{"2.5 m", Cm(250)}, {"250cm", Cm(250)}, {"3 ft", In(3, 0)}, {"8 ft 2 in", In(8, 2)}, {`8'2"`, In(8, 2)}, {"8’2”", In(8, 2)},
		{"0 m", 0}, {"1 metre 20 cm", Cm(120)}, {"12 mm", Mm(12)}, {"2.125 in", 2*Inch + Inch/8}, {"1 foot", In(1, 0)}, {"6 INCHES", In(0, 6)},
	} {
		got, err := ParseLength(c.text)
		if err != nil || got != c.want {
			t.Errorf("%q: %v, %v, want %v", c.text, got, err, c.want)
		}
	}
	for _, c := range []struct{ text, want string }{
		{"", "empty"}, {"3", "unit"}, {"ft", "number"}, {"3 yards", "use m, cm"}, {"1.2.3 m", "1.2.3"}, {"-1 m", "number"},
		{"99999999 m", "99999999"}, {"5000 m", "any hall"}, {"0.0000001 m", "decimals"}, {"0.000001 mm", "finer"}, {"3 ft 2", "unit"},
	} {
		if got, err := ParseLength(c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, %v, want an error about %q", c.text, got, err, c.want)
		}
	}
	for i := 1; i < len(units); i++ {
		if units[i-1].name >= units[i].name {
			t.Errorf("units: %q stands after %q", units[i].name, units[i-1].name)
		}
	}
}

func TestLengthString(t *testing.T) {
	for l, want := range map[Length]string{Cm(250): "250 cm", Mm(15): "15 mm", Inch: "25.4 mm", 0: "0 cm"} {
		if got := l.String(); got != want {
			t.Errorf("%d: %q, want %q", int64(l), got, want)
		}
	}
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{"2.5 m", `8'2"`, "3 ft 1", "..", "9999999999999999999 m"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if l, err := ParseLength(s); err == nil && l < 0 {
			t.Errorf("%q: %v", s, l)
		}
	})
}
