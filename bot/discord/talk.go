package discord

import (
	"context"
	"errors"
	"fmt"
	"net/http"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// Types of responses.
const (
	respondPong       = 1
	respondMessage    = 4
	respondDefer      = 5 // a message follows
	respondDeferEdit  = 6 // the message that was pressed may change
	respondEdit       = 7 // it changes
	respondChoices    = 8
	respondForm       = 9
	original          = "@original"
	maxAwait          = 3 * time.Second
	betweenTries      = 200 * time.Millisecond
	threadOpenMinutes = 1440
)

// response is the first thing that Discord gets to hear about an interaction.
type response struct {
	Type  int `json:"type"`
	Data  any `json:"data,omitempty"`
	files []bot.Picture
}

// responder carries the first response to an interaction out. There is one at
// most.
type responder interface {
	// respond gives the id of the message that came of it, where Discord tells.
	respond(ctx context.Context, r response) (message string, err error)
	// inBody reports whether it responds in the body of an HTTP answer: then it
	// carries no files, and Discord takes a moment to know of it.
	inBody() bool
	// none says that there will be no response.
	none()
}

// stage is how far a talk has come.
type stage uint8

const (
	silent     stage = iota // nothing was said: there are three seconds
	deferred                // a message stands there that says "thinking"
	editing                 // the message that was pressed may change
	begun                   // the first message is out
	unanswered              // it was too late: there is no way to answer
)

// talk is one interaction on its way to its answer.
type talk struct {
	*Adapter
	route
	event   bot.Event
	first   responder
	stage   stage
	hidden  bool      // the deferred message is for the person alone
	opened  time.Time // when the first response went out
	settled bool      // Discord has taken it
}

// respond sends the first response.
func (t *talk) respond(ctx context.Context, r response, then stage) (string, error) {
	id, err := t.first.respond(ctx, r)
	t.opened = time.Now()
	switch {
	case err == nil || !notSent(err):
		t.stage = then
	case isLapsed(err):
		t.stage = unanswered
	}
	return id, err
}

// wait defers. What a press will change stays as it is meanwhile; whatever
// comes of it, anybody may see it or not: a deferred message would fix that.
func (t *talk) wait(ctx context.Context) {
	var err error
	switch {
	case t.typ == typeComplete:
		_, err = t.respond(ctx, response{Type: respondChoices, Data: map[string]any{"choices": []choice{}}}, begun)
	case t.message != "":
		_, err = t.respond(ctx, response{Type: respondDeferEdit}, editing)
	default:
		flags := ephemeral
		if bot.Defer(t.event) == bot.AckPublic {
			flags = 0
		}
		t.hidden = flags != 0
		_, err = t.respond(ctx, response{Type: respondDefer, Data: map[string]any{"flags": flags}}, deferred)
	}
	if err != nil {
		t.log.Warn("discord: an answer could not be deferred", "cause", failure("the deferral", err))
	}
}

// hook calls an address of the interaction's own, good for a quarter of an
// hour. Right after a response in an HTTP body Discord may not have taken that
// yet and know nothing of the interaction; then the call did nothing, and is
// tried again.
func (t *talk) hook(ctx context.Context, method, path string, m *outgoing, out any) error {
	r := request{method: method, path: "webhooks/" + t.app + "/" + t.token + path, key: "hook/" + t.id, free: true}
	if m != nil {
		r.payload, r.files = m, m.files
	}
	for {
		err := t.call(ctx, r, out)
		early := !t.settled && t.first.inBody() && time.Since(t.opened) < maxAwait
		if err == nil {
			t.settled = true
		}
		if err == nil || !early || !isCode(err, 10015) && !isCode(err, 10008) || !wire.Sleep(ctx, betweenTries) {
			return err
		}
	}
}

// posted is a message as Discord gives it back.
type posted struct {
	ID string `json:"id"`
}

// edit puts a message in place of the deferred one, or of the one that was
// pressed.
func (t *talk) edit(ctx context.Context, m outgoing) (string, error) {
	return t.plain(m, func(m outgoing) (string, error) {
		var p posted
		m = m.instead()
		err := t.hook(ctx, http.MethodPatch, "/messages/"+original, &m, &p)
		return p.ID, err
	})
}

// follow says something more.
func (t *talk) follow(ctx context.Context, m outgoing, hidden bool) (string, error) {
	if hidden {
		m.Flags = ephemeral
	}
	return t.plain(m, func(m outgoing) (string, error) {
		var p posted
		err := t.hook(ctx, http.MethodPost, "?wait=true", &m, &p)
		return p.ID, err
	})
}

// show says something new in answer, where the event happened: to the person
// alone or to all there.
func (t *talk) show(ctx context.Context, m outgoing, hidden bool) (string, error) {
	switch t.stage {
	case silent:
		if len(m.files) > 0 && t.first.inBody() {
			t.hidden = hidden
			flags := 0
			if hidden {
				flags = ephemeral
			}
			if _, err := t.respond(ctx, response{Type: respondDefer, Data: map[string]any{"flags": flags}}, deferred); err != nil {
				return "", err
			}
			return t.show(ctx, m, hidden)
		}
		if hidden {
			m.Flags = ephemeral
		}
		id, err := t.respond(ctx, response{Type: respondMessage, Data: m, files: m.files}, begun)
		if err == nil && id == "" {
			id, err = t.find(ctx)
		}
		return id, err
	case deferred:
		if t.hidden == hidden {
			id, err := t.edit(ctx, m)
			if err == nil {
				t.stage = begun
			}
			return id, err
		}
		// Who sees a deferred message is fixed, and the first thing said after
		// it takes its place and its readers: it is taken away first.
		if err := t.away(ctx); err != nil {
			return "", err
		}
		return t.follow(ctx, m, hidden)
	case editing, begun:
		return t.follow(ctx, m, hidden)
	}
	return "", errLate
}

// find asks for the id of the first message, where its response went out in an
// HTTP body. That it is there also proves that Discord took it.
func (t *talk) find(ctx context.Context) (string, error) {
	var p posted
	err := t.hook(ctx, http.MethodGet, "/messages/"+original, nil, &p)
	if err != nil {
		// Not known to be out, nor not to be.
		return "", errors.New("the message was handed over, and can't be found: " + scrub(err))
	}
	return p.ID, nil
}

// away takes the deferred message away, or fills it with words that are no
// secret: nothing may be said before that.
func (t *talk) away(ctx context.Context) error {
	err := t.hook(ctx, http.MethodDelete, "/messages/"+original, nil, nil)
	if err != nil && !isCode(err, 10008) {
		if _, err = t.edit(ctx, render(bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Heading{Text: "The answer follows."}}}})); err != nil {
			return fmt.Errorf("%w: %w", bot.ErrNotSent, err)
		}
	}
	t.stage = begun
	return nil
}

