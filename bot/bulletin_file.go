package bot

import (
	"fmt"
	"html"
	"strings"
)

// Markdown is the bulletin as a file in Markdown.
func (b Bulletin) Markdown() string {
	var s strings.Builder
	fmt.Fprintf(&s, "# %s\n", mark(b.Title()))
	for _, part := range b.sections() {
		fmt.Fprintf(&s, "\n## %s\n\n", part.title)
		for _, n := range part.notes {
			fmt.Fprintf(&s, "- **%s %s**\n", mark(n.ID), mark(n.Title))
			for _, l := range n.lines() {
				fmt.Fprintf(&s, "  - %s\n", mark(l))
			}
		}
		for _, l := range part.lines {
			fmt.Fprintf(&s, "- %s\n", mark(l))
		}
	}
	if len(b.Asked)+len(b.Disputed) > 0 {
		fmt.Fprintf(&s, "\n%s\n", countedFrom)
	}
	return s.String()
}

// mark keeps words from being read as Markdown: a title is anybody's text.
func mark(s string) string {
	var b strings.Builder
	for i, r := range s {
		switch {
		case strings.ContainsRune("\\`*_[]<>|~#&", r), strings.ContainsRune("+-", r) && i == 0:
			b.WriteByte('\\')
		case r < ' ':
			r = ' '
		}
		b.WriteRune(r)
	}
	return b.String()
}

// HTML is the bulletin as a page that stands alone, without scripts and
// without anything from elsewhere.
func (b Bulletin) HTML() string {
	var s strings.Builder
	e := html.EscapeString
	fmt.Fprintf(&s, "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n"+
		"<style>\nbody { max-width: 42rem; margin: 2rem auto; padding: 0 1rem; font: 1rem/1.5 system-ui, sans-serif; }\n"+
		"small { color: #555; }\n</style>\n</head>\n<body>\n<main>\n<h1>%s</h1>\n", e(b.Title()), e(b.Title()))
	for _, part := range b.sections() {
		fmt.Fprintf(&s, "<h2>%s</h2>\n<ul>\n", e(part.title))
		for _, n := range part.notes {
			fmt.Fprintf(&s, "<li><strong>%s %s</strong>", e(n.ID), e(n.Title))
			for _, l := range n.lines() {
				fmt.Fprintf(&s, "<br>\n%s", e(l))
			}
			s.WriteString("</li>\n")
		}
		for _, l := range part.lines {
			fmt.Fprintf(&s, "<li>%s</li>\n", e(l))
		}
		s.WriteString("</ul>\n")
	}
	if len(b.Asked)+len(b.Disputed) > 0 {
		fmt.Fprintf(&s, "<p><small>%s</small></p>\n", e(countedFrom))
	}
	s.WriteString("</main>\n</body>\n</html>\n")
	return s.String()
}
