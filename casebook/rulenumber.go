package casebook

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"example.org/netpost/engine/code"
)

// ruleSet holds the rule numbers that a code's tables name, each with the
// numbers it stands below: 9.2.3 is known, and so are 9.2 and 9.
type ruleSet map[string]bool

var (
	dotted     = whenUsed(`^\d+(\.\d+)*[a-z]?$`)
	hyphenated = whenUsed(`^\d+(-\d+)*[a-z]?$`)
)

// wellFormed reports whether a number is written as a code writes its own: the
// scholastic book with hyphens, the others with dots.
func wellFormed(c code.Code, number string) bool {
	if c == code.Scholastic {
		return hyphenated().MatchString(number)
	}
	return dotted().MatchString(number)
}

// knownRules gathers the rule numbers of the tables, of all seasons.
func knownRules() map[code.Code]ruleSet {
	out := map[code.Code]ruleSet{}
	for _, c := range code.All() {
		set := ruleSet{}
		for _, r := range code.Rows() {
			for _, cell := range r.Cells(c) {
				for _, n := range numbers(c, cell.Rule) {
					set.add(n)
				}
			}
		}
		out[c] = set
	}
	return out
}

func (s ruleSet) add(n string) {
	for n != "" {
		s[n] = true
		n = above(n)
	}
}

// above is the number that one stands below: 9-4-8 of 9-4-8c, 9.2 of 9.2.3.
func above(n string) string {
	if last := n[len(n)-1]; last >= 'a' && last <= 'z' {
		return n[:len(n)-1]
	}
	i := strings.LastIndexAny(n, ".-")
	return n[:max(i, 0)]
}

// covers reports whether a number names a rule or one that it stands below.
func covers(number, rule string) bool {
	for ; rule != ""; rule = above(rule) {
		if rule == number {
			return true
		}
	}
	return false
}

// numbers splits what a cell cites: "9.1; 9.3.1", "10-4-3a,d", and a range such
// as "14.4.1-14.4.2" of a code with dots.
func numbers(c code.Code, cited string) []string {
	var out []string
	for part := range strings.SplitSeq(cited, ";") {
		before := ""
		for n := range strings.SplitSeq(part, ",") {
			n = strings.TrimSpace(n)
			if len(n) == 1 && before != "" { // a further letter
				n = above(before) + n
			}
			before = n
			if from, to, ok := strings.Cut(n, "-"); ok && c != code.Scholastic {
				out = append(out, span(from, to)...)
				continue
			}
			if wellFormed(c, n) {
				out = append(out, n)
			}
		}
	}
	return out
}

// span lists a range within one rule, and only the ends of one across rules.
func span(from, to string) []string {
	if !dotted().MatchString(from) || !dotted().MatchString(to) {
		return nil
	}
	out := []string{from}
	if above(from) == above(to) && above(from) != "" {
		for n := after(from); n != "" && n != to && len(out) < 50; n = after(n) {
			out = append(out, n)
		}
	}
	return append(out, to)
}

// after is the next number: 14.4.2 after 14.4.1; empty after a letter.
func after(n string) string {
	i := strings.LastIndexByte(n, '.') + 1
	v, err := strconv.Atoi(n[i:])
	if err != nil {
		return ""
	}
	return n[:i] + strconv.Itoa(v+1)
}

// checkRules reports rule numbers that are not written as any code of the note
// writes them, or that neither its tables nor the association's book knows.
func checkRules(c *checker, n *Note) []Finding {
	var out []Finding
	for i, number := range n.Rules {
		if c.book.Association.Owns(number) {
			continue
		}
		field := indexed("rules", i)
		formed, known := false, false
		for _, cd := range n.Codes {
			formed = formed || wellFormed(cd, number)
			known = known || wellFormed(cd, number) && c.known[cd][number]
		}
		switch {
		case known:
		case ownForm().MatchString(number):
			mend := "list it under rules in " + BookFile
			if c.book.Association == nil {
				mend = "write a " + BookFile + " and list it under rules there"
			}
			out = append(out, n.finding(checkRule, field, number+" is not in the association's own book", mend))
		case !formed:
			f := n.finding(checkRule, field, quote(number)+" is not how the "+codeList(n)+" rules are numbered", "write 9-4-8c for the scholastic book, 9.2.3 for the others")
			if as := renumbered(n, number, c.known); as != "" {
				f.Mend = "write " + as
				f.fix = n.front.rewrite(n.front.find(field), `"`+as+`"`)
				f.Fixable = !f.fix.none()
			}
			out = append(out, f)
		default:
			mend := "mend the number"
			if up := above(number); up != "" && c.knows(n, up) {
				mend += ", or cite " + up
			}
			out = append(out, n.finding(checkRule, field, number+" is in no table of the "+codeList(n)+" rules", mend))
		}
	}
	return out
}

func (c *checker) knows(n *Note, number string) bool {
	for _, cd := range n.Codes {
		if c.known[cd][number] {
			return true
		}
	}
	return false
}

// renumbered is a number with the other separators, where that makes it known.
func renumbered(n *Note, number string, known map[code.Code]ruleSet) string {
	for _, cd := range n.Codes {
		as := strings.ReplaceAll(number, "-", ".")
		if cd == code.Scholastic {
			as = strings.ReplaceAll(number, ".", "-")
		}
		if wellFormed(cd, as) && known[cd][as] {
			return as
		}
	}
	return ""
}

// codeList is the codes of a note in words.
func codeList(n *Note) string {
	var s []string
	for _, cd := range n.Codes {
		s = append(s, string(cd))
	}
	if len(s) < 2 {
		return strings.Join(s, "")
	}
	return strings.Join(s[:len(s)-1], ", ") + " or " + s[len(s)-1]
}

// whenUsed is an expression that is made ready when the first text wants it:
// the start of the program does not wait for it.
func whenUsed(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
