package sqlite

import (
	"fmt"
	"strings"
	"time"

	"example.org/netpost/bot/store"
)

// checks are what a row must have. The first that fails is the error.
type check struct {
	ok   bool
	what string
}

func valid(row string, checks ...check) error {
	for _, c := range checks {
		if !c.ok {
			return invalid("%s needs %s", row, c.what)
		}
	}
	return nil
}

// people checks that somebody can be written as platform/id.
func people(all ...store.Person) check {
	for _, p := range all {
		if !p.IsZero() && (p.Platform == "" || p.ID == "" || strings.Contains(p.Platform, "/")) {
			return check{false, fmt.Sprintf("a platform without a slash and an id for a person, not %q and %q", p.Platform, p.ID)}
		}
	}
	return check{ok: true}
}

// Deliver is part of [store.QuestionWriter].
func (t *tx) Deliver(key string, now, expires time.Time) (bool, error) {
	if err := valid("a delivery", check{key != "", "a key"}, check{now.Before(expires), "to expire after it came"}); err != nil {
		return false, err
	}
	n, err := t.exec(`INSERT INTO deliveries (association, key, expires) VALUES (?1, ?2, ?4)
		ON CONFLICT DO UPDATE SET expires = excluded.expires WHERE expires <= ?3`,
		key, micros(now), micros(expires))
	return n == 1, err
}

