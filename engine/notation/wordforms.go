package notation

import (
	"slices"
	"strings"
)

// wordForms are the words that a token can be taken for, made once for a text.
type wordForms struct {
	all   []string
	roots int // the first of them: the word itself, and what its ending leaves
}

// formsOf are the words that each token can be taken for.
func formsOf(ts []token) []wordForms {
	out := make([]wordForms, len(ts))
	room := make([]string, 0, 5*len(ts))
	for i := range ts {
		t := &ts[i]
		if t.mark != 0 {
			continue
		}
		from := len(room)
		room = roots(room, t.form)
		n := len(room) - from
		put := func(w string) {
			if w != "" && !slices.Contains(room[from:], w) {
				room = append(room, w)
			}
		}
		put(t.base)
		for _, end := range [...]string{"s", "es", "ed", "ing"} {
			if b, ok := strings.CutSuffix(t.form, end); ok {
				put(b)
			}
		}
		switch t.form {
		case "is", "are", "was", "were", "been", "being":
			put("be")
		}
		put(deadForms[t.form])
		if timeOut(t) {
			put("timeout")
		}
		if t.from != "" {
			for _, w := range roots(nil, t.from) {
				put(w)
			}
		}
		if raw := strings.ToLower(t.raw); raw != t.form {
			put(raw)
			put(strings.TrimSuffix(raw, "'s"))
		}
		out[i] = wordForms{room[from:len(room):len(room)], n}
	}
	return out
}

// wordsOf are the words that a token can be taken for by any reader.
func (s *scene) wordsOf(i int) []string { return s.wordForms()[i].all }

// rootsOf are the words that a token's form can be of.
func (s *scene) rootsOf(i int) []string {
	f := s.wordForms()[i]
	return f.all[:f.roots:f.roots]
}

func (s *scene) wordForms() []wordForms {
	if s.forms == nil {
		s.forms = formsOf(s.toks)
	}
	return s.forms
}
