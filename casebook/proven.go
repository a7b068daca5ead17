package casebook

import (
	"strings"
	"sync"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
)

// Prover tells what the engine makes of the plays of a book's notes. It is
// safe for use by many goroutines.
type Prover struct{ c *checker }

// NewProver makes a prover for a book.
func NewProver(b *Book) *Prover { return &Prover{newChecker(b, CheckOptions{})} }

// Proof is what the engine makes of one note's play. The zero value is of a
// note that has none, or that is kept for the record only.
type Proof struct {
	Read    []string // the play as it was read; empty: it was not read whole
	Rulings []Proven // under each of the note's codes, in their order
}

// Proven is the engine's ruling on a note's play under one code.
type Proven struct {
	Code    code.Code
	Edition string   // such as scholastic 2026-27 has it; empty: it is not held
	Ruling  Ruling   // the zero value where the book does not settle it
	Rules   []string // the rule numbers that it rests on, the leading one first, each once
	Agrees  bool     // it rules as the note does
}

// Prove decides a note's play.
func (p *Prover) Prove(n *Note) Proof {
	proved := p.c.prove(n)
	if !proved.whole {
		return Proof{}
	}
	out := Proof{Read: notation.SentencesOf(proved.reading.Subject())}
	for i, cd := range n.Codes {
		v := proved.verdicts[i]
		r := Proven{Code: cd, Agrees: v.agrees}
		if v.err == nil {
			r.Edition = v.decision.Book.Edition()
		}
		if v.err == nil && !v.decision.Settled() {
			r.Ruling.Outcome = outcomes[len(outcomes)-1]
		} else if v.err == nil {
			got := v.decision.Ruling
			r.Ruling = Ruling{Outcome: string(got.Outcome), Fault: got.Fault, Replay: got.Replay, Measure: got.Measure, Answer: got.Answer}
			if names := called(proved.reading.Subject(), got.Against); len(names) > 0 {
				r.Ruling.Against = names[0]
			}
			seen := map[string]bool{"": true}
			for _, c := range got.Cites {
				if number := v.decision.Book.Cell(c.Param).Rule; !seen[number] {
					seen[number] = true
					r.Rules = append(r.Rules, number)
				}
			}
		}
		out.Rulings = append(out.Rulings, r)
	}
	return out
}

// Words is a ruling as a crew would say it; empty for no ruling.
func (r Ruling) Words() string {
	s := ""
	switch r.Outcome {
	case "":
	case "play-on":
		s = "play on, no fault"
	case "fault":
		s = "fault: " + titleOf(r.Fault)
	case "replay":
		s = "replay"
		if r.Replay != "" {
			s += ": " + titleOf(r.Replay)
		}
	case "re-serve":
		s = "serve again"
	case "depends":
		s = "it depends on what is left open"
	default:
		s = titleOf(r.Outcome)
	}
	against := ""
	if r.Against != "" {
		against = ", against " + r.Against
	}
	if s != "" {
		s, against = s+against, ""
	}
	for _, m := range r.Measure {
		if s != "" {
			s += "; "
		}
		s += titleOf(m)
	}
	if s != "" { // without an outcome it is the measures that are against somebody
		s += against
	}
	if r.Answer != "" {
		if s != "" {
			s += "; "
		}
		s += r.Answer
	}
	return s
}

// titleOf is a fault, replay or measure in words.
func titleOf(id string) string {
	if r, ok := judge.ByID(id); ok {
		return r.Title
	}
	return strings.ReplaceAll(id, "-", " ")
}

// newChecker makes a run of the checks that has looked at no note yet.
func newChecker(b *Book, o CheckOptions) *checker {
	c := &checker{book: b, options: o, books: map[codeSeason]opened{}, known: knownRules()}
	c.linked = sync.OnceValue(c.links)
	return c
}
