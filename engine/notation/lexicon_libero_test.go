package notation

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// liberoTexts are the texts in which the phrases of libero stories are looked for.
func liberoTexts(t testing.TB) []string {
	t.Helper()
	var out []string
	for _, name := range []string{"testdata/libero.plays", "testdata/phrases/libero.txt"} {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(b)) {
			line = strings.TrimSpace(line)
			if strings.HasSuffix(name, ".plays") {
				if key, text, ok := strings.Cut(line, " "); ok && (key == "text" || key == "slash") {
					out = append(out, strings.TrimSpace(text))
				}
			} else if line != "" && line[0] != '#' {
				out = append(out, line)
			}
		}
	}
	return out
}

// liberoSigns are what the phrases of libero stories may say beside facts.
var liberoSigns = strings.Fields("at-once back both by for freely front-rotated hurt illegal instead instead-bare later may moment? mv:in mv:in-for mv:on mv:out mv:rep mv:sub " +
	"mv:subout mv:swap name-libero no-request norally new-set not-served notice penalty quiet rally replacement replayed rotate second-serve " +
	"sent-off serve serve-at served serves stays stays-on want who-goes with")

// The table is sorted, each phrase is once in it and says what the reader
// knows, and each row is found in a text of the test data.
func TestLiberoLexicon(t *testing.T) {
	found := map[*deadNode]bool{}
	for _, text := range liberoTexts(t) {
		ts := tokens(text)
		correct(ts)
		r := newDeadReader(newScene(ts))
		r.tree = liberoTree()
		for i := 0; i < len(r.toks); {
			n, to := r.longest(i)
			if n == nil {
				i++
				continue
			}
			found[n] = true
			i = to
		}
	}
	seen := map[string]string{}
	for _, table := range liberoTables {
		for i, p := range table {
			if i > 0 && table[i-1].phrase >= p.phrase {
				t.Errorf("%q stands after %q; sort by phrase", p.phrase, table[i-1].phrase)
			}
			for says := range strings.FieldsSeq(p.says) {
				f, v, told := strings.Cut(says, "=")
				row, known := deadball.FactByID(play.FactID(f))
				switch {
				case strings.HasPrefix(says, "ent:"), slices.Contains(liberoSigns, says):
				case !told, !known, !row.Has(play.Value(v)):
					t.Errorf("%q: says %q, which the reader does not know", p.phrase, says)
				}
			}
			hit := false
			for _, ws := range alternatives(p.phrase) {
				words := strings.Join(ws, " ")
				if other, ok := seen[words]; ok && other != p.says {
					t.Errorf("%q: %q is also a phrase of another row, which says %q", p.phrase, words, other)
				}
				seen[words] = p.says
				n := liberoTree()
				for _, w := range ws {
					n = n.next[w]
				}
				hit = hit || found[n]
			}
			if !hit {
				t.Errorf("no test text has %q; add one to testdata/phrases/libero.txt, or drop it", p.phrase)
			}
		}
	}
}

// Reading libero stories with a word left out never panics, and a print is read
// back to the same act.
func TestLiberoTexts(t *testing.T) {
	for _, text := range liberoTexts(t) {
		ws := strings.Fields(text)
		for i := range ws {
			if _, err := Read(strings.Join(slices.Concat(ws[:i], ws[i+1:]), " ")); err != nil && len(ws) > 1 {
				t.Errorf("%q without %q: %v", text, ws[i], err)
			}
		}
		r, err := Read(text)
		if err != nil {
			t.Fatal(err)
		}
		a, ok := r.Other.(*deadball.Act)
		if !ok {
			continue
		}
		again, err := Read(a.Print())
		if err != nil {
			t.Fatal(err)
		}
		if b, ok := again.Other.(*deadball.Act); !ok || b.Print() != a.Print() || len(again.Unread) > 0 {
			t.Errorf("%q: read as %q, which is not read back", text, a.Print())
		}
	}
}
