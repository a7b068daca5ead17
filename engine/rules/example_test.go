package rules_test

import (
	"fmt"

	"example.org/netpost/engine"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/play"
	"example.org/netpost/engine/rules"
)

// A play in words is read, decided under one code, and asked about.
func Example() {
	book, err := code.Open(code.Scholastic, 2025)
	if err != nil {
		fmt.Println(err)
		return
	}
	reading, err := notation.Read("A's libero sets the ball, overhand with the fingers, then A's hitter attacks the ball, ball wholly above the net")
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := rules.Decide(reading.Rally, book)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(notation.Question(reading.Rally, d.Tree.Ask))
	for _, leaf := range d.Leaves {
		fmt.Printf("%s: %s\n", notation.Clause(reading.Rally, leaf.When[0].Key, leaf.When[0].Value), leaf.Ruling)
	}

	told := reading.Rally.With(d.Tree.Ask, play.InFront)
	d, err = rules.Decide(told, book)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(d.Ruling)
	for _, g := range d.Because() {
		fmt.Println("because", notation.Clause(told, g.Key, g.Value))
	}
	call := rules.CallFor(d.Ruling, book)
	fmt.Println(call.By[0], "signals", call.Name, call.Number)

	// Output:
	// Where did A's libero last touch the floor before the contact?
	// A's libero set it from in front of the attack line: fault libero-set-attack against A
	// A's libero set it from behind the attack line: play-on
	// fault libero-set-attack against A
	// because A's libero set it overhand with the fingers
	// because A's libero set it from in front of the attack line
	// because ball wholly above the net when A's hitter attacked it
	// because A's libero set it before A's hitter attacked it
	// R1 signals illegal attack 7
}

// The same play under every code.
func ExampleJudge() {
	reading, err := notation.Read("A's blocker goes over the centre line, with a foot, wholly beyond the centre line, no hazard, nobody is hindered")
	if err != nil {
		fmt.Println(err)
		return
	}
	all, err := engine.Compare(rules.Judge, reading.Rally, 2025)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range all {
		fmt.Println(d.Book.Code(), d.Ruling)
	}
	// Output:
	// international fault centre-line against A
	// club play-on
	// collegiate play-on
	// scholastic fault centre-line against A
}
