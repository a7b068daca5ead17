package picture

import (
	"bytes"
	"strconv"
	"strings"
)

// SVG prints the picture. It names no font that has to be fetched, holds its
// words as text, and says what it shows in title and desc.
func (s Scene) SVG() []byte {
	var b bytes.Buffer
	w, h := num(s.Width), num(s.Height)
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ` + w + ` ` + h + `" width="` + w + `" height="` + h +
		`" role="img" font-family="system-ui, sans-serif">` + "\n")
	b.WriteString("<title>" + escape(s.Title) + "</title>\n<desc>" + escape(s.Alt) + "</desc>\n")
	for _, x := range s.Shapes {
		b.WriteString(element(x))
		b.WriteByte('\n')
	}
	b.WriteString("</svg>\n")
	return b.Bytes()
}

func element(x Shape) string {
	switch x := x.(type) {
	case Line:
		return `<line x1="` + num(x.From.X) + `" y1="` + num(x.From.Y) + `" x2="` + num(x.To.X) + `" y2="` + num(x.To.Y) + `"` + x.Style.svg() + `/>`
	case Path:
		x.Fill = ""
		return `<polyline points="` + points(x.Points) + `"` + x.Style.svg() + `/>`
	case Circle:
		return `<circle cx="` + num(x.At.X) + `" cy="` + num(x.At.Y) + `" r="` + num(x.Radius) + `"` + x.Style.svg() + `/>`
	case Rect:
		s := `<rect x="` + num(x.At.X) + `" y="` + num(x.At.Y) + `" width="` + num(x.Width) + `" height="` + num(x.Height) + `"`
		if x.Round > 0 {
			s += ` rx="` + num(x.Round) + `"`
		}
		return s + x.Style.svg() + `/>`
	case Polygon:
		return `<polygon points="` + points(x.Points) + `"` + x.Style.svg() + `/>`
	case Label:
		s := `<text x="` + num(x.At.X) + `" y="` + num(x.At.Y) + `" font-size="` + num(x.Size) + `" fill="` + string(x.Color) + `"`
		if x.Anchor != "" && x.Anchor != Start {
			s += ` text-anchor="` + string(x.Anchor) + `"`
		}
		if x.Bold {
			s += ` font-weight="700"`
		}
		return s + `>` + escape(x.Text) + `</text>`
	}
	panic("picture: a shape outside the closed set")
}

func (s Style) svg() string {
	out := ` fill="none"`
	if s.Fill != "" {
		out = ` fill="` + string(s.Fill) + `"`
	}
	if s.Stroke != "" {
		out += ` stroke="` + string(s.Stroke) + `" stroke-width="` + num(s.Width) + `"`
	}
	if s.Dash {
		out += ` stroke-dasharray="4 3"`
	}
	return out
}

func points(ps []Point) string {
	var out []string
	for _, p := range ps {
		out = append(out, num(p.X)+","+num(p.Y))
	}
	return strings.Join(out, " ")
}

// num writes a length with one digit after the point where it needs one.
func num(f float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(f, 'f', 1, 64), ".0")
}

// escape makes a text safe in SVG. What XML cannot hold at all is left out.
func escape(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' && r != '\t' && r != '\n' || r == 0xFFFE || r == 0xFFFF {
			return -1
		}
		return r
	}, strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;").Replace(strings.ToValidUTF8(s, "\uFFFD")))
}
