package store

import (
	"errors"
	"fmt"
)

// Code says what kind of error it is, for programs.
type Code string

// The codes.
const (
	NotFound   Code = "not-found"
	Exists     Code = "exists"
	Taken      Code = "taken"    // somebody else holds it
	Closed     Code = "closed"   // its state does not allow that
	Invalid    Code = "invalid"  // the caller's value can't be kept
	Full       Code = "full"     // no room on the disk
	Locked     Code = "locked"   // another program holds the store
	Corrupt    Code = "corrupt"  // the file is damaged, or not a store
	ReadOnly   Code = "readonly" // the file or its folder can't be written
	Missing    Code = "missing"  // the file can't be opened
	Newer      Code = "newer"    // a later version of the program wrote it
	Disk       Code = "disk"     // the disk gave an error
	Unexpected Code = "unexpected"
)

// Error is an error in two parts: a code for programs, and what happened and
// how to mend it for people. The cause is for the log.
type Error struct {
	Code  Code
	What  string
	Mend  string
	Cause error
}

// Error says what happened and how to mend it.
func (e *Error) Error() string {
	if e.Mend == "" {
		return e.What
	}
	return fmt.Sprintf("%s; %s", e.What, e.Mend)
}

// Unwrap is the cause.
func (e *Error) Unwrap() error { return e.Cause }

// CodeOf is the code of an error of a store, empty for any other.
func CodeOf(err error) Code {
	if e, ok := errors.AsType[*Error](err); ok {
		return e.Code
	}
	return ""
}

// Operational reports whether a person who runs the program has something to
// mend, rather than the one who asked.
func (c Code) Operational() bool {
	switch c {
	case Full, Locked, Corrupt, ReadOnly, Missing, Newer, Disk, Unexpected:
		return true
	}
	return false
}
