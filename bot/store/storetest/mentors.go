package storetest

import (
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

func calls(t *testing.T, open Open) {
	s := fresh(t, open)
	c1 := store.Call{ID: "c1", Question: "q1", Kind: store.AskMentor, By: ada, Words: "please", At: at(1)}
	c2 := store.Call{ID: "c2", Question: "q1", Kind: store.Disagree, By: bo, About: "row@e2", At: at(2)}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.CallMentor(c2), w.CallMentor(c1))
	})
	list := func(now time.Time, states ...store.CallState) (ids []string) {
		t.Helper()
		read(t, s, func(r store.Reader) error {
			for _, c := range must[[]store.Call](t)(r.Calls(now, states...)) {
				ids = append(ids, c.ID)
			}
			return nil
		})
		return ids
	}
	claim := func(by store.Person, now, until int) error {
		return s.Write(t.Context(), crew, func(w store.Writer) error { return w.Claim("c1", by, at(now), at(until)) })
	}
	read(t, s, func(r store.Reader) error {
		same(t, "a call", must[store.Call](t)(r.Call("c1")), c1)
		same(t, "those on a question", must[[]store.Call](t)(r.CallsOn("q1")), []store.Call{c1, c2})
		return nil
	})
	same(t, "open", list(at(3), store.Open), []string{"c1", "c2"})

	if err := claim(bo, 3, 10); err != nil {
		t.Fatal(err)
	}
	same(t, "open besides a claimed one", list(at(4), store.Open), []string{"c2"})
	same(t, "claimed", list(at(4), store.Claimed), []string{"c1"})
	refused(t, "a claim of what another holds", claim(cleo, 9, 20), store.Taken)
	if err := claim(bo, 9, 12); err != nil {
		t.Errorf("who holds it may claim on: %v", err)
	}
	same(t, "open after the claim lapsed", list(at(12), store.Open), []string{"c1", "c2"})
	if err := claim(cleo, 12, 20); err != nil {
		t.Errorf("a lapsed claim is free: %v", err)
	}
	release := func(by store.Person, now int) error {
		return s.Write(t.Context(), crew, func(w store.Writer) error { return w.Release("c1", by, at(now)) })
	}
	refused(t, "giving back what another holds", release(bo, 13), store.Taken)
	if err := release(cleo, 13); err != nil {
		t.Error(err)
	}
	refused(t, "giving back twice", release(cleo, 14), store.Taken)
	same(t, "open after it was given back", list(at(14), store.Open), []string{"c1", "c2"})

	write(t, s, func(w store.Writer) error {
		same(t, "the first nudge", must[bool](t)(w.Nudge("c1", at(15))), true)
		same(t, "the second nudge", must[bool](t)(w.Nudge("c1", at(16))), false)
		return all(w.CloseCall("c1", at(17)), w.CloseCall("c1", at(18)))
	})
	same(t, "done", list(at(20), store.Done), []string{"c1"})
	same(t, "in two states", list(at(20), store.Done, store.Open), []string{"c1", "c2"})
	same(t, "in any", list(at(20)), []string{"c1", "c2"})
	refused(t, "a claim of what is done", claim(bo, 20, 30), store.Closed)
	read(t, s, func(r store.Reader) error {
		c := must[store.Call](t)(r.Call("c1"))
		same(t, "nudged and closed", []time.Time{c.Nudged, c.Closed}, []time.Time{at(15), at(17)})
		return nil
	})
	for what, fn := range map[string]func(store.Writer) error{
		"claim":   func(w store.Writer) error { return w.Claim("c9", ada, at(1), at(2)) },
		"release": func(w store.Writer) error { return w.Release("c9", ada, at(1)) },
		"nudge":   func(w store.Writer) error { _, err := w.Nudge("c9", at(1)); return err },
		"close":   func(w store.Writer) error { return w.CloseCall("c9", at(1)) },
		"call":    func(w store.Writer) error { c1.ID, c1.Question = "c9", "q9"; return w.CallMentor(c1) },
	} {
		refused(t, what+" of nothing", s.Write(t.Context(), crew, fn), store.NotFound)
	}
}

