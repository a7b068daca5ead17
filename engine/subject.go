package engine

import "example.org/netpost/engine/play"

// Subject is what a question is about: see play.Subject.
type Subject = play.Subject
