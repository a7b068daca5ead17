package store

import (
	"crypto/rand"
	"strings"
)

// IDLen is the length of an id in bytes. A button's state of 100 bytes has
// room for one and for a fact with its value.
const IDLen = 26

// NewID draws an id of 26 lower-case letters and digits that nobody can guess:
// at least 128 bits, good for a link too.
func NewID() string { return strings.ToLower(rand.Text()) }
