package bot

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"
)

// size measures a document as a platform might: letters, blocks and buttons.
func size(d Doc) (letters, blocks, buttons int) {
	for _, b := range d.Blocks {
		blocks++
		if bs, ok := b.(Buttons); ok {
			buttons += len(bs.Items)
		}
	}
	return utf8.RuneCountInString(PlainText(d, 1<<20)), blocks, buttons
}

func within(letters, blocks, buttons int) func(Doc) bool {
	return func(d Doc) bool {
		l, b, n := size(d)
		return l <= letters && b <= blocks && n <= buttons
	}
}

// randomDoc has numbered words, so that a lost one is seen.
func randomDoc(r *rand.Rand) Doc {
	n := 0
	text := func(most int) Text {
		var t Text
		for range 1 + r.IntN(most) {
			n++
			t = append(t, Span{fmt.Sprintf("w%d ", n), Style(r.IntN(3))})
		}
		return t
	}
	var d Doc
	for range 1 + r.IntN(8) {
		switch r.IntN(8) {
		case 0:
			d.Blocks = append(d.Blocks, Heading{text(5).String(), Bad})
		case 1:
			d.Blocks = append(d.Blocks, Para{text(200)})
		case 2:
			d.Blocks = append(d.Blocks, List{[]Text{text(3), text(90), text(5)}})
		case 3:
			d.Blocks = append(d.Blocks, Quote{text(30)})
		case 4:
			d.Blocks = append(d.Blocks, Fields{[]Field{{"One", []Text{text(3), text(3)}}, {"Two", []Text{text(100)}}}})
		case 5:
			d.Blocks = append(d.Blocks, Tree{"Turns on", Node{text(3).String(), []Kid{
				{When: text(2).String(), Then: text(2).String()},
				{When: text(2).String(), Next: &Node{text(3).String(), []Kid{{When: text(1).String(), Then: text(60).String()}}}},
			}}})
		case 6:
			d.Blocks = append(d.Blocks, Link{text(4).String(), "https://notes.example/1"})
		case 7:
			d.Blocks = append(d.Blocks, Aside{text(20)})
		}
	}
	for i := range r.IntN(4) {
		d.Blocks = append(d.Blocks, Buttons{"Press", []Button{{fmt.Sprintf("b%d", i), "/undo/x"}, {"c", "/undo/y"}}})
	}
	return d
}

// numbered lists the numbered words of a document in order. A word cut in two
// is not met: the pages are wide enough.
func numbered(ds ...Doc) []string {
	var out []string
	for _, d := range ds {
		for _, w := range strings.Fields(strings.ReplaceAll(PlainText(d, 1<<20), CutMark, " ")) {
			w = strings.Trim(w, ":")
			if len(w) > 1 && w[0] == 'w' && w[1] >= '0' && w[1] <= '9' {
				out = append(out, w)
			}
		}
	}
	return out
}

func TestPages(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 500 {
		d := randomDoc(r)
		fits := within(200+r.IntN(2000), 6+r.IntN(20), 4+r.IntN(20))
		pages := Pages(Message{Doc: d, More: "/more/q/all"}, fits)
		for i, p := range pages {
			if !fits(p) {
				l, b, n := size(p)
				t.Fatalf("page %d of %d does not fit: %d letters, %d blocks, %d buttons", i+1, len(pages), l, b, n)
			}
			if text := PlainText(p, 1<<20); len(pages) > 1 && !strings.Contains(text, fmt.Sprintf("page %d of %d", i+1, len(pages))) {
				t.Fatalf("page %d says nothing of the others:\n%s", i+1, text)
			}
		}
		if got, want := numbered(pages...), numbered(d); strings.Join(got, " ") != strings.Join(want, " ") {
			t.Fatalf("words were lost or moved:\n%v\nwant\n%v", got, want)
		}
	}
}

func TestPagesTurn(t *testing.T) {
	d := Doc{Blocks: []Block{Para{Line(strings.Repeat("word ", 200))}}}
	pages := Pages(Message{Doc: d, More: "/more/q/all"}, within(500, 10, 5))
	var got []string
	for _, p := range pages {
		for _, b := range p.Blocks {
			if bs, ok := b.(Buttons); ok {
				for _, i := range bs.Items {
					got = append(got, i.Label+" "+i.State)
				}
			}
		}
	}
	want := "More /more/q/all/1, Earlier /more/q/all/0, More /more/q/all/2, Earlier /more/q/all/1"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("%d pages have the buttons\n%s, want\n%s", len(pages), s, want)
	}
	if p := Page(Message{Page: 99}, pages); PlainText(p, 1000) != PlainText(pages[len(pages)-1], 1000) {
		t.Error("a page that is not there is not the last one")
	}
}

// Where no button can lead on, the cut is said.
func TestPagesWithoutMore(t *testing.T) {
	d := Doc{Blocks: []Block{Para{Line(strings.Repeat("word ", 200))}}}
	first := Pages(Message{Doc: d}, within(300, 10, 5))[0]
	if s := PlainText(first, 1000); !strings.Contains(s, "cut here") {
		t.Errorf("the cut is not marked:\n%s", s)
	}
}

func TestClip(t *testing.T) {
	for _, test := range []struct {
		s    string
		most int
		want string
	}{
		{"short", 5, "short"}, {"läng er", 6, "läng…"}, {"abc", 1, "…"}, {"", 0, ""}, {"abc", 0, "…"},
	} {
		if got := Clip(test.s, test.most); got != test.want {
			t.Errorf("Clip(%q, %d) = %q, want %q", test.s, test.most, got, test.want)
		}
	}
}
