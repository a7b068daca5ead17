package casebook

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// Publish writes a new note into the folder of a casebook, whole or not at all:
// a kill leaves no half of it. A file of its name is never overwritten; one that
// holds the same is no error.
func Publish(dir string, n *Note) error {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fmt.Errorf("the folder of the notes can't be opened: %s; check that it exists and that you may write to it", cause(err))
	}
	defer root.Close()
	name, text := n.FileName(), Format(n)
	// A name with a dot is no note, so that whoever follows the folder passes it over.
	draft := "." + name + "." + rand.Text()[:8]
	if err := writeNew(root, draft, text); err != nil {
		root.Remove(draft)
		return fmt.Errorf("%s can't be written: %s; check that there is room and that you may write there", name, cause(err))
	}
	defer root.Remove(draft)
	err = root.Link(draft, name)
	if err == nil {
		return nil
	}
	if there, readErr := root.ReadFile(name); readErr == nil && string(there) == text {
		return nil
	}
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("there is a file %s already, with another text; give the note another title, or move the file away", name)
	}
	// Where there are no links, the name was looked for just now.
	if _, statErr := root.Lstat(name); statErr == nil {
		return fmt.Errorf("there is a file %s already; give the note another title, or move the file away", name)
	}
	if err := root.Rename(draft, name); err != nil {
		return fmt.Errorf("%s can't be written: %s; check that you may write there", name, cause(err))
	}
	return nil
}

// writeNew makes a new file that is on the disk when it returns.
func writeNew(root *os.Root, name, text string) error {
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Sync(), f.Close())
}
