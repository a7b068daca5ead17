// Package casetest makes casebooks for tests and benchmarks: thousands of
// varied notes whose plays read and whose rulings are the engine's, so that a
// check of one season's notes finds nothing.
package casetest

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing/fstest"

	"example.org/netpost/casebook"
	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// Options say what is made. The zero value makes a hundred notes of three
// seasons, half of them with a play.
type Options struct {
	Notes   int           // how many; zero: 100
	Seed    uint64        // the same seed makes the same notes
	Seasons []code.Season // zero: 2024-25 to 2026-27
	Plays   float64       // the share with a play; zero: half, negative: none
	Words   int           // of a body; zero: 120
}

// Folder makes a casebook as a folder of files.
func Folder(o Options) fstest.MapFS {
	if o.Notes == 0 {
		o.Notes = 100
	}
	if len(o.Seasons) == 0 {
		o.Seasons = []code.Season{2024, 2025, 2026}
	}
	if o.Plays == 0 {
		o.Plays = 0.5
	}
	if o.Words == 0 {
		o.Words = 120
	}
	m := &maker{Options: o, r: rand.New(rand.NewPCG(o.Seed, 1)), files: fstest.MapFS{}, count: map[code.Season]int{}}
	for range o.Notes {
		m.note()
	}
	return m.files
}

// Book makes a casebook and loads it.
func Book(o Options) (*casebook.Book, []casebook.Finding) {
	return casebook.Load(Folder(o), casebook.LoadOptions{})
}

type maker struct {
	Options
	r     *rand.Rand
	files fstest.MapFS
	count map[code.Season]int
}

func (m *maker) note() {
	s := m.Seasons[m.r.IntN(len(m.Seasons))]
	m.count[s]++
	id := fmt.Sprintf("%d-%03d", int(s), m.count[s])
	cd := code.All()[m.r.IntN(len(code.All()))]
	var b strings.Builder
	fmt.Fprintf(&b, "---\nid: %s\ntitle: %s\ncodes: [%s]\nseason: %s\n", id, m.title(), cd, s)
	status := casebook.Published
	switch m.r.IntN(20) {
	case 0:
		status = casebook.Draft
	case 1:
		status = casebook.Withdrawn
	}
	fmt.Fprintf(&b, "status: %s\n", status)
	if status != casebook.Draft {
		fmt.Fprintf(&b, "issued: %d-%02d-%02d\n", int(s), 8+m.r.IntN(4), 1+m.r.IntN(28))
	}
	fmt.Fprintf(&b, "rules: [%q]\ntopics: [%s]\n", m.rule(cd, s), m.topics())
	if m.r.Float64() < m.Plays {
		b.WriteString(m.play(cd, s))
	}
	fmt.Fprintf(&b, "---\n%s\n", m.body())
	m.files[fmt.Sprintf("%d/%s.md", int(s), id)] = &fstest.MapFile{Data: []byte(b.String())}
}

// topics are one or two.
func (m *maker) topics() string {
	one, two := pick(m.r, topics), pick(m.r, words)
	if one == two {
		return one
	}
	return one + ", " + two
}

// rule is a number out of the code's tables.
func (m *maker) rule(cd code.Code, s code.Season) string {
	b, err := code.Open(cd, s)
	if err != nil {
		panic("casetest: " + err.Error())
	}
	rows := code.Rows()
	for {
		n, _, _ := strings.Cut(b.Cell(rows[m.r.IntN(len(rows))].Param).Rule, ";")
		if n != "" && !strings.ContainsAny(n, ", ") && (cd == code.Scholastic || !strings.Contains(n, "-")) {
			return n
		}
	}
}

// play is a random play in words with the engine's ruling on it. Plays that the
// reader does not take as they were meant are left out: reading is tested
// elsewhere.
func (m *maker) play(cd code.Code, s code.Season) string {
	b, err := code.Open(cd, s)
	if err != nil {
		panic("casetest: " + err.Error())
	}
	for {
		text := strings.TrimSpace(notation.Print(playgen.Rally(m.r, playgen.Options{})))
		r, err := notation.Read(text)
		if err != nil || r.Rally == nil || !r.Whole() || len(r.Corrected) > 0 || len(r.More) > 0 || len(text) > 1000 || strings.ContainsAny(text, ":#\"") {
			continue
		}
		d, err := rules.Decide(r.Rally, b)
		if err != nil || d.Settled() && d.Ruling.Outcome == engine.Unsettled {
			continue
		}
		return "play: " + text + "\nruling: " + ruling(d) + "\n"
	}
}

func ruling(d engine.Decision) string {
	if !d.Settled() {
		return "{outcome: depends}"
	}
	r := d.Ruling
	s := "{outcome: " + string(r.Outcome)
	if r.Fault != "" {
		s += ", fault: " + r.Fault
	}
	if r.Replay != "" {
		s += ", replay: " + r.Replay
	}
	if r.Against != play.NoTeam {
		s += ", against: " + r.Against.String()
	}
	return s + "}"
}

func pick(r *rand.Rand, list []string) string { return list[r.IntN(len(list))] }

func (m *maker) title() string {
	w := make([]string, 4+m.r.IntN(4))
	for i := range w {
		w[i] = m.word()
	}
	w[0] = strings.ToUpper(w[0][:1]) + w[0][1:]
	return strings.Join(w, " ")
}

func (m *maker) body() string {
	var b strings.Builder
	for i := range m.Words {
		switch {
		case i > 0 && i%40 == 0:
			b.WriteString(".\n\n")
		case i > 0 && i%10 == 0:
			b.WriteString(".\n")
		case i > 0:
			b.WriteByte(' ')
		}
		b.WriteString(m.word())
	}
	b.WriteByte('.')
	return b.String()
}

// word draws from the trade's words most of the time, else from a long tail of
// made ones.
func (m *maker) word() string {
	if m.r.IntN(10) < 7 {
		return pick(m.r, words)
	}
	n := int(m.r.ExpFloat64() * 1500)
	return syllables[n%len(syllables)] + syllables[n/len(syllables)%len(syllables)] + syllables[n/len(syllables)/len(syllables)%len(syllables)]
}
