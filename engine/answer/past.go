package answer

import (
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
)

// Cells are the cells of the codes' tables that a ruling read: by code, the
// value of each parameter.
type Cells map[code.Code]map[code.Param]string

// Past is what is kept of an answer, to compare a later one with: what it came
// to, and what that rested on. Its JSON is that of the answer with the cells
// beside it.
type Past struct {
	Code    Maybe    `json:"code"`
	Edition Maybe    `json:"edition"`
	Kind    Kind     `json:"kind"`
	Read    []string `json:"read"`
	Verdict
	Answer      Maybe        `json:"answer"`
	Branches    []Branch     `json:"branches"`
	Because     []string     `json:"because"`
	Rules       []Rule       `json:"rules"`
	Association *Association `json:"association,omitempty"`
	// Cells is nil in what was kept before cells were.
	Cells Cells `json:"cells"`
}

// Past is the answer as it is compared later.
func (a Answer) Past() Past {
	return Past{Code: a.Code, Edition: a.Edition, Kind: a.Kind, Read: a.Read, Verdict: a.Verdict, Answer: a.Answer, Branches: a.Branches,
		Because: a.Because, Rules: a.Rules, Association: a.Association, Cells: a.Cells}
}

// Keep is the answer as JSON with its cells, for ParsePast. It is the same for
// the same answer.
func Keep(a Answer) ([]byte, error) {
	b, err := json.Marshal(a)
	if err != nil || a.Cells == nil {
		return b, err
	}
	cells, err := json.Marshal(a.Cells) // keys of maps are sorted
	if err != nil {
		return nil, err
	}
	b = append(b[:len(b)-1], `,"cells":`...)
	return append(append(b, cells...), '}'), nil
}

// ParsePast reads an answer that was kept.
func ParsePast(data []byte) (Past, error) {
	var p Past
	if err := json.Unmarshal(data, &p); err != nil {
		return Past{}, fmt.Errorf("an answer as it was kept can't be read: %w", err)
	}
	return p, nil
}

// Key is what the answer tells a crew to do: the same for answers that rule
// alike, in the book's way and the association's, on every way that the play
// can be. It leaves out why.
func (p Past) Key() string {
	s := p.book()
	if a := p.Association; a != nil {
		s += "\nassociation " + a.Outcome + "|" + string(a.Fault)
	}
	return s
}

// book is the key without what the association rules instead.
func (p Past) book() string {
	if p.Kind == None {
		return string(None)
	}
	s := p.Verdict.key(p.Answer)
	var ways []string
	for _, b := range p.Branches {
		var when []string
		for _, g := range b.When {
			when = append(when, g.Fact+"@"+g.Of+"="+g.Is)
		}
		ways = append(ways, strings.Join(when, ",")+": "+b.Verdict.key(b.Answer))
	}
	slices.Sort(ways)
	return string(p.Kind) + "\n" + s + "\n" + strings.Join(ways, "\n")
}

// key is one decision. The side is its letter: what else it is called is no
// part of the decision. Of a clause only what it opens with counts, the number
// or yes or no; the rest explains.
func (v Verdict) key(a Maybe) string {
	against := ""
	if len(v.Against) > 0 {
		against = v.Against[0]
	}
	also, measure := slices.Clone(v.Also), slices.Clone(v.Measure)
	slices.Sort(also)
	slices.Sort(measure)
	return strings.Join([]string{string(v.Outcome), string(v.Fault), strings.Join(also, "+"), string(v.Replay), strings.Join(measure, "+"), against, opening(string(a))}, "|")
}

// opening is what a clause opens with: yes or no, or the number with its unit.
func opening(clause string) string {
	words := strings.Fields(strings.ToLower(clause))
	for i := range words {
		words[i] = strings.Trim(words[i], ",.;:")
	}
	switch {
	case len(words) == 0:
		return ""
	case words[0] == "yes", words[0] == "no":
		return words[0]
	case strings.ContainsAny(words[0], "0123456789"):
		return strings.Join(words[:min(2, len(words))], " ")
	}
	return strings.Join(words, " ")
}

// CauseKind says what made a ruling another one.
type CauseKind string

// The kinds of cause.
const (
	ByCell    CauseKind = "cell"    // a cell of a code's table says otherwise
	ByNote    CauseKind = "note"    // a note of the association does
	ByReading CauseKind = "reading" // the words are read otherwise
	ByRule    CauseKind = "rule"    // the rules are applied otherwise
)

