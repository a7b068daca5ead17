// Package answer takes a question in words the whole way to an answer: it
// reads the words, chooses the code, decides the play and gathers all that
// people and programs are told of it.
//
//	a := answer.Ask("four contacts, the second was a block", answer.Options{})
//
// An Answer is a value, marshals to the one stable JSON form, and is the same
// for the same words and options.
package answer

import "encoding/json"

// Kind is what sort of answer it is.
type Kind string

// The kinds.
const (
	Ruling  Kind = "ruling"  // a play was ruled on, or turns on a fact
	Measure Kind = "measure" // an administrative decision
	Fact    Kind = "fact"    // a number or a yes or no out of the code
	None    Kind = "none"    // nothing that can be ruled on was read
)

// Depends is the outcome of a play that turns on a fact not told.
const Depends = "depends"

// AnyCode is the code of an answer that is the same under every code.
const AnyCode = "any"

// Maybe is a text that may be absent: empty marshals to null.
type Maybe string

// MarshalJSON gives null for an absent text.
func (m Maybe) MarshalJSON() ([]byte, error) {
	if m == "" {
		return []byte("null"), nil
	}
	return json.Marshal(string(m))
}

// Answer is all that is told of one question. Fields in JSON keep their names;
// more may be added.
type Answer struct {
	ID      Maybe    `json:"id"`
	Code    Maybe    `json:"code"`    // a code, or AnyCode; absent where none was chosen
	Edition Maybe    `json:"edition"` // the season in force; absent where the codes differ in it
	Kind    Kind     `json:"kind"`
	Read    []string `json:"read"`
	Unread  []string `json:"unread"` // words that were not used, scenery included

	Corrected []Correction `json:"corrected"`
	Presumed  []string     `json:"presumed"`

	Verdict
	Answer   Maybe    `json:"answer"`
	Branches []Branch `json:"branches"`
	Tree     *Tree    `json:"tree"`

	Because []string `json:"because"`
	Rules   []Rule   `json:"rules"`
	Call    *Call    `json:"call"`
	Next    *Next    `json:"next"`
	Codes   Codes    `json:"codes"`
	Notes   []Note   `json:"notes"`
	// Association is what a note of the association rules instead, where one
	// departs from the book. The ruling above stays the book's.
	Association *Association `json:"association,omitempty"`

	Cautions []string `json:"cautions"`
	Doubts   []string `json:"doubts"`   // what is uncertain in the cells that the ruling rests on
	Evidence []string `json:"evidence"` // what the question argues from and does not count
	Changes  []Branch `json:"changes"`  // the smallest changes of fact that would change the ruling
	// Could lists what the unread words could say that would change the
	// ruling. Where it is not empty there is no outcome.
	Could  []Given `json:"could"`
	Reason Maybe   `json:"reason"` // why nothing was ruled on
	// More are further questions in the same words; the first is answered.
	More []string `json:"more"`
	// Cells are the cells that the ruling read; see Keep.
	Cells Cells    `json:"-"`
	Error *Problem `json:"error,omitempty"`
}

// Verdict is a decision in the ids that are stable.
type Verdict struct {
	Outcome Maybe    `json:"outcome"`
	Fault   Maybe    `json:"fault"`
	Also    []string `json:"also"`
	Replay  Maybe    `json:"replay"`
	Measure []string `json:"measure"`
	Against []string `json:"against"` // names of the side at fault: its letter, the asker's, then what the play proves
}

// Correction is a word that was read as a near one.
type Correction struct {
	From string `json:"from"`
	To   string `json:"to"`
}

// Given is one fact with a value, and the clause that says it.
type Given struct {
	Fact  string `json:"fact"`
	Of    string `json:"of"`
	Is    string `json:"is"`
	Words string `json:"words"`
}

// Branch is one way that the play can be, and what it comes to.
type Branch struct {
	When []Given `json:"when"`
	Verdict
	Answer Maybe `json:"answer"`
}

// Tree asks one fact; each kid is what follows from a value.
type Tree struct {
	Ask  Question `json:"ask"`
	Kids []Kid    `json:"kids"`
}

