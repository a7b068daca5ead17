package bot

import (
	"slices"
	"sync"
	"time"
)

// Questions held back are few and short-lived: they are asked again at no
// cost, so a restart may forget them.
const (
	mostHeld = 500
	holdFor  = 15 * time.Minute
)

// heldQuestion is a question with a name in it, kept nowhere but in memory
// until its asker decides.
type heldQuestion struct {
	id       string
	delivery string
	assoc    string
	asker    Person
	spoken   spoken
	names    []string
	view     view
	message  string // the mention that asked it, to answer in its thread
	public   bool
	at       time.Time
	// then is what the words are for, where they are no question.
	then func(t *turn, words string) Reply
}

// held are the questions held back, oldest first.
type held struct {
	mu  sync.Mutex
	all []heldQuestion
}

func newHeld() *held { return &held{} }

// put holds a question back. It reports false where the same delivery is held
// already.
func (h *held) put(q heldQuestion) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.forget(q.at)
	for _, o := range h.all {
		if o.delivery == q.delivery && o.assoc == q.assoc {
			return false
		}
	}
	if len(h.all) >= mostHeld {
		h.all = append(h.all[:0], h.all[1:]...)
	}
	h.all = append(h.all, q)
	return true
}

// take gives a held question to its asker, once.
func (h *held) take(id, assoc string, asker Person, now time.Time) (heldQuestion, bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.forget(now)
	for i, q := range h.all {
		if q.id == id && q.assoc == assoc && q.asker == asker {
			h.all = append(h.all[:i], h.all[i+1:]...)
			return q, true
		}
	}
	return heldQuestion{}, false
}

// forget drops what is too old.
func (h *held) forget(now time.Time) {
	n := 0
	for n < len(h.all) && now.Sub(h.all[n].at) > holdFor {
		n++
	}
	h.all = append(h.all[:0], h.all[n:]...)
}

// drop forgets the questions of somebody.
func (h *held) drop(assoc string, asker Person) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.all = slices.DeleteFunc(h.all, func(q heldQuestion) bool { return q.assoc == assoc && q.asker == asker })
}
