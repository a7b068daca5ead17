package bot

import (
	"fmt"
	"strings"
)

// CutMark stands where a text was cut.
const CutMark = "…"

// Pages lays a message out in pages that a target can take; fits says whether
// it can. The buttons are on every page, and each page says that there is more
// and leads to it. A message that fits is one page, as it is. Nothing of the
// words is lost: what is cut from a page begins the next. Where More is empty,
// or too long for a button, nothing leads on and the mark says so.
//
// Fits must take a page of a short line with two buttons, and must not take a
// longer page where it refused a shorter one.
func Pages(m Message, fits func(Doc) bool) []Doc {
	if fits(m.Doc) {
		return []Doc{m.Doc}
	}
	p := pager{more: m.More, tone: m.Doc.Tone, fits: fits}
	var left []atom
	for i, b := range m.Doc.Blocks {
		if bs, ok := b.(Buttons); ok {
			p.buttons = append(p.buttons, bs)
			continue
		}
		left = append(left, atoms(i, b)...)
	}
	p.fewer()
	for len(left) > 0 {
		a := left[0]
		switch {
		case p.takes(append(p.now, a)):
			p.now, left = append(p.now, a), left[1:]
		case len(p.now) > 0 && p.takes([]atom{a}):
			p.turn()
		default:
			head, tail, ok := p.cut(a)
			if !ok && len(p.now) > 0 {
				p.turn()
				continue
			}
			p.now = append(p.now, head)
			p.turn()
			left = left[1:]
			if tail != nil {
				left = append([]atom{*tail}, left...)
			}
		}
	}
	if len(p.now) > 0 || len(p.pages) == 0 {
		p.turn()
	}
	return p.docs()
}

// Page is the page to show of a message that was laid out in pages: its own,
// or the nearest that there is.
func Page(m Message, pages []Doc) Doc { return pages[min(max(m.Page, 0), len(pages)-1)] }

// pager is a message on its way into pages.
type pager struct {
	more    string
	tone    Tone
	fits    func(Doc) bool
	buttons []Block
	now     []atom
	pages   [][]atom
	short   bool // there was no room for all buttons
}

// turn ends the page.
func (p *pager) turn() { p.pages, p.now = append(p.pages, p.now), nil }

// takes reports whether a page of these has room for the way to the rest too.
func (p *pager) takes(as []atom) bool { return p.fits(p.page(as, 100, 1000)) }

// fewer leaves buttons away until a page with a word fits.
func (p *pager) fewer() {
	word := []atom{{block: Para{Line(CutMark)}}}
	for len(p.buttons) > 0 && !p.takes(word) {
		p.short = true
		last := p.buttons[len(p.buttons)-1].(Buttons)
		p.buttons = p.buttons[:len(p.buttons)-1]
		if n := len(last.Items); n > 1 {
			last.Items = last.Items[:n-1]
			p.buttons = append(p.buttons, last)
		}
	}
}

// page is one page out of n, laid out.
func (p *pager) page(as []atom, i, n int) Doc {
	d := Doc{Tone: p.tone}
	for j, a := range as {
		if j > 0 && as[j-1].of == a.of {
			if b, ok := joined(d.Blocks[len(d.Blocks)-1], a.block); ok {
				d.Blocks[len(d.Blocks)-1] = b
				continue
			}
		}
		d.Blocks = append(d.Blocks, a.block)
	}
	var turn []Button
	if i > 0 {
		if s := MoreState(p.more, i-1); s != "" {
			turn = append(turn, Button{"Earlier", s})
		}
	}
	leads := true
	if i < n-1 {
		s := MoreState(p.more, i+1)
		if leads = s != ""; leads {
			turn = append(turn, Button{"More", s})
		}
	}
	mark := fmt.Sprintf("%s page %d of %d", CutMark, i+1, n)
	if !leads {
		mark = CutMark + " cut here: the rest does not fit in this place"
	}
	if p.short {
		mark += "; some buttons had no room"
	}
	d.Blocks = append(d.Blocks, Aside{Line(mark)})
	d.Blocks = append(d.Blocks, p.buttons...)
	if len(turn) > 0 {
		d.Blocks = append(d.Blocks, Buttons{Label: "Pages", Items: turn})
	}
	return d
}

func (p *pager) docs() []Doc {
	var out []Doc
	for i, as := range p.pages {
		out = append(out, p.page(as, i, len(p.pages)))
	}
	return out
}

// cut parts what is too long for a page at a space, so that its head fits
// after what is on the page already. It reports false where not even a word
// does.
func (p *pager) cut(a atom) (head atom, tail *atom, ok bool) {
	text, with := a.text()
	room := func(n int) bool {
		return p.takes(append(p.now, atom{a.of, with(append(text.before(n), Span{Text: CutMark}))}))
	}
	at := 0
	for lo, hi := 1, text.len(); lo <= hi; {
		if mid := (lo + hi) / 2; room(mid) {
			at, lo = mid, mid+1
		} else {
			hi = mid - 1
		}
	}
	if at > 0 && at < text.len() {
		whole := strings.LastIndexByte(text.before(at).String(), ' ')
		switch {
		case whole > 0:
			at = len([]rune(text.before(at).String()[:whole])) + 1
		case len(p.now) > 0:
			at = 0 // the word has room on the next page
		}
	}
	ok = at > 0
	at = max(at, 1)
	head = atom{a.of, with(append(text.before(at), Span{Text: CutMark}))}
	if rest := text.after(at); rest.len() > 0 {
		tail = &atom{a.of, with(rest)}
	}
	return head, tail, ok
}

// len is the number of letters.
func (t Text) len() int { return len([]rune(t.String())) }

// before is the first n letters.
func (t Text) before(n int) Text {
	var out Text
	for _, s := range t {
		r := []rune(s.Text)
		k := min(n, len(r))
		if k > 0 {
			out = append(out, Span{string(r[:k]), s.Style})
		}
		n -= k
	}
	return out
}

// after is all but the first n letters.
func (t Text) after(n int) Text {
	var out Text
	for _, s := range t {
		r := []rune(s.Text)
		k := min(n, len(r))
		if k < len(r) {
			out = append(out, Span{string(r[k:]), s.Style})
		}
		n -= k
	}
	return out
}
