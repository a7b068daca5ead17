package casetest

import (
	"bytes"
	"fmt"
	"testing"

	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// TestClean holds the promise of the package, and with it that the checks find
// nothing in notes that are right.
func TestClean(t *testing.T) {
	b, found := Book(Options{Notes: 300, Seed: 7, Seasons: []code.Season{2026}})
	found = append(found, casebook.Check(b, casebook.CheckOptions{Today: casebook.Date{Year: 2026, Month: 12, Day: 1}})...)
	if len(found) > 0 {
		var out bytes.Buffer
		if err := casebook.Print(&out, found); err != nil {
			t.Fatal(err)
		}
		t.Errorf("%d findings:\n%s", len(found), out.String())
	}
	plays := 0
	for _, n := range b.Notes() {
		if n.Play != "" {
			plays++
		}
	}
	if len(b.Notes()) != 300 || plays < 100 {
		t.Errorf("%d notes, %d with a play", len(b.Notes()), plays)
	}
}

func TestSameSeed(t *testing.T) {
	a, b := Folder(Options{Notes: 50, Seed: 3}), Folder(Options{Notes: 50, Seed: 3})
	other := Folder(Options{Notes: 50, Seed: 4})
	differ := false
	for p, f := range a {
		if b[p] == nil || !bytes.Equal(f.Data, b[p].Data) {
			t.Fatalf("%s differs", p)
		}
		differ = differ || other[p] == nil || !bytes.Equal(f.Data, other[p].Data)
	}
	if !differ {
		t.Error("another seed makes the same notes")
	}
}

// BenchmarkCheck checks 10,000 notes of three seasons, all read before.
func BenchmarkCheck(b *testing.B) {
	book, _ := Book(Options{Notes: 10_000, Seed: 1})
	b.ResetTimer()
	n := 0
	for range b.N {
		n = len(casebook.Check(book, casebook.CheckOptions{Today: casebook.Date{Year: 2026, Month: 12, Day: 1}}))
	}
	b.ReportMetric(float64(n), "findings")
}

// BenchmarkCheckAgainstEachOther checks 10,000 notes on one play, of which every
// other departs: each contradicts thousands.
func BenchmarkCheckAgainstEachOther(b *testing.B) {
	const text = "---\nid: 2026-%05d\ntitle: A note\ncodes: [scholastic]\nseason: 2026-27\nstatus: published\nissued: 2026-09-01\n" +
		"play: A's hitter attacks the ball, then A's hitter touches the net, in the action of playing the ball\n%s---\nThe text.\n"
	var notes []*casebook.Note
	for i := range 10_000 {
		ruling := "ruling: {outcome: fault, fault: net-contact, against: A}\n"
		if i%2 == 1 {
			ruling = "ruling: {outcome: play-on}\ndeparts: We let it go.\n"
		}
		n, found := casebook.Parse(fmt.Sprintf("2026-%05d.md", i), fmt.Sprintf(text, i, ruling))
		if n == nil {
			b.Fatal(found)
		}
		notes = append(notes, n)
	}
	book := casebook.NewBook(notes, nil)
	b.ResetTimer()
	n := 0
	for range b.N {
		n = len(casebook.Check(book, casebook.CheckOptions{}))
	}
	b.ReportMetric(float64(n), "findings")
}

// BenchmarkLoad reads 10,000 notes.
func BenchmarkLoad(b *testing.B) {
	folder := Folder(Options{Notes: 10_000, Seed: 1})
	b.ResetTimer()
	for range b.N {
		casebook.Load(folder, casebook.LoadOptions{})
	}
}
