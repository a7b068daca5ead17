package discord

import "sync"

// mostWork is how many events are in hand at once. More would be more than a
// server of any size sends; then people are told to ask again.
const mostWork = 1000

// work counts the events in hand.
type work struct {
	mu     sync.Mutex
	n      int
	closed bool
	idle   chan struct{} // closed once nothing is in hand after close
}

// begin takes one in hand; false: there are too many, or it is closing time.
func (w *work) begin() bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	if w.closed || w.n >= mostWork {
		return false
	}
	w.n++
	return true
}

func (w *work) end() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.n--
	if w.closed && w.n == 0 {
		close(w.idle)
	}
}

// open lets events in.
func (w *work) open() {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.closed = false
	w.idle = make(chan struct{})
}

// close takes no more; what it gives is closed once all is done.
func (w *work) close() <-chan struct{} {
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
