package casebook

import (
	"bytes"
	"net/url"
	"regexp"

	"github.com/microcosm-cc/bluemonday"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/text"
)

// HTML is the body as a fragment of HTML that can stand in a page, below its
// title: its headings begin one level lower. HTML and scripts in the Markdown
// are left out, and so is what loads anything from elsewhere: an image of the
// web becomes a link to it.
//
// Links to files of the folder lead where link says, by the file's path from
// the folder's root; where it says false only the words of the link are left.
// Nil leaves them as they are written.
func (n *Note) HTML(link func(path string) (address string, ok bool)) string {
	src := []byte(n.Body)
	doc := markdown.Parser().Parse(text.NewReader(src))
	n.place(doc, link)
	var b bytes.Buffer
	if err := markdown.Renderer().Render(&b, src, doc); err != nil {
		// Only a failing writer makes an error, and a buffer does not fail.
		panic("casebook: rendering a note: " + err.Error())
	}
	return pure.Sanitize(b.String())
}

// place makes the links and headings of a body those of a page.
func (n *Note) place(doc ast.Node, link func(string) (string, bool)) {
	var change []func()
	// The visitor never fails, so the walk does not.
	_ = ast.Walk(doc, func(x ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch x := x.(type) {
		case *ast.Heading:
			x.Level = min(x.Level+1, 6)
		case *ast.Link:
			to, ok := n.address(string(x.Destination), link)
			x.Destination = []byte(to)
			if !ok {
				change = append(change, func() { words(x) })
			}
		case *ast.Image:
			to, ok := n.address(string(x.Destination), link)
			x.Destination = []byte(to)
			if u, err := url.Parse(to); err != nil || !ok {
				change = append(change, func() { words(x) })
			} else if u.Scheme != "" || u.Host != "" {
				change = append(change, func() { linked(x) })
			}
		}
		return ast.WalkContinue, nil
	})
	for _, c := range change {
		c()
	}
}

// address is where a link of the body leads.
func (n *Note) address(to string, link func(string) (string, bool)) (string, bool) {
	u, err := url.Parse(to)
	if err != nil {
		return "", false
	}
	if link == nil || u.Scheme != "" || u.Host != "" || u.Path == "" {
		return to, true
	}
	p, ok := inside(n.Path, u.Path)
	if !ok {
		return "", false
	}
	address, ok := link(p)
	if ok && u.Fragment != "" {
		address += "#" + u.EscapedFragment()
	}
	return address, ok
}

// words leaves of a link or an image its words.
func words(x ast.Node) {
	parent := x.Parent()
	for c := x.FirstChild(); c != nil; c = x.FirstChild() {
		parent.InsertBefore(parent, x, c)
	}
	parent.RemoveChild(parent, x)
}

// linked makes a link of an image.
func linked(x *ast.Image) {
	l := ast.NewLink()
	l.Destination, l.Title = x.Destination, x.Title
	for c := x.FirstChild(); c != nil; c = x.FirstChild() {
		l.AppendChild(l, c)
	}
	x.Parent().ReplaceChild(x.Parent(), x, l)
}

// pure is what HTML may hold: the second of two locks, after the renderer that
// drops HTML.
var pure = func() *bluemonday.Policy {
	p := bluemonday.NewPolicy()
	p.AllowElements("p", "br", "hr", "h2", "h3", "h4", "h5", "h6", "em", "strong", "del", "code", "pre", "blockquote",
		"ul", "ol", "li", "table", "thead", "tbody", "tr", "th", "td")
	p.AllowAttrs("id").Matching(regexp.MustCompile(`^[A-Za-z0-9_-]+$`)).OnElements("h2", "h3", "h4", "h5", "h6")
	p.AllowAttrs("start").Matching(bluemonday.Integer).OnElements("ol")
	p.AllowURLSchemes("http", "https", "mailto")
	p.AllowRelativeURLs(true)
	p.RequireParseableURLs(true)
	p.AllowAttrs("href").OnElements("a")
	p.RequireNoReferrerOnLinks(true)
	p.AllowAttrs("src").Matching(regexp.MustCompile(`^(?:\.\./)*[A-Za-z0-9_~%-][A-Za-z0-9._~%/-]*$`)).OnElements("img")
	p.AllowAttrs("alt", "title").OnElements("img")
	return p
}()
