package slack

import (
	"fmt"
	"strconv"
	"strings"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// rendered is one message as Slack takes it.
type rendered struct {
	text   string // for notifications and screen readers, escaped
	blocks []slackapi.Block
}

// render lays the page of a message out that is to be shown.
func render(m bot.Message) rendered {
	d := bot.Page(m, bot.Pages(m, fits))
	return rendered{fallback(d), layout(d)}
}

// options are a message's options of a call. The text goes first, also where
// there are blocks; it is escaped already, since the library escapes the text
// and never the blocks. Names and groups are never asked to be linked.
func (r rendered) options() slackapi.MsgOption {
	return slackapi.MsgOptionCompose(
		slackapi.MsgOptionText(r.text, false),
		slackapi.MsgOptionBlocks(r.blocks...),
		slackapi.MsgOptionDisableLinkUnfurl(),
		slackapi.MsgOptionDisableMediaUnfurl(),
	)
}

// layout is a document as blocks: header, section, context and actions, which
// every way of sending takes. Each is within its own limits; their number and
// the sum of their text may not be.
func layout(d bot.Doc) []slackapi.Block {
	l := &layouter{}
	for i, b := range d.Blocks {
		l.block(b, i)
	}
	l.section()
	return l.blocks
}

// fits reports whether a message is within the limits. Those of single texts
// and buttons are kept in the layout itself.
func fits(d bot.Doc) bool {
	n, blocks := 0, 0
	l := &layouter{}
	for i, b := range d.Blocks {
		l.block(b, i)
		if i == len(d.Blocks)-1 {
			l.section()
		}
		for _, b := range l.blocks {
			n += blockSize(b)
		}
		blocks += len(l.blocks)
		l.blocks = l.blocks[:0]
		if n > maxMessage || blocks > maxBlocks {
			return false
		}
	}
	return true
}

type layouter struct {
	blocks  []slackapi.Block
	lines   []string // of the section that is being filled
	kind    string   // of block that the lines are of
	buttons int
}

// line is put into the section of its kind; a new kind begins a new section.
func (l *layouter) line(kind, s string) {
	n := wire.Size(s)
	for _, x := range l.lines {
		n += wire.Size(x) + 1
	}
	if len(l.lines) > 0 && (kind != l.kind || n > maxText) {
		l.section()
	}
	l.kind = kind
	l.lines = append(l.lines, s)
}

// section ends the section.
func (l *layouter) section() {
	if len(l.lines) > 0 {
		l.blocks = append(l.blocks, slackapi.NewSectionBlock(marked(strings.Join(l.lines, "\n")), nil, nil))
		l.lines = nil
	}
}

// text puts in a text with what stands before each of its lines.
func (l *layouter) text(kind, first, rest string, t bot.Text) {
	for _, s := range pieces(t, maxText-wire.Size(first)-wire.Size(rest)) {
		l.line(kind, first+s)
		first = rest
	}
}

func (l *layouter) block(b bot.Block, i int) {
	kind := strconv.Itoa(i)
	switch b := b.(type) {
	case bot.Heading:
		words := strings.TrimSpace(wire.Clean(b.Text))
		if (i == 0 || b.Tone == bot.Care) && words != "" && wire.Size(words) <= maxHeader {
			l.section()
			l.blocks = append(l.blocks, slackapi.NewHeaderBlock(unmarked(words)))
			return
		}
		l.text(kind, "", "", bot.Text{{Text: b.Text, Style: bot.Strong}})
	case bot.Para:
		l.text(kind, "", "", b.Text)
	case bot.List:
		for _, t := range b.Items {
			l.text(kind, "• ", "   ", t)
		}
	case bot.Quote:
		l.text(kind, "> ", "> ", b.Text)
	case bot.Fields:
		for _, f := range b.Items {
			l.field(kind, f)
		}
	case bot.Tree:
		l.text(kind, "", "", append(label(b.Label), bot.Span{Text: b.Root.Ask}))
		l.kids(kind, b.Root, 0)
	case bot.Buttons:
		l.press(b)
	case bot.Link:
		s := link(b.Label, b.URL)
		if wire.Size(s) > maxText-2 {
			// A link that is cut leads nowhere: it goes on as words.
			l.text("link", "• ", "   ", bot.Line(b.Label+" "+b.URL))
			return
		}
		if s != "" {
			l.line("link", "• "+s)
		}
	case bot.Aside:
		l.section()
		for _, s := range pieces(b.Text, maxText) {
			l.blocks = append(l.blocks, slackapi.NewContextBlock("", marked(s)))
		}
	default:
		panic(fmt.Sprintf("slack: layout: a block outside the closed set: %T", b))
	}
}

func label(s string) bot.Text {
	return bot.Text{{Text: s + ":", Style: bot.Strong}, {Text: " "}}
}

func (l *layouter) field(kind string, f bot.Field) {
	switch len(f.Lines) {
	case 0:
	case 1:
		l.text(kind, "", "", append(label(f.Label), f.Lines[0]...))
	default:
		l.text(kind, "", "", label(f.Label)[:1])
		for _, t := range f.Lines {
			l.text(kind, "• ", "   ", t)
		}
	}
}

func (l *layouter) kids(kind string, n bot.Node, deep int) {
	in := strings.Repeat("\u2003", min(deep, 8)) // wide spaces: others are swallowed
	for _, k := range n.Kids {
		if k.Next == nil {
			l.text(kind, in+"• ", in+"   ", bot.Text{{Text: k.When + ": "}, {Text: k.Then, Style: bot.Strong}})
			continue
		}
		l.text(kind, in+"• ", in+"   ", bot.Line(k.When+": "+k.Next.Ask))
		l.kids(kind, *k.Next, deep+1)
	}
}

// press lays buttons out. A label that is too long for a button stands above
// in full, under the number that the button has, as long as these leave room
// for other words.
func (l *layouter) press(b bot.Buttons) {
	if len(b.Items) == 0 {
		return
	}
	l.section()
	if b.Label != "" {
		for _, s := range pieces(bot.Line(b.Label), maxText) {
			l.blocks = append(l.blocks, slackapi.NewContextBlock("", marked(s)))
		}
	}
	var elements []slackapi.BlockElement
	full := 0
	for i, item := range b.Items {
		words := strings.TrimSpace(wire.Clean(item.Label))
		if words == "" {
			words = strconv.Itoa(i + 1)
		}
		if n := wire.Size(words); n > maxButton {
			number := strconv.Itoa(i+1) + ". "
			if full += n; full <= maxLabels {
				l.text("buttons", number, "   ", bot.Line(words))
			}
			words = wire.Clip(number+words, maxButton)
		}
		// The state is the value; the action's id has only to be another for
		// each button of a message.
		e := slackapi.NewButtonBlockElement(actionID+strconv.Itoa(l.buttons), item.State, unmarked(words))
		l.buttons++
		elements = append(elements, e)
	}
	l.section()
	for len(elements) > 0 {
		n := min(len(elements), maxButtons)
		l.blocks = append(l.blocks, slackapi.NewActionBlock("", elements[:n]...))
		elements = elements[n:]
	}
}

// actionID begins the id of each of our buttons.
const actionID = "press-"

// pieces is a text as mrkdwn in pieces of at most most units, cut at a space
// where there is one.
func pieces(t bot.Text, most int) []string {
	var out []string
	for len(t) > 0 {
		n := most // markup makes a text no shorter
		head := before(t, n)
		s := mrkdwn(head)
		for wire.Size(s) > most {
			n = n * 3 / 4
			head = before(t, n)
			s = mrkdwn(head)
		}
		rest := after(t, n)
		if len(rest) > 0 {
			words := []rune(head.String())
			at := len(words)
			for at > n/2 && words[at-1] != ' ' {
				at--
			}
			if at > n/2 {
				s, rest = mrkdwn(before(t, at)), after(t, at)
			}
		}
		if strings.TrimSpace(s) != "" {
			out = append(out, s)
		}
		t = rest
	}
	return out
}

// before is the first n letters of a text.
func before(t bot.Text, n int) bot.Text {
	var out bot.Text
	for _, s := range t {
		r := []rune(s.Text)
		if k := min(n, len(r)); k > 0 {
			out = append(out, bot.Span{Text: string(r[:k]), Style: s.Style})
			n -= k
		}
	}
	return out
}

// after is all but the first n letters of a text.
func after(t bot.Text, n int) bot.Text {
	var out bot.Text
	for _, s := range t {
		r := []rune(s.Text)
		if k := min(n, len(r)); k < len(r) {
			out = append(out, bot.Span{Text: string(r[k:]), Style: s.Style})
			n = 0
		} else {
			n -= k
		}
	}
	return out
}

// marked is text in Slack's markup. Verbatim keeps Slack from making links and
// mentions of bare words.
func marked(s string) *slackapi.TextBlockObject {
	return &slackapi.TextBlockObject{Type: slackapi.MarkdownType, Text: s, Verbatim: true}
}

// unmarked is text without any markup.
func unmarked(s string) *slackapi.TextBlockObject {
	no := false
	return &slackapi.TextBlockObject{Type: slackapi.PlainTextType, Text: s, Emoji: &no}
}
