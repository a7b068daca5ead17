package index

import (
	"slices"
	"strings"

	"github.com/blevesearch/bleve/v2/analysis"
)

// Snippet is a piece of a note with the words that were found marked.
type Snippet struct {
	Text string
	// Marks are the places in Text of the words found: pairs of byte offsets, from and
	// to, in order and apart. A printer marks them in its own way.
	Marks [][2]int
}

// longestSnippet is how long a snippet may be, in bytes: two lines in a channel.
const longestSnippet = 200

// Mark gives the text with every mark put between two strings, and all of it, marked or
// not, passed through escape; nil escapes nothing.
func (s Snippet) Mark(open, end string, escape func(string) string) string {
	if escape == nil {
		escape = func(t string) string { return t }
	}
	var b strings.Builder
	at := 0
	for _, m := range s.Marks {
		b.WriteString(escape(s.Text[at:m[0]]))
		b.WriteString(open + escape(s.Text[m[0]:m[1]]) + end)
		at = m[1]
	}
	b.WriteString(escape(s.Text[at:]))
	return b.String()
}

// snippet cuts out of a note's body the window in which the most different words of the
// query stand, the first of equals; the play stands in for a body that has none of them.
func (l *lexicon) snippet(r record, a asked) Snippet {
	want := map[string]bool{}
	for _, s := range a.stems {
		if !l.common[s] {
			want[s] = true
		}
	}
	best, hits := l.window(r.Text, want)
	if hits == 0 && r.Play != "" {
		if s, n := l.window(r.Play, want); n > 0 || r.Text == "" {
			return s
		}
	}
	return best
}

// window finds the best window of a text and how many different wanted words it holds.
func (l *lexicon) window(text string, want map[string]bool) (Snippet, int) {
	tokens := l.analyzer.Analyze([]byte(text))
	from, most := 0, 0
	for i, t := range tokens {
		if i > 0 && !want[string(t.Term)] {
			continue
		}
		seen := map[string]bool{}
		for _, u := range tokens[i:] {
			if u.End-t.Start > longestSnippet-20 { // room for the words before the first
				break
			}
			if s := string(u.Term); want[s] {
				seen[s] = true
			}
		}
		if len(seen) > most {
			from, most = t.Start, len(seen)
		}
	}
	return l.excerpt(text, tokens, from, want), most
}

// excerpt cuts about longestSnippet bytes around a place, at words, and marks what is wanted.
func (l *lexicon) excerpt(text string, tokens analysis.TokenStream, at int, want map[string]bool) Snippet {
	const dots = "…"
	from := 0
	if at > 20 {
		from = at - 20
		if i := strings.IndexByte(text[from:at], ' '); i >= 0 {
			from += i + 1
		} else {
			from = at
		}
	}
	end := len(text)
	if end-from > longestSnippet {
		end = from + longestSnippet
		if i := strings.LastIndexByte(text[from:end], ' '); i > 0 {
			end = from + i
		}
		for end > from && text[end]&0xC0 == 0x80 { // never inside a letter
			end--
		}
	}
	s := Snippet{}
	prefix := ""
	if from > 0 {
		prefix = dots
	}
	s.Text = prefix + text[from:end]
	if end < len(text) {
		s.Text += dots
	}
	for _, t := range tokens {
		if t.Start >= from && t.End <= end && want[string(t.Term)] {
			s.Marks = append(s.Marks, [2]int{t.Start - from + len(prefix), t.End - from + len(prefix)})
		}
	}
	return s
}

// shared names, in the asker's order and as the asker wrote them, up to mostWords of the
// words and phrases that a question and a note have in common; words that most questions
// have say nothing and are left out.
func (l *lexicon) shared(a asked, r record) []string {
	var out []string
	add := func(s string) {
		s = strings.ToLower(s)
		if s != "" && len(out) < mostWords && !slices.Contains(out, s) {
			out = append(out, s)
		}
	}
	has := map[string]bool{}
	for _, s := range l.stems(strings.Join([]string{r.Title, r.Play, r.Text, strings.Join(r.Topics, ", ")}, ". ")) {
		has[s] = true
	}
	for _, t := range l.analyzer.Analyze([]byte(a.Words)) {
		if has[string(t.Term)] && !l.common[string(t.Term)] {
			add(a.Words[t.Start:t.End])
		}
	}
	for _, c := range a.concepts {
		if _, ok := slices.BinarySearch(r.Concepts, c); ok {
			if w := l.said(a.Words, c); !l.covered(w, out) {
				add(w)
			}
		}
	}
	return out
}

// covered reports whether all words of a phrase are in the list already, or say nothing.
func (l *lexicon) covered(phrase string, list []string) bool {
	have := l.stems(strings.Join(list, " "))
	for _, s := range l.stems(phrase) {
		if !slices.Contains(have, s) && !l.common[s] {
			return false
		}
	}
	return true
}