// Cause is one thing that made a ruling another one.
type Cause struct {
	Kind CauseKind `json:"kind"`
	// Of a cell: the code, the parameter with its title, the rule's number, what
	// the cell said and says in words, and the association's reason where it
	// adopted that.
	Code    code.Code  `json:"code,omitempty"`
	Param   code.Param `json:"param,omitempty"`
	Title   string     `json:"title,omitempty"`
	Cite    string     `json:"cite,omitempty"`
	Was     string     `json:"was,omitempty"` // of every kind: what it was then
	Now     string     `json:"now,omitempty"` // and what it is now
	Adopted string     `json:"adopted,omitempty"`
	// Of a note: the id of the note, of the one then where there is none now.
	Note string `json:"note,omitempty"`
}

// Causes says why a question that was answered once is answered otherwise now.
// It rules again with the cells as they were: those that alone bring the old
// ruling back are the cause, else all that differ if they do together. Where the
// cells don't, the words are read otherwise, or the rules are applied otherwise.
// There is none where the answers rule alike.
func Causes(text string, o Options, was Past, now Answer) []Cause {
	var out []Cause
	is := now.Past()
	if was.Key() == is.Key() {
		return nil
	}
	if a, b := was.Association, is.Association; noted(a) != noted(b) {
		c := Cause{Kind: ByNote, Was: noted(a), Now: noted(b)}
		if b != nil {
			c.Note = b.Note
		} else {
			c.Note = a.Note
		}
		out = append(out, c)
	}
	if was.book() == is.book() {
		return out
	}
	var q *inquiry
	if r, err := notation.Read(text); err == nil {
		_, q = of(r, o)
	}
	cells := q.differing(was.Cells)
	var alone, all []Cause
	for _, c := range cells {
		all = append(all, c.cause())
		if ruledWith(text, o, c) == was.book() {
			alone = append(alone, c.cause())
		}
	}
	switch {
	case alone != nil:
		return append(out, alone...)
	case len(cells) > 0 && ruledWith(text, o, cells...) == was.book():
		return append(out, all...)
	case !slices.Equal(was.Read, is.Read):
		return append(out, Cause{Kind: ByReading, Was: sentences(was.Read), Now: sentences(is.Read)})
	}
	return append(append(out, all...), Cause{Kind: ByRule, Was: cited(was), Now: cited(is)})
}

// noted is what an association rules, in words; empty where it does not.
func noted(a *Association) string {
	if a == nil {
		return ""
	}
	s := a.Outcome
	if a.Fault != "" {
		s += ": " + string(a.Fault)
	}
	return s
}

func sentences(s []string) string {
	if len(s) == 0 {
		return "nothing"
	}
	return strings.Join(s, "; ")
}

// cited are the rules that an answer rests on, then the facts.
func cited(p Past) string {
	var parts []string
	for _, r := range p.Rules {
		s := r.Title
		if r.Cite != "" {
			s += " " + r.Cite
		}
		if !slices.Contains(parts, s) {
			parts = append(parts, s)
		}
	}
	s := strings.Join(parts, ", ")
	if len(p.Because) > 0 {
		s += " because " + strings.Join(p.Because, "; ")
	}
	if s == "" {
		return "no rule"
	}
	return strings.TrimSpace(s)
}

// turned is a cell that says otherwise than it did.
type turned struct {
	book  *code.Book // today's
	param code.Param
	was   string // its value then
}

// differing lists, code by code and sorted by parameter, the cells that a
// ruling read and that say otherwise now.
func (q *inquiry) differing(was Cells) []turned {
	if q == nil {
		return nil
	}
	var out []turned
	for _, d := range q.asked {
		for _, p := range slices.Sorted(maps.Keys(was[d.Book.Code()])) {
			v := was[d.Book.Code()][p]
			if _, ok := code.Find(p); ok && d.Book.Cell(p).Value != v {
				out = append(out, turned{d.Book, p, v})
			}
		}
	}
	return out
}

// overlay lays the cell as it was over today's book.
func (t turned) overlay() code.Overlay {
	return code.Overlay{Param: t.param, Code: t.book.Code(), Value: t.was, Reason: "to compare"}
}

func (t turned) cause() Cause {
	now := t.book.Cell(t.param)
	c := Cause{Kind: ByCell, Code: t.book.Code(), Param: t.param, Title: title(t.param), Cite: now.Rule, Was: t.was, Now: now.Text, Adopted: now.Adopted}
	if b, err := t.book.With(t.overlay()); err == nil {
		c.Was = b.Cell(t.param).Text
	}
	return c
}

// ruledWith is the key of the book's ruling on a question under other cells;
// empty where the tables can't hold them any more.
func ruledWith(text string, o Options, cells ...turned) string {
	o.Overlays = slices.Clone(o.Overlays)
	for _, c := range cells {
		if _, err := c.book.With(c.overlay()); err != nil {
			return ""
		}
		o.Overlays = append(o.Overlays, c.overlay())
	}
	a := Ask(text, o)
	if a.Error != nil {
		return ""
	}
	return a.Past().book()
}
