package slack

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"

	slackapi "github.com/slack-go/slack"
	"github.com/slack-go/slack/socketmode"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// runHTTP receives over HTTP until ctx ends.
func (a *Adapter) runHTTP(ctx context.Context, h bot.Handler) error {
	work, finish := a.begin(ctx)
	return wire.Listener{Platform: Platform, Log: a.log, On: a.o.Listener, Address: a.o.Listen, Path: a.o.Path, Finish: finish}.
		Serve(ctx, a.receiver(work, h))
}

// receiver answers Slack's requests. All three kinds come to one address.
func (a *Adapter) receiver(ctx context.Context, h bot.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, ok := wire.Posted(w, r, "Slack posts here. Put this address into the app's settings.")
		if !ok {
			return
		}
		// Before anything is parsed.
		if err := signed(r.Header, body, a.o.SigningSecret); err != nil {
			a.log.Warn("slack: a request was refused", "cause", err)
			http.Error(w, err.Error(), http.StatusUnauthorized)
			return
		}
		typ, payload, err := unwrap(r.Header.Get("Content-Type"), body)
		if err != nil {
			http.Error(w, "The request can't be read: "+err.Error()+". Send what Slack sends.", http.StatusBadRequest)
			return
		}
		if typ == socketmode.RequestTypeEventsAPI && challenged(w, payload) {
			return
		}
		a.answer(ctx, h, w, typ, payload)
	})
}

// answer has a payload answered and acknowledges it with the response.
func (a *Adapter) answer(ctx context.Context, h bot.Handler, w http.ResponseWriter, typ string, payload []byte) {
	in, err := a.decode(typ, payload)
	if err != nil {
		if err != errDrop {
			a.log.Warn("slack: a payload that can't be read", "type", typ, "cause", err)
			http.Error(w, "The payload can't be read. Send what Slack sends.", http.StatusBadRequest)
		}
		return // an empty 200: acknowledged
	}
	acks := make(chan any, 1)
	switch a.take(ctx, h, in, func(payload any) { acks <- payload }) {
	case again:
		return
	case refuseAloud:
		reply(w, busy())
		return
	case refuse:
		a.log.Warn("slack: too much in hand, an event was left for later")
		w.Header().Set("Retry-After", "60")
		http.Error(w, "Too much in hand. Send it again in a minute.", http.StatusServiceUnavailable)
		return
	}
	// An empty body where there is nothing to show: a form that was sent off
	// stays open on any other.
	if payload := <-acks; payload != nil {
		reply(w, payload)
	}
}

func reply(w http.ResponseWriter, payload any) {
	w.Header().Set("Content-Type", "application/json")
	_ = json.NewEncoder(w).Encode(payload)
}

// signed checks that Slack sent a request within the last five minutes.
func signed(h http.Header, body []byte, secret string) error {
	v, err := slackapi.NewSecretsVerifier(h, secret)
	if err == nil {
		_, _ = v.Write(body) // a hash takes all
		err = v.Ensure()
	}
	switch {
	case err == nil:
		return nil
	case errors.Is(err, slackapi.ErrExpiredTimestamp):
		return errors.New("the request's time is more than five minutes off: set this machine's clock, or the request was sent before")
	case errors.Is(err, slackapi.ErrMissingHeaders):
		return errors.New("the request is not signed: only Slack can post here")
	}
	return errors.New("the request's signature is wrong: give the signing secret of the app's page “Basic Information”")
}

// unwrap takes a request's body for the payload that it would be on a socket.
func unwrap(contentType string, body []byte) (typ string, payload []byte, err error) {
	kind, _, err := mime.ParseMediaType(contentType)
	if err != nil {
		return "", nil, errors.New("it has no content type")
	}
	switch kind {
	case "application/json":
		return socketmode.RequestTypeEventsAPI, body, nil
	case "application/x-www-form-urlencoded":
		v, err := url.ParseQuery(string(body))
		switch {
		case err != nil:
			return "", nil, errors.New("it is no form")
		case v.Get("payload") != "":
			return socketmode.RequestTypeInteractive, []byte(v.Get("payload")), nil
		case v.Get("ssl_check") != "":
			return "ssl_check", nil, nil
		}
		payload, err := json.Marshal(commandOf(v))
		return socketmode.RequestTypeSlashCommands, payload, err
	}
	return "", nil, fmt.Errorf("%q is neither a form nor JSON", kind)
}

// challenged answers the question that Slack asks of a new address.
func challenged(w http.ResponseWriter, payload []byte) bool {
	var o outer
	if err := json.Unmarshal(payload, &o); err != nil || o.Type != "url_verification" {
		return false
	}
	w.Header().Set("Content-Type", "text/plain")
	_, _ = io.WriteString(w, o.Challenge)
	return true
}
