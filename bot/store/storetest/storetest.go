// Package storetest is the contract of a [store.Store]: a suite that every
// store passes.
package storetest

import (
	"errors"
	"fmt"
	"reflect"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// An Open opens the store that lies in a folder, a new one where there is
// none. It fails the test when it can't.
type Open func(t testing.TB, dir string) store.Store

// Run runs the whole contract.
func Run(t *testing.T, open Open) {
	for _, test := range []struct {
		name string
		run  func(*testing.T, Open)
	}{
		{"questions", questions},
		{"hostile text", hostile},
		{"facts", facts},
		{"views", views},
		{"threads", threads},
		{"buttons", buttons},
		{"deliveries", deliveries},
		{"tally", tally},
		{"calls", calls},
		{"replies", replies},
		{"polls", polls},
		{"drafts", drafts},
		{"posts", posts},
		{"bulletins", bulletins},
		{"audit", audit},
		{"purge", purge},
		{"erase", erase},
		{"refusals", refusals},
		{"transactions", transactions},
		{"closing", closing},
		{"many at once", many},
		{"lasting", lasting},
		{"apart", apart},
	} {
		t.Run(test.name, func(t *testing.T) { test.run(t, open) })
	}
}

// The people and the clock of the suite.
var (
	ada  = store.Person{Platform: "slack", ID: "U01"}
	bo   = store.Person{Platform: "slack", ID: "U02"}
	cleo = store.Person{Platform: "discord", ID: "77/1"} // an id may hold a slash
	noon = time.Date(2026, 11, 25, 12, 0, 0, 123000, time.UTC)
)

// at is some minutes after noon.
func at(minutes int) time.Time { return noon.Add(time.Duration(minutes) * time.Minute) }

const crew = "riverside" // the association of most tests

// fresh is an empty store that is closed with the test.
func fresh(t testing.TB, open Open) store.Store {
	t.Helper()
	s := open(t, t.TempDir())
	t.Cleanup(func() { s.Close() })
	return s
}

// write and read fail the test on an error of fn.
func write(t testing.TB, s store.Store, fn func(store.Writer) error) {
	t.Helper()
	if err := s.Write(t.Context(), crew, fn); err != nil {
		t.Fatalf("write: %v (%v)", err, errors.Unwrap(err))
	}
}

func read(t testing.TB, s store.Store, fn func(store.Reader) error) {
	t.Helper()
	if err := s.Read(t.Context(), crew, fn); err != nil {
		t.Fatalf("read: %v (%v)", err, errors.Unwrap(err))
	}
}

// all runs steps up to the first error.
func all(steps ...error) error {
	for i, err := range steps {
		if err != nil {
			return fmt.Errorf("step %d: %w", i, err)
		}
	}
	return nil
}

// same fails the test unless two values are equal.
func same[T any](t testing.TB, what string, got, want T) {
	t.Helper()
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%s:\n got %+v\nwant %+v", what, got, want)
	}
}

// refused fails the test unless an error has a code.
func refused(t testing.TB, what string, err error, want store.Code) {
	t.Helper()
	if got := store.CodeOf(err); got != want {
		t.Errorf("%s: error %v of code %q, want code %q", what, err, got, want)
	}
}

func must[T any](t testing.TB) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatalf("%v (%v)", err, errors.Unwrap(err))
		}
		return v
	}
}

// asked is a question of somebody, asked some minutes after noon.
func asked(id string, by store.Person, minutes int) store.Question {
	return store.Question{
		ID: id, Asker: by, Asked: at(minutes),
		Where: store.Place{Platform: "slack", Workspace: "T1", Channel: "C1", Thread: "1.2"},
		Text:  "ball in plane, both front row, fourth contact?", Code: "scholastic", Season: "2026-27",
	}
}

