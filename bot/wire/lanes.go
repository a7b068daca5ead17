package wire

import (
	"sync"
)

// Lanes keep events about one message in the order in which they came, so that
// an earlier press never overwrites what a later one showed.
type Lanes struct {
	mu   sync.Mutex
	last map[string]chan struct{} // closed when the last one in that lane is through
}

// NewLanes makes lanes with nothing in them.
func NewLanes() *Lanes { return &Lanes{last: map[string]chan struct{}{}} }

// Enter takes a place in a lane: before is closed when it is its turn, leave is
// to be called once when it is through. The empty key is no lane.
func (l *Lanes) Enter(key string) (before <-chan struct{}, leave func()) {
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
