// Package demo is the casebook of an invented association, embedded in the
// program, so that a first run has notes to show. Its people, places and
// ground rules do not exist; its notes are examples and change no ruling.
package demo

import (
	"embed"
	"io/fs"
	"sync"

	"example.org/netpost/casebook"
)

//go:embed notes
var notes embed.FS

// FS is the folder of the demo casebook.
func FS() fs.FS {
	sub, err := fs.Sub(notes, "notes")
	if err != nil {
		panic("demo: the embedded folder is always there: " + err.Error())
	}
	return sub
}

// Book is the demo casebook, read once. The test of this package holds that it
// reads without a finding and passes every check.
var Book = sync.OnceValue(func() *casebook.Book {
	b, _ := casebook.Load(FS(), casebook.LoadOptions{})
	return b
})
