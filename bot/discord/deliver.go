package discord

import (
	"context"
	"fmt"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// deliver carries a reply out.
func (t *talk) deliver(ctx context.Context, h bot.Handler, reply bot.Reply) {
	if t.typ == typeComplete {
		c, _ := reply.(bot.Choices)
		if t.stage != silent {
			return // too late: there will be another at the next key
		}
		if _, err := t.respond(ctx, response{Type: respondChoices, Data: map[string]any{"choices": choices(c)}}, begun); err != nil {
			t.log.Warn("discord: completions were not delivered", "cause", failure("they", err))
		}
		return
	}
	switch reply := reply.(type) {
	case bot.Nothing, bot.Choices:
		if err := t.nothing(ctx); err != nil {
			t.log.Warn("discord: an event was not acknowledged", "cause", failure("the acknowledgement", err))
		}
	case bot.Say:
		sent, err := t.say(ctx, reply)
		t.ended(ctx, h, reply.Ref, sent, err)
		for _, e := range reply.Edits {
			if err := t.Adapter.edit(ctx, t.channel(), e.ID, render(e.Message)); err != nil && !isGone(err) {
				t.log.Error("discord: an earlier message was not changed", "cause", failure("the change", err))
			}
		}
	case bot.Update:
		sent, err := t.update(ctx, reply.Message)
		t.ended(ctx, h, reply.Ref, sent, err)
	case bot.Form:
		t.open(ctx, reply)
	default:
		panic(fmt.Sprintf("discord: a reply outside the closed set: %T", reply))
	}
}

// ended tells what became of a message: the person, where it was refused, and
// whoever gave it a reference.
func (t *talk) ended(ctx context.Context, h bot.Handler, ref string, sent bot.Sent, err error) {
	if err != nil {
		id := store.NewID()[:8]
		t.log.Error("discord: an answer was not delivered", "error", id, "cause", err)
		if notSent(err) && t.stage != unanswered {
			t.tell(ctx, "The answer could not be shown here.", "Ask again; if it stays so, tell whoever runs netpost: error "+id+".")
		}
	}
	if ref == "" {
		return
	}
	m := t.meta("")
	if sent.Channel != "" && sent.Channel != m.Where.Channel {
		// It went to a direct message.
		m.Where, m.Direct = sent.Place, true
		m.Where.Thread = ""
	}
	h(ctx, bot.Posted{Meta: m, Ref: ref, Message: sent.Message, Thread: sent.Thread, Err: err})
}

// sent is where a message is that was said where the event happened. A thread
// that is begun on a message has its id.
func (t *talk) sent(message string, hidden bool) bot.Sent {
	s := bot.Sent{Place: t.place, Message: message}
	if s.Thread == "" && !hidden && !t.direct {
		s.Thread = message
	}
	return s
}

// say says something new. Its pictures are made once the event is
// acknowledged: where it is not yet, the words go first and they follow.
func (t *talk) say(ctx context.Context, s bot.Say) (bot.Sent, error) {
	later := s.Pictures
	if t.stage == silent {
		s.Pictures = nil
	} else {
		s.Pictures, later = t.made(s.Pictures), nil
	}
	sent, err := t.put(ctx, s)
	if err == nil {
		t.illustrate(ctx, sent, later)
	}
	return sent, err
}

// put says something new, with the pictures as they are.
func (t *talk) put(ctx context.Context, s bot.Say) (bot.Sent, error) {
	m := render(s.Message)
	if s.Private {
		return t.whisper(ctx, m)
	}
	if s.InThread && s.On != "" && t.place.Thread == "" && !t.direct {
		sent, err := t.thread(ctx, s.On, m)
		if err == nil || !isGone(err) && !isCode(err, 50035) {
			return sent, failure("the message", err)
		}
		// There is no message to begin it on, or no permission: it goes to the
		// place itself.
	}
	id, err := t.show(ctx, m, false)
	if isLapsed(err) {
		id, err = t.post(ctx, t.channel(), m)
	}
	if err != nil {
		return bot.Sent{}, failure("the message", err)
	}
	return t.sent(id, false), nil
}

// whisper says something to the person alone: where it happened, and where it
// is too late for that, in a direct message.
func (t *talk) whisper(ctx context.Context, m outgoing) (bot.Sent, error) {
	id, err := t.show(ctx, m, !t.direct)
	if err == nil {
		return t.sent(id, true), nil
	}
	if !isLapsed(err) {
		return bot.Sent{}, failure("the message", err)
	}
	channel := t.place.Channel
	if !t.direct {
		if channel, err = t.room(ctx, t.who); err != nil {
			return bot.Sent{}, failure("the message", err)
		}
	}
	if id, err = t.post(ctx, channel, m); err != nil {
		return bot.Sent{}, failure("the message", err)
	}
	return bot.Sent{Place: bot.Place{Platform: Platform, Workspace: t.place.Workspace, Channel: channel}, Message: id}, nil
}

// thread says something in the thread on a message, which is begun where there
// is none.
func (t *talk) thread(ctx context.Context, on string, m outgoing) (bot.Sent, error) {
	thread, err := t.beginThread(ctx, t.place.Channel, on, m.Content)
	if err != nil {
		return bot.Sent{}, err
	}
	id, err := t.post(ctx, thread, m)
	if err != nil {
		return bot.Sent{}, err
	}
	sent := bot.Sent{Place: t.place, Message: id}
	sent.Thread = thread
	if t.message != "" {
		err = t.nothing(ctx)
	} else {
		// A command has to be answered where it was given.
		note := render(bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Heading{Text: "The answer is in the thread:"}}}})
		note.Content += " <#" + thread + ">"
		_, err = t.show(ctx, note, true)
	}
	if err != nil {
		t.log.Warn("discord: an event was not acknowledged", "cause", failure("the acknowledgement", err))
	}
	return sent, nil
}

// update puts a message in place of the one that the event is on, else says it
// anew to the person alone.
func (t *talk) update(ctx context.Context, msg bot.Message) (bot.Sent, error) {
	if len(msg.Pictures) > 0 {
		if t.stage == silent && t.message != "" {
			t.wait(ctx) // the message stays as it is while they are made
		}
		msg.Pictures = t.made(msg.Pictures)
	}
	m := render(msg)
	if t.message == "" {
		return t.whisper(ctx, m)
	}
	err := t.change(ctx, m)
	if isLapsed(err) && !t.private {
		err = t.Adapter.edit(ctx, t.channel(), t.message, m)
	}
	switch {
	case err == nil:
		return t.sent(t.message, t.private), nil
	case notSent(err):
		return t.whisper(ctx, m)
	}
	return bot.Sent{}, failure("the change", err)
}

// open opens a form. Discord takes it as the first response and never after.
func (t *talk) open(ctx context.Context, f bot.Form) {
	if t.stage != silent {
		t.tell(ctx, "The form did not open: Discord gives it three seconds.", "Press the button again.")
		return
	}
	_, err := t.respond(ctx, response{Type: respondForm, Data: form(f)}, begun)
	if err == nil {
		return
	}
	t.log.Error("discord: a form was not opened", "cause", failure("the form", err))
	if notSent(err) {
		t.tell(ctx, "The form did not open: Discord gives it three seconds.", "Press the button again.")
	}
}

// tell says to the person alone what happened and how to go on.
func (t *talk) tell(ctx context.Context, what, mend string) {
	if _, err := t.whisper(ctx, render(bot.Message{Doc: sorry(what, mend)})); err != nil {
		t.log.Error("discord: a person could not be told", "cause", err)
	}
}
