package bot

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/play"
)

// Bulletin is what an association tells its crews of one week: what happened
// to its notes, what was asked most, and what stays in dispute. It names
// nobody, and counts nothing that fewer than three people asked.
type Bulletin struct {
	Week        string         `json:"week"` // such as 2026-W47
	Association string         `json:"association"`
	First       casebook.Date  `json:"first"` // Monday
	Last        casebook.Date  `json:"last"`  // Sunday
	New         []BulletinNote `json:"new,omitempty"`
	Changed     []BulletinNote `json:"changed,omitempty"`
	Withdrawn   []BulletinNote `json:"withdrawn,omitempty"`
	Expired     []BulletinNote `json:"expired,omitempty"`
	Asked       []Tallied      `json:"asked,omitempty"`
	Disputed    []Tallied      `json:"disputed,omitempty"`
}

// BulletinNote is a note as a bulletin tells of it.
type BulletinNote struct {
	ID       string   `json:"id"`
	Title    string   `json:"title"`
	For      string   `json:"for"`                // the codes and the season
	Rules    string   `json:"rules,omitempty"`    // what it rules; empty where it has no play
	Departs  string   `json:"departs,omitempty"`  // why it rules otherwise than the book
	Replaces []string `json:"replaces,omitempty"` // notes that it is in place of
}

// Tallied is something with the number of questions about it.
type Tallied struct {
	What      string `json:"what"` // in words
	Questions int    `json:"questions"`
}

// leastAskers is how many different people must have asked something before it
// is counted in public: of fewer, one could tell who they were.
const leastAskers = 3

// mostTallied is how many of the things asked most a bulletin lists.
const mostTallied = 10

// NewBulletin builds a week's bulletin from the notes and what is kept of the
// questions. A missing book has no notes. Zone is where the week begins and
// ends.
func NewBulletin(name string, w Week, zone *time.Location, b *casebook.Book, r store.Reader) (Bulletin, error) {
	out := Bulletin{Week: w.String(), Association: name, First: w.First(), Last: w.Last()}
	if b != nil {
		c := b.Between(out.First, out.Last)
		out.New, out.Changed = bulletinNotes(c.New), bulletinNotes(c.Changed)
		out.Withdrawn, out.Expired = bulletinNotes(c.Withdrawn), bulletinNotes(c.Expired)
	}
	if r == nil {
		return out, nil
	}
	var err error
	if out.Asked, err = tallied(r, store.Topic, w.Span(zone)); err != nil {
		return Bulletin{}, err
	}
	out.Disputed, err = tallied(r, store.Disputed, w.Span(zone))
	return out, err
}

func bulletinNotes(notes []*casebook.Note) []BulletinNote {
	var out []BulletinNote
	for _, n := range notes {
		b := BulletinNote{ID: n.ID, Title: n.Title, Departs: n.Departs, Replaces: n.Supersedes,
			For: noteScope(Note{Codes: n.Codes, Season: n.Season})}
		if !n.Ruling.IsZero() {
			b.Rules = ruled(n.Ruling)
		}
		out = append(out, b)
	}
	return out
}

// ruled is a note's ruling in words.
func ruled(r casebook.Ruling) string {
	var parts []string
	switch {
	case r.Fault != "":
		parts = append(parts, "fault: "+strings.ToLower(name(r.Fault)))
	case r.Replay != "":
		parts = append(parts, "replay: "+name(r.Replay))
	case r.Outcome == "depends":
		parts = append(parts, "it depends")
	default:
		parts = append(parts, strings.ReplaceAll(r.Outcome, "-", " "))
	}
	if r.Against != "" {
		parts = append(parts, "against "+r.Against)
	}
	for _, m := range r.Measure {
		parts = append(parts, name(m))
	}
	return strings.Join(parts, ", ")
}

func tallied(r store.Reader, kind store.TagKind, in store.Span) ([]Tallied, error) {
	counts, err := r.Tally(kind, in, leastAskers)
	var out []Tallied
	for _, c := range counts[:min(len(counts), mostTallied)] {
		out = append(out, Tallied{TagWords(kind, c.Value), c.Questions})
	}
	return out, err
}

