package answer

import (
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// MaxQuestion is the longest question that is read, in bytes.
const MaxQuestion = notation.MaxText

// CodeFact is the name under which the code itself is asked and given, where
// the codes rule a play differently and none was named.
const CodeFact = "code"

// Options say under which rules a question is asked.
type Options struct {
	Code       code.Code   // the asker's own choice; empty: none
	Configured code.Code   // what the crew works under; empty: none
	Season     code.Season // zero: one named in the words, else the newest held
	// AllCodes answers under every code, also where one is chosen: Codes then
	// holds the chosen one too.
	AllCodes bool
	// Given are facts told beside the words; they win over the words.
	Given []engine.Given
	// Overlays are the association's adoptions.
	Overlays []code.Overlay
}

// ParseGiven reads FACT=VALUE or FACT@EVENT=VALUE. Whether the play has such
// an event is known only when the words are read.
func ParseGiven(s string) (engine.Given, error) {
	where := fmt.Sprintf("given %q", s)
	name, value, ok := strings.Cut(s, "=")
	if !ok || value == "" {
		return engine.Given{}, &Problem{where, "it has no value", "write it like row@p1=front"}
	}
	if name == CodeFact {
		if _, err := code.Parse(value); err != nil {
			return engine.Given{}, &Problem{where, err.Error(), ""}
		}
		return engine.Given{Key: play.Key{Fact: CodeFact}, Value: play.Value(value)}, nil
	}
	k, f, err := parseKey(name)
	if err != nil {
		return engine.Given{}, &Problem{where, err.Error(), ""}
	}
	if !f.Has(play.Value(value)) {
		var ids []string
		for _, c := range f.Values {
			ids = append(ids, string(c.Value))
		}
		return engine.Given{}, &Problem{where, fmt.Sprintf("%s is never %q", k.Fact, value), "use one of " + strings.Join(ids, ", ")}
	}
	return engine.Given{Key: k, Value: play.Value(value)}, nil
}

// check looks at the question before anything is read.
func check(text string) *Problem {
	switch {
	case strings.TrimSpace(text) == "":
		return &Problem{"question", "it is empty", "tell a play, for example: ball in plane, both front row, fourth contact?"}
	case len(text) > MaxQuestion:
		return &Problem{"question", fmt.Sprintf("it is %d bytes long, more than the %d that are read", len(text), MaxQuestion),
			"tell one play in a few sentences"}
	case !utf8.ValidString(text):
		at := 0
		for at < len(text) {
			r, n := utf8.DecodeRuneInString(text[at:])
			if r == utf8.RuneError && n == 1 {
				break
			}
			at += n
		}
		return &Problem{"question", fmt.Sprintf("byte %d is not UTF-8 text", at+1), "send it as UTF-8"}
	}
	return nil
}

// tell puts the given facts into the play.
func tell(s engine.Subject, given []engine.Given) (engine.Subject, *Problem) {
	for _, g := range given {
		if g.Key.Fact == CodeFact {
			continue
		}
		t := s.Tell(g.Key, g.Value)
		if err := t.Check(); err != nil {
			return nil, &Problem{"given " + g.Key.String() + "=" + string(g.Value), err.Error(), "the play has " + things(s)}
		}
		s = t
	}
	return s, nil
}

// parseKey reads FACT or FACT@OF, with a fact of any kind of subject.
func parseKey(s string) (play.Key, play.Fact, error) {
	fact, of, _ := strings.Cut(s, "@")
	f, ok := judge.FactByID(play.FactID(fact))
	if ok {
		return play.Key{Fact: f.ID, Of: of}, f, nil
	}
	k, err := play.ParseKey(s) // its error lists the facts of a rally
	return k, f, err
}

// things lists what the facts of a subject can be about.
func things(s engine.Subject) string {
	var ids []string
	p, ok := s.(*play.Rally)
	if !ok {
		if ids = s.(play.Spoken).Things(); ids == nil {
			return "nothing that has facts of its own"
		}
		return strings.Join(ids, ", ")
	}
	for _, pl := range p.Players {
		ids = append(ids, pl.ID)
	}
	for _, e := range p.Events {
		ids = append(ids, e.ID)
	}
	for i := range max(len(p.Events)-1, 0) {
		ids = append(ids, p.Pair(i))
	}
	if ids == nil {
		return "no players and no events"
	}
	return strings.Join(ids, ", ")
}

// shelf keeps opened books, which never change.
var shelf sync.Map // of place to *code.Book

type place struct {
	code   code.Code
	season code.Season
}

// open gives a code's book with the association's adoptions.
func open(c code.Code, s code.Season, overlays []code.Overlay) (*code.Book, error) {
	b, ok := shelf.Load(place{c, s})
	if !ok {
		book, err := code.Open(c, s)
		if err != nil {
			return nil, err
		}
		b, _ = shelf.LoadOrStore(place{c, s}, book)
	}
	if len(overlays) == 0 {
		return b.(*code.Book), nil
	}
	return b.(*code.Book).With(overlays...)
}
