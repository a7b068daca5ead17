package command

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/casebook"
	"example.org/netpost/config"
	"example.org/netpost/index"
)

// errLeave leaves a transaction of the store without changing anything.
var errLeave = errors.New("nothing is to be kept")

// store looks whether the store opens, is whole, and can be written. Where
// there is none yet it is not made, but its folder is tried.
func (x *examination) store(ctx context.Context) {
	path := x.config.Store
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		if err := writable(filepath.Dir(path)); err != nil {
			x.at("store", "name a file in a folder that this program may write to", "%s can't be made: %v", path, err)
			return
		}
		x.good("store", "%s is not there yet; serve makes it", path)
		return
	}
	s, err := sqlite.Open(ctx, path, sqlite.Options{Busy: 2 * time.Second})
	if err == nil {
		defer s.Close()
		err = s.Check(ctx)
	}
	if err == nil {
		err = s.Write(ctx, x.config.Local, func(store.Writer) error { return errLeave })
		if err == errLeave {
			err = nil
		}
	}
	if err != nil {
		f := config.Finding{Path: x.config.File, Field: "store", What: err.Error()}
		if e, ok := errors.AsType[*store.Error](err); ok {
			f.What, f.Mend = e.What, e.Mend
		}
		x.find(f)
		return
	}
	x.good("store", "%s opens, is whole and can be written", path)
	x.posts(ctx, s)
}

// posts tells of those that a person has to decide on.
func (x *examination) posts(ctx context.Context, s store.Store) {
	for _, a := range x.config.Associations {
		var waiting []store.Post
		err := s.Read(ctx, a.ID, func(r store.Reader) (err error) {
			waiting, err = r.Posts(store.Doubt, store.Failed)
			return err
		})
		waiting = slices.DeleteFunc(waiting, func(p store.Post) bool { return !bot.Waiting(p) })
		if err == nil && len(waiting) > 0 {
			x.note("store", "%s: %s of %s may be out or not; a person decides whether to send again: netpost posts", a.ID, count(len(waiting), "post"), x.config.Store)
		}
	}
}

// writable reports why a folder, or the nearest one above it that there is,
// can't be written to.
func writable(dir string) error {
	for {
		i, err := os.Stat(dir)
		if errors.Is(err, fs.ErrNotExist) && dir != filepath.Dir(dir) {
			dir = filepath.Dir(dir)
			continue
		}
		if err != nil {
			return err
		}
		if !i.IsDir() {
			return fmt.Errorf("%s is not a folder", dir)
		}
		break
	}
	f, err := os.CreateTemp(dir, ".netpost-")
	if err != nil {
		if e, ok := errors.AsType[*fs.PathError](err); ok {
			err = e.Err
		}
		return fmt.Errorf("%s: %w", dir, err)
	}
	return errors.Join(f.Close(), os.Remove(f.Name()))
}

// casebooks looks at the notes of every association, and at their index.
func (x *examination) casebooks() {
	for i, a := range x.config.Associations {
		switch {
		case x.config.File == "":
		case a.Casebook == "":
			x.note("notes", "%s has no casebook; its answers come without notes", a.ID)
		default:
			x.casebook(fmt.Sprintf("associations[%d].casebook", i), a)
		}
	}
}

func (x *examination) casebook(field string, a config.Association) {
	if i, err := os.Stat(a.Casebook); err != nil || !i.IsDir() {
		x.at(field, "name the folder that holds the notes", "there is no folder %s", a.Casebook)
		return
	}
	b, found := casebook.LoadDir(a.Casebook, casebook.LoadOptions{})
	found = casebook.All(found, casebook.Check(b, casebook.CheckOptions{Today: casebook.DateOf(time.Now())}))
	if len(found) > 0 {
		x.at(field, "for all, with their lines: netpost check "+a.Casebook, "%s has %s, the first %s", a.Casebook, count(len(found), "finding"), found[0])
	} else {
		x.good("notes", "%s: %s in %s, and every check passes", a.ID, count(len(b.Notes()), "note"), a.Casebook)
	}
	x.index(a)
}

// index looks at the search index on disk. One that is not there, or not
// fresh, is no trouble: serving reads the folder and makes it anew.
func (x *examination) index(a config.Association) {
	dir := indexDir(x.config, a)
	root, err := os.OpenRoot(a.Casebook)
	if err != nil {
		return // told with the notes
	}
	defer root.Close()
	corpus, err := index.Fingerprint(root.FS())
	if err != nil {
		return
	}
	opened, err := index.Open(dir)
	if err == nil {
		defer opened.Close()
	}
	const mend = "it is made anew by serve, or now by: netpost search WORDS"
	switch {
	case err == nil && opened.Corpus() == corpus:
		x.good("index", "%s: %s is there and fresh", a.ID, dir)
	case err == nil:
		x.note("index", "%s: %s is older than the notes; %s", a.ID, dir, mend)
	default:
		why := "it can't be opened"
		for _, e := range []error{index.ErrAbsent, index.ErrStale, index.ErrCorrupt} {
			if errors.Is(err, e) {
				why = e.Error()
			}
		}
		if err := writable(dir); err != nil {
			x.at("index", "name a folder that this program may write to", "%s: %s, and it can't be made: %v", dir, why, err)
			return
		}
		x.note("index", "%s: %s: %s; %s", a.ID, dir, why, mend)
	}
}
