package discord

import (
	"context"
	"net/http"

	"example.org/netpost/bot"
)

// made are the pictures with their data.
func (a *Adapter) made(ps []bot.Picture) []bot.Picture {
	out, err := bot.Made(ps)
	if err != nil {
		a.log.Warn("discord: a picture was not made; the message says what it shows", "cause", err)
	}
	return out
}

// onlyFiles is a change of a message that touches its pictures alone.
type onlyFiles struct {
	Mentions    mentions      `json:"allowed_mentions"`
	Attachments *[]attachment `json:"attachments"`
}

// illustrate puts pictures under a message that is out. Whatever becomes of
// them, the message stands: an error is logged.
func (t *talk) illustrate(ctx context.Context, under bot.Sent, ps []bot.Picture) {
	if ps = t.made(ps); len(ps) == 0 || under.Message == "" {
		return
	}
	m := render(bot.Message{Pictures: ps})
	if len(m.files) == 0 {
		return
	}
	change := request{method: http.MethodPatch, path: "webhooks/" + t.app + "/" + t.token + "/messages/" + under.Message, key: "hook/" + t.id, free: true,
		payload: onlyFiles{m.Mentions, m.Attachments}, files: m.files}
	err := t.call(ctx, change, nil)
	if isCode(err, 10008) || isLapsed(err) { // it is no answer to the interaction, but a message of its own
		channel := under.Thread
		if channel == "" || channel == under.Message {
			channel = under.Channel
		}
		change.path, change.key, change.free = "channels/"+channel+"/messages/"+under.Message, "edit/"+channel, false
		err = t.call(ctx, change, nil)
	}
	if err != nil {
		t.log.Error("discord: a picture is not out; the message says what it shows", "cause", failure("the picture", err))
	}
}

// plain sends a message with its pictures, and without them where Discord
// refuses it so.
func (a *Adapter) plain(m outgoing, send func(outgoing) (string, error)) (string, error) {
	id, err := send(m)
	if err == nil || len(m.files) == 0 || !notSent(err) || isGone(err) || isLapsed(err) {
		return id, err
	}
	a.log.Error("discord: pictures were refused, the message goes without", "cause", failure("they", err))
	m.files, m.Attachments = nil, nil
	return send(m)
}
