package command

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/bot/term"
	"example.org/netpost/bot/web"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/court/raster"
	"example.org/netpost/engine/judge"
	"example.org/netpost/engine/notation"
)

// drawTo writes the picture of a play into a file, the fault that the ruling
// finds marked in it. The file's ending says in which form.
func drawTo(file, words string, o answer.Options) error {
	form := strings.ToLower(filepath.Ext(file))
	if form != ".svg" && form != ".png" {
		return fmt.Errorf("--picture %s: a picture is drawn as .svg or .png; name a file with one of these endings", visible(file))
	}
	s, ok := scene(words, o)
	if !ok {
		return errors.New("--picture: there is no play and no alignment in this to draw; tell who touched what, or where players stood")
	}
	out := s.SVG()
	if form == ".png" {
		var err error
		if out, err = raster.PNG(s); err != nil {
			return fmt.Errorf("--picture: %w", err)
		}
	}
	return os.WriteFile(file, out, 0o644)
}

// scene is the picture of a question in words, under the first code that is meant.
func scene(words string, o answer.Options) (picture.Scene, bool) {
	r, err := notation.Read(words)
	if err != nil || r.Subject() == nil {
		return picture.Scene{}, false
	}
	s := r.Subject()
	for _, g := range o.Given {
		if g.Key.Fact != answer.CodeFact {
			s = s.Tell(g.Key, g.Value)
		}
	}
	if s.Check() != nil {
		return picture.Scene{}, false
	}
	return sceneOf(answer.Of(r, o), s, o.Overlays)
}

// sceneOf is the picture of a subject with its answer: what is at fault in it
// is marked, by the code that the answer is under.
func sceneOf(a answer.Answer, s engine.Subject, adopted []code.Overlay) (picture.Scene, bool) {
	var m picture.Mark
	if b, ok := bookOf(a, adopted); ok && a.Outcome == "fault" {
		if d, err := judge.Decide(s, b); err == nil && d.Settled() && d.Ruling.Fault == string(a.Fault) {
			if rule, ok := judge.ByID(d.Ruling.Fault); ok {
				m = picture.Mark{Event: d.Ruling.Event, Words: "fault: " + rule.Title, Book: b}
			}
		}
	}
	return picture.Of(s, m)
}

// bookOf is the book that an answer is under: of its code, or where all rule
// alike of the first one.
func bookOf(a answer.Answer, adopted []code.Overlay) (*code.Book, bool) {
	c := code.Code(a.Code)
	if c == answer.AnyCode || c == "" {
		c = code.International
	}
	season, err := code.ParseSeason(string(a.Edition))
	if err != nil {
		season = 0 // the codes differ in it
	}
	b, err := code.Open(c, season)
	if err == nil && len(adopted) > 0 {
		b, err = b.With(adopted...)
	}
	return b, err == nil
}

// draw makes the pictures of answers for a platform: browsers show SVG, which
// stays sharp and is small, the others need an image; a terminal shows none.
func draw(find func(bot.Place) (bot.Association, bool)) bot.Draw {
	desk := newDesk()
	return func(p bot.Place, a answer.Answer, s engine.Subject) []bot.Picture {
		if p.Platform == term.Platform {
			return nil
		}
		at, _ := find(p)
		sc, ok := sceneOf(a, s, at.Overlays)
		if !ok {
			return nil
		}
		if p.Platform == web.Platform {
			return []bot.Picture{{Name: "court.svg", Type: "image/svg+xml", Alt: sc.Alt, Data: sc.SVG()}}
		}
		return []bot.Picture{{Name: "court.png", Type: "image/png", Alt: sc.Alt, Make: func() ([]byte, error) { return desk.png(sc) }}}
	}
}

// A desk draws one image at a time, since each takes as much of a processor as
// a hundred answers. Where too many wait, one is not drawn: the words of the
// answer say the same, and they must not wait.
type desk struct {
	free    chan struct{} // holds one token
	waiting chan struct{} // a token for each that waits or is drawn
}

// mostDrawn is how many images wait or are drawn at once: a few seconds' work.
const mostDrawn = 16

var errBusyDesk = errors.New("too many pictures at once: this one was not drawn")

func newDesk() *desk {
	return &desk{free: make(chan struct{}, 1), waiting: make(chan struct{}, mostDrawn)}
}

func (d *desk) png(s picture.Scene) ([]byte, error) {
	select {
	case d.waiting <- struct{}{}:
	default:
		return nil, errBusyDesk
	}
	defer func() { <-d.waiting }()
	d.free <- struct{}{}
	defer func() { <-d.free }()
	return raster.PNG(s)
}
