package storetest

import (
	"fmt"
	"testing"

	"example.org/netpost/bot/store"
)

// full fills a store with a row of every kind about one question of ada's, one
// of bo's and none, with ids that end in tail.
func full(w store.Writer, tail string, minutes int) error {
	for i, by := range []store.Person{ada, bo} {
		other := []store.Person{bo, ada}[i]
		id := func(kind string) string { return fmt.Sprint(kind, i+1, tail) }
		q := asked(id("q"), by, minutes)
		q.Text = "a question of " + by.ID
		q.Answer = store.Answer{Message: "m", Play: "play", Outcome: "fault", Ruling: []byte("{}"), At: at(minutes), Tags: []store.Tag{{Kind: store.Topic, Value: "net-contact" + tail}}}
		where := store.Place{Platform: "slack", Workspace: "T1", Channel: "C1", Thread: id("t")}
		if _, err := w.Deliver(id("e"), at(minutes), at(minutes+10)); err != nil {
			return err
		}
		if err := all(
			w.Ask(q),
			w.SeeAs(store.View{Question: q.ID, ID: "1", By: by, Name: "named " + by.ID, At: at(minutes)}),
			w.SeeAs(store.View{Question: q.ID, ID: "2", By: other, At: at(minutes)}),
			w.Give(store.Given{Question: q.ID, Fact: "row", Value: "front" + tail, By: other, At: at(minutes)}),
			w.Give(store.Given{Question: q.ID, View: "2", Fact: "row", Value: "back", By: other, At: at(minutes)}),
			w.OpenPoll(store.Poll{Question: q.ID, By: cleo, Season: "2026-27", At: at(minutes)}),
			w.Vote(store.Vote{Question: q.ID, By: other, Call: "fault", Team: "A", At: at(minutes)}),
			w.SetThread(store.Thread{Where: where, Question: q.ID, Role: store.Asked, At: at(minutes)}),
			w.KeepButton(store.Button{ID: id("b"), Question: q.ID, Action: "x" + tail, At: at(minutes)}),
			w.CallMentor(store.Call{ID: id("c"), Question: q.ID, Kind: store.Disagree, By: other, About: "row" + tail, Words: "words of " + other.ID, At: at(minutes)}),
			w.CallMentor(store.Call{ID: id("cc"), Question: q.ID, Kind: store.AskMentor, By: by, At: at(minutes)}),
			w.Claim(id("cc"), other, at(minutes), at(minutes+5)),
			w.Reply(store.Reply{ID: id("r"), Call: id("cc"), By: other, Text: "answer of " + other.ID, At: at(minutes)}),
			w.Delivered(id("r"), at(minutes)),
			w.Reply(store.Reply{ID: id("rr"), Call: id("cc"), By: other, Text: "late answer of " + other.ID, At: at(minutes)}),
			w.SaveDraft(store.Draft{ID: id("d"), Question: q.ID, By: other, Text: "draft" + tail, At: at(minutes), State: store.Drafted}),
			w.SaveDraft(store.Draft{ID: id("dd"), By: by, Text: "published draft", At: at(minutes), State: store.Published, Note: id("n")}),
			w.Log(store.Entry{At: at(minutes), Who: by, Did: "ask", To: q.ID}),
			w.Log(store.Entry{At: at(minutes), Who: cleo, Did: "refuse", To: q.ID, About: by}),
			w.KeepBulletin(store.Bulletin{ID: id("w"), Title: "Week" + tail, By: by, At: at(minutes)}),
		); err != nil {
			return err
		}
		for _, p := range []store.Post{
			{Key: id("p"), Question: q.ID, Body: []byte("an answer"), Queued: at(minutes)},
			{Key: id("pp"), To: by, Body: []byte("a direct message"), Queued: at(minutes)},
			{Key: id("ppp"), Body: []byte("a bulletin" + tail), Queued: at(minutes)},
		} {
			if _, err := w.Queue(p); err != nil {
				return err
			}
		}
	}
	return nil
}

