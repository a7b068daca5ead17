package casebook_test

import (
	"reflect"
	"strings"
	"testing"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/casetest"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/engine/code"
)

// content is a note without what depends on where it was read.
func content(n *casebook.Note) casebook.Note {
	return casebook.Note{
		ID: n.ID, Title: n.Title, Codes: n.Codes, Season: n.Season, Status: n.Status, Issued: n.Issued, Expires: n.Expires,
		Supersedes: n.Supersedes, Rules: n.Rules, Topics: n.Topics, Play: n.Play, Ruling: n.Ruling, Departs: n.Departs,
		Attachments: n.Attachments, Body: n.Body,
	}
}

// What Format writes reads back as the same note, and writes the same again.
func TestFormat(t *testing.T) {
	made, _ := casetest.Book(casetest.Options{Notes: 300, Seed: 3})
	notes := append(demo.Book().Notes(), made.Notes()...)
	for _, title := range []string{"yes", "9.20", "a: b # c", "- dash", "'quoted' \"twice\"", "é \\ 🏐", "{flow}", "null", "2026-11-15", "---"} {
		notes = append(notes, &casebook.Note{
			ID: "2026-001", Title: title, Codes: []code.Code{code.Club}, Season: 2026, Status: casebook.Draft,
			Rules: []string{"9.20"}, Topics: []string{"on"}, Play: title, Ruling: casebook.Ruling{Outcome: "play-on"}, Departs: strings.Repeat(title+" ", 40) + ".",
			Body: title + "\n\n---\nmore\n",
		})
	}
	for _, n := range notes {
		text := casebook.Format(n)
		got, found := casebook.Parse(n.Path, text)
		if len(found) > 0 {
			t.Errorf("%s: %v in\n%s", n.ID, found, text)
			continue
		}
		if g, w := content(got), content(n); !reflect.DeepEqual(g, w) {
			t.Errorf("%s:\n got %+v\nwant %+v\n%s", n.ID, g, w, text)
		}
		if again := casebook.Format(got); again != text {
			t.Errorf("%s: written again it is\n%s\nwas\n%s", n.ID, again, text)
		}
	}
}

// A formatted note passes every check that the note itself does.
func TestFormatPasses(t *testing.T) {
	b := demo.Book()
	for _, n := range b.Notes()[:3] { // each runs every check of the book
		written, found := casebook.Parse(n.Path, casebook.Format(n))
		if len(found) == 0 {
			found = casebook.Prove(b, written, casebook.CheckOptions{})
		}
		for _, f := range found {
			t.Errorf("%s: %s", n.ID, f)
		}
	}
}

// A draft is proven before anybody publishes it: what it rules, and what it
// does to the notes that there are.
func TestProve(t *testing.T) {
	b := demo.Book()
	id := b.NextID(2026, "2026-040", "2025-900", "nonsense")
	if id != "2026-041" {
		t.Errorf("the next id is %s", id)
	}
	if got := b.NextID(1999); got != "1999-001" {
		t.Errorf("the first id of a year is %s", got)
	}
	note := func(play string, r casebook.Ruling) *casebook.Note {
		n := &casebook.Note{ID: id, Title: "A trial", Codes: []code.Code{code.Scholastic}, Season: 2026, Status: casebook.Published,
			Issued: casebook.Date{Year: 2026, Month: 11, Day: 20}, Play: play, Ruling: r, Body: "Words.\n"}
		n, found := casebook.Parse(n.FileName(), casebook.Format(n))
		if len(found) > 0 {
			t.Fatal(found)
		}
		return n
	}
	const play = "A's back-row setter tips the ball, ball wholly above the net, from in front of the attack line, the ball goes to B's side"
	for _, test := range []struct {
		play  string
		rules casebook.Ruling
		want  string // empty: nothing is found
	}{
		{play, casebook.Ruling{Outcome: "fault", Fault: "back-row-attack", Against: "A"}, ""},
		{play, casebook.Ruling{Outcome: "play-on"}, "the engine rules fault"},
		{"A's setter tips the zorb over the net", casebook.Ruling{Outcome: "play-on"}, "not read whole"},
	} {
		found := casebook.Prove(b, note(test.play, test.rules), casebook.CheckOptions{})
		var all []string
		for _, f := range found {
			all = append(all, f.String())
		}
		got := strings.Join(all, "\n")
		if test.want == "" && got != "" || !strings.Contains(got, test.want) {
			t.Errorf("%q ruled %s: found %q, want %q", test.play, test.rules, got, test.want)
		}
	}
	if len(b.Notes()) != len(demo.Book().Notes()) || b.Note(id) != nil {
		t.Error("proving changed the book")
	}
}
