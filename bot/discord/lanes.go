package discord

import (
	"context"
	"sync"
	"time"
)

// lanes keep events about one message in the order in which they came, so that
// an earlier press never overwrites what a later one showed.
type lanes struct {
	mu   sync.Mutex
	last map[string]chan struct{} // closed when the last one in that lane is through
}

func newLanes() *lanes { return &lanes{last: map[string]chan struct{}{}} }

// enter takes a place in a lane: before is closed when it is its turn, leave is
// to be called once when it is through. The empty key is no lane.
func (l *lanes) enter(key string) (before <-chan struct{}, leave func()) {
	mine := make(chan struct{})
	l.mu.Lock()
	defer l.mu.Unlock()
	prev, busy := l.last[key]
	if !busy || key == "" {
		prev = make(chan struct{})
		close(prev)
	}
	if key == "" {
		return prev, func() {}
	}
	l.last[key] = mine
	return prev, func() {
		l.mu.Lock()
		defer l.mu.Unlock()
		close(mine)
		if l.last[key] == mine {
			delete(l.last, key)
		}
	}
}

// gates let calls to Discord through one at a time for each key, and hold them
// back for as long as Discord says where a call was refused for its rate or
// used the last one allowed. The library's own limiter waits without a context,
// and never forgets a key: each interaction is a new one.
type gates struct {
	mu    sync.Mutex
	all   map[string]*gate
	until time.Time // no call with the bot's token before
}

type gate struct {
	open  chan struct{} // holds one token
	users int
	until time.Time // no call before
}

func newGates() *gates { return &gates{all: map[string]*gate{}} }

// mostGates is how many gates are kept before those that hold nobody are
// looked for.
const mostGates = 1000

// enter waits for the gate. The error is the context's: then nothing was
// called. hold keeps the gate shut after this call, leave opens it. What is
// free is not held back by all.
func (g *gates) enter(ctx context.Context, key string, free bool) (hold func(d time.Duration, all bool), leave func(), err error) {
	g.mu.Lock()
	if len(g.all) > mostGates {
		for k, x := range g.all {
			if x.users == 0 && time.Now().After(x.until) {
				delete(g.all, k)
			}
		}
	}
	x := g.all[key]
	if x == nil {
		x = &gate{open: make(chan struct{}, 1)}
		x.open <- struct{}{}
		g.all[key] = x
	}
	x.users++
	g.mu.Unlock()

	out := func() {
		g.mu.Lock()
		defer g.mu.Unlock()
		if x.users--; x.users == 0 && !time.Now().Before(x.until) {
			delete(g.all, key)
		}
	}
	select {
	case <-x.open:
	case <-ctx.Done():
		out()
		return nil, nil, ctx.Err()
	}
	leave = func() { x.open <- struct{}{}; out() }
	for {
		g.mu.Lock()
		wait := time.Until(x.until)
		if !free {
			wait = max(wait, time.Until(g.until))
		}
		g.mu.Unlock()
		if wait <= 0 {
			break
		}
		if !sleep(ctx, wait) {
			leave()
			return nil, nil, ctx.Err()
		}
	}
	hold = func(d time.Duration, all bool) {
		g.mu.Lock()
		defer g.mu.Unlock()
		if until := time.Now().Add(d); all && !free {
			g.until = until
		} else {
			x.until = until
		}
	}
	return hold, leave, nil
}
