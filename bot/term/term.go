// Package term is the terminal as a channel: all that the conversation does
// works there, for one person or for a script, without any token.
//
//	t := term.New(term.Options{In: os.Stdin, Out: os.Stdout})
//	err := t.Run(ctx, handler)
//
// What is typed is a play, told to the bot alone; words after an answer go on
// from it. Buttons have numbers: typing the number presses. A line that begins
// with a colon is to the terminal itself; ":help" lists those.
//
// A script is the same lines from a file: each is answered whole before the
// next is read, so the same script prints the same. A line that begins with #
// is a comment.
package term

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync"
	"time"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// Platform is the terminal's name in places and persons.
const Platform = "term"

// Workspace is the terminal's, where the options name no other.
const Workspace = "local"

// maxLine is the longest line that is read, in bytes; longer ones are refused.
const maxLine = 1 << 16

// Options say how the terminal is set.
type Options struct {
	In  io.Reader
	Out io.Writer
	// Prompt stands before each line that is read; empty for scripts.
	Prompt string
	Text   bot.TextOptions
	// Workspace and Who are where the terminal is and who types; zero values
	// are "local" and "me".
	Workspace string
	Who       bot.Who
	// Session makes this run's deliveries its own; empty: a new id.
	Session string
	// Wait is how long a reply may take before the terminal says that it is
	// waiting; zero: bot.DeferAfter.
	Wait time.Duration
}

// Term is the adapter.
type Term struct {
	Options
	h    bot.Handler
	jobs sync.WaitGroup

	mu      sync.Mutex // guards what follows, and Out
	count   int        // of events
	meta    bot.Meta   // who acts where
	shown   []*message
	buttons []pressable // by number from 1
	form    *form
	last    string // the newest thread
	err     error  // of Out; the first is kept
}

// message is one on the screen.
type message struct {
	id      string
	where   bot.Place
	private bool
}

// pressable is a button with the message that it is on.
type pressable struct {
	bot.Button
	on *message
}

// form is one that is being filled in.
type form struct {
	bot.Form
	on     *message
	values map[string]string
}

// New makes a terminal. It panics where there is nothing to read or write.
func New(o Options) *Term {
	if o.In == nil || o.Out == nil {
		panic("term: New: no input or no output")
	}
	if o.Workspace == "" {
		o.Workspace = Workspace
	}
	if o.Who.ID == "" {
		o.Who.ID = "me"
	}
	if o.Session == "" {
		o.Session = store.NewID()
	}
	if o.Wait == 0 {
		o.Wait = bot.DeferAfter
	}
	o.Who.Platform = Platform
	t := &Term{Options: o}
	t.meta = bot.Meta{Who: o.Who, Where: bot.Place{Platform: Platform, Workspace: o.Workspace, Channel: "direct-" + o.Who.ID}, Direct: true}
	return t
}

// Run reads lines and answers them, until ctx or the input ends. An error is
// one of reading or writing.
func (t *Term) Run(ctx context.Context, h bot.Handler) error {
	t.h = h
	type line struct {
		text string
		err  error
	}
	lines := make(chan line)
	go func() {
		defer close(lines)
		r := bufio.NewReaderSize(t.In, maxLine)
		for {
			text, err := readLine(r)
			if err == io.EOF {
				return
			}
			select {
			case lines <- line{text, err}:
			case <-ctx.Done():
				return
			}
			if err != nil && !errors.Is(err, errLong) {
				return
			}
		}
	}()
	for {
		t.prompt()
		select {
		case <-ctx.Done():
			t.jobs.Wait()
			return t.err
		case l, ok := <-lines:
			switch {
			case !ok:
				t.jobs.Wait()
				return t.err
			case errors.Is(l.err, errLong):
				t.print(func() {
					t.line(fmt.Sprintf("That line is longer than %d bytes and was not read. Tell one play in a few sentences.", maxLine))
				})
				continue
			case l.err != nil:
				return fmt.Errorf("reading the terminal: %w", l.err)
			case l.text == ":quit":
				t.jobs.Wait()
				return t.err
			}
			t.Line(ctx, l.text)
		}
		if err := t.broken(); err != nil {
			return fmt.Errorf("writing to the terminal: %w", err)
		}
	}
}

var errLong = errors.New("the line is too long")

// readLine reads one line. What is too long is read to its end and refused.
func readLine(r *bufio.Reader) (string, error) {
	text, err := r.ReadSlice('\n')
	if errors.Is(err, bufio.ErrBufferFull) {
		for errors.Is(err, bufio.ErrBufferFull) {
			_, err = r.ReadSlice('\n')
		}
		return "", errLong
	}
	if err == io.EOF && len(text) > 0 {
		err = nil
	}
	s := strings.TrimRight(string(text), "\r\n")
	if !utf8.ValidString(s) {
		s = strings.ToValidUTF8(s, "?")
	}
	return s, err
}

func (t *Term) broken() error {
	t.mu.Lock()
	defer t.mu.Unlock()
	return t.err
}

// deliver gives an event to the handler and shows its reply. It returns when
// the reply is shown, or when the event was put off: a slow one goes on by
// itself. It holds no lock.
func (t *Term) deliver(ctx context.Context, e bot.Event, on *message) {
	done := make(chan bot.Reply, 1)
	t.jobs.Go(func() {
		defer func() {
			if p := recover(); p != nil {
				done <- bot.Say{Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{
					bot.Heading{Text: "Something went wrong, and this was not answered."},
					bot.Para{Text: bot.Line(fmt.Sprintf("Ask it in other words; whoever runs netpost wants to know: %v", p))},
				}}}}
			}
		}()
		done <- t.h(ctx, e)
	})
	var wait <-chan time.Time
	if bot.Defer(e) != bot.AckNone {
		wait = time.After(t.Wait)
	}
	select {
	case r := <-done:
		t.reply(ctx, e, on, r)
	case <-wait:
		t.print(func() { t.line("(one moment)") })
		t.jobs.Go(func() { t.reply(ctx, e, on, <-done) })
	}
}

// Post says something unasked.
func (t *Term) Post(ctx context.Context, to bot.Target, m bot.Message) (bot.Sent, error) {
	if err := ctx.Err(); err != nil {
		return bot.Sent{}, fmt.Errorf("%w: %w", bot.ErrNotSent, err)
	}
	gone := func(what string) (bot.Sent, error) {
		return bot.Sent{}, fmt.Errorf("%w: %w: %s", bot.ErrNotSent, bot.ErrGone, what)
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	p := to.Place
	private := p.Channel == ""
	if private {
		if to.To.ID == "" {
			return gone("it is to nobody and nowhere")
		}
		p = bot.Place{Platform: Platform, Workspace: t.Workspace, Channel: "direct-" + to.To.ID}
	}
	if p.Platform != Platform && p.Platform != "" || p.Workspace != t.Workspace && p.Workspace != "" {
		return gone("this terminal is not there")
	}
	p.Platform, p.Workspace = Platform, t.Workspace
	if to.Edit != "" {
		on := t.find(to.Edit)
		if on == nil {
			return gone("there is no message " + to.Edit)
		}
		t.show(on, m, true)
		return bot.Sent{Place: on.where, Message: on.id}, t.err
	}
	on := &message{where: p, private: private}
	t.show(on, m, false)
	sent := bot.Sent{Place: on.where, Message: on.id}
	if sent.Thread == "" && !private {
		sent.Thread = on.id
	}
	return sent, t.err
}
