package index

import (
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
	"time"

	"example.org/netpost/casebook"
)

// A look is what a glance at a folder shows: each file of the casebook, by path.
type look map[string]glance

type glance struct {
	size    int64
	changed time.Time
}

func (l look) equal(m look) bool { return m != nil && maps.Equal(l, m) }

// empty reports whether there is no note in it.
func (l look) empty() bool {
	for path := range l {
		if path != casebook.BookFile {
			return false
		}
	}
	return true
}

// folder is a casebook on disk as it was last read, file by file, so that a change costs
// the reading of the files that changed.
type folder struct {
	dir   string
	taken look // as last read
	files map[string]file
	book  *casebook.Book
	after map[string][]string // successors, by id
	// whole are the findings of the last full reading, kept while an id stands twice: one
	// file alone does not show that.
	whole []casebook.Finding
}

// file is one file as last read. Note is the last good one: it outlives a bad edit.
type file struct {
	note     *casebook.Note
	findings []casebook.Finding
}

func newFolder(dir string) *folder {
	return &folder{dir: dir, files: map[string]file{}, book: casebook.NewBook(nil, nil)}
}

func (f *folder) clone() *folder {
	c := *f
	c.files = maps.Clone(f.files)
	return &c
}

// look glances at the folder. It fails when the folder itself can't be read.
func (f *folder) look() (look, error) {
	root, err := os.OpenRoot(f.dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	out := look{}
	err = walkNotes(root.FS(), func(p string, info fs.FileInfo) error {
		if info == nil {
			out[p] = glance{size: -1}
			return nil
		}
		out[p] = glance{info.Size(), info.ModTime()}
		return nil
	})
	return out, err
}

// walkNotes visits every file that can be a note, and the association's own book, in the
// order of their paths. Info is nil where the file can't be looked at. It fails when the
// folder itself can't be read.
func walkNotes(fsys fs.FS, visit func(p string, info fs.FileInfo) error) error {
	return fs.WalkDir(fsys, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			if p == "." {
				return err
			}
			if d != nil && d.IsDir() {
				return fs.SkipDir
			}
			return visit(p, nil)
		}
		if name := d.Name(); p != "." && (name[0] == '.' || name[0] == '_') {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if d.IsDir() || !strings.HasSuffix(p, ".md") && p != casebook.BookFile {
			return nil
		}
		info, err := d.Info()
		if err != nil {
			info = nil
		}
		return visit(p, info)
	})
}

// update reads the files that differ from what was taken before and gives what changed by
// it: the ids whose notes are to be indexed again, and those that are gone.
func (f *folder) update(now look) (Change, error) {
	root, err := os.OpenRoot(f.dir)
	if err != nil {
		return Change{}, err
	}
	defer root.Close()
	fresh := map[string]bool{}
	for path, g := range now {
		if old, ok := f.taken[path]; !ok || old != g {
			fresh[path] = true
		}
	}
	association := f.book.Association
	if len(fresh) > 0 {
		read, findings := casebook.Load(onlyFS{root.FS(), fresh}, casebook.LoadOptions{})
		if fresh[casebook.BookFile] && read.Association != nil {
			association = read.Association
		}
		next := map[string]file{}
		for path := range fresh {
			next[path] = file{note: f.files[path].note} // the last good one
		}
		for _, n := range read.Notes() {
			next[n.Path] = file{note: n}
		}
		for _, x := range findings {
			if g, ok := next[x.Path]; ok {
				g.findings = append(g.findings, x)
				next[x.Path] = g
			}
		}
		maps.Copy(f.files, next)
	}
	if _, ok := now[casebook.BookFile]; !ok {
		association = nil
	}
	maps.DeleteFunc(f.files, func(path string, _ file) bool { _, ok := now[path]; return !ok })

	before, beforeAfter := f.book, f.after
	f.take(association)
	f.whole = nil
	if len(f.book.Notes()) < f.notes() {
		_, f.whole = casebook.Load(root.FS(), casebook.LoadOptions{})
	}
	f.taken = now

	c := Change{Findings: f.findings()}
	for _, n := range f.book.Notes() {
		if before.Note(n.ID) != n || association != before.Association || !slices.Equal(beforeAfter[n.ID], f.after[n.ID]) {
			c.Updated = append(c.Updated, n.ID)
		}
	}
	for _, n := range before.Notes() {
		if f.book.Note(n.ID) == nil {
			c.Removed = append(c.Removed, n.ID)
		}
	}
	return c, nil
}

// take makes the book anew from the files.
func (f *folder) take(a *casebook.Association) {
	var notes []*casebook.Note
	for _, path := range slices.Sorted(maps.Keys(f.files)) {
		if n := f.files[path].note; n != nil {
			notes = append(notes, n)
		}
	}
	f.book = casebook.NewBook(notes, a)
	f.after = successors(f.book.Notes())
}

// notes counts the files that have a note.
func (f *folder) notes() (n int) {
	for _, x := range f.files {
		if x.note != nil {
			n++
		}
	}
	return n
}

// findings lists all that is wrong in the folder, in the order of the files.
func (f *folder) findings() []casebook.Finding {
	if f.whole != nil {
		return f.whole
	}
	var out []casebook.Finding
	for _, path := range slices.Sorted(maps.Keys(f.files)) {
		out = append(out, f.files[path].findings...)
	}
	return out
}

// onlyFS shows a few files of a folder and hides the rest from whoever lists it.
type onlyFS struct {
	fs.FS
	keep map[string]bool
}

func (o onlyFS) ReadDir(name string) ([]fs.DirEntry, error) {
	entries, err := fs.ReadDir(o.FS, name)
	return slices.DeleteFunc(entries, func(e fs.DirEntry) bool { return !e.IsDir() && !o.keep[path.Join(name, e.Name())] }), err
}

func (o onlyFS) Stat(name string) (fs.FileInfo, error)  { return fs.Stat(o.FS, name) }
func (o onlyFS) Lstat(name string) (fs.FileInfo, error) { return fs.Lstat(o.FS, name) }
func (o onlyFS) ReadLink(name string) (string, error)   { return fs.ReadLink(o.FS, name) }
