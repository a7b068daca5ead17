package bot

import (
	"bufio"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// DefaultWidth is the number of columns that plain text is set in.
const DefaultWidth = 80

// minWidth keeps the label column and some text beside it.
const minWidth = 30

// maxLabel bounds the label column, so that one long label does not squeeze
// the text of all others.
const maxLabel = 14

// TextOptions say how plain text is set.
type TextOptions struct {
	// Width is the number of columns, DefaultWidth when zero. No line is
	// longer; a word that would be is cut.
	Width int
	// Color puts in the escape codes of a terminal. Leave it off where the
	// text goes to a file or another program.
	Color bool
}

// Print writes a message as plain text. Control characters in the message's
// words are not passed on, so a question cannot steer the reader's terminal.
// The error is the writer's.
func Print(w io.Writer, d Doc, o TextOptions) error {
	if o.Width == 0 {
		o.Width = DefaultWidth
	}
	p := &textPrinter{w: bufio.NewWriter(w), width: max(o.Width, minWidth), color: o.Color, label: labelWidth(d)}
	for i, b := range d.Blocks {
		if i > 0 && apart(d.Blocks[i-1], b) {
			p.w.WriteByte('\n')
		}
		p.block(b)
	}
	return p.w.Flush()
}

// apart reports whether a blank line stands between two blocks. Labelled
// blocks stand close, so that their labels read as one column, and so do
// links.
func apart(a, b Block) bool { return group(a) == 0 || group(a) != group(b) }

func group(b Block) int {
	switch b.(type) {
	case Fields, Tree, Buttons:
		return 1
	case Link:
		return 2
	}
	return 0
}

// labelWidth is the width of the message's label column, gap included.
func labelWidth(d Doc) int {
	n := 0
	see := func(s string) {
		if k := columns(s); k <= maxLabel {
			n = max(n, k)
		}
	}
	for _, b := range d.Blocks {
		switch b := b.(type) {
		case Fields:
			for _, f := range b.Items {
				see(f.Label)
			}
		case Tree:
			see(b.Label)
		case Buttons:
			see(b.Label)
		}
	}
	return n + 2
}

type textPrinter struct {
	w     *bufio.Writer
	width int
	label int
	color bool
}

func (p *textPrinter) block(b Block) {
	switch b := b.(type) {
	case Heading:
		p.fill(Text{{b.Text, Strong}}, "", "", toneCode(b.Tone))
	case Para:
		p.fill(b.Text, "", "", "")
	case List:
		for _, t := range b.Items {
			p.fill(t, "- ", "  ", "")
		}
	case Quote:
		p.fill(b.Text, "> ", "> ", "")
	case Fields:
		for _, f := range b.Items {
			p.field(f.Label, len(f.Lines), func(i int, first, rest string) {
				p.fill(f.Lines[i], first, rest, "")
			})
		}
	case Tree:
		p.tree(b)
	case Buttons:
		p.field(b.Label, len(b.Items), func(i int, first, rest string) {
			p.fill(Text{{Text: b.Items[i].Label + ": "}, {b.Items[i].State, Strong}}, first, rest, "")
		})
	case Link:
		t := Text{{Text: b.Label, Style: Strong}}
		if b.URL != "" {
			t = append(t, Span{Text: " " + b.URL})
		}
		p.fill(t, "", "", "")
	case Aside:
		p.fill(b.Text, "", "", codeFaint)
	default:
		panic(fmt.Sprintf("bot: Print: unknown block %T", b))
	}
}

// field sets n lines beside one label. A label too long for the column has a
// line of its own.
func (p *textPrinter) field(label string, n int, line func(i int, first, rest string)) {
	if n == 0 {
		return
	}
	rest := strings.Repeat(" ", p.label)
	first := clean(label)
	if k := columns(first); k+2 <= p.label {
		first += strings.Repeat(" ", p.label-k)
	} else {
		p.fill(Text{{label, Strong}}, "", "", "")
		first = rest
	}
	for i := range n {
		line(i, first, rest)
		first = rest
	}
}

func (p *textPrinter) tree(t Tree) {
	p.field(t.Label, 1, func(_ int, first, rest string) {
		p.fill(Text{{t.Root.Ask, Strong}}, first, rest, "")
		p.kids(t.Root.Kids, rest)
	})
}

func (p *textPrinter) kids(kids []Kid, indent string) {
	for _, k := range kids {
		line := Text{{Text: k.When + ": "}}
		if k.Next == nil {
			line = append(line, Span{Text: k.Then, Style: Strong})
			p.fill(line, indent+"- ", indent+"  ", "")
			continue
		}
		p.fill(append(line, Span{Text: k.Next.Ask}), indent+"- ", indent+"  ", "")
		p.kids(k.Next.Kids, indent+"  ")
	}
}

// The terminal's escape codes.
const (
	codeStrong = "\x1b[1m"
	codeFaint  = "\x1b[2m"
	codeReset  = "\x1b[0m"
)

func toneCode(t Tone) string {
	switch t {
	case Good:
		return "\x1b[32m"
	case Bad, Care:
		return "\x1b[31m"
	case Again, Open:
		return "\x1b[33m"
	}
	return ""
}

func styleCode(s Style) string {
	switch s {
	case Strong:
		return codeStrong
	case Faint:
		return codeFaint
	}
	return ""
}

// fill sets text in lines that fit the width: the first after one prefix, the
// others after another of the same width.
func (p *textPrinter) fill(t Text, first, rest, code string) {
	p.w.WriteString(first)
	at := columns(first)
	used := at
	for i, w := range words(t, p.width-at) {
		n := w.columns()
		switch {
		case i == 0:
		case used+1+n > p.width && used > at:
			p.w.WriteByte('\n')
			p.w.WriteString(rest)
			used = at
		default:
			p.w.WriteByte(' ')
			used++
		}
		p.word(w, code)
		used += n
	}
	p.w.WriteByte('\n')
}

func (p *textPrinter) word(w word, code string) {
	for _, s := range w {
		c := code + styleCode(s.Style)
		if !p.color || c == "" {
			p.w.WriteString(s.Text)
			continue
		}
		p.w.WriteString(c)
		p.w.WriteString(s.Text)
		p.w.WriteString(codeReset)
	}
}

// word is what may not be broken: one word, in more than one style at times.
type word []Span

func (w word) columns() int {
	n := 0
	for _, s := range w {
		n += columns(s.Text)
	}
	return n
}

// cut is the word in pieces that are no wider than most.
func (w word) cut(most int) []word {
	if w.columns() <= most {
		return []word{w}
	}
	var out []word
	var now word
	used := 0
	for _, s := range w {
		from := 0
		for i, r := range s.Text {
			n := columns(string(r))
			if used+n > most && used > 0 {
				out, now = append(out, append(now, Span{s.Text[from:i], s.Style})), nil
				from, used = i, 0
			}
			used += n
		}
		now = append(now, Span{s.Text[from:], s.Style})
	}
	return append(out, now)
}

// words cuts a text at its spaces, through spans. A word wider than most is
// cut too.
func words(t Text, most int) []word {
	var out []word
	var now word
	end := func() {
		if len(now) > 0 {
			out, now = append(out, now.cut(most)...), nil
		}
	}
	for _, s := range t {
		text := clean(s.Text)
		for text != "" {
			i := strings.IndexByte(text, ' ')
			switch i {
			case 0:
				end()
				text = text[1:]
			case -1:
				now, text = append(now, Span{text, s.Style}), ""
			default:
				now, text = append(now, Span{text[:i], s.Style}), text[i:]
			}
		}
	}
	end()
	return out
}

// clean takes away what would steer a terminal or turn the reading direction:
// any such character and any white space becomes one space.
func clean(s string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r == utf8.RuneError:
			return '?'
		case unicode.IsSpace(r), unicode.IsControl(r), unicode.Is(unicode.Cf, r):
			return ' '
		}
		return r
	}, s)
}

// columns counts the columns of a text: one a letter, none a mark that stands
// on a letter, two a wide letter.
func columns(s string) int {
	n := 0
	for _, r := range s {
		switch {
		case unicode.In(r, unicode.Mn, unicode.Me):
		case r >= 0x1100 && unicode.In(r, unicode.Han, unicode.Hangul, unicode.Hiragana, unicode.Katakana), r >= 0xFF01 && r <= 0xFF60, r >= 0x1F300 && r <= 0x1FAFF:
			n += 2
		default:
			n++
		}
	}
	return n
}
