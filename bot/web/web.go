// Package web is the browser as a channel: all that the conversation does
// works there, on this machine, without any platform or token.
//
//	w, err := web.New(web.Options{Listener: l})
//	err = w.Run(ctx, handler)
//
// A question is asked in a form and answered on a page of its own. Every page
// is made here and works without script; the one script completes what is
// typed. Buttons and forms are sent by POST, with a token that only this
// browser's pages have, and each is carried out once however often it is sent.
//
// A browser is a person: a random secret in a cookie, of which only a hash is
// used as the person's id. A question is its asker's alone, or asked before
// all; the first has no link, the link of the second is its id, which nobody
// can guess.
//
// The address is this machine's own unless the options say otherwise, and then
// an access token must be given by everybody who comes in.
package web

import (
	"context"
	"crypto/sha256"
	"encoding/base32"
	"errors"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"net/url"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot"
)

// Platform is the browser's name in places and persons.
const Platform = "web"

// DefaultChannel is the one channel that all browsers are in.
const DefaultChannel = "web"

// minToken is the fewest bytes of an access token.
const minToken = 16

// Past is what a conversation remembers for the pages. A *bot.Bot is one.
type Past interface {
	Past(ctx context.Context, who bot.Who, where bot.Place, limit int) ([]bot.Asked, error)
	Recall(ctx context.Context, who bot.Who, where bot.Place, id string) (bot.Recalled, bool)
}

// Options say how the channel is set.
type Options struct {
	// Listener is where browsers come in. Run closes it.
	Listener net.Listener
	// URL is the address that people use where it is not the listener's own,
	// such as https://netpost.example: of a proxy before it.
	URL string
	// Token must be given by whoever comes in; needed where the listener can
	// be reached from other machines. Empty: nobody is asked.
	Token string

	// Find gives the association here, for what it adopted; nil: there is none.
	Find func(bot.Place) (bot.Association, bool)

	Name   string        // of the association, on every page
	Code   string        // the code that it works under; empty: all
	Past   Past          // what was asked before; nil: only what is in memory
	Notes  bot.Searcher  // for the search of case notes; nil: there is none
	Pages  http.Handler  // the case notes as pages, below PagesPath; nil: there are none
	Log    *slog.Logger  // nil: nothing is logged. It gets ids and errors, never words or secrets
	Wait   time.Duration // how long a reply may take before a page says so; zero: bot.DeferAfter
	Closed time.Duration // how long what has begun may take once Run's context has ended; zero: 10 s

	Workspace, Channel string // of the place; empty: "local" and DefaultChannel
}

// PagesPath is where the pages of the case notes are.
const PagesPath = "/notes/"

// Web is the adapter.
type Web struct {
	Options
	hosts  []string // that a request may be for
	origin string   // scheme and host of the pages, for cookies and links
	secure bool     // people come by https
	server *http.Server
	h      bot.Handler
	jobs   sync.WaitGroup
	run    context.Context // of Run, without its end
	gate   gate

	mu       sync.Mutex // guards what follows
	messages kept[*message]
	works    kept[*work] // by delivery

	person  func(secret string) string   // its id
	watch   func(m message, change bool) // what people come to see; nil but in tests
	arrived func(d int)                  // counts requests in and out; nil but in tests
}

// New makes the channel. An error says what of the options does not do.
func New(o Options) (*Web, error) {
	if o.Listener == nil {
		return nil, errors.New("web: no listener")
	}
	if o.Workspace == "" {
		o.Workspace = "local"
	}
	if o.Channel == "" {
		o.Channel = DefaultChannel
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Wait == 0 {
		o.Wait = bot.DeferAfter
	}
	if o.Closed == 0 {
		o.Closed = 10 * time.Second
	}
	w := &Web{Options: o, run: context.Background(), person: personID, messages: newKept[*message](mostMessages), works: newKept[*work](mostWorks)}
	address := o.Listener.Addr().String()
	host, port, err := net.SplitHostPort(address)
	ip := net.ParseIP(host)
	if err != nil || ip == nil {
		return nil, fmt.Errorf("web: %s is no address that a browser comes to", address)
	}
	if ip.IsLoopback() {
		for _, name := range []string{"127.0.0.1", "localhost", "::1"} {
			w.hosts = append(w.hosts, net.JoinHostPort(name, port))
		}
	} else if o.Token == "" {
		return nil, fmt.Errorf("web: %s can be reached from other machines: set an access token, or listen on 127.0.0.1", address)
	}
	if o.Token != "" && len(o.Token) < minToken {
		return nil, fmt.Errorf("web: the access token has fewer than %d characters: make a longer one that nobody can guess", minToken)
	}
	w.hosts = append(w.hosts, address)
	w.origin = "http://" + address
	if o.URL != "" {
		u, err := url.Parse(o.URL)
		if err != nil || u.Scheme != "http" && u.Scheme != "https" || u.Host == "" || strings.Trim(u.Path, "/") != "" {
			return nil, fmt.Errorf("web: %s is not the address of a site: write it like https://netpost.example", o.URL)
		}
		w.hosts = append(w.hosts, strings.ToLower(u.Host))
		w.origin, w.secure = u.Scheme+"://"+strings.ToLower(u.Host), u.Scheme == "https"
	}
	w.server = &http.Server{
		Handler: w.guarded(w.routes()), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 15 * time.Second, WriteTimeout: 30 * time.Second,
		IdleTimeout: time.Minute, MaxHeaderBytes: 32 << 10, ErrorLog: slog.NewLogLogger(o.Log.Handler(), slog.LevelDebug),
	}
	return w, nil
}

// Address is what people type into a browser.
func (w *Web) Address() string { return w.origin + "/" }

// personID is who a browser with a secret is. The secret can't be found from it.
func personID(secret string) string {
	sum := sha256.Sum256([]byte("person " + secret))
	return strings.ToLower(base32.StdEncoding.WithPadding(base32.NoPadding).EncodeToString(sum[:10]))
}

// Run serves browsers until ctx ends.
func (w *Web) Run(ctx context.Context, h bot.Handler) error {
	w.h, w.run = h, context.WithoutCancel(ctx)
	ended := make(chan struct{})
	stop := context.AfterFunc(ctx, func() {
		defer close(ended)
		down, cancel := context.WithTimeout(w.run, w.Closed)
		defer cancel()
		if w.server.Shutdown(down) != nil {
			_ = w.server.Close()
		}
	})
	err := w.server.Serve(w.Listener)
	if !stop() {
		<-ended
		w.jobs.Wait()
		return nil
	}
	w.jobs.Wait()
	return fmt.Errorf("web: %s failed: %w; start it again", w.Listener.Addr(), err)
}

// place is where everybody is.
func (w *Web) place(thread string) bot.Place {
	return bot.Place{Platform: Platform, Workspace: w.Workspace, Channel: w.Channel, Thread: thread}
}
