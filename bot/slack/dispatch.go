package slack

import (
	"context"
	"fmt"
	"runtime/debug"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/wire"
)

// verdict is what became of an event that came in.
type verdict uint8

const (
	taken       verdict = iota // it is acknowledged when its time has come
	again                      // it was here before: acknowledge it, and no more
	refuse                     // too much is in hand: Slack is to deliver it again
	refuseAloud                // the same for a command, whose person is told
)

// take starts work on an event and returns at once. ack is called once, in
// time, with what Slack is to show meanwhile, if anything.
func (a *Adapter) take(ctx context.Context, h bot.Handler, in incoming, ack func(any)) verdict {
	delivery := in.route.place.Workspace + "/" + bot.MetaOf(in.event).Delivery
	if !a.seen.First(delivery, time.Now()) {
		return again
	}
	if !a.work.Begin() {
		a.seen.Forget(delivery)
		if in.route.kind == command {
			return refuseAloud
		}
		return refuse
	}
	turn, leave := a.lanes.Enter(in.route.lane)
	go func() {
		defer a.work.End()
		defer leave()
		ctx, cancel := context.WithTimeout(ctx, carryOut)
		defer cancel()
		a.handle(ctx, h, &in, turn, ack)
	}()
	return taken
}

// handle has an event answered. The acknowledgement is empty and the reply
// goes its own way: so it is known whether it arrived, it may be of any
// length, and it is the same over a socket and over HTTP.
func (a *Adapter) handle(ctx context.Context, h bot.Handler, in *incoming, turn <-chan struct{}, ack func(any)) {
	defer a.contain(ctx, in.route)
	replies := make(chan bot.Reply, 1)
	go func() {
		reply := bot.Reply(nil)
		defer func() { replies <- reply }()
		defer a.contain(ctx, in.route)
		select {
		case <-turn:
		case <-ctx.Done():
			return
		}
		in.settle(ctx, a)
		reply = h(ctx, in.event)
	}()
	late := time.NewTimer(bot.DeferAfter)
	defer late.Stop()
	var reply bot.Reply
	select {
	case reply = <-replies:
		ack(nil)
	case <-late.C:
		if in.route.kind == command {
			ack(waiting())
		} else {
			ack(nil)
		}
		select {
		case reply = <-replies:
		case <-ctx.Done():
			a.log.Error("slack: no reply in time", "after", carryOut)
		}
	}
	if reply != nil { // else there was a panic, or the time was over
		a.deliver(ctx, h, *in, reply)
	}
}

// settle finds out what did not come with the event: the person's user groups,
// and whether a direct message is the one with the bot: commands can be given,
// and buttons shared, in one between two people.
func (in *incoming) settle(ctx context.Context, a *Adapter) {
	if roles := a.roles(ctx, in.route.who); roles != nil {
		in.event = changed(in.event, func(m *bot.Meta) { m.Who.Roles = roles })
	}
	if in.route.own {
		a.rooms.Put(in.route.who, in.route.place.Channel)
		return
	}
	if !direct(in.route.place.Channel) {
		return
	}
	if room, err := a.room(ctx, in.route.who); err != nil || room != in.route.place.Channel {
		return
	}
	in.route.own = true
	in.event = changed(in.event, func(m *bot.Meta) { m.Direct = true })
}

// contain keeps a panic to its event, and tells the person.
func (a *Adapter) contain(ctx context.Context, r route) {
	p := recover()
	if p == nil {
		return
	}
	id := store.NewID()[:8]
	a.log.Error("slack: a panic", "error", id, "cause", secret.ReplaceAllString(fmt.Sprint(p), "[…]"), "stack", wire.FirstFrames(debug.Stack()))
	defer func() {
		if p := recover(); p != nil {
			a.log.Error("slack: a panic while a person was told of one", "error", id)
		}
	}()
	a.tell(ctx, r, "Something went wrong here, and this was not answered.",
		"Try again; if it stays so, tell whoever runs netpost: error "+id+".")
}

// begin gives the context that events are carried out in; finish waits for
// what was begun.
func (a *Adapter) begin(ctx context.Context) (work context.Context, finish func()) {
	return a.work.Open(ctx, func() { a.log.Warn("slack: some answers were not delivered before the end") })
}
