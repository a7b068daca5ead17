package notation

import (
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/play"
)

// The phrases of look-ups are sorted, each is once among them, each idea of
// theirs is one that an entry names, and each that an entry names has words.
func TestIdeas(t *testing.T) {
	named := map[string]bool{}
	for _, e := range lookup.Entries() {
		for _, w := range e.Words {
			for id := range strings.FieldsSeq(w) {
				name, _, _ := strings.Cut(id, "=")
				named[name] = true
			}
		}
	}
	for _, free := range []string{"what-is", "during", "set", "team", "match", "rule"} {
		named[free] = true // may be in any question
	}
	worded := map[string]bool{"number": true, "rule-number": true} // of their own form
	for i, d := range ideas {
		if i > 0 && ideas[i-1].phrase >= d.phrase {
			t.Errorf("%q stands after %q", d.phrase, ideas[i-1].phrase)
		}
		for id := range strings.FieldsSeq(d.ids) {
			name, _, _ := strings.Cut(id, "=")
			worded[name] = true
			if !named[name] {
				t.Errorf("%q: no entry names the idea %s", d.phrase, id)
			}
		}
	}
	for name := range named {
		if name != "|" && name != "<" && !worded[name] {
			t.Errorf("no phrase has the idea %s", name)
		}
	}
	ws := strings.Fields(lookupFillers)
	if !slices.IsSorted(ws) || len(slices.Compact(slices.Clone(ws))) != len(ws) {
		t.Error("the words that carry nothing are not sorted, or one is twice among them")
	}
}

// A story with the words of a question is no look-up, and neither is a
// question with a word that its entry does not know.
func TestNoLookup(t *testing.T) {
	for _, text := range []string{
		"our setter hits the ball long, how long did it take",
		"after four hits R2 whistles, how long until he signals",
		"how many hits if the blocker touches it then sets it, fourth contact",
		"libero sets in front of the 10 foot line, hitter attacks, how high was the net",
		"how long is a medical time-out",
		"how long is a time-out in the national league",
		"how many subs did we use before the libero block",
		"can the libero attack and serve and be captain",
		"ball hits the antenna at 9-5, who calls it, fourth hit",
		"how many time-outs has the losing team left",
		"how long may a coach argue",
		"is the net too high for 10s",
		"signal for a touch by the middle after the block",
		"net contact by our hitter, whose point",
		"can R2 whistle a double R1 already whistled",
		"how many subs after an exceptional sub",
		"the score was 9-5-5 in sets, who serves",
		"net height beach",
		"four contacts, second was a block",
		"ball in plane, both front row, fourth contact?",
		"blocker touches the net, R2 calls it, overlap too",
		"serve hits the tape, how many seconds until it lands",
		"tonight, medical, how long is a time-out",
	} {
		r, err := Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if q, ok := r.Other.(*lookup.Query); ok {
			t.Errorf("%q: read as %v", text, q.Sentences())
		}
	}
}

// A greeting before the question does not matter, and neither does the number
// that somebody else claims.
func TestLookupChat(t *testing.T) {
	for text, entry := range map[string]string{
		"Hey guys, how many subs in a set?":                 "substitution-count",
		"haha honestly, can the libero serve":               "libero-serve",
		"how long is a time-out, other ref said 30 sec":     "time-out-length",
		"how many time-outs, and how long is each of them?": "time-outs",
	} {
		r, err := Read(text)
		if q, ok := r.Other.(*lookup.Query); err != nil || !ok || q.Entry != entry {
			t.Errorf("%q: %v %v, want %s", text, r.Other, err, entry)
		}
	}
}

// What a look-up prints reads back as the same look-up.
func TestLookupPrint(t *testing.T) {
	for _, e := range lookup.Entries() {
		ofs := []string{""}
		if e.Takes() {
			ofs = []string{"back-row-block", "double-contact", "net-contact", "serving-overlap", "captain", "shoelace", "huddle", "9-5-5"}
		}
		for _, of := range ofs {
			q := &lookup.Query{Entry: e.ID, Of: of}
			if q.Check() != nil {
				continue
			}
			told := q.Tell(play.Key{Fact: lookup.NetFor}, lookup.MenNet).Tell(play.Key{Fact: lookup.AgeGroup}, lookup.Juniors).(*lookup.Query)
			for _, q := range []*lookup.Query{q, told} {
				text := strings.Join(q.Sentences(), " ")
				r, err := Read(text)
				if got, ok := r.Other.(*lookup.Query); err != nil || !ok || got.Entry != q.Entry || got.Of != q.Of || !slices.Equal(got.Sentences(), q.Sentences()) {
					t.Errorf("%s %s: %q does not read back: %v %v", e.ID, of, text, r.Other, err)
				}
			}
		}
	}
}
