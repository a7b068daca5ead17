package sqlite

import (
	"time"

	"example.org/netpost/bot/store"
)

// Log is part of [store.AuditWriter].
func (t *tx) Log(e store.Entry) error {
	if err := valid("an entry", check{e.Did != "", "what was done"}, check{!e.At.IsZero(), "a time"}, people(e.Who, e.About)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO audit (association, at, who, did, object, about, details) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)`,
		micros(e.At), person(e.Who), e.Did, e.To, person(e.About), e.Details)
	return err
}

// Trail is part of [store.AuditReader].
func (t *tx) Trail(in store.Span) ([]store.Entry, error) {
	from, to := bounds(in)
	return list(t, func(s scan) (e store.Entry, err error) {
		err = s(when{&e.At}, who{&e.Who}, &e.Did, &e.To, who{&e.About}, &e.Details)
		return e, err
	}, `SELECT at, who, did, object, about, details FROM audit WHERE association = ?1 AND at BETWEEN ?2 AND ?3 ORDER BY seq`, from, to)
}

// Purge is part of [store.AuditWriter].
func (t *tx) Purge(before, now time.Time) (d store.Deleted, err error) {
	if err := valid("a purge", check{!before.IsZero() && !now.IsZero() && !before.After(now), "a time that is past"}); err != nil {
		return d, err
	}
	old, at := micros(before), micros(now)
	for _, s := range []struct {
		n     *int
		query string
		args  []any
	}{
		{&d.Questions, `DELETE FROM questions WHERE association = ?1 AND asked < ?2`, []any{old}},
		{&d.Drafts, `DELETE FROM drafts WHERE association = ?1 AND at < ?2`, []any{old}},
		{&d.Posts, `UPDATE posts SET body = NULL, recipient = '', by = '', why = '', changed = ?3,
			state = CASE state WHEN 'sent' THEN 'sent' ELSE 'skipped' END
			WHERE association = ?1 AND queued < ?2 AND (body IS NOT NULL OR state NOT IN ('sent', 'skipped'))`, []any{old, at}},
		{&d.Entries, `DELETE FROM audit WHERE association = ?1 AND at < ?2`, []any{old}},
		{&d.Deliveries, `DELETE FROM deliveries WHERE association = ?1 AND expires <= ?2`, []any{at}},
	} {
		if *s.n, err = t.exec(s.query, s.args...); err != nil {
			return store.Deleted{}, err
		}
	}
	return d, nil
}
