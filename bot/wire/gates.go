package wire

import (
	"context"
	"sync"
	"time"
)

// Gates let calls to a platform through one at a time for each key, and hold
// them back for as long as the platform says where a call was refused for its
// rate or used the last one allowed. A key is what the platform counts by: a
// method, with the channel where that counts. The libraries' own limiters wait
// without a context, or never forget a key.
type Gates struct {
	mu    sync.Mutex
	all   map[string]*gate
	until time.Time // no call that is not free before
}

type gate struct {
	open  chan struct{} // holds one token
	users int
	until time.Time // no call before
}

// NewGates makes gates that are all open.
func NewGates() *Gates { return &Gates{all: map[string]*gate{}} }

// mostGates is how many gates are kept before those that hold nobody are
// looked for.
const mostGates = 1000

// Enter waits for the gate. The error is the context's: then nothing was
// called. hold keeps the gate shut after this call, leave opens it. What is
// free is not held back by all.
func (g *Gates) Enter(ctx context.Context, key string, free bool) (hold func(d time.Duration, all bool), leave func(), err error) {
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
		if !Sleep(ctx, wait) {
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
