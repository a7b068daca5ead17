package store

import "time"

// Poll is a play that a crew rules on together: a question whose ruling is
// shown only once the poll is closed. It goes with its question.
type Poll struct {
	Question string
	By       Person // who put it to the crew
	Season   string // that it counts for, such as 2026-27
	At       time.Time
	Closes   time.Time // when it closes by itself; zero: never
	Closed   time.Time // zero: members may still vote
	Votes    int       // how many members voted
}

// Vote is one member's call. It is kept while its poll is open; then it is
// counted and gone.
type Vote struct {
	Question string
	By       Person
	Call     string // in the caller's own form; never empty
	Team     string // the team that the call is against; empty: none
	At       time.Time
}

// VoteCount says how many members made one call.
type VoteCount struct {
	Call, Team string
	Members    int
}

// Agreement counts the closed polls of one channel in one season. It names
// nobody.
type Agreement struct {
	Where  Place // the channel
	Season string
	Polls  int
	Votes  int
	Agreed int // votes that were as the poll's ruling
}
