package bot

import (
	"encoding/json"
	"strings"
	"testing"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

var departing = Note{
	ID: "2026-030", Title: "Low beams", URL: "https://notes.example/2026-030",
	Codes: []code.Code{code.Scholastic}, Season: 2026, Status: casebook.Published,
	Ruling:  casebook.Ruling{Outcome: "fault", Fault: "ball-out", Against: "A"},
	Departs: "The hall's ground rule says so.", Covers: true,
	Why: []string{"same fault: ball out", "words: beams"}, Snippet: Text{{Text: "A ball off the beams", Style: Strong}, {Text: " is dead."}},
}

func TestWithNotes(t *testing.T) {
	change := func(f func(*Note)) Note { n := departing; f(&n); return n }
	for _, test := range []struct {
		what  string
		notes []Note
		want  string // the note whose departure stands beside the ruling
	}{
		{"a departing note that covers the play", []Note{departing}, "2026-030"},
		{"one that does not cover it", []Note{change(func(n *Note) { n.Covers = false })}, ""},
		{"one that agrees with the book", []Note{change(func(n *Note) { n.Departs = "" })}, ""},
		{"an example", []Note{change(func(n *Note) { n.Example = true })}, ""},
		{"behind one that agrees", []Note{change(func(n *Note) { n.Departs, n.ID = "", "2026-001" }), departing}, "2026-030"},
		{"none", nil, ""},
	} {
		a := WithNotes(settled, test.notes)
		got := ""
		if a.Association != nil {
			got = a.Association.Note
		}
		if got != test.want || len(a.Notes) != len(test.notes) {
			t.Errorf("%s: %q stands beside the ruling, want %q; %d notes of %d", test.what, got, test.want, len(a.Notes), len(test.notes))
		}
		if a.Outcome != settled.Outcome || a.Fault != settled.Fault {
			t.Errorf("%s: the ruling itself changed", test.what)
		}
	}
	text := plainly(t, Ruling(WithNotes(settled, []Note{departing})))
	book, note := strings.Index(text, "Fault: four contacts"), strings.Index(text, "note 2026-030 rules fault")
	if note < 0 || book < note {
		t.Errorf("the association's ruling does not stand above the book's:\n%s", text)
	}
	b, err := json.Marshal(WithNotes(settled, []Note{departing, {ID: "2026-031"}}))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		`"association":{"note":"2026-030","outcome":"fault","fault":"ball-out","reason":"The hall's ground rule says so."}`,
		`"why":["same fault: ball out","words: beams"]`, `{"id":"2026-031","title":"","url":null,"why":[]}`,
	} {
		if !strings.Contains(string(b), want) {
			t.Errorf("no %s in %s", want, b)
		}
	}
}

func TestNotes(t *testing.T) {
	text := plainly(t, Notes([]Note{departing}))
	for _, want := range []string{"2026-030 Low beams", "A ball off the beams is dead.", "fault ball-out against A", "ground rule", "scholastic, from 2026-27", "same fault: ball out; words: beams", "https://notes.example/2026-030"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in:\n%s", want, text)
		}
	}
	if strings.Contains(text, "invented") {
		t.Errorf("an association's own note is called an example:\n%s", text)
	}
	example := departing
	example.Example, example.Status = true, casebook.Superseded
	text = plainly(t, Notes([]Note{example}))
	if !strings.Contains(text, "invented casebook") || !strings.Contains(text, "superseded") {
		t.Errorf("an example, or what is no longer in force, is not labelled:\n%s", text)
	}
	if text := plainly(t, Ruling(WithNotes(answer.Answer{Kind: answer.None, Reason: "no play was read"}, []Note{example}))); !strings.Contains(text, "(example)") {
		t.Errorf("an example under a ruling is not labelled:\n%s", text)
	}
	if text := plainly(t, Notes(nil)); !strings.Contains(text, "No note was found") {
		t.Errorf("nothing found reads:\n%s", text)
	}
}

func plainly(t *testing.T, d Doc) string {
	t.Helper()
	return strings.Join(strings.Fields(printed(t, d, TextOptions{})), " ")
}
