package notation

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/play"
)

// deadTexts are the texts in which the phrases of dead-ball acts are looked for.
func deadTexts(t testing.TB) []string {
	t.Helper()
	var out []string
	for _, name := range []string{"testdata/deadball.plays", "testdata/phrases/deadball.txt"} {
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

// The tables are sorted, each phrase is once among them and says what the
// reader knows, and each row is found in a text of the test data.
func TestDeadLexicon(t *testing.T) {
	found := map[*deadNode]bool{}
	for _, text := range deadTexts(t) {
		ts := tokens(text)
		correct(ts)
		r := newDeadReader(newScene(ts))
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
	seen := map[string]deadPhrase{}
	for _, table := range deadTables {
		for i, p := range table {
			if i > 0 && table[i-1].phrase >= p.phrase {
				t.Errorf("%q stands after %q; sort by phrase", p.phrase, table[i-1].phrase)
			}
			if p.says == "" {
				t.Errorf("%q says nothing", p.phrase)
			}
			for says := range strings.FieldsSeq(p.says) {
				if err := deadSays(says); err != "" {
					t.Errorf("%q: says %q: %s", p.phrase, says, err)
				}
			}
			hit := false
			for _, ws := range alternatives(p.phrase) {
				words := strings.Join(ws, " ")
				if other, ok := seen[words]; ok && other.says != p.says && len(alternatives(other.phrase)) == len(alternatives(p.phrase)) {
					t.Errorf("%q is a phrase of %q and of %q, and neither goes before the other", words, other.phrase, p.phrase)
				}
				if other, ok := seen[words]; !ok || len(alternatives(other.phrase)) > len(alternatives(p.phrase)) {
					seen[words] = p
				}
				n := deadTree()
				for _, w := range ws {
					n = n.next[w]
				}
				hit = hit || found[n]
			}
			if !hit {
				t.Errorf("no test text has %q; add one to testdata/phrases/deadball.txt, or drop it", p.phrase)
			}
		}
	}
	ws := strings.Fields(deadFillers)
	if !slices.IsSorted(ws) || len(slices.Compact(slices.Clone(ws))) != len(ws) {
		t.Error("the words that carry nothing are not sorted, or one is twice among them")
	}
	for _, b := range deadBeside {
		for _, k := range b {
			if _, ok := deadball.KindByID(k); !ok {
				t.Errorf("beside: there is no kind %q", k)
			}
		}
	}
}

// deadSays checks what a phrase says; empty when it is known.
func deadSays(says string) string {
	name, arg, ok := strings.Cut(says, ":")
	switch {
	case slices.Contains([]string{"request", "done", "again", "same", "hurt", "halt", "blast", "temper", "whistled", "set", "not", "quiet"}, says):
		return ""
	case ok && (name == "thing" || name == "act" || name == "made"):
		if _, known := deadball.KindByID(deadball.Kind(arg)); !known {
			return "there is no such kind"
		}
		return ""
	case ok && name == "person":
		if !slices.Contains([]string{"assistant", "bench", "captain", "coach", "player"}, arg) {
			return "nobody is called so"
		}
		return ""
	case ok && name == "card":
		if row, _ := deadball.FactByID(deadball.CardBefore); !row.Has(play.Value(arg)) {
			return "there is no such card"
		}
		return ""
	}
	f, v, told := strings.Cut(says, "=")
	if doubt, is := strings.CutSuffix(says, "?"); is {
		f = doubt
	} else if !told {
		return "the reader does not know it"
	}
	row, known := deadball.FactByID(play.FactID(f))
	if !known || told && !row.Has(play.Value(v)) {
		return "there is no such fact, or it has no such value"
	}
	return ""
}

// Reading dead-ball texts with words left out or changed over never panics,
// and a print is read back to the same act.
func TestDeadTexts(t *testing.T) {
	for _, text := range deadTexts(t) {
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
