package command

import (
	"fmt"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// A newcomer opens the address, is helped to type, asks, presses the fact that
// was missing, sees the ruling change, looks at the other codes, opens a note,
// searches, reads the feed, and shares a link, in a real browser.
func TestBrowser(t *testing.T) {
	base := local(t)
	w := open(t, base)
	w.visit("/")
	w.shows("Tell me a play", "Plays to try")
	w.shot("1-first")
	w.accessible("first page")

	// Completion: it comes as one types, and the arrow keys and Enter take one.
	w.do(chromedp.Focus("#words"), chromedp.SendKeys("#words", "our setter tips the ball ov"), chromedp.WaitVisible("#words-completions li"))
	w.shot("2-completing")
	w.accessible("completions")
	w.do(chromedp.SendKeys("#words", kb.ArrowDown))
	active, err := chromedp.Run(w.ctx, chromedp.Evaluate[string](`document.getElementById(document.getElementById('words').getAttribute('aria-activedescendant')).textContent`))
	if err != nil || !strings.HasPrefix(active, "our setter tips the ball ov") {
		t.Errorf("the arrow key marks %q, %v", active, err)
	}
	w.enter()
	if got := eval[string](w, `document.getElementById('words').value`); got != active {
		t.Errorf("Enter takes %q, not %q", got, active)
	}
	if at := eval[string](w, `location.pathname`); at != "/" {
		t.Errorf("taking a completion leads to %s", at)
	}
	w.do(chromedp.SendKeys("#words", kb.Escape))

	// The question, by keyboard alone: Enter sends it, and the answer has the focus.
	w.fill("#words", "")
	w.do(chromedp.SendKeys("#words", "our setter tips the ball over from inside the 3m line, ball above the net"))
	w.enter()
	w.do(chromedp.WaitVisible("h2.lead"))
	w.shows("It turns on this", "You asked", "Only you see this")
	if id := eval[string](w, `document.activeElement.id`); id != "answer" {
		t.Errorf("after the question the focus is on %q", id)
	}
	w.shot("3-turns-on")
	w.accessible("a question")
	w.press("back row")
	w.shows("Fault: back-row attack", "Told since")
	if s := w.text(); strings.Contains(s, "It turns on this") {
		t.Errorf("after the press the question is still open:\n%s", s)
	}
	w.shot("4-ruling")
	w.accessible("a ruling")
	w.press("Other codes")
	w.shows("Every code", "international")
	w.shot("5-codes")
	w.press("The ruling")

	// Its note.
	w.shows("turns on the same")
	w.do(chromedp.Click("p.link a"), chromedp.WaitVisible("p.meta"))
	w.shows("The play", "Where it belongs", "Examples")
	w.shot("6-note")
	w.accessible("a note")
	w.back("h2.lead")

	// Shared, it has a link; the list of questions has it.
	w.press("Share with the channel")
	w.shows("Link to this question")
	w.shot("7-shared")
	w.accessible("a shared answer")
	w.visit("/")
	w.shows("Asked before", "all here see it")
	w.shot("8-asked")
	w.accessible("what was asked")

	w.visit("/search")
	w.do(chromedp.SendKeys("#q", "joust above the net"), chromedp.Submit("#q"), chromedp.WaitVisible(".hits h3"))
	w.shows("Read the note")
	w.shot("9-search")
	w.accessible("search")
	w.visit("/help")
	w.shot("10-help")
	w.accessible("help")

	for _, p := range []struct{ path, name string }{{"/notes/", "11-notes"}, {"/notes/rules/", "12-rules"}, {"/notes/bulletins/", "13-bulletins"}} {
		w.visit(p.path)
		w.shot(p.name)
		w.accessible(p.name)
	}
	status, feed := fetch(t, base+"/notes/feed.atom")
	if status != http.StatusOK || !strings.Contains(feed, "<feed xmlns=") || strings.Count(feed, "<entry>") < 10 {
		t.Errorf("the feed: %d\n%.300s", status, feed)
	}
}

// The README's own question: answered with a picture and with notes that open.
func TestBrowserNewcomer(t *testing.T) {
	w := open(t, local(t))
	w.visit("/")
	w.press("ball in plane, both front row, fourth contact?") // one of the plays to try
	w.press("Rule on it")
	w.do(chromedp.WaitVisible(".asked"))
	w.shows("You asked ball in plane, both front row, fourth contact?", "Read as")
	if alt := eval[string](w, `document.querySelector('.picture img').alt`); !strings.Contains(alt, "from the side and from above") {
		t.Errorf("the picture says %q", alt)
	}
	w.shot("19-newcomer")
	w.accessible("the first answer")
	w.do(chromedp.Click("p.link a"), chromedp.WaitVisible("p.meta"))
	w.shows("The play", "Examples")
}

// What somebody else wrote runs nothing in the browser, neither as a question
// nor as a note.
func TestBrowserHostile(t *testing.T) {
	w := open(t, local(t))
	w.visit("/")
	const script = `<img src=x onerror="document.title='owned'"><script>document.title='owned'</script>`
	w.fill("#words", script+" our setter tips the ball over, ball above the net")
	w.do(chromedp.Submit("#words"), chromedp.WaitVisible("#answer"))
	w.shows("<script>")
	if title := eval[string](w, `document.title`); strings.Contains(title, "owned") {
		t.Errorf("the question ran: %s", title)
	}
	if n := eval[int](w, `document.querySelectorAll('#main img[src=x], #main script').length`); n > 0 {
		t.Errorf("the question has become %d elements", n)
	}
	// Even what got into a page would not run.
	eval[string](w, `(() => { const s = document.createElement('script'); s.textContent = "document.title = 'owned'"; document.body.append(s); const i = document.createElement('img'); i.setAttribute('onerror', "document.title = 'owned'"); i.src = 'data:,'; document.body.append(i); return '' })()`)
	until(t, "the page to settle", func() bool { return eval[bool](w, `document.readyState === 'complete'`) })
	if title := eval[string](w, `document.title`); strings.Contains(title, "owned") {
		t.Errorf("script that got into a page ran: %s", title)
	}
}

// A note that somebody wrote to harm its readers runs nothing in their browser
// and loads nothing from elsewhere.
func TestBrowserHostileNote(t *testing.T) {
	book := t.TempDir()
	writeNote(t, book, `"<script>document.title='owned'</script>"`)
	file := filepath.Join(book, "2026-001.md")
	note, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	const harm = `
<script>document.title = 'owned'</script>
<img src=x onerror="document.title = 'owned'"> <svg onload="document.title = 'owned'"></svg>
<iframe srcdoc="<script>parent.document.title = 'owned'</script>"></iframe>
<style>body { background: url(http://127.0.0.1:9/) }</style>
[press](javascript:document.title='owned') ![far](http://127.0.0.1:9/far.png)
<a href="jav&#x09;ascript:document.title='owned'">press too</a> <div style="position:fixed;inset:0">over all</div>
<form action="http://127.0.0.1:9/"><input name=q><button>send</button></form>
`
	if err := os.WriteFile(file, append(note, harm...), 0o644); err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(t.TempDir(), "public")
	if out, errs, status := run("", "export", "--casebook", book, dir); status != ok {
		t.Fatalf("status %d\n%s%s", status, out, errs)
	}
	w := open(t, "file://"+filepath.ToSlash(dir))
	for _, page := range []string{"/2026-001.html", "/index.html", "/search.html", "/topics/back_row.html"} {
		w.visit(page)
		until(t, "the page to settle", func() bool { return eval[bool](w, `document.readyState === 'complete'`) })
		const count = `[...document.querySelectorAll('main script:not([type="application/json"], [src="search.js"]), main iframe, main svg, main style, main [style], main [onerror], main [onload], main form[action^=http], a[href^="java" i]')].map((e) => e.outerHTML).join('\n')`
		if found := eval[string](w, count); found != "" {
			t.Errorf("%s holds what could harm:\n%s", page, found)
		}
		eval[string](w, `document.querySelectorAll('main a').forEach((a) => { if (a.textContent.includes('press')) a.click() }); ''`)
		if title := eval[string](w, `document.title`); title == "owned" {
			t.Errorf("%s ran what a note says", page)
		}
	}
}

// exported opens the demo's pages, as they are on the disk.
func exported(t *testing.T) *window {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "public")
	if out, errs, status := run("", "export", dir); status != ok {
		t.Fatalf("status %d\n%s%s", status, out, errs)
	}
	return open(t, "file://"+filepath.ToSlash(dir))
}

