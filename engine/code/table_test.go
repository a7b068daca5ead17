package code

import (
	"bufio"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// "r2", the trade's name of the second referee, is the only digit in a name.
var paramForm = regexp.MustCompile(`^(r2|[a-z-]+)\.[a-z-]+$`)

func TestRowsAreSortedUniqueAndDocumented(t *testing.T) {
	var last Param
	for _, r := range Rows() {
		if r.Param <= last {
			t.Errorf("%s: not above %s: rows are sorted and unique", r.Param, last)
		}
		last = r.Param
		if !paramForm.MatchString(string(r.Param)) {
			t.Errorf("%s: not of the form area.name", r.Param)
		}
		if r.Title == "" || r.Doc == "" || strings.TrimSuffix(r.Doc, ".") == r.Title {
			t.Errorf("%s: needs a title, and a doc that says more than the title", r.Param)
		}
		if !strings.HasSuffix(r.Doc, ".") && !strings.HasSuffix(r.Doc, "?") {
			t.Errorf("%s: doc is not a sentence: %q", r.Param, r.Doc)
		}
		if len(r.Values) == 0 && r.Unit == "" {
			t.Errorf("%s: has neither a domain nor a unit", r.Param)
		}
		seen := map[string]bool{}
		for _, v := range r.Values {
			if v.ID == "" || v.Doc == "" || seen[v.ID] || isNumber(v.ID) {
				t.Errorf("%s: value %q must be named, documented, unique and no number", r.Param, v.ID)
			}
			seen[v.ID] = true
		}
	}
}

// A rule reference: numbers of the two house styles, a letter, or a range.
var ruleForm = regexp.MustCompile(`^\d+([.-]\d+)*([a-z](,[a-z])*)?(-\d+(\.\d+)*)?$`)

func TestCellsAreComplete(t *testing.T) {
	for _, r := range Rows() {
		for _, c := range All() {
			for _, cell := range r.Cells(c) {
				at := string(r.Param) + " " + string(c) + " " + cell.Since.String()
				if err := r.Check(cell.Value); err != nil {
					t.Errorf("%s: %v", at, err)
				}
				if cell.Text == "" || cell.Source == "" {
					t.Errorf("%s: needs a text and a source", at)
				}
				switch cell.Basis {
				case Published, Practice:
				case Memory:
					if cell.Source != c.fromMemory() {
						t.Errorf("%s: from memory, yet its source is %q", at, cell.Source)
					}
				default:
					t.Errorf("%s: unknown basis %q", at, cell.Basis)
				}
				if cell.Adopted != "" {
					t.Errorf("%s: adopted in the table itself", at)
				}
				if cell.Rule == "" && cell.Basis == Published && cell.Value != "no-rule" {
					t.Errorf("%s: published without a rule number", at)
				}
				for _, ref := range strings.Split(cell.Rule, "; ") {
					if cell.Rule != "" && !ruleForm.MatchString(ref) {
						t.Errorf("%s: rule reference %q is not well formed", at, ref)
					}
				}
				// Words that lean on another cell or on us mean nothing alone.
				if regexp.MustCompile(`^([Ss]ame|[Ss]imilar|n/a)\b`).MatchString(cell.Text) {
					t.Errorf("%s: text leans on another cell: %q", at, cell.Text)
				}
			}
		}
	}
}

// A cell that says that nothing was seen is doubtful by itself.
func TestUnseenCellsAreDoubted(t *testing.T) {
	for _, r := range Rows() {
		for _, c := range All() {
			for _, cell := range r.Cells(c) {
				if (cell.Value == "unknown" || cell.Value == "unclear") && cell.Doubt == "" {
					t.Errorf("%s %s: %q without a doubt", r.Param, c, cell.Value)
				}
				if cell.Value == "unknown" && cell.Basis == Published {
					t.Errorf("%s %s: unknown, yet published", r.Param, c)
				}
			}
		}
	}
}

func TestSeasonsAreContiguous(t *testing.T) {
	for _, r := range Rows() {
		for _, c := range All() {
			first, last, _ := Held(c)
			next := first
			for _, cell := range r.Cells(c) {
				if cell.Since != next || cell.Until < cell.Since {
					t.Errorf("%s %s: cell of %s to %s does not follow on %s", r.Param, c, cell.Since, cell.Until, next)
				}
				next = cell.Until + 1
			}
			if next != last+1 {
				t.Errorf("%s %s: ends with %s, the code is held to %s", r.Param, c, next-1, last)
			}
		}
	}
}

// International rules change with an edition, never within one.
func TestInternationalCellsFollowEditions(t *testing.T) {
	for _, r := range Rows() {
		for _, cell := range r.Cells(International) {
			if cell.Since > 2017 && International.edition(cell.Since) == International.edition(cell.Since-1) {
				t.Errorf("%s: changes within the edition %s", r.Param, International.edition(cell.Since))
			}
		}
	}
}

func TestSignalsAreSortedAndComplete(t *testing.T) {
	ids := Signals()
	if !slices.IsSorted(ids) || len(slices.Compact(slices.Clone(ids))) != len(ids) {
		t.Errorf("signals are not sorted and unique: %v", ids)
	}
	for _, c := range All() {
		b := open(t, c, 0)
		for _, id := range ids {
			s, ok := b.Signal(id)
			if !ok || s.ID != id || s.Name == "" || s.Text == "" || s.Source == "" {
				t.Errorf("%s %s: incomplete: %+v", c, id, s)
			}
			if s.Basis != Published && s.Number != "" {
				t.Errorf("%s %s: number %s without a source", c, id, s.Number)
			}
			if s.Basis == Memory && s.Doubt == "" {
				t.Errorf("%s %s: from memory without a doubt", c, id)
			}
		}
	}
	if s, ok := open(t, Club, 0).Signal("no-such-signal"); ok {
		t.Errorf("an unknown id gave %+v", s)
	}
}

// Every question of the researched comparison is answered here, and every row
// answers one.
func TestResearchIsCovered(t *testing.T) {
	f, err := os.Open("testdata/researched.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var questions []string
	answered := map[Param]bool{}
	sc := bufio.NewScanner(f)
	for sc.Scan() {
		line := sc.Text()
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		q, ids, _ := strings.Cut(line, ":")
		questions = append(questions, q)
		names := strings.Fields(ids)
		if len(names) == 0 {
			t.Errorf("%s: nothing answers it", q)
		}
		for _, n := range names {
			if strings.HasPrefix(q, "signal.") {
				if !slices.Contains(Signals(), n) {
					t.Errorf("%s: no signal %q", q, n)
				}
				continue
			}
			if _, ok := Find(Param(n)); !ok {
				t.Errorf("%s: no row %q", q, n)
			}
			answered[Param(n)] = true
		}
	}
	if err := sc.Err(); err != nil {
		t.Fatal(err)
	}
	if len(questions) != 146 || !slices.IsSorted(questions) {
		t.Errorf("%d questions, want 146, sorted", len(questions))
	}
	for _, r := range Rows() {
		if !answered[r.Param] {
			t.Errorf("%s: answers no question of the research", r.Param)
		}
	}
}

func open(t testing.TB, c Code, s Season) *Book {
	t.Helper()
	b, err := Open(c, s)
	if err != nil {
		t.Fatal(err)
	}
	return b
}
