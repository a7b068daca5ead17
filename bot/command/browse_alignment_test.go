package command

import (
	"fmt"
	"strings"
	"testing"

	keyboard "github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// drag drags a player of the court by so many centimetres: to the right, and
// down.
func (w *window) drag(id string, right, down int) {
	w.t.Helper()
	type point struct{ X, Y, Scale float64 }
	p := eval[point](w, fmt.Sprintf(`(() => {
		document.getElementById(%q).scrollIntoView({ block: 'center', behavior: 'instant' });
		const b = document.querySelector('#%s .body').getBoundingClientRect();
		return { X: b.x + b.width / 2, Y: b.y + b.height / 2, Scale: document.querySelector('[data-board]').getScreenCTM().a };
	})()`, id, id))
	x, y := p.X+float64(right)*p.Scale, p.Y+float64(down)*p.Scale
	w.do(
		chromedp.MouseEvent(keyboard.DispatchMouseEventTypeMousePressed, p.X, p.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
		chromedp.MouseEvent(keyboard.DispatchMouseEventTypeMouseMoved, (p.X+x)/2, (p.Y+y)/2, chromedp.ButtonLeft),
		chromedp.MouseEvent(keyboard.DispatchMouseEventTypeMouseMoved, x, y, chromedp.ButtonLeft),
		chromedp.MouseEvent(keyboard.DispatchMouseEventTypeMouseReleased, x, y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
	)
}

// Players are put in their places by pointer and by keys, and the ruling
// follows at once, under the code that is chosen.
func TestBrowserAlignment(t *testing.T) {
	w := open(t, local(t))
	w.visit("/alignment")
	w.shows("Play on, no fault")
	w.shot("15-positions")
	w.accessible("positions")

	// By pointer: the right back goes ahead of the right front.
	w.drag("a1", 0, -480)
	w.shows("Fault: out of position", "player in 1 stands ahead of the player in 2")
	if n := eval[int](w, `document.querySelectorAll('[data-faults] line').length`); n != 1 {
		t.Errorf("%d pairs are marked on the court", n)
	}
	if got := eval[string](w, `document.querySelector('[data-told]').textContent`); !strings.Contains(got, "A receiving 1, right back: 7.5 m from the left side line, 1.4 m from the net") || !strings.Contains(got, "Fault: out of position") {
		t.Errorf("those who hear the page are told %q", got)
	}
	w.shot("16-overlap")
	w.accessible("an overlap")

	// By keys: back again, half a metre a press; then across, into the lane of
	// the centre back.
	w.do(chromedp.Focus("#a1"))
	for range 8 {
		w.do(chromedp.KeyEvent(kb.ArrowDown, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	w.shows("Play on, no fault")
	for range 7 {
		w.do(chromedp.KeyEvent(kb.ArrowLeft, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
	w.shows("Fault: out of position", "player in 1 stands to the left of the player in 6")

	// By single presses: the player, then the place.
	w.do(chromedp.Click("#a1 .body"))
	if got := eval[string](w, `document.getElementById('a1').getAttribute('aria-pressed')`); got != "true" {
		t.Errorf("pressed, the player says aria-pressed %s", got)
	}
	type point struct{ X, Y float64 }
	p := eval[point](w, `(() => { const m = document.querySelector('[data-board]').getScreenCTM(), q = new DOMPoint(750, 700).matrixTransform(m); return { X: q.x, Y: q.y } })()`)
	w.do(chromedp.MouseClickXY(p.X, p.Y))
	w.shows("Play on, no fault")

	// The side players of a row are compared with each other under some codes only.
	w.drag("a2", -650, 0)
	w.drag("a3", -400, 0)
	w.drag("a4", 150, 0)
	choose := func(code string) {
		eval[string](w, fmt.Sprintf(`(() => { const c = document.getElementById('code'); c.value = %q; c.dispatchEvent(new Event('change')); return '' })()`, code))
	}
	choose("international")
	w.shows("player in 2 stands to the left of the player in 4")
	choose("scholastic")
	until(t, "a ruling under the other code", func() bool {
		return !strings.Contains(w.text(), "player in 2 stands to the left of the player in 4")
	})

	// What is typed says the same, and asked in a chat it gives the same answer.
	typed := eval[string](w, `document.getElementById('words').value`)
	if !strings.HasPrefix(typed, "receiving: 1 at 7.5 m 7 m; 2 at 1 m 2 m; ") {
		t.Errorf("the court is typed as %q", typed)
	}
	w.press("Ask it")
	w.do(chromedp.WaitVisible(".asked"))
	w.shows("You asked", "Fault: out of position")
	if alt := eval[string](w, `document.querySelector('.picture img').alt`); !strings.Contains(alt, "Marked:") {
		t.Errorf("the picture of the answer says %q", alt)
	}
	w.shot("17-alignment-asked")
	w.accessible("an alignment that was asked")

	// Typed lengths go onto the court.
	w.visit("/alignment")
	w.fill("#words", "receiving: 1 at 7.5 m 1 m; 2 at 7.5 m 2 m")
	w.press("Put on the court")
	w.shows("player in 1 stands ahead of the player in 2")
	if n := eval[int](w, `document.querySelectorAll('[data-faults] line').length`); n != 1 {
		t.Errorf("%d pairs are marked of what was typed", n)
	}
}
