package metrics

import (
	"context"
	"errors"
	"time"

	"example.org/netpost/bot/store"
)

// Store is a store whose questions, rulings, redeliveries and errors are
// counted. What a transaction that was undone would have kept is not.
func (m *Metrics) Store(s store.Store) store.Store { return &countedStore{s, m} }

type countedStore struct {
	store.Store
	m *Metrics
}

// Read is part of [store.Store].
func (s *countedStore) Read(ctx context.Context, association string, fn func(store.Reader) error) error {
	return s.failed(s.Store.Read(ctx, association, fn))
}

// Write is part of [store.Store].
func (s *countedStore) Write(ctx context.Context, association string, fn func(store.Writer) error) error {
	w := &countedWriter{}
	err := s.Store.Write(ctx, association, func(under store.Writer) error {
		w.Writer = under
		return fn(w)
	})
	// A redelivery is known by what was read, and its transaction is undone.
	if w.again > 0 {
		s.m.redeliveries.WithLabelValues(association).Add(float64(w.again))
	}
	if err == nil {
		if w.asked > 0 {
			s.m.questions.WithLabelValues(association).Add(float64(w.asked))
		}
		for _, o := range w.outcomes {
			s.m.rulings.WithLabelValues(association, o).Inc()
		}
	}
	return s.failed(err)
}

// failed counts an error that somebody who runs the program has to mend.
func (s *countedStore) failed(err error) error {
	if e, ok := errors.AsType[*store.Error](err); ok && e.Code.Operational() {
		s.m.storeErrors.WithLabelValues(string(e.Code)).Inc()
	}
	return err
}

// countedWriter notes what one transaction does.
type countedWriter struct {
	store.Writer
	asked, again int
	outcomes     []string
}

func (w *countedWriter) Deliver(key string, now, expires time.Time) (bool, error) {
	first, err := w.Writer.Deliver(key, now, expires)
	if err == nil && !first {
		w.again++
	}
	return first, err
}

func (w *countedWriter) Ask(q store.Question) error {
	err := w.Writer.Ask(q)
	if err == nil {
		w.asked++
		if !q.Answer.IsZero() {
			w.ruled(q.Answer)
		}
	}
	return err
}

func (w *countedWriter) Answer(question string, a store.Answer) error {
	before, err := w.Writer.Question(question)
	if err != nil {
		return err
	}
	err = w.Writer.Answer(question, a)
	if err == nil && string(before.Answer.Ruling) != string(a.Ruling) { // else only where it stands changed
		w.ruled(a)
	}
	return err
}

func (w *countedWriter) ruled(a store.Answer) {
	outcome := a.Outcome
	if outcome == "" {
		outcome = "none"
	}
	w.outcomes = append(w.outcomes, outcome)
}
