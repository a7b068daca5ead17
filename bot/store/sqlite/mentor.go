package sqlite

import (
	"slices"
	"time"

	"example.org/netpost/bot/store"
)

// CallMentor is part of [store.MentorWriter].
func (t *tx) CallMentor(c store.Call) error {
	fresh := c.Claimer.IsZero() && c.Lapses.IsZero() && c.Nudged.IsZero() && c.Answers == 0 && c.Closed.IsZero()
	if err := valid("a call", check{c.ID != "", "an id"}, check{c.Kind == store.AskMentor || c.Kind == store.Disagree, "a kind"},
		check{!c.At.IsZero(), "a time"}, check{fresh, "to be new"}, people(c.By)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO calls (association, id, question, kind, by, about, words, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)`,
		c.ID, c.Question, string(c.Kind), person(c.By), c.About, c.Words, micros(c.At))
	return err
}

const selectCalls = `SELECT id, question, kind, by, about, words, at, claimer, lapses, nudged, closed,
	(SELECT count(*) FROM replies WHERE replies.association = ?1 AND call = calls.id) FROM calls WHERE association = ?1 `

func call(s scan) (c store.Call, err error) {
	err = s(&c.ID, &c.Question, &c.Kind, who{&c.By}, &c.About, &c.Words, when{&c.At},
		who{&c.Claimer}, when{&c.Lapses}, when{&c.Nudged}, when{&c.Closed}, &c.Answers)
	return c, err
}

// Call is part of [store.MentorReader].
func (t *tx) Call(id string) (store.Call, error) {
	return one(t, errMissing("call", id), call, selectCalls+`AND id = ?2`, id)
}

// Calls is part of [store.MentorReader].
func (t *tx) Calls(now time.Time, states ...store.CallState) ([]store.Call, error) {
	done := len(states) == 0 || slices.Contains(states, store.Done)
	all, err := list(t, call, selectCalls+`AND (closed = 0 OR ?2) ORDER BY at, id`, done)
	if err != nil || len(states) == 0 {
		return all, err
	}
	return slices.DeleteFunc(all, func(c store.Call) bool { return !slices.Contains(states, c.State(now)) }), nil
}

// CallsOn is part of [store.MentorReader].
func (t *tx) CallsOn(question string) ([]store.Call, error) {
	return list(t, call, selectCalls+`AND question = ?2 ORDER BY at, id`, question)
}

// Claim is part of [store.MentorWriter].
func (t *tx) Claim(id string, by store.Person, now, until time.Time) error {
	if err := valid("a claim", check{!by.IsZero(), "somebody"}, check{!now.IsZero() && now.Before(until), "to lapse after it is made"}, people(by)); err != nil {
		return err
	}
	c, err := t.Call(id)
	if err != nil {
		return err
	}
	if !c.Closed.IsZero() {
		return errCallClosed
	}
	if h := c.HeldBy(now); !h.IsZero() && h != by {
		return &store.Error{Code: store.Taken, What: "another mentor is on this question", Mend: "it is free again when that claim lapses"}
	}
	_, err = t.exec(`UPDATE calls SET claimer = ?3, lapses = ?4 WHERE association = ?1 AND id = ?2`, id, person(by), micros(until))
	return err
}

var errCallClosed = &store.Error{Code: store.Closed, What: "this question is off the mentors' queue", Mend: "ask a mentor again to put it back"}

// Release is part of [store.MentorWriter].
func (t *tx) Release(id string, by store.Person, now time.Time) error {
	c, err := t.Call(id)
	if err != nil {
		return err
	}
	if by.IsZero() || c.HeldBy(now) != by {
		return &store.Error{Code: store.Taken, What: "this question is not yours to give back"}
	}
	_, err = t.exec(`UPDATE calls SET claimer = '', lapses = 0 WHERE association = ?1 AND id = ?2`, id)
	return err
}

// Nudge is part of [store.MentorWriter].
func (t *tx) Nudge(id string, now time.Time) (bool, error) {
	if err := valid("a nudge", check{!now.IsZero(), "a time"}); err != nil {
		return false, err
	}
	if err := t.known("call", "calls", id); err != nil {
		return false, err
	}
	n, err := t.exec(`UPDATE calls SET nudged = ?3 WHERE association = ?1 AND id = ?2 AND nudged = 0 AND closed = 0`, id, micros(now))
	return n == 1, err
}

// CloseCall is part of [store.MentorWriter]. A call closed again keeps its
// first time.
func (t *tx) CloseCall(id string, at time.Time) error {
	if err := valid("closing a call", check{!at.IsZero(), "a time"}); err != nil {
		return err
	}
	if err := t.known("call", "calls", id); err != nil {
		return err
	}
	_, err := t.exec(`UPDATE calls SET closed = ?3 WHERE association = ?1 AND id = ?2 AND closed = 0`, id, micros(at))
	return err
}

// Reply is part of [store.MentorWriter].
func (t *tx) Reply(r store.Reply) error {
	if err := valid("an answer", check{r.ID != "", "an id"}, check{!r.At.IsZero(), "a time"}, check{r.Text != "", "words"}, check{r.Delivered.IsZero(), "to be new"}, people(r.By)); err != nil {
		return err
	}
	c, err := t.Call(r.Call)
	if err != nil {
		return err
	}
	if !c.Closed.IsZero() {
		return errCallClosed
	}
	_, err = t.exec(`INSERT INTO replies (association, id, call, by, text, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)`,
		r.ID, r.Call, person(r.By), r.Text, micros(r.At))
	return err
}

// Delivered is part of [store.MentorWriter]. An answer delivered again keeps
// its first time.
func (t *tx) Delivered(id string, at time.Time) error {
	if err := valid("a delivered answer", check{!at.IsZero(), "a time"}); err != nil {
		return err
	}
	if err := t.known("answer", "replies", id); err != nil {
		return err
	}
	_, err := t.exec(`UPDATE replies SET delivered = ?3 WHERE association = ?1 AND id = ?2 AND delivered = 0`, id, micros(at))
	return err
}

const replyColumns = `id, call, by, text, at, delivered`

func reply(s scan) (r store.Reply, err error) {
	err = s(&r.ID, &r.Call, who{&r.By}, &r.Text, when{&r.At}, when{&r.Delivered})
	return r, err
}

// FindReply is part of [store.MentorReader].
func (t *tx) FindReply(id string) (store.Reply, error) {
	return one(t, errMissing("answer", id), reply, `SELECT `+replyColumns+` FROM replies WHERE association = ?1 AND id = ?2`, id)
}

// Replies is part of [store.MentorReader].
func (t *tx) Replies(call string) ([]store.Reply, error) {
	return list(t, reply, `SELECT `+replyColumns+` FROM replies WHERE association = ?1 AND call = ?2 ORDER BY at, id`, call)
}

// Undelivered is part of [store.MentorReader].
func (t *tx) Undelivered() ([]store.Reply, error) {
	return list(t, reply, `SELECT `+replyColumns+` FROM replies WHERE association = ?1 AND delivered = 0 ORDER BY at, id`)
}

// SaveDraft is part of [store.MentorWriter].
func (t *tx) SaveDraft(d store.Draft) error {
	state := d.State == store.Drafted || d.State == store.Published || d.State == store.Dropped
	if err := valid("a draft", check{d.ID != "", "an id"}, check{!d.At.IsZero(), "a time"}, check{state, "a state"}, check{d.State != store.Published || d.Note != "", "the id of its note once it is published"}, people(d.By)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO drafts (association, id, question, by, text, at, state, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
		ON CONFLICT DO UPDATE SET question = excluded.question, by = excluded.by, text = excluded.text, at = excluded.at, state = excluded.state, note = excluded.note`,
		d.ID, d.Question, person(d.By), d.Text, micros(d.At), string(d.State), d.Note)
	return err
}

const draftColumns = `id, question, by, text, at, state, note`

func draft(s scan) (d store.Draft, err error) {
	err = s(&d.ID, &d.Question, who{&d.By}, &d.Text, when{&d.At}, &d.State, &d.Note)
	return d, err
}

// Draft is part of [store.MentorReader].
func (t *tx) Draft(id string) (store.Draft, error) {
	return one(t, errMissing("draft", id), draft, `SELECT `+draftColumns+` FROM drafts WHERE association = ?1 AND id = ?2`, id)
}

// Drafts is part of [store.MentorReader].
func (t *tx) Drafts(states ...store.DraftState) ([]store.Draft, error) {
	all, err := list(t, draft, `SELECT `+draftColumns+` FROM drafts WHERE association = ?1 ORDER BY at, id`)
	if err != nil || len(states) == 0 {
		return all, err
	}
	return slices.DeleteFunc(all, func(d store.Draft) bool { return !slices.Contains(states, d.State) }), nil
}
