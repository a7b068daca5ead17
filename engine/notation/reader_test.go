package notation

import (
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

var update = flag.Bool("update", false, "write testdata/readings.txt anew from what the reader makes of its texts")

// describe is a reading in lines: the play as it prints, and all else that was
// made of the words.
func describe(r Reading) string {
	var b strings.Builder
	if r.Rally != nil {
		fmt.Fprintf(&b, "  play   %s\n", Print(r.Rally))
		for _, t := range []int{1, 2} {
			if n := r.Rally.Names[t]; len(n) > 0 {
				fmt.Fprintf(&b, "  side   %s\n", strings.Join(n, ", "))
			}
		}
	}
	var open, scenery []string
	for _, u := range r.Unread {
		if u.Scenery {
			scenery = append(scenery, u.Word)
		} else {
			open = append(open, u.Word)
		}
	}
	line := func(key string, words []string) {
		if len(words) > 0 {
			fmt.Fprintf(&b, "  %-6s %s\n", key, strings.Join(words, ", "))
		}
	}
	line("unread", open)
	line("idle", scenery)
	line("calls", r.Calls)
	line("wants", r.Wanted)
	line("proof", r.Evidence)
	line("more", r.More)
	for _, c := range r.Corrected {
		line("spelt", []string{c.From + " as " + c.To})
	}
	if r.Topic != "" {
		line("topic", []string{r.Topic})
	}
	if r.Code != "" {
		line("code", []string{string(r.Code)})
	}
	if r.Season != 0 {
		line("season", []string{r.Season.String()})
	}
	if r.Caution {
		line("care", []string{"yes"})
	}
	return b.String()
}

// Each text of testdata/readings.txt is read as the lines under it say.
func TestReadings(t *testing.T) {
	const name = "testdata/readings.txt"
	b, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	n := 0
	for block := range strings.SplitSeq(strings.TrimSpace(string(b)), "\n\n") {
		text, want, _ := strings.Cut(block, "\n")
		if strings.HasPrefix(text, "#") {
			out.WriteString(block + "\n\n")
			continue
		}
		n++
		r, err := Read(text)
		if err != nil {
			t.Errorf("%q: %v", text, err)
			continue
		}
		got := strings.TrimSuffix(describe(r), "\n")
		if got != strings.TrimSuffix(want, "\n") {
			t.Errorf("%q:\n got:\n%s\nwant:\n%s", text, got, want)
		}
		fmt.Fprintf(&out, "%s\n%s\n\n", text, got)
	}
	if n < 40 {
		t.Errorf("%s: %d texts, want at least 40", name, n)
	}
	if *update {
		if err := os.WriteFile(name, []byte(strings.TrimSpace(out.String())+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func TestReadLimits(t *testing.T) {
	for _, text := range []string{"", " \n\t", strings.Repeat("x", MaxText+1)} {
		if _, err := Read(text); err == nil || !strings.Contains(err.Error(), "4000") {
			t.Errorf("%d bytes: error %v, want one that names the limit", len(text), err)
		}
	}
	if _, err := Read(strings.Repeat("x", MaxText)); err != nil {
		t.Errorf("%d bytes: %v", MaxText, err)
	}
}

// Words that mean other things than a word of the trade are never taken for
// it; a slip of the fingers is, and is said.
func TestSpelling(t *testing.T) {
	for _, c := range []struct{ from, to string }{
		{"jousst", "joust"}, {"blcoker", "blocker"}, {"simultaneos", "simultaneous"}, {"anttenna", "antenna"}, {"recieve", "receive"},
		{"from", ""}, {"there", ""}, {"under", ""}, {"lose", ""}, {"list", ""}, {"sitter", ""}, {"blinker", ""}, {"zzzzzz", ""},
	} {
		ts := tokens(c.from)
		got := ""
		if cs := correct(ts); len(cs) > 0 {
			got = cs[0].To
		}
		if got != c.to {
			t.Errorf("%q is taken for %q, want %q", c.from, got, c.to)
		}
	}
}

func TestSynonyms(t *testing.T) {
	groups := Synonyms()
	if !slices.IsSortedFunc(groups, slices.Compare[[]string]) {
		t.Error("the groups are not sorted")
	}
	in := func(a, b string) bool {
		return slices.ContainsFunc(groups, func(g []string) bool { return slices.Contains(g, a) && slices.Contains(g, b) })
	}
	for _, pair := range [][2]string{{"attack line", "10 foot line"}, {"dump", "tip"}, {"hitter", "spiker"}, {"rafter", "ceiling"}} {
		if !in(pair[0], pair[1]) {
			t.Errorf("no group holds both %q and %q", pair[0], pair[1])
		}
	}
	if in("over", "under") || in("front row", "back row") {
		t.Error("a group holds opposites")
	}
}

// The reader never panics, builds only well-formed plays, and says of every
// word that it did not read which one it was.
func FuzzRead(f *testing.F) {
	for _, text := range texts(f)[:150] {
		f.Add(text)
	}
	f.Add("ball in plane, both front row, fourth contact?")
	f.Add("A's A's B's ' ?? then and and 10' #8 R1 R2 L3")
	f.Fuzz(func(t *testing.T, text string) {
		r, err := Read(text)
		if err != nil {
			return
		}
		if r.Rally != nil {
			if err := r.Rally.Check(); err != nil {
				t.Errorf("%q: %v", text, err)
			}
		}
		for _, u := range r.Unread {
			if u.Open {
				continue
			}
			for w := range strings.FieldsSeq(u.Word) {
				if utf8.ValidString(text) && !strings.Contains(text, w) && w != "and" && w != "or" {
					t.Errorf("%q: unread word %q is not in it", text, w)
				}
			}
		}
		again, _ := Read(text)
		if describe(again) != describe(r) {
			t.Errorf("%q is read in two ways", text)
		}
	})
}

const story = "We were serving for the set. Their libero passes it tight, their setter is back row and jumps up with one hand to save it " +
	"while the ball is breaking the plane, and our front row middle touches it at the same time. R1 called back row block. " +
	"The ball lands in on their side. Is that a back row block or just a joust?"

func BenchmarkRead(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Read(story); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBuild(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		build()
	}
}
