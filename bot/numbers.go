package bot

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// Number is one thing that is counted for an association. It names nobody.
type Number struct {
	Counted string // what sort of thing, a title of numberKinds
	Value   string // which one, in words
	Count   int
}

// numberKinds are what is counted by the tags of questions, in the order in
// which they are shown. Topics, facts and disputes are counted only where
// enough people asked; phrases that were not read are listed as they were said,
// for whoever teaches the program words.
var numberKinds = []struct {
	title string
	kind  store.TagKind
	least int
}{
	{"topic", store.Topic, leastAskers},
	{"deciding fact", store.Deciding, leastAskers},
	{"in dispute", store.Disputed, leastAskers},
	{"not read", store.Unread, 0},
}

// Numbers counts what was asked of an association, which of its published notes
// were never linked, and how far the crew agreed with the ruling where it ruled
// together: plays, calls, and calls that were as the ruling, by season and
// channel. A nil book has no notes.
func Numbers(r store.Reader, book *casebook.Book) ([]Number, error) {
	var out []Number
	for _, k := range numberKinds {
		counts, err := r.Tally(k.kind, store.Span{}, k.least)
		if err != nil {
			return nil, err
		}
		for _, n := range counts {
			out = append(out, Number{k.title, TagWords(k.kind, n.Value), n.Questions})
		}
	}
	agreed, err := r.Agreement(leastVoters)
	if err != nil {
		return nil, err
	}
	for _, a := range agreed {
		where := a.Season + ", channel " + a.Where.Channel + " on " + a.Where.Platform
		out = append(out,
			Number{"ruled together", where, a.Polls},
			Number{"calls made", where, a.Votes},
			Number{"calls as the ruling", where, a.Agreed})
	}
	if book == nil {
		return out, nil
	}
	linked, err := r.Tally(store.Linked, store.Span{}, 0)
	if err != nil {
		return nil, err
	}
	for _, n := range book.Notes() {
		if n.Status == casebook.Published && !slices.ContainsFunc(linked, func(l store.Count) bool { return l.Value == n.ID }) {
			out = append(out, Number{"note never linked", n.ID + " " + n.Title, 0})
		}
	}
	return out, nil
}

// NumbersCSV is a table of numbers with a line of headings.
func NumbersCSV(ns []Number) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.Write([]string{"counted", "value", "number"})
	for _, n := range ns {
		v := n.Value
		if strings.ContainsAny(v[:min(1, len(v))], "=+-@\t\r") {
			v = "'" + v // else a spreadsheet computes with what somebody said
		}
		w.Write([]string{n.Counted, v, strconv.Itoa(n.Count)})
	}
	w.Flush() // a strings.Builder has no errors
	return b.String()
}

// numbers counts what was asked, for mentors.
func (t *turn) numbers(form string, page int) Reply {
	ns, err := t.counted()
	if err != nil {
		return t.trouble(err, "The numbers could not be looked up.")
	}
	m := Message{Doc: numbersDoc(ns, form), More: Token{"numbers", []string{form}}.String(), Page: page}
	if form == asCSV && page == 0 && len(ns) > 0 {
		m.Pictures = []Picture{{Name: numbersFile, Type: "text/csv", Alt: "The numbers as comma-separated values", Data: []byte(NumbersCSV(ns))}}
	}
	if t.inPlace && (t.private || t.Direct) {
		return Update{Message: m}
	}
	return Say{Message: m, Private: true, InThread: t.Where.Thread != ""}
}

func (t *turn) counted() (ns []Number, err error) {
	var book *casebook.Book
	if t.assoc.Book != nil {
		if book, err = t.assoc.Book(); err != nil {
			return nil, err
		}
	}
	err = t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		ns, err = Numbers(r, book)
		return err
	})
	return ns, err
}

// Forms of the numbers.
const (
	asTable = "table"
	asCSV   = "csv"
)

// numbersFile is the name of the file of numbers.
const numbersFile = "numbers.csv"

// numbersDoc lays numbers out: a part for each sort of thing, or the lines of
// a file of comma-separated values to copy.
func numbersDoc(ns []Number, form string) Doc {
	if len(ns) == 0 {
		return Doc{Blocks: []Block{Heading{"Nothing is counted yet", Plain}, Para{Line("Topics, facts and disputes are counted once three people have asked.")}}}
	}
	b := Buttons{Label: "Also"}
	if form == asCSV {
		d := Doc{Blocks: []Block{Heading{"The numbers as comma-separated values", Plain}}}
		file := Field{Label: numbersFile}
		for l := range strings.Lines(NumbersCSV(ns)) {
			file.Lines = append(file.Lines, Line(strings.TrimRight(l, "\r\n")))
		}
		d.Blocks = append(d.Blocks, Fields{[]Field{file}})
		b.add("As a table", "numbers", asTable, "0")
		d.Blocks = append(d.Blocks, b)
		return d
	}
	d := Doc{Blocks: []Block{Heading{"What was asked, in numbers", Plain}}}
	var f Fields
	for _, n := range ns {
		if k := len(f.Items); k == 0 || f.Items[k-1].Label != n.Counted {
			if i := slices.IndexFunc(f.Items, func(i Field) bool { return i.Label == n.Counted }); i >= 0 {
				f.Items[i].Lines = append(f.Items[i].Lines, numberLine(n))
				continue
			}
			f.Items = append(f.Items, Field{Label: n.Counted})
		}
		last := &f.Items[len(f.Items)-1]
		last.Lines = append(last.Lines, numberLine(n))
	}
	b.add("As comma-separated values", "numbers", asCSV, "0")
	d.Blocks = append(d.Blocks, f, Aside{Line("Counted are the questions that are kept, and no askers. What fewer than three people asked is left out.")}, b)
	return d
}

func numberLine(n Number) Text {
	if n.Count == 0 {
		return Line(n.Value)
	}
	return Text{{fmt.Sprint(n.Count), Strong}, {Text: " " + n.Value}}
}
