package notation

import (
	"slices"
	"strings"
	"sync"

	"example.org/netpost/engine/play"
)

// answerWords are the words that an answer to a question can have, sorted.
var answerWords = sync.OnceValue(func() []string {
	seen := map[string]bool{}
	for _, s := range sayings() {
		for _, u := range s.units {
			seen[u] = true
		}
	}
	for _, r := range play.Roles() {
		seen[string(r)] = true
	}
	for _, w := range slices.Concat(weightless, ordinals) {
		seen[w] = true
	}
	var out []string
	for w := range seen {
		if len(w) >= 4 && !strings.ContainsAny(w, "{}") {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return out
})

// Respell mends the spelling of an answer: each word that nobody knows is taken
// for the only near word that an answer can have, and said. A word that has
// two near ones stays, and so does every word of plain English, so that none
// is taken for another of a different meaning.
func Respell(words string) (string, []Correction) {
	var out []Correction
	var b strings.Builder
	at := 0
	for _, w := range split(words) {
		s := strings.ToLower(w.raw)
		if w.mark != 0 || len(s) < 5 || numeric(s) || lex().words[s] || slices.Contains(answerWords(), s) {
			continue
		}
		if _, ok := stem(s); ok {
			continue
		}
		to := ""
		for _, v := range answerWords() {
			if v[0] != s[0] || len(v) < 5 || distance(s, v, 1) > 1 {
				continue
			}
			if to != "" {
				to = ""
				break
			}
			to = v
		}
		if to == "" || slices.ContainsFunc(vocabulary(), func(v string) bool {
			return v != to && v[0] == s[0] && len(v) < 20 && distance(s, v, 1) < 2 && !strings.HasPrefix(v, to) && !strings.HasPrefix(to, v)
		}) {
			continue // "fromt" could be from
		}
		out = append(out, Correction{w.raw, to})
		b.WriteString(words[at:w.start] + to)
		at = w.end
	}
	if out == nil {
		return words, nil
	}
	return b.String() + words[at:], out
}
