package discord

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/wire"
)

// received takes an interaction in and returns at once: work on it has begun,
// or there is none to do. first carries the first response out.
func (a *Adapter) received(ctx context.Context, h bot.Handler, data []byte, by func(route) responder) {
	self := ""
	if s := a.self.Load(); s != nil {
		self = s.user
	}
	in, err := decode(data, self)
	first := by(in.route)
	t := &talk{Adapter: a, route: in.route, event: in.event, first: first}
	var strange *unknown
	switch {
	case errors.As(err, &strange):
		a.log.Warn("discord: an interaction that is none of ours", "type", in.route.typ, "cause", strange.what)
	case err != nil:
		a.log.Warn("discord: an interaction that can't be read", "cause", err)
		first.none()
		return
	}
	if !a.seen.First(in.route.id, time.Now()) {
		first.none() // answered before, or at work
		return
	}
	if !a.work.Begin() {
		a.log.Warn("discord: too much in hand, a person was told to ask again")
		go t.reject(ctx, "Too many questions at once.", "Ask again in a minute.")
		return
	}
	turn, leave := a.lanes.Enter(in.route.lane)
	go func() {
		defer a.work.End()
		defer leave()
		ctx, cancel := context.WithTimeout(ctx, carryOut)
		defer cancel()
		if strange != nil {
			t.reject(ctx, strange.what, strange.mend)
			return
		}
		t.handle(ctx, h, turn)
	}()
}

// reject tells a person why there is no answer.
func (t *talk) reject(ctx context.Context, what, mend string) {
	defer t.contain()
	ctx, cancel := context.WithTimeout(ctx, callTimeout)
	defer cancel()
	if t.typ == typeComplete {
		t.deliver(ctx, nil, bot.Nothing{})
		return
	}
	t.tell(ctx, what, mend)
}

// handle has an event answered, and defers the answer where it takes long.
func (t *talk) handle(ctx context.Context, h bot.Handler, turn <-chan struct{}) {
	defer t.contain()
	replies := make(chan bot.Reply, 1)
	go func() {
		reply := bot.Reply(nil)
		defer func() {
			if p := recover(); p != nil {
				reply = t.panicked(p)
			}
			replies <- reply
		}()
		select {
		case <-turn:
		case <-ctx.Done():
			return
		}
		reply = h(ctx, t.event)
	}()
	wait := bot.DeferAfter
	if bot.Defer(t.event) == bot.AckNone {
		// It is waited for, but silence would end it: at the last moment it is
		// deferred all the same, and the form that may come is not shown.
		wait = rescueAfter
	}
	late := time.NewTimer(wait)
	defer late.Stop()
	var reply bot.Reply
	select {
	case reply = <-replies:
	case <-late.C:
		t.wait(ctx)
		select {
		case reply = <-replies:
		case <-ctx.Done():
			t.log.Error("discord: no reply in time", "after", carryOut)
			over, cancel := context.WithTimeout(context.WithoutCancel(ctx), callTimeout)
			defer cancel()
			t.tell(over, "This took too long and was not answered.", "Ask again; if it stays so, tell whoever runs netpost.")
			return
		}
	}
	if reply == nil { // which no handler gives
		reply = bot.Nothing{}
	}
	t.deliver(ctx, h, reply)
}

// panicked logs a panic of the handler's and makes the reply in its place.
func (t *talk) panicked(p any) bot.Reply {
	id := store.NewID()[:8]
	t.log.Error("discord: a panic", "error", id, "cause", secret.ReplaceAllString(fmt.Sprint(p), "[…]"), "stack", wire.FirstFrames(debug.Stack()))
	if t.typ == typeComplete {
		return bot.Nothing{}
	}
	return bot.Say{Private: true, Message: bot.Message{Doc: sorry("Something went wrong here, and this was not answered.",
		"Try again; if it stays so, tell whoever runs netpost: error "+id+".")}}
}

// contain keeps a panic to its event.
func (t *talk) contain() {
	if p := recover(); p != nil {
		t.log.Error("discord: a panic", "cause", secret.ReplaceAllString(fmt.Sprint(p), "[…]"), "stack", wire.FirstFrames(debug.Stack()))
		t.first.none()
	}
}

// sorry is a document of what happened and how to go on.
func sorry(what, mend string) bot.Doc {
	return bot.Doc{Blocks: []bot.Block{bot.Heading{Text: what}, bot.Para{Text: bot.Line(mend)}}}
}

// begin gives the context that events are carried out in; finish waits for
// what was begun.
func (a *Adapter) begin(ctx context.Context) (work context.Context, finish func()) {
	return a.work.Open(ctx, func() { a.log.Warn("discord: some answers were not delivered before the end") })
}