func replies(t *testing.T, open Open) {
	s := fresh(t, open)
	r1 := store.Reply{ID: "r1", Call: "c1", By: bo, Text: "fault", At: at(2)}
	r2 := store.Reply{ID: "r2", Call: "c1", By: cleo, Text: "no fault", At: at(3)}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.CallMentor(store.Call{ID: "c1", Question: "q1", Kind: store.AskMentor, By: ada, At: at(1)}), w.Reply(r2), w.Reply(r1))
	})
	read(t, s, func(r store.Reader) error {
		same(t, "two answers", must[[]store.Reply](t)(r.Replies("c1")), []store.Reply{r1, r2})
		_, err := r.FindReply("r9")
		refused(t, "no such answer", err, store.NotFound)
		same(t, "undelivered", must[[]store.Reply](t)(r.Undelivered()), []store.Reply{r1, r2})
		c := must[store.Call](t)(r.Call("c1"))
		same(t, "their number", c.Answers, 2)
		same(t, "the state", c.State(at(4)), store.Answered)
		return nil
	})
	write(t, s, func(w store.Writer) error { return all(w.Delivered("r1", at(5)), w.Delivered("r1", at(6))) })
	r1.Delivered = at(5)
	read(t, s, func(r store.Reader) error {
		same(t, "undelivered after one went out", must[[]store.Reply](t)(r.Undelivered()), []store.Reply{r2})
		same(t, "both", must[[]store.Reply](t)(r.Replies("c1")), []store.Reply{r1, r2})
		return nil
	})
	refused(t, "an answer to no call", s.Write(t.Context(), crew, func(w store.Writer) error {
		return w.Reply(store.Reply{ID: "r3", Call: "c9", By: bo, Text: "x", At: at(1)})
	}), store.NotFound)
	refused(t, "an answer to a closed call", s.Write(t.Context(), crew, func(w store.Writer) error {
		return all(w.CloseCall("c1", at(7)), w.Reply(store.Reply{ID: "r3", Call: "c1", By: bo, Text: "x", At: at(8)}))
	}), store.Closed)
	refused(t, "delivering nothing", s.Write(t.Context(), crew, func(w store.Writer) error { return w.Delivered("r9", at(1)) }), store.NotFound)
}

func drafts(t *testing.T, open Open) {
	s := fresh(t, open)
	d1 := store.Draft{ID: "d1", Question: "q1", By: bo, Text: "---\nid: 2026-014\n---\n", At: at(2), State: store.Drafted}
	d2 := store.Draft{ID: "d2", By: bo, Text: "x", At: at(1), State: store.Dropped}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.SaveDraft(d1), w.SaveDraft(d2))
	})
	read(t, s, func(r store.Reader) error {
		same(t, "all", must[[]store.Draft](t)(r.Drafts()), []store.Draft{d2, d1})
		same(t, "in the making", must[[]store.Draft](t)(r.Drafts(store.Drafted)), []store.Draft{d1})
		return nil
	})
	d1.State, d1.Note, d1.At = store.Published, "2026-014", at(3)
	write(t, s, func(w store.Writer) error { return w.SaveDraft(d1) })
	read(t, s, func(r store.Reader) error {
		same(t, "saved over", must[store.Draft](t)(r.Draft("d1")), d1)
		_, err := r.Draft("d9")
		refused(t, "no such draft", err, store.NotFound)
		return nil
	})
}

