package store

import "time"

// Call is a question that waits for a mentor.
type Call struct {
	ID       string
	Question string
	Kind     CallKind
	By       Person
	About    string // the fact (fact@event) or the rule that a disagreement is about
	Words    string // what the person wrote with it
	At       time.Time

	Claimer Person    // who claimed it last; nobody: no one did, or it was given back
	Lapses  time.Time // when that claim lapses
	Nudged  time.Time // when mentors were reminded; zero: not yet
	Answers int       // how many answers it has
	Closed  time.Time // zero: still in the queue
}

// CallKind says why a mentor is called.
type CallKind string

// The kinds of call.
const (
	AskMentor CallKind = "ask"
	Disagree  CallKind = "disagree"
)

// CallState says where a call stands at a time.
type CallState string

// The states of a call. An answered call can be claimed again: mentors may
// differ.
const (
	Open     CallState = "open"     // nobody is on it
	Claimed  CallState = "claimed"  // somebody is, and the claim has not lapsed
	Answered CallState = "answered" // it has an answer
	Done     CallState = "done"     // it is off the queue
)

// State is where the call stands at a time.
func (c Call) State(now time.Time) CallState {
	switch {
	case !c.Closed.IsZero():
		return Done
	case c.Answers > 0:
		return Answered
	case c.HeldBy(now).IsZero():
		return Open
	}
	return Claimed
}

// HeldBy is who holds the call at a time, nobody when no claim is in force.
func (c Call) HeldBy(now time.Time) Person {
	if now.Before(c.Lapses) {
		return c.Claimer
	}
	return Person{}
}

// Reply is a mentor's answer to a call.
type Reply struct {
	ID        string
	Call      string
	By        Person
	Text      string
	At        time.Time
	Delivered time.Time // zero: the asker does not have it yet
}

// Draft is a case note in the making.
type Draft struct {
	ID       string
	Question string // the question that it comes from, which may be gone by now; empty: none
	By       Person
	Text     string    // the whole file
	At       time.Time // when it was saved last
	State    DraftState
	Note     string // the note's id once it is published
}

// DraftState says what became of a draft.
type DraftState string

// The states of a draft.
const (
	Drafted   DraftState = "draft"
	Published DraftState = "published"
	Dropped   DraftState = "dropped"
)
