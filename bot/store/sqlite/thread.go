package sqlite

import "example.org/netpost/bot/store"

// SetThread is part of [store.QuestionWriter].
func (t *tx) SetThread(h store.Thread) error {
	if err := valid("a thread", check{h.Where.Thread != "", "the id of a thread"}, check{h.Role == store.Asked || h.Role == store.Mentors || h.Role == store.Together, "a role"}, check{!h.At.IsZero(), "a time"}); err != nil {
		return err
	}
	w := h.Where
	_, err := t.exec(`INSERT INTO threads (association, platform, workspace, channel, thread, question, role, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)
		ON CONFLICT DO UPDATE SET question = excluded.question, role = excluded.role, at = excluded.at`,
		w.Platform, w.Workspace, w.Channel, w.Thread, h.Question, string(h.Role), micros(h.At))
	return err
}

const threadColumns = `platform, workspace, channel, thread, question, role, at`

func thread(s scan) (h store.Thread, err error) {
	w := &h.Where
	err = s(&w.Platform, &w.Workspace, &w.Channel, &w.Thread, &h.Question, &h.Role, when{&h.At})
	return h, err
}

// Thread is part of [store.QuestionReader].
func (t *tx) Thread(p store.Place) (store.Thread, error) {
	return one(t, &store.Error{Code: store.NotFound, What: "this thread is about no question"}, thread,
		`SELECT `+threadColumns+` FROM threads WHERE association = ?1 AND platform = ?2 AND workspace = ?3 AND channel = ?4 AND thread = ?5`,
		p.Platform, p.Workspace, p.Channel, p.Thread)
}

// Threads is part of [store.QuestionReader].
func (t *tx) Threads(question string) ([]store.Thread, error) {
	return list(t, thread, `SELECT `+threadColumns+` FROM threads WHERE association = ?1 AND question = ?2 ORDER BY at, platform, workspace, channel, thread`, question)
}

// KeepButton is part of [store.QuestionWriter].
func (t *tx) KeepButton(b store.Button) error {
	if err := valid("a button", check{b.ID != "", "an id"}, check{!b.At.IsZero(), "a time"}); err != nil {
		return err
	}
	n, err := t.exec(`INSERT INTO buttons (association, id, question, action, at) VALUES (?1, ?2, ?3, ?4, ?5)
		ON CONFLICT DO UPDATE SET at = excluded.at WHERE question = excluded.question AND action = excluded.action`,
		b.ID, b.Question, b.Action, micros(b.At))
	if err == nil && n == 0 {
		err = &store.Error{Code: store.Exists, What: "there is another button of that id already"}
	}
	return err
}

// Button is part of [store.QuestionReader].
func (t *tx) Button(id string) (store.Button, error) {
	return one(t, &store.Error{Code: store.NotFound, What: "the question of this button is gone", Mend: "ask it again"},
		func(s scan) (b store.Button, err error) {
			err = s(&b.ID, &b.Question, &b.Action, when{&b.At})
			return b, err
		},
		`SELECT id, question, action, at FROM buttons WHERE association = ?1 AND id = ?2`, id)
}
