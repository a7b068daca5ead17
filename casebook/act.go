package casebook

import (
	"fmt"
	"slices"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/deadball"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/play"
)

// Two notes on what is no play of the ball contradict each other when they can
// be about the same thing and rule differently on it. Two acts in a dead ball
// can be the same act when they are of one kind and nothing that one tells, or
// that its ruling presumes, is told otherwise by the other. Any other subject,
// an alignment or a line-up, is the same only where it tells the same.

// otherClaim is one live note's ruling on a subject that is no rally, with the
// side that acts called A.
type otherClaim struct {
	note   *Note
	about  play.Spoken
	facts  map[play.FactID]play.Value // told and presumed, of an act
	ruling Ruling
	proved bool
}

// sameKind is what two claims must share before their facts are compared.
func (cl *otherClaim) sameKind() string {
	if a, ok := cl.about.(*deadball.Act); ok {
		return "act " + string(a.Kind)
	}
	return strings.Join(cl.about.Sentences(), "\n")
}

// otherClaim is what note i rules under a code on a subject that is no rally;
// nil when it rules nothing that another note could contradict.
func (c *checker) otherClaim(i int, n *Note, cd code.Code) *otherClaim {
	p := &c.proofs[i]
	if !p.whole || p.reading.Other == nil || n.Ruling.IsZero() || n.Ruling.Outcome == "depends" || n.Status != Published || !n.For(cd) {
		return nil
	}
	if !c.options.Today.IsZero() && n.expired(c.options.Today) {
		return nil
	}
	v := p.verdicts[slices.Index(n.Codes, cd)]
	if v.err == nil && !v.agrees && n.Departs == "" {
		return nil // it has a finding of its own, and what it should rule is open
	}
	cl := &otherClaim{note: n, about: p.reading.Other, proved: v.err == nil && v.agrees, ruling: n.Ruling}
	against := play.NoTeam
	if n.Ruling.Against != "" {
		against = side(n.Ruling.Against, p.reading, cd)
		cl.ruling.Against = against.String()
	}
	a, ok := cl.about.(*deadball.Act)
	if !ok {
		return cl
	}
	if a.By == play.B {
		a = a.Swap()
		cl.about = a
		if against != play.NoTeam {
			cl.ruling.Against = against.Other().String()
		}
	}
	cl.facts = map[play.FactID]play.Value{}
	for _, k := range a.Known() {
		cl.facts[k.Fact] = a.Get(k)
	}
	for _, k := range v.decision.Presumed {
		if a.Get(k) == play.Unknown {
			cl.facts[k.Fact] = a.Presumption(k)
		}
	}
	return cl
}

// otherContradictions compares the notes of one code that rule on one kind of
// subject; each pair is reported once, on the later note.
func (c *checker) otherContradictions(cd code.Code) []Finding {
	var out []Finding
	byKind := map[string][]*otherClaim{}
	for i, n := range c.book.notes {
		cl := c.otherClaim(i, n, cd)
		if cl == nil {
			continue
		}
		kind := cl.sameKind()
		told := 0
		for _, o := range byKind[kind] {
			if told < mostContradictions && c.otherContradict(cl, o, cd) {
				told++
				late, early := cl, o
				if later(early.note, late.note) {
					late, early = early, late
				}
				out = append(out, otherContradiction(late, early, cd))
			}
		}
		byKind[kind] = append(byKind[kind], cl)
	}
	return out
}

// otherContradict reports whether two claims can be about the same thing and
// can't both stand.
func (c *checker) otherContradict(a, b *otherClaim, cd code.Code) bool {
	if !together(a.note, b.note) || a.proved && b.proved && a.note.Season == b.note.Season {
		return false
	}
	r, s := a.ruling, b.ruling
	if r.Against == "" || s.Against == "" {
		r.Against, s.Against = "", ""
	}
	if r.Answer != "" && (begins(r.Answer, s.Answer) || begins(s.Answer, r.Answer)) {
		s.Answer = r.Answer
	}
	if r.String() == s.String() {
		return false
	}
	for f, v := range a.facts {
		if w, ok := b.facts[f]; ok && v != w {
			return false
		}
	}
	return c.bearsOut(a, b, cd) && c.bearsOut(b, a, cd)
}

// bearsOut reports whether the engine, where it rules on a claim's own subject
// as the claim does, still does so when told what the other tells as well.
func (c *checker) bearsOut(cl, other *otherClaim, cd code.Code) bool {
	a, ok := cl.about.(*deadball.Act)
	if !ok || !cl.proved {
		return true
	}
	var shared play.Subject = a
	for _, k := range other.about.Known() {
		shared = shared.Tell(k, other.about.Get(k))
	}
	b, err := c.open(codeSeason{cd, cl.note.Season})
	if err != nil {
		return false
	}
	d, err := judge.Decide(shared, b)
	if err != nil || !d.Settled() {
		return false
	}
	got := d.Ruling
	return string(got.Outcome) == cl.ruling.Outcome && got.Fault == cl.ruling.Fault && got.Replay == cl.ruling.Replay &&
		!slices.ContainsFunc(cl.ruling.Measure, func(m string) bool { return !slices.Contains(got.Measure, m) })
}

func otherContradiction(a, b *otherClaim, cd code.Code) Finding {
	f := a.note.finding(checkContradiction, "play",
		fmt.Sprintf("the note rules %s, and %s rules %s on what can be the same under the %s rules", a.note.Ruling, b.note.ID, b.note.Ruling, cd),
		"supersede "+b.note.ID+", or tell in both plays what tells them apart")
	f.Related = []Place{{b.note.Path, b.note.front.line(b.note.front.find("play")), b.note.Play}}
	return f
}
