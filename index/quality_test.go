package index

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"text/tabwriter"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/analysis"
	"github.com/blevesearch/bleve/v2/analysis/lang/en"
	"github.com/blevesearch/bleve/v2/index/scorch"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/engine/code"
)

// What the quality of a search must be: the mean, over all questions, of one over the
// place of the first right note among the first three, zero where none is there.
const (
	wantQuality = 0.85 // at least
	wantLead    = 0.10 // and so much above the search library's plain match of the same words
	ranks       = 3
)

// A search is one question with the notes that should come first.
type searchCase struct {
	at   string // file:line
	form string // slash, typed or words
	ask  string
	code code.Code
	want []string // ids; any of them is right in the first place
}

// readSearches reads a file of questions: a line for each field, a blank line between
// questions, # begins a remark.
func readSearches(t testing.TB, path string) []searchCase {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []searchCase
	var c searchCase
	flush := func() {
		if c.at == "" {
			return
		}
		if c.ask == "" || len(c.want) == 0 {
			t.Errorf("%s: a question needs its words and want", c.at)
		}
		out = append(out, c)
		c = searchCase{}
	}
	lines := bufio.NewScanner(f)
	for n := 1; lines.Scan(); n++ {
		at := fmt.Sprintf("%s:%d", filepath.ToSlash(path), n)
		key, rest, _ := strings.Cut(strings.TrimSpace(lines.Text()), " ")
		rest = strings.TrimSpace(rest)
		switch {
		case key == "":
			flush()
			continue
		case strings.HasPrefix(key, "#"):
			continue
		case c.at == "":
			c.at = at
		}
		switch key {
		case "slash", "typed", "words":
			c.form, c.ask = key, rest
		case "code":
			if c.code, err = code.Parse(rest); err != nil {
				t.Errorf("%s: %v", at, err)
			}
		case "want":
			c.want = strings.Fields(rest)
		default:
			t.Errorf("%s: no field is called %q", at, key)
		}
	}
	flush()
	if err := lines.Err(); err != nil {
		t.Fatal(err)
	}
	return out
}

// The questions. Tuned ones may guide work on the ranking; held-out ones only measure it.
func searches(t testing.TB) (tuned, heldOut []searchCase) {
	t.Helper()
	return readSearches(t, "testdata/searches/tuned.txt"), readSearches(t, "testdata/searches/held-out.txt")
}

func demoBook(t testing.TB) *casebook.Book {
	t.Helper()
	return load(t, demo.FS())
}

// score is the quality over some questions.
type score struct {
	n     int
	sum   float64
	first int // how many had a right note in the first place
}

func (s *score) add(place int) {
	s.n++
	if place > 0 {
		s.sum += 1 / float64(place)
	}
	if place == 1 {
		s.first++
	}
}

func (s score) mean() float64 { return s.sum / float64(s.n) }

func (s score) String() string {
	return fmt.Sprintf("%.3f\t%d of %d first", s.mean(), s.first, s.n)
}

// place is where the first right id stands among the first ranks, zero for nowhere.
func place(got, want []string) int {
	for i, id := range got[:min(ranks, len(got))] {
		if slices.Contains(want, id) {
			return i + 1
		}
	}
	return 0
}

// TestQuality measures the search on the demo casebook and prints the table; run it with
// -v to read that, and to see each tuned question that is not answered first.
func TestQuality(t *testing.T) {
	b := demoBook(t)
	x, err := Memory(t.Context(), b)
	if err != nil {
		t.Fatal(err)
	}
	defer x.Close()
	plain := baseline(t, b)
	tuned, heldOut := searches(t)
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	fmt.Fprintln(w, "\nquestions\tours\t\tplain match\t")
	sets := []struct {
		name string
		of   []searchCase
	}{{"tuned", tuned}, {"held out", heldOut}, {"all", slices.Concat(tuned, heldOut)}}
	for _, form := range []string{"slash", "typed", "words"} {
		var of []searchCase
		for _, c := range slices.Concat(tuned, heldOut) {
			if c.form == form {
				of = append(of, c)
			}
		}
		sets = append(sets, struct {
			name string
			of   []searchCase
		}{"all " + form, of})
	}
	for _, set := range sets {
		var ours, theirs score
		for _, c := range set.of {
			got := ids(t, x, Question{Words: c.ask, Code: c.code}.Query())
			ours.add(place(got, c.want))
			theirs.add(place(plain(c), c.want))
			if set.name == "tuned" && place(got, c.want) != 1 {
				t.Logf("%s: %s\n\twant %v, got %v", c.at, c.ask, c.want, got)
			}
		}
		fmt.Fprintf(w, "%s\t%s\t%s\n", set.name, ours, theirs)
		if form := strings.HasPrefix(set.name, "all "); form {
			continue // thirty questions each: told, not held to
		}
		if ours.mean() < wantQuality || ours.mean() < theirs.mean()+wantLead {
			t.Errorf("%s: the quality is %.3f and plain match's %.3f; want at least %.2f and a lead of %.2f",
				set.name, ours.mean(), theirs.mean(), wantQuality, wantLead)
		}
	}
	w.Flush()
	t.Log(table.String())
}

