package bot

import (
	"context"
	"errors"
)

// Handler makes the reply to an event. It is safe for use by many goroutines.
// The reply is to be carried out even when ctx has ended.
type Handler func(context.Context, Event) Reply

// Adapter is one channel to people: Slack, Discord, a terminal. It decodes
// what comes in, renders what goes out and owns what is the platform's own:
// deadlines, limits, markup, retries, reconnecting.
//
// An adapter acknowledges by the platform's deadline whatever the handler
// does: it starts the handler, and where that takes longer than DeferAfter it
// defers as Defer says and delivers the reply when it is there. A handler that
// panics costs its event and no more. An event of a kind that the adapter does
// not know is acknowledged and dropped. It renders every document within the
// platform's limits (see Pages), with a plain text beside it, and so that
// nothing in a document's words is read as markup or pings anybody.
//
// Nothing is delivered twice by an adapter: what a platform refuses for its
// rate is sent again after the time it names, and what may be out is not sent
// again but reported.
type Adapter interface {
	// Run delivers events to the handler until ctx ends, and reconnects as
	// often as it takes. It returns nil once ctx has ended and what was begun
	// is finished; an error is one that trying again can't mend, and says how
	// to mend it.
	Run(ctx context.Context, h Handler) error
	// Post says something unasked: in a place, or to a person where Place has
	// no channel. It may be called while Run runs, by many goroutines. An
	// error that wraps ErrNotSent means that it is certain not to be out;
	// any other leaves that in doubt.
	Post(ctx context.Context, to Target, m Message) (Sent, error)
}

// Target is where a post goes.
type Target struct {
	Place
	To   Person // a direct message, where the place has no channel
	Edit string // the platform's id of a message of ours to put it in place of; empty: a new one
}

// Sent is what a platform tells of a message that is out.
type Sent struct {
	Place          // Thread: where replies to it come in, if the platform tells
	Message string // the platform's id
}

// Errors of Post, to be tested with errors.Is.
var (
	// ErrNotSent: the message is not out.
	ErrNotSent = errors.New("not sent")
	// ErrGone: the channel, thread, message or person is not there any more,
	// or the bot may not write there. It goes with ErrNotSent.
	ErrGone = errors.New("the place is gone")
)
