package casebook

import (
	"fmt"
	"math/bits"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// Two notes of one code contradict each other when their plays can be the same
// play and they rule differently on it. The plays are laid over each other
// event by event, what each tells and what its ruling presumes against what the
// other does; nothing that differs means that they can be the same.
//
// Where the engine rules as both notes say, in one season, they can't
// contradict: what settles each play settles the play that both are. So only
// pairs with a departure or of two seasons are left, and they are found by sets
// instead of by trying every pair: the notes that can be the same play as one
// are all of its kind, less those that say otherwise of something. At last the
// engine decides the shared play: where it no longer rules as a note that it
// bears out, what the other note tells has made it another play.

// Limits of what is looked at for one note.
const (
	mostContradictions = 3    // that are reported
	mostShared         = 2000 // shared plays that are tried
)

// claim is one live note's ruling on its play under one code.
type claim struct {
	note   *Note
	shape  shape   // the play as told
	others []shape // its other tellings
	ruling Ruling  // the side at fault as in the shape
	proved bool    // the engine rules so
}

// group holds the claims of one code whose plays are of one kind.
type group struct {
	code   code.Code
	claims []*claim
	all    bitset
	told   map[string]bitset            // by fact: the claims that say something of it
	says   map[string]map[string]bitset // by fact and value: the claims that say so
	rules  map[string]bitset            // by ruling: the claims that rule so

	shared map[pair]*play.Rally // plays that two have in common; nil for none that counts
}

// pair names two plays laid over each other, with the seasons of their notes
// where the engine bears those out.
type pair struct {
	play, other     string
	season, against code.Season
	telling         int
}

func checkContradictions(c *checker) []Finding {
	var out []Finding
	for _, cd := range code.All() {
		var groups []*group
		byKind := map[string]*group{}
		for i, n := range c.book.notes {
			cl := c.claim(i, n, cd)
			if cl == nil {
				continue
			}
			g := byKind[cl.shape.kinds]
			if g == nil {
				g = newGroup(cd)
				byKind[cl.shape.kinds] = g
				groups = append(groups, g)
			}
			g.add(cl)
		}
		for _, g := range groups {
			out = append(out, g.contradictions(c, byKind)...)
		}
		out = append(out, c.otherContradictions(cd)...)
	}
	return out
}

// claim is what note i rules under a code; nil when it rules nothing that
// another note could contradict.
func (c *checker) claim(i int, n *Note, cd code.Code) *claim {
	p := &c.proofs[i]
	if !p.whole || n.Ruling.Outcome == "depends" || n.Status != Published || !n.For(cd) {
		return nil
	}
	if !c.options.Today.IsZero() && n.expired(c.options.Today) {
		return nil
	}
	if p.reading.Rally == nil {
		return nil // see otherClaim
	}
	var v verdict
	for j, x := range n.Codes {
		if x == cd {
			v = p.verdicts[j]
		}
	}
	if v.err == nil && !v.agrees && n.Departs == "" {
		return nil // it has a finding of its own, and what it should rule is open
	}
	all := shapes(p.reading.Rally, v.decision.Presumed)
	cl := &claim{note: n, shape: all[0], others: all[1:], proved: v.err == nil && v.agrees, ruling: n.Ruling}
	if n.Ruling.Against != "" {
		t := side(n.Ruling.Against, p.reading, cd)
		if cl.shape.swap {
			t = t.Other()
		}
		cl.ruling.Against = t.String()
	}
	return cl
}

func newGroup(cd code.Code) *group {
	return &group{
		code: cd, told: map[string]bitset{}, says: map[string]map[string]bitset{},
		rules: map[string]bitset{}, shared: map[pair]*play.Rally{},
	}
}

func (g *group) add(cl *claim) {
	i := len(g.claims)
	g.claims = append(g.claims, cl)
	g.all.set(i)
	for _, f := range cl.shape.facts {
		if g.says[f.name] == nil {
			g.says[f.name] = map[string]bitset{}
		}
		put(g.told, f.name, i)
		put(g.says[f.name], f.value, i)
	}
	put(g.rules, cl.ruling.String(), i)
}

func put(m map[string]bitset, key string, i int) {
	b := m[key]
	b.set(i)
	m[key] = b
}

// contradictions looks up every claim of the group, in each of its tellings,
// among the claims of that telling's kind.
func (g *group) contradictions(c *checker, byKind map[string]*group) []Finding {
	var out []Finding
	for _, cl := range g.claims {
		told, tried := 0, 0
		seen := map[*claim]bool{cl: true}
	tellings:
		for telling, s := range append([]shape{cl.shape}, cl.others...) {
			in := byKind[s.kinds]
			if in == nil {
				continue
			}
			ruling := cl.ruling
			if s.swap != cl.shape.swap && ruling.Against != "" {
				ruling.Against = map[string]string{"A": "B", "B": "A"}[ruling.Against]
			}
			for j := range in.compatible(s, ruling).members {
				o := in.claims[j]
				if seen[o] || !contradict(cl, o, ruling) {
					continue
				}
				if tried++; tried > mostShared {
					break tellings
				}
				shared := g.common(c, cl, o, s, telling)
				if shared == nil {
					continue
				}
				if told == mostContradictions {
					last := &out[len(out)-1]
					last.Related = append(last.Related, Place{What: "and there are further notes that rule otherwise on it"})
					break tellings
				}
				seen[o] = true
				told++
				out = append(out, g.contradiction(cl, o, shared))
			}
		}
	}
	return out
}

// compatible is the claims that can be the same play and rule otherwise.
func (g *group) compatible(s shape, r Ruling) bitset {
	rest := g.all.clone()
	rest.without(g.rules[r.String()])
	for _, f := range s.facts {
		otherwise := g.told[f.name].clone()
		otherwise.without(g.says[f.name][f.value])
		rest.without(otherwise)
	}
	return rest
}

// contradict reports whether two claims on one play can't both stand. Each pair
// is met twice and reported once, on the later note.
func contradict(a, b *claim, ruling Ruling) bool {
	switch {
	case later(b.note, a.note):
		return false
	case a.proved && b.proved && a.note.Season == b.note.Season:
		return false
	case !together(a.note, b.note):
		return false
	}
	r := b.ruling
	if ruling.Against == "" || r.Against == "" {
		ruling.Against, r.Against = "", ""
	}
	return ruling.String() != r.String()
}

// later reports whether n was issued after m, by id on one day.
func later(n, m *Note) bool {
	if d := n.Issued.Compare(m.Issued); d != 0 {
		return d > 0
	}
	return n.ID > m.ID
}

// together reports whether two notes are in force on one day at least.
func together(a, b *Note) bool {
	return (a.Expires.IsZero() || !a.Expires.Before(b.Issued)) && (b.Expires.IsZero() || !b.Expires.Before(a.Issued))
}

// common is the play that two claims share, in the sides of the first, nil
// where the engine rules it otherwise than one that it bears out.
func (g *group) common(c *checker, a, b *claim, s shape, telling int) *play.Rally {
	key := pair{play: a.note.Play, other: b.note.Play, telling: telling}
	if a.proved {
		key.season = a.note.Season
	}
	if b.proved {
		key.against = b.note.Season
	}
	shared, known := g.shared[key]
	if known {
		return shared
	}
	shared = s.over(b.shape)
	if s.swap { // in the words of the note's own sides
		shared = shared.Swap()
	}
	if !g.stands(c, shared, a) || !g.stands(c, shared, b) {
		shared = nil
	}
	g.shared[key] = shared
	return shared
}

// stands reports whether the engine rules a shared play as a claim that it
// bears out; one that it does not bear out stands by itself.
func (g *group) stands(c *checker, shared *play.Rally, cl *claim) bool {
	if !cl.proved {
		return true
	}
	b, err := c.open(codeSeason{g.code, cl.note.Season})
	if err != nil {
		return false
	}
	d, err := rules.Decide(shared, b)
	if err != nil || !d.Settled() {
		return false
	}
	r := d.Ruling
	return r.Outcome == engine.Unsettled || string(r.Outcome) == cl.ruling.Outcome && r.Fault == cl.ruling.Fault && r.Replay == cl.ruling.Replay
}

func (g *group) contradiction(a, b *claim, shared *play.Rally) Finding {
	f := a.note.finding(checkContradiction, "play",
		fmt.Sprintf("the note rules %s, and %s rules %s on what can be the same play under the %s rules", a.note.Ruling, b.note.ID, b.note.Ruling, g.code),
		"supersede "+b.note.ID+", or tell in both plays what tells them apart")
	f.Related = []Place{
		{b.note.Path, b.note.front.line(b.note.front.find("play")), b.note.Play},
		{What: "both cover: " + printed(shared)},
	}
	return f
}

func printed(p *play.Rally) string { return strings.TrimSpace(notation.Print(p)) }

// bitset is a set of small numbers. The zero value is empty.
type bitset []uint64

func (b *bitset) set(i int) {
	for len(*b) <= i/64 {
		*b = append(*b, 0)
	}
	(*b)[i/64] |= 1 << (i % 64)
}

func (b bitset) clone() bitset { return append(bitset(nil), b...) }

func (b bitset) without(o bitset) {
	for i := range min(len(b), len(o)) {
		b[i] &^= o[i]
	}
}

// members yields the numbers in ascending order.
func (b bitset) members(yield func(int) bool) {
	for i, w := range b {
		for ; w != 0; w &= w - 1 {
			if !yield(i*64 + bits.TrailingZeros64(w)) {
				return
			}
		}
	}
}
