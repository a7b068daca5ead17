package code

import (
	"slices"
	"strings"
	"testing"
)

func TestOpen(t *testing.T) {
	tests := []struct {
		code    Code
		season  Season
		want    Season
		edition string
		fails   string // part of the error
	}{
		{International, 0, 2028, "2025-28", ""},
		{International, 2025, 2025, "2025-28", ""},
		{International, 2024, 2024, "2021-24", ""},
		{International, 2017, 2017, "2017-20", ""},
		{International, 2016, 0, "", "ask for a season from 2017-18 to 2028-29 (editions 2017-20, 2021-24, 2025-28)"},
		{International, 2029, 0, "", "2029-30"},
		{Scholastic, 0, 2026, "2026-27", ""},
		{Scholastic, 2022, 2022, "2022-23", ""},
		{Scholastic, 2021, 0, "", "ask for a season from 2022-23 to 2026-27"},
		{Club, 2027, 0, "", "2026-27"},
		{"beach", 2025, 0, "", "international, club, collegiate, scholastic"},
	}
	for _, tt := range tests {
		b, err := Open(tt.code, tt.season)
		if tt.fails != "" {
			if err == nil || !strings.Contains(err.Error(), tt.fails) {
				t.Errorf("Open(%s, %d): error %v, want one with %q", tt.code, tt.season, err, tt.fails)
			}
			continue
		}
		if err != nil {
			t.Errorf("Open(%s, %d): %v", tt.code, tt.season, err)
			continue
		}
		if b.Code() != tt.code || b.Season() != tt.want || b.Edition() != tt.edition {
			t.Errorf("Open(%s, %d): %s %s, edition %s", tt.code, tt.season, b.Code(), b.Season(), b.Edition())
		}
	}
}

func TestEditionsOutOfReachAreDoubted(t *testing.T) {
	for _, tt := range []struct {
		code   Code
		season Season
		want   bool
	}{
		{International, 2021, true}, {International, 2025, false},
		{Club, 2024, false}, {Club, 2025, true},
		{Collegiate, 2025, false}, {Collegiate, 2026, true},
		{Scholastic, 2026, false},
	} {
		if got := open(t, tt.code, tt.season).Doubt(); (got != "") != tt.want {
			t.Errorf("%s %s: doubt %q", tt.code, tt.season, got)
		}
	}
}

func TestCellPanicsOnUnknownParameter(t *testing.T) {
	b := open(t, Club, 0)
	defer func() {
		if p := recover(); p == nil || !strings.Contains(p.(string), "hits.no-such-thing") {
			t.Errorf("recovered %v, want a panic that names the parameter", p)
		}
	}()
	b.Cell("hits.no-such-thing")
}

func TestParse(t *testing.T) {
	for _, c := range All() {
		if got, err := Parse(string(c)); got != c || err != nil {
			t.Errorf("Parse(%q) = %q, %v", c, got, err)
		}
	}
	for _, s := range []string{"", "Club", "college", " club"} {
		if _, err := Parse(s); err == nil || !strings.Contains(err.Error(), "international, club, collegiate, scholastic") {
			t.Errorf("Parse(%q): error %v does not list the codes", s, err)
		}
	}
}

func TestWith(t *testing.T) {
	b := open(t, Scholastic, 2025)
	got, err := b.With(
		Overlay{Param: "subs.per-set", Code: Scholastic, Value: "15", Rule: "H-3", Reason: "board decision of May 2025"},
		Overlay{Param: "net.hair", Rule: "H-7", Reason: "number in our book"},
		Overlay{Param: "hits.max", Code: Club, Value: "4", Reason: "mixed league"},
	)
	if err != nil {
		t.Fatal(err)
	}
	c := got.Cell("subs.per-set")
	if c.Int() != 15 || c.Rule != "H-3" || c.Adopted != "board decision of May 2025" || c.Text != "15 substitutions" ||
		c.Source != "the association's own adoption" || c.Basis != Published {
		t.Errorf("adopted value: %+v", c)
	}
	was := b.Cell("net.hair")
	was.Rule, was.Adopted = "H-7", "number in our book"
	if c := got.Cell("net.hair"); c != was {
		t.Errorf("adopted number: %+v, want %+v", c, was)
	}
	if c := got.Cell("hits.max"); c != b.Cell("hits.max") {
		t.Errorf("an overlay of another code changed %+v", c)
	}
	if c := b.Cell("subs.per-set"); c.Value != "18" || c.Adopted != "" {
		t.Errorf("the book itself changed: %+v", c)
	}
	if c, _ := open(t, Scholastic, 2025).With(Overlay{Param: "net.contact-rule", Value: "playing-action", Reason: "r"}); c.Cell("net.contact-rule").Text !=
		"only in the action of playing the ball, or when it interferes with play" {
		t.Errorf("text of an adopted value: %q", c.Cell("net.contact-rule").Text)
	}
}

