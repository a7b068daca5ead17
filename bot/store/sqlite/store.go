// Package sqlite keeps a store in one SQLite file.
//
// The file is in write-ahead mode: beside it lie a log and an index of it with
// the endings -wal and -shm, which belong to it. Other programs may read the
// file while the bot runs. Put it on a local disk and copy it with the tools
// of SQLite, or all three files while the bot is stopped.
package sqlite

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"time"

	_ "modernc.org/sqlite" // the driver

	"example.org/netpost/bot/store"
)

// Options are the settings of a store that few need. The zero value is good.
type Options struct {
	Busy    time.Duration // how long to wait for another program's lock; 0: 5 s
	Readers int           // how many reads run at once; 0: 4
}

// A Store keeps its rows in one file. It has one connection for writes and
// some for reads.
type Store struct {
	path    string
	db      *sql.DB
	writer  chan *conn // holds the connection while nobody writes
	readers chan *conn
	closing chan struct{}
	once    sync.Once
}

var _ store.Store = (*Store)(nil)

// Open opens the store in a file, makes it and its folder where they are not
// there, and brings an older file up to date. What was made can be read by the
// user that runs the program only.
func Open(ctx context.Context, path string, o Options) (*Store, error) {
	if o.Busy == 0 {
		o.Busy = 5 * time.Second
	}
	if o.Readers == 0 {
		o.Readers = 4
	}
	if err := prepare(path); err != nil {
		return nil, err
	}
	dsn, err := dsn(path, o.Busy)
	if err != nil {
		return nil, fail(path, "open", err)
	}
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, fail(path, "open", err)
	}
	s := &Store{
		path: path, db: db,
		writer:  make(chan *conn, 1),
		readers: make(chan *conn, o.Readers),
		closing: make(chan struct{}),
	}
	c, err := s.dial(ctx, "")
	if err == nil {
		err = s.migrate(ctx, c)
	}
	if err != nil {
		db.Close()
		return nil, err
	}
	s.writer <- c
	for range o.Readers {
		s.readers <- nil // dialled when it is needed
	}
	return s, nil
}

// prepare makes the folder and the file, or says plainly why it can't: of
// SQLite we would only hear that the file can't be opened.
func prepare(path string) error {
	if path == "" {
		return &store.Error{Code: store.Invalid, What: "no path is given for the store", Mend: "name a file, such as netpost.db"}
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return fail(path, "open", err)
	}
	info, err := os.Stat(path)
	switch {
	case err == nil && !info.Mode().IsRegular():
		return &store.Error{Code: store.Missing, What: fmt.Sprintf("the store %s is not a file", path), Mend: "name a file, such as " + filepath.Join(path, "netpost.db")}
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return fail(path, "open", err)
	}
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE, 0o600)
	if err != nil {
		return fail(path, "open", err)
	}
	return f.Close()
}

func dsn(path string, busy time.Duration) (string, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return "", err
	}
	abs = filepath.ToSlash(abs)
	if !strings.HasPrefix(abs, "/") {
		abs = "/" + abs
	}
	q := url.Values{"_pragma": {
		fmt.Sprintf("busy_timeout(%d)", busy.Milliseconds()),
		"synchronous(FULL)", // a commit is on the disk when we are told so
		"foreign_keys(ON)",
		"secure_delete(ON)", // what is deleted is overwritten
	}}
	return (&url.URL{Scheme: "file", Path: abs, RawQuery: q.Encode()}).String(), nil
}

// dial makes a connection; pragma, if any, is set on it.
func (s *Store) dial(ctx context.Context, pragma string) (*conn, error) {
	// What a connection is set up with must not be cut short: it would be
	// there, half made, for the next caller.
	ctx = context.WithoutCancel(ctx)
	c, err := s.db.Conn(ctx)
	if err != nil {
		return nil, fail(s.path, "open", err)
	}
	if pragma != "" {
		if _, err := c.ExecContext(ctx, pragma); err != nil {
			c.Close()
			return nil, fail(s.path, "open", err)
		}
	}
	return &conn{Conn: c, stmts: map[string]*sql.Stmt{}}, nil
}

