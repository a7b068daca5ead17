package storetest

import (
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"example.org/netpost/bot/store"
)

// An act is one random change: what it returns must not depend on anybody
// else's rows.
type act func(store.Writer) (any, error)

// random draws a change. Ids are few, so that two associations often use the
// same.
func random(r *rand.Rand, minutes int) act {
	id := func(kind string) string { return fmt.Sprint(kind, r.IntN(4)) }
	now := at(minutes)
	by := []store.Person{ada, bo, cleo}[r.IntN(3)]
	q, c, k, v := id("q"), id("c"), id("p"), id("v")
	fact := fmt.Sprint("fact", r.IntN(3))
	only := func(err error) (any, error) { return nil, err }
	switch r.IntN(29) {
	case 0, 1, 2:
		asked := asked(q, by, minutes)
		asked.Answer = store.Answer{Outcome: fact, Tags: []store.Tag{{Kind: store.Topic, Value: fact}}, At: now}
		return func(w store.Writer) (any, error) { return only(w.Ask(asked)) }
	case 3:
		return func(w store.Writer) (any, error) {
			return only(w.Answer(q, store.Answer{Play: fact, Tags: []store.Tag{{Kind: store.Unread, Value: fact}}, At: now}))
		}
	case 4, 5:
		return func(w store.Writer) (any, error) {
			return only(w.Give(store.Given{Question: q, Fact: fact, Value: "x", By: by, At: now}))
		}
	case 6:
		return func(w store.Writer) (any, error) { return w.Undo(q, "", by, now) }
	case 7:
		return func(w store.Writer) (any, error) {
			return only(w.SeeAs(store.View{Question: q, ID: v, By: by, At: now}))
		}
	case 8:
		return func(w store.Writer) (any, error) { return only(w.NameInView(q, v, by.ID)) }
	case 9:
		return func(w store.Writer) (any, error) { return only(w.HandIn(q, v, minutes%2 == 0, now)) }
	case 10:
		return func(w store.Writer) (any, error) {
			return only(w.SetThread(store.Thread{Where: store.Place{Platform: "slack", Thread: k}, Question: q, Role: store.Asked, At: now}))
		}
	case 11:
		return func(w store.Writer) (any, error) {
			return only(w.KeepButton(store.Button{ID: k, Question: q, Action: fact, At: now}))
		}
	case 12:
		return func(w store.Writer) (any, error) { return w.Deliver(k, now, at(minutes+20)) }
	case 13, 14:
		return func(w store.Writer) (any, error) {
			return only(w.CallMentor(store.Call{ID: c, Question: q, Kind: store.Disagree, By: by, About: fact, At: now}))
		}
	case 15:
		return func(w store.Writer) (any, error) { return only(w.Claim(c, by, now, at(minutes+10))) }
	case 16:
		return func(w store.Writer) (any, error) {
			return only(w.Reply(store.Reply{ID: k, Call: c, By: by, Text: "an answer", At: now}))
		}
	case 17:
		return func(w store.Writer) (any, error) { return w.Nudge(c, now) }
	case 18:
		return func(w store.Writer) (any, error) {
			return only(w.SaveDraft(store.Draft{ID: k, Question: q, By: by, Text: fact, At: now, State: store.Drafted}))
		}
	case 19, 20:
		return func(w store.Writer) (any, error) { return w.Queue(store.Post{Key: k, To: by, Queued: now}) }
	case 21:
		return func(w store.Writer) (any, error) { return only(w.Mark(k, now)) }
	case 22:
		return func(w store.Writer) (any, error) { return w.Resume(now) }
	case 23:
		return func(w store.Writer) (any, error) {
			return only(w.Log(store.Entry{At: now, Who: by, Did: "ask", To: q}))
		}
	case 24:
		return func(w store.Writer) (any, error) {
			return only(w.OpenPoll(store.Poll{Question: q, By: by, Season: "2026-27", At: now}))
		}
	case 25, 26:
		return func(w store.Writer) (any, error) {
			return only(w.Vote(store.Vote{Question: q, By: by, Call: fact, Team: v, At: now}))
		}
	case 27:
		return func(w store.Writer) (any, error) {
			return only(w.ClosePoll(q, now, func(call, team string) bool { return call == "fact1" }))
		}
	default:
		switch r.IntN(4) {
		case 0:
			return func(w store.Writer) (any, error) { return w.Erase(by, "an answer") }
		case 1:
			return func(w store.Writer) (any, error) { return w.Purge(now.Add(-30*time.Minute), now) }
		case 2:
			return func(w store.Writer) (any, error) { return only(w.CloseCall(c, now)) }
		default:
			return func(w store.Writer) (any, error) { return only(w.KeepBulletin(store.Bulletin{ID: k, By: by, At: now})) }
		}
	}
}

// Two associations never see each other's rows: whatever one does, under the
// same ids, the other is as if it were alone, in what it reads and in what its
// own changes return.
func apart(t *testing.T, open Open) {
	for seed := range uint64(3) {
		r := rand.New(rand.NewPCG(seed, 7))
		names := []string{"riverside", "hillside"}
		both := fresh(t, open)
		alone := map[string]store.Store{names[0]: fresh(t, open), names[1]: fresh(t, open)}
		do := func(s store.Store, name string, a act) string {
			var got any
			err := s.Write(t.Context(), name, func(w store.Writer) (err error) {
				got, err = a(w)
				return err
			})
			if err != nil && store.CodeOf(err) == "" || store.CodeOf(err).Operational() {
				t.Fatal(err)
			}
			return fmt.Sprintf("%+v, %v", got, err)
		}
		for i := range 300 {
			name := names[r.IntN(2)]
			a := random(r, i)
			if got, want := do(both, name, a), do(alone[name], name, a); got != want {
				t.Fatalf("seed %d, change %d of %s:\n  beside the other: %s\n  alone: %s", seed, i, name, got, want)
			}
		}
		for _, name := range names {
			got, want := dump(t, both, name), dump(t, alone[name], name)
			for kind := range want {
				same(t, fmt.Sprintf("seed %d: %s of %s", seed, kind, name), got[kind], want[kind])
			}
		}
		same(t, "a third association", len(rows(dump(t, both, "seaside"))), 0)
		got := must[[]string](t)(both.Associations(t.Context()))
		same(t, "the associations", got, []string{"hillside", "riverside"})
	}
}
