package casebook

import (
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// hostile is Markdown that would run something, load something, or leave its place.
var hostile = []string{
	"<script>alert(1)</script>", "<img src=x onerror=alert(1)>", "<svg/onload=alert(1)>", "text <b onclick=alert(1)>bold</b>",
	"[x](javascript:alert(1))", "[x](JaVaScRiPt:alert(1))", "[x](java\tscript:alert(1))", "[x](&#106;avascript:alert(1))",
	"[x](data:text/html;base64,PHNjcmlwdD5hbGVydCgxKTwvc2NyaXB0Pg==)", "[x](vbscript:msgbox)", "<javascript:alert(1)>",
	"![x](https://evil.example/a.png)", "![x](//evil.example/a.png)", "![x](data:image/svg+xml;base64,PHN2Zz4=)", "![x](javascript:alert(1))",
	"![x](/absolute.png)", "[x](//evil.example/page)", "![x](a.png \"onerror=alert(1)\")", "[x](a.md 'onclick=\"alert(1)\"')",
	"<iframe src=https://evil.example></iframe>", "<style>*{display:none}</style>", "<link rel=stylesheet href=https://evil.example>",
	"<meta http-equiv=refresh content=0;url=https://evil.example>", "<base href=https://evil.example>", "<form action=https://evil.example><input name=token></form>",
	"# Heading {#evil onclick=alert(1)}", "`<script>`", "```html\n<script>alert(1)</script>\n```", "<!-- --><script>alert(1)</script>",
	"[ref]\n\n[ref]: javascript:alert(1)", "| a |\n|---|\n| <script>alert(1)</script> |", "<https://example.org/\"onmouseover=alert(1)>",
	"https://example.org/?a=<script>", "- [x] <input type=image src=x onerror=alert(1)>", "[x](<javascript:alert(1)>)", "\x00<script>alert(1)</script>",
	"<math><mtext><table><mglyph><style><!--</style><img title=\"--&gt;&lt;img src=1 onerror=alert(1)&gt;\">", "</main></body><script>alert(1)</script>",
}

// Whatever a note's Markdown holds, its HTML runs nothing and loads nothing
// but pictures of the folder.
func TestHostile(t *testing.T) {
	for _, s := range hostile {
		checkPure(t, (&Note{Path: "2026-001.md", Body: s}).HTML(nil))
	}
}

func FuzzHTML(f *testing.F) {
	for _, s := range hostile {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		checkPure(t, (&Note{Path: "2026-001.md", Body: s}).HTML(func(p string) (string, bool) { return "files/" + p, len(p)%2 == 0 }))
	})
}

func checkPure(t *testing.T, text string) {
	t.Helper()
	z := html.NewTokenizer(strings.NewReader(text))
	for z.Next() != html.ErrorToken {
		tok := z.Token()
		if tok.Type == html.TextToken || tok.Type == html.EndTagToken {
			continue
		}
		if tok.Type == html.CommentToken || tok.Type == html.DoctypeToken {
			t.Errorf("a comment is left in %q", text)
		}
		switch tok.Data {
		case "p", "br", "hr", "h2", "h3", "h4", "h5", "h6", "em", "strong", "del", "code", "pre", "blockquote", "ul", "ol", "li",
			"table", "thead", "tbody", "tr", "th", "td", "a", "img":
		default:
			t.Errorf("<%s> is left in %q", tok.Data, text)
		}
		for _, a := range tok.Attr {
			v := strings.ToLower(strings.Join(strings.Fields(a.Val), ""))
			scheme, _, has := strings.Cut(v, ":")
			switch {
			case a.Key == "href" && has && !strings.ContainsAny(scheme, "/?#") && scheme != "http" && scheme != "https" && scheme != "mailto":
				t.Errorf("a link with the scheme %q is left in %q", scheme, text)
			case a.Key == "src" && (strings.Contains(v, ":") || strings.HasPrefix(v, "/")):
				t.Errorf("a picture of elsewhere, %q, is left in %q", a.Val, text)
			case a.Key == "href", a.Key == "src", a.Key == "alt", a.Key == "title", a.Key == "rel", a.Key == "id", a.Key == "start":
			default:
				t.Errorf("the attribute %s is left in %q", a.Key, text)
			}
		}
	}
}

// Links to the folder lead where the pages are; one to what is not published
// leaves its words, and an image of the web is a link.
func TestHTMLLinks(t *testing.T) {
	n := &Note{Path: "2026/2026-001.md", Body: "# Top\n\n[note](2026-002.md#why) [up](../2025/2025-001.md) [draft](2026-003.md) [web](https://example.org/) [here](#top) [out](../../etc)\n\n" +
		"![court](court.png) ![seen **far** off](https://example.org/a.png) ![gone](gone.png)"}
	got := n.HTML(func(p string) (string, bool) {
		if strings.Contains(p, "003") || strings.Contains(p, "gone") {
			return "", false
		}
		return "TO/" + p, true
	})
	for _, want := range []string{
		`<h2 id="top">Top</h2>`, `<a href="TO/2026/2026-002.md#why"`, `<a href="TO/2025/2025-001.md"`, ` draft <a`, `<a href="https://example.org/"`,
		`<a href="#top"`, ` out</p>`, `<img src="TO/2026/court.png" alt="court"`, `<a href="https://example.org/a.png" rel="noreferrer">seen <strong>far</strong> off</a>`, ` gone</p>`,
	} {
		if !strings.Contains(got, want) {
			t.Errorf("%s is not in\n%s", want, got)
		}
	}
}
