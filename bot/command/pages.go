package command

import (
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"strings"
	"sync"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/term"
	"example.org/netpost/bot/web"
	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/casebook/pages"
	"example.org/netpost/config"
	"example.org/netpost/engine/answer"
)

// site makes the pages of an association's notes as they stand, of the
// invented ones where it has none. The findings are of notes that have no page
// because they can't be read.
func site(a config.Association, dir string, o pages.Options) (*pages.Site, []casebook.Finding, error) {
	o.Name = cmp.Or(o.Name, a.Name)
	o.Picture = pictureOf(nil)
	if dir == "" {
		b := demo.Book()
		if b.Association != nil {
			o.Name = b.Association.Name
		}
		o.Example = true
		return pages.New(b, demo.FS(), o), nil, nil
	}
	// The root stays open as long as the site is in use, for the attachments.
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, nil, fmt.Errorf("the casebook can't be read: %w; name the folder that holds the notes", err)
	}
	files := root.FS()
	b, found := casebook.Load(files, casebook.LoadOptions{})
	if b.Association != nil {
		o.Name = cmp.Or(o.Name, b.Association.Name)
		o.Picture = pictureOf(b.Association)
	}
	o.Name = cmp.Or(o.Name, a.ID)
	return pages.New(b, readable{files}, o), found, nil
}

// pictureOf draws the plays of notes for their pages, each under the code and
// season of its note with what the association adopted for it.
func pictureOf(of *casebook.Association) func(*casebook.Note) ([]byte, string, bool) {
	return func(n *casebook.Note) ([]byte, string, bool) {
		o := answer.Options{Season: n.Season, Overlays: of.Overlays(n.Season)}
		if len(n.Codes) > 0 {
			o.Code = n.Codes[0]
		}
		s, ok := scene(n.Play, o)
		if !ok {
			return nil, "", false
		}
		return s.SVG(), s.Alt, true
	}
}

// readable is a folder of files. Its other methods, such as those that change
// it, are out of reach.
type readable struct{ fs.FS }

// shelf is the pages of an association's notes while the program serves. They
// are made anew when the notes have changed, and on another day.
type shelf struct {
	make  func(on casebook.Date) (*pages.Site, error)
	state func() int64 // changes with the notes

	mu   sync.Mutex
	site *pages.Site
	of   int64
	on   casebook.Date
}

// ServeHTTP is part of http.Handler.
func (s *shelf) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	now, err := s.now()
	if err != nil {
		http.Error(w, "The case notes can't be read just now. Try again in a while.", http.StatusServiceUnavailable)
		return
	}
	now.ServeHTTP(w, r)
}

func (s *shelf) now() (*pages.Site, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	of, on := s.state(), casebook.DateOf(time.Now())
	if s.site == nil || s.of != of || s.on != on {
		made, err := s.make(on)
		if err != nil {
			return nil, err
		}
		s.site, s.of, s.on = made, of, on
	}
	return s.site, nil
}

// pagesOf serves the pages of an association's notes; nil where it has none.
func (s *service) pagesOf(a config.Association, l *library) http.Handler {
	if l == nil {
		return nil
	}
	return &shelf{state: l.generation.Load, make: func(on casebook.Date) (*pages.Site, error) {
		made, _, err := site(a, l.dir, pages.Options{On: on, Home: "/", Find: "/search"})
		return made, err
	}}
}

// linked is a searcher whose notes lead to their pages.
type linked struct {
	bot.Searcher
	to string // where the pages are, with a slash at the end
}

// Notes is part of bot.Searcher.
func (l linked) Notes(ctx context.Context, q bot.Question) ([]bot.Note, error) {
	notes, err := l.Searcher.Notes(ctx, q)
	for i, n := range notes {
		if n.URL == "" && n.Status != casebook.Draft {
			notes[i].URL = l.to + n.ID + ".html"
		}
	}
	return notes, err
}

// linking leads the notes that are found to their pages, where the people of
// a platform can open them: in the browser its own, on this machine those of
// the web channel, elsewhere those of the settings.
func (s *service) linking(find func(bot.Place) (bot.Association, bool)) func(bot.Place) (bot.Association, bool) {
	return func(p bot.Place) (bot.Association, bool) {
		a, ok := find(p)
		if to := s.pagesOn(p.Platform, a.ID); ok && a.Notes != nil && to != "" {
			a.Notes = linked{a.Notes, to}
		}
		return a, ok
	}
}

// pagesOn is where the people of a platform find the pages of an association;
// empty: nowhere.
func (s *service) pagesOn(platform, id string) string {
	a, ok := s.config.Association(id)
	if !ok {
		return ""
	}
	local, below := id == s.config.Local, strings.TrimPrefix(web.PagesPath, "/")
	switch {
	case platform == web.Platform:
		return web.PagesPath
	case a.Pages != "":
		return a.Pages
	case local && s.config.Web != "" && s.config.WebURL != "":
		return s.config.WebURL + "/" + below
	case local && platform == term.Platform && s.page != nil:
		return s.page.Address() + below
	}
	return ""
}
