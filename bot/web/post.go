package web

import (
	"context"
	"fmt"

	"example.org/netpost/bot"
)

// Post says something unasked: to all who are here, or to one person.
func (w *Web) Post(ctx context.Context, to bot.Target, m bot.Message) (bot.Sent, error) {
	if err := ctx.Err(); err != nil {
		return bot.Sent{}, fmt.Errorf("%w: %w", bot.ErrNotSent, err)
	}
	gone := func(what string) (bot.Sent, error) {
		return bot.Sent{}, fmt.Errorf("%w: %w: %s", bot.ErrNotSent, bot.ErrGone, what)
	}
	here := w.place("")
	p := to.Place
	out := message{thread: p.Thread, Message: m}
	switch {
	case p.Platform != "" && p.Platform != here.Platform, p.Workspace != "" && p.Workspace != here.Workspace:
		return gone("this web channel is not there")
	case p.Channel == "" && to.To.ID == "":
		return gone("it is to nobody and nowhere")
	case p.Channel == "":
		out.to, out.thread = to.To.ID, ""
	case p.Channel != here.Channel:
		return gone("there is no channel " + p.Channel)
	}
	if to.Edit != "" {
		w.mu.Lock()
		old, ok := w.messages.get(to.Edit)
		w.mu.Unlock()
		if !ok {
			return gone("there is no message " + to.Edit)
		}
		out = *old
		out.Message = m
	}
	out = w.show(out)
	here.Thread = out.talk()
	return bot.Sent{Place: here, Message: out.id}, nil
}
