package sqlite

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"syscall"

	driver "modernc.org/sqlite"
	lib "modernc.org/sqlite/lib"

	"example.org/netpost/bot/store"
)

// fail puts an error of the disk or of SQLite in two parts. Errors of ours and
// of a context stay as they are.
func fail(path, doing string, err error) error {
	if err == nil || store.CodeOf(err) != "" || errors.Is(err, context.Canceled) || errors.Is(err, context.DeadlineExceeded) {
		return err
	}
	switch {
	case errors.Is(err, syscall.ENOSPC):
		return errFull(path, err)
	case errors.Is(err, fs.ErrPermission), errors.Is(err, syscall.EROFS):
		return errReadOnly(path, err)
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, syscall.ENOTDIR):
		return errCantOpen(path, err)
	}
	e, ok := errors.AsType[*driver.Error](err)
	if !ok {
		return errUnexpected(path, doing, err)
	}
	switch e.Code() {
	case lib.SQLITE_CONSTRAINT_FOREIGNKEY:
		return &store.Error{Code: store.NotFound, What: "what this belongs to is gone", Mend: "ask again", Cause: err}
	case lib.SQLITE_CONSTRAINT_PRIMARYKEY, lib.SQLITE_CONSTRAINT_UNIQUE:
		return &store.Error{Code: store.Exists, What: "there is one of that id already", Cause: err}
	}
	switch e.Code() & 0xff {
	case lib.SQLITE_FULL:
		return errFull(path, err)
	case lib.SQLITE_BUSY, lib.SQLITE_LOCKED:
		return errLocked(path, err)
	case lib.SQLITE_CORRUPT, lib.SQLITE_NOTADB:
		return errCorrupt(path, err)
	case lib.SQLITE_READONLY, lib.SQLITE_PERM, lib.SQLITE_AUTH:
		return errReadOnly(path, err)
	case lib.SQLITE_CANTOPEN:
		return errCantOpen(path, err)
	case lib.SQLITE_IOERR:
		return &store.Error{
			Code: store.Disk, Cause: err,
			What: fmt.Sprintf("the disk gave an error at the store %s", path),
			Mend: "look at the system's log for the disk; what was confirmed before is kept",
		}
	case lib.SQLITE_TOOBIG:
		return &store.Error{Code: store.Invalid, What: "the text is too long to be kept", Mend: "shorten it", Cause: err}
	}
	return errUnexpected(path, doing, err)
}

func errFull(path string, cause error) error {
	return &store.Error{
		Code: store.Full, Cause: cause,
		What: fmt.Sprintf("the disk that holds the store %s is full, so nothing new can be kept", path),
		Mend: "free some space on it and try again; what was confirmed before is kept",
	}
}

func errLocked(path string, cause error) error {
	return &store.Error{
		Code: store.Locked, Cause: cause,
		What: fmt.Sprintf("another program holds the store %s", path),
		Mend: "try again in a moment; if that does not help, end the other program that has the file open",
	}
}

func errCorrupt(path string, cause error) error {
	return &store.Error{
		Code: store.Corrupt, Cause: cause,
		What: fmt.Sprintf("the store %s is damaged, or is not a store", path),
		Mend: fmt.Sprintf("stop the program, keep the file and its %s and %s aside, and put a backup in its place, or name another file", filepath.Base(path)+"-wal", filepath.Base(path)+"-shm"),
	}
}

func errReadOnly(path string, cause error) error {
	return &store.Error{
		Code: store.ReadOnly, Cause: cause,
		What: fmt.Sprintf("the store %s can't be written", path),
		Mend: fmt.Sprintf("let the user that runs this program write the file and its folder %s, or name a file elsewhere", filepath.Dir(path)),
	}
}

func errCantOpen(path string, cause error) error {
	return &store.Error{
		Code: store.Missing, Cause: cause,
		What: fmt.Sprintf("the store %s can't be opened", path),
		Mend: fmt.Sprintf("see that %s is a folder that the user that runs this program can write, or name a file elsewhere", filepath.Dir(path)),
	}
}

func errNewer(path string, is, want int) error {
	return &store.Error{
		Code: store.Newer,
		What: fmt.Sprintf("the store %s is of version %d, and this program knows %d", path, is, want),
		Mend: "run the newer program, or name another file",
	}
}

func errUnexpected(path, doing string, cause error) error {
	return &store.Error{
		Code: store.Unexpected, Cause: cause,
		What: fmt.Sprintf("to %s the store %s failed", doing, path),
		Mend: "try again; the log says more",
	}
}

func errClosed(path string) error {
	return &store.Error{Code: store.Closed, What: fmt.Sprintf("the store %s is closed", path), Mend: "start the program again"}
}

func errMissing(what, id string) error {
	return &store.Error{Code: store.NotFound, What: fmt.Sprintf("there is no %s %q any more", what, id), Mend: "ask again"}
}

func invalid(format string, args ...any) error {
	return &store.Error{Code: store.Invalid, What: fmt.Sprintf(format, args...)}
}
