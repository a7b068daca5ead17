package lookup

import (
	"strings"

	"example.org/netpost/engine/play"
)

// ReadPrint reads what Sentences printed, joined by blanks, back to the same
// query; false for any other text.
func ReadPrint(text string) (*Query, bool) {
	question, rest, ok := strings.Cut(text, "?")
	if !ok {
		return nil, false
	}
	q, ok := asked(question + "?")
	if !ok {
		return nil, false
	}
	rest = strings.TrimSpace(rest)
	for _, f := range facts {
		for _, c := range f.Values {
			if r, ok := strings.CutPrefix(rest, upper(c.Words)+"."); ok {
				rest = strings.TrimSpace(r)
				q = q.Tell(play.Key{Fact: f.ID}, c.Value).(*Query)
			}
		}
	}
	return q, rest == ""
}

func asked(question string) (*Query, bool) {
	for _, e := range entries {
		before, after, takes := strings.Cut(e.Ask, "%s")
		if !takes {
			if question == e.Ask {
				return &Query{Entry: e.ID}, true
			}
			continue
		}
		of, ok := strings.CutPrefix(question, before)
		if !ok || !strings.HasSuffix(of, after) {
			continue
		}
		if q := (&Query{Entry: e.ID, Of: ofWords(strings.TrimSuffix(of, after))}); q.Check() == nil {
			return q, true
		}
	}
	return nil, false
}

// ofWords is what the words of an entry's question name.
func ofWords(s string) string {
	for _, t := range things {
		if t.words == s {
			return t.id
		}
	}
	for _, of := range []string{"assistant", "captain", "head-coach", "player", "who"} {
		if words(of) == s {
			return of
		}
	}
	return strings.ReplaceAll(s, " ", "-")
}
