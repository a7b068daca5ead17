package code_test

import (
	"fmt"

	"example.org/netpost/engine/code"
)

func ExampleOpen() {
	book, err := code.Open(code.Scholastic, 2025)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := book.Cell("hits.second-double")
	fmt.Println(book.Edition(), c.Value)
	fmt.Println(c.Rule, c.Basis)
	// Output:
	// 2025-26 allowed-if-teammate-next
	// 9-4-8c published
}

func ExampleBook_With() {
	book, err := code.Open(code.Club, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	_, err = book.With(code.Overlay{Param: "net.hair", Value: "fine", Reason: "league rule"})
	fmt.Println(err)
	book, err = book.With(code.Overlay{Param: "net.hair", Value: "legal", Reason: "league rule"})
	fmt.Println(book.Cell("net.hair").Value, err)
	// Output:
	// overlay 1: net.hair: unknown value "fine": use one of legal, legal-unless-affects-play
	// legal <nil>
}

func ExampleDifferences() {
	changes, err := code.Differences(code.Scholastic, 2024, 2025)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range changes {
		fmt.Printf("%s: %s, was %s\n", c.Param, c.To.Value, c.From.Value)
	}
	// Output:
	// hits.second-double: allowed-if-teammate-next, was fault
	// libero.illegal-replacement-cut-off: service-contact, was authorization
	// libero.second-serve-position: illegal-replacement, was illegal-replacement
}

func ExampleBook_Signal() {
	book, err := code.Open(code.International, 2025)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, _ := book.Signal("four-contacts")
	fmt.Println(s.Number, s.Text)
	// Output:
	// 18 four fingers
}