func posts(t *testing.T, open Open) {
	s := fresh(t, open)
	var (
		queue  = func(w store.Writer, key string) { must[bool](t)(w.Queue(store.Post{Key: key, Queued: at(0)})) }
		mark   = func(w store.Writer, key string) error { return w.Mark(key, at(1)) }
		sent   = func(w store.Writer, key string) error { return w.Sent(key, "9.9", at(2)) }
		fails  = func(w store.Writer, key string) error { return w.Failed(key, "channel gone", false, at(2)) }
		again  = func(w store.Writer, key string) error { return w.Failed(key, "rate limit", true, at(2)) }
		unsure = func(w store.Writer, key string) error { return w.Unsure(key, "no answer in time", at(2)) }
		resume = func(w store.Writer, key string) error { _, err := w.Resume(at(3)); return err }
		resend = func(w store.Writer, key string) error { return w.Resend(key, bo, at(4)) }
		skip   = func(w store.Writer, key string) error { return w.Skip(key, bo, at(4)) }
	)
	type step = func(store.Writer, string) error
	steps := map[string]step{"mark": mark, "sent": sent, "failed": fails, "again": again, "unsure": unsure, "resend": resend, "skip": skip}
	// The whole machine: the steps that each state allows, and where they lead.
	for _, m := range []struct {
		state store.PostState
		by    []step
		to    map[string]store.PostState
	}{
		{store.Queued, nil, map[string]store.PostState{"mark": store.Marked, "skip": store.Skipped}},
		{store.Marked, []step{mark}, map[string]store.PostState{"sent": store.Sent, "failed": store.Failed, "again": store.Queued, "unsure": store.Doubt}},
		{store.Sent, []step{mark, sent}, nil},
		{store.Doubt, []step{mark, resume}, map[string]store.PostState{"sent": store.Sent, "failed": store.Failed, "again": store.Queued, "resend": store.Queued, "skip": store.Skipped}},
		{store.Failed, []step{mark, fails}, map[string]store.PostState{"resend": store.Queued, "skip": store.Skipped}},
		{store.Skipped, []step{skip}, nil},
	} {
		for name, do := range steps {
			key := string(m.state) + "/" + name
			write(t, s, func(w store.Writer) error {
				queue(w, key)
				for _, by := range m.by {
					if err := by(w, key); err != nil {
						return err
					}
				}
				same(t, key+": state to begin with", must[store.Post](t)(w.Post(key)).State, m.state)
				err := do(w, key)
				want, ok := m.to[name]
				if !ok {
					want = m.state
					refused(t, key, err, store.Closed)
				} else if err != nil {
					t.Errorf("%s: %v", key, err)
				}
				same(t, key+": state after", must[store.Post](t)(w.Post(key)).State, want)
				first := must[bool](t)(w.Queue(store.Post{Key: key, Queued: at(9)}))
				same(t, key+": queued again", first, false)
				return nil
			})
		}
	}
	for name, do := range steps {
		refused(t, name+" of nothing", s.Write(t.Context(), crew, func(w store.Writer) error { return do(w, "nothing") }), store.NotFound)
	}

	s = fresh(t, open)
	p := store.Post{Key: "bulletin/2026-W47/C2", Where: store.Place{Platform: "slack", Workspace: "T1", Channel: "C2"}, Body: []byte("hello"), Queued: at(1)}
	dm := store.Post{Key: "a", Question: "q1", To: ada, Body: []byte("x"), Queued: at(1)}
	write(t, s, func(w store.Writer) error {
		same(t, "new", must[bool](t)(w.Queue(p)), true)
		if err := w.Ask(asked("q1", ada, 0)); err != nil {
			return err
		}
		must[bool](t)(w.Queue(dm))
		return all(w.Mark(p.Key, at(2)))
	})
	p.State, p.Changed = store.Marked, at(2)
	dm.State, dm.Changed = store.Queued, at(1)
	write(t, s, func(w store.Writer) error {
		same(t, "two states", must[[]store.Post](t)(w.Posts(store.Marked, store.Queued)), []store.Post{dm, p})
		same(t, "how many in doubt", must[int](t)(w.Resume(at(3))), 1)
		same(t, "how many when there are none", must[int](t)(w.Resume(at(3))), 0)
		p.State, p.Changed = store.Doubt, at(3)
		same(t, "in doubt", must[[]store.Post](t)(w.Posts(store.Doubt)), []store.Post{p})
		return all(w.Resend(p.Key, bo, at(4)), w.Mark(p.Key, at(5)), w.Sent(p.Key, "9.9", at(6)))
	})
	p.State, p.Changed, p.Message = store.Sent, at(6), "9.9"
	read(t, s, func(r store.Reader) error {
		same(t, "all", must[[]store.Post](t)(r.Posts()), []store.Post{dm, p})
		return nil
	})
	refused(t, "a post about no question", s.Write(t.Context(), crew, func(w store.Writer) error {
		_, err := w.Queue(store.Post{Key: "b", Question: "q9", Queued: at(1)})
		return err
	}), store.NotFound)
}

func bulletins(t *testing.T, open Open) {
	s := fresh(t, open)
	b := store.Bulletin{ID: "2026-W47", Title: "Week 47", Text: "# Week 47\n", Data: []byte("{}"), Span: store.Span{From: at(-100), To: at(0)}, By: bo, At: at(2)}
	b0 := store.Bulletin{ID: "2026-W46", At: at(1)}
	write(t, s, func(w store.Writer) error { return all(w.KeepBulletin(b), w.KeepBulletin(b0)) })
	read(t, s, func(r store.Reader) error {
		same(t, "a bulletin", must[store.Bulletin](t)(r.Bulletin("2026-W47")), b)
		same(t, "all", must[[]store.Bulletin](t)(r.Bulletins()), []store.Bulletin{b0, b})
		_, err := r.Bulletin("2026-W48")
		refused(t, "no such bulletin", err, store.NotFound)
		return nil
	})
	refused(t, "a bulletin twice", s.Write(t.Context(), crew, func(w store.Writer) error { return w.KeepBulletin(b) }), store.Exists)
}

func audit(t *testing.T, open Open) {
	s := fresh(t, open)
	e1 := store.Entry{At: at(2), Who: bo, Did: "claim", To: "c1", About: ada, Details: "until noon"}
	e2 := store.Entry{At: at(1), Did: "resume"}
	write(t, s, func(w store.Writer) error { return all(w.Log(e1), w.Log(e2), w.Log(e2)) })
	read(t, s, func(r store.Reader) error {
		same(t, "as they were added", must[[]store.Entry](t)(r.Trail(store.Span{})), []store.Entry{e1, e2, e2})
		same(t, "in a span", must[[]store.Entry](t)(r.Trail(store.Span{From: at(2), To: at(3)})), []store.Entry{e1})
		return nil
	})
}
