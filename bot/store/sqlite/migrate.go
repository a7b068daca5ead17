package sqlite

import (
	"context"
	"embed"
	"fmt"
	"io/fs"

	"example.org/netpost/bot/store"
)

// The steps from an empty file to today's tables, in the order of their names.
// A step that was released is never changed; a new one is added at the end.
//
//go:embed migrations/*.sql
var migrations embed.FS

// application marks a file as a store of ours: "ntps".
const application = 0x6e747073

// A step is one migration.
type step struct{ name, sql string }

func steps() ([]step, error) {
	files, err := fs.Glob(migrations, "migrations/*.sql") // sorted
	if err != nil {
		return nil, err
	}
	var all []step
	for _, f := range files {
		text, err := migrations.ReadFile(f)
		if err != nil {
			return nil, err
		}
		all = append(all, step{f, string(text)})
	}
	return all, nil
}

// migrate takes the file through the steps that it lacks, all or none.
func (s *Store) migrate(ctx context.Context, c *conn) error {
	all, err := steps()
	if err != nil {
		return fail(s.path, "open", err)
	}
	return s.upgrade(ctx, c, all)
}

func (s *Store) upgrade(ctx context.Context, c *conn, all []step) (err error) {
	defer func() { err = fail(s.path, "open", err) }()
	// Looked at before anything is changed: the file may not be ours.
	version, err := s.version(ctx, c, len(all))
	if err != nil {
		return err
	}
	var mode string
	if err := c.QueryRowContext(ctx, "PRAGMA journal_mode = WAL").Scan(&mode); err != nil {
		return err
	}
	if mode != "wal" {
		return &store.Error{
			Code: store.Disk, Cause: fmt.Errorf("journal mode %s", mode),
			What: fmt.Sprintf("the disk that holds the store %s can't be shared between programs", s.path),
			Mend: "put the store on a local disk",
		}
	}
	if version == len(all) {
		return nil
	}
	if err := c.run(ctx, "BEGIN IMMEDIATE"); err != nil {
		return err
	}
	defer func() {
		if err != nil { // SQLite may have rolled back by itself; the first error says why
			_ = c.run(context.WithoutCancel(ctx), "ROLLBACK")
		}
	}()
	// Looked at again: another program may have been faster.
	if version, err = s.version(ctx, c, len(all)); err != nil {
		return err
	}
	for _, st := range all[version:] {
		if _, err := c.ExecContext(ctx, st.sql); err != nil {
			return fmt.Errorf("%s: %w", st.name, err)
		}
	}
	_, err = c.ExecContext(ctx, fmt.Sprintf("PRAGMA application_id = %d; PRAGMA user_version = %d", application, len(all)))
	if err != nil {
		return err
	}
	return c.run(ctx, "COMMIT")
}

// version is how many steps the file has seen. It is an error when the file
// is not ours, or has seen more than we know.
func (s *Store) version(ctx context.Context, c *conn, known int) (int, error) {
	var app, version, tables int
	for query, n := range map[string]*int{
		"PRAGMA application_id":              &app,
		"PRAGMA user_version":                &version,
		"SELECT count(*) FROM sqlite_schema": &tables,
	} {
		if err := c.QueryRowContext(ctx, query).Scan(n); err != nil {
			return 0, err
		}
	}
	switch {
	case app != application && (app != 0 || version != 0 || tables > 0):
		return 0, &store.Error{
			Code: store.Corrupt,
			What: fmt.Sprintf("the file %s belongs to another program", s.path),
			Mend: "name another file for the store; this one was left as it is",
		}
	case version > known:
		return 0, errNewer(s.path, version, known)
	}
	return version, nil
}
