package notation

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/play"
)

// The tables are sorted, each phrase is once among them, and each is found in
// a text of the test data: what nothing uses is not kept.
func TestLexicon(t *testing.T) {
	for _, table := range []struct {
		name string
		rows []entry
	}{{"people", people}, {"actions", actions}, {"events", events}, {"balls", balls}, {"stated", stated}, {"stated2", stated2},
		{"settled", settled}, {"settled2", settled2}, {"settled3", settled3}, {"stories", stories}, {"rally", rally}, {"rally2", rally2}, {"rally3", rally3}, {"rally4", rally4}, {"rally5", rally5},
		{"places", places}, {"places2", places2}, {"asking", asking}, {"areas", areas}} {
		for i, e := range table.rows {
			if i > 0 && table.rows[i-1].phrase >= e.phrase {
				t.Errorf("%s: %q stands after %q; sort by phrase", table.name, e.phrase, table.rows[i-1].phrase)
			}
			if e.means.class == cNone {
				t.Errorf("%s: %q has no meaning", table.name, e.phrase)
			}
			if f := e.means.fact; f != "" {
				row, ok := play.FactByID(f)
				if !ok || e.means.value != play.Unknown && !row.Has(e.means.value) {
					t.Errorf("%s: %q: fact %s has no value %q", table.name, e.phrase, f, e.means.value)
				}
			}
		}
	}
	for _, list := range []string{fillers, sceneryWords, skipped, leftAlone} {
		if ws := strings.Fields(list); !slices.IsSorted(ws) || len(slices.Compact(slices.Clone(ws))) != len(ws) {
			t.Errorf("the list that starts %q is not sorted, or has a word twice", ws[0])
		}
	}
	for i := 1; i < len(spellings); i++ {
		if spellings[i-1].from >= spellings[i].from {
			t.Errorf("spellings: %q stands after %q", spellings[i].from, spellings[i-1].from)
		}
	}
	for i := 1; i < len(sideNames); i++ {
		if sideNames[i-1].words >= sideNames[i].words {
			t.Errorf("side names: %q stands after %q", sideNames[i].words, sideNames[i-1].words)
		}
	}
	for i := 1; i < len(compounds); i++ {
		if compounds[i-1].words >= compounds[i].words {
			t.Errorf("compounds: %q stands after %q", compounds[i].words, compounds[i-1].words)
		}
	}
	used := map[string]bool{}
	for _, text := range texts(t) {
		for _, a := range lex().atoms(tokens(text)) {
			if a.row {
				used[a.phrase] = true
			}
		}
	}
	for _, e := range lex().refs {
		if e.row && !used[e.phrase] && e.means.class != cFiller && e.means.class != cScenery {
			t.Errorf("no test text has the phrase %q; add one to testdata/phrases.txt, or drop it", e.phrase)
		}
	}
}

// texts are the texts of the published plays, and the lines of phrases.txt and
// of the files beside it.
func texts(t testing.TB) []string {
	t.Helper()
	var out []string
	more, err := filepath.Glob("testdata/phrases/*.txt")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append([]string{"testdata/cases.plays", "testdata/phrases.txt"}, more...) {
		out = append(out, textsOf(t, name)...)
	}
	return out
}

// textsOf are the texts of one file of plays, or the lines of a file of phrases.
func textsOf(t testing.TB, name string) []string {
	t.Helper()
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var out []string
	for line := range strings.Lines(string(b)) {
		line = strings.TrimSpace(line)
		if strings.HasSuffix(name, ".plays") {
			if key, text, ok := strings.Cut(line, " "); ok && (key == "text" || key == "slash") {
				out = append(out, strings.TrimSpace(text))
			}
			continue
		}
		if line != "" && line[0] != '#' {
			out = append(out, line)
		}
	}
	return out
}
