package lookup_test

import (
	"bufio"
	"os"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/play"
)

// The table is sorted, each entry is once in it and documented, and each cell
// that it names is in the tables of the codes.
func TestEntries(t *testing.T) {
	last := ""
	for _, e := range lookup.Entries() {
		if e.ID <= last {
			t.Errorf("%s: not above %s", e.ID, last)
		}
		last = e.ID
		if e.Title == "" || !strings.HasSuffix(e.Ask, "?") || len(e.Words) == 0 || len(e.Params) == 0 {
			t.Errorf("%s: it needs a title, a question, words and a parameter", e.ID)
		}
		if e.Takes() != strings.Contains(e.Ask, "%s") {
			t.Errorf("%s: its question and what it is asked of do not agree", e.ID)
		}
		for _, p := range e.Params {
			if _, ok := code.Find(p); !ok {
				t.Errorf("%s: no parameter %q", e.ID, p)
			}
		}
	}
}

// answered is one line of testdata/answers.txt.
type answered struct{ entry, of, code, given, want, source string }

func answers(t *testing.T) []answered {
	t.Helper()
	f, err := os.Open("testdata/answers.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var out []answered
	for sc := bufio.NewScanner(f); sc.Scan(); {
		line := strings.TrimSpace(sc.Text())
		if line == "" || line[0] == '#' {
			continue
		}
		parts := strings.Split(line, "|")
		if len(parts) != 5 {
			t.Fatalf("answers.txt: %q has %d parts, want entry | code | given | answer | source", line, len(parts))
		}
		for i := range parts {
			parts[i] = strings.TrimSpace(parts[i])
		}
		entry, of, _ := strings.Cut(parts[0], "=")
		out = append(out, answered{entry, of, parts[1], parts[2], parts[3], parts[4]})
	}
	return out
}

// Each entry answers what the published books, or common practice, say.
func TestAnswers(t *testing.T) {
	seen := map[string]bool{}
	for _, a := range answers(t) {
		seen[a.entry] = true
		at := a.entry + " " + a.of + " " + a.code + " " + a.given
		if a.source == "" {
			t.Errorf("%s: no source", at)
		}
		q := &lookup.Query{Entry: a.entry, Of: a.of}
		if a.given != "" {
			k, v, _ := strings.Cut(a.given, "=")
			q = q.Tell(play.Key{Fact: play.FactID(k)}, play.Value(v)).(*lookup.Query)
		}
		if err := q.Check(); err != nil {
			t.Errorf("%s: %v", at, err)
			continue
		}
		for _, c := range code.All() {
			if a.code != "any" && a.code != string(c) {
				continue
			}
			b, err := code.Open(c, 0)
			if err != nil {
				t.Fatal(err)
			}
			d, err := engine.Decide(lookup.Judge, q, b)
			switch {
			case err != nil:
				t.Errorf("%s: %v", at, err)
			case a.want == "asks":
				if d.Settled() {
					t.Errorf("%s: answered %q, want a question", at, d.Ruling.Answer)
				}
			case d.Ruling.Answer != a.want:
				t.Errorf("%s %s:\ngot  %s\nwant %s", at, c, d.Ruling.Answer, a.want)
			case a.want != "" && len(d.Ruling.Cites) == 0:
				t.Errorf("%s: nothing is cited", at)
			}
		}
	}
	for _, e := range lookup.Entries() {
		if !seen[e.ID] {
			t.Errorf("%s: no line of testdata/answers.txt tries it", e.ID)
		}
	}
}

// A query that is none is refused, and telling a fact leaves the first alone.
func TestQuery(t *testing.T) {
	for _, q := range []*lookup.Query{{}, {Entry: "no-such-entry"}, {Entry: "sets", Of: "screen"}, {Entry: "signal"}, {Entry: "signal", Of: "nothing"}, {Entry: "rule-number", Of: "nine"}} {
		if q.Check() == nil {
			t.Errorf("%+v: not refused", q)
		}
	}
	q := &lookup.Query{Entry: "net-height"}
	if s := q.Tell(play.Key{Fact: lookup.NetFor}, "tall"); s.Check() == nil {
		t.Error("a value outside the table was taken")
	}
	if s := q.Tell(play.Key{Fact: play.Ball}, play.Live); s.Check() == nil {
		t.Error("a fact of a rally was taken")
	}
	if len(q.Known()) != 0 {
		t.Error("telling a fact changed the query that it was told to")
	}
	for _, f := range lookup.Facts() {
		if _, ok := play.FactByID(f.ID); ok || f.Ask == "" || f.Doc == "" {
			t.Errorf("%s: it is a fact of the rally too, or not documented", f.ID)
		}
	}
}

// What is asked of is found whichever id it has, and each thing has words.
func TestSignals(t *testing.T) {
	for _, id := range []string{"back-row-block", "touched", "time-out"} {
		q := &lookup.Query{Entry: "signal", Of: id}
		if err := q.Check(); err != nil || len(q.Sentences()) != 1 || strings.Contains(q.Sentences()[0], "%s") {
			t.Errorf("%s: %v %v", id, err, q.Sentences())
		}
	}
	if slices.Contains((&lookup.Query{Entry: "signal", Of: "illegal-substitution"}).Sentences(), "") {
		t.Error("an empty sentence")
	}
}
