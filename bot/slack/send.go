package slack

import (
	"cmp"
	"context"
	"fmt"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
)

// call calls Slack, and again where Slack refuses for its rate, after the time
// that it names. Nothing else is tried again: it might be out.
func (a *Adapter) call(ctx context.Context, key string, do func(context.Context) error) error {
	for {
		hold, leave, err := a.gates.Enter(ctx, key, false)
		if err != nil {
			return errHeld
		}
		err = do(ctx)
		wait := rateHold(err)
		if wait > 0 {
			hold(wait, false)
		}
		leave()
		if wait == 0 {
			return err
		}
		a.log.Warn("slack: held back for Slack's rate", "in", wait)
	}
}

// post puts a message into a channel or a thread.
func (a *Adapter) post(ctx context.Context, p bot.Place, thread string, m rendered) (bot.Sent, error) {
	opts := []slackapi.MsgOption{m.options()}
	if thread != "" {
		opts = append(opts, slackapi.MsgOptionTS(thread))
	}
	sent := bot.Sent{Place: p}
	err := a.call(ctx, "chat.postMessage "+p.Channel, func(ctx context.Context) error {
		channel, ts, err := a.api.PostMessageContext(ctx, p.Channel, opts...)
		sent.Channel, sent.Message = cmp.Or(channel, p.Channel), ts
		return err
	})
	// Replies to a message come in under it, those in a thread under the
	// thread.
	sent.Thread = cmp.Or(thread, sent.Message)
	return sent, err
}

// postTo shows a message to one person in a channel.
func (a *Adapter) postTo(ctx context.Context, who string, p bot.Place, thread string, m rendered) (bot.Sent, error) {
	opts := []slackapi.MsgOption{m.options()}
	if thread != "" {
		opts = append(opts, slackapi.MsgOptionTS(thread))
	}
	sent := bot.Sent{Place: p}
	sent.Thread = thread
	err := a.call(ctx, "chat.postEphemeral "+p.Channel, func(ctx context.Context) (err error) {
		sent.Message, err = a.api.PostEphemeralContext(ctx, p.Channel, who, opts...)
		return err
	})
	return sent, err
}

// edit puts a message in place of an earlier one.
func (a *Adapter) edit(ctx context.Context, channel, ts string, m rendered) error {
	return a.call(ctx, "chat.update "+channel, func(ctx context.Context) error {
		_, _, _, err := a.api.UpdateMessageContext(ctx, channel, ts, m.options())
		return err
	})
}

// respond posts to the address that came with an event. replace puts it in
// place of the message that the event is on; it does nothing after a command,
// whose address only ever says something new.
func (a *Adapter) respond(ctx context.Context, r route, thread string, public, replace bool, m rendered) error {
	opts := []slackapi.MsgOption{m.options()}
	kind := slackapi.ResponseTypeEphemeral
	if public {
		kind = slackapi.ResponseTypeInChannel
	}
	opts = append(opts, slackapi.MsgOptionResponseURL(r.response, kind))
	if replace {
		opts = append(opts, slackapi.MsgOptionReplaceOriginal(r.response))
	} else if thread != "" {
		opts = append(opts, slackapi.MsgOptionTS(thread))
	}
	return a.call(ctx, r.response, func(ctx context.Context) error {
		_, _, _, err := a.api.SendMessageContext(ctx, "", opts...)
		return err
	})
}

// room opens the direct message with a person.
func (a *Adapter) room(ctx context.Context, who string) (string, error) {
	return a.rooms.Open(who, func() (channel string, err error) {
		err = a.call(ctx, "conversations.open "+who, func(ctx context.Context) error {
			c, _, _, err := a.api.OpenConversationContext(ctx, &slackapi.OpenConversationParameters{Users: []string{who}})
			if err == nil && c != nil {
				channel = c.ID
			}
			return err
		})
		return channel, err
	})
}

// Post says something unasked.
func (a *Adapter) Post(ctx context.Context, to bot.Target, m bot.Message) (bot.Sent, error) {
	p := to.Place
	p.Platform = Platform
	if p.Channel == "" {
		if to.To.ID == "" {
			return bot.Sent{}, fmt.Errorf("slack: %w: neither a channel nor a person to post to", bot.ErrNotSent)
		}
		channel, err := a.room(ctx, to.To.ID)
		if err != nil {
			return bot.Sent{}, failure("the message", err)
		}
		p.Channel = channel
	}
	if to.Edit != "" {
		if err := a.edit(ctx, p.Channel, to.Edit, render(m)); err != nil {
			return bot.Sent{}, failure("the change", err)
		}
		sent := bot.Sent{Place: p, Message: to.Edit}
		sent.Thread = cmp.Or(p.Thread, to.Edit)
		_ = a.pictures(ctx, sent, m.Pictures)
		return sent, nil
	}
	sent, err := a.post(ctx, p, p.Thread, render(m))
	if err != nil {
		return bot.Sent{}, failure("the message", err)
	}
	_ = a.pictures(ctx, sent, m.Pictures)
	return sent, nil
}
