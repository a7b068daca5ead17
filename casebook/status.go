package casebook

import (
	"fmt"
	"strings"
)

// Status says where a note stands. The set is closed; the zero value is no
// status, which no note that was read has.
type Status uint8

// The statuses, in the order of a note's life.
const (
	NoStatus   Status = iota
	Draft             // not yet for the crews
	Published         // in force
	Superseded        // replaced by a later note, kept for the record
	Withdrawn         // taken back without a successor, kept for the record
)

// statuses is the one table of words, by Status.
var statuses = [...]string{NoStatus: "", Draft: "draft", Published: "published", Superseded: "superseded", Withdrawn: "withdrawn"}

// Statuses lists every status in the order of a note's life.
func Statuses() []Status { return []Status{Draft, Published, Superseded, Withdrawn} }

func (s Status) String() string {
	if int(s) < len(statuses) {
		return statuses[s]
	}
	panic(fmt.Sprintf("casebook: status %d outside the closed set", uint8(s)))
}

// ParseStatus reads a status as it is written in a note.
func ParseStatus(s string) (Status, error) {
	for _, st := range Statuses() {
		if st.String() == s {
			return st, nil
		}
	}
	return NoStatus, fmt.Errorf("%q is not a status; a status is %s", s, statusWords())
}

func statusWords() string {
	var w []string
	for _, st := range Statuses() {
		w = append(w, st.String())
	}
	return strings.Join(w[:len(w)-1], ", ") + " or " + w[len(w)-1]
}

// MarshalText writes the status as it is written in a note.
func (s Status) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the status as it is written in a note; empty is no status.
func (s *Status) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*s = NoStatus
		return nil
	}
	st, err := ParseStatus(string(b))
	if err != nil {
		return err
	}
	*s = st
	return nil
}