// Ask is part of [store.QuestionWriter].
func (t *tx) Ask(q store.Question) error {
	if err := valid("a question", check{q.ID != "", "an id"}, check{!q.Asked.IsZero(), "a time"}, people(q.Asker)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO questions (association, id, asker, platform, workspace, channel, thread, text, code, season, private, asked)
		VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12)`,
		q.ID, person(q.Asker), q.Where.Platform, q.Where.Workspace, q.Where.Channel, q.Where.Thread,
		q.Text, q.Code, q.Season, q.Private, micros(q.Asked))
	if err != nil || q.Answer.IsZero() {
		return err
	}
	return t.Answer(q.ID, q.Answer)
}

// Answer is part of [store.QuestionWriter].
func (t *tx) Answer(question string, a store.Answer) error {
	for _, tag := range a.Tags {
		switch tag.Kind {
		case store.Topic, store.Deciding, store.Unread, store.Linked:
		default:
			return invalid("an answer has no tag of kind %q", tag.Kind)
		}
	}
	n, err := t.exec(`UPDATE questions SET message = ?3, play = ?4, outcome = ?5, ruling = ?6, answered = ?7 WHERE association = ?1 AND id = ?2`,
		question, a.Message, a.Play, a.Outcome, a.Ruling, micros(a.At))
	if err == nil && n == 0 {
		err = errMissing("question", question)
	}
	if err == nil {
		_, err = t.exec(`DELETE FROM tags WHERE association = ?1 AND question = ?2`, question)
	}
	for _, tag := range a.Tags {
		if err == nil {
			_, err = t.exec(`INSERT INTO tags (association, question, kind, value) VALUES (?1, ?2, ?3, ?4) ON CONFLICT DO NOTHING`, question, string(tag.Kind), tag.Value)
		}
	}
	return err
}

const questionColumns = `id, asker, platform, workspace, channel, thread, text, code, season, private, asked, message, play, outcome, ruling, answered`

func question(s scan) (q store.Question, err error) {
	w, a := &q.Where, &q.Answer
	err = s(&q.ID, who{&q.Asker}, &w.Platform, &w.Workspace, &w.Channel, &w.Thread, &q.Text, &q.Code, &q.Season, &q.Private, when{&q.Asked},
		&a.Message, &a.Play, &a.Outcome, &a.Ruling, when{&a.At})
	return q, err
}

// Question is part of [store.QuestionReader].
func (t *tx) Question(id string) (store.Question, error) {
	q, err := one(t, errMissing("question", id), question, `SELECT `+questionColumns+` FROM questions WHERE association = ?1 AND id = ?2`, id)
	if err != nil {
		return q, err
	}
	q.Answer.Tags, err = t.tags(id)
	return q, err
}

// Questions is part of [store.QuestionReader].
func (t *tx) Questions(in store.Span) ([]store.Question, error) {
	from, to := bounds(in)
	all, err := list(t, question, `SELECT `+questionColumns+` FROM questions WHERE association = ?1 AND asked BETWEEN ?2 AND ?3 ORDER BY asked, id`, from, to)
	if err != nil {
		return nil, err
	}
	at := make(map[string]int, len(all))
	for i, q := range all {
		at[q.ID] = i
	}
	_, err = list(t, func(s scan) (none struct{}, err error) {
		var id string
		var tag store.Tag
		if err = s(&id, &tag.Kind, &tag.Value); err == nil {
			a := &all[at[id]].Answer
			a.Tags = append(a.Tags, tag)
		}
		return none, err
	}, `SELECT question, kind, value FROM questions CROSS JOIN tags ON tags.association = ?1 AND question = id
		WHERE questions.association = ?1 AND asked BETWEEN ?2 AND ?3 ORDER BY asked, id, kind, value`, from, to)
	return all, err
}

// QuestionsAfter is part of [store.QuestionReader].
func (t *tx) QuestionsAfter(asked time.Time, id string, most int) ([]store.Question, error) {
	all, err := list(t, question, `SELECT `+questionColumns+` FROM questions WHERE association = ?1 AND (asked, id) > (?2, ?3) ORDER BY asked, id LIMIT ?4`,
		micros(asked), id, most)
	for i := range all {
		if err == nil {
			all[i].Answer.Tags, err = t.tags(all[i].ID)
		}
	}
	return all, err
}

func (t *tx) tags(question string) ([]store.Tag, error) {
	return list(t, func(s scan) (tag store.Tag, err error) {
		err = s(&tag.Kind, &tag.Value)
		return tag, err
	}, `SELECT kind, value FROM tags WHERE association = ?1 AND question = ?2 ORDER BY kind, value`, question)
}

// Tally is part of [store.QuestionReader].
func (t *tx) Tally(kind store.TagKind, in store.Span, atLeast int) ([]store.Count, error) {
	from, to := bounds(in)
	read := func(s scan) (c store.Count, err error) { err = s(&c.Value, &c.Questions, &c.Askers); return c, err }
	const most = ` GROUP BY 1 HAVING count(DISTINCT who) >= ?4 ORDER BY 2 DESC, 1`
	if kind == store.Disputed {
		return list(t, read, `SELECT about, count(DISTINCT question), count(DISTINCT who)
			FROM (SELECT CASE instr(about, '@') WHEN 0 THEN about ELSE substr(about, 1, instr(about, '@') - 1) END AS about,
				question, by AS who FROM calls JOIN questions ON questions.association = ?1 AND questions.id = question
				WHERE calls.association = ?1 AND calls.kind = ?5 AND about <> '' AND closed = 0 AND asked BETWEEN ?2 AND ?3)`+most,
			from, to, atLeast, string(store.Disagree))
	}
	return list(t, read, `SELECT value, count(*), count(DISTINCT who)
		FROM (SELECT value, asker AS who FROM questions CROSS JOIN tags ON tags.association = ?1 AND question = id AND kind = ?5
			WHERE questions.association = ?1 AND asked BETWEEN ?2 AND ?3)`+most,
		from, to, atLeast, string(kind))
}

// Give is part of [store.QuestionWriter].
func (t *tx) Give(g store.Given) error {
	if err := valid("a fact given", check{g.Fact != "", "a fact"}, check{!g.At.IsZero(), "a time"}, check{g.Undone.IsZero() && g.UndoneBy.IsZero(), "to stand"}, people(g.By)); err != nil {
		return err
	}
	if err := t.known("question", "questions", g.Question); err != nil {
		return err
	}
	if g.View != "" {
		if err := t.knownView(g.Question, g.View); err != nil {
			return err
		}
	}
	_, err := t.exec(`INSERT INTO given (association, question, view, fact, event, value, by, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8)`,
		g.Question, g.View, g.Fact, g.Event, g.Value, person(g.By), micros(g.At))
	return err
}

func (t *tx) knownView(question, view string) error {
	_, err := one(t, errMissing("view", view), count, `SELECT 1 FROM views WHERE association = ?1 AND question = ?2 AND id = ?3`, question, view)
	return err
}

// Undo is part of [store.QuestionWriter].
func (t *tx) Undo(question, view string, by store.Person, at time.Time) (store.Given, error) {
	if err := valid("taking back", check{!at.IsZero(), "a time"}, people(by)); err != nil {
		return store.Given{}, err
	}
	nothing := &store.Error{Code: store.NotFound, What: "no fact is left to take back"}
	seq, err := one(t, nothing, count, `SELECT seq FROM given WHERE association = ?1 AND question = ?2 AND view = ?3 AND undone = 0 ORDER BY seq DESC LIMIT 1`, question, view)
	if err != nil {
		return store.Given{}, err
	}
	if _, err := t.exec(`UPDATE given SET undone = ?3, undone_by = ?4 WHERE association = ?1 AND seq = ?2`, seq, micros(at), person(by)); err != nil {
		return store.Given{}, err
	}
	return one(t, nothing, given, `SELECT `+givenColumns+` FROM given WHERE association = ?1 AND seq = ?2`, seq)
}

const givenColumns = `question, view, fact, event, value, by, at, undone, undone_by`

func given(s scan) (g store.Given, err error) {
	err = s(&g.Question, &g.View, &g.Fact, &g.Event, &g.Value, who{&g.By}, when{&g.At}, when{&g.Undone}, who{&g.UndoneBy})
	return g, err
}

// Given is part of [store.QuestionReader].
func (t *tx) Given(question string) ([]store.Given, error) {
	return list(t, given, `SELECT `+givenColumns+` FROM given WHERE association = ?1 AND question = ?2 AND undone = 0 ORDER BY seq`, question)
}

// History is part of [store.QuestionReader].
func (t *tx) History(question string) ([]store.Given, error) {
	return list(t, given, `SELECT `+givenColumns+` FROM given WHERE association = ?1 AND question = ?2 ORDER BY seq`, question)
}

// SeeAs is part of [store.QuestionWriter].
func (t *tx) SeeAs(v store.View) error {
	if err := valid("a view", check{v.ID != "", "an id"}, check{!v.At.IsZero(), "a time"}, check{v.Handed.IsZero(), "to be new"}, people(v.By)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO views (association, question, id, by, private, name, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)`,
		v.Question, v.ID, person(v.By), v.Private, v.Name, micros(v.At))
	return err
}

