package command

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

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
		return errors.New("--picture: there is no play of the ball in this to draw; tell who touched what")
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

// scene is the picture of a play in words, under the first code that is meant.
func scene(words string, o answer.Options) (picture.Scene, bool) {
	r, err := notation.Read(words)
	if err != nil || r.Rally == nil {
		return picture.Scene{}, false
	}
	p := r.Rally
	for _, g := range o.Given {
		if g.Key.Fact != answer.CodeFact {
			p = p.With(g.Key, g.Value)
		}
	}
	if p.Check() != nil {
		return picture.Scene{}, false
	}
	var m picture.Mark
	if a := answer.Of(r, o); a.Outcome == "fault" {
		c := code.Code(a.Code)
		if c == answer.AnyCode || c == "" {
			c = code.International
		}
		if b, err := code.Open(c, o.Season); err == nil {
			if d, err := judge.Decide(p, b); err == nil && d.Settled() {
				if rule, ok := judge.ByID(d.Ruling.Fault); ok {
					m = picture.Mark{Event: d.Ruling.Event, Words: "fault: " + rule.Title}
				}
			}
		}
	}
	return picture.Of(p, m)
}
