package engine_test

import (
	"testing"

	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// settled is a third-hit joust: four contacts in every code.
func settled() *play.Rally {
	p := &play.Rally{
		Players: []play.Player{{ID: "p1", Team: play.A}, {ID: "p2", Team: play.B, Role: play.Blocker}},
		Events: []play.Event{
			{ID: "e1", Kind: play.Contact, Team: play.A, Player: "p1", Action: play.Press},
			{ID: "e2", Kind: play.Contact, Team: play.B, Player: "p2", Action: play.Press},
		},
	}
	return p.With(play.Key{Fact: play.Has}, play.ValueA).With(play.Key{Fact: play.Used}, play.N3).
		With(play.Key{Fact: play.Order, Of: "e1-e2"}, play.Same).
		With(play.Key{Fact: play.Row, Of: "p1"}, play.Front).
		With(play.Key{Fact: play.Place, Of: "e1"}, play.Plane)
}

// open is a tight second ball: six facts of it are unknown.
func open() *play.Rally {
	p := settled().With(play.Key{Fact: play.Row, Of: "p1"}, play.Unknown).
		With(play.Key{Fact: play.Place, Of: "e1"}, play.Unknown).
		With(play.Key{Fact: play.Order, Of: "e1-e2"}, play.Unknown)
	for _, k := range []play.Key{{Fact: play.Order, Of: "e1-e2"}, {Fact: play.Place, Of: "e1"}, {Fact: play.ReachHeight, Of: "e1"}, {Fact: play.Row, Of: "p2"}} {
		p = p.WithVoid(k)
	}
	return p
}

// BenchmarkDecideSettled is one settled play under one code: 50 µs and 200
// allocations are the most we want.
func BenchmarkDecideSettled(b *testing.B) {
	book, err := code.Open(code.Scholastic, 0)
	if err != nil {
		b.Fatal(err)
	}
	p := settled()
	b.ReportAllocs()
	for b.Loop() {
		d, err := rules.Decide(p, book)
		if err != nil || !d.Settled() {
			b.Fatal(err, d.Tree)
		}
	}
}

// BenchmarkDecideOpen is the smallest tree of a play with unknown facts: 20 ms
// is the most we want.
func BenchmarkDecideOpen(b *testing.B) {
	book, err := code.Open(code.Scholastic, 0)
	if err != nil {
		b.Fatal(err)
	}
	p := open()
	d, err := rules.Decide(p, book)
	if err != nil || d.Settled() {
		b.Fatal(err, d.Ruling)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := rules.Decide(p, book); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(d.Leaves)), "leaves")
	b.ReportMetric(float64(d.Tree.Depth()), "deep")
}
