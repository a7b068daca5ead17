// Package engine decides plays.
//
// A Judge is a plain function that reads facts through one Read and returns a
// Ruling. Reading a fact that is not known stops the run; Decide runs the
// judge again once for each value that the fact can have, until every run
// ends. The runs are the leaves of a decision: where they all rule alike the
// play is settled, else the smallest tree of questions over them is searched
// and its root is the fact that decides.
//
//	judge  := rules.Judge                       // a rally's rules
//	d, err := engine.Decide(judge, rally, book) // book: one code in one season
//	if d.Settled() { fmt.Println(d.Ruling) } else { fmt.Println(d.Tree.Ask) }
//
// From the same runs come the minimal reason (Because), the nearest change of
// fact that would change the ruling (Nearest), and the same play under every
// code (Compare). Everything is a value; the same play gives the same bytes.
package engine
