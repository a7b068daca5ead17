package notation

import (
	"slices"
	"strings"
	"testing"

	"example.org/netpost/engine/play"
)

// Each row of the serve's lexicon stands once, tells a value that its fact
// has, and is found where its words stand.
func TestServeRows(t *testing.T) {
	for _, lexicon := range []struct {
		tables []*[]serveRow
		book   *patternBook
	}{{serveTables[:], serveBook()}, {groundTables[:], groundBook()}} {
		seen := map[string]bool{}
		for _, table := range lexicon.tables {
			for _, r := range *table {
				if seen[r.pattern] {
					t.Errorf("%q is twice in the table", r.pattern)
				}
				seen[r.pattern] = true
				if r.op == svTell || r.op == svSetting {
					f, ok := play.FactByID(r.fact)
					if !ok || !f.Has(r.value) {
						t.Errorf("%q: fact %s has no value %q", r.pattern, r.fact, r.value)
					}
				}
				text := strings.Join(said(stepsOf(r.pattern)), " ")
				m := newMatcher(newScene(tokens(text)), lexicon.book)
				if _, ok := m.at(0); !ok {
					t.Errorf("%q is not found in %q", r.pattern, text)
				}
			}
		}
	}
}

// said are the first words of every step.
func said(fs []serveStep) []string {
	var out []string
	for _, f := range fs {
		if len(f.words) == 0 {
			out = append(out, said(f.part[0])...)
			continue
		}
		switch w := f.words[0]; w {
		case "@V":
			out = append(out, "serving", "team")
		case "@S", "@R", "@X", "@Y":
			out = append(out, "their")
		case "#":
			out = append(out, "7")
		case "<label>":
			out = append(out, "#7")
		default:
			out = append(out, w)
		}
	}
	return out
}

// The parts of the serve's lexicon are sorted by name, and each is used.
func TestServeParts(t *testing.T) {
	used := map[string]bool{}
	note := func(pattern string) {
		for f := range strings.FieldsSeq(pattern) {
			for w := range strings.SplitSeq(strings.TrimSuffix(f, "?"), "|") {
				if name, ok := strings.CutPrefix(w, "$"); ok {
					used[name] = true
				}
			}
		}
	}
	for _, table := range slices.Concat(serveTables[:], groundTables[:]) {
		for _, r := range *table {
			note(r.pattern)
		}
	}
	for i, p := range serveParts {
		for _, s := range p.phrases {
			note(s)
		}
		if i > 0 && serveParts[i-1].name >= p.name {
			t.Errorf("part %s stands after %s; sort by name", p.name, serveParts[i-1].name)
		}
	}
	for _, p := range serveParts {
		if !used[p.name] {
			t.Errorf("no row uses the part %s", p.name)
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
		{"our serve hits the net and falls back on our side", "we are serving, our server serves; the ball hits the net; the ball goes into the net"},
		{"receivers overlapped but nobody noticed until the next serve", ""},
		{"server tosses it before the whistle and hits it after", ""},
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
