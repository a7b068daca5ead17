package lookup

import (
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// Entry is one thing that can be looked up.
type Entry struct {
	ID    string // also the id of the rule that its answers cite
	Title string // a name that a crew would use
	Ask   string // the question in plain words; %s is what it is asked of
	// Words are the ways to ask it. Each names the ideas that have to be in a
	// question and, after a bar, those that may be; an idea is a row of the
	// notation's lexicon for look-ups, and "idea=of" also says what the entry is
	// asked of. A question with any other word in it is not this one.
	Words []string
	// Params are the cells it answers from, the leading one first.
	Params []code.Param
	of     func(string) bool // what it can be asked of; nil: nothing
	// says is the answer: one clause that opens with the number, or with yes or
	// no, where there is one. Empty: the code is not known to say.
	says func(r *engine.Read, of string) string
	// measure: the answer is the crew's decision, not a line of the book.
	measure []string
}

// Entries is the table of all that can be looked up, sorted by id.
func Entries() []Entry { return slices.Clone(entries) }

// ByID finds an entry.
func ByID(id string) (Entry, bool) {
	i, ok := slices.BinarySearchFunc(entries, id, func(e Entry, id string) int { return strings.Compare(e.ID, id) })
	if !ok {
		return Entry{}, false
	}
	return entries[i], true
}

// Text says what is looked up.
func (e Entry) Text() string {
	return "Answers from the code's own cells: " + strings.ToLower(e.Ask[:1]) + strings.Replace(e.Ask[1:], "%s", "…", 1)
}

// Takes reports whether the entry is asked of something.
func (e Entry) Takes() bool { return e.of != nil }

var entries = collect(callEntries, crewEntries, liberoEntries, matchEntries, requestEntries, conductEntries, serveEntries)

func collect(tables ...[]Entry) []Entry {
	all := slices.Concat(tables...)
	slices.SortFunc(all, func(a, b Entry) int { return strings.Compare(a.ID, b.ID) })
	return all
}

// Judge answers a look-up. A code that is not known to say gives the zero
// ruling.
func Judge(r *engine.Read, s engine.Subject) engine.Ruling {
	q := s.(*Query)
	e, _ := ByID(q.Entry)
	if e.ID == "rule-number" {
		return numbered(r, q.Of)
	}
	a := e.says(r, q.Of)
	if a == "" {
		return engine.Ruling{}
	}
	out := engine.Ruling{Answer: a, Measure: e.measure}
	for _, p := range e.Params {
		if e.Params[0] == p || slices.Contains(r.Params(), p) {
			out.Cites = append(out.Cites, engine.Cite{Rule: e.ID, Param: p})
		}
	}
	return out
}

// clause is one value of a parameter and what an answer makes of it.
type clause struct{ value, says string }

// by answers from the value of one parameter. A value that is not listed is
// one that the code is not known to say.
func by(p code.Param, cs ...clause) func(*engine.Read, string) string {
	return func(r *engine.Read, _ string) string { return pick(r.Param(p), cs...) }
}

func pick(v string, cs ...clause) string {
	for _, c := range cs {
		if c.value == v {
			return c.says
		}
	}
	return ""
}

// oneOf is what an entry can be asked of.
func oneOf(ofs ...string) func(string) bool {
	return func(s string) bool { return slices.Contains(ofs, s) }
}