// baseline is what the search library makes of the same words by itself: its standard
// mapping over all the text of a note, its plain match, the same notes to choose from.
func baseline(t *testing.T, b *casebook.Book) func(searchCase) []string {
	t.Helper()
	x, err := bleve.NewUsing("", bleve.NewIndexMapping(), scorch.Name, scorch.Name, nil)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { x.Close() })
	for _, n := range b.Live("", 0) {
		err := x.Index(n.ID, map[string]any{"title": n.Title, "play": n.Play, "topics": n.Topics, "rules": n.Rules, "body": n.Plain()})
		if err != nil {
			t.Fatal(err)
		}
	}
	return func(c searchCase) []string {
		r := bleve.NewSearchRequestOptions(bleve.NewMatchQuery(c.ask), 100, 0, false)
		r.SortBy([]string{"-_score", "_id"})
		res, err := x.Search(r)
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, h := range res.Hits {
			if c.code == "" || b.Note(h.ID).For(c.code) {
				out = append(out, h.ID)
			}
		}
		return out
	}
}

// The questions are honest: there are enough of them in each form, their notes are in force
// in the demo casebook, and none is answered by its own words standing in a title.
func TestSearches(t *testing.T) {
	b := demoBook(t)
	tuned, heldOut := searches(t)
	all := slices.Concat(tuned, heldOut)
	if len(all) < 80 || len(heldOut) < len(tuned) {
		t.Errorf("%d questions are tuned on and %d held out; want 80 or more, half of them held out", len(tuned), len(heldOut))
	}
	l := testLexicon(t, nil)
	common := stopWords(t, l)
	forms, seen, notes := map[string]int{}, map[string]string{}, map[string]bool{}
	for _, c := range all {
		forms[c.form]++
		if first, ok := seen[c.ask]; ok {
			t.Errorf("%s: asked at %s already", c.at, first)
		}
		seen[c.ask] = c.at
		for _, id := range c.want {
			notes[id] = true
			n := b.Note(id)
			switch {
			case n == nil:
				t.Errorf("%s: there is no note %s", c.at, id)
				continue
			case n.Status != casebook.Published:
				t.Errorf("%s: %s is %s", c.at, id, n.Status)
			case c.code != "" && !n.For(c.code):
				t.Errorf("%s: %s is not about %s", c.at, id, c.code)
			}
			content, in := l.overlap(c.ask, n.Title, common)
			if 2*in > content {
				t.Errorf("%s: %d of %d content words stand in the title %q", c.at, in, content, n.Title)
			}
		}
	}
	for _, form := range []string{"slash", "typed", "words"} {
		if forms[form] < 20 {
			t.Errorf("%d questions in the form %s are too few to say anything", forms[form], form)
		}
	}
	if len(notes) < 50 {
		t.Errorf("the questions want %d different notes; want more of the casebook covered", len(notes))
	}
}

// stopWords are the stems of the search library's own list of words without content. The
// index reads them all the same.
func stopWords(t *testing.T, l *lexicon) map[string]bool {
	t.Helper()
	list := analysis.NewTokenMap()
	if err := list.LoadBytes(en.EnglishStopWords); err != nil {
		t.Fatal(err)
	}
	out := map[string]bool{}
	for w := range list {
		for _, s := range l.stems(w) {
			out[s] = true
		}
	}
	return out
}

// overlap counts the different content words of a question, and those of them that stand
// in a title.
func (l *lexicon) overlap(ask, title string, common map[string]bool) (content, in int) {
	has := map[string]bool{}
	for _, s := range l.stems(title) {
		has[s] = true
	}
	seen := map[string]bool{}
	for _, s := range l.stems(ask) {
		if common[s] || seen[s] {
			continue
		}
		seen[s] = true
		content++
		if has[s] {
			in++
		}
	}
	return content, in
}
