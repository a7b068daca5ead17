package index

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"sync"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search"
)

// Index finds notes. It is safe for use by many at once.
type Index struct {
	notes   bleve.Index
	lexicon *lexicon
	close   sync.Once
	closed  error
	stop    func() error // of an index that is kept in step: ends that and closes what is behind
	corpus  string       // of an index on disk: what it was built from
}

// Close lets go of the index. Searches after it fail.
func (x *Index) Close() error {
	x.close.Do(func() {
		x.closed = x.notes.Close()
		if x.stop != nil {
			x.closed = errors.Join(x.closed, x.stop())
		}
	})
	return x.closed
}

// Len is how many notes the index holds, whatever their status.
func (x *Index) Len() (n int, err error) {
	defer rescue(&err)
	c, err := x.notes.DocCount()
	return int(c), err
}

// Search finds the notes that a question is about, best first; equal ones by id. Nothing
// found is no error. It fails when ctx ends, and with ErrCorrupt when the index on disk
// turns out to be damaged: build it again.
func (x *Index) Search(ctx context.Context, q Query) (hits []Hit, err error) {
	defer rescue(&err)
	a := x.lexicon.take(q)
	if a.empty() {
		return nil, nil
	}
	// Superseded notes give way to successors that may be found themselves, and dates
	// leave notes out: look further than the limit.
	found, err := x.find(ctx, a, 3*a.Limit+12)
	if err != nil {
		return nil, err
	}
	c := collector{asked: a, index: x, at: map[string]int{}}
	for _, m := range found {
		if err := c.collect(ctx, m); err != nil {
			return nil, err
		}
	}
	return c.hits(), nil
}

// find runs a search for at most n documents.
func (x *Index) find(ctx context.Context, a asked, n int) (search.DocumentMatchCollection, error) {
	r := bleve.NewSearchRequestOptions(a.query(), n, 0, false)
	// Equal scores come in the order of internal numbers, which differs from build to
	// build; ids do not.
	r.SortBy([]string{"-_score", "_id"})
	r.Fields = []string{fieldRecord}
	res, err := x.notes.SearchInContext(ctx, r)
	if err != nil {
		return nil, err
	}
	return res.Hits, nil
}

// byID fetches one record, false where the index holds no such note.
func (x *Index) byID(ctx context.Context, id string) (record, bool, error) {
	r := bleve.NewSearchRequestOptions(bleve.NewDocIDQuery([]string{id}), 1, 0, false)
	r.Fields = []string{fieldRecord}
	res, err := x.notes.SearchInContext(ctx, r)
	if err != nil || len(res.Hits) == 0 {
		return record{}, false, err
	}
	rec, err := recordOf(res.Hits[0])
	return rec, err == nil, err
}

func recordOf(m *search.DocumentMatch) (record, error) {
	var rec record
	s, _ := m.Fields[fieldRecord].(string)
	if err := json.Unmarshal([]byte(s), &rec); err != nil {
		return record{}, fmt.Errorf("%w: note %s: %w", ErrCorrupt, m.ID, err)
	}
	return rec, nil
}

// rescue turns a panic of the search library, which a damaged file can cause, into an
// error. Deferred in every method that searches.
func rescue(err *error) {
	if p := recover(); p != nil {
		*err = errors.Join(*err, fmt.Errorf("%w: %v", ErrCorrupt, p))
	}
}
