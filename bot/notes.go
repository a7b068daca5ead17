package bot

import (
	"context"
	"fmt"
	"strings"

	"example.org/netpost/casebook"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

// Searcher finds the association's case notes. The conversation is handed one and knows
// nothing of how it searches.
type Searcher interface {
	// Notes gives the notes that a question is about, best first. Nothing found is no
	// error.
	Notes(context.Context, Question) ([]Note, error)
}

// Question is what notes are wanted on.
type Question struct {
	Words  string
	Given  []engine.Given // facts told beside the words
	Code   code.Code      // empty: any
	Season code.Season    // zero: now
	Limit  int            // zero: as many as fit under a ruling
	All    bool           // drafts, superseded and withdrawn notes too
}

// Note is one case note found.
type Note struct {
	ID     string
	Title  string
	URL    string // of its page; empty where the notes have none
	Codes  []code.Code
	Season code.Season
	Status casebook.Status
	Ruling casebook.Ruling
	// Departs says why it rules otherwise than the book; empty when it does not.
	Departs string
	// Covers: the play asked about is a case of the note's own play, so what the note
	// rules goes for it.
	Covers bool
	// Example: the note is of the invented casebook that comes with the program. It
	// shows what a note is like and decides nothing.
	Example bool
	Why     []string // why it was chosen, the strongest reason first
	Snippet Text     // the part that answers the words best
}

// WithNotes is an answer with the notes that were found for it. A note of the
// association that covers the play and departs from the book is set beside the ruling; the
// ruling itself is always the book's, and an example never counts.
func WithNotes(a answer.Answer, notes []Note) answer.Answer {
	a.Notes = nil
	a.Association = nil
	for _, n := range notes {
		a.Notes = append(a.Notes, answer.Note{ID: n.ID, Title: n.Title, URL: answer.Maybe(n.URL), Why: n.Why, Example: n.Example})
		if a.Association == nil && n.Covers && n.Departs != "" && !n.Example {
			a.Association = &answer.Association{
				Note: n.ID, Outcome: n.Ruling.Outcome, Fault: answer.Maybe(n.Ruling.Fault), Reason: n.Departs,
			}
		}
	}
	return a
}

// Notes lays out what a search found.
func Notes(notes []Note) Doc {
	if len(notes) == 0 {
		return Doc{Blocks: []Block{Para{Text{{Text: noNote}}}}}
	}
	var d Doc
	if notes[0].Example {
		d.Blocks = append(d.Blocks, Aside{Text{{Text: exampleNotes}}})
	}
	for _, n := range notes {
		d.Blocks = append(d.Blocks, Heading{Text: n.ID + " " + n.Title})
		if len(n.Snippet) > 0 {
			d.Blocks = append(d.Blocks, Quote{n.Snippet})
		}
		var f Fields
		line := func(label, s string) {
			if s != "" {
				f.Items = append(f.Items, Field{label, []Text{{{Text: s}}}})
			}
		}
		line("Rules", n.Ruling.String())
		line("Departs", n.Departs)
		line("For", noteScope(n))
		line("Found by", strings.Join(n.Why, "; "))
		d.Blocks = append(d.Blocks, f)
		if n.URL != "" {
			d.Blocks = append(d.Blocks, Link{"Read the note", n.URL})
		}
	}
	return d
}

const noNote = "No note was found. Try other words, a rule number, or the play itself."

// exampleNotes labels notes of the casebook that comes with the program.
const exampleNotes = "Examples from the invented casebook that comes with the program; they decide nothing."

// noteLink is a note under a ruling: its link, and why it is there.
func noteLink(n answer.Note) []Block {
	label := n.ID + " " + n.Title
	if n.Example {
		label += " (example)"
	}
	out := []Block{Link{label, string(n.URL)}}
	if len(n.Why) > 0 {
		out = append(out, Aside{Text{{Text: strings.Join(n.Why, "; ")}}})
	}
	return out
}

// departure says what the association rules instead of the book. It stands above the
// book's ruling, for the crew works under the association's.
func departure(a answer.Association) Block {
	s := a.Outcome
	if a.Fault != "" {
		s += ": " + name(string(a.Fault))
	}
	return Para{Text{
		{Text: "The association's note " + a.Note + " rules " + s + ".", Style: Strong},
		{Text: " " + strings.TrimRight(a.Reason, ".") + ". The book's own ruling:"},
	}}
}

// noteScope says for whom a note is, and where it stands when it is not in force.
func noteScope(n Note) string {
	var codes []string
	for _, c := range n.Codes {
		codes = append(codes, string(c))
	}
	s := fmt.Sprintf("%s, from %s", strings.Join(codes, ", "), n.Season)
	if n.Status != casebook.Published && n.Status != casebook.NoStatus {
		s += ", " + n.Status.String()
	}
	return s
}
