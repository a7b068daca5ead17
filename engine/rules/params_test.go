package rules_test

import (
	"math/rand/v2"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// unread are the parameters that no rule reads yet, by area, with the reason.
// The list only shrinks: a parameter that a rule reads must leave it.
var unread = []struct{ prefix, reason string }{
	{"backrow.third-hit-is-attack", "what sends the ball over decides, not its name"},
	{"block.definition", "alike in every code; the walk holds it"},
	{"block.outside-antenna", "where along the net a block happens is not told yet"},
	{"hits.hair-contact", "a ball that only brushes hair is not told as a contact"},
	{"net.after-landing", "whether the player was still in the action is the fact asked"},
	{"net.ball-pushed-by-both", "each touch of the net is judged on its own"},
	{"overhead.min-height", "the question to the crew names the height"},
	{"replay.requests", "requests are not ruled on yet"},
}

// factsOnly are parameters of other areas that are only ever looked up.
var factsOnly = []code.Param{"joust.next-hits", "libero.captain", "libero.clock-fault-uses-position", "libero.count", "libero.count-scope",
	"libero.replacements-counted", "libero.wrong-serve-uses-position", "serve.clock-seconds-juniors", "serve.side-out-rotation",
	"timeouts.count", "timeouts.early-end", "timeouts.length", "timeouts.length-by-agreement", "timeouts.requester", "timeouts.warning"}

func area(p code.Param) string {
	a, _, _ := strings.Cut(string(p), ".")
	return a
}

// lookedUp are the parameters that the entries of the look-ups read.
func lookedUp(t *testing.T) map[code.Param]bool {
	read := map[code.Param]bool{}
	for _, e := range lookup.Entries() {
		for _, of := range []string{"", "back-row-block", "double-contact", "serving-overlap", "out-of-position", "player", "huddle", "9-5"} {
			for _, c := range code.All() {
				q := &lookup.Query{Entry: e.ID, Of: of}
				if e.ID == "rule-number" || q.Check() != nil {
					continue // a rule's number is the generic look-up
				}
				d, err := engine.Decide(lookup.Judge, q, book(t, c))
				if err != nil {
					t.Fatalf("%s: %v", e.ID, err)
				}
				for _, p := range d.Params {
					read[p] = true
				}
			}
		}
	}
	return read
}

// TestParamsRead decides many plays and sees which parameters the rules read:
// each parameter of the tables is read by a rule or stands on the list, and
// each that a rule names in its text is read.
func TestParamsRead(t *testing.T) {
	read := map[code.Param]bool{}
	r := rand.New(rand.NewPCG(21, 21))
	for i := range 4000 {
		p := playgen.Rally(r, playgen.Options{Events: 5, Wild: i%2 == 1, Voids: i%5 == 0})
		for _, c := range code.All() {
			d, err := rules.Decide(p.With(play.Key{Fact: play.Row, Of: "p1"}, play.Back), book(t, c))
			if err != nil {
				continue
			}
			for _, q := range d.Params {
				read[q] = true
			}
		}
	}
	paths, _ := filepath.Glob("testdata/*.cases")
	for _, path := range paths {
		for _, c := range readCases(t, path) {
			n, err := notation.Read(c.words)
			if err != nil || n.Rally == nil {
				continue // TestCases reports it
			}
			for _, b := range books(t, c) {
				if d, err := rules.Decide(n.Rally, b); err == nil {
					for _, q := range d.Params {
						read[q] = true
					}
				}
			}
		}
	}
	for p := range lookedUp(t) {
		// A measure, or the crew's own work, that nothing in a rally turns on is
		// read by the entry that answers it. Any other waits for its rule.
		if slices.Contains([]string{"bench", "crew", "line-judges", "match", "r2", "team"}, area(p)) || slices.Contains(factsOnly, p) {
			read[p] = true
		}
	}
	for range 200 {
		for _, k := range deadball.Kinds() {
			a := deadball.New(k.ID, play.A)
			for _, id := range k.Facts {
				if f, _ := deadball.FactByID(id); r.IntN(2) == 0 {
					a = a.With(id, f.Values[r.IntN(len(f.Values))].Value)
				}
			}
			for _, c := range code.All() {
				d, err := engine.Decide(deadball.Judge, a, book(t, c))
				if err != nil {
					t.Fatal(err)
				}
				for _, q := range d.Params {
					read[q] = true
				}
			}
		}
	}
	read["r2.duties"] = true // by CallFor, outside the judging
	courtReads(t, read)
	used := make([]bool, len(unread))
	for _, row := range code.Rows() {
		i := slices.IndexFunc(unread, func(u struct{ prefix, reason string }) bool { return strings.HasPrefix(string(row.Param), u.prefix) })
		switch {
		case i >= 0 && !read[row.Param]:
			used[i] = true
		case i < 0 && !read[row.Param]:
			t.Errorf("%s: no rule reads it and it is not on the list of those that wait", row.Param)
		}
	}
	for i, u := range unread {
		if !used[i] {
			t.Errorf("%s: is on the list of unread parameters and is read, or is none", u.prefix)
		}
		if u.reason == "" {
			t.Errorf("%s: the reason is missing", u.prefix)
		}
	}
	for _, rule := range rules.All() {
		for _, p := range rule.Params() {
			if !read[p] {
				t.Errorf("%s: names %s and does not read it", rule.ID, p)
			}
		}
	}
}
