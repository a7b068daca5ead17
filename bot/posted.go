package bot

import (
	"errors"
	"strings"

	"example.org/netpost/bot/store"
)

// toldKey is the post of an answer to words in a thread.
func toldKey(id string) string { return "told/" + id }

// posted notes what became of an answer. One that may be out stays marked: it
// is found at the next start and waits for a person.
func (t *turn) posted(p Posted) {
	if p.Err != nil && !errors.Is(p.Err, ErrNotSent) {
		t.Log.WarnContext(t.ctx, "an answer may not be out", "post", p.Ref, "association", t.assoc.ID, "cause", p.Err)
		return
	}
	now := t.Now()
	err := t.Store.Write(t.ctx, t.assoc.ID, func(w store.Writer) error {
		if p.Err != nil {
			return w.Failed(p.Ref, p.Err.Error(), false, now)
		}
		if err := w.Sent(p.Ref, p.Message, now); err != nil {
			return err
		}
		kind, id, _ := strings.Cut(p.Ref, "/")
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
		if p.Message != "" {
			a := q.Answer
			a.Message = p.Message
			if err := w.Answer(id, a); err != nil {
				return err
			}
		}
		if p.Thread == "" {
			return nil
		}
		where := t.Where
		where.Thread = p.Thread
		return w.SetThread(store.Thread{Where: where, Question: id, Role: store.Asked, At: now})
	})
	if err != nil {
		t.report(err)
	}
}
