package notation

import (
	"strings"

	"example.org/netpost/engine/play"
)

// atom is one phrase of the text with its meaning: a row of the lexicon, the
// name of a side, a shirt number, a mark, or a word that nobody knows.
type atom struct {
	meaning
	from, to int    // tokens
	phrase   string // of the lexicon, empty for none
	row      bool   // a row of the lexicon's tables, or of what no table says
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
	ref   ref
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
	var walk func(n node, j, words, nsides int)
	walk = func(n node, j, words, nsides int) {
		if r, ok := l.ends(n); ok && (words > best.words || best.ref.means == nil) {
			best = found{r, j, words, sides}
		}
		if j >= len(ts) || ts[j].mark != 0 || n.at > 0 && n.hi-n.lo == 1 && len(l.refs[n.lo].phrase) == int(n.at) {
			return
		}
		t := &ts[j]
		if m, ok := l.step(n, t.form); ok {
			k := nsides
			if t.form == "<side>" && k < 2 {
				sides[k] = t.side
				k++
			}
			walk(m, j+1, words+1, k)
		}
		if t.base != "" {
			if m, ok := l.step(n, t.base); ok {
				walk(m, j+1, words+1, nsides)
			}
		}
		for _, w := range [2]string{t.form, t.base} {
			for _, c := range l.classes[w] {
				if m, ok := l.step(n, c); ok {
					walk(m, j+1, words+1, nsides)
				}
			}
		}
		if j > i && skippable[t.form] {
			walk(n, j+1, words, nsides)
		}
	}
	walk(node{}, i, 0, 0)
	return best, best.ref.means != nil && best.words > 0
}

// atoms reads the tokens as phrases, from left to right, the longest first.
func (l *lexicon) atoms(ts []token) []atom {
	for i := range ts {
		if ts[i].mark == 0 && ts[i].base == "" {
			ts[i].base, _ = stem(ts[i].form)
		}
	}
	out := make([]atom, 0, len(ts))
	for i := 0; i < len(ts); {
		t := &ts[i]
		a := atom{from: i, to: i + 1, side: t.side, poss: t.poss, art: t.art, label: t.label, mark: t.mark, word: t.form}
		f, ok := l.longest(ts, i)
		if ok && f.ref.phrase == "bump set" && t.form != "bump" { // "they bumped, set and hit": two contacts
			f, ok = l.longest(ts[:i+1], i)
		}
		switch {
		case t.mark != 0:
			a.class = cStop
		case (t.form == "and" || t.form == "but" || t.form == "so" || t.form == "or" || t.form == "because") && (!ok || f.words < 2):
			a.class, a.id = cJoin, t.form
		case ok:
			a.meaning, a.to, a.row = *f.ref.means, f.to, f.ref.row
			a.phrase = f.ref.phrase
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
	owners(ts, out)
	return out
}

// owners makes possessives of plurals that were typed without their mark:
// "the blockers hands", "the liberos set".
func owners(ts []token, as []atom) {
	for i := range as {
		a := &as[i]
		if i+1 >= len(as) || a.poss || a.class != cRole && a.class != cLibero && a.class != cPerson || !strings.HasSuffix(ts[a.to-1].form, "s") {
			continue
		}
		switch b := as[i+1]; {
		case b.class == cBody:
			a.poss = true
		case b.class == cVerb && b.word == "set" && (i+2 >= len(as) || as[i+2].class != cBall):
			a.poss = true
		}
	}
}

func spell(ts []token) string {
	s := ts[0].form
	for _, t := range ts[1:] {
		s += " " + t.form
	}
	return s
}
