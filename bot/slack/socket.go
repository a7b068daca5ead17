package slack

import (
	"context"
	"encoding/json"
	"fmt"
	"time"

	slackapi "github.com/slack-go/slack"
	"github.com/slack-go/slack/socketmode"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// maxFrame is the longest message that is read from the socket.
const maxFrame = 4 << 20

// runSocket receives over Socket Mode until ctx ends.
func (a *Adapter) runSocket(ctx context.Context, h bot.Handler) error {
	work, finish := a.begin(ctx)
	defer finish()
	for wait := time.Second; ; wait = min(2*wait, time.Minute) {
		err := a.connect(ctx, work, h, finish)
		if ctx.Err() != nil {
			return nil
		}
		if fatal(err) {
			return startError("app token", err)
		}
		// The client reconnects by itself; what ends it is rare.
		a.log.Warn("slack: the connection ended, starting it again", "in", wait, "cause", scrub(err))
		if !wire.Sleep(ctx, wait) {
			return nil
		}
	}
}

// connect runs one client. It returns when ctx has ended and what was begun is
// finished, or when the client gives up.
func (a *Adapter) connect(ctx, work context.Context, h bot.Handler, finish func()) error {
	// The client gets a context of its own: it must live until the last
	// acknowledgement is out.
	live, stop := context.WithCancelCause(context.WithoutCancel(ctx))
	defer stop(nil)
	client := socketmode.New(a.api, socketmode.OptionReadLimit(maxFrame))
	ended := make(chan error, 1)
	go func() { ended <- client.RunContext(live) }()

	ending := ctx.Done()
	var finished chan struct{}
	for {
		// Events are always drained and never worked on here: once 50 wait, the
		// client stops reading, answers no ping and can't reconnect either.
		select {
		case e := <-client.Events:
			if finished != nil {
				continue // not acknowledged: Slack delivers it again, to who comes next
			}
			if err := a.received(work, h, client, e); err != nil {
				stop(err)
			}
		case <-ending:
			ending = nil
			finished = make(chan struct{})
			go func() {
				finish()
				// An acknowledgement is queued, and nothing tells when it is out.
				time.Sleep(flush)
				close(finished)
			}()
		case <-finished:
			stop(nil)
			<-ended
			return nil
		case err := <-ended:
			if cause := context.Cause(live); cause != nil {
				err = cause
			}
			if finished != nil {
				<-finished
			}
			return err
		}
	}
}

// received takes what the client has to say. An error ends it.
func (a *Adapter) received(ctx context.Context, h bot.Handler, client *socketmode.Client, e socketmode.Event) error {
	switch e.Type {
	case socketmode.EventTypeSlashCommand, socketmode.EventTypeInteractive, socketmode.EventTypeEventsAPI:
		a.envelope(ctx, h, client, envelope{e.Request.Type, e.Request.EnvelopeID, e.Request.Payload})
	case socketmode.EventTypeErrorBadMessage:
		// What the client can't parse it never acknowledges, and Slack delivers
		// it again and again. It may still be one that we can.
		if bad, ok := e.Data.(*socketmode.ErrorBadMessage); ok {
			var env envelope
			if err := json.Unmarshal(bad.Message, &env); err != nil || env.ID == "" {
				a.log.Warn("slack: a message that can't be read")
				return nil
			}
			a.envelope(ctx, h, client, env)
		}
	case socketmode.EventTypeConnectionError:
		bad, ok := e.Data.(*slackapi.ConnectionErrorEvent)
		if !ok {
			return nil
		}
		// The client tries for ever with a token that lacks a scope, or is of
		// the wrong kind.
		if fatal(bad.ErrorObj) {
			return bad.ErrorObj
		}
		a.log.Warn("slack: no connection, trying again", "in", bad.Backoff, "cause", scrub(bad.ErrorObj))
	case socketmode.EventTypeConnected:
		a.log.Info("slack: connected")
	case socketmode.EventTypeErrorWriteFailed:
		a.log.Warn("slack: an acknowledgement did not go out")
	}
	return nil
}

// envelope is what Slack wraps around a payload on the socket.
type envelope struct {
	Type    string          `json:"type"`
	ID      string          `json:"envelope_id"`
	Payload json.RawMessage `json:"payload"`
}

// envelope has a payload answered and acknowledged.
func (a *Adapter) envelope(ctx context.Context, h bot.Handler, client *socketmode.Client, e envelope) {
	ack := func(payload any) {
		// With a deadline: it would block for ever once the client has ended.
		ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), time.Second)
		defer cancel()
		if err := client.AckCtx(ctx, e.ID, payload); err != nil {
			a.log.Warn("slack: an acknowledgement did not go out", "cause", scrub(err))
		}
	}
	in, err := a.decode(e.Type, e.Payload)
	if err != nil {
		if err != errDrop {
			a.log.Warn("slack: a payload that can't be read", "type", e.Type, "cause", err)
		}
		go ack(nil)
		return
	}
	switch a.take(ctx, h, in, ack) {
	case again:
		go ack(nil)
	case refuseAloud:
		go ack(busy())
	case refuse:
		a.log.Warn("slack: too much in hand, an event was left for later")
	}
}

// decode reads a payload of one of the socket's types.
func (a *Adapter) decode(typ string, payload []byte) (incoming, error) {
	self := ""
	if s := a.self.Load(); s != nil {
		self = s.user
	}
	var p interface {
		decode(self string) (incoming, error)
	}
	switch typ {
	case socketmode.RequestTypeSlashCommands:
		p = &slashCommand{}
	case socketmode.RequestTypeInteractive:
		p = &interactive{}
	case socketmode.RequestTypeEventsAPI:
		p = &outer{}
	default:
		return incoming{}, errDrop
	}
	if err := json.Unmarshal(payload, p); err != nil {
		return incoming{}, fmt.Errorf("malformed: %w", err)
	}
	return p.decode(self)
}
