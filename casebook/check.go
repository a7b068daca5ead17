package casebook

import (
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"example.org/netpost/engine/code"
)

// CheckOptions say against what a book is checked. The zero value leaves the
// calendar and the next season out.
type CheckOptions struct {
	Today Date        // no date: nothing is expired
	Next  code.Season // zero: the notes are held against their own seasons only
}

// checker is one run of the checks.
type checker struct {
	book    *Book
	options CheckOptions
	known   map[code.Code]ruleSet
	linked  func() map[string]bool // paths that some note's text links to
	proofs  []proof                // parallel to book.notes

	mu    sync.Mutex
	books map[codeSeason]opened
}

// Check proves the notes of a book against the engine, the association's own
// book and each other. The findings come in the order of files and lines; the
// same book gives the same findings. What Load reported is not repeated.
func Check(b *Book, o CheckOptions) []Finding {
	c := newChecker(b, o)
	c.proofs = make([]proof, len(b.notes))
	found := make([][]Finding, len(b.notes))
	c.each(func(i int, n *Note) {
		c.proofs[i] = c.prove(n)
		for _, check := range checks {
			if check.note != nil {
				found[i] = append(found[i], check.note(c, n)...)
			}
		}
		found[i] = append(found[i], c.engineFindings(i)...)
	})
	out := slices.Concat(found...)
	for _, check := range checks {
		if check.book != nil {
			out = append(out, check.book(c)...)
		}
	}
	sortFindings(out)
	return out
}

// each runs a function on every note, on as many processors as there are.
func (c *checker) each(f func(i int, n *Note)) {
	notes := c.book.notes
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(notes)) {
		wg.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(notes) {
					return
				}
				f(i, notes[i])
			}
		})
	}
	wg.Wait()
}

type codeSeason struct {
	code   code.Code
	season code.Season
}

type opened struct {
	book *code.Book
	err  error
}

// open gives a code's book with the association's adoptions, each opened once.
func (c *checker) open(cs codeSeason) (*code.Book, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	o, ok := c.books[cs]
	if !ok {
		o.book, o.err = c.book.Open(cs.code, cs.season)
		c.books[cs] = o
	}
	return o.book, o.err
}
