package discord

import (
	"sync"
	"time"
)

// A connection that is taken up again repeats what it sent last, and a signed
// request can be replayed for as long as its time is good.
const (
	seenFor  = 10 * time.Minute
	mostSeen = 1 << 17
)

// seen is a window of keys: what was met within it is known again. It holds
// two generations of keys, so that it forgets without looking at each.
type seen struct {
	mu       sync.Mutex
	old, now map[string]struct{}
	since    time.Time // when now began
	keep     time.Duration
	most     int // keys in a generation
}

// newSeen remembers a key for keep at least, and half as long where more than
// most keys come in that time.
func newSeen(keep time.Duration, most int) *seen {
	return &seen{now: map[string]struct{}{}, keep: keep, most: most}
}

// first reports whether a key is met for the first time, and remembers it.
func (s *seen) first(key string, at time.Time) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.since.IsZero() {
		s.since = at
	}
	if at.Sub(s.since) > s.keep || len(s.now) >= s.most {
		s.old, s.now, s.since = s.now, map[string]struct{}{}, at
	}
	_, inNow := s.now[key]
	_, inOld := s.old[key]
	s.now[key] = struct{}{}
	return !inNow && !inOld
}