func questions(t *testing.T, open Open) {
	s := fresh(t, open)
	q := asked("q1", ada, 2)
	q.Private = true
	early := asked("q2", bo, 1)
	early.Answer = store.Answer{Message: "9.9", Play: "A touches the ball", Outcome: "depends", Ruling: []byte(`{"a":1}`), At: at(1),
		Tags: []store.Tag{{Kind: store.Deciding, Value: "row"}, {Kind: store.Topic, Value: "back-row-block"}}}
	write(t, s, func(w store.Writer) error { return all(w.Ask(q), w.Ask(early)) })
	read(t, s, func(r store.Reader) error {
		same(t, "a question", must[store.Question](t)(r.Question("q1")), q)
		same(t, "one with its answer", must[store.Question](t)(r.Question("q2")), early)
		same(t, "always", must[[]store.Question](t)(r.Questions(store.Span{})), []store.Question{early, q})
		same(t, "a span ends before its end", must[[]store.Question](t)(r.Questions(store.Span{From: at(1), To: at(2)})), []store.Question{early})
		same(t, "a span from", must[[]store.Question](t)(r.Questions(store.Span{From: at(2)})), []store.Question{q})
		same(t, "from the first on", must[[]store.Question](t)(r.QuestionsAfter(time.Time{}, "", 9)), []store.Question{early, q})
		same(t, "at most so many", must[[]store.Question](t)(r.QuestionsAfter(time.Time{}, "", 1)), []store.Question{early})
		same(t, "after one", must[[]store.Question](t)(r.QuestionsAfter(early.Asked, early.ID, 9)), []store.Question{q})
		same(t, "after an id of the same time", must[[]store.Question](t)(r.QuestionsAfter(q.Asked, "", 9)), []store.Question{q})
		same(t, "after the last", must[[]store.Question](t)(r.QuestionsAfter(q.Asked, q.ID, 9)), []store.Question(nil))
		_, err := r.Question("q3")
		refused(t, "no such question", err, store.NotFound)
		return nil
	})

	later := store.Answer{Message: "9.9", Play: "A's back-row player touches the ball", Outcome: "fault", Ruling: []byte{}, At: at(3),
		Tags: []store.Tag{{Kind: store.Topic, Value: "back-row-block"}}}
	write(t, s, func(w store.Writer) error { return w.Answer("q2", later) })
	read(t, s, func(r store.Reader) error {
		got := must[store.Question](t)(r.Question("q2"))
		same(t, "the answer replaced", got.Answer.Tags, later.Tags)
		same(t, "its outcome", got.Answer.Outcome, "fault")
		return nil
	})
	refused(t, "a second question of that id", s.Write(t.Context(), crew, func(w store.Writer) error { return w.Ask(q) }), store.Exists)
	refused(t, "an answer to none", s.Write(t.Context(), crew, func(w store.Writer) error { return w.Answer("q3", later) }), store.NotFound)
}

// What people type comes back byte for byte.
func hostile(t *testing.T, open Open) {
	s := fresh(t, open)
	texts := []string{"'; DROP TABLE questions; --", "nul\x00inside", "\xff\xfe not UTF-8", "line\r\nline\u2028", "؟ \u202e right to left", "🏐", "", "?1 :a @b $c %s"}
	write(t, s, func(w store.Writer) error {
		for i, text := range texts {
			q := asked(fmt.Sprint("q", i), ada, i)
			q.Text, q.Where.Channel, q.Code = text, text, text
			if err := all(w.Ask(q), w.Give(store.Given{Question: q.ID, Fact: "row", Value: text, By: bo, At: at(i)})); err != nil {
				return err
			}
		}
		return nil
	})
	read(t, s, func(r store.Reader) error {
		for i, text := range texts {
			id := fmt.Sprint("q", i)
			q := must[store.Question](t)(r.Question(id))
			same(t, "text", []string{q.Text, q.Where.Channel, q.Code}, []string{text, text, text})
			same(t, "value", must[[]store.Given](t)(r.Given(id))[0].Value, text)
		}
		return nil
	})
}

func facts(t *testing.T, open Open) {
	s := fresh(t, open)
	give := func(fact, value string, minutes int) store.Given {
		return store.Given{Question: "q1", Fact: fact, Event: "e2", Value: value, By: ada, At: at(minutes)}
	}
	row, height, row2 := give("row", "front", 1), give("ball-height", "above", 2), give("row", "back", 1) // a clock may stand still
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.Ask(asked("q2", ada, 0)), w.Give(row), w.Give(height), w.Give(row2))
	})
	write(t, s, func(w store.Writer) error {
		same(t, "facts in the order they were given", must[[]store.Given](t)(w.Given("q1")), []store.Given{row, height, row2})
		same(t, "facts of another question", must[[]store.Given](t)(w.Given("q2")), nil)
		undone := row2
		undone.Undone, undone.UndoneBy = at(5), bo
		same(t, "the last one is taken back", must[store.Given](t)(w.Undo("q1", "", bo, at(5))), undone)
		same(t, "what stands", must[[]store.Given](t)(w.Given("q1")), []store.Given{row, height})
		same(t, "the history", must[[]store.Given](t)(w.History("q1")), []store.Given{row, height, undone})
		must[store.Given](t)(w.Undo("q1", "", bo, at(6)))
		must[store.Given](t)(w.Undo("q1", "", bo, at(7)))
		_, err := w.Undo("q1", "", bo, at(8))
		refused(t, "nothing is left", err, store.NotFound)
		return w.Give(height)
	})
	read(t, s, func(r store.Reader) error {
		same(t, "given again", must[[]store.Given](t)(r.Given("q1")), []store.Given{height})
		return nil
	})
	refused(t, "a fact of no question", s.Write(t.Context(), crew, func(w store.Writer) error {
		return w.Give(store.Given{Question: "q9", Fact: "row", At: noon})
	}), store.NotFound)
}

