// Package index finds case notes: by words, by rule number and by the play itself.
//
// It is the one package that knows the search library. One note is one document; the
// mapping (mapping.go) gives the reason for every analyzer. Beside its words a document
// carries a signature: what happens in the note's play, which facts are told, how the
// engine rules on it and which facts decide. A question that was read and ruled on has a
// signature too, so a play finds its note though the two share no word.
//
//	x, findings, err := index.Ensure(ctx, cache, os.DirFS("casebook"))
//	hits, err := x.Search(ctx, index.Question{Words: "setter up with a blocker, both touch it"}.Query())
//
// An index on disk is a cache of the notes. Ensure opens it and builds it first where it
// must; a build writes a new generation and switches a pointer, so any number of readers
// may have one open (generation.go). Watch keeps an index in memory in step with a folder
// while a program serves.
//
// The same notes and the same query give the same hits in the same order.
package index
