package bot

import (
	"strings"

	"example.org/netpost/engine/answer"
)

// node lays a tree of an answer out. Answers that come to the same are one
// line.
func node(a answer.Answer, t *answer.Tree) Node {
	n := Node{Ask: t.Ask.Words}
	for _, k := range t.Kids {
		kid := Kid{When: label(t.Ask, k.Is)}
		if k.Tree != nil {
			next := node(a, k.Tree)
			kid.Next = &next
		} else {
			kid.Then = result(a.Branches[*k.Leaf])
		}
		n.Kids = join(n.Kids, kid)
	}
	return n
}

// join adds an answer, to an earlier one that comes to the same if there is
// one.
func join(kids []Kid, k Kid) []Kid {
	for i := range kids {
		if same(kids[i], k) {
			kids[i].When += " or " + k.When
			return kids
		}
	}
	return append(kids, k)
}

func same(a, b Kid) bool {
	if a.Next == nil || b.Next == nil {
		return a.Next == nil && b.Next == nil && a.Then == b.Then
	}
	if a.Next.Ask != b.Next.Ask || len(a.Next.Kids) != len(b.Next.Kids) {
		return false
	}
	for i := range a.Next.Kids {
		if a.Next.Kids[i].When != b.Next.Kids[i].When || !same(a.Next.Kids[i], b.Next.Kids[i]) {
			return false
		}
	}
	return true
}

func result(b answer.Branch) string {
	if b.Answer == "" {
		return verdict(b.Verdict)
	}
	if b.Outcome != "" || len(b.Measure) > 0 {
		return verdict(b.Verdict) + "; " + string(b.Answer)
	}
	return string(b.Answer)
}

func label(q answer.Question, is string) string {
	for _, v := range q.Values {
		if v.ID == is {
			return v.Words
		}
	}
	return is
}

// answers are the buttons for the values of a question. The state is what
// answer.ParseGiven reads.
func answers(q answer.Question) Buttons {
	fact := q.Fact
	if q.Of != "" {
		fact += "@" + q.Of
	}
	b := Buttons{Label: "Answer with"}
	for _, v := range q.Values {
		b.Items = append(b.Items, Button{Label: v.Words, State: strings.Join([]string{fact, v.ID}, "=")})
	}
	return b
}
