package index

import (
	"cmp"
	"encoding/json"
	"slices"
	"strings"

	"example.org/netpost/casebook"
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// A document is one note as the index sees it. The tags are the fields of the mapping.
type document struct {
	Head     string   `json:"head"`
	Text     string   `json:"text"`
	Concepts []string `json:"concepts"`
	Sign     []string `json:"sign"`
	Rules    []string `json:"rules"`
	Codes    []string `json:"codes"`
	Season   float64  `json:"season"`
	Status   string   `json:"status"`
	Signs    string   `json:"signs"`
	Record   string   `json:"record"`
}

// A record is what a hit is made of. It is stored whole, so that a reader of an index on
// disk needs neither the notes nor the engine.
type record struct {
	ID      string          `json:"id"`
	Title   string          `json:"title"`
	Path    string          `json:"path"`
	Codes   []code.Code     `json:"codes"`
	Season  code.Season     `json:"season"`
	Status  casebook.Status `json:"status"`
	Issued  casebook.Date   `json:"issued"`
	Expires casebook.Date   `json:"expires"`
	Rules   []string        `json:"rules"` // as written
	Topics  []string        `json:"topics"`
	Play    string          `json:"play"`
	Ruling  casebook.Ruling `json:"ruling"`
	Departs string          `json:"departs"`
	// Successors are the ids of the notes that replace it, nearest first.
	Successors []string `json:"successors"`
	Text       string   `json:"text"` // of the body, cut to longestStored
	Sign       []sign   `json:"sign"`
	Concepts   []string `json:"concepts"`
}

// longestStored is how much of a body's text is kept for excerpts, in bytes.
const longestStored = 8 << 10

// maker turns notes into documents.
type maker struct {
	lexicon *lexicon
	book    *casebook.Book
}

// document reads a note's own play, has the engine rule on it, and gathers what the note
// can be found by. A play that is not read leaves the note to be found by its words.
func (m maker) document(n *casebook.Note, successors []string) (document, error) {
	text := strings.Join(strings.Fields(n.Plain()), " ")
	head := strings.Join([]string{n.Title, strings.Join(n.Topics, ", "), n.Play}, ". ")
	rec := record{
		ID: n.ID, Title: n.Title, Path: n.Path, Codes: n.Codes, Season: n.Season, Status: n.Status,
		Issued: n.Issued, Expires: n.Expires, Rules: n.Rules, Topics: n.Topics, Play: n.Play,
		Ruling: n.Ruling, Departs: n.Departs, Successors: successors,
		Text:     cut(text, longestStored),
		Sign:     m.signature(n),
		Concepts: m.lexicon.concepts(head + ". " + text),
	}
	stored, err := json.Marshal(rec)
	if err != nil {
		return document{}, err
	}
	d := document{
		Head: head, Text: text, Concepts: rec.Concepts, Season: float64(n.Season),
		Status: n.Status.String(), Record: string(stored),
	}
	for _, s := range rec.Sign {
		d.Sign = append(d.Sign, string(s))
	}
	d.Signs = strings.Join(d.Sign, " ")
	for _, r := range n.Rules {
		if r = NormalRule(r); r != "" {
			d.Rules = append(d.Rules, r)
		}
	}
	for _, c := range n.Codes {
		d.Codes = append(d.Codes, string(c))
	}
	return d, nil
}

// signature is the signature of a note's play, of what the engine rules on it under
// each of its codes, and of what the note itself rules: a departing note is found by the
// book's ruling and by its own. A note on which the engine breaks is found by its words and
// its own ruling: one note never takes the index down.
func (m maker) signature(n *casebook.Note) (out []sign) {
	own := func(class, value string) {
		if value != "" {
			out = append(out, sign(class+":"+value))
		}
	}
	switch r := n.Ruling; {
	case r.Fault != "":
		own(signFault, r.Fault)
		own(signMay, r.Fault)
	case r.Replay != "":
		own(signOutcome, r.Outcome+"-"+r.Replay)
	default:
		own(signOutcome, r.Outcome)
	}
	for _, measure := range n.Ruling.Measure {
		own(signMeasure, measure)
	}
	out = append(out, m.played(n)...)
	slices.Sort(out)
	return slices.Compact(out)
}

// played is the signature of a note's play and of the book's ruling on it. A note without
// a play has the area that its title and topics are about.
func (m maker) played(n *casebook.Note) (out []sign) {
	words := n.Play
	if words == "" {
		words = n.Title + ": " + strings.Join(n.Topics, ", ")
	}
	defer func() {
		if recover() != nil {
			out = nil
		}
	}()
	r, err := notation.Read(words)
	if err != nil {
		return nil
	}
	if n.Play == "" {
		r = notation.Reading{Topic: r.Topic}
	}
	return signature(r, decide(r.Subject(), n.Codes, n.Season, m.book.Open)...)
}

// decide rules on a play under each code, leaving out those whose tables do not hold the
// season or find the play too open.
func decide(s play.Subject, codes []code.Code, season code.Season, open func(code.Code, code.Season) (*code.Book, error)) []engine.Decision {
	if s == nil {
		return nil
	}
	var out []engine.Decision
	for _, c := range codes {
		book, err := open(c, season)
		if err != nil {
			continue
		}
		d, err := judge.Decide(s, book)
		if err != nil {
			continue
		}
		out = append(out, d)
	}
	return out
}

// successors gives, by note id, the notes that replace it, nearest first: those in force
// and those that were until they were replaced in turn. A draft replaces nothing yet.
// A circle, which the casebook's own check reports, ends at its first repeated note.
func successors(notes []*casebook.Note) map[string][]string {
	by := map[string][]*casebook.Note{}
	for _, n := range notes {
		for _, old := range n.Supersedes {
			by[old] = append(by[old], n)
		}
	}
	out := map[string][]string{}
	for _, n := range notes {
		seen := map[string]bool{n.ID: true}
		for level := by[n.ID]; len(level) > 0; {
			slices.SortFunc(level, func(a, b *casebook.Note) int {
				return cmp.Or(a.Issued.Compare(b.Issued), strings.Compare(a.ID, b.ID))
			})
			var next []*casebook.Note
			for _, s := range level {
				if seen[s.ID] {
					continue
				}
				seen[s.ID] = true
				if s.Status == casebook.Published || s.Status == casebook.Superseded {
					out[n.ID] = append(out[n.ID], s.ID)
				}
				next = append(next, by[s.ID]...)
			}
			level = next
		}
	}
	return out
}

// cut shortens a text to at most n bytes, at a word.
func cut(s string, n int) string {
	if len(s) <= n {
		return s
	}
	s = strings.ToValidUTF8(s[:n], "")
	if i := strings.LastIndexAny(s, " \n"); i > 0 {
		s = s[:i]
	}
	return s
}
