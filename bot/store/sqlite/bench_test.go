package sqlite

import (
	"context"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// filled is a store with n questions, a button each.
func filled(b *testing.B, n int) *Store {
	b.Helper()
	s, err := Open(b.Context(), filepath.Join(b.TempDir(), "netpost.db"), Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { s.Close() })
	err = s.Write(b.Context(), riverside, func(w store.Writer) error {
		for i := range n {
			q := sample(fmt.Sprint("q", i), i)
			if err := w.Ask(q); err != nil {
				return err
			}
			if err := w.KeepButton(store.Button{ID: fmt.Sprint("b", i), Question: q.ID, Action: "given/row/front", At: noon}); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		b.Fatal(err)
	}
	return s
}

func sample(id string, i int) store.Question {
	return store.Question{
		ID: id, Asker: store.Person{Platform: "slack", ID: fmt.Sprint("U", i%300)}, Asked: noon.Add(time.Duration(i) * time.Second),
		Where: store.Place{Platform: "slack", Workspace: "T1", Channel: "C1"},
		Text:  "setter back row, ball in plane, both hands on it, blocker front row", Code: "scholastic", Season: "2026-27",
		Answer: store.Answer{Message: "1.2", Play: "A's back-row setter contacts the ball in the plane", Outcome: "depends", Ruling: make([]byte, 600), At: noon,
			Tags: []store.Tag{{Kind: store.Topic, Value: fmt.Sprint("topic", i%20)}, {Kind: store.Deciding, Value: fmt.Sprint("fact", i%30)}}},
	}
}

// One delivery that is new: marked, kept and its answer queued, on the disk.
func BenchmarkQuestion(b *testing.B) {
	s := filled(b, 0)
	for i := 0; b.Loop(); i++ {
		id := fmt.Sprint("q", i)
		err := s.Write(context.Background(), riverside, func(w store.Writer) error {
			if _, err := w.Deliver("e"+id, noon, noon.Add(time.Hour)); err != nil {
				return err
			}
			if err := w.Ask(sample(id, i)); err != nil {
				return err
			}
			_, err := w.Queue(store.Post{Key: "answer/" + id, Question: id, Body: make([]byte, 900), Queued: noon})
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// One delivery that comes again.
func BenchmarkDelivery(b *testing.B) {
	s := filled(b, 0)
	deliver := func(key string) (first bool) {
		err := s.Write(context.Background(), riverside, func(w store.Writer) (err error) {
			first, err = w.Deliver(key, noon, noon.Add(time.Hour))
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
		return first
	}
	for i := range 1000 {
		deliver(fmt.Sprint("e", i))
	}
	for i := 0; b.Loop(); i++ {
		if deliver(fmt.Sprint("e", i%1000)) {
			b.Fatal("seen as new")
		}
	}
}

// One press, found among 10,000 buttons, with its question.
func BenchmarkButton(b *testing.B) {
	s := filled(b, 10_000)
	for i := 0; b.Loop(); i++ {
		err := s.Read(context.Background(), riverside, func(r store.Reader) error {
			p, err := r.Button(fmt.Sprint("b", i*7919%10_000))
			if err == nil {
				_, err = r.Question(p.Question)
			}
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// What a bulletin counts, over 100,000 questions.
func BenchmarkTally(b *testing.B) {
	s := filled(b, 100_000)
	for b.Loop() {
		err := s.Read(context.Background(), riverside, func(r store.Reader) error {
			for _, kind := range []store.TagKind{store.Topic, store.Deciding, store.Disputed} {
				if _, err := r.Tally(kind, store.Span{}, 3); err != nil {
					return err
				}
			}
			return nil
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}

// Reading 100,000 questions, to rule on them again.
func BenchmarkQuestions(b *testing.B) {
	s := filled(b, 100_000)
	for b.Loop() {
		err := s.Read(context.Background(), riverside, func(r store.Reader) error {
			_, err := r.Questions(store.Span{})
			return err
		})
		if err != nil {
			b.Fatal(err)
		}
	}
}
