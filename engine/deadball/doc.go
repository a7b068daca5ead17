// Package deadball holds the requests and acts of a dead ball: a time-out
// asked for, a substitution, a delay, a card, a player who cannot go on. An
// [Act] is one of them with what was told of it; [Judge] rules on it.
//
// The tables are kinds (what can happen), facts (what can be told of it) and
// rules (one file a rule). A rule reads facts and parameters of the code only
// through engine.Read, so every unknown fact that decides becomes a question.
package deadball
