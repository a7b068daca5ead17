package rules_test

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
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// oneCase is one block of a case file.
type oneCase struct {
	at     string
	name   string
	source string
	basis  string
	codes  []string
	words  string
	ruling string
	turns  string
	ifs    []string
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
			for _, s := range strings.Split(value, ",") {
				c.codes = append(c.codes, strings.TrimSpace(s))
			}
		case "play":
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

// say is a ruling in the words of a case file.
func say(d engine.Decision) string {
	if !d.Settled() {
		return "depends"
	}
	r := d.Ruling
	s := string(r.Outcome)
	if r.Fault != "" {
		s += " " + r.Fault
	}
	if r.Replay != "" {
		s += " " + r.Replay
	}
	if r.Against != play.NoTeam {
		s += " against " + r.Against.String()
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
		t.Run(strings.TrimSuffix(filepath.Base(path), ".cases"), func(t *testing.T) {
			for _, c := range readCases(t, path) {
				if c.source == "" || !slices.Contains([]string{"published", "practice", "memory"}, c.basis) {
					t.Errorf("%s: source and basis must be given", c.at)
				}
				r, err := notation.Read(c.words)
				if err != nil || r.Rally == nil {
					t.Errorf("%s: play: not read: %v", c.at, err)
					continue
				}
				for _, u := range r.Unread {
					t.Errorf("%s: play: %q was not read", c.at, u.Word)
				}
				for _, b := range books(t, c) {
					n++
					checkCase(t, c, r.Rally, b)
				}
			}
		})
	}
	t.Logf("%d rulings checked", n)
}

func checkCase(t *testing.T, c oneCase, p *play.Rally, b *code.Book) {
	t.Helper()
	d, err := rules.Decide(p, b)
	if err != nil {
		t.Errorf("%s: %s: %v", c.at, b.Code(), err)
		return
	}
	if got := say(d); got != c.ruling {
		ask := ""
		if d.Tree != nil {
			ask = " on " + d.Tree.Ask.String()
		}
		t.Errorf("%s: %s %s: ruling %s%s, want %s\n\t%s\n\tread as %s", c.at, b.Code(), b.Season(), got, ask, c.ruling, c.words, notation.Print(p))
		return
	}
	if c.turns != "" && d.Tree != nil && d.Tree.Ask.String() != c.turns {
		t.Errorf("%s: %s: turns on %s, want %s", c.at, b.Code(), d.Tree.Ask, c.turns)
	}
	for _, s := range c.ifs {
		told, want, _ := strings.Cut(s, "=>")
		fact, value, _ := strings.Cut(strings.TrimSpace(told), "=")
		k, err := play.ParseKey(fact)
		if err != nil {
			t.Errorf("%s: if: %v", c.at, err)
			continue
		}
		e, err := rules.Decide(p.With(k, play.Value(value)), b)
		if err != nil {
			t.Errorf("%s: %v", c.at, err)
			continue
		}
		if got := say(e); got != strings.TrimSpace(want) {
			t.Errorf("%s: %s: with %s %s, want %s", c.at, b.Code(), strings.TrimSpace(told), got, strings.TrimSpace(want))
		}
	}
}

// TestEveryRule holds the list: sorted, unique, documented, each with a case
// file of its own, and every case file with a rule.
func TestEveryRule(t *testing.T) {
	ids := map[string]bool{}
	last := ""
	for _, r := range rules.All() {
		if r.ID <= last {
			t.Errorf("%s: rules are sorted by id, each once", r.ID)
		}
		last = r.ID
		ids[r.ID] = true
		if r.Title == "" || len(r.Text) < 20 || len(r.Call.By) == 0 || r.Rank == 0 {
			t.Errorf("%s: title, text, rank and who calls it must be given", r.ID)
		}
		for _, p := range r.Params() {
			if _, ok := code.Find(p); !ok {
				t.Errorf("%s: there is no parameter %q", r.ID, p)
			}
		}
		if _, err := os.Stat("testdata/" + r.ID + ".cases"); err != nil {
			t.Errorf("%s: has no case file", r.ID)
		}
		for _, l := range r.Lifts {
			_, rule := rules.ByID(l)
			if _, param := code.Find(code.Param(l)); !rule && !param {
				t.Errorf("%s: lifts %q, which is no rule and no parameter", r.ID, l)
			}
		}
	}
	paths, _ := filepath.Glob("testdata/*.cases")
	for _, p := range paths {
		if id := strings.TrimSuffix(filepath.Base(p), ".cases"); !ids[id] {
			t.Errorf("%s: there is no rule %q", p, id)
		}
	}
}
