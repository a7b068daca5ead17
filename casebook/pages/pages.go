// Package pages makes the pages of a casebook.
package pages

import (
	_ "embed"
)

//go:embed style.css
var style []byte

// Style is the style sheet of the pages.
func Style() []byte { return style }
