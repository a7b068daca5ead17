package casebook

import (
	"cmp"
	"slices"
	"time"

	"example.org/netpost/engine/code"
)

// Book is a casebook as it was read at one moment. It is immutable and safe to
// share.
type Book struct {
	// Association is the association's own book, nil when the folder has none.
	Association *Association

	notes      []*Note // sorted by id
	byID       map[string]*Note
	successors map[string][]*Note // notes that supersede an id, by issue and id
	files      map[string]bool    // every path in the folder; true for a folder
	broken     map[string]bool    // paths of notes that could not be read
	claimed    map[string]bool    // ids that a broken file seems to have
}

// NewBook makes a book of notes that a program made. Of two with one id the
// first is kept.
func NewBook(notes []*Note, a *Association) *Book {
	b := &Book{
		Association: a,
		byID:        map[string]*Note{},
		successors:  map[string][]*Note{},
		files:       map[string]bool{},
		broken:      map[string]bool{},
		claimed:     map[string]bool{},
	}
	for _, n := range notes {
		b.files[n.Path] = false
		b.add(n)
	}
	b.finish()
	return b
}

func (b *Book) add(n *Note) bool {
	if b.byID[n.ID] != nil {
		return false
	}
	b.byID[n.ID] = n
	b.notes = append(b.notes, n)
	return true
}

func (b *Book) finish() {
	slices.SortFunc(b.notes, func(x, y *Note) int { return cmp.Compare(x.ID, y.ID) })
	clear(b.successors)
	for _, n := range b.notes {
		for _, id := range n.Supersedes {
			if id != n.ID {
				b.successors[id] = append(b.successors[id], n)
			}
		}
	}
	for _, s := range b.successors {
		slices.SortStableFunc(s, func(x, y *Note) int { return x.Issued.Compare(y.Issued) })
	}
}

// Notes lists every note that was read, sorted by id.
func (b *Book) Notes() []*Note { return slices.Clone(b.notes) }

// Note finds a note by id, nil when there is none.
func (b *Book) Note(id string) *Note { return b.byID[id] }

// Live lists the notes in force for a code in a season, sorted by id: published,
// written for that season or an earlier one, and not expired when it begins. No
// code means every code, season zero every season.
func (b *Book) Live(c code.Code, s code.Season) []*Note {
	var out []*Note
	for _, n := range b.notes {
		if c != "" && !n.For(c) {
			continue
		}
		if n.LiveIn(s) {
			out = append(out, n)
		}
	}
	return out
}

// seasonBegins is the month from which a note that expires earlier in the
// year is no longer in force for the new season.
const seasonBegins = time.July

// LiveIn reports whether a note is in force in a season: published, written
// for it or an earlier one, and not expired when it begins in July.
func (n *Note) LiveIn(s code.Season) bool {
	if n.Status != Published {
		return false
	}
	return s == 0 || n.Season <= s && !n.expired(Date{int(s), seasonBegins, 1})
}

// Successor is the published note at the end of the chain of notes that
// supersede an id, nil when there is none. Of two that supersede one note the
// later issued is followed.
func (b *Book) Successor(id string) *Note {
	seen := map[string]bool{id: true}
	for {
		var next *Note
		for _, n := range b.successors[id] {
			if n.Status == Published || n.Status == Superseded {
				next = n
			}
		}
		switch {
		case next == nil || seen[next.ID]:
			return nil
		case next.Status == Published:
			return next
		}
		id = next.ID
		seen[id] = true
	}
}

// Open gives a code's book for a season with the association's adoptions laid
// over it. Season zero means the newest season held.
func (b *Book) Open(c code.Code, s code.Season) (*code.Book, error) {
	book, err := code.Open(c, s)
	if err != nil || b.Association == nil {
		return book, err
	}
	return book.With(b.Association.Overlays(book.Season())...)
}
