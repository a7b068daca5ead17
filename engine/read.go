package engine

import (
	"slices"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// Judge rules on a subject by reading its facts through r. It must be pure:
// no clock, no randomness, no fact but through r.
type Judge func(r *Read, s Subject) Ruling

// Read is the only door from a rule to facts and to the code's parameters. It
// remembers what was read.
type Read struct {
	subject  Subject
	book     *code.Book
	assumed  []assumption
	keys     []play.Key // facts read, in order, once each
	presumed []play.Key
	params   []code.Param
	whole    bool // it looked at more of the book than its parameters
}

type assumption struct {
	key   play.Key
	value play.Value
}

// needs stops a run that read an unknown fact. It never leaves this package.
type needs struct{ key play.Key }

// Get is the value of a fact: told, assumed in this run, or presumed. On an
// unknown one it stops the run; the judge does not see it return.
func (r *Read) Get(f play.FactID, of string) play.Value {
	k := play.Key{Fact: f, Of: of}
	if v := r.subject.Get(k); v != play.Unknown {
		r.note(k)
		return v
	}
	for _, a := range r.assumed {
		if a.key == k {
			r.note(k)
			return a.value
		}
	}
	if v := r.subject.Presumption(k); v != play.Unknown {
		if r.note(k) {
			r.presumed = append(r.presumed, k)
		}
		return v
	}
	panic(needs{k})
}

// Told reports whether a fact was told, or is assumed in this run. A rule asks
// it only to choose between two facts that say the same thing.
func (r *Read) Told(f play.FactID, of string) bool {
	k := play.Key{Fact: f, Of: of}
	if r.subject.Get(k) != play.Unknown {
		return true
	}
	for _, a := range r.assumed {
		if a.key == k {
			return true
		}
	}
	return false
}

// Is reports whether a fact has the value.
func (r *Read) Is(f play.FactID, of string, v play.Value) bool { return r.Get(f, of) == v }

// Param is the value of a parameter of the code in its season.
func (r *Read) Param(p code.Param) string {
	for _, q := range r.params {
		if q == p {
			return r.book.Cell(p).Value
		}
	}
	r.params = append(r.params, p)
	return r.book.Cell(p).Value
}

// Params lists the parameters read so far, in order, once each.
func (r *Read) Params() []code.Param { return slices.Clone(r.params) }

// Book is the whole book, for a look-up of what is no parameter: a signal, a
// rule's number. A rule reads parameters, one by one.
func (r *Read) Book() *code.Book {
	r.whole = true
	return r.book
}

// note records a read; it reports whether it was the first of its key.
func (r *Read) note(k play.Key) bool {
	for _, q := range r.keys {
		if q == k {
			return false
		}
	}
	r.keys = append(r.keys, k)
	return true
}

// run judges once. It gives the ruling, or the fact that stopped it.
func run(j Judge, s Subject, b *code.Book, assumed []assumption) (r Read, ruling Ruling, missing play.Key, ok bool) {
	r = Read{subject: s, book: b, assumed: assumed, keys: make([]play.Key, 0, 16), params: make([]code.Param, 0, 8)}
	defer func() {
		if p := recover(); p != nil {
			n, is := p.(needs)
			if !is {
				panic(p)
			}
			missing, ok = n.key, false
		}
	}()
	ruling = j(&r, s)
	return r, ruling, play.Key{}, true
}
