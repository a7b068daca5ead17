package casebook

import (
	"fmt"
	"slices"
)

// With is a book with one note more, in place of the one with its id.
func (b *Book) With(n *Note) *Book {
	notes := slices.DeleteFunc(b.Notes(), func(o *Note) bool { return o.ID == n.ID })
	out := NewBook(append(notes, n), b.Association)
	for p, dir := range b.files {
		out.files[p] = dir
	}
	for p := range b.broken {
		out.broken[p] = true
	}
	for id := range b.claimed {
		out.claimed[id] = true
	}
	return out
}

// Prove says what Check would find in one note if it were in a book, or in
// others because of it: what a draft comes to before anybody publishes it. The
// findings of the book without it are not repeated.
func Prove(b *Book, n *Note, o CheckOptions) []Finding {
	var out []Finding
	for _, f := range Check(b.With(n), o) {
		about := f.Path == n.Path
		for _, r := range f.Related {
			about = about || r.Path == n.Path
		}
		if about {
			out = append(out, f)
		}
	}
	return out
}

// NextID is the first free id of a year: one more than the highest that a note
// of the book has, or one of the taken.
func (b *Book) NextID(year int, taken ...string) string {
	most := 0
	see := func(id string) {
		var y, n int
		if _, err := fmt.Sscanf(id, "%d-%d", &y, &n); err == nil && y == year && n > most {
			most = n
		}
	}
	for _, n := range b.notes {
		see(n.ID)
	}
	for id := range b.claimed {
		see(id)
	}
	for _, id := range taken {
		see(id)
	}
	return fmt.Sprintf("%d-%03d", year, most+1)
}
