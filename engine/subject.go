package engine

import "example.org/netpost/engine/play"

// Subject is what a question is about. The set is closed; its members are
//
//   - *play.Rally: a play of the ball
//
// A request or act in a dead ball, an alignment, a line-up with its history
// and a look-up join it through the same three methods: their facts, what is
// presumed of them, and a copy with one more fact told.
type Subject interface {
	// Get is a told fact, play.Unknown when it was not told.
	Get(play.Key) play.Value
	// Presumption is what every official would grant for an untold fact.
	Presumption(play.Key) play.Value
	// Known lists the told facts in a fixed order.
	Known() []play.Key
}

// Tell is the subject with one more fact told; an unknown value takes the
// fact away. It panics on a subject that is not a member of the closed set.
func Tell(s Subject, k play.Key, v play.Value) Subject {
	switch s := s.(type) {
	case *play.Rally:
		return s.With(k, v)
	}
	panic("engine: a subject outside the closed set")
}

// doubt is the subject with the presumption of one fact set aside.
func doubt(s Subject, k play.Key) Subject {
	switch s := s.(type) {
	case *play.Rally:
		return s.WithVoid(k)
	}
	panic("engine: a subject outside the closed set")
}
