// Package pages makes the pages of a casebook: one for each note with its
// permalink, lists by season, rule and topic, the bulletins, a search, and a
// feed of what was published. They are the same on disk and served.
//
//	s := pages.New(book, os.DirFS("notes"), pages.Options{Name: "Riverside", On: today})
//	err := s.Write("public")
//
// Nothing in them comes from anywhere else, and all links between them are
// relative, so that they work in any folder of a site and from a disk. The
// same book and options give the same bytes.
package pages

import (
	"cmp"
	"embed"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"example.org/netpost/casebook"
)

// Options say what site the pages are. The zero value is a nameless site with
// nothing around it.
type Options struct {
	Name string        // of the association
	On   casebook.Date // the day that they are made for: what has expired by then is marked; no date: nothing is
	URL  string        // the address of the site with a slash at its end, for the feed; empty: not known
	Home string        // where questions are asked, a link on every page; empty: nowhere
	Find string        // where notes are searched, in place of the pages' own search; empty: there
	// Example: the notes are the invented ones that come with the program, and every
	// page says so.
	Example bool
	// Picture draws the play of a note that has one: an SVG, and what it shows
	// for those who can't see it. It reports false for what can't be drawn; nil
	// draws nothing.
	Picture func(*casebook.Note) (svg []byte, alt string, ok bool)
}

// A Site is the pages of one book. It is safe for use by many goroutines.
type Site struct {
	Options
	book   *casebook.Book
	files  fs.FS // the folder of the notes; nil: there are no attachments
	prover *casebook.Prover

	notes   []*casebook.Note // that have a page, newest first
	rules   []list
	topics  []list
	seasons []list
	weeks   []week
	written map[string]*casebook.Note // those that have a page, by their file
	paths   map[string]func() (File, error)
	sorted  []string
}

// File is one file of the site.
type File struct {
	Type string // its media type
	Body []byte
}

// list is a page that lists notes.
type list struct {
	Name  string // for people
	Slug  string // its file, without the ending
	Notes []*casebook.Note
}

//go:embed style.css pages.css search.js templates
var embedded embed.FS

func asset(name string) []byte {
	b, err := embedded.ReadFile(name)
	if err != nil {
		panic("pages: an embedded file can't be read: " + err.Error())
	}
	return b
}

// Style is the style sheet that all pages share, those of the web channel too.
var Style = sync.OnceValue(func() []byte { return asset("style.css") })

// New makes the site of a book. Files is the folder that the notes are in, for
// their attachments; nil where it can't be read. Drafts have no page.
func New(b *casebook.Book, files fs.FS, o Options) *Site {
	s := &Site{Options: o, book: b, files: files, prover: casebook.NewProver(b), written: map[string]*casebook.Note{}, paths: map[string]func() (File, error){}}
	for _, n := range b.Notes() {
		if n.Status != casebook.Draft {
			s.notes = append(s.notes, n)
			s.written[n.Path] = n
		}
	}
	slices.SortStableFunc(s.notes, func(x, y *casebook.Note) int {
		return cmp.Or(y.Issued.Compare(x.Issued), strings.Compare(y.ID, x.ID))
	})
	s.gather()
	s.weeks = s.weeksOf()
	s.lay()
	for p := range s.paths {
		s.sorted = append(s.sorted, p)
	}
	slices.Sort(s.sorted)
	return s
}

// gather sorts the notes into the lists.
func (s *Site) gather() {
	rules, topics, seasons := newLister(), newLister(), newLister()
	for _, n := range s.notes {
		seasons.add(n.Season.String(), n)
		for _, r := range n.Rules {
			rules.add(r, n)
		}
		for _, t := range n.Topics {
			topics.add(t, n)
		}
	}
	s.rules, s.topics, s.seasons = rules.lists(), topics.lists(), seasons.lists()
	slices.Reverse(s.seasons)
}

// lister gathers lists by the file that they are in.
type lister struct{ at map[string]*list }

func newLister() *lister { return &lister{map[string]*list{}} }

func (l *lister) add(name string, n *casebook.Note) {
	slug := slug(name)
	x := l.at[slug]
	if x == nil {
		x = &list{Name: name, Slug: slug}
		l.at[slug] = x
	}
	if len(x.Notes) == 0 || x.Notes[len(x.Notes)-1] != n {
		x.Notes = append(x.Notes, n)
	}
}

// lists are sorted by name, numbers in names by their value.
func (l *lister) lists() []list {
	var out []list
	for _, x := range l.at {
		out = append(out, *x)
	}
	slices.SortFunc(out, func(x, y list) int { return cmp.Or(natural(x.Name, y.Name), strings.Compare(x.Slug, y.Slug)) })
	return out
}