// Question is the fact asked, its words to a crew, and its values.
type Question struct {
	Fact   string  `json:"fact"`
	Of     string  `json:"of"`
	Words  string  `json:"words"`
	Values []Value `json:"values"`
}

// Value is one possible answer to a question.
type Value struct {
	ID    string `json:"id"`
	Words string `json:"words"`
}

// Kid is one value of the question above it: a further tree, or the index of
// one of the answer's branches.
type Kid struct {
	Is   string `json:"is"`
	Tree *Tree  `json:"tree,omitempty"`
	Leaf *int   `json:"leaf,omitempty"`
}

// Rule is one rule that the ruling rests on.
type Rule struct {
	ID      string `json:"id"`
	Title   string `json:"title"`
	Cite    string `json:"cite"`
	Basis   string `json:"basis"`
	Source  string `json:"source"`
	Code    string `json:"code"`
	Edition string `json:"edition"`
	Adopted Maybe  `json:"adopted"` // the association's reason, where it adopted another text
}

// Call is who calls a fault and how.
type Call struct {
	By      string `json:"by"`
	Signal  Maybe  `json:"signal"`
	Number  Maybe  `json:"number"` // the signal's number, where a source gives one
	Whistle Maybe  `json:"whistle"`
}

// Next is what happens after the ruling.
type Next struct {
	Point  []string `json:"point"`  // names of the side that gets the point; empty where nobody does
	Serves []string `json:"serves"` // names of the side that serves next; empty where that is not known
	Words  Maybe    `json:"words"`  // what follows where the crew has already called it otherwise
}

// Note is one case note of the association.
type Note struct {
	ID      string   `json:"id"`
	Title   string   `json:"title"`
	URL     Maybe    `json:"url"`
	Why     []string `json:"why"`               // why it was chosen, the strongest reason first
	Example bool     `json:"example,omitempty"` // of the invented casebook that comes with the program
}

// Association is an association's own ruling beside the book's.
type Association struct {
	Note    string `json:"note"` // the note's id
	Outcome string `json:"outcome"`
	Fault   Maybe  `json:"fault"`
	Reason  string `json:"reason"`
}

// Problem is what is wrong with a question or its options, where, and how to
// mend it.
type Problem struct {
	Where string `json:"where"`
	What  string `json:"what"`
	Mend  string `json:"mend"`
}

func (p *Problem) Error() string {
	s := p.Where + ": " + p.What
	if p.Mend != "" {
		s += "; " + p.Mend
	}
	return s
}

// MarshalJSON writes every list, an empty one as [], never null.
func (a Answer) MarshalJSON() ([]byte, error) {
	type plain Answer
	a.Verdict = a.Verdict.lists()
	a.Read, a.Unread, a.Corrected, a.Presumed = list(a.Read), list(a.Unread), list(a.Corrected), list(a.Presumed)
	a.Branches, a.Because, a.Rules, a.Notes = list(a.Branches), list(a.Because), list(a.Rules), list(a.Notes)
	a.Cautions, a.Doubts, a.Evidence = list(a.Cautions), list(a.Doubts), list(a.Evidence)
	a.Changes, a.Could, a.More = list(a.Changes), list(a.Could), list(a.More)
	return json.Marshal(plain(a))
}

// MarshalJSON writes every list, an empty one as [], never null.
func (b Branch) MarshalJSON() ([]byte, error) {
	type plain Branch
	b.When, b.Verdict = list(b.When), b.Verdict.lists()
	return json.Marshal(plain(b))
}

// MarshalJSON writes every list, an empty one as [], never null.
func (n Note) MarshalJSON() ([]byte, error) {
	type plain Note
	n.Why = list(n.Why)
	return json.Marshal(plain(n))
}

// MarshalJSON writes every list, an empty one as [], never null.
func (n Next) MarshalJSON() ([]byte, error) {
	type plain Next
	n.Point, n.Serves = list(n.Point), list(n.Serves)
	return json.Marshal(plain(n))
}

func (v Verdict) lists() Verdict {
	v.Also, v.Measure, v.Against = list(v.Also), list(v.Measure), list(v.Against)
	return v
}

func list[T any](s []T) []T {
	if s == nil {
		return []T{}
	}
	return s
}
