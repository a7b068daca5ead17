package store

import "time"

// Post is a message of ours to a channel or a person.
//
// It is queued in the transaction that makes it due, marked just before it is
// sent, and marked as sent after. A post that a kill leaves marked may be out
// or not: Resume puts it in doubt, and it waits for a person.
//
//	queued → marked → sent
//	           ↓  ↘ failed, or back to queued
//	         doubt → sent, queued (resend) or skipped
//
// One whose platform did not say whether it took it is put in doubt at once.
type Post struct {
	Key      string // what it is, such as bulletin/2026-W47/C02; the same is never sent twice
	Question string // the question that it is about; empty: none. It goes with its question
	Where    Place
	To       Person // a direct message; nobody: to the place
	Body     []byte // in the caller's own form
	Queued   time.Time
	State    PostState // Queue sets it
	Changed  time.Time // when it came to its state
	By       Person    // who resent or skipped it
	Message  string    // the platform's id, once sent
	Why      string    // why it failed, or is in doubt
}

// PostState says how far a post has come.
type PostState string

// The states of a post.
const (
	Queued  PostState = "queued"
	Marked  PostState = "marked"
	Sent    PostState = "sent"
	Doubt   PostState = "doubt"   // it may be out; a person decides
	Failed  PostState = "failed"  // it is not out; a person decides
	Skipped PostState = "skipped" // a person decided that it stays as it is
)

// Bulletin is a bulletin as it was made. It holds counts and notes, never an
// asker.
type Bulletin struct {
	ID    string // such as 2026-W47
	Title string
	Text  string // Markdown
	Data  []byte // the bulletin in the caller's own form
	Span  Span
	By    Person // who made it; nobody: the schedule
	At    time.Time
}
