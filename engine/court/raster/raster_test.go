package raster

import (
	"bytes"
	"image/png"
	"testing"

	"example.org/netpost/engine/court/picture"
	"example.org/netpost/engine/notation"
)

func scene(t testing.TB) picture.Scene {
	t.Helper()
	r, err := notation.Read("A passes, A sets, A outside attacks, B middle blocks, B middle touches the net")
	if err != nil {
		t.Fatal(err)
	}
	s, ok := picture.Of(r.Rally, picture.Mark{Event: "e5", Words: "fault: net contact"})
	if !ok {
		t.Fatal("nothing to draw")
	}
	return s
}

// The image has the picture's size and colours, and comes out the same twice.
func TestPNG(t *testing.T) {
	s := scene(t)
	b, err := PNG(s)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	if got := img.Bounds().Size(); got.X != int(s.Width*Scale) || got.Y != int(s.Height*Scale) {
		t.Errorf("it is %v large, want %v by %v, each %v times", got, s.Width, s.Height, Scale)
	}
	if r, g, bl, _ := img.At(2, 2).RGBA(); r>>8 != 0xFB || g>>8 != 0xF9 || bl>>8 != 0xF5 {
		t.Errorf("its paper is %x %x %x", r>>8, g>>8, bl>>8)
	}
	seen := map[[3]uint32]bool{}
	for y := range img.Bounds().Dy() {
		for x := range img.Bounds().Dx() {
			r, g, bl, _ := img.At(x, y).RGBA()
			seen[[3]uint32{r >> 8, g >> 8, bl >> 8}] = true
		}
	}
	for _, c := range [][3]uint32{{0x1D, 0x5C, 0x9E}, {0xA4, 0x47, 0x1A}, {0xB0, 0x12, 0x3B}} {
		if !seen[c] {
			t.Errorf("the colour %x is nowhere in it", c)
		}
	}
	if again, _ := PNG(s); !bytes.Equal(again, b) {
		t.Error("drawn twice, it differs")
	}
}

func BenchmarkPNG(b *testing.B) {
	s := scene(b)
	for b.Loop() {
		if _, err := PNG(s); err != nil {
			b.Fatal(err)
		}
	}
}
