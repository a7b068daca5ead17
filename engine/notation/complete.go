package notation

import (
	"slices"
	"strings"
	"sync"
	"unicode"

	"example.org/netpost/engine/play"
)

// A Completion is one way to go on with a question.
type Completion struct {
	Text  string // the whole question with it
	Label string // what is new in it, for a list to choose from
}

// Complete offers at most n ways to go on with a half-typed question, the most
// useful first. The answers to the question that decides what was typed so far
// lead; first gives that question, and may be nil. After them come phrases of
// which the typed words are the beginning, then words that go on from the last
// one; where no word is half typed, what else can be told next. The same
// arguments give the same list.
func Complete(text string, first func(*play.Rally) (play.Key, bool), n int) []Completion {
	if n <= 0 || len(text) > MaxText {
		return nil
	}
	c := &completing{text: text, n: n}
	c.cut()
	// An answer may be half typed: it answers what was told before its clause.
	if len(c.starts) > 0 {
		c.deciding(readSoFar(text[:c.starts[0]]), first, false)
	}
	head := text
	if c.half() {
		head = text[:c.starts[len(c.starts)-1]]
	}
	r := readSoFar(head)
	if len(c.out) == 0 {
		c.deciding(r, first, !c.half())
	}
	phrases := c.phrases(r.Rally)
	// A phrase that goes on from more of the typed words comes before one that
	// goes on from fewer.
	for k := min(len(c.typed), longestPhrase); k > 0; k-- {
		for _, s := range phrases {
			if c.overlap(s) == k {
				c.add(c.replaced(k, s), s)
			}
		}
	}
	c.words()
	if !c.half() {
		for _, s := range phrases {
			c.add(c.appended(s), s)
		}
	}
	return c.out
}

// readSoFar is the play that a text tells, an empty one where it tells none.
func readSoFar(text string) Reading {
	r, err := Read(strings.TrimRight(text, " ,;"))
	if err != nil || r.Rally == nil {
		return Reading{Rally: &play.Rally{}}
	}
	return r
}

// completing is a question on its way to its completions.
type completing struct {
	text   string
	n      int
	typed  []string // the words since the last mark, in lower case, when the text ends in a word
	starts []int    // where each of them begins
	out    []Completion
}

// cut finds the words of the clause that is being typed. A text that ends in a
// space or a mark has none: its last word is done.
func (c *completing) cut() {
	from := strings.LastIndexAny(c.text, ",;.?!:\n") + 1
	start := -1
	for i, r := range c.text[from:] {
		switch {
		case unicode.IsSpace(r):
			start = -1
		case start < 0:
			start = from + i
			c.starts = append(c.starts, start)
		}
	}
	if start < 0 {
		c.starts = nil
		return
	}
	for i, at := range c.starts {
		end := len(c.text)
		if i+1 < len(c.starts) {
			end = c.starts[i+1]
		}
		c.typed = append(c.typed, strings.ToLower(strings.TrimSpace(c.text[at:end])))
	}
}

// half reports whether the last word may be half typed: it is none of the
// lexicon.
func (c *completing) half() bool {
	if len(c.typed) == 0 {
		return false
	}
	s := c.typed[len(c.typed)-1]
	_, stemmed := stem(s)
	return !lex().words[s] && !stemmed
}

// deciding offers the answers to the first question of a play: those that the
// typed words begin, and with next also the others, as the next clause. Each
// is read before it is offered, and must tell that answer and change nothing
// else. Where the words of a fact of an earlier event would be taken of a later
// one, the whole play is offered in the words of its print.
func (c *completing) deciding(r Reading, first func(*play.Rally) (play.Key, bool), next bool) {
	p := r.Rally
	if first == nil || len(p.Events) == 0 {
		return
	}
	k, ok := first(p)
	f, known := play.FactByID(k.Fact)
	if !ok || !known {
		return
	}
	labels := Choices(p, k)
	for i, v := range f.Values {
		text := ""
		if o := c.overlap(labels[i]); o > 0 {
			text = c.replaced(o, labels[i])
		} else if next {
			text = c.appended(labels[i])
		} else {
			continue
		}
		if !tells(text, p, k, v.Value) {
			if text = Print(telling(p, k, v.Value)); !next || !r.Whole() {
				continue
			}
		}
		c.add(text, labels[i])
	}
}

