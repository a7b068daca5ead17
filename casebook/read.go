package casebook

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"example.org/netpost/engine/code"

	"go.yaml.in/yaml/v3"
)

// Limits of single values, so that a note stays a note.
const (
	longestText = 2000 // runes of one value
	longestList = 100  // members of one list
)

// reader reads one file's fields into a note and reports all that is wrong.
type reader struct {
	path  string
	front front
	note  *Note        // of a note's file
	assoc *Association // of the association's book
	check string
	found []Finding
}

// Parse reads one note from the text of its file. Path is the file's, in the
// folder, and stands in the findings. The note is nil when there are any.
func Parse(path, text string) (*Note, []Finding) {
	n := &Note{Path: path, Text: text}
	r := &reader{path: path, note: n, check: checkField}
	from, to, body, err := split(text)
	if err == nil {
		r.front, err = parseFront(text, from, to)
	}
	if err != nil {
		return nil, []Finding{frontFinding(path, text, err)}
	}
	n.front = r.front
	n.Body = strings.TrimLeft(text[body:], "\r\n")
	r.mapping("", r.front.root, fields)
	r.agree()
	if len(r.found) > 0 {
		sortFindings(r.found)
		return nil, r.found
	}
	return n, nil
}

func frontFinding(path, text string, err error) Finding {
	f := Finding{Check: checkFront, Path: path, Line: 1, What: err.Error(), Mend: "see the manual for the shape of a note"}
	var fe *frontError
	if errors.As(err, &fe) {
		f.Line, f.What, f.Mend = fe.line, fe.what, fe.mend
		f.fix, f.Fixable = fe.fix, !fe.fix.none()
	}
	f.Source = sourceLine(text, f.Line)
	return f
}

func (r *reader) report(field string, n *yaml.Node, what, mend string, fx fix) {
	line := r.front.line(n)
	r.found = append(r.found, Finding{
		Check: r.check, Path: r.path, Line: line, Field: field, What: what, Mend: mend,
		Source: sourceLine(r.front.text, line), Fixable: !fx.none(), fix: fx,
	})
}

// mapping reads the known fields of a mapping in the table's order, then
// reports the unknown ones and the missing ones.
func (r *reader) mapping(prefix string, n *yaml.Node, table []Field) {
	var keys []string
	for _, f := range table {
		keys = append(keys, f.Key)
	}
	for i := 0; i+1 < len(n.Content); i += 2 {
		k := n.Content[i]
		j := slices.Index(keys, k.Value)
		if j < 0 {
			mend := "use one of " + strings.Join(keys, ", ")
			if near := nearest(k.Value, keys); near != "" {
				mend = "write " + near + ", if that is meant"
			}
			r.report(prefix+k.Value, k, "there is no such field", mend, fix{})
			continue
		}
		v := n.Content[i+1]
		if v.Kind == yaml.ScalarNode && v.Tag == "!!null" {
			r.report(prefix+k.Value, k, "the field is empty", "give it a value or take the line out", fix{})
			continue
		}
		table[j].read(r, v)
	}
	for _, f := range table {
		if f.Required && child(n, f.Key) == nil {
			r.report(prefix+f.Key, n, "the field is missing", "add it: "+f.Doc, fix{})
		}
	}
}

