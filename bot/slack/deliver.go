package slack

import (
	"cmp"
	"context"
	"fmt"
	"time"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
)

// deliver carries a reply out.
func (a *Adapter) deliver(ctx context.Context, h bot.Handler, in incoming, reply bot.Reply) {
	switch reply := reply.(type) {
	case bot.Nothing, bot.Choices: // nobody asks for completions on Slack
	case bot.Say:
		sent, err := a.say(ctx, in.route, reply)
		if err != nil {
			a.log.Error("slack: an answer was not delivered", "cause", err)
		}
		if reply.Ref != "" {
			a.posted(ctx, h, in, reply.Ref, sent, err)
		}
		for _, e := range reply.Edits {
			if err := a.edit(ctx, in.route.place.Channel, e.ID, render(e.Message)); err != nil && !isGone(err) {
				a.log.Error("slack: an earlier message was not changed", "cause", failure("the change", err))
			}
		}
	case bot.Update:
		sent, err := a.update(ctx, in.route, reply.Message)
		if err != nil {
			a.log.Error("slack: an answer was not delivered", "cause", err)
		}
		if reply.Ref != "" {
			a.posted(ctx, h, in, reply.Ref, sent, err)
		}
	case bot.Form:
		a.open(ctx, in.route, reply)
	default:
		panic(fmt.Sprintf("slack: a reply outside the closed set: %T", reply))
	}
}

// posted tells what became of a message.
func (a *Adapter) posted(ctx context.Context, h bot.Handler, in incoming, ref string, sent bot.Sent, err error) {
	m := in.route.meta("")
	if sent.Channel != "" && sent.Channel != m.Where.Channel {
		// It went to a direct message.
		m.Where, m.Direct = place(m.Where.Workspace, sent.Channel, ""), true
	}
	h(ctx, bot.Posted{Meta: m, Ref: ref, Message: sent.Message, Thread: sent.Thread, Err: err})
}

func (a *Adapter) say(ctx context.Context, r route, s bot.Say) (bot.Sent, error) {
	thread := r.thread(s)
	if s.Private || r.place.Channel == "" { // a form that no message opened has no place
		return a.whisper(ctx, r, thread, s.Message)
	}
	m := render(s.Message)
	sent, err := a.post(ctx, r.place, thread, m)
	if isGone(err) && r.response != "" {
		// The bot is not in the channel. The address that came with the event
		// works all the same, but tells no id.
		if err = a.respond(ctx, r, thread, true, false, m); err == nil {
			return bot.Sent{Place: bot.Place{Platform: Platform, Workspace: r.place.Workspace, Channel: r.place.Channel, Thread: thread}}, nil
		}
	}
	if isGone(err) {
		why := bot.Aside{Text: bot.Line("Only you see this: I can't write there. To let me, invite me: /invite @" + bot.CommandName)}
		s.Doc.Blocks = append(s.Doc.Blocks[:len(s.Doc.Blocks):len(s.Doc.Blocks)], why)
		if _, werr := a.whisper(ctx, r, thread, s.Message); werr != nil {
			a.log.Warn("slack: nor could the person be told", "cause", werr)
		}
	}
	if err != nil {
		return bot.Sent{}, failure("the message", err)
	}
	_ = a.pictures(ctx, sent, s.Pictures)
	return sent, nil
}

