package store

import "time"

// Person is somebody on a platform. Only the platform's id is kept, never a
// name. The zero value is nobody.
type Person struct {
	Platform string // such as slack
	ID       string
}

// IsZero reports whether it is nobody.
func (p Person) IsZero() bool { return p == Person{} }

// Place is where something is said: a channel, or a thread in it.
type Place struct {
	Platform  string
	Workspace string // the workspace or guild
	Channel   string
	Thread    string // empty: not in a thread
}

// Question is one question as it was asked.
type Question struct {
	ID      string // see NewID
	Asker   Person
	Where   Place
	Text    string // the asker's own words
	Code    string // the rule code that it is asked under; empty: all
	Season  string // such as 2026-27; empty: the newest
	Private bool   // only the asker sees the answer
	Asked   time.Time

	Answer Answer
}

// Answer is what is known of a question's answer. It changes as facts come in.
type Answer struct {
	Message string // the platform's id of the message that holds it, to edit it in place
	Play    string // the play as read, in canonical words; empty: not read
	Outcome string // the engine's id; empty: none
	Ruling  []byte // the whole answer in the caller's own form, to compare a later one with
	Tags    []Tag  // what to count it under; sorted, each once
	At      time.Time
}

// TagKind is something that questions are counted by.
type TagKind string

// The kinds of tag.
const (
	Topic    TagKind = "topic"    // what it is about, such as a fault's id
	Deciding TagKind = "deciding" // the fact that it turned on
	Unread   TagKind = "unread"   // a phrase that was not read
	Linked   TagKind = "linked"   // a case note that was shown with it
	Disputed TagKind = "disputed" // what somebody disagrees on: counted from the calls still in the queue, and no tag of an answer
)

// Tag is one thing that a question counts under.
type Tag struct {
	Kind  TagKind
	Value string
}

// Count says how often questions had a tag.
type Count struct {
	Value     string
	Questions int
	Askers    int // different people
}

// Given is a fact given to a question.
type Given struct {
	Question string
	View     string // the view that it belongs to; empty: the question itself
	Fact     string
	Event    string // the event that it is of; empty: the setting
	Value    string
	By       Person // nobody: erased
	At       time.Time
	Undone   time.Time // zero: it still stands
	UndoneBy Person
}

// View is how one official saw the play. Its facts are those given to it.
type View struct {
	Question string
	ID       string // unique within the question
	By       Person
	Private  bool   // only its person sees the facts before another view is in
	Name     string // what its person is called in what is shown, where everybody with a view agrees; empty: not named
	At       time.Time
	Handed   time.Time // when its person handed it in; zero: not yet, and only they see it
}

// ThreadRole says why a question has a thread.
type ThreadRole string

// The roles of a thread.
const (
	Asked   ThreadRole = "asked"   // where it was asked and answered
	Mentors ThreadRole = "mentors" // where mentors talk about it
	// Together is where a crew talks about a play that it rules on together.
	Together ThreadRole = "together"
)

// Thread says which question a thread is about.
type Thread struct {
	Where    Place
	Question string
	Role     ThreadRole
	At       time.Time
}

// Button is what a press means, kept where it is too long for the button
// itself. It goes with its question.
type Button struct {
	ID       string // see NewID
	Question string
	Action   string
	At       time.Time
}

// IsZero reports whether nothing is known of the answer.
func (a Answer) IsZero() bool {
	return a.Message == "" && a.Play == "" && a.Outcome == "" && a.Ruling == nil && a.Tags == nil && a.At.IsZero()
}
