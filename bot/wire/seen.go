package wire

import (
	"sync"
	"time"
)

// Seen is a window of keys: what was met within it is known again. It holds
// two generations of keys, so that it forgets without looking at each.
type Seen struct {
	mu       sync.Mutex
	old, now map[string]struct{}
	since    time.Time // when now began
	keep     time.Duration
	most     int // keys in a generation
}

// NewSeen remembers a key for keep at least, and half as long where more than
// most keys come in that time.
func NewSeen(keep time.Duration, most int) *Seen {
	return &Seen{now: map[string]struct{}{}, keep: keep, most: most}
}

// First reports whether a key is met for the first time, and remembers it.
func (s *Seen) First(key string, at time.Time) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.since.IsZero() {
		s.since = at
	}
	if age := at.Sub(s.since); age > s.keep || len(s.now) >= s.most {
		if age > 2*s.keep {
			s.now = nil // all of it is too old
		}
		s.old, s.now, s.since = s.now, map[string]struct{}{}, at
	}
	_, inNow := s.now[key]
	_, inOld := s.old[key]
	s.now[key] = struct{}{}
	return !inNow && !inOld
}

// Forget lets a key be met for the first time again.
func (s *Seen) Forget(key string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	delete(s.now, key)
	delete(s.old, key)
}
