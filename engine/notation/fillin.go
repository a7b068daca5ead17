package notation

import (
	"fmt"

	"example.org/netpost/engine/play"
)

// FillIn is Fill for any subject. A subject that is no play of the ball takes a
// value's id, its label, its clause, or a yes or no where its question has them.
func FillIn(s play.Subject, asked play.Key, words string) (play.Subject, error) {
	if p, ok := s.(*play.Rally); ok {
		q, err := Fill(p, asked, words)
		if err != nil {
			return nil, err
		}
		return q, nil
	}
	f, ok := s.Fact(asked.Fact)
	if !ok {
		return nil, fmt.Errorf("fact %q: there is no such fact", asked.Fact)
	}
	if err := s.Tell(asked, f.Values[0].Value).Check(); err != nil {
		return nil, err
	}
	labels, said := ChoicesOf(s, asked), plainly(words)
	for i, c := range f.Values {
		for _, w := range []string{string(c.Value), labels[i], ClauseOf(s, asked, c.Value)} {
			if plainly(w) == said {
				return s.Tell(asked, c.Value), nil
			}
		}
	}
	if us := tokens(words); len(us) == 1 && len(f.Values) == 2 {
		for _, v := range []play.Value{play.Yes, play.No} {
			if us[0].form == string(v) && f.Has(v) {
				return s.Tell(asked, v), nil
			}
		}
	}
	return nil, &FillError{Words: words, Why: "it does not answer the question", Ask: QuestionOf(s, asked), Choices: labels}
}
