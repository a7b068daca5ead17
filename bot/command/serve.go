package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"os/signal"
	"sync"
	"syscall"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/metrics"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/bot/term"
	"example.org/netpost/bot/web"
	"example.org/netpost/config"
)

var serveCommand = command{
	name:    "serve",
	summary: "answer in every configured channel and in the browser; without one, in this terminal too",
	help: "It runs until it is told to stop (Ctrl-C, or a signal to end), and then finishes what it has begun. " +
		"The web channel is on this machine alone unless the settings say otherwise. " +
		"Without a platform in the settings it prints the address of that channel and talks on standard input and output too; " +
		"it ends where the input does, unless nothing at all came in there. " +
		"The log goes to standard error and holds no words of questions and no tokens. Try first: netpost doctor.",
	flags: []flagRow{configFlag},
	run:   serve,
}

// closing is how long the program takes to end at most, once it is told to.
// The adapters themselves give what they have begun a little less.
const closing = 20 * time.Second

// service is the program while it serves.
type service struct {
	world   *World
	config  config.Config
	log     *slog.Logger
	metrics *metrics.Metrics
	store   store.Store
	bot     *bot.Bot
	shelves []*library // by association, in the order of the settings; nil: it has no notes
	page    *web.Web   // nil: there is no web channel
	front   *front     // nil: no platform posts to us
	senders senders
}

func serve(ctx context.Context, w *World, in input) (err error) {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	c, err := w.settings(in)
	if err != nil {
		return err
	}
	if missing := c.Secrets(); len(missing) > 0 {
		return fmt.Errorf("%w (for all that is missing: netpost doctor)", missing[0])
	}
	ctx, stop := signal.NotifyContext(ctx, syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends it at once

	s := &service{world: w, config: c, metrics: metrics.New()}
	level := c.Log
	if c.File == "" { // the screen is for the talk
		level = max(level, slog.LevelWarn)
	}
	s.log = newLog(w.Stderr, level, c, s.metrics)
	under, err := sqlite.Open(ctx, c.Store, sqlite.Options{})
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, under.Close()) }()
	s.store = s.metrics.Store(under)
	if err := s.resume(ctx, time.Now()); err != nil {
		return err
	}
	if err := s.run(ctx); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	s.log.Info("stopped")
	return nil
}

// run serves until ctx ends, a channel fails, or the terminal is left.
func (s *service) run(ctx context.Context) error {
	ctx, cancel := context.WithCancelCause(ctx)
	defer cancel(nil)
	var beside sync.WaitGroup
	defer beside.Wait()
	defer cancel(nil) // before the wait

	if err := s.openLibraries(ctx, &beside); err != nil {
		return err
	}
	find := s.linking(finder(s.config, s.library))
	s.bot = bot.New(bot.Options{Store: s.store, Find: find, Draw: draw(find), All: everyone(s.config, s.library), Send: s.senders.Send,
		Claim: s.config.Claim, Nudge: s.config.Nudge, Log: s.log})
	if s.config.Metrics != "" && s.config.File != "" {
		h, err := newHealth(s.config.Metrics, s)
		if err != nil {
			return err
		}
		defer h.close()
		go h.serve()
		s.log.Info("health and metrics", "address", h.listen.Addr().String())
	}
	beside.Go(func() { s.keep(ctx) })
	return s.channels(ctx, cancel, &beside)
}

// channels runs every channel until ctx ends, and ends all with the first that
// fails.
func (s *service) channels(ctx context.Context, cancel context.CancelCauseFunc, beside *sync.WaitGroup) error {
	type named struct {
		name, platform string
		bot.Adapter
	}
	var all []named
	for _, ch := range s.world.channels(s.config) {
		a, err := s.open(ch)
		if err != nil {
			return err
		}
		all = append(all, named{ch.name, ch.platform, a})
		s.senders.add(ch.platform, ch.workspace, a)
	}
	local := len(all) == 0
	page, err := s.web(local)
	if err != nil {
		return err
	}
	if page != nil {
		all = append(all, named{"web", web.Platform, page})
		s.senders.add(web.Platform, "", page)
	}
	typed := &counted{Reader: s.world.Stdin}
	if local {
		a := s.terminal(typed)
		all = append(all, named{"terminal", term.Platform, a})
		s.senders.add(term.Platform, "", a)
	}
	if s.front != nil {
		defer func() {
			down, stop := context.WithTimeout(context.WithoutCancel(ctx), closing)
			defer stop()
			s.front.close(down)
		}()
		go func() {
			if err := s.front.serve(); err != nil {
				cancel(err)
			}
		}()
	}
	var running sync.WaitGroup
	for _, a := range all {
		running.Go(func() {
			s.log.Info("serving", "channel", a.name)
			err := a.Run(ctx, s.metrics.Handle(a.platform, s.bot.Handle))
			switch {
			case err != nil:
				cancel(err)
			case a.platform == term.Platform && (page == nil || typed.any()):
				cancel(nil) // whoever typed has left
			}
		})
	}
	beside.Go(func() { s.bot.Run(ctx) })
	running.Wait()
	if err := context.Cause(ctx); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// open makes a channel's adapter.
func (s *service) open(ch channel) (bot.Adapter, error) {
	log := s.log.With("channel", ch.name)
	if ch.paths == nil {
		return ch.make(log, nil)
	}
	if s.front == nil {
		var err error
		if s.front, err = newFront(s.config.Listen, s.log); err != nil {
			return nil, err
		}
		s.log.Info("platforms post to", "address", s.front.listen.Addr().String())
	}
	return ch.make(log, s.front.to(ch.own, ch.paths))
}

// terminal is the channel on standard input and output.
func (s *service) terminal(in io.Reader) *term.Term {
	w := s.world
	o := term.Options{In: in, Out: w.Stdout, Text: w.text()}
	if isTerminal(w.Stdin) && isTerminal(w.Stdout) {
		o.Prompt = "> "
		fmt.Fprintln(w.Stdout, "Tell a play, as you would to a partner. For what else can be asked: help. For the terminal's own lines, :quit among them: :help.")
	}
	return term.New(o)
}

// library finds the notes of an association; nil: it has none.
func (s *service) library(id string) *library {
	for i, a := range s.config.Associations {
		if a.ID == id && i < len(s.shelves) {
			return s.shelves[i]
		}
	}
	return nil
}

// openLibraries opens the notes of every association. With nothing configured
// those are the invented ones that come with the program. It returns once each
// was tried.
func (s *service) openLibraries(ctx context.Context, beside *sync.WaitGroup) error {
	var tried sync.WaitGroup
	for _, a := range s.config.Associations {
		l := &library{id: a.ID, season: seasonOf(a), dir: a.Casebook, saved: indexDir(s.config, a), log: s.log.With("association", a.ID), metrics: s.metrics}
		switch {
		case a.Casebook != "":
			l.open()
			tried.Add(1)
			beside.Go(func() { l.follow(ctx, sync.OnceFunc(tried.Done)) })
		case s.config.File == "":
			n, err := openNotes(ctx, s.world, crew{})
			if err != nil {
				return err
			}
			l.put(n)
			beside.Go(func() { <-ctx.Done(); l.put(nil) })
		default:
			l = nil
		}
		s.shelves = append(s.shelves, l)
	}
	tried.Wait()
	return ctx.Err()
}
