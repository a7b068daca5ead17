package casebook

import (
	"fmt"
	"slices"

	"example.org/netpost/engine/code"
)

// nextFindings lists what the next season's tables do to a note that will still
// be in force then: they overturn its ruling, or change what it cites.
func (c *checker) nextFindings(n *Note, p *proof) []Finding {
	next := c.options.Next
	if next == 0 || n.Season >= next || !n.LiveIn(next) {
		return nil
	}
	var out []Finding
	for i, cd := range n.Codes {
		changes := c.changes(cd, n.Season)
		if len(changes) == 0 {
			continue
		}
		if p.whole {
			if f, ok := c.overturned(n, p, i); ok {
				out = append(out, f)
			}
			continue
		}
		for _, ch := range changes {
			if number, ok := n.cites(cd, ch); ok {
				f := n.finding(checkNext, "rules", fmt.Sprintf("the note cites %s, where the %s rules change for %s", number, cd, next), "read it against the new rules; supersede or withdraw it if it no longer holds")
				f.Related = []Place{{"", 0, changeWords(ch)}}
				out = append(out, f)
			}
		}
	}
	return out
}

// overturned decides the play again in the next season.
func (c *checker) overturned(n *Note, p *proof, i int) (Finding, bool) {
	now := p.verdicts[i]
	then := c.decide(n, p.reading, codeSeason{n.Codes[i], c.options.Next})
	if now.err != nil || then.err != nil || now.agrees == then.agrees {
		return Finding{}, false
	}
	under := fmt.Sprintf("under the %s rules of %s", n.Codes[i], c.options.Next)
	var f Finding
	switch {
	case then.agrees:
		f = n.finding(checkNext, "departs", under+" the book rules as this note does", "take departs out then")
	case then.decision.Settled():
		f = n.finding(checkNext, "ruling", "the note rules "+n.Ruling.String()+", but "+under+" the engine rules "+said(p.reading.Subject(), then.decision), "supersede it, or set expires to the end of its season")
	default:
		f = n.finding(checkNext, "ruling", "the note rules "+n.Ruling.String()+", but "+under+" it is no longer settled", "supersede it, or set expires to the end of its season")
	}
	for _, ch := range c.changes(n.Codes[i], n.Season) {
		if slices.Contains(now.decision.Params, ch.Param) || slices.Contains(then.decision.Params, ch.Param) {
			f.Related = append(f.Related, Place{"", 0, changeWords(ch)})
		}
	}
	return f, true
}

// changes lists what differs between a season and the next one that is checked
// against, adoptions included; nothing when a season is not held.
func (c *checker) changes(cd code.Code, s code.Season) []code.Change {
	from, err := c.open(codeSeason{cd, s})
	if err != nil {
		return nil
	}
	to, err := c.open(codeSeason{cd, c.options.Next})
	if err != nil {
		return nil
	}
	var out []code.Change
	for _, r := range code.Rows() {
		a, b := from.Cell(r.Param), to.Cell(r.Param)
		if a.Value != b.Value || a.Text != b.Text {
			out = append(out, code.Change{Param: r.Param, From: a, To: b})
		}
	}
	return out
}

// cites gives the number by which a note cites what changes.
func (n *Note) cites(cd code.Code, ch code.Change) (string, bool) {
	for _, number := range n.Rules {
		for _, cell := range []code.Cell{ch.From, ch.To} {
			for _, rule := range numbers(cd, cell.Rule) {
				if covers(number, rule) {
					return number, true
				}
			}
		}
	}
	return "", false
}

func changeWords(ch code.Change) string {
	title := string(ch.Param)
	if r, ok := code.Find(ch.Param); ok {
		title += ", " + r.Title
	}
	return fmt.Sprintf("%s: from %q to %q", title, ch.From.Text, ch.To.Text)
}

// checkNextHeld reports the codes whose next season is not in the tables.
func checkNextHeld(c *checker) []Finding {
	if c.options.Next == 0 {
		return nil
	}
	var out []Finding
	for _, cd := range code.All() {
		if len(c.book.Live(cd, c.options.Next)) == 0 {
			continue
		}
		if _, err := c.open(codeSeason{cd, c.options.Next}); err != nil {
			out = append(out, Finding{Check: checkNext, What: err.Error(), Mend: "ask for a season that is held"})
		}
	}
	return out
}
