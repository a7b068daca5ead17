package answer

import (
	"slices"
	"strings"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
)

// verdict puts a ruling into the stable ids.
func (q *inquiry) verdict(r engine.Ruling) Verdict {
	if r.Outcome == engine.Unsettled {
		return Verdict{}
	}
	return Verdict{
		Outcome: Maybe(r.Outcome),
		Fault:   Maybe(r.Fault),
		Also:    r.Also,
		Replay:  Maybe(r.Replay),
		Measure: r.Measure,
		Against: names(q.subject, r.Against),
	}
}

func (q *inquiry) given(g engine.Given) Given {
	return Given{string(g.Key.Fact), g.Key.Of, string(g.Value), notation.ClauseOf(q.subject, g.Key, g.Value)}
}

func (q *inquiry) givens(gs []engine.Given) []Given {
	out := make([]Given, len(gs))
	for i, g := range gs {
		out[i] = q.given(g)
	}
	return out
}

// presumed says what was presumed on the way to the decisions, once each. What
// the telling itself implies is left out, and so is what a settled ruling does
// not rest on: where another value of the fact would rule alike.
func (q *inquiry) presumed() []string {
	var out []string
	for _, k := range collect(q.asked, func(d engine.Decision) []play.Key { return d.Presumed }) {
		f, _ := q.subject.Fact(k.Fact)
		switch {
		case f.Quiet, !q.restsOn(k):
		case f.About == play.OfSetting:
			out = append(out, f.Why)
		default:
			out = append(out, notation.ClauseOf(q.subject, k, q.subject.Presumption(k)))
		}
	}
	return unique(out)
}

// restsOn reports whether another value of a presumed fact would change one of
// the rulings. An open play rests on all that was presumed.
func (q *inquiry) restsOn(k play.Key) bool {
	return slices.ContainsFunc(q.asked, func(d engine.Decision) bool {
		return slices.Contains(d.Presumed, k) && (!d.Settled() || d.Flips(k))
	})
}

// rules are the rules that the decisions rest on, code by code.
func (q *inquiry) rules() []Rule {
	var out []Rule
	for _, d := range q.asked {
		for _, c := range cites(d) {
			r, _ := judge.ByID(c.Rule)
			cell := d.Book.Cell(c.Param)
			out = append(out, Rule{ID: c.Rule, Title: r.Title, Cite: cell.Rule, Basis: string(cell.Basis), Source: cell.Source,
				Code: string(d.Book.Code()), Edition: d.Book.Edition(), Adopted: Maybe(cell.Adopted)})
		}
	}
	return unique(out)
}

// cites are the cells that a decision rests on, each once: all of a settled
// one; of a tree those of its leaves that stop the rally, then the leading one
// of each leaf that plays on.
func cites(d engine.Decision) []engine.Cite {
	var stop, on []engine.Cite
	for _, l := range d.Leaves {
		c := l.Ruling.Cites
		switch {
		case d.Settled(), l.Ruling.Outcome != engine.PlayOn:
			stop = append(stop, c...)
		case len(c) > 0:
			on = append(on, c[0])
		}
	}
	out := slices.Concat(stop, on)
	for i := range out {
		out[i].Event = ""
	}
	return unique(out)
}

// doubts say what is uncertain in the cells and editions that the decisions
// rest on.
func (q *inquiry) doubts() []string {
	return collect(q.asked, func(d engine.Decision) []string {
		var out []string
		if s := d.Book.Doubt(); s != "" {
			out = append(out, string(d.Book.Code())+": "+s)
		}
		for _, c := range cites(d) {
			if cell := d.Book.Cell(c.Param); cell.Doubt != "" {
				out = append(out, string(d.Book.Code())+", "+title(c.Param)+": "+cell.Doubt)
			}
		}
		return out
	})
}

func title(p code.Param) string {
	r, _ := code.Find(p)
	return r.Title
}

// call is who calls the ruling and how. Where several codes rule alike and
// differ in the call, the signal goes by our own name for it and what else
// differs is left out.
func (q *inquiry) call(r engine.Ruling) *Call {
	var out *Call
	for _, d := range q.asked {
		c := judge.Call(r, q.subject, d.Book)
		if len(c.By) == 0 {
			return nil
		}
		one := Call{By: strings.Join(c.By, " or "), Signal: Maybe(c.Name), Number: Maybe(c.Number), Whistle: Maybe(c.Whistle)}
		if out == nil {
			out = &one
			continue
		}
		if out.Signal != one.Signal {
			out.Signal = Maybe(strings.ReplaceAll(c.Signal, "-", " "))
		}
		if out.Number != one.Number {
			out.Number = ""
		}
		if out.Whistle != one.Whistle {
			out.Whistle = ""
		}
	}
	return out
}

