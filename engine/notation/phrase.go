package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// atom is one phrase of the text with its meaning: a row of the lexicon, the
// name of a side, a shirt number, a mark, or a word that nobody knows.
type atom struct {
	meaning
	from, to int // tokens
	row      int // the row of the lexicon, -1 for none
	side     sideRef
	side2    sideRef
	poss     bool
	art      byte
	label    string
	mark     byte
	word     string
	used     bool
}

var skippable = func() map[string]bool {
	m := map[string]bool{}
	for w := range strings.FieldsSeq(skipped) {
		m[w] = true
	}
	return m
}()

// found is the best phrase that starts at a token.
type found struct {
	n     *node
	to    int
	words int
	sides [2]sideRef
}

// longest finds the longest phrase of the lexicon that starts at token i. Words
// that carry nothing may stand between its words. Of two phrases that end at
// the same place the one that names its words, not a class of them, is taken.
func (l *lexicon) longest(ts []token, i int) (found, bool) {
	var best found
	var sides [2]sideRef
	var walk func(n *node, j, words, nsides int)
	walk = func(n *node, j, words, nsides int) {
		if n.means != nil && (words > best.words || best.n == nil) {
			best = found{n, j, words, sides}
		}
		if j >= len(ts) || ts[j].mark != 0 || n.next == nil {
			return
		}
		t := &ts[j]
		if m := n.next[t.form]; m != nil {
			k := nsides
			if t.form == "<side>" && k < 2 {
				sides[k] = t.side
				k++
			}
			walk(m, j+1, words+1, k)
		}
		if t.base != "" {
			if m := n.next[t.base]; m != nil {
				walk(m, j+1, words+1, nsides)
			}
		}
		for _, w := range [2]string{t.form, t.base} {
			for _, c := range l.classes[w] {
				if m := n.next[c]; m != nil {
					walk(m, j+1, words+1, nsides)
				}
			}
		}
		if j > i && skippable[t.form] {
			walk(n, j+1, words, nsides)
		}
	}
	walk(l.root, i, 0, 0)
	return best, best.n != nil && best.words > 0
}

// atoms reads the tokens as phrases, from left to right, the longest first.
func (l *lexicon) atoms(ts []token) []atom {
	for i := range ts {
		if ts[i].mark == 0 && ts[i].base == "" {
			ts[i].base, _ = stem(ts[i].form)
		}
	}
	var out []atom
	for i := 0; i < len(ts); {
		t := ts[i]
		a := atom{from: i, to: i + 1, row: -1, side: t.side, poss: t.poss, art: t.art, label: t.label, mark: t.mark, word: t.form}
		f, ok := l.longest(ts, i)
		switch {
		case t.mark != 0:
			a.class = cStop
		case (t.form == "and" || t.form == "but" || t.form == "so" || t.form == "or") && (!ok || f.words < 2):
			a.class, a.id = cJoin, t.form
		case ok:
			a.meaning, a.to, a.row = *f.n.means, f.to, f.n.entry
			a.side, a.side2 = f.sides[0], f.sides[1]
			a.poss = ts[f.to-1].poss
			a.word = t.form
			if f.to-i > 1 {
				a.word = spell(ts[i:f.to])
			}
		case t.form == "<side>":
			a.class = cSide
		case t.form == "opponent": // where no phrase has it
			a.class, a.side, a.art = cSide, opp, 'a'
		case t.form == "<label>":
			a.class = cLabel
		case numeric(t.form):
			a.class = cDigits
		}
		if t.form == "stand" && t.art == 't' {
			a.meaning = thing(play.OtherThing, "stand")
		}
		out = append(out, a)
		i = a.to
	}
	return out
}

func spell(ts []token) string {
	s := ts[0].form
	for _, t := range ts[1:] {
		s += " " + t.form
	}
	return s
}
