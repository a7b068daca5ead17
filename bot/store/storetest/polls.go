package storetest

import (
	"testing"

	"example.org/netpost/bot/store"
)

func polls(t *testing.T, open Open) {
	s := fresh(t, open)
	p1 := store.Poll{Question: "q1", By: ada, Season: "2026-27", At: at(1), Closes: at(6)}
	vote := func(by store.Person, call, team string, minutes int) store.Vote {
		return store.Vote{Question: "q1", By: by, Call: call, Team: team, At: at(minutes)}
	}
	write(t, s, func(w store.Writer) error {
		return all(w.Ask(asked("q1", ada, 0)), w.Ask(asked("q2", bo, 0)), w.Ask(asked("q3", bo, 0)), w.OpenPoll(p1),
			w.Vote(vote(ada, "play-on", "", 2)), w.Vote(vote(bo, "fault", "B", 3)),
			w.Vote(vote(cleo, "fault", "A", 4)), w.Vote(vote(ada, "fault", "B", 5)))
	})
	counts := []store.VoteCount{{Call: "fault", Team: "B", Members: 2}, {Call: "fault", Team: "A", Members: 1}}
	p1.Votes = 3
	read(t, s, func(r store.Reader) error {
		same(t, "a poll", must[store.Poll](t)(r.Poll("q1")), p1)
		same(t, "the open ones", must[[]store.Poll](t)(r.Polls()), []store.Poll{p1})
		same(t, "a vote counts once, the last", must[[]store.VoteCount](t)(r.Counts("q1")), counts)
		same(t, "agreement while it is open", must[[]store.Agreement](t)(r.Agreement(0)), nil)
		_, err := r.Poll("q2")
		refused(t, "no poll", err, store.NotFound)
		_, err = r.Counts("q2")
		refused(t, "votes of none", err, store.NotFound)
		return nil
	})

	toB := func(call, team string) bool { return call == "fault" && team == "B" }
	write(t, s, func(w store.Writer) error { return w.ClosePoll("q1", at(6), toB) })
	p1.Closed = at(6)
	read(t, s, func(r store.Reader) error {
		same(t, "closed", must[store.Poll](t)(r.Poll("q1")), p1)
		same(t, "none is open", must[[]store.Poll](t)(r.Polls()), nil)
		same(t, "the counts stay", must[[]store.VoteCount](t)(r.Counts("q1")), counts)
		return nil
	})
	for what, fn := range map[string]func(store.Writer) error{
		"a vote on a closed poll": func(w store.Writer) error { return w.Vote(vote(bo, "play-on", "", 7)) },
		"closing twice":           func(w store.Writer) error { return w.ClosePoll("q1", at(7), toB) },
	} {
		refused(t, what, s.Write(t.Context(), crew, fn), store.Closed)
	}
	for what, fn := range map[string]func(store.Writer) error{
		"a poll of no question": func(w store.Writer) error {
			return w.OpenPoll(store.Poll{Question: "q9", Season: "2026-27", At: at(1)})
		},
		"a vote in no poll": func(w store.Writer) error {
			return w.Vote(store.Vote{Question: "q2", By: ada, Call: "fault", At: at(1)})
		},
		"closing none": func(w store.Writer) error { return w.ClosePoll("q2", at(1), toB) },
	} {
		refused(t, what, s.Write(t.Context(), crew, fn), store.NotFound)
	}
	refused(t, "a second poll on a question", s.Write(t.Context(), crew, func(w store.Writer) error {
		return w.OpenPoll(store.Poll{Question: "q1", Season: "2026-27", At: at(8)})
	}), store.Exists)

	// Agreement is by channel and season, and leaves out what too few voted in.
	write(t, s, func(w store.Writer) error {
		old := store.Poll{Question: "q2", By: bo, Season: "2025-26", At: at(1)}
		few := store.Poll{Question: "q3", By: bo, Season: "2026-27", At: at(2)}
		return all(w.OpenPoll(old), w.OpenPoll(few),
			w.Vote(store.Vote{Question: "q2", By: ada, Call: "replay", At: at(3)}),
			w.Vote(store.Vote{Question: "q2", By: bo, Call: "replay", At: at(3)}),
			w.Vote(store.Vote{Question: "q3", By: bo, Call: "fault", Team: "B", At: at(3)}),
			w.ClosePoll("q2", at(4), func(call, _ string) bool { return call == "replay" }), w.ClosePoll("q3", at(4), toB))
	})
	where := asked("q1", ada, 0).Where
	where.Thread = ""
	read(t, s, func(r store.Reader) error {
		same(t, "all", must[[]store.Agreement](t)(r.Agreement(0)), []store.Agreement{
			{Where: where, Season: "2026-27", Polls: 2, Votes: 4, Agreed: 3}, {Where: where, Season: "2025-26", Polls: 1, Votes: 2, Agreed: 2}})
		same(t, "from three up", must[[]store.Agreement](t)(r.Agreement(3)), []store.Agreement{
			{Where: where, Season: "2026-27", Polls: 1, Votes: 3, Agreed: 2}})
		return nil
	})

	// With its question it is gone, and a person's open vote with the person.
	write(t, s, func(w store.Writer) error {
		if err := all(w.Ask(asked("q4", bo, 0)), w.OpenPoll(store.Poll{Question: "q4", By: ada, Season: "2026-27", At: at(1)}),
			w.Vote(store.Vote{Question: "q4", By: ada, Call: "fault", Team: "A", At: at(2)}),
			w.Vote(store.Vote{Question: "q4", By: cleo, Call: "fault", Team: "A", At: at(2)})); err != nil {
			return err
		}
		same(t, "votes erased", must[store.Erased](t)(w.Erase(ada)).Votes, 1)
		p := must[store.Poll](t)(w.Poll("q4"))
		same(t, "what is left of the poll", p, store.Poll{Question: "q4", Season: "2026-27", At: at(1), Votes: 1})
		_, err := w.Poll("q1")
		refused(t, "the poll of an erased question", err, store.NotFound)
		return nil
	})
}
