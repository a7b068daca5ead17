package index

import (
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// Question is what a person asks, before it is read and ruled on.
type Question struct {
	Words  string
	Code   code.Code      // empty: one named in the words, else every code
	Season code.Season    // zero: one named in the words, else now
	Given  []engine.Given // facts told beside the words; they win over the words
	// Overlays are the association's adoptions, laid over the code's book.
	Overlays []code.Overlay
}

// Query reads a question as the engine would, has it rule on the play, and gives what to
// search for. What can't be read, or not be ruled on, leaves a query by words.
func (q Question) Query() Query {
	out := Query{Words: q.Words, Code: q.Code, Season: q.Season}
	r, err := notation.Read(q.Words)
	if err != nil {
		return out
	}
	for _, g := range q.Given {
		if g.Key.Fact == answer.CodeFact {
			out.Code = code.Code(g.Value)
		}
	}
	switch s := q.told(r.Subject()).(type) {
	case *play.Rally:
		r.Rally = s
	case play.Spoken:
		r.Other = s
	}
	out.Reading = r
	if out.Code == "" {
		out.Code = r.Code
	}
	if out.Season == 0 {
		out.Season = r.Season
	}
	codes := []code.Code{out.Code}
	if out.Code == "" {
		codes = code.All()
	}
	out.Decisions = decide(r.Subject(), codes, out.Season, func(c code.Code, s code.Season) (*code.Book, error) {
		b, err := code.Open(c, s)
		if err != nil || len(q.Overlays) == 0 {
			return b, err
		}
		return b.With(q.Overlays...)
	})
	return out
}

// told is a subject with the facts given that it can have.
func (q Question) told(s play.Subject) play.Subject {
	if s == nil {
		return nil
	}
	for _, g := range q.Given {
		if next := s.Tell(g.Key, g.Value); next.Check() == nil {
			s = next
		}
	}
	return s
}
