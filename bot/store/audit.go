package store

import "time"

// Entry is one line of the audit trail: who did what, and to what.
type Entry struct {
	At      time.Time
	Who     Person // nobody: the program itself
	Did     string // such as claim, publish, resend, purge
	To      string // the id of the row
	About   Person // whom it concerns, when it is somebody else
	Details string
}

// Deleted counts what was deleted.
type Deleted struct {
	Questions  int
	Drafts     int
	Posts      int // those deleted or emptied that were not of a question
	Entries    int
	Deliveries int
}

// Erased says what erasing a person did and what it left.
type Erased struct {
	Questions int
	Given     int // facts that stay, without their name
	Views     int
	Votes     int
	Calls     int
	Replies   int
	Drafts    int
	Posts     int
	Entries   int

	// Notes lists, sorted, the ids of the published notes that were drafted by
	// the person or from one of their questions.
	Notes []string
	// Quotes lists, sorted, the person's own words that were deleted; the
	// caller looks for them in the casebook, and then forgets them.
	Quotes []string
	// Mentions lists what others wrote that names the person.
	Mentions []Mention
}

// Mention is a text that names a person who was erased.
type Mention struct {
	In   string // question, view, call, reply, draft, post, bulletin or audit
	ID   string
	Text string // the text around the name
}
