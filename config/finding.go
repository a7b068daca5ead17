package config

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// Finding is one thing that is wrong with the settings: where, what, and how
// to mend it.
type Finding struct {
	Path  string // of the file; empty: there is none
	Line  int    // from 1; 0 for the whole file
	Field string // such as associations[0].code; empty for the whole file
	What  string
	Mend  string
}

// String is the finding on one line: path:line: field: what; how to mend it.
func (f Finding) String() string {
	var b strings.Builder
	switch {
	case f.Path == "":
		b.WriteString("settings: ")
	case f.Line == 0:
		b.WriteString(f.Path + ": ")
	default:
		fmt.Fprintf(&b, "%s:%d: ", f.Path, f.Line)
	}
	if f.Field != "" {
		b.WriteString(f.Field + ": ")
	}
	b.WriteString(f.What)
	if f.Mend != "" {
		b.WriteString("; " + f.Mend)
	}
	return b.String()
}

// Error is String: a finding is an error too.
func (f Finding) Error() string { return f.String() }

func sortFindings(fs []Finding) {
	slices.SortStableFunc(fs, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Field, b.Field), cmp.Compare(a.What, b.What))
	})
}

// quote shows a value of the file, cut short, and never one that looks like a
// token.
func quote(s string) string {
	if looksSecret(s) {
		return "the value (it looks like a token and is not shown)"
	}
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return strconv.Quote(s)
}

// looksSecret reports whether a text is like a token: by how it opens, or long
// and without a space or a slash.
func looksSecret(s string) bool {
	return token(s) || len(s) >= 32 && !strings.ContainsAny(s, " /\\\n")
}

// token reports whether a text opens as Slack's tokens do.
func token(s string) bool { return strings.HasPrefix(s, "xox") || strings.HasPrefix(s, "xapp-") }