// tells reports whether a text is read as the play p with one more fact.
func tells(text string, p *play.Rally, k play.Key, v play.Value) bool {
	q := readSoFar(text).Rally
	if len(q.Events) != len(p.Events) || len(q.Players) != len(p.Players) || q.Get(k) != v || len(q.Known()) > len(p.Known())+1 {
		return false
	}
	for _, o := range p.Known() {
		if o != k && q.Get(o) != p.Get(o) {
			return false
		}
	}
	return true
}

// longestPhrase is more words than any phrase has.
const longestPhrase = 12

// overlap is how many of the last typed words begin the phrase, the last of
// them perhaps half typed; 0 where the phrase would add nothing.
func (c *completing) overlap(phrase string) int {
	ws := strings.Fields(strings.ToLower(phrase))
	for k := min(len(ws), len(c.typed)); k > 0; k-- {
		tail := c.typed[len(c.typed)-k:]
		if k == 1 && len(tail[0]) < 2 {
			return 0 // one letter begins too much
		}
		if strings.HasPrefix(ws[k-1], tail[k-1]) && slices.Equal(ws[:k-1], tail[:k-1]) {
			whole := ws[k-1] == tail[k-1]
			if whole && (k == len(ws) || k < len(c.typed)) {
				return 0 // "touches the ball" does not begin "ball in the plane"
			}
			return k
		}
	}
	return 0
}

// replaced is the text with a phrase in the place of the last k typed words.
func (c *completing) replaced(k int, phrase string) string {
	return c.text[:c.starts[len(c.starts)-k]] + phrase
}

// appended is the text with a phrase as the next clause.
func (c *completing) appended(phrase string) string {
	head := strings.TrimRightFunc(c.text, unicode.IsSpace)
	switch {
	case head == "":
		return phrase
	case strings.ContainsRune(",;.?!:", rune(head[len(head)-1])):
		return head + " " + phrase
	}
	return head + ", " + phrase
}

func (c *completing) add(text, label string) {
	if len(c.out) < c.n && !slices.ContainsFunc(c.out, func(o Completion) bool { return o.Text == text }) {
		c.out = append(c.out, Completion{text, label})
	}
}

// phrases are what can be told next: of the last event and its player what is
// not told yet, then of the opening, then the next event and its order.
func (c *completing) phrases(p *play.Rally) []string {
	var out []string
	tell := func(about play.About, of string, kind play.Kind) {
		for _, f := range factTable {
			k := play.Key{Fact: f.ID, Of: of}
			if f.About != about || about == play.OfEvent && !slices.Contains(f.Kinds, kind) || p.Get(k) != play.Unknown {
				continue
			}
			for _, v := range f.Values {
				if strings.Contains(v.Words, " ") {
					out = append(out, in(p, v.Words, teamOf(p, k)))
				}
			}
		}
	}
	if n := len(p.Events); n > 0 {
		last := p.Events[n-1]
		if last.Player != "" {
			tell(play.OfPlayer, last.Player, "")
		}
		tell(play.OfEvent, last.ID, last.Kind)
	}
	tell(play.OfSetting, "", "")
	return append(out, nextPhrases()...)
}

// nextPhrases are what an event begins with and what happens in it.
var nextPhrases = sync.OnceValue(func() []string {
	var out []string
	for _, w := range orderWords {
		out = append(out, w.words)
	}
	for _, r := range play.Roles() {
		for _, row := range []string{"", "front-row", "back-row"} {
			if r != play.NoRole {
				out = append(out, join(row, string(r)))
			}
		}
	}
	for _, v := range verbs {
		out = append(out, join(v.one, v.object))
	}
	return append(out, whosePoint)
})

// words offers the words of the lexicon that go on from the last typed one,
// the short ones first.
func (c *completing) words() {
	if len(c.typed) == 0 || len(c.typed[len(c.typed)-1]) < 2 {
		return
	}
	s := c.typed[len(c.typed)-1]
	from, _ := slices.BinarySearch(lexWords(), s)
	var found []string
	for _, w := range lexWords()[from:] {
		if !strings.HasPrefix(w, s) {
			break
		}
		if w != s {
			found = append(found, w)
		}
	}
	slices.SortStableFunc(found, func(a, b string) int { return len(a) - len(b) })
	for _, w := range found {
		c.add(c.replaced(1, w), w)
	}
}

// lexWords are the words of the lexicon in order.
var lexWords = sync.OnceValue(func() []string {
	var out []string
	for w := range lex().words {
		if len(w) > 2 && w[0] != '<' {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return out
})