// HandIn is part of [store.QuestionWriter].
func (t *tx) HandIn(question, view string, private bool, at time.Time) error {
	if err := valid("handing in", check{!at.IsZero(), "a time"}); err != nil {
		return err
	}
	n, err := t.exec(`UPDATE views SET private = ?4, handed = CASE handed WHEN 0 THEN ?5 ELSE handed END WHERE association = ?1 AND question = ?2 AND id = ?3`,
		question, view, private, micros(at))
	if err == nil && n == 0 {
		err = errMissing("view", view)
	}
	return err
}

// NameInView is part of [store.QuestionWriter].
func (t *tx) NameInView(question, view, name string) error {
	n, err := t.exec(`UPDATE views SET name = ?4 WHERE association = ?1 AND question = ?2 AND id = ?3`, question, view, name)
	if err == nil && n == 0 {
		err = errMissing("view", view)
	}
	return err
}

// Views is part of [store.QuestionReader].
func (t *tx) Views(question string) ([]store.View, error) {
	return list(t, func(s scan) (v store.View, err error) {
		err = s(&v.Question, &v.ID, who{&v.By}, &v.Private, &v.Name, when{&v.At}, when{&v.Handed})
		return v, err
	}, `SELECT question, id, by, private, name, at, handed FROM views WHERE association = ?1 AND question = ?2 ORDER BY seq`, question)
}
