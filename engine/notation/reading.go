package notation

import (
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

// MaxText is the longest text that is read, in bytes.
const MaxText = 4000

// A Correction is one word that was taken for a near one.
type Correction struct{ From, To string }

// Unread is a word that has no part in the play that was read. Scenery is a
// word that is known not to matter to a ruling: the score, the gym, what the
// coach felt.
type Unread struct {
	Word    string
	Scenery bool
	// Stray is a word outside the lexicon that stands where nothing that
	// happens is told: before a noun, after an object. It is no word of the
	// trade, no number and no negation.
	Stray bool
	// Open marks what is no word of the text but what the story leaves open.
	Open bool
}

// Reading is what was made of the words of a question.
type Reading struct {
	Text string
	// Rally is the play of the ball; nil when nothing was read as one.
	Rally *play.Rally
	// Other is what was read where it is no play of the ball: a request or act
	// in a dead ball, an alignment, a line-up, a look-up; nil otherwise.
	Other     play.Spoken
	Corrected []Correction
	Unread    []Unread
	// Code and Season are those named in the text itself, not in a report or a
	// contrast ("college does it"). Empty and zero when none is named.
	Code   code.Code
	Season code.Season
	// Ago is how many seasons back the text puts the play or the rules: "last
	// season" is one. It counts from the season asked under, else from the
	// newest held.
	Ago int
	// Calls are calls that the text reports, as ids of faults. They are never
	// facts of the play.
	Calls []string
	// Wanted is what is asked about: ids of faults, "play-on" or "replay".
	Wanted []string
	// Evidence is what is argued from and is no evidence of a fault: spin,
	// noise, looks, technique.
	Evidence []string
	// Caution: somebody may be hurt.
	Caution bool
	// Game is another game than the indoor one of six a side, where the text
	// tells of it: beach, sitting, co-ed, grass. Nothing is read of its play.
	Game string
	// Topic is the other area that the question is about: serve, alignment,
	// subs, timeouts, libero-replacement, delay, conduct, mechanics, facts or
	// other. Empty for a play of the ball.
	Topic string
	// More are further questions in the same text, in its own words; the first
	// is the one read.
	More []string
}

// Subject is what was read: the play of the ball, or another subject; nil when
// nothing was.
func (r Reading) Subject() play.Subject {
	switch {
	case r.Rally != nil:
		return r.Rally
	case r.Other != nil:
		return r.Other
	}
	return nil
}

// Told reports whether every word that tells something was read: what is left
// is scenery, or stands where nothing that happens is told. A settled ruling
// stands on such a reading; an open one needs the whole.
func (r Reading) Told() bool {
	for _, u := range r.Unread {
		if !u.Scenery && !u.Stray {
			return false
		}
	}
	return true
}

// Whole reports whether every word that could matter was read.
func (r Reading) Whole() bool {
	for _, u := range r.Unread {
		if !u.Scenery {
			return false
		}
	}
	return true
}
