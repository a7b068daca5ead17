package casebook

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Finding is one thing that is wrong with a casebook: where, what, and how to
// mend it.
type Finding struct {
	Check   string  `json:"check"`           // id of the check that found it
	Path    string  `json:"path"`            // slash-separated from the folder's root; empty for the folder
	Line    int     `json:"line,omitempty"`  // from 1; 0 for the whole file
	Field   string  `json:"field,omitempty"` // such as rules[1] or ruling.fault; empty for the whole file or the body
	What    string  `json:"what"`
	Mend    string  `json:"mend"`
	Source  string  `json:"source,omitempty"` // the offending line
	Related []Place `json:"related,omitempty"`
	Fixable bool    `json:"fixable"` // Fix can mend it

	fix fix
}

// Place points to another line that a finding is about, or adds a remark.
type Place struct {
	Path string `json:"path,omitempty"` // empty for a remark about no file
	Line int    `json:"line,omitempty"`
	What string `json:"what"`
}

// at is the place as a person finds it: path:line.
func at(path string, line int) string {
	switch {
	case path == "":
		return "the folder"
	case line == 0:
		return path
	}
	return fmt.Sprintf("%s:%d", path, line)
}

// String is the finding on one line: path:line: field: what; how to mend it.
func (f Finding) String() string {
	s := at(f.Path, f.Line) + ": "
	if f.Field != "" {
		s += f.Field + ": "
	}
	s += f.What
	if f.Mend != "" {
		s += "; " + f.Mend
	}
	return s
}

// Print writes findings for people, each with its offending line, the places
// it is related to, and the check's id.
func Print(w io.Writer, findings []Finding) error {
	var b strings.Builder
	for _, f := range findings {
		fmt.Fprintf(&b, "%s [%s]\n", f, f.Check)
		if f.Source != "" {
			fmt.Fprintf(&b, "    | %s\n", f.Source)
		}
		for _, r := range f.Related {
			if r.Path != "" {
				fmt.Fprintf(&b, "    %s: %s\n", at(r.Path, r.Line), r.What)
			} else {
				fmt.Fprintf(&b, "    %s\n", r.What)
			}
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// All joins findings, those of Load and those of Check, in the order of files,
// lines and checks.
func All(lists ...[]Finding) []Finding {
	out := slices.Concat(lists...)
	sortFindings(out)
	return out
}

// sortFindings puts findings in the order of files, lines and checks.
func sortFindings(fs []Finding) {
	slices.SortStableFunc(fs, func(a, b Finding) int {
		return cmp.Or(
			cmp.Compare(a.Path, b.Path),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Check, b.Check),
			cmp.Compare(a.Field, b.Field),
			cmp.Compare(a.What, b.What),
		)
	})
}

// longestSource is how much of an offending line is shown, in runes.
const longestSource = 120

// sourceLine is line n of a text, from 1, cut to what is worth showing and
// with everything that a terminal would act on made visible.
func sourceLine(text string, n int) string {
	for ; n > 1; n-- {
		_, rest, ok := strings.Cut(text, "\n")
		if !ok {
			return ""
		}
		text = rest
	}
	line, _, _ := strings.Cut(text, "\n")
	line = strings.TrimSuffix(line, "\r")
	var b strings.Builder
	count := 0
	for _, r := range line {
		if count == longestSource {
			b.WriteString("…")
			break
		}
		switch {
		case r == '\t':
			b.WriteByte(' ')
		case r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r >= 0x202a && r <= 0x202e || r >= 0x2066 && r <= 0x2069:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
		count++
	}
	return b.String()
}
