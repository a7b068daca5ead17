package notation

import (
	"strings"
	"testing"

	"example.org/netpost/engine/play"
)

// Each row of the serve's lexicon stands once, tells a value that its fact
// has, and is found where its words stand.
func TestServeRows(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range serveRows {
		if seen[r.pattern] {
			t.Errorf("%q is twice in the table", r.pattern)
		}
		seen[r.pattern] = true
		if r.op == svTell {
			f, ok := play.FactByID(r.fact)
			if !ok || !f.Has(r.value) {
				t.Errorf("%q: fact %s has no value %q", r.pattern, r.fact, r.value)
			}
		}
		var ws []string
		for f := range strings.FieldsSeq(serveMacros.Replace(r.pattern)) {
			w, _, _ := strings.Cut(strings.TrimSuffix(f, "?"), "|")
			switch w {
			case "@S":
				w = "their"
			case "@R":
				w = "their"
			case "#":
				w = "7"
			case "<label>":
				w = "#7"
			}
			ws = append(ws, w)
		}
		text := strings.Join(ws, " ")
		m := newMatcher(newScene(tokens(text)))
		if _, ok := m.at(0); !ok {
			t.Errorf("%q is not found in %q", r.pattern, text)
		}
	}
}

// A text of the serve is taken only where every word has its part.
func TestReadService(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"server lets the toss drop", "A is serving, A's server tosses the ball without serving it, the toss drops to the floor"},
		{"our server tosses the ball and lets it drop", "we are serving, our server tosses the ball without serving it, the toss drops to the floor"},
		{"receiving team out of position, serve goes into the net", "the serving team is serving, the serving team's server serves, the receivers out of position; the ball goes into the net"},
		{"server steps on the end line after contact", "A is serving, A's server serves, the feet in the service zone"},
		{"wrong server?", ""},
		{"server steps on the end line, perhaps a beam fell", ""},
		{"server did not step on the end line at contact", ""},
		{"line judge calls foot fault on the server", ""},
	} {
		s := newScene(tokens(c.text))
		s.run()
		p, _, ok := s.readService()
		got := ""
		if ok {
			got = Print(p)
		}
		if got != c.want {
			t.Errorf("%q: read as %q, want %q", c.text, got, c.want)
		}
	}
}
