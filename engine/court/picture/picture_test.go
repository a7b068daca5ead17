package picture_test

import (
	"encoding/xml"
	"flag"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/notation"
	"example.org/netpost/engine/notation/playgen"
)

var update = flag.Bool("update", false, "write the pictures of testdata anew")

// golden compares a picture with the one of testdata.
func golden(t *testing.T, name string, s picture.Scene) {
	t.Helper()
	file := filepath.Join("testdata", name+".svg")
	if *update {
		if err := os.WriteFile(file, s.SVG(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != string(s.SVG()) {
		t.Errorf("%s: the picture is another; run go test -update and look at it", file)
	}
}

// The pictures of testdata are drawn as they stand there; look at them in a
// browser after an update.
func TestGolden(t *testing.T) {
	for _, tc := range []struct {
		name, words string
		mark        picture.Mark
	}{
		{"flagship", "ball in plane, both front row, fourth contact?", picture.Mark{}},
		{"net", "A passes, A sets, A outside attacks, B middle blocks, B middle touches the net", picture.Mark{Event: "e5", Words: "fault: net contact"}},
		{"lands", "A's outside attacks from behind the attack line, ball lands out on B's side", picture.Mark{}},
	} {
		r, err := notation.Read(tc.words)
		if err != nil || r.Rally == nil {
			t.Fatalf("%s: not read: %v", tc.name, err)
		}
		s, ok := picture.Of(r.Rally, tc.mark)
		if !ok {
			t.Fatalf("%s: nothing to draw", tc.name)
		}
		golden(t, tc.name, s)
	}
}

// Every play has a picture that is well-formed, says what it shows, stays
// inside its frame in width and height, and comes out the same twice; or none.
func TestAnyPlay(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	drawn := 0
	for range 500 {
		p := playgen.Rally(r, playgen.Options{})
		s, ok := picture.Of(p, picture.Mark{})
		if !ok {
			continue
		}
		drawn++
		svg := string(s.SVG())
		d := xml.NewDecoder(strings.NewReader(svg))
		for {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", notation.Print(p), err)
			}
		}
		if s.Alt == "" || !strings.Contains(s.Alt, notation.Sentences(p)[0]) {
			t.Fatalf("%s: what it shows is not said: %q", notation.Print(p), s.Alt)
		}
		for _, x := range s.Shapes {
			if c, is := x.(picture.Circle); is && (c.At.X < 0 || c.At.X > s.Width || c.At.Y < 0 || c.At.Y > s.Height) {
				t.Errorf("%s: a circle at %v is outside", notation.Print(p), c.At)
			}
		}
		if again, _ := picture.Of(p, picture.Mark{}); string(again.SVG()) != svg {
			t.Fatalf("%s: drawn twice, it differs", notation.Print(p))
		}
	}
	if drawn < 250 {
		t.Errorf("%d of 500 plays have a picture", drawn)
	}
}

// Words of a play cannot break out of the picture.
func TestHostile(t *testing.T) {
	s := picture.Scene{Width: 10, Height: 10, Title: `<script>"'&`, Alt: "\x00</desc><script>", Shapes: []picture.Shape{picture.Label{Text: "</text><script>alert(1)</script>"}}}
	if svg := string(s.SVG()); strings.Contains(svg, "<script") {
		t.Errorf("a script is in %s", svg)
	}
}

func BenchmarkSVG(b *testing.B) {
	r, err := notation.Read("A passes, A sets, A outside attacks, B middle blocks, B middle touches the net")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		s, _ := picture.Of(r.Rally, picture.Mark{})
		s.SVG()
	}
}
