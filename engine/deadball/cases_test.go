package deadball_test

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// oneCase is one block of a case file.
type oneCase struct {
	at, name, source, basis, words, ruling, turns string
	codes                                         []string
	ifs                                           []string
}

func readCases(t *testing.T, path string) []oneCase {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []oneCase
	c := oneCase{}
	flush := func() {
		if c.name != "" {
			out = append(out, c)
		}
		c = oneCase{}
	}
	sc := bufio.NewScanner(f)
	for n := 1; sc.Scan(); n++ {
		line := strings.TrimSpace(sc.Text())
		if line == "" {
			flush()
			continue
		}
		if line[0] == '#' {
			continue
		}
		key, value, _ := strings.Cut(line, " ")
		value = strings.TrimSpace(value)
		switch key {
		case "case":
			c.name, c.at = value, fmt.Sprintf("%s:%d", path, n)
		case "source":
			c.source = value
		case "basis":
			c.basis = value
		case "code":
			for s := range strings.SplitSeq(value, ",") {
				c.codes = append(c.codes, strings.TrimSpace(s))
			}
		case "act":
			c.words = value
		case "ruling":
			c.ruling = value
		case "turns":
			c.turns = value
		case "if":
			c.ifs = append(c.ifs, value)
		default:
			t.Fatalf("%s:%d: %s: unknown key", path, n, key)
		}
	}
	flush()
	return out
}

// books opens the codes that a case names.
func books(t *testing.T, c oneCase) []*code.Book {
	t.Helper()
	var out []*code.Book
	for _, s := range c.codes {
		name, season, _ := strings.Cut(s, " ")
		if name == "any" {
			for _, id := range code.All() {
				out = append(out, book(t, id))
			}
			continue
		}
		id, err := code.Parse(name)
		if err != nil {
			t.Fatalf("%s: code: %v", c.at, err)
		}
		var y code.Season
		if season != "" {
			if y, err = code.ParseSeason(season); err != nil {
				t.Fatalf("%s: code: %v", c.at, err)
			}
		}
		b, err := code.Open(id, y)
		if err != nil {
			t.Fatalf("%s: code: %v", c.at, err)
		}
		out = append(out, b)
	}
	if len(out) == 0 {
		t.Fatalf("%s: code: none named", c.at)
	}
	return out
}

// sayShort is a ruling in the words of a case file.
func sayShort(d engine.Decision) string {
	if !d.Settled() {
		return "depends"
	}
	r := d.Ruling
	s := ""
	add := func(words string) { s = strings.TrimSpace(s + " " + words) }
	if r.Outcome != "" {
		add(string(r.Outcome) + " " + r.Fault + r.Replay)
	}
	if len(r.Measure) > 0 {
		add("measure " + strings.Join(r.Measure, ","))
	}
	if r.Against != play.NoTeam {
		add("against " + r.Against.String())
	}
	return s
}

// TestCases rules every case of every rule as its source does.
func TestCases(t *testing.T) {
	paths, err := filepath.Glob("testdata/*.cases")
	if err != nil || len(paths) == 0 {
		t.Fatal("no case files", err)
	}
	n := 0
	for _, path := range paths {
		id := strings.TrimSuffix(filepath.Base(path), ".cases")
		if _, ok := deadball.ByID(id); !ok {
			t.Errorf("%s: there is no rule %q", path, id)
		}
		t.Run(id, func(t *testing.T) {
			for _, c := range readCases(t, path) {
				if c.source == "" || !slices.Contains([]string{"published", "practice", "memory"}, c.basis) {
					t.Errorf("%s: source and basis must be given", c.at)
				}
				r, err := notation.Read(c.words)
				if err != nil {
					t.Errorf("%s: act: not read: %v", c.at, err)
					continue
				}
				a, ok := r.Other.(*deadball.Act)
				if !ok {
					t.Errorf("%s: act: not read as an act in a dead ball", c.at)
					continue
				}
				for _, u := range r.Unread {
					t.Errorf("%s: act: %q was not read", c.at, u.Word)
				}
				for _, b := range books(t, c) {
					n++
					checkCase(t, c, a, b, id)
				}
			}
		})
	}
	for _, r := range deadball.All() {
		if !slices.Contains(paths, filepath.Join("testdata", r.ID+".cases")) {
			t.Errorf("%s: has no case file", r.ID)
		}
	}
	t.Logf("%d rulings checked", n)
}

func checkCase(t *testing.T, c oneCase, a *deadball.Act, b *code.Book, id string) {
	t.Helper()
	d, err := engine.Decide(deadball.Judge, a, b)
	if err != nil {
		t.Errorf("%s: %s: %v", c.at, b.Code(), err)
		return
	}
	if got := sayShort(d); got != c.ruling {
		ask := ""
		if d.Tree != nil {
			ask = " on " + d.Tree.Ask.String()
		}
		t.Errorf("%s: %s %s: ruling %s%s, want %s\n\t%s\n\tread as %s", c.at, b.Code(), b.Season(), got, ask, c.ruling, c.words, a.Print())
		return
	}
	if c.turns != "" && (d.Tree == nil || d.Tree.Ask.String() != c.turns) {
		t.Errorf("%s: %s: does not turn on %s", c.at, b.Code(), c.turns)
	}
	rests := false
	for _, l := range d.Leaves {
		for _, cite := range l.Ruling.Cites {
			rests = rests || cite.Rule == id
		}
	}
	if !rests {
		t.Errorf("%s: %s: the ruling does not rest on the rule", c.at, b.Code())
	}
	for _, s := range c.ifs {
		told, want, _ := strings.Cut(s, "=>")
		more := a
		for f := range strings.FieldsSeq(told) {
			fact, value, _ := strings.Cut(f, "=")
			more = more.With(play.FactID(fact), play.Value(value))
		}
		e, err := engine.Decide(deadball.Judge, more, b)
		if err != nil {
			t.Errorf("%s: %v", c.at, err)
			continue
		}
		if got := sayShort(e); got != strings.TrimSpace(want) {
			t.Errorf("%s: %s: with %s %s, want %s", c.at, b.Code(), strings.TrimSpace(told), got, strings.TrimSpace(want))
		}
	}
}