// natural compares texts with the numbers in them by value: 9.2 is before 9.10.
func natural(x, y string) int {
	for x != "" && y != "" {
		a, b := digits(x), digits(y)
		if a > 0 && b > 0 {
			m, n := strings.TrimLeft(x[:a], "0"), strings.TrimLeft(y[:b], "0")
			if c := cmp.Or(cmp.Compare(len(m), len(n)), strings.Compare(m, n)); c != 0 {
				return c
			}
			x, y = x[a:], y[b:]
			continue
		}
		if x[0] != y[0] {
			return cmp.Compare(x[0], y[0])
		}
		x, y = x[1:], y[1:]
	}
	return cmp.Compare(len(x), len(y))
}

func digits(s string) int {
	n := 0
	for n < len(s) && s[n] >= '0' && s[n] <= '9' {
		n++
	}
	return n
}

// slug is a name as that of a file on any disk: never empty, never index.
func slug(name string) string {
	var b strings.Builder
	for _, r := range strings.ToLower(name) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-', r == '.' && b.Len() > 0:
			b.WriteRune(r)
		default:
			b.WriteByte('_')
		}
	}
	if s := strings.TrimRight(b.String(), "."); s != "" && s != "index" {
		return s
	}
	return "_" + strings.TrimRight(b.String(), ".")
}

// lay says which files there are.
func (s *Site) lay() {
	page := func(p string, make func() (File, error)) { s.paths[p] = make }
	page("index.html", s.front)
	page("search.html", s.search)
	page("feed.atom", s.feed)
	page("style.css", func() (File, error) {
		return File{"text/css; charset=utf-8", slices.Concat(Style(), asset("pages.css"))}, nil
	})
	page("search.js", func() (File, error) { return File{"text/javascript; charset=utf-8", asset("search.js")}, nil })
	for _, n := range s.notes {
		page(n.ID+".html", func() (File, error) { return s.note(n) })
		for _, a := range n.Attachments {
			s.attach(a)
		}
	}
	for _, k := range []struct {
		folder, title, one string
		lists              []list
	}{{"rules", "Rules", "Rule ", s.rules}, {"seasons", "Seasons", "Season ", s.seasons}, {"topics", "Topics", "Topic: ", s.topics}} {
		page(k.folder+"/index.html", func() (File, error) { return s.lists(k.folder, k.title, k.lists) })
		for _, l := range k.lists {
			page(k.folder+"/"+l.Slug+".html", func() (File, error) { return s.list(k.folder, k.one, l) })
		}
	}
	page("bulletins/index.html", s.bulletins)
	for _, w := range s.weeks {
		page("bulletins/"+w.Name+".html", func() (File, error) { return s.bulletin(w) })
	}
}

// attachable are the ends of files that go out beside the pages, with their
// media types. What a browser would run as a page of the site is not among
// them. Sorted.
var attachable = []struct{ end, media string }{
	{".csv", "text/csv; charset=utf-8"},
	{".docx", "application/vnd.openxmlformats-officedocument.wordprocessingml.document"},
	{".gif", "image/gif"},
	{".jpeg", "image/jpeg"},
	{".jpg", "image/jpeg"},
	{".mp4", "video/mp4"},
	{".odt", "application/vnd.oasis.opendocument.text"},
	{".pdf", "application/pdf"},
	{".png", "image/png"},
	{".pptx", "application/vnd.openxmlformats-officedocument.presentationml.presentation"},
	{".txt", "text/plain; charset=utf-8"},
	{".webp", "image/webp"},
	{".xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"},
}

// attach puts a file of the folder beside the pages, and reports whether it
// may go out and is there.
func (s *Site) attach(p string) (address string, ok bool) {
	address = "files/" + p
	if s.paths[address] != nil {
		return address, true
	}
	if s.files == nil {
		return "", false
	}
	i, found := slices.BinarySearchFunc(attachable, strings.ToLower(path.Ext(p)), func(a struct{ end, media string }, end string) int { return strings.Compare(a.end, end) })
	if info, err := fs.Stat(s.files, p); !found || err != nil || !info.Mode().IsRegular() {
		return "", false
	}
	s.paths[address] = func() (File, error) {
		b, err := fs.ReadFile(s.files, p)
		return File{attachable[i].media, b}, err
	}
	return address, true
}

// Paths lists the files of the site, sorted, slash-separated from its root.
func (s *Site) Paths() []string { return slices.Clone(s.sorted) }

// Open makes one file. It reports false where there is none of that path; an
// error is one of reading an attachment.
func (s *Site) Open(p string) (f File, ok bool, err error) {
	make, ok := s.paths[p]
	if !ok {
		return File{}, false, nil
	}
	f, err = make()
	return f, true, err
}

// Len is how many notes have a page.
func (s *Site) Len() int { return len(s.notes) }

// Has reports whether a note has a page.
func (s *Site) Has(id string) bool { return s.paths[id+".html"] != nil }
