// Package rules holds the rules of a rally, one file a rule or a tight family:
// its text, its citation and the function that judges it. The case file beside
// it, testdata/<id>.cases, holds plays with the ruling that a published source
// gives.
//
// Judge walks the told events in time order and lets every rule look at each;
// the earliest moment in which a fault exists ends the rally.
package rules