// agree reports fields that do not go together.
func (r *reader) agree() {
	n, has := r.note, func(field string) bool { return child(r.front.root, field) != nil }
	at := func(field string) *yaml.Node { return r.front.find(field) }
	switch {
	case has("play") && !has("ruling"):
		r.report("play", at("play"), "the play has no ruling", "add ruling: {outcome: …}, or take the play out", fix{})
	case has("ruling") && !has("play"):
		r.report("ruling", at("ruling"), "the ruling has no play", "add play: the situation in words, or take the ruling out", fix{})
	case has("departs") && !has("ruling"):
		r.report("departs", at("departs"), "only a note with a play and a ruling can depart from the book", "add play and ruling, or say it in the text", fix{})
	}
	if ru := n.Ruling; ru.Outcome == "" {
		if at := at("ruling"); has("ruling") && len(ru.Measure) == 0 && ru.Answer == "" && at.Kind == yaml.MappingNode && child(at, "outcome") == nil {
			r.report("ruling", at, "the ruling has no outcome, measure or answer", "add outcome: "+strings.Join(outcomes, ", ")+"; or measure, or answer", fix{})
		}
		if ru.Fault != "" || ru.Replay != "" {
			r.report("ruling", at("ruling"), "a fault or a replay comes with its outcome", "add outcome: fault, or outcome: replay", fix{})
		}
	} else {
		if (ru.Outcome == "fault") != (ru.Fault != "") {
			r.report("ruling.fault", at("ruling.fault"), "fault and the outcome fault come together", "name the fault, or mend the outcome", fix{})
		}
		if (ru.Outcome == "replay") != (ru.Replay != "") {
			r.report("ruling.replay", at("ruling.replay"), "replay and the outcome replay come together", "say why it is replayed, or mend the outcome", fix{})
		}
	}
	if !n.Issued.IsZero() && !n.Expires.IsZero() && n.Expires.Before(n.Issued) {
		r.report("expires", at("expires"), "it expires before it was issued", "mend one of the two dates", fix{})
	}
	switch {
	case n.Withdrawn.IsZero():
	case n.Status != Withdrawn && n.Status != NoStatus:
		r.report("withdrawn", at("withdrawn"), "it has a day on which it was taken back and is "+n.Status.String(), "write status: withdrawn, or take the day out", fix{})
	case !n.Issued.IsZero() && n.Withdrawn.Before(n.Issued):
		r.report("withdrawn", at("withdrawn"), "it was taken back before it was issued", "mend one of the two dates", fix{})
	}
}

// text is a value of one line.
func (r *reader) text(field string, n *yaml.Node) string {
	switch {
	case n.Kind != yaml.ScalarNode:
		r.report(field, n, "this must be text, not a "+kindWord(n), "write it as words on one line", fix{})
		return ""
	case n.Tag != "!!str":
		r.report(field, n, quote(n.Value)+" reads as "+tagWord(n)+", not as text", "put it in quotes: "+strconv.Quote(n.Value), r.front.rewrite(n, strconv.Quote(n.Value)))
		return ""
	}
	s := strings.TrimSpace(n.Value)
	switch {
	case s == "":
		r.report(field, n, "the value is empty", "give it a value or take it out", fix{})
	case strings.ContainsAny(s, "\r\n"):
		r.report(field, n, "the value runs over several lines", "write it on one line, or fold it with >-", fix{})
	case strings.IndexFunc(s, unicode.IsControl) >= 0:
		r.report(field, n, "the value holds a control character", "take it out", fix{})
	case len([]rune(s)) > longestText:
		r.report(field, n, fmt.Sprintf("the value is longer than %d characters", longestText), "put the long text below the front matter", fix{})
	default:
		return s
	}
	return ""
}

// list reads a list with one reader for its members.
func (r *reader) list(field string, n *yaml.Node, read func(*reader, string, *yaml.Node) string) []string {
	if n.Kind != yaml.SequenceNode {
		fx, mend := fix{}, "put its members in brackets, with commas between"
		if from, to, ok := r.front.span(n); ok {
			as := "[" + r.front.text[from:to] + "]"
			fx.edits, mend = []edit{{from, to, as}}, "put it in brackets: "+as
		}
		r.report(field, n, "this must be a list, not a "+kindWord(n), mend, fx)
		return nil
	}
	if len(n.Content) > longestList {
		r.report(field, n, fmt.Sprintf("the list is longer than %d", longestList), "shorten it", fix{})
		return nil
	}
	var out []string
	for i, m := range n.Content {
		sub := indexed(field, i)
		s := read(r, sub, m)
		if s != "" && slices.Contains(out, s) {
			r.report(sub, m, quote(s)+" stands in the list twice", "take one out", fix{})
		}
		out = append(out, s)
	}
	return out
}

var idForm = whenUsed(`^\d{4}-\d{3,5}$`)

func (r *reader) id(field string, n *yaml.Node) string {
	s := r.text(field, n)
	if s != "" && !idForm().MatchString(s) {
		r.report(field, n, quote(s)+" is not an id", "write year and number, such as 2026-014", fix{})
		return ""
	}
	return s
}

func (r *reader) topic(field string, n *yaml.Node) string {
	s := r.text(field, n)
	if low := strings.ToLower(s); low != s {
		r.report(field, n, quote(s)+" has capital letters", "write "+low, r.front.rewrite(n, low))
		return ""
	}
	return s
}

func (r *reader) outcome(field string, n *yaml.Node) string {
	s := r.text(field, n)
	if s != "" && !slices.Contains(outcomes, s) {
		r.report(field, n, quote(s)+" is not an outcome", "use one of "+strings.Join(outcomes, ", "), fix{})
		return ""
	}
	return s
}

