// Package raster prints a picture as PNG. It is the one package of the engine
// that imports from outside, and nothing in the engine imports it.
package raster

import (
	"bytes"
	"image/color"
	"image/png"
	"strconv"
	"sync"

	"github.com/fogleman/gg"
	"github.com/golang/freetype/truetype"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"example.org/netpost/engine/court/picture"
)

// Scale is how many pixels of the image one of the picture is.
const Scale = 1.5

// fonts are read once; a face is made anew for each image, since it may not be
// shared.
var fonts = sync.OnceValues(func() (*truetype.Font, *truetype.Font) {
	plain, err := truetype.Parse(goregular.TTF)
	if err != nil {
		panic("raster: the font that comes with the program cannot be read: " + err.Error())
	}
	bold, err := truetype.Parse(gobold.TTF)
	if err != nil {
		panic("raster: the font that comes with the program cannot be read: " + err.Error())
	}
	return plain, bold
})

// PNG prints a picture. Its error is that of the encoder.
func PNG(s picture.Scene) ([]byte, error) {
	c := gg.NewContext(int(s.Width*Scale), int(s.Height*Scale))
	c.Scale(Scale, Scale)
	faces := map[faceKey]font.Face{}
	for _, x := range s.Shapes {
		draw(c, x, faces)
	}
	var b bytes.Buffer
	e := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := e.Encode(&b, c.Image()); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

type faceKey struct {
	size float64
	bold bool
}

func draw(c *gg.Context, x picture.Shape, faces map[faceKey]font.Face) {
	switch x := x.(type) {
	case picture.Line:
		c.DrawLine(x.From.X, x.From.Y, x.To.X, x.To.Y)
		paint(c, x.Style)
	case picture.Path:
		run(c, x.Points)
		x.Fill = ""
		paint(c, x.Style)
	case picture.Circle:
		c.DrawCircle(x.At.X, x.At.Y, x.Radius)
		paint(c, x.Style)
	case picture.Rect:
		c.DrawRoundedRectangle(x.At.X, x.At.Y, x.Width, x.Height, x.Round)
		paint(c, x.Style)
	case picture.Polygon:
		run(c, x.Points)
		c.ClosePath()
		paint(c, x.Style)
	case picture.Label:
		label(c, x, faces)
	}
}

func run(c *gg.Context, ps []picture.Point) {
	for i, p := range ps {
		if i == 0 {
			c.MoveTo(p.X, p.Y)
		} else {
			c.LineTo(p.X, p.Y)
		}
	}
}

// paint fills and strokes the path drawn.
func paint(c *gg.Context, s picture.Style) {
	if s.Fill != "" {
		c.SetColor(rgb(s.Fill))
		c.FillPreserve()
	}
	if s.Stroke != "" {
		c.SetColor(rgb(s.Stroke))
		c.SetLineWidth(s.Width * Scale)
		if s.Dash {
			c.SetDash(4*Scale, 3*Scale)
		} else {
			c.SetDash()
		}
		c.StrokePreserve()
	}
	c.ClearPath()
}

// label writes one line. The library does not scale letters with the drawing,
// so the face is as large as the image needs and the place is worked out here.
func label(c *gg.Context, x picture.Label, faces map[faceKey]font.Face) {
	k := faceKey{x.Size, x.Bold}
	f, ok := faces[k]
	if !ok {
		plain, bold := fonts()
		if x.Bold {
			plain = bold
		}
		f = truetype.NewFace(plain, &truetype.Options{Size: x.Size * Scale, DPI: 72})
		faces[k] = f
	}
	c.Push()
	c.Identity()
	c.SetFontFace(f)
	c.SetColor(rgb(x.Color))
	across := map[picture.Anchor]float64{picture.Middle: 0.5, picture.End: 1}[x.Anchor]
	c.DrawStringAnchored(x.Text, x.At.X*Scale, x.At.Y*Scale, across, 0)
	c.Pop()
}

// rgb reads #rrggbb; any other text is black.
func rgb(s picture.Color) color.Color {
	n, err := strconv.ParseUint(string(s[1:]), 16, 32)
	if err != nil {
		return color.Black
	}
	return color.RGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 0xFF}
}
