package bot

import (
	"errors"
	"strings"

	"example.org/netpost/bot/store"
)

// toldKey is the post of an answer to words in a thread.
func toldKey(id string) string { return "told/" + id }

// posted notes what became of a reply.
func (t *turn) posted(p Posted) {
	if err := t.settle(p.Ref, Sent{Message: p.Message, Place: Place{Thread: p.Thread}}, p.Err, false); err != nil {
		t.report(err)
	}
}

// settle notes what became of a marked post. One that may be out is put in
// doubt and waits for a person; one that is not goes back to the queue with
// again. Of an answer it is noted which message holds it, and which thread is
// about it.
func (t *turn) settle(key string, sent Sent, failed error, again bool) error {
	doubt := failed != nil && !errors.Is(failed, ErrNotSent)
	if failed != nil {
		t.Log.WarnContext(t.ctx, "a post is not out, or may not be", "post", key, "association", t.assoc.ID, "doubt", doubt, "again", again && !doubt, "cause", failed)
	}
	now := t.Now()
	return t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		switch {
		case doubt:
			return w.Unsure(key, failed.Error(), now)
		case failed != nil:
			return w.Failed(key, failed.Error(), again, now)
		}
		if err := w.Sent(key, sent.Message, now); err != nil {
			return err
		}
		kind, id, _ := strings.Cut(key, "/")
		if kind != "answer" && kind != "share" {
			return nil
		}
		q, err := w.Question(id)
		if err != nil {
			return err
		}
		if kind == "answer" && q.Private && !t.Direct {
			return nil // nobody else can see it, and it can't be changed but by its own buttons
		}
		if sent.Message != "" {
			a := q.Answer
			a.Message = sent.Message
			if err := w.Answer(id, a); err != nil {
				return err
			}
		}
		if sent.Thread == "" {
			return nil
		}
		where := t.Where
		where.Thread = sent.Thread
		return w.SetThread(store.Thread{Where: where, Question: id, Role: store.Asked, At: now})
	})
}
