package discord

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"strconv"
	"sync"
	"time"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

const (
	// maxAge is how far a request's time may be from ours. The library looks at
	// the signature alone, which is good for ever.
	maxAge = 5 * time.Minute
	// answerBy is when a request ends without an answer.
	answerBy = 2900 * time.Millisecond
)

// runHTTP receives over HTTP until ctx ends.
func (a *Adapter) runHTTP(ctx context.Context, h bot.Handler) error {
	work, finish := a.begin(ctx)
	return wire.Listener{Platform: Platform, Log: a.log, On: a.o.Listener, Address: a.o.Listen, Path: a.o.Path, Finish: finish}.
		Serve(ctx, a.receiver(work, h))
}

// receiver answers Discord's requests.
func (a *Adapter) receiver(ctx context.Context, h bot.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, ok := wire.Posted(w, r, "Discord posts here. Put this address into the application's settings.")
		if !ok {
			return
		}
		// Before anything is parsed. Discord sends wrong signatures now and then
		// to see that they are refused.
		r.Body = io.NopCloser(bytes.NewReader(body))
		if err := a.signed(r, time.Now()); err != nil {
			a.log.Warn("discord: a request was refused", "cause", err)
			http.Error(w, err.Error(), http.StatusUnauthorized)
			return
		}
		var i struct {
			Type int    `json:"type"`
			ID   string `json:"id"`
		}
		if err := json.Unmarshal(body, &i); err != nil || i.Type == 0 || i.Type != typePing && i.ID == "" {
			http.Error(w, "The payload can't be read. Send what Discord sends.", http.StatusBadRequest)
			return
		}
		if i.Type == typePing {
			reply(w, response{Type: respondPong})
			return
		}
		b := &bodyResponse{offers: make(chan offer), over: make(chan struct{})}
		a.received(ctx, h, body, func(route) responder { return b })
		b.serve(w)
	})
}

// signed checks that Discord sent a request within the last five minutes.
func (a *Adapter) signed(r *http.Request, now time.Time) error {
	at := r.Header.Get("X-Signature-Timestamp")
	if at == "" || r.Header.Get("X-Signature-Ed25519") == "" {
		return errors.New("the request is not signed: only Discord can post here")
	}
	if !discordgo.VerifyInteraction(r, a.key) {
		return errors.New("the request's signature is wrong: give the public key of the application's page “General Information”")
	}
	seconds, err := strconv.ParseInt(at, 10, 64)
	if age := now.Sub(time.Unix(seconds, 0)); err != nil || age > maxAge || age < -maxAge {
		return errors.New("the request's time is more than five minutes off: set this machine's clock, or the request was sent before")
	}
	return nil
}

func reply(w http.ResponseWriter, r response) error {
	b, err := json.Marshal(r)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Content-Length", strconv.Itoa(len(b)))
	if _, err = w.Write(b); err != nil {
		return err
	}
	return http.NewResponseController(w).Flush()
}

// bodyResponse responds in the body of the answer to Discord's request.
type bodyResponse struct {
	offers chan offer
	over   chan struct{} // closed when the request is over
	once   sync.Once
}

// offer is a response on its way to the request. None: there won't be one.
type offer struct {
	*response
	done chan error
}

func (b *bodyResponse) inBody() bool { return true }

func (b *bodyResponse) none() {
	select {
	case <-b.over:
	default:
		go func() {
			select {
			case b.offers <- offer{}:
			case <-b.over:
			}
		}()
	}
}

func (b *bodyResponse) respond(ctx context.Context, r response) (string, error) {
	o := offer{&r, make(chan error, 1)}
	select {
	case b.offers <- o:
	case <-b.over:
		return "", errLate
	case <-ctx.Done():
		return "", errLate
	}
	return "", <-o.done
}

// serve waits for the response and writes it.
func (b *bodyResponse) serve(w http.ResponseWriter) {
	defer b.once.Do(func() { close(b.over) })
	t := time.NewTimer(answerBy)
	defer t.Stop()
	select {
	case o := <-b.offers:
		if o.response == nil {
			w.WriteHeader(http.StatusAccepted)
			return
		}
		o.done <- reply(w, *o.response)
	case <-t.C:
		http.Error(w, "There is no answer yet. Try again.", http.StatusServiceUnavailable)
	}
}