// change puts a message in place of the one that was pressed.
func (t *talk) change(ctx context.Context, m outgoing) error {
	switch t.stage {
	case silent:
		if len(m.files) > 0 && t.first.inBody() {
			if _, err := t.respond(ctx, response{Type: respondDeferEdit}, editing); err != nil {
				return err
			}
			return t.change(ctx, m)
		}
		_, err := t.respond(ctx, response{Type: respondEdit, Data: m.instead(), files: m.files}, begun)
		return err
	case editing:
		_, err := t.edit(ctx, m)
		if err == nil {
			t.stage = begun
		}
		return err
	}
	return errLate
}

// nothing ends the talk without a word.
func (t *talk) nothing(ctx context.Context) error {
	var err error
	switch {
	case t.typ == typeComplete && t.stage == silent:
		_, err = t.respond(ctx, response{Type: respondChoices, Data: map[string]any{"choices": []choice{}}}, begun)
	case t.stage == silent && t.message != "":
		_, err = t.respond(ctx, response{Type: respondDeferEdit}, editing)
	case t.stage == silent:
		// There is no silent way to acknowledge a command.
		t.hidden = true
		if _, err = t.respond(ctx, response{Type: respondDefer, Data: map[string]any{"flags": ephemeral}}, deferred); err == nil {
			err = t.away(ctx)
		}
	case t.stage == deferred:
		err = t.away(ctx)
	}
	return err
}
