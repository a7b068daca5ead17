package notation

import "slices"

// patternBook is a lexicon of patterns made ready: the patterns by the words
// that they can begin with, and for each what must stand ahead of it for a walk
// through it to be worth the while.
type patternBook struct {
	starts map[string][]servePattern
	words  map[string]uint16 // those that patterns need, by a number
}

// bookOf makes tables ready.
func bookOf(tables []*[]serveRow) *patternBook {
	b := &patternBook{starts: map[string][]servePattern{}, words: map[string]uint16{}}
	for _, t := range tables {
		for i := range *t {
			p := servePattern{row: &(*t)[i], fields: stepsOf((*t)[i].pattern)}
			p.needs = b.needsOf(p.fields)
			ws, _ := heads(p.fields)
			slices.Sort(ws)
			for _, w := range slices.Compact(ws) {
				b.starts[w] = append(b.starts[w], p)
			}
		}
	}
	return b
}

// needsOf numbers the words of which one must stand ahead for each step that
// can't be missing.
func (b *patternBook) needsOf(fields []serveStep) [][]uint16 {
	var out [][]uint16
	for i := range fields {
		ws, empty := heads(fields[i : i+1])
		if empty {
			continue
		}
		var list []uint16
		for _, w := range ws {
			if w[0] == '@' {
				w = "<side>" // which side, and in what part, the walk tells
			}
			id, ok := b.words[w]
			if !ok {
				id = uint16(len(b.words))
				b.words[w] = id
			}
			if !slices.Contains(list, id) {
				list = append(list, id)
			}
		}
		out = append(out, list)
	}
	return out
}

// ahead are, for each token, the words of the book from it to the end of its
// clause; no pattern goes further.
func (b *patternBook) ahead(ts []token, roots [][]string) []wordBits {
	n := len(b.words)/64 + 1
	room := make([]uint64, n*(len(ts)+1))
	out := make([]wordBits, len(ts)+1)
	for i := len(ts); i >= 0; i-- {
		out[i] = room[n*i : n*(i+1)]
		if i == len(ts) || ts[i].mark != 0 {
			continue
		}
		copy(out[i], out[i+1])
		for _, w := range roots[i] {
			if id, ok := b.words[w]; ok {
				out[i].add(id)
			}
		}
		if _, ok := counted0(ts[i].form); ok {
			if id, ok := b.words["#"]; ok {
				out[i].add(id)
			}
		}
	}
	return out
}
