package storetest

import (
	"reflect"
	"testing"

	"example.org/netpost/bot/store"
)

// probes are ids that buttons of this suite have: there is no list of them.
var probes = []string{"p0", "p1", "p2", "p3", "b1old", "b2old", "b1new", "b2new", "b1", "b2"}

// dump is everything that a reader can see of one association, by kind.
func dump(t testing.TB, s store.Store, association string) map[string]any {
	t.Helper()
	out := map[string]any{}
	err := s.Read(t.Context(), association, func(r store.Reader) error {
		var (
			qs    = must[[]store.Question](t)(r.Questions(store.Span{}))
			cs    = must[[]store.Call](t)(r.Calls(noon))
			hist  []store.Given
			given []store.Given
			views []store.View
			ths   []store.Thread
			reps  []store.Reply
			polls []store.Poll
			votes []store.VoteCount
		)
		for _, q := range qs {
			same(t, "a question alone and in a list", must[store.Question](t)(r.Question(q.ID)), q)
			given = append(given, must[[]store.Given](t)(r.Given(q.ID))...)
			hist = append(hist, must[[]store.Given](t)(r.History(q.ID))...)
			views = append(views, must[[]store.View](t)(r.Views(q.ID))...)
			if p, err := r.Poll(q.ID); err == nil {
				polls = append(polls, p)
				votes = append(votes, must[[]store.VoteCount](t)(r.Counts(q.ID))...)
			}
			ths = append(ths, must[[]store.Thread](t)(r.Threads(q.ID))...)
		}
		for _, h := range ths {
			same(t, "a thread alone and in a list", must[store.Thread](t)(r.Thread(h.Where)), h)
		}
		on := map[string]int{}
		for _, c := range cs {
			same(t, "a call alone and in a list", must[store.Call](t)(r.Call(c.ID)), c)
			on[c.Question] = len(must[[]store.Call](t)(r.CallsOn(c.Question)))
			reps = append(reps, must[[]store.Reply](t)(r.Replies(c.ID))...)
		}
		for _, a := range reps {
			same(t, "an answer alone and in a list", must[store.Reply](t)(r.FindReply(a.ID)), a)
		}
		counts := map[store.TagKind][]store.Count{}
		for _, kind := range []store.TagKind{store.Topic, store.Deciding, store.Unread, store.Linked, store.Disputed} {
			counts[kind] = must[[]store.Count](t)(r.Tally(kind, store.Span{}, 0))
		}
		var pressed []store.Button
		for _, id := range probes {
			if b, err := r.Button(id); err == nil {
				pressed = append(pressed, b)
			}
		}
		out["questions"], out["given"], out["standing"], out["views"], out["threads"], out["tally"] = qs, hist, given, views, ths, counts
		out["calls"], out["calls on questions"], out["replies"], out["buttons"] = cs, on, reps, pressed
		out["polls"], out["votes"], out["open polls"], out["agreement"] = polls, votes, must[[]store.Poll](t)(r.Polls()), must[[]store.Agreement](t)(r.Agreement(0))
		out["undelivered"] = must[[]store.Reply](t)(r.Undelivered())
		ds, ps, bs := must[[]store.Draft](t)(r.Drafts()), must[[]store.Post](t)(r.Posts()), must[[]store.Bulletin](t)(r.Bulletins())
		for _, d := range ds {
			same(t, "a draft alone and in a list", must[store.Draft](t)(r.Draft(d.ID)), d)
		}
		for _, p := range ps {
			same(t, "a post alone and in a list", must[store.Post](t)(r.Post(p.Key)), p)
		}
		for _, b := range bs {
			same(t, "a bulletin alone and in a list", must[store.Bulletin](t)(r.Bulletin(b.ID)), b)
		}
		out["drafts"], out["posts"], out["bulletins"] = ds, ps, bs
		out["audit"] = must[[]store.Entry](t)(r.Trail(store.Span{}))
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// rows lists the rows of a dump.
func rows(dump map[string]any) (all []any) {
	for _, list := range dump {
		if v := reflect.ValueOf(list); v.Kind() == reflect.Slice {
			for i := range v.Len() {
				all = append(all, v.Index(i).Interface())
			}
		}
	}
	return all
}

// has reports whether a row holds a person.
func has(row any, p store.Person) bool {
	v := reflect.ValueOf(row)
	for i := range v.NumField() {
		if v.Field(i).Interface() == any(p) {
			return true
		}
	}
	return false
}
