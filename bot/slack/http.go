package slack

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"mime"
	"net"
	"net/http"
	"net/url"
	"time"

	slackapi "github.com/slack-go/slack"
	"github.com/slack-go/slack/socketmode"

	"example.org/netpost/bot"
)

// maxBody is the longest request: Slack's own are shorter.
const maxBody = 1 << 20

// runHTTP receives over HTTP until ctx ends.
func (a *Adapter) runHTTP(ctx context.Context, h bot.Handler) error {
	l := a.o.Listener
	if l == nil {
		var err error
		if l, err = net.Listen("tcp", a.o.Listen); err != nil {
			return fmt.Errorf("slack: can't listen on %s: %w: give an address of this machine that nothing else listens on", a.o.Listen, err)
		}
	}
	work, finish := a.begin(ctx)
	mux := http.NewServeMux()
	mux.Handle(a.o.Path, a.receiver(work, h))
	s := &http.Server{Handler: mux, ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second,
		WriteTimeout: 15 * time.Second, IdleTimeout: time.Minute, MaxHeaderBytes: 64 << 10,
		ErrorLog: slog.NewLogLogger(a.log.Handler(), slog.LevelWarn)}
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	select {
	case err := <-ended:
		finish()
		return fmt.Errorf("slack: the listener ended: %w: start it again", err)
	case <-ctx.Done():
	}
	// Requests in hand are answered, new ones are not let in.
	down, cancel := context.WithTimeout(context.WithoutCancel(ctx), windDown)
	defer cancel()
	err := s.Shutdown(down)
	finish()
	if err != nil {
		_ = s.Close()
	}
	return nil
}

// receiver answers Slack's requests. All three kinds come to one address.
func (a *Adapter) receiver(ctx context.Context, h bot.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.Method != http.MethodPost {
			w.Header().Set("Allow", http.MethodPost)
			http.Error(w, "Slack posts here. Put this address into the app's settings.", http.StatusMethodNotAllowed)
			return
		}
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, maxBody))
		if err != nil {
			if _, ok := errors.AsType[*http.MaxBytesError](err); ok {
				http.Error(w, fmt.Sprintf("The request is longer than %d bytes. Send a shorter one.", maxBody), http.StatusRequestEntityTooLarge)
				return
			}
			http.Error(w, "The request broke off. Send it again.", http.StatusBadRequest)
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