// whisper says something to the person of the event alone: where it happened,
// and where Slack can't do that, in a direct message. It goes on to the next
// way only where it is certain that nothing is out.
func (a *Adapter) whisper(ctx context.Context, r route, thread string, msg bot.Message) (bot.Sent, error) {
	if !r.own {
		msg = a.brought(ctx, r.who, offered(msg))
	}
	m := render(msg)
	if !r.own {
		ways := []func() (bot.Sent, error){
			func() (bot.Sent, error) {
				s := bot.Sent{Place: r.place}
				s.Thread = thread
				return s, a.respond(ctx, r, thread, false, false, m)
			},
			func() (bot.Sent, error) { return a.postTo(ctx, r.who, r.place, thread, m) },
		}
		if r.response == "" {
			ways = ways[1:]
		}
		if r.place.Channel == "" {
			ways = ways[:len(ways)-1]
		}
		for _, way := range ways {
			sent, err := way()
			if err == nil {
				return sent, nil
			}
			if !notSent(err) {
				return bot.Sent{}, failure("the message", err)
			}
		}
	}
	p := r.place
	if !r.own {
		channel, err := a.room(ctx, r.who)
		if err != nil {
			return bot.Sent{}, failure("the message", err)
		}
		p, thread = place(p.Workspace, channel, ""), ""
	}
	sent, err := a.post(ctx, p, thread, m)
	if err != nil {
		return bot.Sent{}, failure("the message", err)
	}
	_ = a.pictures(ctx, sent, msg.Pictures)
	return sent, nil
}

// update puts a message in place of the one that the event is on, else says it
// anew to the person alone.
func (a *Adapter) update(ctx context.Context, r route, msg bot.Message) (bot.Sent, error) {
	if r.ours {
		shown := msg
		if r.private && !r.own {
			shown = a.brought(ctx, r.who, offered(msg))
		}
		done, err := a.replace(ctx, r, render(shown))
		if done {
			sent := bot.Sent{Place: r.place, Message: r.message}
			if !r.private {
				sent.Thread = cmp.Or(r.place.Thread, r.message)
			}
			_ = a.pictures(ctx, sent, shown.Pictures)
			return sent, nil
		}
		if err != nil && !notSent(err) {
			return bot.Sent{}, failure("the change", err)
		}
	}
	return a.whisper(ctx, r, r.place.Thread, msg)
}

// replace changes the message that the event is on. Only the address that came
// with the press can change a message that one person sees, and one in a
// channel that the bot is not in.
func (a *Adapter) replace(ctx context.Context, r route, m rendered) (done bool, err error) {
	if r.response != "" {
		if err = a.respond(ctx, r, "", false, true, m); err == nil || !notSent(err) {
			return err == nil, err
		}
	}
	if !r.private {
		err = a.edit(ctx, r.place.Channel, r.message, m)
		return err == nil, err
	}
	return false, err
}

// open opens a form. Slack takes it within three seconds of the event.
func (a *Adapter) open(ctx context.Context, r route, f bot.Form) {
	ctx, cancel := context.WithTimeout(ctx, 5*time.Second)
	defer cancel()
	err := a.call(ctx, "views.open "+r.trigger, func(ctx context.Context) error {
		_, err := a.api.OpenViewContext(ctx, r.trigger, view(f, r.origin()))
		return err
	})
	if err == nil {
		return
	}
	a.log.Error("slack: a form was not opened", "cause", failure("the form", err))
	if !notSent(err) {
		return
	}
	ctx, cancel = context.WithTimeout(context.WithoutCancel(ctx), callTimeout)
	defer cancel()
	a.tell(ctx, r, "The form did not open: Slack gives it three seconds.", "Press the button again.")
}

// tell says to the person alone what happened and how to go on.
func (a *Adapter) tell(ctx context.Context, r route, what, mend string) {
	d := bot.Doc{Blocks: []bot.Block{bot.Heading{Text: what}, bot.Para{Text: bot.Line(mend)}}}
	if _, err := a.whisper(ctx, r, r.place.Thread, bot.Message{Doc: d}); err != nil {
		a.log.Error("slack: a person could not be told", "cause", err)
	}
}

// waiting is what Slack shows the person while a command's answer takes time.
func waiting() any { return note{slackapi.ResponseTypeEphemeral, "One moment: the answer follows."} }

// busy is what Slack shows where too much is in hand.
func busy() any {
	return note{slackapi.ResponseTypeEphemeral, "Too many questions at once. Please ask again in a minute."}
}

// note is a short message in an acknowledgement.
type note struct {
	Type string `json:"response_type"`
	Text string `json:"text"`
}
