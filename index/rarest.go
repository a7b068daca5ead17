package index

import (
	"cmp"
	"context"
	"slices"

	bleveindex "github.com/blevesearch/bleve_index_api"
)

// A tally counts in how many documents a term stands. It looks at the index as it was when
// the tally was made.
type tally struct {
	reader bleveindex.IndexReader
	err    error // the first error of counting
}

func (x *Index) tally() (*tally, error) {
	i, err := x.notes.Advanced()
	if err != nil {
		return nil, err
	}
	r, err := i.Reader()
	if err != nil {
		return nil, err
	}
	return &tally{reader: r}, nil
}

func (t *tally) close() { t.reader.Close() }

// count is the number of documents in which a term stands in a field.
func (t *tally) count(field, term string) uint64 {
	r, err := t.reader.TermFieldReader(context.Background(), []byte(term), field, false, false, false)
	if err != nil {
		if t.err == nil {
			t.err = err
		}
		return 0
	}
	defer r.Close()
	return r.Count()
}

// rarest keeps, in their order, the terms that stand in the fewest documents, of those that
// stand in any: as many as together stand in no more than budget, and the very rarest
// whatever it costs. What a search costs is the documents that it has to look at, and the
// words that most documents have tell the least.
func (t *tally) rarest(field string, terms []string, budget uint64) []string {
	type counted struct {
		at    int
		count uint64
	}
	var in []counted
	for i, s := range terms {
		if c := t.count(field, s); c > 0 {
			in = append(in, counted{i, c})
		}
	}
	slices.SortFunc(in, func(a, b counted) int { return cmp.Or(cmp.Compare(a.count, b.count), cmp.Compare(a.at, b.at)) })
	sum := uint64(0)
	for i, c := range in {
		if sum += c.count; i > 0 && sum > budget {
			in = in[:i]
			break
		}
	}
	slices.SortFunc(in, func(a, b counted) int { return cmp.Compare(a.at, b.at) })
	var out []string
	for _, c := range in {
		out = append(out, terms[c.at])
	}
	return out
}
