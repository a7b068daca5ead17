package demo

import (
	"bytes"
	"strings"
	"testing"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// today is a day in the demo's last season.
var today = casebook.Date{Year: 2026, Month: 11, Day: 24}

func TestCheck(t *testing.T) {
	b, found := casebook.Load(FS(), casebook.LoadOptions{})
	found = append(found, casebook.Check(b, casebook.CheckOptions{Today: today})...)
	if len(found) > 0 {
		var out bytes.Buffer
		if err := casebook.Print(&out, found); err != nil {
			t.Fatal(err)
		}
		t.Errorf("%d findings:\n%s", len(found), out.String())
	}
}

// TestBreadth holds what a first run is meant to show.
func TestBreadth(t *testing.T) {
	b := Book()
	if n := len(b.Notes()); n < 60 {
		t.Errorf("%d notes, want at least 60", n)
	}
	codes, seasons, statuses := map[code.Code]int{}, map[code.Season]int{}, map[casebook.Status]int{}
	departures, chains, played := 0, 0, 0
	for _, n := range b.Notes() {
		seasons[n.Season]++
		statuses[n.Status]++
		for _, c := range n.Codes {
			codes[c]++
		}
		if n.Departs != "" && n.Status == casebook.Published {
			departures++
		}
		if n.Play != "" {
			played++
		}
		for _, id := range n.Supersedes {
			if old := b.Note(id); old != nil && len(old.Supersedes) > 0 {
				chains++
			}
		}
		if len(strings.Fields(n.Plain())) < 15 {
			t.Errorf("%s: has hardly any text", n.Path)
		}
	}
	for _, c := range code.All() {
		if codes[c] < 15 {
			t.Errorf("%d notes for %s, want at least 15", codes[c], c)
		}
	}
	for _, s := range []code.Season{2024, 2025, 2026} {
		if seasons[s] < 15 {
			t.Errorf("%d notes of %s, want at least 15", seasons[s], s)
		}
	}
	if len(seasons) != 3 {
		t.Errorf("notes of %d seasons, want three", len(seasons))
	}
	for _, want := range []struct {
		status casebook.Status
		least  int
	}{{casebook.Draft, 2}, {casebook.Superseded, 5}, {casebook.Withdrawn, 1}, {casebook.Published, 50}} {
		if statuses[want.status] < want.least {
			t.Errorf("%d notes are %s, want at least %d", statuses[want.status], want.status, want.least)
		}
	}
	if departures != 2 || chains == 0 || played < 40 {
		t.Errorf("%d departures, %d chains of three, %d plays", departures, chains, played)
	}
}

func TestAssociation(t *testing.T) {
	b := Book()
	if b.Association == nil || b.Association.Name == "" {
		t.Fatal("the demo has no association")
	}
	book, err := b.Open(code.Scholastic, 2026)
	if err != nil {
		t.Fatal(err)
	}
	if c := book.Cell("match.ball-texture"); c.Value != "smooth" || c.Rule != "HL-3" || c.Adopted == "" {
		t.Errorf("the adoption is not in the book: %+v", c)
	}
	if book, err = b.Open(code.Scholastic, 2025); err != nil || book.Cell("match.ball-texture").Rule == "HL-3" {
		t.Errorf("the adoption reaches back before its season, %v", err)
	}
}
