package sqlite

import (
	"fmt"
	"slices"
	"time"

	"example.org/netpost/bot/store"
)

// Queue is part of [store.PostWriter].
func (t *tx) Queue(p store.Post) (bool, error) {
	fresh := p.State == "" && p.Changed.IsZero() && p.By.IsZero() && p.Message == "" && p.Why == ""
	if err := valid("a post", check{p.Key != "", "a key"}, check{!p.Queued.IsZero(), "a time"}, check{fresh, "to be new"}, people(p.To)); err != nil {
		return false, err
	}
	var question any
	if p.Question != "" {
		question = p.Question
	}
	w := p.Where
	n, err := t.exec(`INSERT INTO posts (association, key, question, platform, workspace, channel, thread, recipient, body, queued, state, changed)
		VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?10) ON CONFLICT DO NOTHING`,
		p.Key, question, w.Platform, w.Workspace, w.Channel, w.Thread, person(p.To), p.Body, micros(p.Queued), string(store.Queued))
	return n == 1, err
}

const postColumns = `key, coalesce(question, ''), platform, workspace, channel, thread, recipient, body, queued, state, changed, by, message, why`

func post(s scan) (p store.Post, err error) {
	w := &p.Where
	err = s(&p.Key, &p.Question, &w.Platform, &w.Workspace, &w.Channel, &w.Thread, who{&p.To}, &p.Body, when{&p.Queued},
		&p.State, when{&p.Changed}, who{&p.By}, &p.Message, &p.Why)
	return p, err
}

// Post is part of [store.PostReader].
func (t *tx) Post(key string) (store.Post, error) {
	return one(t, errMissing("post", key), post, `SELECT `+postColumns+` FROM posts WHERE association = ?1 AND key = ?2`, key)
}

// Posts is part of [store.PostReader].
func (t *tx) Posts(states ...store.PostState) ([]store.Post, error) {
	if len(states) == 0 {
		return list(t, post, `SELECT `+postColumns+` FROM posts WHERE association = ?1 ORDER BY queued, key`)
	}
	var all []store.Post
	for i, state := range states {
		if slices.Contains(states[:i], state) {
			continue
		}
		some, err := list(t, post, `SELECT `+postColumns+` FROM posts WHERE association = ?1 AND state = ?2 ORDER BY queued, key`, string(state))
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	slices.SortStableFunc(all, func(a, b store.Post) int {
		if c := a.Queued.Compare(b.Queued); c != 0 {
			return c
		}
		return compare(a.Key, b.Key)
	})
	return all, nil
}

// compare orders texts as SQLite does: by their bytes.
func compare(a, b string) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// move takes a post from one of some states to another.
func (t *tx) move(key string, to store.PostState, at time.Time, by store.Person, message, why string, from ...store.PostState) error {
	if err := valid("a step of a post", check{!at.IsZero(), "a time"}, people(by)); err != nil {
		return err
	}
	p, err := t.Post(key)
	if err != nil {
		return err
	}
	if !slices.Contains(from, p.State) {
		return &store.Error{Code: store.Closed, What: fmt.Sprintf("the post %s is %s and can't become %s", key, states[p.State], states[to])}
	}
	_, err = t.exec(`UPDATE posts SET state = ?3, changed = ?4, by = ?5, message = ?6, why = ?7 WHERE association = ?1 AND key = ?2`,
		key, string(to), micros(at), person(by), message, why)
	return err
}

// states are the states in words.
var states = map[store.PostState]string{
	store.Queued:  "queued",
	store.Marked:  "being sent",
	store.Sent:    "sent",
	store.Doubt:   "in doubt",
	store.Failed:  "failed",
	store.Skipped: "skipped",
}

// Mark is part of [store.PostWriter].
func (t *tx) Mark(key string, at time.Time) error {
	return t.move(key, store.Marked, at, store.Person{}, "", "", store.Queued)
}

// Sent is part of [store.PostWriter].
func (t *tx) Sent(key, message string, at time.Time) error {
	return t.move(key, store.Sent, at, store.Person{}, message, "", store.Marked, store.Doubt)
}

// Failed is part of [store.PostWriter].
func (t *tx) Failed(key, why string, again bool, at time.Time) error {
	to := store.Failed
	if again {
		to = store.Queued
	}
	return t.move(key, to, at, store.Person{}, "", why, store.Marked, store.Doubt)
}

// Unsure is part of [store.PostWriter].
func (t *tx) Unsure(key, why string, at time.Time) error {
	return t.move(key, store.Doubt, at, store.Person{}, "", why, store.Marked)
}

// Resend is part of [store.PostWriter].
func (t *tx) Resend(key string, by store.Person, at time.Time) error {
	return t.decide(key, store.Queued, by, at, store.Doubt, store.Failed)
}

// Skip is part of [store.PostWriter].
func (t *tx) Skip(key string, by store.Person, at time.Time) error {
	return t.decide(key, store.Skipped, by, at, store.Doubt, store.Failed, store.Queued)
}

// decide is a step that only a person takes.
func (t *tx) decide(key string, to store.PostState, by store.Person, at time.Time, from ...store.PostState) error {
	if by.IsZero() {
		return invalid("somebody must decide what becomes of a post")
	}
	return t.move(key, to, at, by, "", "", from...)
}

// Resume is part of [store.PostWriter].
func (t *tx) Resume(at time.Time) (int, error) {
	if err := valid("a start", check{!at.IsZero(), "a time"}); err != nil {
		return 0, err
	}
	return t.exec(`UPDATE posts SET state = ?2, changed = ?4 WHERE association = ?1 AND state = ?3`, string(store.Doubt), string(store.Marked), micros(at))
}

// KeepBulletin is part of [store.PostWriter].
func (t *tx) KeepBulletin(b store.Bulletin) error {
	if err := valid("a bulletin", check{b.ID != "", "an id"}, check{!b.At.IsZero(), "a time"}, people(b.By)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO bulletins (association, id, title, text, span_from, span_to, by, at, data) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9)`,
		b.ID, b.Title, b.Text, micros(b.Span.From), micros(b.Span.To), person(b.By), micros(b.At), b.Data)
	return err
}

const bulletinColumns = `id, title, text, span_from, span_to, by, at, data`

func bulletin(s scan) (b store.Bulletin, err error) {
	err = s(&b.ID, &b.Title, &b.Text, when{&b.Span.From}, when{&b.Span.To}, who{&b.By}, when{&b.At}, &b.Data)
	return b, err
}

// Bulletin is part of [store.PostReader].
func (t *tx) Bulletin(id string) (store.Bulletin, error) {
	return one(t, errMissing("bulletin", id), bulletin, `SELECT `+bulletinColumns+` FROM bulletins WHERE association = ?1 AND id = ?2`, id)
}

// Bulletins is part of [store.PostReader].
func (t *tx) Bulletins() ([]store.Bulletin, error) {
	return list(t, bulletin, `SELECT `+bulletinColumns+` FROM bulletins WHERE association = ?1 ORDER BY at, id`)
}