// On paper a note has its ruling and its text, and nothing to press.
func TestBrowserPrint(t *testing.T) {
	w := exported(t)
	w.visit("/2026-018.html")
	w.printed()
	for selector, shown := range map[string]bool{"header.site nav": false, "p.ruling": true, "div.text": true, "blockquote": true, "figure.picture": true} {
		if got := eval[bool](w, fmt.Sprintf(`!!document.querySelector(%[1]q) && getComputedStyle(document.querySelector(%[1]q)).display !== 'none'`, selector)); got != shown {
			t.Errorf("on paper %s is shown: %t", selector, got)
		}
	}
	if c := eval[string](w, `getComputedStyle(document.documentElement).backgroundColor`); c != "rgb(255, 255, 255)" {
		t.Errorf("paper is %s", c)
	}
	if *shots != "" {
		w.shot("18-printed")
	}
}

// The exported pages work from the disk, their search too.
func TestBrowserExport(t *testing.T) {
	w := exported(t)
	w.visit("/search.html")
	w.do(chromedp.SendKeys("#q", "joust"), chromedp.WaitVisible("#found li"))
	w.shot("14-static-search")
	w.accessible("the search of the pages")
	first := eval[string](w, `document.querySelector('#found a').textContent`)
	w.do(chromedp.Click("#found a"), chromedp.WaitVisible("p.meta"))
	w.shows(first[len("2026-014 "):])
	w.do(chromedp.Click("dl.fields a"), chromedp.WaitVisible("ul.list"))
	w.do(chromedp.Click("ul.list a"), chromedp.WaitVisible("p.meta"))
}
