package index

import (
	"regexp"
	"strings"
	"sync"
)

// NormalRule writes a rule number in the one form that the index knows: parts in lower
// case joined by dots. The four books write theirs differently, and a crew types them as
// it likes:
//
//	10-4-1b    10.4.1.b
//	9.2.3 (a)  9.2.3.a
//	9-5-5      9.5.5
//	HL-3       hl.3     of an association's own book, begun with letters
//
// What is no rule number, such as a word or a season, gives the empty string.
func NormalRule(s string) string {
	if !strings.ContainsAny(s, "0123456789") {
		return ""
	}
	m := ruleShape().FindStringSubmatch(strings.ToLower(strings.TrimSpace(s)))
	if m == nil {
		return ""
	}
	parts := strings.FieldsFunc(m[2], func(r rune) bool { return r == '.' || r == '-' || r == '–' })
	if m[1] != "" {
		parts = append([]string{m[1]}, parts...)
	}
	if m[3] != "" {
		parts = append(parts, m[3])
	}
	return strings.Join(parts, ".")
}

// ruleShape is a whole rule number: perhaps an association's letters, up to six numbers of
// one or two digits, then perhaps a letter, bare, after a separator or in brackets.
var ruleShape = whenUsed(`^(?:([a-z]{1,8})-?)?(\d{1,2}(?:[.\-–]\d{1,2}){0,5})(?:[.\-–]?\s?\(?([a-z])\)?)?$`)

// ruleIn finds rule numbers in running words. Two numbers with a hyphen are more often a
// score than a rule ("down 9-4"), so those count only after a word that announces a rule;
// three parts, a point between them or an association's capitals are a rule on their own.
var ruleIn = whenUsed(
	`\b(?:(?:(?i:rules?|sections?|sec\.?|art(?:icles?)?\.?|cases?))\s+(\d{1,2}(?:[.\-–]\d{1,2}){0,5}(?:[.\-–]?[A-Za-z]|\([A-Za-z]\))?)` +
		`|([A-Z]{1,8}-\d{1,2}(?:[.\-–]\d{1,2}){0,4}[a-z]?)` +
		`|(\d{1,2}[.]\d{1,2}(?:[.\-–]\d{1,2}){0,4}(?:[.\-–]?[A-Za-z]|\([A-Za-z]\))?)` +
		`|(\d{1,2}-\d{1,2}(?:[.\-–]\d{1,2}){1,4}(?:[.\-–]?[A-Za-z]|\([A-Za-z]\))?))(?:$|[^\w-])`)

// rulesIn lists the rule numbers, normalised, that a person's words hold, in their order.
// Words that are nothing but a rule number ("9-4") are one.
func rulesIn(words string) []string {
	if r := NormalRule(words); r != "" {
		return []string{r}
	}
	var out []string
	seen := map[string]bool{}
	if !strings.ContainsAny(words, "0123456789") {
		return nil
	}
	for _, m := range ruleIn().FindAllStringSubmatch(words, -1) {
		if r := NormalRule(m[1] + m[2] + m[3] + m[4]); r != "" && !seen[r] {
			seen[r] = true
			out = append(out, r)
		}
	}
	return out
}

// parents lists the rule and what it is part of, nearest first: 9.5.5, 9.5. A whole
// chapter is left out: everything about the net shares rule 9 or 11, which says nothing.
func parents(rule string) []string {
	var out []string
	for strings.Contains(rule, ".") {
		out = append(out, rule)
		rule = rule[:strings.LastIndexByte(rule, '.')]
	}
	if len(out) == 0 && rule != "" {
		out = append(out, rule) // the asker named a whole chapter
	}
	return out
}

// whenUsed is an expression that is made ready when the first text wants it:
// the start of the program does not wait for it.
func whenUsed(expr string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(expr) })
}
