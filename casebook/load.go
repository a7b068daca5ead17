package casebook

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"unicode/utf8"
)

// Limits of a folder.
const (
	DefaultMaxBytes = 1 << 20 // of one note
	maxFiles        = 200_000 // of a folder, so that a wrong one is not walked for ever
)

// LoadOptions say how much a folder may hold. The zero value is the default.
type LoadOptions struct {
	MaxBytes int64 // largest note, in bytes; zero: DefaultMaxBytes
}

// LoadDir loads a folder of the disk. Links that lead out of it are refused by
// the system itself.
func LoadDir(dir string, o LoadOptions) (*Book, []Finding) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return NewBook(nil, nil), []Finding{folderFinding(err)}
	}
	defer root.Close()
	return Load(root.FS(), o)
}

// Load reads every note of a folder: each .md file but README.md, in folders of
// any depth, leaving out names that begin with a dot or an underscore. A file
// that can't be read, or is no proper note, becomes a finding and the rest is
// read all the same. Of two notes with one id the first by path is kept.
//
// The book is never nil. Findings come in the order of the files.
func Load(fsys fs.FS, o LoadOptions) (*Book, []Finding) {
	if o.MaxBytes == 0 {
		o.MaxBytes = DefaultMaxBytes
	}
	l := &loader{fsys: fsys, max: o.MaxBytes, files: map[string]bool{}}
	paths := l.walk()
	results := make([]loaded, len(paths))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(runtime.GOMAXPROCS(0), len(paths)) {
		wg.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= len(paths) {
					return
				}
				results[i] = l.note(paths[i])
			}
		})
	}
	wg.Wait()

	b := NewBook(nil, l.association())
	b.files = l.files
	for i, r := range results {
		l.found = append(l.found, r.found...)
		switch {
		case r.note == nil:
			b.broken[paths[i]] = true
			if id := idOfPath(paths[i]); id != "" {
				b.claimed[id] = true
			}
		case !b.add(r.note):
			l.found = append(l.found, twice(r.note, b.byID[r.note.ID]))
			b.broken[paths[i]] = true
		}
	}
	b.finish()
	if len(paths) == 0 && len(l.found) == 0 {
		l.found = append(l.found, Finding{Check: checkFile, What: "there are no notes here", Mend: "name the folder that holds the .md files"})
	}
	sortFindings(l.found)
	return b, l.found
}

type loaded struct {
	note  *Note
	found []Finding
}

type loader struct {
	fsys  fs.FS
	max   int64
	files map[string]bool
	found []Finding
}

func folderFinding(err error) Finding {
	return Finding{Check: checkFile, What: "the folder can't be read: " + cause(err), Mend: "check that it exists and that you may read it"}
}

// cause is an error without the path that it repeats.
func cause(err error) string {
	var pe *fs.PathError
	if errors.As(err, &pe) {
		err = pe.Err
	}
	if errors.Is(err, fs.ErrNotExist) {
		return "it is not there"
	}
	return err.Error()
}

// walk lists the paths of the notes, sorted.
func (l *loader) walk() []string {
	var paths []string
	err := fs.WalkDir(l.fsys, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			if p == "." {
				return err
			}
			l.file(p, "it can't be read: "+cause(err), "check that it is there and that you may read it")
			if d != nil && d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		name := d.Name()
		if p != "." && (name[0] == '.' || name[0] == '_') {
			if d.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if len(l.files) >= maxFiles {
			l.file("", fmt.Sprintf("the folder holds more than %d files; the rest was not read", maxFiles), "name the folder of the notes, not one above it")
			return fs.SkipAll
		}
		isNote := strings.HasSuffix(name, ".md") && !strings.EqualFold(name, "README.md")
		switch {
		case d.IsDir():
			l.files[p] = true
			return nil
		case d.Type()&fs.ModeSymlink != 0:
			if !l.link(p) {
				return nil
			}
		case !d.Type().IsRegular():
			if isNote {
				l.file(p, "it is not a regular file", "put the note there as a file")
			}
			return nil
		case strings.HasSuffix(strings.ToLower(name), ".md") && !isNote && !strings.EqualFold(name, "README.md"):
			l.file(p, "the name must end in .md in small letters", "rename it")
		}
		l.files[p] = false
		if isNote {
			paths = append(paths, p)
		}
		return nil
	})
	if err != nil {
		l.found = append(l.found, folderFinding(err))
	}
	return paths
}