// TagWords says in words what questions are counted under.
func TagWords(kind store.TagKind, value string) string {
	switch kind {
	case store.Topic:
		return name(value)
	case store.Deciding, store.Disputed:
		fact, _, _ := strings.Cut(value, "@")
		if _, ok := play.FactByID(play.FactID(fact)); ok {
			return strings.ReplaceAll(fact, "-", " ")
		}
		if r, ok := judge.ByID(value); ok {
			return r.Title
		}
	}
	return value // such as a rule's number
}

// Empty reports whether there is nothing to tell. Such a bulletin is not sent.
func (b Bulletin) Empty() bool {
	return len(b.New)+len(b.Changed)+len(b.Withdrawn)+len(b.Expired)+len(b.Asked)+len(b.Disputed) == 0
}

// Title is the bulletin's one line.
func (b Bulletin) Title() string {
	return fmt.Sprintf("%s: bulletin %s, %s to %s", b.Association, b.Week, dayMonth(b.First), longDay(b.Last))
}

func dayMonth(d casebook.Date) string { return d.Time().Format("2 January") }
func longDay(d casebook.Date) string  { return d.Time().Format("2 January 2006") }

// digest tells a bulletin from one with other words.
func (b Bulletin) digest() string {
	sum := sha256.Sum256(b.data())
	return fmt.Sprintf("%x", sum[:4])
}

// data is the bulletin as it is kept.
func (b Bulletin) data() []byte {
	data, err := json.Marshal(b)
	if err != nil {
		panic("bot: a bulletin is plain values: " + err.Error())
	}
	return data
}

// section is one part of a bulletin.
type section struct {
	title string
	notes []BulletinNote
	lines []string // of what is counted
}

// sections are the parts of a bulletin that are not empty, in their order.
func (b Bulletin) sections() []section {
	count := func(all []Tallied) []string {
		var out []string
		for _, t := range all {
			out = append(out, t.What+": "+many(t.Questions, "question", "questions"))
		}
		return out
	}
	var out []section
	for _, s := range []section{
		{"New notes", b.New, nil},
		{"Changed notes", b.Changed, nil},
		{"Withdrawn notes", b.Withdrawn, nil},
		{"Notes that have run out", b.Expired, nil},
		{"Asked most", nil, count(b.Asked)},
		{"Still in dispute", nil, count(b.Disputed)},
	} {
		if len(s.notes)+len(s.lines) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// lines are what a note is told in below its title.
func (n BulletinNote) lines() []string {
	out := []string{"For " + n.For}
	if n.Rules != "" {
		out = append(out, "Rules: "+n.Rules)
	}
	if n.Departs != "" {
		out = append(out, "Departs from the book: "+n.Departs)
	}
	if len(n.Replaces) > 0 {
		out = append(out, "In place of "+strings.Join(n.Replaces, ", "))
	}
	return out
}

const (
	countedFrom = "Counted only where three people or more asked. No asker is named."
	noPreview   = "Nothing happened in this week that the bulletin would tell, so there is none to post."
)

// Doc lays the bulletin out as a message.
func (b Bulletin) Doc() Doc {
	d := Doc{Blocks: []Block{Heading{b.Title(), Plain}}}
	for _, s := range b.sections() {
		d.Blocks = append(d.Blocks, Para{Text{{Text: s.title, Style: Strong}}})
		var l List
		for _, n := range s.notes {
			l.Items = append(l.Items, Text{{n.ID + " " + n.Title, Strong}, {Text: ". " + strings.Join(n.lines(), ". ")}})
		}
		for _, line := range s.lines {
			l.Items = append(l.Items, Line(line))
		}
		d.Blocks = append(d.Blocks, l)
	}
	if len(b.Asked)+len(b.Disputed) > 0 {
		d.Blocks = append(d.Blocks, Aside{Line(countedFrom)})
	}
	return d
}

// message is the bulletin with the way to its pages.
func (b Bulletin) message() Message {
	return Message{Doc: b.Doc(), More: Token{"week", []string{b.Week}}.String()}
}