// take takes a connection out of its pool, put gives it back.
func (s *Store) take(ctx context.Context, pool chan *conn, pragma string) (*conn, error) {
	select {
	case <-s.closing: // also when a connection is free
		return nil, errClosed(s.path)
	default:
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	select {
	case <-s.closing:
		return nil, errClosed(s.path)
	case <-ctx.Done():
		return nil, ctx.Err()
	case c := <-pool:
		if c != nil {
			return c, nil
		}
		c, err := s.dial(ctx, pragma)
		if err != nil {
			pool <- nil
		}
		return c, err
	}
}

func (s *Store) put(pool chan *conn, c *conn) {
	if c.broken {
		c.close()
		c = nil
	}
	pool <- c
}

// queryOnly keeps a reader from writing, whatever it is made to run.
const queryOnly = "PRAGMA query_only = ON"

// Read is part of [store.Store].
func (s *Store) Read(ctx context.Context, association string, fn func(store.Reader) error) error {
	if err := named(association); err != nil {
		return err
	}
	c, err := s.take(ctx, s.readers, queryOnly)
	if err != nil {
		return err
	}
	defer s.put(s.readers, c)
	return s.in(ctx, c, "BEGIN", "read", association, func(t *tx) error { return fn(t) })
}

// Write is part of [store.Store].
func (s *Store) Write(ctx context.Context, association string, fn func(store.Writer) error) error {
	if err := named(association); err != nil {
		return err
	}
	c, err := s.take(ctx, s.writer, "")
	if err != nil {
		return err
	}
	defer s.put(s.writer, c)
	return s.in(ctx, c, "BEGIN IMMEDIATE", "write", association, func(t *tx) error {
		if _, err := t.exec(`INSERT INTO associations (id) VALUES (?1) ON CONFLICT DO NOTHING`); err != nil {
			return err
		}
		return fn(t)
	})
}

// in runs fn in a transaction that is committed when fn returns nil and rolled
// back when it does not return, or returns an error.
func (s *Store) in(ctx context.Context, c *conn, begin, doing, association string, fn func(*tx) error) error {
	t := &tx{ctx: ctx, c: c, path: s.path, doing: doing, association: association}
	if err := c.run(ctx, begin); err != nil {
		return t.fail(err)
	}
	// The end of a transaction is not cut short: it would be unknown how it ended.
	end := context.WithoutCancel(ctx)
	committed := false
	defer func() {
		t.done = true
		if !committed {
			c.broken = c.run(end, "ROLLBACK") != nil && !c.idle(end)
		}
	}()
	if err := fn(t); err != nil {
		return err
	}
	if t.err != nil { // an error that fn swallowed may have left half of a change
		return t.err
	}
	if err := c.run(end, "COMMIT"); err != nil {
		return t.fail(err)
	}
	committed = true
	return nil
}

// named refuses an empty association: it would be shared by whoever forgot one.
func named(association string) error {
	if association == "" {
		return &store.Error{Code: store.Invalid, What: "no association is named"}
	}
	return nil
}

// Associations is part of [store.Store].
func (s *Store) Associations(ctx context.Context) ([]string, error) {
	return s.words(ctx, s.readers, queryOnly, "read", `SELECT id FROM associations ORDER BY id`)
}

// Check is part of [store.Store].
func (s *Store) Check(ctx context.Context) error {
	found, err := s.words(ctx, s.readers, queryOnly, "check", `PRAGMA integrity_check(20)`)
	if err != nil {
		return err
	}
	if len(found) != 1 || found[0] != "ok" {
		return errCorrupt(s.path, errors.New(strings.Join(found, "; ")))
	}
	orphans, err := s.words(ctx, s.readers, queryOnly, "check", `SELECT "table" FROM pragma_foreign_key_check`)
	if err != nil {
		return err
	}
	if len(orphans) > 0 {
		return errCorrupt(s.path, fmt.Errorf("%d rows belong to none, the first in %s", len(orphans), orphans[0]))
	}
	return nil
}

// Scrub is part of [store.Store]. The log is written into the file, where what
// was deleted is overwritten, and cut to nothing.
func (s *Store) Scrub(ctx context.Context) error {
	busy, err := s.words(ctx, s.writer, "", "scrub", `PRAGMA wal_checkpoint(TRUNCATE)`)
	if err != nil {
		return err
	}
	if len(busy) == 1 && busy[0] != "0" {
		return errLocked(s.path, errors.New("the log is being read"))
	}
	return nil
}

// words runs a query outside of a transaction and returns its first column.
func (s *Store) words(ctx context.Context, pool chan *conn, pragma, doing, query string) (out []string, err error) {
	c, err := s.take(ctx, pool, pragma)
	if err != nil {
		return nil, err
	}
	defer s.put(pool, c)
	defer func() {
		if err != nil && ctx.Err() == nil {
			err = fail(s.path, doing, err)
		}
	}()
	rows, err := c.QueryContext(ctx, query)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	cols, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	dest := make([]any, len(cols))
	for i := range dest {
		dest[i] = new(any)
	}
	var first string
	dest[0] = &first
	for rows.Next() {
		if err := rows.Scan(dest...); err != nil {
			return nil, err
		}
		out = append(out, first)
	}
	return out, rows.Err()
}

// Close is part of [store.Store].
func (s *Store) Close() error {
	var err error
	s.once.Do(func() {
		close(s.closing)
		for range cap(s.readers) {
			if c := <-s.readers; c != nil {
				c.close()
			}
		}
		if c := <-s.writer; c != nil {
			c.close()
		}
		if e := s.db.Close(); e != nil {
			err = fail(s.path, "close", e)
		}
	})
	return err
}