// next is what follows the ruling, nil when the ruling does not tell. Calls
// are those that the crew is said to have made already.
func (q *inquiry) next(r engine.Ruling, calls []string) *Next {
	point, serves := judge.Next(r, q.subject)
	n := Next{Point: names(q.subject, point), Serves: names(q.subject, serves), Words: Maybe(q.mistaken(r, calls))}
	if n.Point == nil && n.Serves == nil && n.Words == "" {
		return nil
	}
	return &n
}

// mistaken says what follows where a play that goes on was whistled for a
// fault; empty where it was not. What a mistaken whistle comes to is the codes'
// own.
func (q *inquiry) mistaken(r engine.Ruling, calls []string) string {
	if r.Outcome != engine.PlayOn {
		return ""
	}
	for _, id := range calls {
		rule, ok := judge.ByID(id)
		if !ok {
			continue
		}
		var after []string
		for _, d := range q.asked {
			switch d.Book.Cell("replay.inadvertent-whistle").Value {
			case "replay":
				after = append(after, "the rally is replayed")
			case "referee-decides":
				after = append(after, "the first referee rules so that neither side is penalised")
			default:
				after = append(after, "the rally is replayed, unless its result was already certain")
			}
		}
		words := "a whistle for " + rule.Title + " is a mistaken one here"
		if after = unique(after); len(after) == 1 {
			return words + ": " + after[0]
		}
		return words + "; what it comes to differs by code"
	}
	return ""
}

// tree lays a decision's tree out, its leaves into the answer's branches from
// left to right.
func (q *inquiry) tree(a *Answer, t *engine.Tree, path []Given) *Tree {
	out := &Tree{Ask: q.question(t)}
	for i, v := range t.Values {
		k := t.Kids[i]
		when := append(path[:len(path):len(path)], q.given(engine.Given{Key: t.Ask, Value: v}))
		out.Kids = append(out.Kids, q.kid(a, string(v), k, when))
	}
	return out
}

func (q *inquiry) kid(a *Answer, is string, t *engine.Tree, when []Given) Kid {
	if !t.Leaf() {
		return Kid{Is: is, Tree: q.tree(a, t, when)}
	}
	a.Branches = append(a.Branches, Branch{When: when, Verdict: q.verdict(t.Ruling), Answer: Maybe(t.Ruling.Answer)})
	leaf := len(a.Branches) - 1
	return Kid{Is: is, Leaf: &leaf}
}

func (q *inquiry) question(t *engine.Tree) Question {
	out := Question{Fact: string(t.Ask.Fact), Of: t.Ask.Of, Words: notation.QuestionOf(q.subject, t.Ask)}
	labels := notation.ChoicesOf(q.subject, t.Ask)
	f, _ := q.subject.Fact(t.Ask.Fact)
	for i, c := range f.Values {
		out.Values = append(out.Values, Value{string(c.Value), labels[i]})
	}
	return out
}

const codeQuestion = "Under which code is it played?"

// codeTree asks for the code, where the codes rule differently and none was
// named.
func (q *inquiry) codeTree(a *Answer) *Tree {
	out := &Tree{Ask: Question{Fact: CodeFact, Words: codeQuestion}}
	for _, d := range q.asked {
		c := string(d.Book.Code())
		out.Ask.Values = append(out.Ask.Values, Value{c, c})
		when := []Given{{Fact: CodeFact, Is: c, Words: "under the " + c + " code"}}
		t := d.Tree
		if d.Settled() {
			t = &engine.Tree{Ruling: d.Ruling}
		}
		out.Kids = append(out.Kids, q.kid(a, c, t, when))
	}
	return out
}

// collect gathers what each item gives, every thing once, in order.
func collect[I any, T comparable](items []I, of func(I) []T) []T {
	var out []T
	seen := map[T]bool{}
	for _, i := range items {
		for _, x := range of(i) {
			if !seen[x] {
				seen[x] = true
				out = append(out, x)
			}
		}
	}
	return out
}

func unique[T comparable](items []T) []T {
	return collect(items, func(x T) []T { return []T{x} })
}

// cells are what the decisions read of the tables.
func (q *inquiry) cells() Cells {
	out := Cells{}
	for _, d := range q.asked {
		read := map[code.Param]string{}
		for _, p := range d.Params {
			read[p] = d.Book.Cell(p).Value
		}
		out[d.Book.Code()] = read
	}
	return out
}
