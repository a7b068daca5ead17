package casebook

import (
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
)

// Turned is a published note that today's tables, adoptions and rules no longer
// bear out.
type Turned struct {
	Note    *Note
	Finding Finding        // as Check has it
	Causes  []answer.Cause // what would have to be otherwise for the note to be right
}

// Recheck rules again on the plays of the published notes, each under its codes
// in its season, and lists those that the engine rules otherwise, or no longer
// reads whole, and those that depart from a book that now rules as they do. The
// order is that of the notes.
//
// What a note was written under is not kept, so the cause is sought: it is a
// cell that was read and would, with another value, give the note's ruling.
// Where no one cell would, it is the rules.
func Recheck(b *Book) []Turned {
	c := newChecker(b, CheckOptions{})
	found := make([][]Turned, len(b.notes))
	c.each(func(i int, n *Note) {
		if n.Status != Published {
			return
		}
		p := c.prove(n)
		var fs []Finding
		if p.done {
			fs = n.readFindings(&p)
		}
		if p.whole {
			fs = append(fs, c.rulingFindings(n, &p)...)
		}
		for _, f := range fs {
			found[i] = append(found[i], Turned{Note: n, Finding: f})
		}
		if len(fs) == 1 && fs[0].Check == checkRuling && p.whole {
			found[i][0].Causes = c.turnedBy(n, &p)
		}
	})
	var out []Turned
	for _, f := range found {
		out = append(out, f...)
	}
	return out
}

// turnedBy lists the cells of each code that a note's ruling hangs on.
func (c *checker) turnedBy(n *Note, p *proof) []answer.Cause {
	var out []answer.Cause
	for i, v := range p.verdicts {
		if v.agrees || v.err != nil {
			continue
		}
		d := v.decision
		before := len(out)
		for _, param := range d.Params {
			row, _ := code.Find(param)
			now := d.Book.Cell(param)
			for _, other := range row.Values {
				if other.ID == now.Value {
					continue
				}
				b, err := d.Book.With(code.Overlay{Param: param, Code: n.Codes[i], Value: other.ID, Reason: "to compare"})
				if err != nil {
					continue
				}
				if e, err := judge.Decide(p.reading.Subject(), b); err == nil && agrees(n.Ruling, p.reading, e) {
					out = append(out, answer.Cause{Kind: answer.ByCell, Code: n.Codes[i], Param: param, Title: row.Title, Cite: now.Rule,
						Was: b.Cell(param).Text, Now: now.Text, Adopted: now.Adopted})
					break
				}
			}
		}
		if len(out) == before {
			out = append(out, answer.Cause{Kind: answer.ByRule, Code: n.Codes[i], Was: n.Ruling.String(), Now: decided(p, v)})
		}
	}
	return out
}

func decided(p *proof, v verdict) string {
	if !v.decision.Settled() {
		return "depends"
	}
	return said(p.reading.Subject(), v.decision)
}
