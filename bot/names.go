package bot

import (
	"regexp"
	"slices"
	"strings"
	"unicode"
)

// titles before a name, in lower case. Sorted.
var titles = []string{"coach", "dr", "miss", "mr", "mrs", "ms", "ref", "referee", "umpire"}

// initials in capitals are no names: LF, R1, MB.
const initials = 4

// Names lists, in order and each once, what in a question looks like the name
// of a person. Unread are the words that mean nothing to the rules; a word that
// does is no name. It would rather take a team's name for a person's than miss
// one.
func Names(text string, unread []string) []string {
	strange := map[string]bool{}
	for _, u := range unread {
		for w := range strings.FieldsSeq(strings.ToLower(u)) {
			strange[bare(w)] = true
		}
	}
	words := strings.Fields(strings.ToValidUTF8(text, "?"))
	if shouted(words) {
		return nil
	}
	var out, run []string
	end := func() {
		if name := strings.Join(run, " "); name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
		run = nil
	}
	begin := true // of a sentence
	titled := false
	for _, w := range words {
		b := bare(w)
		odd := strange[strings.ToLower(b)]
		isTitle := slices.Contains(titles, strings.ToLower(b))
		switch {
		case isTitle:
			end()
		case strings.HasPrefix(w, "@") && len(b) > 0:
			run = append(run, "@"+b)
		case capital(b) && odd && (!begin || titled || len(run) > 0 || possessive(w)):
			run = append(run, b)
		case capital(b) && odd && begin && opens(words, b, strange):
			run = append(run, b)
		default:
			end()
		}
		titled = isTitle
		begin = strings.ContainsAny(w[len(w)-1:], ".!?:")
		if begin && !titled || strings.ContainsAny(w[len(w)-1:], ",;") {
			end()
		}
	}
	end()
	return out
}

// opens reports whether the word that begins a sentence is a name: another
// strange word with a capital follows it, or it comes again later.
func opens(words []string, b string, strange map[string]bool) bool {
	seen := 0
	for i, w := range words {
		if bare(w) != b {
			continue
		}
		if seen++; seen > 1 {
			return true
		}
		if i+1 < len(words) {
			next := bare(words[i+1])
			if capital(next) && strange[strings.ToLower(next)] {
				return true
			}
		}
	}
	return false
}

// bare is a word without what stands around it and without a possessive.
func bare(w string) string {
	w = strings.TrimFunc(w, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	for _, s := range []string{"'s", "’s"} {
		w = strings.TrimSuffix(w, s)
	}
	return w
}

func possessive(w string) bool { return strings.Contains(w, "'s") || strings.Contains(w, "’s") }

// capital reports whether a word is written like a name: one capital and then
// small letters somewhere.
func capital(w string) bool {
	r := []rune(w)
	if len(r) < 2 || !unicode.IsUpper(r[0]) {
		return false
	}
	return len(r) > initials || slices.ContainsFunc(r[1:], unicode.IsLower)
}

// shouted reports whether a text is all in capitals, or has one on every word:
// then they say nothing.
func shouted(words []string) bool {
	big, letters := 0, 0
	for _, w := range words {
		r := []rune(bare(w))
		if len(r) == 0 || !unicode.IsLetter(r[0]) {
			continue
		}
		letters++
		if unicode.IsUpper(r[0]) {
			big++
		}
	}
	return letters > 4 && big*4 > letters*3
}

// WithoutNames is a text with "someone" in the place of each name.
func WithoutNames(text string, names []string) string {
	text = strings.ToValidUTF8(text, "?")
	sorted := slices.Clone(names)
	slices.SortStableFunc(sorted, func(a, b string) int { return len(b) - len(a) })
	for _, n := range sorted {
		text = replaceWord(text, n, "someone")
	}
	return text
}

// replaceWord replaces a name where it stands as whole words, however they are
// spaced.
func replaceWord(text, old, with string) string {
	var parts []string
	for w := range strings.FieldsSeq(old) {
		parts = append(parts, regexp.QuoteMeta(w))
	}
	var b strings.Builder
	at := 0
	for _, m := range regexp.MustCompile(strings.Join(parts, `\s+`)).FindAllStringIndex(text, -1) {
		if letterBefore(text[:m[0]]) || letterAfter(text[m[1]:]) {
			continue
		}
		b.WriteString(text[at:m[0]])
		b.WriteString(with)
		at = m[1]
	}
	b.WriteString(text[at:])
	return b.String()
}

func letterBefore(s string) bool {
	r := []rune(s)
	return len(r) > 0 && unicode.IsLetter(r[len(r)-1])
}

func letterAfter(s string) bool {
	for _, r := range s {
		return unicode.IsLetter(r)
	}
	return false
}
