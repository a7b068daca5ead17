package command

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
	"example.org/netpost/index"
)

// casebookFlag names the folder of notes.
var casebookFlag = flagRow{name: "casebook", value: "DIR", doc: "the folder of the association's notes; when left out that of the settings, else the invented example notes"}

// notes are an association's notes, open for searching. They are the conversation's
// bot.Searcher.
type notes struct {
	index    *index.Index
	pages    string         // where their pages are, with a slash at the end; empty: nowhere
	overlays []code.Overlay // the association's adoptions
	example  bool           // they are the invented ones that come with the program
}

// openNotes finds a crew's notes, or the example notes where it has none, and opens their
// index, which it first builds where it must. The index is kept where the crew's settings say, or
// in the user's cache; where there is none, or it can't be written, it is built in memory. What is wrong with single notes goes
// to Stderr and hinders nothing.
func openNotes(ctx context.Context, w *World, c crew) (*notes, error) {
	open, _, err := findNotes(w, c)
	if err != nil {
		return nil, err
	}
	return open(ctx)
}

// findNotes finds a crew's notes and their adoptions; open then opens their index, which
// takes longer and need not be waited for before a play is ruled on. It is called once.
func findNotes(w *World, c crew) (open func(context.Context) (*notes, error), overlays []code.Overlay, err error) {
	n := &notes{example: c.casebook == "", pages: c.pages}
	files, key, done := demo.FS(), "example", func() error { return nil }
	if !n.example {
		root, err := os.OpenRoot(c.casebook)
		if err != nil {
			return nil, nil, fmt.Errorf("the casebook can't be read: %w; name the folder that holds the notes", err)
		}
		files, done = root.FS(), root.Close
		if key, err = cacheKey(c.casebook); err != nil {
			return nil, nil, errors.Join(err, done())
		}
		n.overlays = adoptions(files) // those of an invented association change no ruling
	}
	return func(ctx context.Context) (*notes, error) {
		defer done()
		if err := n.open(ctx, w, c, files, key); err != nil {
			return nil, err
		}
		return n, nil
	}, n.overlays, nil
}

// open opens the index of the files, and builds it first where it must.
func (n *notes) open(ctx context.Context, w *World, c crew, files fs.FS, key string) error {
	saved := c.index
	var findings []casebook.Finding
	err := errors.New("there is no cache folder")
	if cache := w.cacheDir(); saved == "" && cache != "" {
		saved = filepath.Join(cache, "netpost", "index", key)
	}
	if saved != "" {
		if n.example {
			n.index, findings, err = index.EnsureAs(ctx, saved, files, key)
		} else {
			n.index, findings, err = index.Ensure(ctx, saved, files)
		}
	}
	if err != nil && ctx.Err() == nil {
		var b *casebook.Book
		b, findings = casebook.Load(files, casebook.LoadOptions{})
		n.index, err = index.Memory(ctx, b)
	}
	if err != nil {
		return fmt.Errorf("the notes can't be searched: %w", err)
	}
	if len(findings) > 0 {
		fmt.Fprintf(w.Stderr, "netpost: %d things are wrong in the casebook, first %s; for all: netpost check %s\n", len(findings), findings[0], c.casebook)
	}
	return nil
}

// close lets go of the index.
func (n *notes) close() { n.index.Close() }

// cacheKey names the index of a folder, wherever it is called from.
func cacheKey(dir string) (string, error) {
	abs, err := filepath.Abs(dir)
	if err != nil {
		return "", err
	}
	sum := sha256.Sum256([]byte(abs))
	return "casebook-" + hex.EncodeToString(sum[:6]), nil
}

// cacheDir is the user's folder for what can be made again, empty where there is none.
func (w *World) cacheDir() string {
	if d := w.Env("NETPOST_CACHE"); d != "" {
		return d
	}
	if w.Env("HOME") == "" && w.Env("XDG_CACHE_HOME") == "" && w.Env("LocalAppData") == "" {
		return ""
	}
	d, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return d
}

// adoptions are those of the association's own book, none where it has no book or one that
// can't be read, which the check of the casebook reports.
func adoptions(files fs.FS) []code.Overlay {
	text, err := fs.ReadFile(files, casebook.BookFile)
	if err != nil {
		return nil
	}
	a, _ := casebook.ParseAssociation(casebook.BookFile, string(text))
	return a.Overlays(0)
}

// Notes gives the notes that a question is about.
func (n *notes) Notes(ctx context.Context, q bot.Question) ([]bot.Note, error) {
	query := index.Question{Words: q.Words, Code: q.Code, Season: q.Season, Given: q.Given, Overlays: n.overlays}.Query()
	query.Limit, query.All = q.Limit, q.All
	if query.Season == 0 && !n.example {
		query.On = casebook.DateOf(time.Now())
	}
	hits, err := n.index.Search(ctx, query)
	if err != nil {
		return nil, err
	}
	var out []bot.Note
	for _, h := range hits {
		out = append(out, bot.Note{
			ID: h.ID, Title: h.Title, Codes: h.Codes, Season: h.Season, Status: h.Status,
			Ruling: h.Ruling, Departs: h.Departs, Example: n.example,
			Covers: covers(h.Play, query.Reading), Why: h.Why, Snippet: marked(h.Snippet),
		})
		if n.pages != "" && h.Status != casebook.Draft {
			out[len(out)-1].URL = n.pages + h.ID + ".html"
		}
	}
	return out, nil
}

// covers reports whether a play that was read whole is a case of a note's.
func covers(note string, asked notation.Reading) bool {
	if note == "" || asked.Rally == nil || !asked.Whole() {
		return false
	}
	r, err := notation.Read(note)
	return err == nil && r.Whole() && casebook.Covers(r.Rally, asked.Rally)
}

// marked is a snippet with the words that were found standing out.
func marked(s index.Snippet) bot.Text {
	var out bot.Text
	at := 0
	add := func(to int, style bot.Style) {
		if to > at {
			out = append(out, bot.Span{Text: s.Text[at:to], Style: style})
		}
		at = to
	}
	for _, m := range s.Marks {
		add(m[0], bot.Ordinary)
		add(m[1], bot.Strong)
	}
	add(len(s.Text), bot.Ordinary)
	return out
}