func views(t *testing.T, open Open) {
	s := fresh(t, open)
	v1 := store.View{Question: "q1", ID: "1", By: ada, Private: true, At: at(1)}
	v2 := store.View{Question: "q1", ID: "2", By: bo, At: at(1)}
	in := func(view, value string) store.Given {
		return store.Given{Question: "q1", View: view, Fact: "row", Value: value, By: ada, At: at(2)}
	}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.SeeAs(v2), w.SeeAs(v1), w.Give(in("1", "front")), w.Give(in("2", "back")), w.Give(in("", "front")))
	})
	write(t, s, func(w store.Writer) error {
		got := must[store.Given](t)(w.Undo("q1", "1", ada, at(3)))
		same(t, "undo stays in its view", got.View, "1")
		same(t, "the rest stands", must[[]store.Given](t)(w.Given("q1")), []store.Given{in("2", "back"), in("", "front")})
		return all(w.NameInView("q1", "1", "R2"), w.HandIn("q1", "1", true, at(4)), w.HandIn("q1", "1", false, at(5)))
	})
	v1.Name, v1.Private, v1.Handed = "R2", false, at(4)
	read(t, s, func(r store.Reader) error {
		same(t, "views in the order they were added", must[[]store.View](t)(r.Views("q1")), []store.View{v2, v1})
		return nil
	})
	for what, fn := range map[string]func(store.Writer) error{
		"a fact in no view":     func(w store.Writer) error { return w.Give(in("3", "front")) },
		"a view of no question": func(w store.Writer) error { return w.SeeAs(store.View{Question: "q9", ID: "1", By: ada, At: noon}) },
		"handing in no view":    func(w store.Writer) error { return w.HandIn("q1", "3", true, at(4)) },
		"naming in no view":     func(w store.Writer) error { return w.NameInView("q1", "3", "R2") },
	} {
		refused(t, what, s.Write(t.Context(), crew, fn), store.NotFound)
	}
	refused(t, "a view twice", s.Write(t.Context(), crew, func(w store.Writer) error { return w.SeeAs(v2) }), store.Exists)
}

func threads(t *testing.T, open Open) {
	s := fresh(t, open)
	place := store.Place{Platform: "slack", Workspace: "T1", Channel: "C1", Thread: "1.2"}
	other := place
	other.Channel = "C2"
	h1 := store.Thread{Where: place, Question: "q1", Role: store.Asked, At: at(1)}
	h2 := store.Thread{Where: other, Question: "q1", Role: store.Mentors, At: at(2)}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.Ask(asked("q2", ada, 0)), w.SetThread(h2), w.SetThread(h1))
	})
	read(t, s, func(r store.Reader) error {
		same(t, "a thread", must[store.Thread](t)(r.Thread(place)), h1)
		same(t, "those of a question", must[[]store.Thread](t)(r.Threads("q1")), []store.Thread{h1, h2})
		away := place
		away.Workspace = "T2"
		_, err := r.Thread(away)
		refused(t, "the same thread elsewhere", err, store.NotFound)
		return nil
	})
	h1.Question = "q2"
	write(t, s, func(w store.Writer) error { return w.SetThread(h1) })
	read(t, s, func(r store.Reader) error {
		same(t, "the last word counts", must[store.Thread](t)(r.Thread(place)).Question, "q2")
		return nil
	})
	h1.Question = "q9"
	refused(t, "a thread about none", s.Write(t.Context(), crew, func(w store.Writer) error { return w.SetThread(h1) }), store.NotFound)
}

func buttons(t *testing.T, open Open) {
	s := fresh(t, open)
	b := store.Button{ID: store.NewID(), Question: "q1", Action: "given/ball-height@e2/wholly-above", At: at(1)}
	write(t, s, func(w store.Writer) error { return all(w.Ask(asked("q1", ada, 0)), w.KeepButton(b), w.KeepButton(b)) })
	read(t, s, func(r store.Reader) error {
		same(t, "a button", must[store.Button](t)(r.Button(b.ID)), b)
		_, err := r.Button("gone")
		refused(t, "no such button", err, store.NotFound)
		return nil
	})
	b.Action = "other"
	refused(t, "another of that id", s.Write(t.Context(), crew, func(w store.Writer) error { return w.KeepButton(b) }), store.Exists)
	b.ID, b.Question = "b2", "q9"
	refused(t, "a button of no question", s.Write(t.Context(), crew, func(w store.Writer) error { return w.KeepButton(b) }), store.NotFound)
}

