package casebook

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
)

// Change is what Fix makes of one file: its new text, and its new path where
// the file is to be renamed.
type Change struct {
	Path    string
	NewPath string // empty: it keeps its name
	Text    string
	Mended  int // how many findings it mends
}

// Fix gives the changes that mend what a machine can mend of the findings, in
// the order of files. Texts are the files' texts as they were when the findings
// were made. A mend can bring up another finding, and two that touch one place
// wait for each other: load, check and fix again until there is nothing fixable.
func Fix(findings []Finding, text func(path string) (string, error)) ([]Change, error) {
	var out []Change
	byPath := map[string][]Finding{}
	var paths []string
	for _, f := range findings {
		if f.fix.none() {
			continue
		}
		if byPath[f.Path] == nil {
			paths = append(paths, f.Path)
		}
		byPath[f.Path] = append(byPath[f.Path], f)
	}
	slices.Sort(paths)
	taken := map[string]bool{}
	for _, p := range paths {
		old, err := text(p)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", p, err)
		}
		c := Change{Path: p}
		var edits []edit
		for _, f := range byPath[p] {
			edits = append(edits, f.fix.edits...)
			if to := f.fix.rename; to != "" && c.NewPath == "" && !taken[to] {
				c.NewPath = to
				taken[to] = true
			}
			c.Mended++
		}
		for _, e := range edits {
			if e.from > e.to || e.to > len(old) {
				return nil, fmt.Errorf("%s: the file changed since it was checked; check it again", p)
			}
		}
		c.Text = apply(old, edits)
		if c.Text != old || c.NewPath != "" {
			out = append(out, c)
		}
	}
	return out, nil
}

// mostRounds bounds how often FixDir checks again. Each round mends at least one
// finding of a file, and a file has few kinds of them.
const mostRounds = 10

// FixDir mends a folder of the disk as far as a machine can, and gives what is
// left, with the paths of the files it changed. A file is replaced as a whole or
// not at all.
func FixDir(dir string, l LoadOptions, o CheckOptions) (left []Finding, changed []string, err error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, nil, fmt.Errorf("the folder can't be read: %w", err)
	}
	defer root.Close()
	read := func(p string) (string, error) {
		data, err := root.ReadFile(p)
		return string(data), err
	}
	for round := 0; ; round++ {
		b, found := Load(root.FS(), l)
		found = append(found, Check(b, o)...)
		sortFindings(found)
		changes, err := Fix(found, read)
		if err != nil {
			return found, changed, err
		}
		if len(changes) == 0 || round == mostRounds {
			return found, changed, nil
		}
		for _, c := range changes {
			if err := write(root, c); err != nil {
				return found, changed, err
			}
			to := c.Path
			if c.NewPath != "" {
				changed = slices.DeleteFunc(changed, func(p string) bool { return p == c.Path })
				to = c.NewPath
			}
			if !slices.Contains(changed, to) {
				changed = append(changed, to)
			}
		}
	}
}

// write replaces a file by way of a new one beside it, so that a failure leaves
// the old one whole.
func write(root *os.Root, c Change) error {
	to := c.Path
	if c.NewPath != "" {
		to = c.NewPath
		if _, err := root.Lstat(to); !errors.Is(err, fs.ErrNotExist) {
			return fmt.Errorf("%s: can't be renamed to %s, which is there already", c.Path, to)
		}
	}
	info, err := root.Stat(c.Path)
	if err != nil {
		return fmt.Errorf("%s: %s", c.Path, cause(err))
	}
	tmp := path.Join(path.Dir(to), "."+strings.TrimSuffix(path.Base(to), ".md")+".tmp")
	if err := root.WriteFile(tmp, []byte(c.Text), info.Mode().Perm()); err != nil {
		return fmt.Errorf("%s: %s", c.Path, cause(err))
	}
	if err := root.Rename(tmp, to); err != nil {
		err = fmt.Errorf("%s: %s", c.Path, cause(err))
		return errors.Join(err, root.Remove(tmp))
	}
	if c.NewPath != "" {
		if err := root.Remove(c.Path); err != nil {
			return fmt.Errorf("%s: %s", c.Path, cause(err))
		}
	}
	return nil
}
