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
// again.
func (t *turn) settle(key string, sent Sent, failed error, again bool) error {
	k, _ := postKindOf(key)
	doubt := failed != nil && !errors.Is(failed, ErrNotSent)
	if doubt && k.edit {
		doubt, again = false, true // to do it again does no harm
	}
	if failed != nil {
		t.Log.WarnContext(t.ctx, "a post is not out, or may not be", "post", key, "association", t.assoc.ID, "doubt", doubt, "again", again && !doubt, "cause", failed)
	}
	now := t.Now()
	return t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		switch {
		case doubt:
			return w.Unsure(key, failed.Error(), now)
		case failed != nil:
			if err := w.Failed(key, failed.Error(), again, now); err != nil {
				return err
			}
		default:
			if err := w.Sent(key, sent.Message, now); err != nil {
				return err
			}
		}
		p, err := w.Post(key)
		switch {
		case err != nil:
			return err
		case failed == nil && k.sent != nil:
			return k.sent(t, w, p, sent)
		case k.gone != nil && errors.Is(failed, ErrGone):
			return k.gone(t, w, p)
		}
		return nil
	})
}

// answerSent notes which message holds an answer, and which thread is about it.
func answerSent(t *turn, w store.Writer, p store.Post, sent Sent) error {
	kind, id, _ := strings.Cut(p.Key, "/")
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
	return w.SetThread(store.Thread{Where: where, Question: id, Role: store.Asked, At: p.Changed})
}
