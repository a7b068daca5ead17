package storetest

import (
	"context"
	"errors"
	"fmt"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// What can't be kept is refused before anything is changed.
func refusals(t *testing.T, open Open) {
	s := fresh(t, open)
	bad := store.Person{Platform: "sl/ack", ID: "U1"}
	half := store.Person{Platform: "slack"}
	for what, fn := range map[string]func(store.Writer) error{
		"question without id":     func(w store.Writer) error { return w.Ask(store.Question{Asked: noon}) },
		"question without time":   func(w store.Writer) error { return w.Ask(store.Question{ID: "q"}) },
		"question of nobody real": func(w store.Writer) error { return w.Ask(store.Question{ID: "q", Asked: noon, Asker: bad}) },
		"half a person":           func(w store.Writer) error { return w.Ask(store.Question{ID: "q", Asked: noon, Asker: half}) },
		"tag of no kind": func(w store.Writer) error {
			return all(w.Ask(asked("q", ada, 0)), w.Answer("q", store.Answer{Tags: []store.Tag{{Kind: store.Disputed, Value: "x"}}}))
		},
		"poll without a season": func(w store.Writer) error { return w.OpenPoll(store.Poll{Question: "q", At: noon}) },
		"poll that is closed already": func(w store.Writer) error {
			return w.OpenPoll(store.Poll{Question: "q", Season: "s", At: noon, Closed: noon})
		},
		"vote of nobody":           func(w store.Writer) error { return w.Vote(store.Vote{Question: "q", Call: "fault", At: noon}) },
		"vote without a call":      func(w store.Writer) error { return w.Vote(store.Vote{Question: "q", By: ada, At: noon}) },
		"poll closed by no ruling": func(w store.Writer) error { return w.ClosePoll("q", noon, nil) },
		"fact without a name":      func(w store.Writer) error { return w.Give(store.Given{Question: "q", At: noon}) },
		"fact undone already": func(w store.Writer) error {
			return w.Give(store.Given{Question: "q", Fact: "f", At: noon, Undone: noon})
		},
		"thread in no thread": func(w store.Writer) error { return w.SetThread(store.Thread{Role: store.Asked, At: noon}) },
		"thread of no role": func(w store.Writer) error {
			return w.SetThread(store.Thread{Where: store.Place{Thread: "1"}, At: noon})
		},
		"view without an id":        func(w store.Writer) error { return w.SeeAs(store.View{At: noon}) },
		"view that was handed in":   func(w store.Writer) error { return w.SeeAs(store.View{ID: "v", At: noon, Handed: noon}) },
		"button without an id":      func(w store.Writer) error { return w.KeepButton(store.Button{At: noon}) },
		"delivery without a key":    func(w store.Writer) error { _, err := w.Deliver("", noon, at(1)); return err },
		"delivery that has expired": func(w store.Writer) error { _, err := w.Deliver("k", noon, noon); return err },
		"call of no kind":           func(w store.Writer) error { return w.CallMentor(store.Call{ID: "c", At: noon}) },
		"call that is not new": func(w store.Writer) error {
			return w.CallMentor(store.Call{ID: "c", Kind: store.Disagree, At: noon, Answers: 1})
		},
		"claim that lapses at once":  func(w store.Writer) error { return w.Claim("c", ada, noon, noon) },
		"claim of nobody":            func(w store.Writer) error { return w.Claim("c", store.Person{}, noon, at(1)) },
		"answer without words":       func(w store.Writer) error { return w.Reply(store.Reply{ID: "r", Call: "c", At: noon}) },
		"draft of no state":          func(w store.Writer) error { return w.SaveDraft(store.Draft{ID: "d", At: noon}) },
		"published without its note": func(w store.Writer) error { return w.SaveDraft(store.Draft{ID: "d", At: noon, State: store.Published}) },
		"post without a key":         func(w store.Writer) error { _, err := w.Queue(store.Post{Queued: noon}); return err },
		"post that is not new": func(w store.Writer) error {
			_, err := w.Queue(store.Post{Key: "k", Queued: noon, State: store.Sent})
			return err
		},
		"a step without a time":    func(w store.Writer) error { return w.Mark("k", time.Time{}) },
		"resending by nobody":      func(w store.Writer) error { return w.Resend("k", store.Person{}, noon) },
		"bulletin without an id":   func(w store.Writer) error { return w.KeepBulletin(store.Bulletin{At: noon}) },
		"entry without a deed":     func(w store.Writer) error { return w.Log(store.Entry{At: noon}) },
		"purge of what is to come": func(w store.Writer) error { _, err := w.Purge(at(1), at(0)); return err },
		"erasing nobody":           func(w store.Writer) error { _, err := w.Erase(store.Person{}); return err },
	} {
		refused(t, what, s.Write(t.Context(), crew, fn), store.Invalid)
	}
	refused(t, "writing to no association", s.Write(t.Context(), "", func(store.Writer) error { return nil }), store.Invalid)
	refused(t, "reading of no association", s.Read(t.Context(), "", func(store.Reader) error { return nil }), store.Invalid)
	same(t, "rows after all that", len(rows(dump(t, s, crew))), 0)
}

// A change is whole or not at all.
func transactions(t *testing.T, open Open) {
	s := fresh(t, open)
	mine := errors.New("mine")
	err := s.Write(t.Context(), crew, func(w store.Writer) error { return all(w.Ask(asked("q1", ada, 0)), mine) })
	if !errors.Is(err, mine) {
		t.Errorf("the caller's own error came back as %v", err)
	}
	func() {
		defer func() {
			if recover() == nil {
				t.Error("a panic was swallowed")
			}
		}()
		s.Write(t.Context(), crew, func(w store.Writer) error { w.Ask(asked("q1", ada, 0)); panic("x") })
	}()
	ctx, cancel := context.WithCancel(t.Context())
	err = s.Write(ctx, crew, func(w store.Writer) error {
		err := w.Ask(asked("q1", ada, 0))
		cancel()
		return all(err, w.Ask(asked("q2", ada, 0)))
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("after a cancel: %v", err)
	}
	if err := s.Write(ctx, crew, func(store.Writer) error { return nil }); !errors.Is(err, context.Canceled) {
		t.Errorf("with a cancelled context: %v", err)
	}
	same(t, "nothing is left of them", len(rows(dump(t, s, crew))), 0)

	// A row that is refused leaves the rest to the caller.
	write(t, s, func(w store.Writer) error {
		must[bool](t)(w.Deliver("e1", at(0), at(1)))
		refused(t, "to answer no question", w.Answer("q9", store.Answer{}), store.NotFound)
		return w.Ask(asked("q1", ada, 0))
	})
	var escaped store.Writer
	write(t, s, func(w store.Writer) error {
		escaped = w
		must[store.Question](t)(w.Question("q1")) // sees its own changes
		return nil
	})
	refused(t, "use after the end", escaped.Ask(asked("q2", ada, 0)), store.Invalid)

	// A reader sees one moment.
	read(t, s, func(r store.Reader) error {
		before := len(must[[]store.Question](t)(r.Questions(store.Span{})))
		write(t, s, func(w store.Writer) error { return w.Ask(asked("q2", ada, 1)) })
		same(t, "questions of a reader while somebody writes", len(must[[]store.Question](t)(r.Questions(store.Span{}))), before)
		return nil
	})
	if err := s.Check(t.Context()); err != nil {
		t.Error(err)
	}
	if err := s.Scrub(t.Context()); err != nil {
		t.Error(err)
	}
}

func closing(t *testing.T, open Open) {
	s := fresh(t, open)
	write(t, s, func(w store.Writer) error { return w.Ask(asked("q1", ada, 0)) })
	dump(t, s, crew)
	for range 2 {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	}
	refused(t, "write", s.Write(t.Context(), crew, func(store.Writer) error { return nil }), store.Closed)
	refused(t, "read", s.Read(t.Context(), crew, func(store.Reader) error { return nil }), store.Closed)
	refused(t, "check", s.Check(t.Context()), store.Closed)
}

// Many at once: one delivery is new for one of them, one call is claimed by
// one, and nothing is lost.
func many(t *testing.T, open Open) {
	s := fresh(t, open)
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q", ada, 0)), w.CallMentor(store.Call{ID: "c", Question: "q", Kind: store.AskMentor, By: ada, At: at(0)}))
	})
	const goroutines, each = 8, 10
	var mu sync.Mutex
	news, claims := 0, 0
	var wg sync.WaitGroup
	for g := range goroutines {
		wg.Go(func() {
			for i := range each {
				var first bool
				err := s.Write(t.Context(), crew, func(w store.Writer) (err error) {
					if first, err = w.Deliver(fmt.Sprint("e", i), at(0), at(10)); err != nil {
						return err
					}
					return w.Ask(asked(fmt.Sprintf("q%d.%d", g, i), ada, i))
				})
				if err != nil {
					t.Error(err)
				}
				mu.Lock()
				if first {
					news++
				}
				mu.Unlock()
				if err := s.Read(t.Context(), crew, func(r store.Reader) error { _, err := r.Question(fmt.Sprintf("q%d.%d", g, i)); return err }); err != nil {
					t.Error(err)
				}
			}
			by := store.Person{Platform: "slack", ID: fmt.Sprint("M", g)}
			err := s.Write(t.Context(), crew, func(w store.Writer) error { return w.Claim("c", by, at(1), at(5)) })
			mu.Lock()
			defer mu.Unlock()
			switch {
			case err == nil:
				claims++
			case store.CodeOf(err) != store.Taken:
				t.Error(err)
			}
		})
	}
	wg.Wait()
	same(t, "new deliveries and claims", []int{news, claims}, []int{each, 1})
	read(t, s, func(r store.Reader) error {
		same(t, "questions", len(must[[]store.Question](t)(r.Questions(store.Span{}))), goroutines*each+1)
		return nil
	})
}

// What was written is there when the store is opened again.
func lasting(t *testing.T, open Open) {
	dir := t.TempDir()
	s := open(t, dir)
	write(t, s, func(w store.Writer) error { return full(w, "", 0) })
	want := dump(t, s, crew)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	s = open(t, dir)
	defer s.Close()
	same(t, "after opening again", dump(t, s, crew), want)
	write(t, s, func(w store.Writer) error {
		same(t, "a delivery seen before", must[bool](t)(w.Deliver("e1", at(1), at(20))), false)
		return nil
	})
}
