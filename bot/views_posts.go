package bot

import (
	"fmt"

	"example.org/netpost/bot/store"
)

// turnViews turns to a page of two views.
func (t *turn) turnViews(question, page string) Reply {
	s, failed := t.loadViews(question)
	if failed != nil {
		return failed
	}
	m := t.viewsMessage(s)
	m.Page = number(page)
	return t.look(s.dialogue, m)
}

// composeViews makes the board of two views anew.
func (t *turn) composeViews(p store.Post) (Target, Message, error) {
	var s sighting
	var facts []store.Given
	err := t.Store.Read(t.ctx, t.assoc.ID, func(r store.Reader) (err error) {
		if s.Question, err = r.Question(p.Question); err != nil {
			return err
		}
		if facts, err = r.Given(p.Question); err != nil {
			return err
		}
		s.views, err = readViews(r, p.Question)
		return err
	})
	if err != nil {
		return Target{}, Message{}, err
	}
	s.dialogue = t.answered(s.Question, standing(facts))
	if s.dialogue.answer.Error != nil {
		return Target{}, Message{}, s.dialogue.answer.Error
	}
	return Target{Place: p.Where, To: p.To}, t.viewsMessage(s), nil
}

// viewsGone shows the views to their officials alone, as they stand, where
// their place is not there any more: never in another channel.
func viewsGone(t *turn, w store.Writer, p store.Post) error {
	if !p.To.IsZero() {
		return nil
	}
	views, err := w.Views(p.Question)
	if err != nil {
		return err
	}
	for i, v := range views {
		if v.Handed.IsZero() || v.By.IsZero() {
			continue
		}
		home := Place{Platform: v.By.Platform, Workspace: p.Where.Workspace}
		if v.By.Platform != p.Where.Platform {
			home = t.homeOf(v.By)
		}
		key := fmt.Sprintf("%s/%d", p.Key, i+1)
		if err := t.queue(w, store.Post{Key: key, Question: p.Question, To: v.By, Where: home}); err != nil {
			return err
		}
		if err := t.refresh(w, key); err != nil {
			return err
		}
	}
	t.soon()
	return nil
}