func (l *loader) file(p, what, mend string) {
	l.found = append(l.found, Finding{Check: checkFile, Path: p, What: what, Mend: mend})
}

// link reports whether a symbolic link leads to a file inside the folder.
func (l *loader) link(p string) bool {
	to := p
	for range 8 {
		target, err := fs.ReadLink(l.fsys, to)
		if err != nil {
			break // no further link
		}
		if path.IsAbs(target) || strings.HasPrefix(path.Join(path.Dir(to), target)+"/", "../") {
			l.file(p, "it is a link that leads out of the folder", "put the file itself here")
			return false
		}
		to = path.Join(path.Dir(to), target)
	}
	info, err := fs.Stat(l.fsys, p)
	switch {
	case err != nil:
		l.file(p, "it is a link that can't be followed: "+cause(err), "put the file itself here")
	case info.IsDir():
		l.file(p, "it is a link to a folder, which is not followed", "put the folder itself here")
	case !info.Mode().IsRegular():
		l.file(p, "it is a link to something that is not a file", "put the file itself here")
	default:
		return true
	}
	return false
}

// read gives a file's text, or says what is wrong with it.
func (l *loader) read(p string) (string, *Finding) {
	bad := func(what, mend string) (string, *Finding) {
		return "", &Finding{Check: checkFile, Path: p, What: what, Mend: mend}
	}
	f, err := l.fsys.Open(p)
	if err != nil {
		return bad("it can't be read: "+cause(err), "check that it is there and that you may read it")
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.Size() > l.max {
		return bad(tooBig(info.Size(), l.max), "put long material into an attachment")
	}
	data, err := io.ReadAll(io.LimitReader(f, l.max+1))
	switch {
	case err != nil:
		return bad("it can't be read: "+cause(err), "check that it is there and that you may read it")
	case int64(len(data)) > l.max:
		return bad(tooBig(int64(len(data)), l.max), "put long material into an attachment")
	case bytes.IndexByte(data, 0) >= 0:
		return bad("it is not text: it holds zero bytes", "save it as UTF-8 text, or give it the ending of what it is")
	case !utf8.Valid(data):
		line := 1 + bytes.Count(data[:validUTF8(data)], []byte("\n"))
		return "", &Finding{Check: checkFile, Path: p, Line: line, What: "it is not UTF-8 text", Mend: "save it as UTF-8"}
	}
	return string(data), nil
}

func validUTF8(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size <= 1 {
			return i
		}
		i += size
	}
	return len(data)
}

func tooBig(n, limit int64) string {
	return fmt.Sprintf("it is too big for a note: over %d KiB of at most %d", (n-1)>>10, limit>>10)
}

func (l *loader) note(p string) loaded {
	text, bad := l.read(p)
	if bad != nil {
		return loaded{found: []Finding{*bad}}
	}
	n, found := Parse(p, text)
	return loaded{n, found}
}

func (l *loader) association() *Association {
	if dir, ok := l.files[BookFile]; !ok || dir {
		return nil
	}
	text, bad := l.read(BookFile)
	if bad != nil {
		l.found = append(l.found, *bad)
		return nil
	}
	a, found := ParseAssociation(BookFile, text)
	l.found = append(l.found, found...)
	return a
}

func twice(n, first *Note) Finding {
	f := n.finding(checkUnique, "id", quote(n.ID)+" is the id of another note too", "give one of the two the next free number")
	f.Related = []Place{{first.Path, first.front.line(first.front.find("id")), "the first note of that id"}}
	return f
}

// finding is about one field of a note.
func (n *Note) finding(check, field, what, mend string) Finding {
	line := n.front.line(n.front.find(field))
	return Finding{Check: check, Path: n.Path, Line: line, Field: field, What: what, Mend: mend, Source: sourceLine(n.Text, line)}
}

// idOfPath is the id that a file's name claims, or empty.
func idOfPath(p string) string {
	base := strings.TrimSuffix(path.Base(p), ".md")
	parts := strings.SplitN(base, "-", 3)
	if len(parts) < 2 {
		return ""
	}
	if id := parts[0] + "-" + parts[1]; idForm().MatchString(id) {
		return id
	}
	return ""
}
