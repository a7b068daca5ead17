package command

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/term"
	"example.org/netpost/bot/web"
	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/casebook/pages"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/notation"
)

// Each platform gets the picture of an answer as it shows one.
func TestDraw(t *testing.T) {
	d := draw(func(bot.Place) (bot.Association, bool) { return bot.Association{}, true })
	for _, words := range []string{
		"ball in plane, both front row, fourth contact?",
		"receiving left front stands behind the left back at service contact, overlap?",
	} {
		r, err := notation.Read(words)
		if err != nil || r.Subject() == nil {
			t.Fatalf("%q was not read: %v", words, err)
		}
		a := answer.Ask(words, answer.Options{})
		for _, test := range []struct {
			platform, media, head string
		}{
			{web.Platform, "image/svg+xml", "<svg "},
			{slack.Platform, "image/png", "\x89PNG"},
			{discord.Platform, "image/png", "\x89PNG"},
			{term.Platform, "", ""},
		} {
			got := d(bot.Place{Platform: test.platform}, a, r.Subject())
			if test.media == "" {
				if got != nil {
					t.Errorf("%s, %q: %d pictures", test.platform, words, len(got))
				}
				continue
			}
			if got, err = bot.Made(got); err != nil {
				t.Fatal(err)
			}
			if len(got) != 1 || got[0].Type != test.media || got[0].Alt == "" || !bytes.HasPrefix(got[0].Data, []byte(test.head)) {
				t.Errorf("%s, %q: not one picture as %s that says what it shows", test.platform, words, test.media)
			}
		}
	}
	r, err := notation.Read("how long is a time-out?")
	if err != nil || r.Subject() == nil {
		t.Fatalf("the look-up was not read: %v", err)
	}
	if got := d(bot.Place{Platform: web.Platform}, answer.Ask("how long is a time-out?", answer.Options{}), r.Subject()); got != nil {
		t.Errorf("of a number in the book there are %d pictures", len(got))
	}
}

// What is at fault is marked, by the code that the answer is under.
func TestDrawMarks(t *testing.T) {
	const words = "receivers: right front is left of the left front when the serve is hit"
	for c, marked := range map[code.Code]bool{code.International: true, code.Scholastic: false} {
		s, ok := scene(words, answer.Options{Code: c})
		if !ok || strings.Contains(s.Alt, "Marked:") != marked {
			t.Errorf("under %s: drawn %v: %q", c, ok, s.Alt)
		}
	}
}

// Where too many images wait, one more is not drawn, and says so at once.
func TestDeskBusy(t *testing.T) {
	d := newDesk()
	d.free <- struct{}{} // somebody draws
	waiting := make(chan error, mostDrawn)
	s, ok := scene("ball in plane, both front row, fourth contact?", answer.Options{})
	if !ok {
		t.Fatal("there is nothing to draw")
	}
	for range mostDrawn {
		go func() {
			_, err := d.png(s)
			waiting <- err
		}()
	}
	for len(d.waiting) < mostDrawn {
		time.Sleep(time.Millisecond)
	}
	if _, err := d.png(s); err != errBusyDesk {
		t.Errorf("one too many: %v", err)
	}
	<-d.free
	for range mostDrawn {
		if err := <-waiting; err != nil {
			t.Errorf("one that waited: %v", err)
		}
	}
}

// The pages of notes show their plays.
func TestExportPictures(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	if out, errs, status := run("", "export", dir); status != ok {
		t.Fatalf("status %d\n%s%s", status, out, errs)
	}
	files, err := filepath.Glob(filepath.Join(dir, "20*.html"))
	if err != nil {
		t.Fatal(err)
	}
	image := regexp.MustCompile(`<img src="data:image/svg(?:\+|&#43;)xml;base64,([^"]*)" alt="([^"]*)">`)
	pictured := 0
	for _, f := range files {
		page, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		m := image.FindSubmatch(page)
		if m == nil {
			continue
		}
		pictured++
		svg, err := base64.StdEncoding.DecodeString(html.UnescapeString(string(m[1])))
		if err != nil || !bytes.HasPrefix(svg, []byte("<svg ")) || len(m[2]) == 0 {
			t.Errorf("%s: its picture is no SVG with words: %v", f, err)
		}
	}
	if pictured < len(files)/2 {
		t.Errorf("%d of %d notes have a picture", pictured, len(files))
	}
}

// BenchmarkExport makes and writes the pages of 10,000 notes with their pictures.
func BenchmarkExport(b *testing.B) {
	example := demo.Book().Notes()
	var notes []*casebook.Note
	for i := range 10_000 {
		n := *example[i%len(example)]
		n.ID = fmt.Sprintf("%d-%05d", 2024+i%3, i)
		n.Path, n.Supersedes, n.Attachments = n.ID+".md", nil, nil
		notes = append(notes, &n)
	}
	book := casebook.NewBook(notes, nil)
	for b.Loop() {
		if err := pages.New(book, nil, pages.Options{Picture: pictureOf(nil)}).Write(filepath.Join(b.TempDir(), "public")); err != nil {
			b.Fatal(err)
		}
	}
}