func (r *reader) codes(field string, n *yaml.Node) []code.Code {
	var out []code.Code
	for _, s := range r.list(field, n, (*reader).code) {
		out = append(out, code.Code(s))
	}
	if len(n.Content) == 0 && n.Kind == yaml.SequenceNode {
		r.report(field, n, "the list is empty", "name at least one of "+codeWords(), fix{})
	}
	return out
}

func (r *reader) code(field string, n *yaml.Node) string {
	s := r.text(field, n)
	if s == "" {
		return ""
	}
	if _, err := code.Parse(s); err != nil {
		fx, mend, low := fix{}, "use one of "+codeWords(), strings.ToLower(s)
		if _, err := code.Parse(low); err == nil {
			fx, mend = r.front.rewrite(n, low), "write "+low
		}
		r.report(field, n, quote(s)+" is not a code", mend, fx)
		return ""
	}
	return s
}

func (r *reader) status(field string, n *yaml.Node) Status {
	s := r.text(field, n)
	if s == "" {
		return NoStatus
	}
	st, err := ParseStatus(s)
	if err != nil {
		fx, mend := fix{}, "use "+statusWords()
		if st, err := ParseStatus(strings.ToLower(s)); err == nil {
			fx, mend = r.front.rewrite(n, st.String()), "write "+st.String()
		}
		r.report(field, n, quote(s)+" is not a status", mend, fx)
	}
	return st
}

var seasonForm = whenUsed(`^\d{4}-\d\d$`)

func (r *reader) season(field string, n *yaml.Node) code.Season {
	if n.Kind != yaml.ScalarNode {
		r.report(field, n, "this must be a season, not a "+kindWord(n), "write it like 2026-27", fix{})
		return 0
	}
	s, err := code.ParseSeason(n.Value)
	switch {
	case err != nil:
		r.report(field, n, quote(n.Value)+" is not a season", "write it like 2026-27, or a cycle like 2025-28", fix{})
	case !seasonForm().MatchString(n.Value):
		r.report(field, n, quote(n.Value)+" is not how a season is written", "write "+s.String(), r.front.rewrite(n, s.String()))
	}
	return s
}

// looseDates are forms that can mean one day only.
var looseDates = []string{"2006-1-2", "2006/1/2", "2006.1.2", "20060102", "2 Jan 2006", "2 January 2006", "Jan 2, 2006", "January 2, 2006", "Jan 2 2006", "January 2 2006", time.RFC3339, "2006-01-02 15:04:05"}

func (r *reader) date(field string, n *yaml.Node) Date {
	if n.Kind != yaml.ScalarNode {
		r.report(field, n, "this must be a date, not a "+kindWord(n), "write year-month-day, such as 2026-11-15", fix{})
		return Date{}
	}
	d, err := ParseDate(n.Value)
	if err == nil {
		return d
	}
	for _, form := range looseDates {
		if t, err := time.Parse(form, n.Value); err == nil {
			d = DateOf(t)
			r.report(field, n, quote(n.Value)+" is not how a date is written", "write "+d.String(), r.front.rewrite(n, d.String()))
			return d
		}
	}
	r.report(field, n, quote(n.Value)+" is not a date", "write year-month-day, such as 2026-11-15", fix{})
	return Date{}
}

func (r *reader) ruling(n *yaml.Node) {
	if n.Kind != yaml.MappingNode {
		r.report("ruling", n, "this must be a set of fields, not a "+kindWord(n), "write it like {outcome: fault, fault: net-contact, against: A}", fix{})
		return
	}
	r.mapping("ruling.", n, rulingFields)
}

func kindWord(n *yaml.Node) string {
	switch n.Kind {
	case yaml.SequenceNode:
		return "list"
	case yaml.MappingNode:
		return "set of fields"
	}
	return "single value"
}

func tagWord(n *yaml.Node) string {
	switch n.Tag {
	case "!!int", "!!float":
		return "a number"
	case "!!bool":
		return "yes or no"
	case "!!timestamp":
		return "a date"
	case "!!null":
		return "nothing"
	}
	return "something else"
}

// quote shows a value in a message, cut to what is worth showing.
func quote(s string) string {
	if r := []rune(s); len(r) > 60 {
		s = string(r[:60]) + "…"
	}
	return strconv.Quote(s)
}

// indexed is the path of a list's member.
func indexed(field string, i int) string { return field + "[" + strconv.Itoa(i) + "]" }
