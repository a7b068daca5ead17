package discord

import (
	"cmp"
	"context"
	"fmt"
	"net/http"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// post puts a message into a channel or a thread.
func (a *Adapter) post(ctx context.Context, channel string, m outgoing) (string, error) {
	return a.plain(m, func(m outgoing) (string, error) {
		var p posted
		err := a.call(ctx, request{method: http.MethodPost, path: "channels/" + channel + "/messages", key: "post/" + channel,
			payload: m, files: m.files}, &p)
		return p.ID, err
	})
}

// edit puts a message in place of an earlier one.
func (a *Adapter) edit(ctx context.Context, channel, message string, m outgoing) error {
	_, err := a.plain(m, func(m outgoing) (string, error) {
		return message, a.call(ctx, request{method: http.MethodPatch, path: "channels/" + channel + "/messages/" + message, key: "edit/" + channel,
			payload: m.instead(), files: m.files}, nil)
	})
	return err
}

// beginThread gives the thread on a message. It has the message's id, also
// where there is one already.
func (a *Adapter) beginThread(ctx context.Context, channel, on, name string) (string, error) {
	var p posted
	err := a.call(ctx, request{method: http.MethodPost, path: "channels/" + channel + "/messages/" + on + "/threads", key: "thread/" + channel,
		payload: map[string]any{"name": cmp.Or(wire.Clip(wire.Line(name), maxThread), bot.CommandName), "auto_archive_duration": threadOpenMinutes}}, &p)
	if isCode(err, 160004) { // there is one
		return on, nil
	}
	return cmp.Or(p.ID, on), err
}

// Post says something unasked.
func (a *Adapter) Post(ctx context.Context, to bot.Target, m bot.Message) (bot.Sent, error) {
	sent := bot.Sent{Place: to.Place}
	sent.Platform = Platform
	direct := sent.Channel == ""
	if direct {
		if to.To.ID == "" {
			return bot.Sent{}, fmt.Errorf("discord: %w: neither a channel nor a person to post to", bot.ErrNotSent)
		}
		channel, err := a.room(ctx, to.To.ID)
		if err != nil {
			return bot.Sent{}, failure("the message", err)
		}
		sent.Channel, sent.Thread = channel, ""
	}
	channel := cmp.Or(sent.Thread, sent.Channel)
	m.Pictures = a.made(m.Pictures)
	if to.Edit != "" {
		if err := a.edit(ctx, channel, to.Edit, render(m)); err != nil {
			return bot.Sent{}, failure("the change", err)
		}
		sent.Message = to.Edit
	} else {
		id, err := a.post(ctx, channel, render(m))
		if err != nil {
			return bot.Sent{}, failure("the message", err)
		}
		sent.Message = id
	}
	if sent.Thread == "" && !direct {
		sent.Thread = sent.Message // a thread that is begun on it has its id
	}
	return sent, nil
}
