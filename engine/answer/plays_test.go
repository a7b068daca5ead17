package answer_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation/playtest"
)

// floors are what each file of plays must reach, in per cent: right at least,
// wrong at most. They are raised when the reader gets better, never lowered.
// Topics that are not ruled on yet count as silent.
var floors = []struct {
	file         string
	slash        bool
	right, wrong float64
}{
	{"cases.plays", true, 68, 0},
	{"cases.plays", false, 50, 0},
	{"court.plays", true, 97, 0},
	{"court.plays", false, 93, 0},
	{"dev.plays", true, 85, 0},
	{"dev.plays", false, 46, 1},
	{"deadball.plays", true, 92, 0},
	{"deadball.plays", false, 86, 0},
	{"libero.plays", true, 96, 0},
	{"libero.plays", false, 80, 0},
	{"lookup.plays", true, 95, 0},
	{"lookup.plays", false, 93, 0},
	{"own.plays", true, 82, 2},
	{"own.plays", false, 45, 0},
	{"questions.plays", true, 55, 1},
	{"questions.plays", false, 40, 0},
	{"rally_stories_1.plays", true, 75, 0},
	{"rally_stories_1.plays", false, 80, 0},
	{"rally_stories_2.plays", true, 75, 0},
	{"rally_stories_2.plays", false, 76, 0},
	{"rally_stories_3.plays", true, 73, 0},
	{"rally_stories_3.plays", false, 76, 0},
	{"rally_stories_4.plays", true, 66, 0},
	{"rally_stories_4.plays", false, 70, 0},
	{"rally_stories_5.plays", true, 50, 0},
	{"rally_stories_5.plays", false, 50, 0},
	{"rally_stories_6.plays", true, 75, 0},
	{"rally_stories_6.plays", false, 50, 0},
	{"serve.plays", true, 95, 0},
	{"serve.plays", false, 91, 0},
	{"serve_stories.plays", true, 96, 0},
	{"serve_stories.plays", false, 96, 0},
	{"serve_stories_2.plays", true, 95, 0},
	{"serve_stories_2.plays", false, 85, 0},
	{"stories.plays", true, 78, 0},
	{"stories.plays", false, 50, 0},
	{"stories2.plays", true, 66, 0},
	{"stories2.plays", false, 45, 0},
	{"surround_stories_2.plays", true, 90, 0},
	{"surround_stories_2.plays", false, 90, 0},
	{"surround_stories.plays", true, 90, 0},
	{"surround_stories.plays", false, 90, 0},
}

func load(t *testing.T, name string) []playtest.Play {
	t.Helper()
	f, err := os.Open(filepath.Join("..", "notation", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	ps, err := playtest.Read(name, f)
	if err != nil {
		t.Fatal(err)
	}
	return ps
}

// result is the verdict on one play: under every code asked, the worst.
func result(t *testing.T, p playtest.Play, slash bool) (string, string) {
	t.Helper()
	words := p.Text
	if slash {
		words = p.Slash
	}
	codes := []string{p.Code}
	if p.Code == answer.AnyCode || len(p.Under) > 0 {
		codes = nil
		for _, c := range code.All() {
			if _, ok := p.Under[string(c)]; ok || len(p.Under) == 0 {
				codes = append(codes, string(c))
			}
		}
	}
	worst, said := right, ""
	for _, c := range codes {
		o := answer.Options{Code: code.Code(c)}
		if p.Season != "" && p.Code != answer.AnyCode {
			s, err := code.ParseSeason(p.Season)
			if err != nil {
				t.Fatalf("%s: %v", p.ID, err)
			}
			o.Season = s
		}
		a := answer.Ask(words, o)
		if v := score(p, c, a); slices.Index(verdicts, v) <= slices.Index(verdicts, worst) {
			worst = v
			said = fmt.Sprintf("%s: %s %s %s against %v, unread %v", c, a.Outcome, a.Fault, a.Replay, a.Against, a.Unread)
		}
	}
	return worst, said
}

// TestPlays asks every counted play in both forms and reports per topic and
// per kind. -v shows the tables and each wrong one.
func TestPlays(t *testing.T) {
	for _, floor := range floors {
		form := "text"
		if floor.slash {
			form = "slash"
		}
		t.Run(floor.file+"/"+form, func(t *testing.T) {
			count := map[string]int{}
			table := map[string]map[string]int{}
			n := 0
			for _, p := range load(t, floor.file) {
				if !p.Counted() {
					continue
				}
				v, said := result(t, p, floor.slash)
				n++
				count[v]++
				for _, row := range []string{"topic " + p.Topic, "kind " + p.Kind()} {
					if table[row] == nil {
						table[row] = map[string]int{}
					}
					table[row][v]++
				}
				if v == wrong {
					t.Logf("wrong %s, want %+v, got %s", p.ID, p.Want, said)
				}
			}
			per := func(v string) float64 { return 100 * float64(count[v]) / float64(n) }
			var rows []string
			for row := range table {
				rows = append(rows, row)
			}
			slices.Sort(rows)
			var b strings.Builder
			for _, row := range rows {
				c := table[row]
				fmt.Fprintf(&b, "\n  %-22s right %2d  half %2d  silent %2d  wrong %2d", row, c[right], c[half], c[silent], c[wrong])
			}
			t.Logf("%d plays: right %.1f %%, half %.1f %%, silent %.1f %%, wrong %.1f %%%s", n, per(right), per(half), per(silent), per(wrong), b.String())
			if per(right) < floor.right || per(wrong) > floor.wrong {
				t.Errorf("right %.1f %% (at least %.1f), wrong %.1f %% (at most %.1f)", per(right), floor.right, per(wrong), floor.wrong)
			}
		})
	}
}

// TestPlayFiles holds that every test play names its source and basis, has
// both forms and a right answer, and that ids differ.
func TestPlayFiles(t *testing.T) {
	ids := map[string]bool{}
	names, err := filepath.Glob(filepath.Join("..", "notation", "testdata", "*.plays"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no files of plays: %v", err)
	}
	for _, name := range names {
		name = filepath.Base(name)
		for _, p := range load(t, name) {
			at := fmt.Sprintf("%s:%d: %s", name, p.Line, p.ID)
			if ids[p.ID] {
				t.Errorf("%s: id used twice", at)
			}
			ids[p.ID] = true
			if p.Source == "" || p.Text == "" || p.Slash == "" || p.Topic == "" || p.Code == "" {
				t.Errorf("%s: source, text, slash, topic and code must be given", at)
			}
			if !slices.Contains([]string{"published", "practice", "memory"}, p.Basis) || !slices.Contains([]string{"high", "medium", "low"}, p.Trust) {
				t.Errorf("%s: basis %q, trust %q", at, p.Basis, p.Trust)
			}
			if p.Want.Outcome == "" && len(p.Want.Measures) == 0 && p.Want.Fact == "" && len(p.Under) == 0 {
				t.Errorf("%s: no answer is given", at)
			}
		}
	}
}