func TestWithRefuses(t *testing.T) {
	b := open(t, Club, 0)
	tests := []struct {
		overlay Overlay
		says    string
	}{
		{Overlay{Param: "libero.colour", Value: "x", Reason: "r"}, "libero.attack, libero.block-attempt"},
		{Overlay{Param: "colour", Value: "x", Reason: "r"}, "align.bench-player-on-court"},
		{Overlay{Param: "ball.line", Value: "maybe", Reason: "r"}, `ball.line: unknown value "maybe": use one of in, out`},
		{Overlay{Param: "hits.max", Value: "three", Reason: "r"}, "a number (hits)"},
		{Overlay{Param: "hits.max", Value: "-3", Reason: "r"}, "a number (hits)"},
		{Overlay{Param: "overhead.min-height", Value: "4.", Reason: "r"}, "a number (metres), none, not-applicable"},
		{Overlay{Param: "hits.max", Code: "beach", Value: "3", Reason: "r"}, "unknown code"},
		{Overlay{Param: "hits.max", Reason: "r"}, "give a value, a rule number or both"},
		{Overlay{Param: "hits.max", Value: "4", Reason: " "}, "give a reason"},
		// An overlay of another code is checked all the same.
		{Overlay{Param: "ball.line", Code: Scholastic, Value: "maybe", Reason: "r"}, "use one of in, out"},
	}
	for _, tt := range tests {
		_, err := b.With(Overlay{Param: "ball.line", Value: "in", Reason: "r"}, tt.overlay)
		if err == nil || !strings.Contains(err.Error(), tt.says) || !strings.HasPrefix(err.Error(), "overlay 2: ") {
			t.Errorf("%+v: error %v, want one with %q", tt.overlay, err, tt.says)
		}
	}
}

func TestDifferences(t *testing.T) {
	tests := []struct {
		code     Code
		from, to Season
		want     []Param
	}{
		{International, 2021, 2025, []Param{"align.both-teams-out", "align.serving-team", "ball.pursuit", "block.beyond-simultaneous", "serve.hands-above-head"}},
		{International, 2021, 2024, nil},
		{Collegiate, 2023, 2024, []Param{"hits.second-double", "libero.count"}},
		{Collegiate, 2025, 2026, []Param{"centre.foot"}},
		{Scholastic, 2024, 2025, []Param{"hits.second-double", "libero.illegal-replacement-cut-off", "libero.second-serve-position"}},
		{Scholastic, 2025, 2026, []Param{"align.bench-player-on-court", "libero.count", "libero.injured", "match.ball-texture", "serve.hands-above-head"}},
	}
	for _, tt := range tests {
		changes, err := Differences(tt.code, tt.from, tt.to)
		if err != nil {
			t.Fatal(err)
		}
		var got []Param
		for _, c := range changes {
			got = append(got, c.Param)
			if c.From != open(t, tt.code, tt.from).Cell(c.Param) || c.To != open(t, tt.code, tt.to).Cell(c.Param) {
				t.Errorf("%s: cells %+v and %+v are not those of the seasons", c.Param, c.From, c.To)
			}
		}
		if !slices.Equal(got, tt.want) {
			t.Errorf("%s %s to %s: %q, want %q", tt.code, tt.from, tt.to, got, tt.want)
		}
	}
	if _, err := Differences(Club, 2021, 2025); err == nil {
		t.Error("a season that is not held gave no error")
	}
}

// Callers get copies: what they do to them stays theirs.
func TestTablesCannotBeChanged(t *testing.T) {
	Rows()[0].Param = "spoilt"
	r, _ := Find("hits.max")
	r.Cells(Club)[0].Value = "9"
	if Rows()[0].Param == "spoilt" || open(t, Club, 0).Cell("hits.max").Value != "3" {
		t.Error("a caller changed the table")
	}
}

func TestCellNumbers(t *testing.T) {
	b := open(t, Club, 0)
	if n, ok := b.Cell("overhead.min-height").Number(); n != 4.6 || !ok {
		t.Errorf("overhead.min-height: %v, %v", n, ok)
	}
	if n, ok := b.Cell("match.ceiling").Number(); ok {
		t.Errorf("match.ceiling: %v is no number", n)
	}
	defer func() {
		if recover() == nil {
			t.Error("Int of a word did not panic")
		}
	}()
	b.Cell("ball.line").Int()
}

func TestCellDoesNotAllocate(t *testing.T) {
	b := open(t, Collegiate, 0)
	if n := testing.AllocsPerRun(100, func() { b.Cell("hits.second-double") }); n != 0 {
		t.Errorf("Cell allocates %v times", n)
	}
}

func BenchmarkCell(b *testing.B) {
	book := open(b, Scholastic, 2025)
	for b.Loop() {
		if book.Cell("hits.second-double").Value == "" {
			b.Fatal("no value")
		}
	}
}

func BenchmarkOpen(b *testing.B) {
	for b.Loop() {
		open(b, Scholastic, 2025)
	}
}
