package bot

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"example.org/netpost/bot/store"
)

// What goes out unasked is queued in the write that makes it due. It is marked
// before it is sent and noted after, so that it goes out once however often
// the program is killed: one that a kill leaves marked may be out, waits for a
// person, and is never sent again by itself.

// Sender gives a message to the platform of its place, as Adapter.Post does.
type Sender func(ctx context.Context, association string, to Target, m Message) (Sent, error)

// postKind is a row of the table of what is posted.
type postKind struct {
	name string // of its posts: what their keys begin with, before the first slash
	what string // it, to the person who decides about one
	role Role   // who that may be
	// told: it is a reply to somebody, who heard of it when it was refused. Only
	// one in doubt waits for a person.
	told bool
	// edit: it only changes a message that is out, so it may be done again.
	edit bool
	// compose makes the message as it is to be sent now, and says where to.
	compose func(*turn, store.Post) (Target, Message, error)
	// sent is what else is noted once it is out; nil: nothing.
	sent func(*turn, store.Writer, store.Post, Sent) error
	// gone is what is done where its place is not there any more; nil: it waits
	// for a person.
	gone func(*turn, store.Writer, store.Post) error
}

// postKinds, sorted by name.
func postKinds() []postKind {
	return []postKind{
		{name: "answer", what: "the answer to a question", role: Mentor, told: true, compose: (*turn).composeAnswer, sent: answerSent},
		{name: "bulletin", what: "the bulletin", role: Publisher, compose: (*turn).composeBulletin},
		{name: "call", what: "a question for the mentors", role: Mentor, compose: (*turn).composeCall, sent: callSent},
		{name: "correction", what: "a correction", role: Mentor, compose: (*turn).composeCorrection, gone: correctionGone},
		{name: "differ", what: "word that mentors differ", role: Mentor, compose: (*turn).composeDiffer},
		{name: "edit", what: "a change of a message", role: Mentor, told: true, edit: true, compose: (*turn).composeEdit},
		{name: "nudge", what: "a reminder for the mentors", role: Mentor, compose: (*turn).composeNudge},
		{name: "poll", what: "a play for the crew to rule on", role: Mentor, compose: (*turn).composePoll, sent: pollSent, gone: pollGone},
		{name: "reply", what: "a mentor's answer", role: Mentor, compose: (*turn).composeReply, sent: replySent, gone: replyGone},
		{name: "result", what: "what came of a play that the crew ruled on", role: Mentor, compose: (*turn).composeResult, gone: resultGone},
		{name: "share", what: "an answer that its asker shared", role: Mentor, told: true, compose: (*turn).composeAnswer, sent: answerSent},
		{name: "told", what: "the answer to words in a thread", role: Mentor, told: true, compose: (*turn).composeAnswer},
		{name: "views", what: "two views of a play", role: Mentor, compose: (*turn).composeViews, gone: viewsGone},
	}
}

func postKindOf(key string) (postKind, bool) {
	name, _, _ := strings.Cut(key, "/")
	for _, k := range postKinds() {
		if k.name == name {
			return k, true
		}
	}
	return postKind{}, false
}

// How often what is due is looked for, and how long what a platform refused
// for now is tried again.
const (
	lookEvery  = 15 * time.Second
	retryAfter = time.Minute
	giveUp     = 24 * time.Hour
)

// job is a row of the table of what is done unasked.
type job struct {
	name string
	do   func(*turn) error
}

// jobs in the order in which they are done: what is queued by one goes out at
// once.
func jobs() []job {
	return []job{
		{"bulletin", (*turn).scheduled},
		{"reminders", (*turn).remind},
		{"polls", (*turn).closeDue},
		{"posts", (*turn).sendQueued},
	}
}

// Run does what is to be done unasked until ctx ends: it sends what is queued
// and what a schedule makes due.
func (b *Bot) Run(ctx context.Context) {
	every := time.NewTicker(lookEvery)
	defer every.Stop()
	for {
		b.Tick(ctx)
		select {
		case <-ctx.Done():
			return
		case <-every.C:
		case <-b.due:
		}
	}
}

// Tick does once what is due by now, for every association. What fails is
// logged and tried again at the next.
func (b *Bot) Tick(ctx context.Context) {
	if b.All == nil {
		return
	}
	for _, a := range b.All() {
		for _, j := range jobs() {
			t := &turn{Bot: b, ctx: ctx, assoc: a, checked: true}
			if err := j.do(t); err != nil && ctx.Err() == nil {
				b.Log.ErrorContext(ctx, "what is due could not be done; trying again", "job", j.name, "association", a.ID, "cause", err)
			}
		}
	}
}

// soon has what is queued sent without waiting for the next look.
func (b *Bot) soon() {
	select {
	case b.due <- struct{}{}:
	default: // somebody has said so already
	}
}

// sendQueued sends what waits to be sent.
func (t *turn) sendQueued() error {
	if t.Send == nil {
		return nil
	}
	var waiting []store.Post
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		waiting, err = r.Posts(store.Queued, store.Doubt)
		return err
	})
	if err != nil {
		return err
	}
	waiting, err = t.redo(waiting)
	if err != nil {
		return err
	}
	for _, p := range waiting {
		if t.ctx.Err() != nil {
			return t.ctx.Err()
		}
		if p.Why != "" && t.Now().Sub(p.Changed) < retryAfter {
			continue
		}
		if err := t.sendPost(p); err != nil {
			return err
		}
	}
	return nil
}

// sendPost sends one. An error is one of the store.
func (t *turn) sendPost(p store.Post) error {
	one := &turn{Bot: t.Bot, ctx: t.ctx, assoc: t.assoc, checked: true}
	one.Where = p.Where
	err := t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error { return w.Mark(p.Key, t.Now()) })
	switch store.CodeOf(err) {
	case store.Closed, store.NotFound:
		return nil // another sends it, or it was taken away
	}
	if err != nil {
		return err
	}
	k, ok := postKindOf(p.Key)
	if !ok {
		return one.settle(p.Key, Sent{}, fmt.Errorf("%w: this version of netpost knows no posts of this kind", ErrNotSent), false)
	}
	to, m, err := k.compose(one, p)
	if err != nil {
		return one.settle(p.Key, Sent{}, fmt.Errorf("%w: %w", ErrNotSent, err), false)
	}
	sent, err := t.Send(t.ctx, t.assoc.ID, to, m)
	one.Where = sent.Place
	one.Where.Thread = p.Where.Thread
	again := !errors.Is(err, ErrGone) && t.Now().Sub(p.Queued) < giveUp
	return one.settle(p.Key, sent, err, again)
}

// composeAnswer makes the answer to a question anew, as it stands now. A
// private one goes to its asker alone.
func (t *turn) composeAnswer(p store.Post) (Target, Message, error) {
	var q store.Question
	var facts []store.Given
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if q, err = r.Question(p.Question); err == nil {
			facts, err = r.Given(p.Question)
		}
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	d := t.answered(q, standing(facts))
	if d.answer.Error != nil {
		return Target{}, Message{}, d.answer.Error
	}
	t.Who, t.public = Who{Person: q.Asker}, true
	to := Target{Place: p.Where}
	if kind, _, _ := strings.Cut(p.Key, "/"); q.Private && kind != "share" {
		t.Direct = true
		to = Target{Place: Place{Platform: p.Where.Platform, Workspace: p.Where.Workspace}, To: q.Asker}
	}
	return to, t.show(d, mainView), nil
}
