package notation

import (
	"strings"
	"sync"
)

// A need is one way to be let through a gate: a text must have a word of each
// of its lists.
type need [][]string

// A gate is what a text must have before an area's reader is tried: one of the
// needs at least. It only ever spares work: a text that it keeps away is one
// that the reader would have given back unread. Where an area has a table of
// patterns its gate is taken from the rows without which it reads nothing.
type gate []need

// anyWord is the field of a pattern that is no word: a number, a score, a side.
func anyWord(w string) bool { return w == "#" || w == "#-#" || w[0] == '@' }

// needOf is what a pattern needs: a word for each of its fields that can't be
// missing.
func needOf(fields []serveField) need {
	var n need
	for _, f := range fields {
		free := f.optional
		for _, w := range f.words {
			free = free || anyWord(w)
		}
		if !free {
			n = append(n, f.words)
		}
	}
	return n
}

// alignmentGate: a reading needs a relation, a place, an order told or asked.
func alignmentGate() gate {
	var g gate
	for _, p := range courtPatterns() {
		switch p.row.op {
		case coDepth, coAcross, coEven, coPlace, coInside, coOrder, coEarly, coPairs:
			g = append(g, needOf(p.fields))
		}
	}
	return g
}

// orderGate: a reading needs what is wrong with the order.
func orderGate() gate {
	var g gate
	for _, p := range orderPatterns() {
		if p.row.op == orTrouble {
			g = append(g, needOf(p.fields))
		}
	}
	return g
}

// deadGate: a reading needs an act or a thing that is named, or what an act
// without a name follows from.
func deadGate() gate {
	var g gate
	for _, t := range deadTables {
		for _, p := range t {
			if !namesAct(p.says) {
				continue
			}
			var n need
			for w := range strings.FieldsSeq(p.phrase) {
				if w[0] != '[' && !strings.Contains(w, "<") {
					n = append(n, strings.Split(w, "/"))
				}
			}
			g = append(g, n)
		}
	}
	return g
}

// namesAct reports whether a row tells something that makes an act.
func namesAct(says string) bool {
	for s := range strings.FieldsSeq(says) {
		name, _, _ := strings.Cut(s, ":")
		switch name {
		case "act", "made", "thing", "blast", "hurt":
			return true
		}
	}
	return false
}

// gates are the gates of the areas made ready: every word of them by a number,
// and each need as lists of numbers.
type gates struct {
	words map[string]uint16
	areas [][][][]uint16 // by area: needs, of which each is lists of words
}

var readyGates = sync.OnceValue(func() *gates {
	g := &gates{words: map[string]uint16{}}
	for _, a := range areaReaders {
		var needs [][][]uint16
		if a.gate != nil {
			for _, n := range a.gate() {
				var lists [][]uint16
				for _, ws := range n {
					var list []uint16
					for _, w := range ws {
						id, ok := g.words[w]
						if !ok {
							id = uint16(len(g.words))
							g.words[w] = id
						}
						list = append(list, id)
					}
					lists = append(lists, list)
				}
				needs = append(needs, lists)
			}
		}
		g.areas = append(g.areas, needs)
	}
	return g
})

// wordBits are the words of a table that a text has, by their numbers.
type wordBits []uint64

func (b wordBits) has(id uint16) bool { return b[id/64]>>(id%64)&1 != 0 }
func (b wordBits) add(id uint16)      { b[id/64] |= 1 << (id % 64) }

// gateWords are the words of gates that the text has, in any of their forms.
func (s *scene) gateWords() wordBits {
	g := readyGates()
	out := make(wordBits, len(g.words)/64+1)
	for i := range s.toks {
		for _, w := range s.wordsOf(i) {
			if id, ok := g.words[w]; ok {
				out.add(id)
			}
		}
	}
	return out
}

// lets reports whether the gate of an area lets a text through.
func (g *gates) lets(area int, has wordBits) bool {
	for _, need := range g.areas[area] {
		if met(need, has) {
			return true
		}
	}
	return false
}

func met(need [][]uint16, has wordBits) bool {
	for _, list := range need {
		one := false
		for _, id := range list {
			if has.has(id) {
				one = true
				break
			}
		}
		if !one {
			return false
		}
	}
	return true
}
