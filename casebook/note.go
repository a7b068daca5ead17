package casebook

import (
	"slices"

	"example.org/netpost/engine/code"
)

// Note is one case note. A note that Load gives has an ID, a Title, Codes, a
// Season and a Status; any other field may be its zero value.
type Note struct {
	ID         string      // year and number, such as 2026-014; unique in the book, and the file is named for it
	Title      string      // one line of plain text
	Codes      []code.Code // the codes it is about, as written
	Season     code.Season // the season that it was written for; it stays in force until it expires or is replaced
	Status     Status
	Issued     Date     // the day it was published; none for a draft
	Expires    Date     // the last day it is in force; none: until replaced
	Withdrawn  Date     // the day it was taken back, with the status withdrawn; it may be missing
	Supersedes []string // ids of the notes that it replaces
	Rules      []string // rule numbers, of its codes or of the association's own book
	Topics     []string // lower-case words to find it by
	Play       string   // a play in words, or empty
	Ruling     Ruling   // what it rules on the play; the zero value without a play
	Departs    string   // why it rules otherwise than the book, empty when it does not

	Attachments []string // paths of files in the folder, slash-separated from its root

	Path string // the note's file, slash-separated from the folder's root
	Text string // the whole file as it was read
	Body string // the Markdown below the front matter

	front front // where each field stands, for findings
}

// Ruling is what a note rules. The ids are the engine's. The zero value is no
// ruling.
type Ruling struct {
	Outcome string   `json:"outcome,omitempty"` // play-on, fault, replay, re-serve, or depends; none for measures alone and for an answer
	Fault   string   `json:"fault,omitempty"`   // the fault's id, with the outcome fault
	Replay  string   `json:"replay,omitempty"`  // why it is replayed, with the outcome replay
	Against string   `json:"against,omitempty"` // a name of the side at fault, as in the play
	Measure []string `json:"measure,omitempty"` // administrative measures, all applying together
	Answer  string   `json:"answer,omitempty"`  // of a look-up: the number, or yes or no, that its answer begins with
}

// IsZero reports whether nothing is ruled.
func (r Ruling) IsZero() bool {
	return r.Outcome == "" && r.Fault == "" && r.Replay == "" && r.Against == "" && len(r.Measure) == 0 && r.Answer == ""
}

// For reports whether the note is about a code.
func (n *Note) For(c code.Code) bool { return slices.Contains(n.Codes, c) }

// Live reports whether the note is in force on a day: published, issued by
// then and not past its last day. No day leaves the dates out.
func (n *Note) Live(on Date) bool {
	return n.Status == Published && (on.IsZero() || !on.Before(n.Issued) && !n.expired(on))
}

func (n *Note) expired(on Date) bool { return !n.Expires.IsZero() && n.Expires.Before(on) }
