package wire

import (
	"fmt"
	"sync"

	"example.org/netpost/bot"
)

// Rooms are the direct messages that were opened, by person. The zero value
// knows none.
type Rooms struct {
	mu sync.Mutex
	of map[string]string
}

// mostRooms is how many are remembered; to open one again costs a call.
const mostRooms = 10_000

// Open gives the direct message with a person, which open opens where it is
// not known. An error says that nothing was said.
func (r *Rooms) Open(who string, open func() (channel string, err error)) (string, error) {
	r.mu.Lock()
	channel, ok := r.of[who]
	r.mu.Unlock()
	if ok {
		return channel, nil
	}
	channel, err := open()
	if err == nil && channel == "" {
		err = fmt.Errorf("no channel in the answer that opens a direct message")
	}
	if err != nil {
		return "", fmt.Errorf("%w: %w", bot.ErrNotSent, err)
	}
	r.Put(who, channel)
	return channel, nil
}

// Put remembers the direct message with a person.
func (r *Rooms) Put(who, channel string) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.of == nil || len(r.of) >= mostRooms {
		r.of = map[string]string{}
	}
	r.of[who] = channel
}
