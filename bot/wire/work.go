package wire

import (
	"context"
	"sync"
	"time"
)

// MostWork is how many events are in hand at once. More would be more than a
// workspace of any size sends; then people are told to ask again.
const MostWork = 1000

// Work counts the events in hand. The zero value takes none before Open.
type Work struct {
	mu     sync.Mutex
	n      int
	closed bool
	idle   chan struct{} // closed once nothing is in hand after close
}

// Open gives the context that events are carried out in: it outlives ctx by as
// much as what was begun needs, at most WindDown. finish takes no more and
// waits for that; late is called where it was not done in time. It may be
// called again.
func (w *Work) Open(ctx context.Context, late func()) (work context.Context, finish func()) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.closed = false
	w.idle = make(chan struct{})
	work, stop := context.WithCancel(context.WithoutCancel(ctx))
	return work, func() {
		idle := w.close()
		t := time.NewTimer(WindDown)
		defer t.Stop()
		select {
		case <-idle:
		case <-t.C:
			late()
		}
		stop()
	}
}

// Begin takes one in hand; false: there are too many, or it is closing time.
func (w *Work) Begin() bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.idle == nil || w.closed || w.n >= MostWork {
		return false
	}
	w.n++
	return true
}

// End is called once for each that Begin took in hand.
func (w *Work) End() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.n--
	if w.closed && w.n == 0 {
		close(w.idle)
	}
}

// close takes no more; what it gives is closed once all is done.
func (w *Work) close() <-chan struct{} {
	w.mu.Lock()
	defer w.mu.Unlock()
	if !w.closed {
		w.closed = true
		if w.n == 0 {
			close(w.idle)
		}
	}
	return w.idle
}
