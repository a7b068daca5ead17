package notation

import (
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/court"
	"example.org/netpost/engine/play"
)

// courtTexts are the texts of the plays about positions and of the phrases.
func courtTexts(t *testing.T) []string {
	t.Helper()
	var out []string
	for _, name := range []string{"testdata/court.plays", "testdata/phrases/court.txt"} {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(b)) {
			line = strings.TrimSpace(line)
			if strings.HasSuffix(name, ".plays") {
				key, text, _ := strings.Cut(line, " ")
				if key != "text" && key != "slash" {
					continue
				}
				line = text
			}
			if line != "" && line[0] != '#' {
				out = append(out, line)
			}
		}
	}
	return out
}

// Every row of the two lexicons is once among them and is found in a text of
// the test data: what nothing uses is not kept.
func TestCourtLexicon(t *testing.T) {
	used := map[string]bool{}
	for _, text := range courtTexts(t) {
		ws := newScene(tokens(text)).courtWords()
		for i := range ws {
			if row, n := courtRowAt(ws, i); n > 0 {
				used[row.pattern] = true
			}
			for _, p := range orderPatterns() {
				if end, _ := p.match(ws, i, p.fields, nil); end > i {
					used[p.row.pattern] = true
				}
			}
		}
	}
	seen := map[string]bool{}
	for _, r := range courtRows {
		if seen[r.pattern] {
			t.Errorf("%q is twice in the lexicon of the court", r.pattern)
		}
		seen[r.pattern] = true
		if !used[r.pattern] {
			t.Errorf("no test text has %q; add one to testdata/phrases/court.txt, or drop it", r.pattern)
		}
	}
	clear(seen)
	for _, r := range orderRows {
		if seen[r.pattern] {
			t.Errorf("%q is twice in the lexicon of the order", r.pattern)
		}
		seen[r.pattern] = true
		if !used[r.pattern] {
			t.Errorf("no test text has %q; add one to testdata/phrases/court.txt, or drop it", r.pattern)
		}
	}
	if !slices.IsSortedFunc(positionNames, func(a, b struct {
		words string
		is    court.Position
	}) int {
		return strings.Compare(a.words, b.words)
	}) {
		t.Error("the names of the positions are not sorted")
	}
	for i := 1; i < len(courtRoles); i++ {
		if courtRoles[i-1].word >= courtRoles[i].word {
			t.Errorf("roles: %q stands after %q", courtRoles[i].word, courtRoles[i-1].word)
		}
	}
}

// What was read of positions and orders says itself, and reads back as itself.
func TestCourtPrintIdentity(t *testing.T) {
	n := 0
	for _, text := range courtTexts(t) {
		r, err := Read(text)
		if err != nil || r.Other == nil || r.Topic != "alignment" {
			continue
		}
		n++
		print := Say(r.Other)
		again, err := Read(print)
		if err != nil || again.Other == nil || len(again.Unread) > 0 {
			t.Errorf("%q\nread as %q, which is not read back: %v", text, print, err)
			continue
		}
		if got := Say(again.Other); got != print {
			t.Errorf("%q\nread as %q\nand then as %q", text, print, got)
		}
		if len(again.Other.Known()) != len(r.Other.Known()) {
			t.Errorf("%q: %v, read back %v", text, r.Other.Known(), again.Other.Known())
		}
	}
	if n < 40 {
		t.Errorf("only %d texts were read as positions or orders", n)
	}
}

// Grids and lengths: what they tell of two players.
func TestGrid(t *testing.T) {
	depth := func(text, of string) play.Value {
		a, ok := readGrid(text)
		if !ok {
			t.Fatalf("%q was not read", text)
		}
		return a.Get(play.Key{Fact: court.StandsDepth, Of: of})
	}
	for _, c := range []struct {
		text, of string
		want     play.Value
	}{
		{"receiving: 4 . 3 . 2 / . 5 . 6 . 1", "A1-A2", court.Behind},
		{"receiving:\n. . . . 1\n4 . 3 . 2\n5 . 6 . .", "A1-A2", court.Ahead},
		{"receiving: 4 3 2 1 / 5 6 . .", "A1-A2", court.LevelWith},
		{"1 at 7.5 m 2 m; 2 at 7.5 m 3 m", "A1-A2", court.Ahead},
		{"receiving: 1 at 24 ft 8 ft 2 in, 2 at 24 ft 8 ft", "A1-A2", court.Behind},
		{"B: 1: 7.5 m 2 m and 7 m 4 m; 2: 7.5 m 3 m", "B1-B2", court.Ahead},
	} {
		if got := depth(c.text, c.of); got != c.want {
			t.Errorf("%q: %s, want %s", c.text, got, c.want)
		}
	}
	if a, ok := readGrid("receiving: 4 3 2 / 5 6 1 | serving: 4 3 2 / 5 6 1"); !ok || len(a.People) != 12 {
		t.Errorf("two teams: %v", ok)
	}
	for _, text := range []string{"", "1 2 3", "4 3 2 / 5 6 7", "4 3 2 / 5 6 1 1 1", "1 at 3; 2 at 4", "1 at 3 m; 2 at 4 m", "won 3 / 4 sets", "A 25 / 23", "1 / 2 hits"} {
		if a, ok := readGrid(text); ok {
			t.Errorf("%q was taken for a grid: %v", text, a.Sentences())
		}
	}
}

// Words that tell of no positions, or of more than positions, are not taken
// for an alignment that can be ruled on.
func TestNoAlignment(t *testing.T) {
	for _, text := range []string{
		"setter in front of the blocker reaches over the net and hits the ball",
		"receiving setter not ahead of the player in 2",
		"right front behind it",
		"setter in 1 ahead of the middle of the other team",
		"receiving right front 3 ft from the net",
		"server has a foot on the end line at contact",
		"is the left front ahead",
		"the right back is ahead of the right front and then digs the ball",
	} {
		r, err := Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if a, ok := r.Other.(*court.Alignment); ok && r.Told() {
			t.Errorf("%q was read as %q", text, Say(a))
		}
	}
}

func FuzzGrid(f *testing.F) {
	for _, s := range []string{"receiving: 4 . 3 . 2 / . 5 . 6 . 1", "1 at 7.5 m 2 m; 2 at 7.5 m 3 m", "A's line-up is 1 2 3 4 5 6, A serves first", "|||", "receive team grid : "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if a, ok := readGrid(s); ok && a.Check() != nil {
			t.Errorf("%q: %v", s, a.Check())
		}
		if l, ok := readHistory(s); ok && l.Check() != nil {
			t.Errorf("%q: %v", s, l.Check())
		}
	})
}
