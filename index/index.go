package index

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"strings"
	"sync"

	"github.com/blevesearch/bleve/v2"
	"github.com/blevesearch/bleve/v2/search"
	"github.com/blevesearch/bleve/v2/search/query"
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
	candidates, err := x.candidates(ctx, a)
	if err != nil {
		return nil, err
	}
	c := collector{asked: a, index: x, at: map[string]int{}}
	for _, m := range candidates {
		if len(c.found) == a.Limit {
			break // what follows answers no better
		}
		if err := c.collect(ctx, m); err != nil {
			return nil, err
		}
	}
	return c.hits(), nil
}

// A candidate is a document that was found, and how well it answers.
type candidate struct {
	match *search.DocumentMatch
	score float64
}

// candidates finds documents by words and by the play, apart, because their scores can't be
// compared: how rare a word is says how much it tells, and how rare a fact is does not. The
// best match of words counts one; the play counts by how alike it is, from none to all. The
// best come first, equal ones by id.
func (x *Index) candidates(ctx context.Context, a asked) ([]candidate, error) {
	t, err := x.tally()
	if err != nil {
		return nil, err
	}
	defer t.close()
	byWords, byPlay := a.byWords(t.rarest), a.byPlay(t.rarest)
	if t.err != nil {
		return nil, t.err
	}
	// Superseded notes give way to successors that may be found themselves, and dates
	// leave notes out: look further than the limit.
	n := 2*a.Limit + 16
	words, err := x.find(ctx, byWords, n)
	if err != nil {
		return nil, err
	}
	plays, err := x.find(ctx, byPlay, n)
	if err != nil {
		return nil, err
	}
	var out []candidate
	seen := map[string]bool{}
	for i, m := range slices.Concat(words, plays) {
		if seen[m.ID] {
			continue
		}
		seen[m.ID] = true
		c := candidate{match: m, score: a.trust() * alike(a.signs, signsOf(m))}
		if i < len(words) {
			c.score += m.Score / words[0].Score
		}
		if season, _ := m.Fields[fieldSeason].(float64); a.Season != 0 && season == float64(a.Season) {
			c.score += weightSeason
		}
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(b.score, a.score), strings.Compare(a.match.ID, b.match.ID))
	})
	return out, nil
}

// find runs a search for at most n documents; no search finds none.
func (x *Index) find(ctx context.Context, q query.Query, n int) (search.DocumentMatchCollection, error) {
	if q == nil {
		return nil, nil
	}
	r := bleve.NewSearchRequestOptions(q, n, 0, false)
	// Equal scores come in the order of internal numbers, which differs from build to
	// build; ids do not.
	r.SortBy([]string{"-_score", "_id"})
	r.Fields = []string{fieldRecord, fieldSigns, fieldSeason}
	res, err := x.notes.SearchInContext(ctx, r)
	if err != nil {
		return nil, err
	}
	return res.Hits, nil
}

// signsOf reads the signature that is stored with a document.
func signsOf(m *search.DocumentMatch) []sign {
	s, _ := m.Fields[fieldSigns].(string)
	var out []sign
	for _, f := range strings.Fields(s) {
		out = append(out, sign(f))
	}
	return out
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
