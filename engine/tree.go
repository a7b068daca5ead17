package engine

import (
	"slices"

	"example.org/netpost/engine/play"
)

// ExactFacts is the number of unknown facts up to which the smallest tree is
// searched exactly. Above it the fallback asks at each fork the fact that
// leaves the fewest open leaves, summed over its values.
const ExactFacts = 8

// Tree is a tree of questions. A leaf has an empty Ask and carries a ruling.
type Tree struct {
	Ask    play.Key
	Values []play.Value
	Kids   []*Tree
	Ruling Ruling
}

// Leaf reports whether the tree is decided here.
func (t *Tree) Leaf() bool { return t.Ask.Fact == "" }

// Depth is the most questions that may have to be answered.
func (t *Tree) Depth() int {
	d := 0
	for _, k := range t.Kids {
		d = max(d, 1+k.Depth())
	}
	return d
}

// Walk follows the facts that known gives to a leaf. It stops early, at a
// tree that is no leaf, where known gives nothing.
func (t *Tree) Walk(known func(play.Key) play.Value) *Tree {
	for !t.Leaf() {
		i := slices.Index(t.Values, known(t.Ask))
		if i < 0 {
			return t
		}
		t = t.Kids[i]
	}
	return t
}

func (t *Tree) leaves(path []Given, out []Leaf) []Leaf {
	if t.Leaf() {
		return append(out, Leaf{slices.Clone(path), t.Ruling})
	}
	for i, k := range t.Kids {
		out = k.leaves(append(path, Given{t.Ask, t.Values[i]}), out)
	}
	return out
}

// search holds the worlds of one decision: each is one value for every
// unknown fact, and the ruling that the grown tree gives it.
type search struct {
	facts   []play.Key
	values  [][]play.Value
	rulings []Ruling
	worlds  []uint16 // ruling index by world, mixed radix over facts
	memo    map[uint64]best
}

type best struct {
	depth, size int
	ask         int // -1: decided
}

// smallest turns the grown tree into the smallest tree of questions: least
// depth, then fewest questions, ties by the order of first reading. The second
// result is false when the fallback was used.
func smallest(root *node) (*Tree, bool) {
	s := &search{memo: map[uint64]best{}}
	s.gather(root)
	if len(s.facts) > ExactFacts {
		return fallback(root), false
	}
	keys := map[string]uint16{}
	n := 1
	for _, v := range s.values {
		n *= len(v)
	}
	s.worlds = make([]uint16, n)
	pick := make([]int, len(s.facts))
	for w := range s.worlds {
		rest := w
		for i, v := range s.values {
			pick[i] = rest % len(v)
			rest /= len(v)
		}
		leaf := root
		for leaf.fact.Fact != "" {
			leaf = leaf.kids[pick[slices.Index(s.facts, leaf.fact)]]
		}
		id, ok := keys[leaf.key]
		if !ok {
			id = uint16(len(s.rulings))
			keys[leaf.key] = id
			s.rulings = append(s.rulings, leaf.ruling)
		}
		s.worlds[w] = id
	}
	state := make([]int, len(s.facts))
	for i := range state {
		state[i] = -1
	}
	s.solve(state)
	return s.build(state), true
}

// gather lists the facts that the grown tree forks on, in reading order.
func (s *search) gather(n *node) {
	if n.fact.Fact == "" {
		return
	}
	if !slices.Contains(s.facts, n.fact) {
		s.facts = append(s.facts, n.fact)
		s.values = append(s.values, n.values)
	}
	for _, k := range n.kids {
		s.gather(k)
	}
}

func (s *search) id(state []int) uint64 {
	var id uint64
	for i, v := range state {
		id = id*uint64(len(s.values[i])+1) + uint64(v+1)
	}
	return id
}

// settled reports whether all worlds of a state rule alike, and how.
func (s *search) settled(state []int) (uint16, bool) {
	first, found := uint16(0), false
	var walk func(i, base, radix int) bool
	walk = func(i, base, radix int) bool {
		if i == len(state) {
			if !found {
				first, found = s.worlds[base], true
			}
			return s.worlds[base] == first
		}
		if state[i] >= 0 {
			return walk(i+1, base+state[i]*radix, radix*len(s.values[i]))
		}
		for v := range s.values[i] {
			if !walk(i+1, base+v*radix, radix*len(s.values[i])) {
				return false
			}
		}
		return true
	}
	return first, walk(0, 0, 1)
}

func (s *search) solve(state []int) best {
	id := s.id(state)
	if b, ok := s.memo[id]; ok {
		return b
	}
	out := best{ask: -1}
	if _, done := s.settled(state); !done {
		out = best{depth: 1 << 20, size: 1 << 20}
		for i := range state {
			if state[i] >= 0 {
				continue
			}
			b := best{ask: i, size: 1}
			for v := range s.values[i] {
				state[i] = v
				k := s.solve(state)
				b.depth = max(b.depth, k.depth+1)
				b.size += k.size
			}
			state[i] = -1
			if b.depth < out.depth || b.depth == out.depth && b.size < out.size {
				out = b
			}
		}
	}
	s.memo[id] = out
	return out
}

func (s *search) build(state []int) *Tree {
	b := s.memo[s.id(state)]
	if b.ask < 0 {
		r, _ := s.settled(state)
		return &Tree{Ruling: s.rulings[r]}
	}
	t := &Tree{Ask: s.facts[b.ask], Values: s.values[b.ask]}
	for v := range t.Values {
		state[b.ask] = v
		t.Kids = append(t.Kids, s.build(state))
	}
	state[b.ask] = -1
	return t
}

// fallback asks at each fork the fact that leaves the fewest open leaves of
// the grown tree, summed over the fact's values.
func fallback(n *node) *Tree {
	if n.fact.Fact == "" {
		return &Tree{Ruling: n.ruling}
	}
	s := &search{}
	s.gather(n)
	bestAt, bestOpen := 0, 1<<30
	for i, f := range s.facts {
		open := 0
		for v := range s.values[i] {
			open += n.given(f, v).merge().open()
		}
		if open < bestOpen {
			bestAt, bestOpen = i, open
		}
	}
	f := s.facts[bestAt]
	t := &Tree{Ask: f, Values: s.values[bestAt]}
	for v := range t.Values {
		t.Kids = append(t.Kids, fallback(n.given(f, v).merge()))
	}
	return t
}

// given is a copy of the tree with one fact answered.
func (n *node) given(f play.Key, v int) *node {
	if n.fact.Fact == "" {
		return n
	}
	if n.fact == f {
		return n.kids[v].given(f, v)
	}
	c := &node{fact: n.fact, values: n.values, kids: make([]*node, len(n.kids))}
	for i, k := range n.kids {
		c.kids[i] = k.given(f, v)
	}
	return c
}

func (n *node) open() int {
	if n.fact.Fact == "" {
		return 0
	}
	open := 1
	for _, k := range n.kids {
		open += k.open()
	}
	return open
}
