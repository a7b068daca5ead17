package sqlite

import (
	"context"
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"strings"
	"time"

	"example.org/netpost/bot/store"
)

// A conn is one connection with the statements that it has prepared. One
// goroutine uses it at a time.
type conn struct {
	*sql.Conn
	stmts  map[string]*sql.Stmt
	broken bool // not to be used again
}

// prepared returns a statement, prepared once a connection.
func (c *conn) prepared(ctx context.Context, query string) (*sql.Stmt, error) {
	if s := c.stmts[query]; s != nil {
		return s, nil
	}
	s, err := c.PrepareContext(ctx, query)
	if err == nil {
		c.stmts[query] = s
	}
	return s, err
}

func (c *conn) run(ctx context.Context, query string) error {
	s, err := c.prepared(ctx, query)
	if err == nil {
		_, err = s.ExecContext(ctx)
	}
	if errors.Is(err, driver.ErrBadConn) || errors.Is(err, sql.ErrConnDone) {
		c.broken = true
	}
	return err
}

// idle reports whether no transaction is open. SQLite ends one by itself on
// some errors, a full disk among them, and has nothing to roll back then.
func (c *conn) idle(ctx context.Context) bool {
	return c.run(ctx, "BEGIN") == nil && c.run(ctx, "ROLLBACK") == nil
}

func (c *conn) close() {
	for _, s := range c.stmts {
		s.Close()
	}
	c.Conn.Close()
}

// A tx is one transaction over the rows of one association. It implements
// [store.Writer]. Every statement has the association as its first argument,
// ?1, and looks at its rows only.
type tx struct {
	ctx         context.Context
	c           *conn
	path        string
	doing       string // for errors
	association string
	done        bool
	err         error // the first error of the disk or the file
}

var _ store.Writer = (*tx)(nil)

var errDone = &store.Error{Code: store.Invalid, What: "the transaction is over", Mend: "use a reader or writer only in the function that it was given to"}

// fail puts an error of SQLite in words, and keeps it.
func (t *tx) fail(err error) error {
	if e := t.ctx.Err(); e != nil {
		err = e
	} else {
		err = fail(t.path, t.doing, err)
	}
	if c := store.CodeOf(err); t.err == nil && (c == "" || c.Operational()) {
		t.err = err
	}
	return err
}

func (t *tx) stmt(query string) (*sql.Stmt, error) {
	if t.done {
		return nil, errDone
	}
	if !strings.Contains(query, "?1") {
		panic("sqlite: a statement over all associations: " + query)
	}
	s, err := t.c.prepared(t.ctx, query)
	if err != nil {
		return nil, t.fail(err)
	}
	return s, nil
}

// exec runs a statement and returns how many rows it changed, not counting
// those that went with them.
func (t *tx) exec(query string, args ...any) (int, error) {
	s, err := t.stmt(query)
	if err != nil {
		return 0, err
	}
	r, err := s.ExecContext(t.ctx, t.args(args)...)
	if err != nil {
		return 0, t.fail(err)
	}
	n, err := r.RowsAffected()
	if err != nil {
		return 0, t.fail(err)
	}
	return int(n), nil
}

func (t *tx) args(args []any) []any { return append([]any{t.association}, args...) }

// A scan reads the columns of one row.
type scan func(dest ...any) error

// list runs a query and reads its rows.
func list[T any](t *tx, read func(scan) (T, error), query string, args ...any) ([]T, error) {
	s, err := t.stmt(query)
	if err != nil {
		return nil, err
	}
	rows, err := s.QueryContext(t.ctx, t.args(args)...)
	if err != nil {
		return nil, t.fail(err)
	}
	defer rows.Close()
	var out []T
	for rows.Next() {
		v, err := read(rows.Scan)
		if err != nil {
			return nil, t.fail(err)
		}
		out = append(out, v)
	}
	if err := rows.Err(); err != nil {
		return nil, t.fail(err)
	}
	return out, nil
}

// one runs a query for one row; where there is none it is the error missing.
func one[T any](t *tx, missing error, read func(scan) (T, error), query string, args ...any) (T, error) {
	all, err := list(t, read, query, args...)
	if err == nil && len(all) == 0 {
		err = missing
	}
	if err != nil {
		var none T
		return none, err
	}
	return all[0], nil
}

// word reads a row of one text, count a row of one number.
func word(s scan) (v string, err error) { err = s(&v); return }
func count(s scan) (v int, err error)   { err = s(&v); return }

// known is an error unless there is such a question, call and so on.
func (t *tx) known(what, table, id string) error {
	_, err := one(t, errMissing(what, id), count, `SELECT 1 FROM `+table+` WHERE association = ?1 AND id = ?2`, id)
	return err
}

// micros writes a time, and reads it.
func micros(t time.Time) int64 {
	if t.IsZero() {
		return 0
	}
	return t.UnixMicro()
}

// A when reads a time.
type when struct{ *time.Time }

func (w when) Scan(v any) error {
	n, ok := v.(int64)
	if !ok {
		return fmt.Errorf("a time is a number, not a %T", v)
	}
	*w.Time = time.Time{}
	if n != 0 {
		*w.Time = time.UnixMicro(n).UTC()
	}
	return nil
}

// person writes somebody as platform/id.
func person(p store.Person) string {
	if p.IsZero() {
		return ""
	}
	return p.Platform + "/" + p.ID
}

// A who reads somebody.
type who struct{ *store.Person }

func (w who) Scan(v any) error {
	s, ok := v.(string)
	if !ok {
		return fmt.Errorf("a person is a text, not a %T", v)
	}
	platform, id, _ := strings.Cut(s, "/")
	*w.Person = store.Person{Platform: platform, ID: id}
	return nil
}

// bounds writes a span, as its first and last microsecond.
func bounds(s store.Span) (from, to int64) {
	from, to = -1<<63, 1<<63-1
	if !s.From.IsZero() {
		from = s.From.UnixMicro()
	}
	if !s.To.IsZero() {
		to = s.To.UnixMicro() - 1
	}
	return from, to
}
