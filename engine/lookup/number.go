package lookup

import (
	"regexp"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
)

// numberForm is a rule's number in either house style: "9-5-5", "12.4.4",
// "8-2-5e".
var numberForm = regexp.MustCompile(`^\d+([.-]\d+)+[a-z]?$`)

func isNumber(of string) bool { return numberForm.MatchString(of) }

// IsNumber reports whether a word is written like the number of a rule.
func IsNumber(s string) bool { return isNumber(s) }

// numbered answers what the book has under a rule's number, in our words. The
// cells found are what the answer cites.
func numbered(r *engine.Read, number string) engine.Ruling {
	var out engine.Ruling
	var said []string
	for _, p := range r.Book().Under(number) {
		row, _ := code.Find(p)
		r.Param(p)
		s := strings.ToLower(row.Title[:1]) + row.Title[1:] + ": " + r.Book().Cell(p).Text
		said = append(said, s)
		out.Cites = append(out.Cites, engine.Cite{Rule: "rule-number", Param: p})
	}
	if said != nil {
		out.Answer = number + ", " + strings.Join(said, "; ")
	}
	return out
}
