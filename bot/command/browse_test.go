package command

import (
	"net/http"
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

// The exported pages work from the disk, their search too.
func TestBrowserExport(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	if out, errs, status := run("", "export", dir); status != ok {
		t.Fatalf("status %d\n%s%s", status, out, errs)
	}
	w := open(t, "file://"+filepath.ToSlash(dir))
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