func deliveries(t *testing.T, open Open) {
	s := fresh(t, open)
	for _, d := range []struct {
		key          string
		now, expires int
		want         bool
	}{
		{"Ev1", 0, 10, true},
		{"Ev1", 1, 11, false},
		{"Ev2", 1, 11, true},
		{"Ev1", 9, 19, false}, // seen again does not last longer
		{"Ev1", 10, 20, true}, // expired
		{"Ev1", 11, 21, false},
	} {
		write(t, s, func(w store.Writer) error {
			same(t, fmt.Sprintf("%s new at %d", d.key, d.now), must[bool](t)(w.Deliver(d.key, at(d.now), at(d.expires))), d.want)
			return nil
		})
	}
}

func tally(t *testing.T, open Open) {
	s := fresh(t, open)
	people := []store.Person{ada, bo, cleo}
	topic := func(v string) store.Tag { return store.Tag{Kind: store.Topic, Value: v} }
	write(t, s, func(w store.Writer) error {
		for i, tags := range [][]store.Tag{
			{topic("net-contact"), topic("net-contact")}, // counts once
			{topic("over-net"), {Kind: store.Unread, Value: "a phrase"}},
			{topic("over-net"), topic("net-contact")},
			{topic("over-net")},
			{topic("caught")}, {topic("caught")}, {topic("caught")},
		} {
			by := people[i%3]
			if i >= 4 {
				by = ada
			}
			q := asked(fmt.Sprint("q", i), by, i)
			q.Answer = store.Answer{Tags: tags, At: at(i)}
			if err := w.Ask(q); err != nil {
				return err
			}
		}
		for i, by := range people {
			err := w.CallMentor(store.Call{ID: fmt.Sprint("c", i), Question: "q1", Kind: store.Disagree, By: by, About: "9-5-5", At: at(20 + i)})
			if err != nil {
				return err
			}
		}
		return all(
			w.CallMentor(store.Call{ID: "c7", Question: "q2", Kind: store.Disagree, By: ada, About: "row@p1", At: at(28)}),
			w.CallMentor(store.Call{ID: "c8", Question: "q3", Kind: store.Disagree, By: bo, About: "row@p2", At: at(29)}),
			w.CallMentor(store.Call{ID: "c9", Question: "q1", Kind: store.AskMentor, By: ada, About: "no dispute", At: at(30)}))
	})
	read(t, s, func(r store.Reader) error {
		count := must[[]store.Count](t)
		same(t, "all", count(r.Tally(store.Topic, store.Span{}, 0)), []store.Count{{Value: "caught", Questions: 3, Askers: 1}, {Value: "over-net", Questions: 3, Askers: 3}, {Value: "net-contact", Questions: 2, Askers: 2}})
		same(t, "from three askers up", count(r.Tally(store.Topic, store.Span{}, 3)), []store.Count{{Value: "over-net", Questions: 3, Askers: 3}})
		same(t, "in a span", count(r.Tally(store.Topic, store.Span{From: at(1), To: at(2)}, 0)), []store.Count{{Value: "over-net", Questions: 1, Askers: 1}})
		same(t, "unread", count(r.Tally(store.Unread, store.Span{}, 0)), []store.Count{{Value: "a phrase", Questions: 1, Askers: 1}})
		same(t, "disputed", count(r.Tally(store.Disputed, store.Span{}, 3)), []store.Count{{Value: "9-5-5", Questions: 1, Askers: 3}})
		same(t, "disputed by fact", count(r.Tally(store.Disputed, store.Span{}, 0)), []store.Count{{Value: "row", Questions: 2, Askers: 2}, {Value: "9-5-5", Questions: 1, Askers: 3}})
		same(t, "linked", count(r.Tally(store.Linked, store.Span{}, 0)), nil)
		return nil
	})
	write(t, s, func(w store.Writer) error { return w.CloseCall("c8", at(40)) })
	read(t, s, func(r store.Reader) error {
		same(t, "what stays in dispute", must[[]store.Count](t)(r.Tally(store.Disputed, store.Span{}, 0)), []store.Count{{Value: "9-5-5", Questions: 1, Askers: 3}, {Value: "row", Questions: 1, Askers: 1}})
		return nil
	})
}
