package engine

import (
	"fmt"
	"strings"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// MaxLeaves bounds the runs of one decision. A play that needs more is too
// open to rule on; Decide says so instead of taking for ever.
const MaxLeaves = 4096

// Given is one fact with a value, as assumed on the way to a leaf.
type Given struct {
	Key   play.Key
	Value play.Value
}

// Leaf is one way that a play can be, and its ruling.
type Leaf struct {
	When   []Given // the answers that lead here, in the tree's order
	Ruling Ruling
}

// Decision is what the engine says of a subject under one code and season.
type Decision struct {
	Subject Subject
	Book    *code.Book
	// Ruling is the ruling of a settled play, the zero value otherwise.
	Ruling Ruling
	// Tree is the smallest tree of questions found, nil when settled.
	Tree *Tree
	// Leaves are the tree's, from left to right; one when settled.
	Leaves []Leaf
	// Presumed are the presumptions that the runs used.
	Presumed []play.Key
	// Read are the facts that the runs read, told, presumed and unknown.
	Read []play.Key
	// Params are the parameters of the code that the runs read.
	Params []code.Param
	// Whole: the runs looked at more of the book than Params.
	Whole bool
	// Exact is false when there were too many unknown facts for the exact
	// search and the named fallback chose the questions.
	Exact bool

	judge Judge
}

// Settled reports whether every run rules alike.
func (d Decision) Settled() bool { return d.Tree == nil }

// Decide judges a subject under one code. It fails when the judge reads a fact
// outside the table or when the play is too open (MaxLeaves).
func Decide(j Judge, s Subject, b *code.Book) (Decision, error) {
	d := Decision{Subject: s, Book: b, judge: j, Exact: true}
	root, err := d.grow(nil, new(int))
	if err != nil {
		return Decision{}, err
	}
	root = root.merge()
	if root.fact.Fact == "" {
		d.Ruling = root.ruling
		d.Leaves = []Leaf{{Ruling: root.ruling}}
		return d, nil
	}
	d.Tree, d.Exact = smallest(root)
	d.Leaves = d.Tree.leaves(nil, nil)
	return d, nil
}

// node is the tree in reading order: a fork on a fact, or a leaf.
type node struct {
	fact   play.Key
	values []play.Value
	kids   []*node
	ruling Ruling
	key    string
}

func (d *Decision) grow(assumed []assumption, count *int) (*node, error) {
	r, ruling, missing, ok := run(d.judge, d.Subject, d.Book, assumed)
	d.collect(&r)
	if ok {
		if len(ruling.Conflict) > 0 {
			return nil, fmt.Errorf("the rules %s rule differently on one moment and none says which prevails", strings.Join(ruling.Conflict, " and "))
		}
		if *count++; *count > MaxLeaves {
			return nil, fmt.Errorf("the play leaves too much open: more than %d ways it can be; tell more of it", MaxLeaves)
		}
		return &node{ruling: ruling, key: ruling.Key()}, nil
	}
	f, known := d.Subject.Fact(missing.Fact)
	if !known {
		return nil, fmt.Errorf("a rule read the fact %q, which is not in the fact table", missing.Fact)
	}
	n := &node{fact: missing}
	for _, c := range f.Values {
		next := append(assumed[:len(assumed):len(assumed)], assumption{missing, c.Value})
		kid, err := d.grow(next, count)
		if err != nil {
			return nil, err
		}
		n.values = append(n.values, c.Value)
		n.kids = append(n.kids, kid)
	}
	return n, nil
}

func (d *Decision) collect(r *Read) {
	d.Read = union(d.Read, r.keys)
	d.Presumed = union(d.Presumed, r.presumed)
	d.Params = union(d.Params, r.params)
	d.Whole = d.Whole || r.whole
}

func union[T comparable](into, from []T) []T {
next:
	for _, x := range from {
		for _, y := range into {
			if x == y {
				continue next
			}
		}
		into = append(into, x)
	}
	return into
}

// merge folds forks whose kids all rule alike.
func (n *node) merge() *node {
	if n.fact.Fact == "" {
		return n
	}
	same := true
	for i, k := range n.kids {
		n.kids[i] = k.merge()
		same = same && n.kids[i].fact.Fact == "" && n.kids[i].key == n.kids[0].key
	}
	if same {
		return n.kids[0]
	}
	return n
}
