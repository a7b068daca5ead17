package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
)

const wholeFoot = "our middle lands with the whole foot across the centre line, nobody near her"

// asked has a question asked of an association as it was before it adopted
// anything, in front of all or alone.
func askedBefore(t *testing.T, s store.Store, a bot.Association, id, who, words string) {
	t.Helper()
	b := bot.New(bot.Options{Store: s, Find: func(bot.Place) (bot.Association, bool) { return a, true },
		NewID: func() string { return id }, Now: func() time.Time { return time.Date(2026, 11, 23, 7, 0, 0, 0, time.UTC) }})
	r := b.Handle(t.Context(), bot.Command{Meta: bot.Meta{Delivery: id, Who: bot.Who{Person: bot.Person{Platform: "slack", ID: who}},
		Where: bot.Place{Platform: "slack", Workspace: "T1", Channel: "C1"}}, Text: words})
	if say, ok := r.(bot.Say); !ok || say.Ref == "" {
		t.Fatalf("%s is answered with %+v", words, r)
	}
}

// The association adopts another value and writes a note that departs: what was
// asked before is listed with what did it, and corrected once, by command.
func TestRecheck(t *testing.T) {
	dir := t.TempDir()
	notes := filepath.Join(dir, "notes")
	file := filepath.Join(dir, "netpost.yaml")
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(os.Mkdir(notes, 0o755))
	must(os.WriteFile(file, []byte("associations: [{id: riverside, code: scholastic, casebook: "+notes+"}]\n"), 0o600))
	s, err := sqlite.Open(t.Context(), filepath.Join(dir, "netpost.db"), sqlite.Options{})
	must(err)
	defer s.Close()
	before := bot.Association{ID: "riverside", Code: "scholastic"}
	askedBefore(t, s, before, "q1", "UANA", "public "+wholeFoot)
	askedBefore(t, s, before, "q2", "UBO", wholeFoot)
	askedBefore(t, s, before, "q3", "UCYD", "public back-row setter tips the ball over from inside the 3m line, ball above the net")

	out, errs, status := run("", "recheck", "--config", file)
	if status != ok || !strings.Contains(out, "Nothing is ruled otherwise today") {
		t.Fatalf("status %d: %s%s", status, out, errs)
	}
	must(os.WriteFile(filepath.Join(notes, "book.yaml"), []byte("name: Riverside Officials\nadoptions:\n"+
		"  - {param: centre.foot, code: scholastic, value: legal-unless-interferes, rule: RO-1, reason: By the board.}\n"), 0o600))
	must(os.WriteFile(filepath.Join(notes, "2026-001-tips-from-deep.md"), []byte(`---
id: 2026-001
title: Tips by the setter are let go in practice matches
codes: [scholastic]
season: 2026-27
status: published
issued: 2026-11-20
play: A's back-row setter tips the ball over from inside the 3m line, ball above the net
ruling: {outcome: play-on}
departs: The board wants rallies in practice matches.
---
Let it go.
`), 0o600))
	must(os.WriteFile(filepath.Join(notes, "2026-002-a-foot-across.md"), []byte(`---
id: 2026-002
title: A foot across
codes: [scholastic]
season: 2026-27
status: published
issued: 2026-11-20
play: A's middle lands with the whole foot across the centre line, nobody near her
ruling: {outcome: fault, fault: centre-line, against: A}
---
A fault.
`), 0o600))
	out, errs, status = run("", "recheck", "--config", file)
	if status != found || errs != "" {
		t.Fatalf("status %d: %s%s", status, out, errs)
	}
	flat := strings.Join(strings.Fields(out), " ")
	for _, want := range []string{
		"3 kept questions ruled on again, 2 different plays",
		"scholastic, Foot beyond the centre line (RO-1): then “a fault when no part of it is on or above the line”, now “no fault unless it interferes with play or is a hazard”, adopted: By the board.",
		"q1 “" + wholeFoot + "”: then fault: centre line, against us; now play on, no fault",
		"q2 a private question: then fault: centre line, against us; now play on, no fault",
		"the association's note 2026-001 rules it: play-on",
		"2026-002 A foot across: the note rules fault centre-line against A, but under the scholastic rules of 2026-27 the engine rules play-on",
		"Ruled otherwise today: 3 questions",
	} {
		if !strings.Contains(flat, want) {
			t.Errorf("it does not say %q:\n%s", want, out)
		}
	}
	if strings.Count(flat, "Foot beyond the centre line (RO-1)") != 2 {
		t.Errorf("want the cell named for the questions and for the note:\n%s", out)
	}
	out, _, _ = run("", "recheck", "--config", file, "--json")
	var doc rechecked
	if err := json.Unmarshal([]byte(out), &doc); err != nil || len(doc.Changes) != 3 || len(doc.Notes) != 1 || doc.Changes[0].Causes[0].Param != "centre.foot" || doc.Changes[2].Causes[0].Note != "2026-001" {
		t.Errorf("%v:\n%s", err, out)
	}
	if strings.Count(out, "whole foot") != 1 {
		t.Errorf("the words of a private question are in it:\n%s", out)
	}
	if _, errs, status := run("", "recheck", "--config", file, "--post", "--question", "q9"); status != wrong || !strings.Contains(errs, "nothing was sent") {
		t.Errorf("a question that is not there: status %d: %s", status, errs)
	}
	posts := func() (keys []string) {
		must(s.Read(t.Context(), "riverside", func(r store.Reader) error {
			all, err := r.Posts(store.Queued)
			for _, p := range all {
				keys = append(keys, p.Key[:strings.LastIndexByte(p.Key, '/')]+" to "+p.To.ID+" in "+p.Where.Channel)
			}
			return err
		}))
		slices.Sort(keys)
		return keys
	}
	if k := posts(); len(k) != 0 {
		t.Errorf("queued: %q", k)
	}
	out, _, status = run("", "recheck", "--config", file, "--post", "--question", "q2")
	if status != found || !strings.Contains(out, "1 correction is on the way") {
		t.Errorf("status %d: %s", status, out)
	}
	out, _, status = run("", "recheck", "--config", file, "--post")
	if status != found || !strings.Contains(out, "2 corrections are on the way") { // the note is not mended
		t.Errorf("status %d: %s", status, out)
	}
	want := []string{"correction/q1 to  in C1", "correction/q2 to UBO in ", "correction/q3 to  in C1"}
	if k := posts(); !slices.Equal(k, want) {
		t.Errorf("queued: %q, want %q", k, want)
	}
	must(os.Remove(filepath.Join(notes, "2026-002-a-foot-across.md")))
	for range 2 {
		if out, errs, status := run("", "recheck", "--config", file, "--post"); status != ok || !strings.Contains(out, "0 corrections are on the way") {
			t.Errorf("posted again: status %d: %s%s", status, out, errs)
		}
	}
	if k := posts(); !slices.Equal(k, want) {
		t.Errorf("posted again: %q", k)
	}
}
