package index

import (
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"go.etcd.io/bbolt"
	bbolterrors "go.etcd.io/bbolt/errors"
)

// A folder of indexes looks like this:
//
//	current              the name of the generation in use, one line
//	build.lock           held by the one process that builds
//	gen-k3v9…/           a generation: it is never written again once current names it
//	gen-k3v9…/stamp.json what it was built from, and the sizes of its files
//	gen-k3v9…/phrases    the trade's phrases, read as the index reads words
//	gen-k3v9…/notes/     the search library's own files
//
// A build writes a new generation and then renames a new pointer over the old one, so a
// reader sees the old index or the new one and never half of any. Readers open read-only
// and take no lock that a build would wait for.
const (
	pointerFile = "current"
	lockFile    = "build.lock"
	stampFile   = "stamp.json"
	phrasesFile = "phrases"
	notesDir    = "notes"
	genPrefix   = "gen-"
)

// The reasons why an index on disk can't be used as it is. All are mended by a build.
var (
	// ErrAbsent: nothing has been built in the folder yet.
	ErrAbsent = errors.New("there is no index yet")
	// ErrStale: it was built from other notes, or by another version of the program.
	ErrStale = errors.New("the index is out of date")
	// ErrCorrupt: its files are damaged.
	ErrCorrupt = errors.New("the index is damaged")
)

// ErrBuilding is the error of a second build in a folder where one is under way. It is
// never waited for: the index in use goes on serving.
var ErrBuilding = errors.New("another process is building this index")

// A stamp says what a generation was built from.
type stamp struct {
	Program string           `json:"program"` // of mapping, lexicon, fact table and library version
	Corpus  string           `json:"corpus"`  // of the notes
	Notes   int              `json:"notes"`   // how many it holds
	Phrases uint32           `json:"phrases"` // check sum of that file
	Sizes   map[string]int64 `json:"sizes"`   // of every file of the generation, in bytes
}

// lockWait bounds how long a build tries for the lock; longer than a retry of the lock's
// own poll, short enough to be no wait.
const lockWait = 100 * time.Millisecond

// takeLock takes the build lock of a folder, or fails with ErrBuilding. The system lets go
// of it when the process ends, however it ends.
func takeLock(dir string) (release func(), err error) {
	// An embedded database of no content: its file lock works alike on every system.
	path := filepath.Join(dir, lockFile)
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{Timeout: lockWait})
	switch {
	case err == nil:
		return func() { db.Close() }, nil
	case errors.Is(err, bbolterrors.ErrTimeout):
		return nil, fmt.Errorf("%s: %w: wait until it has ended and try again", dir, ErrBuilding)
	case errors.Is(err, fs.ErrPermission), errors.Is(err, fs.ErrNotExist):
		return nil, err
	}
	// A lock file that is not ours to read, say after a full disk: it holds nothing.
	if os.Remove(path) != nil {
		return nil, err
	}
	db, err = bbolt.Open(path, 0o600, &bbolt.Options{Timeout: lockWait})
	if err != nil {
		return nil, fmt.Errorf("%s: the build lock can't be taken: %w", path, err)
	}
	return func() { db.Close() }, nil
}

// newGeneration makes the folder of a generation that nothing points to yet.
func newGeneration(dir string) (string, error) {
	name := genPrefix + strings.ToLower(rand.Text()[:12])
	if err := os.Mkdir(filepath.Join(dir, name), 0o755); err != nil {
		return "", err
	}
	return name, nil
}

// currentGeneration reads the pointer.
func currentGeneration(dir string) (string, error) {
	b, err := os.ReadFile(filepath.Join(dir, pointerFile))
	if errors.Is(err, fs.ErrNotExist) {
		return "", fmt.Errorf("%s: %w", dir, ErrAbsent)
	}
	if err != nil {
		return "", err
	}
	name := strings.TrimSpace(string(b))
	if !strings.HasPrefix(name, genPrefix) || !filepath.IsLocal(name) || strings.ContainsAny(name, `/\`) {
		return "", fmt.Errorf("%s: %w: the pointer names %q", dir, ErrCorrupt, name)
	}
	return name, nil
}

// switchTo makes a generation the current one. The pointer is flushed before the rename,
// so a crash leaves the old one or the new one.
func switchTo(dir, name string) error {
	f, err := os.CreateTemp(dir, pointerFile+"-")
	if err != nil {
		return err
	}
	_, err = f.WriteString(name + "\n")
	err = errors.Join(err, f.Sync(), f.Close())
	if err == nil {
		err = os.Rename(f.Name(), filepath.Join(dir, pointerFile))
	}
	if err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return nil
}

// sweep takes away every generation but the one named, and pointers never renamed. What
// can't be taken away now, because a reader on a system without unlinking holds it, is
// left for the next build.
func sweep(dir, keep string) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	for _, e := range entries {
		n := e.Name()
		if n != keep && strings.HasPrefix(n, genPrefix) || strings.HasPrefix(n, pointerFile+"-") {
			os.RemoveAll(filepath.Join(dir, n))
		}
	}
}

// sizes measures every file of a generation but its stamp.
func sizes(gen string) (map[string]int64, error) {
	out := map[string]int64{}
	err := filepath.WalkDir(gen, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(gen, path)
		if err != nil {
			return err
		}
		if rel != stampFile {
			out[filepath.ToSlash(rel)] = info.Size()
		}
		return nil
	})
	return out, err
}

// seal writes a finished generation's stamp.
func seal(gen string, s stamp) error {
	var err error
	if s.Sizes, err = sizes(gen); err != nil {
		return err
	}
	b, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(gen, stampFile), append(b, '\n'), 0o644)
}

// readStamp reads a generation's stamp and compares the sizes of its files: a file cut
// short by a full disk or a crash is found before the search library maps it into memory.
func readStamp(gen string) (stamp, error) {
	var s stamp
	b, err := os.ReadFile(filepath.Join(gen, stampFile))
	if err != nil {
		return s, fmt.Errorf("%w: %w", ErrCorrupt, err)
	}
	if err := json.Unmarshal(b, &s); err != nil {
		return s, fmt.Errorf("%w: %s: %w", ErrCorrupt, stampFile, err)
	}
	now, err := sizes(gen)
	if err != nil {
		return s, fmt.Errorf("%w: %w", ErrCorrupt, err)
	}
	for _, name := range slices.Sorted(maps.Keys(s.Sizes)) {
		if now[name] != s.Sizes[name] {
			return s, fmt.Errorf("%w: %s has %d bytes instead of %d", ErrCorrupt, name, now[name], s.Sizes[name])
		}
	}
	return s, nil
}