func purge(t *testing.T, open Open) {
	s := fresh(t, open)
	write(t, s, func(w store.Writer) error { return all(full(w, "old", 0), full(w, "new", 100)) })
	write(t, s, func(w store.Writer) error {
		if err := all(w.Mark("ppp1old", at(1)), w.Sent("ppp1old", "9.9", at(1)), w.Mark("ppp2old", at(1))); err != nil {
			return err
		}
		got := must[store.Deleted](t)(w.Purge(at(100), at(105)))
		same(t, "what was deleted", got, store.Deleted{Questions: 2, Drafts: 4, Posts: 4, Entries: 4, Deliveries: 2})
		got = must[store.Deleted](t)(w.Purge(at(100), at(105)))
		same(t, "what was deleted again", got, store.Deleted{})
		return nil
	})
	only := fresh(t, open)
	write(t, only, func(w store.Writer) error { return full(w, "new", 100) })
	read(t, s, func(r store.Reader) error {
		for _, p := range []struct {
			key   string
			state store.PostState
		}{{"ppp1old", store.Sent}, {"ppp2old", store.Skipped}, {"pp1old", store.Skipped}} {
			got := must[store.Post](t)(r.Post(p.key))
			same(t, p.key+" is emptied", got.Body, nil)
			same(t, p.key+" goes to", got.To, store.Person{})
			same(t, p.key+" state", got.State, p.state)
		}
		same(t, "bulletins stay", len(must[[]store.Bulletin](t)(r.Bulletins())), 4)
		return nil
	})
	// Everything else is as if the old rows had never been.
	got, want := dump(t, s, crew), dump(t, only, crew)
	for _, kind := range []string{"posts", "bulletins"} {
		delete(got, kind)
		delete(want, kind)
	}
	same(t, "the rest", got, want)
	write(t, s, func(w store.Writer) error {
		same(t, "an old post queued again", must[bool](t)(w.Queue(store.Post{Key: "ppp1old", Queued: at(200)})), false)
		return nil
	})
}

func erase(t *testing.T, open Open) {
	s := fresh(t, open)
	write(t, s, func(w store.Writer) error {
		q := asked("q9", bo, 1)
		q.Text = "what did ADA Lovat see?"
		q2 := asked("q8", bo, 1)
		q2.Text = "Adaptation, and U012 are other words"
		_, err := w.Queue(store.Post{Key: "p9", Body: []byte(`{"text":"<@U01> asked"}`), Queued: at(1)})
		return all(full(w, "", 0), w.Ask(q), w.Ask(q2), err,
			w.SaveDraft(store.Draft{ID: "d9", Question: "q1", By: cleo, Text: "x", At: at(1), State: store.Published, Note: "2026-009"}))
	})
	write(t, s, func(w store.Writer) error {
		got := must[store.Erased](t)(w.Erase(ada, "Ada"))
		want := store.Erased{
			Questions: 1, Given: 1, Views: 1, Votes: 1, Calls: 1, Replies: 2, Drafts: 4, Posts: 2, Entries: 2,
			Notes:  []string{"2026-009", "n1"},
			Quotes: []string{"a question of U01", "answer of U01", "late answer of U01", "words of U01"},
			Mentions: []store.Mention{
				{In: "post", ID: "p9", Text: `{"text":"<@U01> asked"}`},
				{In: "question", ID: "q9", Text: "what did ADA Lovat see?"},
			},
		}
		same(t, "what was erased", got, want)
		return nil
	})
	read(t, s, func(r store.Reader) error {
		same(t, "the fact stays without a name", must[[]store.Given](t)(r.Given("q2")), []store.Given{{Question: "q2", Fact: "row", Value: "front", At: at(0)}})
		same(t, "the answer that went out stays empty", must[[]store.Reply](t)(r.Replies("cc2")), []store.Reply{{ID: "r2", Call: "cc2", At: at(0), Delivered: at(0)}})
		same(t, "the claim is free", must[store.Call](t)(r.Call("cc2")).Claimer, store.Person{})
		return nil
	})
	// No row is by or about them; another person of that id elsewhere stays.
	for _, row := range rows(dump(t, s, crew)) {
		if has(row, ada) {
			t.Errorf("left of the person: %+v", row)
		}
	}
	write(t, s, func(w store.Writer) error {
		got := must[store.Erased](t)(w.Erase(store.Person{Platform: "discord", ID: "U02"}))
		got.Mentions = nil
		same(t, "another platform's person of that id", got, store.Erased{})
		return nil
	})
}
