package casebook

import (
	"fmt"
	"net/url"
	"strings"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// markdown is the one dialect of notes: common Markdown with tables, strike-
// through, task lists and bare links. HTML in it is dropped, never rendered.
var markdown = goldmark.New(
	goldmark.WithExtensions(extension.GFM),
	goldmark.WithParserOptions(parser.WithAutoHeadingID()),
)

// Plain is the body as text without marks, a line for each block, for search
// and for places that show no Markdown.
func (n *Note) Plain() string {
	src := []byte(n.Body)
	var b strings.Builder
	line := func() {
		if s := b.String(); s != "" && s[len(s)-1] != '\n' {
			b.WriteByte('\n')
		}
	}
	walk(src, func(x ast.Node, entering bool) {
		switch x := x.(type) {
		case *ast.Text:
			if entering {
				b.Write(x.Value(src))
				if x.SoftLineBreak() || x.HardLineBreak() {
					b.WriteByte(' ')
				}
			}
		case *ast.String:
			if entering {
				b.Write(x.Value)
			}
		case *ast.AutoLink:
			if entering {
				b.Write(x.Label(src))
			}
		case *ast.CodeBlock:
			if entering {
				b.Write(x.Lines().Value(src))
			}
		case *ast.FencedCodeBlock:
			if entering {
				b.Write(x.Lines().Value(src))
			}
		case *east.TableCell:
			if !entering {
				b.WriteByte(' ')
			}
		default:
			if x.Type() == ast.TypeBlock && !entering {
				line()
			}
		}
	})
	return strings.TrimSpace(b.String())
}

func walk(src []byte, visit func(n ast.Node, entering bool)) {
	doc := markdown.Parser().Parse(text.NewReader(src))
	// The visitor never fails, so the walk does not.
	_ = ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		visit(n, entering)
		return ast.WalkContinue, nil
	})
}

// bodyLine is the file's line of a byte of the body.
func (n *Note) bodyLine(pos int) int {
	if pos < 0 {
		pos = 0
	}
	before := n.Text[:len(n.Text)-len(n.Body)+min(pos, len(n.Body))]
	return 1 + strings.Count(before, "\n")
}

// checkBody reports the dead links and the HTML of a note's body.
func checkBody(c *checker, n *Note) []Finding {
	if n.Body == "" {
		return nil
	}
	var out []Finding
	report := func(check string, pos int, what, mend string) {
		line := n.bodyLine(pos)
		out = append(out, Finding{Check: check, Path: n.Path, Line: line, What: what, Mend: mend, Source: sourceLine(n.Text, line)})
	}
	src := []byte(n.Body)
	headings := map[string]bool{}
	type link struct {
		to  string
		pos int
	}
	var links []link
	walk(src, func(x ast.Node, entering bool) {
		if !entering {
			return
		}
		switch x := x.(type) {
		case *ast.Heading:
			if id, ok := x.AttributeString("id"); ok {
				if id, ok := id.([]byte); ok {
					headings[string(id)] = true
				}
			}
		case *ast.Link:
			links = append(links, link{string(x.Destination), x.Pos()})
		case *ast.Image:
			links = append(links, link{string(x.Destination), x.Pos()})
		case *ast.AutoLink:
			if x.AutoLinkType == ast.AutoLinkURL {
				links = append(links, link{string(x.URL(src)), x.Pos()})
			}
		case *ast.HTMLBlock:
			pos := x.Pos()
			if x.Lines().Len() > 0 {
				pos = x.Lines().At(0).Start
			}
			report(checkHTML, pos, "HTML is not shown and is left out", "write it in Markdown")
		case *ast.RawHTML:
			pos := x.Pos()
			if x.Segments.Len() > 0 {
				pos = x.Segments.At(0).Start
			}
			report(checkHTML, pos, "HTML is not shown and is left out", "write it in Markdown, or put it in `code`")
		}
	})
	for _, l := range links {
		if what, mend := c.dead(n, l.to, headings); what != "" {
			report(checkLink, l.pos, what, mend)
		}
	}
	return out
}

// dead says what is wrong with a link of a note, nothing when it is alive. A
// link to the web is not followed.
func (c *checker) dead(n *Note, to string, headings map[string]bool) (what, mend string) {
	u, err := url.Parse(to)
	if err != nil {
		return "the link to " + quote(to) + " can't be read", "write a path relative to the note, or https://…"
	}
	switch u.Scheme {
	case "http", "https", "mailto":
		return "", ""
	case "":
	default:
		return "a link may not begin with " + quote(u.Scheme+":"), "use https, http, mailto or a path relative to the note"
	}
	if u.Host != "" {
		return "the link to " + quote(to) + " names a host without https:", "write it whole"
	}
	if u.Path == "" {
		if u.Fragment != "" && !headings[u.Fragment] {
			return "there is no heading #" + u.Fragment + " in this note", "mend the link or the heading"
		}
		if to == "" {
			return "the link leads nowhere", "name the file or page"
		}
		return "", ""
	}
	p, ok := inside(n.Path, u.Path)
	if !ok {
		return "the link to " + quote(to) + " leads out of the folder", "put the file into the folder, and write its path relative to the note"
	}
	if _, ok := c.book.files[p]; ok {
		return "", ""
	}
	mend = "mend the path, or put the file there"
	if id := idOfPath(p + ".md"); id != "" || idForm().MatchString(u.Path) {
		if t := c.book.byID[u.Path]; t != nil {
			mend = fmt.Sprintf("write the note's file, %s", relative(n.Path, t.Path))
		} else if t := c.book.byID[idOfPath(p)]; t != nil {
			mend = fmt.Sprintf("the note is now in %s", relative(n.Path, t.Path))
		}
	}
	return "there is no file " + p, mend
}

// links gathers the paths that the notes' texts link to.
func (c *checker) links() map[string]bool {
	out := map[string]bool{}
	for _, n := range c.book.notes {
		walk([]byte(n.Body), func(x ast.Node, entering bool) {
			l, ok := x.(*ast.Link)
			if !ok || !entering {
				return
			}
			if u, err := url.Parse(string(l.Destination)); err == nil && u.Scheme == "" {
				if p, ok := inside(n.Path, u.Path); ok {
					out[p] = true
				}
			}
		})
	}
	return out
}

// relative is a path of the folder as it is written in a note's file.
func relative(note, to string) string {
	from := strings.Split(note, "/")
	way := strings.Split(to, "/")
	from = from[:len(from)-1]
	for len(from) > 0 && len(way) > 1 && from[0] == way[0] {
		from, way = from[1:], way[1:]
	}
	return strings.Repeat("../", len(from)) + strings.Join(way, "/")
}
