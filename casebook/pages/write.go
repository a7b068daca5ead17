package pages

import (
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
)

// listed is the file in a folder of pages that lists what is ours in it.
const listed = ".netpost-pages"

// ErrForeign is of a folder that holds what is not ours.
var ErrForeign = errors.New("it holds other files; name a new or an empty folder")

// Write writes the site to a folder, which it makes. What an earlier Write left
// there and the site has no longer is deleted; a folder that holds anything
// else beforehand is refused.
func (s *Site) Write(dir string) error {
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return err
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	before, err := ours(root)
	if err != nil {
		return fmt.Errorf("%s: %w", dir, err)
	}
	// Listed first, so that a run that is cut short leaves nothing unknown behind.
	if err := root.WriteFile(listed, lines(append(slices.Clone(before), s.sorted...)), 0o666); err != nil {
		return err
	}
	if err := s.write(root); err != nil {
		return err
	}
	for _, p := range before {
		if s.paths[p] == nil {
			if err := root.Remove(filepath.FromSlash(p)); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return err
			}
		}
	}
	return root.WriteFile(listed, lines(s.sorted), 0o666)
}

func lines(paths []string) []byte {
	slices.Sort(paths)
	return []byte(strings.Join(slices.Compact(paths), "\n") + "\n")
}

// ours lists the files that an earlier Write left.
func ours(root *os.Root) ([]string, error) {
	text, err := root.ReadFile(listed)
	if err == nil {
		var out []string
		for p := range strings.FieldsFuncSeq(string(text), func(r rune) bool { return r == '\n' }) {
			if fs.ValidPath(p) {
				out = append(out, p)
			}
		}
		return out, nil
	}
	entries, err := fs.ReadDir(root.FS(), ".")
	switch {
	case err != nil:
		return nil, err
	case len(entries) > 0:
		return nil, ErrForeign
	}
	return nil, nil
}

// write writes the files, on as many processors as there are.
func (s *Site) write(root *os.Root) error {
	made := map[string]bool{}
	for _, p := range s.sorted {
		if i := strings.LastIndexByte(p, '/'); i >= 0 && !made[p[:i]] {
			made[p[:i]] = true
			if err := root.MkdirAll(filepath.FromSlash(p[:i]), 0o777); err != nil {
				return err
			}
		}
	}
	var next atomic.Int64
	var wg sync.WaitGroup
	errs := make([]error, runtime.GOMAXPROCS(0))
	for w := range errs {
		wg.Go(func() {
			for errs[w] == nil {
				i := int(next.Add(1)) - 1
				if i >= len(s.sorted) {
					return
				}
				f, _, err := s.Open(s.sorted[i])
				if err == nil {
					err = root.WriteFile(filepath.FromSlash(s.sorted[i]), f.Body, 0o666)
				}
				errs[w] = err
			}
		})
	}
	wg.Wait()
	return errors.Join(errs...)
}

// ServeHTTP serves the site at the root of the paths that it gets. Attachments
// that are no pictures are for saving, and may do nothing as pages.
func (s *Site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	p := strings.TrimPrefix(r.URL.Path, "/")
	if p == "" || strings.HasSuffix(p, "/") {
		p += "index.html"
	}
	f, ok, err := s.Open(p)
	switch {
	case err != nil:
		http.Error(w, "This file can't be read just now. Try again in a while.", http.StatusInternalServerError)
		return
	case !ok:
		http.Error(w, "There is no such page. Begin at the list of notes.", http.StatusNotFound)
		return
	}
	w.Header().Set("Content-Type", f.Type)
	if strings.HasPrefix(p, "files/") {
		w.Header().Set("Content-Security-Policy", "sandbox; default-src 'none'")
		if !strings.HasPrefix(f.Type, "image/") {
			w.Header().Set("Content-Disposition", "attachment")
		}
	}
	if r.Method != http.MethodHead {
		_, _ = w.Write(f.Body) // whoever asked may be gone
	}
}
