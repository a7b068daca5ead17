package answer

import (
	"bytes"
	"encoding/json"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
)

// Codes holds the same play under the codes, in the codes' order. It marshals
// to an object with a key a code.
type Codes []CodeAnswer

// CodeAnswer is the ruling of one code.
type CodeAnswer struct {
	Code string `json:"-"`
	Verdict
	Answer  Maybe  `json:"answer"` // of a look-up or a measure
	Edition string `json:"edition"`
	Cite    Maybe  `json:"cite"`    // the leading rule's number
	Differs bool   `json:"differs"` // from the answer's own ruling
	// Why lists where this code's text differs in what the ruling read.
	Why []string `json:"why"`
}

// MarshalJSON writes the codes in their order.
func (c Codes) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, a := range c {
		if i > 0 {
			b.WriteByte(',')
		}
		a.Verdict, a.Why = a.Verdict.lists(), list(a.Why)
		key, err := json.Marshal(a.Code)
		if err != nil {
			return nil, err
		}
		val, err := json.Marshal(a)
		if err != nil {
			return nil, err
		}
		b.Write(key)
		b.WriteByte(':')
		b.Write(val)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// codes compares the play under every code that holds the season: the others
// than the one asked for, or all where all were asked for.
func (q *inquiry) codes() Codes {
	var out Codes
	own := signature(q.asked[0])
	one := alike(q.asked)
	for _, d := range q.all {
		if len(q.asked) == 1 && d.Book == q.asked[0].Book && !q.show {
			continue
		}
		c := CodeAnswer{Code: string(d.Book.Code()), Edition: d.Book.Edition(), Differs: !one || signature(d) != own}
		if d.Settled() {
			c.Verdict, c.Answer = q.verdict(d.Ruling), Maybe(d.Ruling.Answer)
		} else {
			c.Outcome = Depends
		}
		if cs := cites(d); len(cs) > 0 {
			c.Cite = Maybe(d.Book.Cell(cs[0].Param).Rule)
		}
		if one && c.Differs {
			c.Why = q.why(d)
		}
		out = append(out, c)
	}
	return out
}

// why lists where a code's text differs from that of the code asked for, in
// what made the ruling another: each parameter whose value alone, laid over
// the book asked for, changes the ruling. Where it takes more than one of
// them, all that were read and differ.
func (q *inquiry) why(d engine.Decision) []string {
	own := q.asked[0]
	var alone, all []string
	for _, p := range collect([]engine.Decision{own, d}, func(d engine.Decision) []code.Param { return d.Params }) {
		cell := d.Book.Cell(p)
		if own.Book.Cell(p).Value == cell.Value {
			continue
		}
		s := title(p) + ": " + cell.Text
		all = append(all, s)
		b, err := own.Book.With(code.Overlay{Param: p, Value: cell.Value, Reason: "to compare"})
		if err != nil {
			continue
		}
		if e, err := judge.Decide(q.subject, b); err == nil && signature(e) != signature(own) {
			alone = append(alone, s)
		}
	}
	if alone != nil {
		return alone
	}
	return all
}

func alike(ds []engine.Decision) bool {
	for _, d := range ds[1:] {
		if signature(d) != signature(ds[0]) {
			return false
		}
	}
	return true
}

// signature is what a decision comes to: the same for decisions that ask the
// same facts and rule the same way on each answer.
func signature(d engine.Decision) string {
	if d.Settled() {
		return d.Ruling.Key()
	}
	var b strings.Builder
	var walk func(t *engine.Tree)
	walk = func(t *engine.Tree) {
		if t.Leaf() {
			b.WriteString(t.Ruling.Key())
			return
		}
		b.WriteString(t.Ask.String())
		for i, k := range t.Kids {
			b.WriteString("(" + string(t.Values[i]) + ":")
			walk(k)
			b.WriteByte(')')
		}
	}
	walk(d.Tree)
	return b.String()
}
