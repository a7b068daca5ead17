package discord

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// outgoing is a message as Discord takes it. It is our own type for the sake of
// the attachments' descriptions, which the library's can't carry.
type outgoing struct {
	Content string `json:"content"`
	// Lists are never null: in an edit that would leave what was there.
	Embeds     []*discordgo.MessageEmbed    `json:"embeds"`
	Components []discordgo.MessageComponent `json:"components"`
	// The platform's own default pings people, and everyone.
	Mentions    mentions      `json:"allowed_mentions"`
	Attachments *[]attachment `json:"attachments,omitempty"`
	Flags       int           `json:"flags,omitempty"`

	files []bot.Picture
}

// mentions say who is to be pinged: nobody. The list is never null.
type mentions struct {
	Parse   []string `json:"parse"`
	Replied bool     `json:"replied_user"`
}

// attachment describes a file that comes with the message, by its place there.
type attachment struct {
	ID          int    `json:"id"`
	Filename    string `json:"filename"`
	Description string `json:"description"`
}

// ephemeral is the flag of a message that only one person sees.
const ephemeral = 1 << 6

// render lays the page of a message out that is to be shown.
func render(m bot.Message) outgoing {
	l := layout(bot.Page(m, bot.Pages(m, fits)))
	out := outgoing{Embeds: []*discordgo.MessageEmbed{}, Components: []discordgo.MessageComponent{},
		Mentions: mentions{Parse: []string{}}}
	var about []attachment
	for i, p := range taken(m.Pictures) {
		p.Name = strconv.Itoa(i+1) + "-" + fileName(p.Name)
		out.files = append(out.files, p)
		about = append(about, attachment{i, p.Name, wire.Clip(wire.Line(p.Alt), maxAlt)})
	}
	if len(about) > 0 {
		out.Attachments = &about
	}
	if n := len(m.Pictures) - len(out.files); n > 0 {
		l.smalls = append(l.smalls, fmt.Sprintf("%s %d of %d pictures had no room here", bot.CutMark, n, len(m.Pictures)))
	}
	out.Content = cmp.Or(l.content(), bot.CutMark)
	if text, small := l.text(), l.small(); text != "" || small != "" {
		e := &discordgo.MessageEmbed{Description: cmp.Or(text, wire.NoWidth), Color: colors[l.tone]}
		if small != "" {
			e.Footer = &discordgo.MessageEmbedFooter{Text: wire.Clip(small, min(maxFooter, maxEmbeds-wire.Size(text)))}
		}
		out.Embeds = append(out.Embeds, e)
	}
	for _, row := range l.rows {
		out.Components = append(out.Components, discordgo.ActionsRow{Components: row})
	}
	return out
}

// instead is a message that takes the place of another: the pictures of that
// one go.
func (m outgoing) instead() outgoing {
	if m.Attachments == nil {
		m.Attachments = &[]attachment{}
	}
	return m
}

// taken are the pictures that there is room for.
func taken(ps []bot.Picture) []bot.Picture {
	var out []bot.Picture
	all := 0
	for _, p := range ps {
		if n := len(p.Data); n > 0 && n <= maxPicture && all+n <= maxUpload && len(out) < maxPictures {
			out, all = append(out, p), all+n
		}
	}
	return out
}

// fileName is a name that Discord shows as it is.
func fileName(s string) string {
	s = strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '.' || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, s)
	return cmp.Or(strings.Trim(s[max(0, len(s)-60):], "-."), "picture")
}

// colors of the tones: the edge of the embed. They say nothing that the words
// do not.
var colors = map[bot.Tone]int{
	bot.Plain: 0x6d7680, bot.Good: 0x2e8b57, bot.Bad: 0xc0392b, bot.Again: 0xb8860b, bot.Open: 0x2f6fb0, bot.Care: 0xd35400,
}

// laid is a document as the parts of a message. The cautions and the first
// heading are the message's own text, which also shows in a notification and
// where embeds are switched off; the rest is in one embed below, small print at
// its foot.
type laid struct {
	tone   bot.Tone
	heads  []string
	lines  []string
	smalls []string
	short  bool // nothing but headings and paragraphs: no embed is needed
	rows   [][]discordgo.MessageComponent
	states map[string]bool
	shown  string // the words of the headings
	asides int    // letters that stand in the text for the sake of buttons
}

func layout(d bot.Doc) *laid {
	l := &laid{tone: d.Tone, short: true, states: map[string]bool{}}
	for i, b := range d.Blocks {
		l.block(b)
		if i+1 < len(d.Blocks) && len(l.lines) > 0 && l.lines[len(l.lines)-1] != "" && apart(b, d.Blocks[i+1]) {
			l.lines = append(l.lines, "")
		}
	}
	return l
}

// apart reports whether an empty line stands between two blocks.
func apart(a, b bot.Block) bool {
	switch a.(type) {
	case bot.Fields, bot.Tree:
		switch b.(type) {
		case bot.Fields, bot.Tree:
			return false
		}
	case bot.Link:
		if _, ok := b.(bot.Link); ok {
			return false
		}
	}
	return true
}

// alone reports whether all of it is the message's own text.
func (l *laid) alone() bool {
	const most = 1000
	n := 0
	for _, part := range [][]string{l.heads, l.lines, l.smalls} {
		n += wire.Size(strings.Join(part, "\n"))
	}
	return l.short && n <= most
}

// content is the message's own text.
func (l *laid) content() string {
	all := l.heads
	if l.alone() {
		all = append(all[:len(all):len(all)], strings.TrimSpace(strings.Join(l.lines, "\n")))
		for _, s := range l.smalls {
			all = append(all, "-# "+escape(s))
		}
	}
	return strings.TrimSpace(strings.Join(all, "\n"))
}

// text is the embed's.
func (l *laid) text() string {
	if l.alone() {
		return ""
	}
	return strings.TrimSpace(strings.Join(l.lines, "\n"))
}

// small is the embed's small print.
func (l *laid) small() string {
	if l.alone() {
		return ""
	}
	return strings.Join(l.smalls, "\n")
}

func (l *laid) put(first string, t bot.Text) {
	if s := markdown(t); s != "" {
		l.lines = append(l.lines, first+s)
	}
}

func (l *laid) block(b bot.Block) {
	switch b := b.(type) {
	case bot.Heading:
		words := markdown(bot.Text{{Text: b.Text, Style: bot.Strong}})
		if len(l.lines) == 0 && len(l.smalls) == 0 && (b.Tone == bot.Care || l.shown == "") {
			l.heads = append(l.heads, words)
			if b.Tone != bot.Care {
				l.shown = b.Text
			}
			return
		}
		if words != "" {
			l.lines = append(l.lines, words)
		}
	case bot.Para:
		l.put("", b.Text)
	case bot.List:
		l.short = false
		for _, t := range b.Items {
			l.put("- ", t)
		}
	case bot.Quote:
		l.short = false
		l.put("> ", b.Text)
	case bot.Fields:
		l.short = false
		for _, f := range b.Items {
			l.field(f)
		}
	case bot.Tree:
		l.short = false
		l.put("", append(label(b.Label), bot.Span{Text: b.Root.Ask}))
		l.kids(b.Root, 0)
	case bot.Buttons:
		l.press(b)
	case bot.Link:
		l.short = false
		s := link(b.Label, b.URL)
		if wire.Size(s) > maxDescription-100 {
			// A link that is cut leads nowhere: it goes on as words.
			s = markdown(bot.Line(b.Label + " " + b.URL))
		}
		if s != "" {
			l.lines = append(l.lines, "- "+s)
		}
	case bot.Aside:
		if s := plainly(b.Text.String()); s != "" {
			l.smalls = append(l.smalls, s)
		}
	default:
		panic(fmt.Sprintf("discord: layout: a block outside the closed set: %T", b))
	}
}

func label(s string) bot.Text {
	return bot.Text{{Text: s + ":", Style: bot.Strong}, {Text: " "}}
}

func (l *laid) field(f bot.Field) {
	switch len(f.Lines) {
	case 0:
	case 1:
		l.put("", append(label(f.Label), f.Lines[0]...))
	default:
		l.put("", label(f.Label))
		for _, t := range f.Lines {
			l.put("- ", t)
		}
	}
}

func (l *laid) kids(n bot.Node, deep int) {
	in := strings.Repeat("  ", min(deep, 8))
	for _, k := range n.Kids {
		if k.Next == nil {
			l.put(in+"- ", bot.Text{{Text: k.When + ": "}, {Text: k.Then, Style: bot.Strong}})
			continue
		}
		l.put(in+"- ", bot.Line(k.When+": "+k.Next.Ask))
		l.kids(*k.Next, deep+1)
	}
}

// press lays buttons out, each group in rows of its own. What a group is called
// stands above them, unless the heading says it. A label that is too long for a
// button stands there in full, under the number that the button has.
func (l *laid) press(b bot.Buttons) {
	var row []discordgo.MessageComponent
	named := b.Label == "" || strings.Contains(l.shown, b.Label)
	name := func() {
		if !named {
			l.aside(b.Label + ":")
		}
		named = true
	}
	if len(b.Items) > 0 && wire.Size(b.Label) > 20 {
		name()
	}
	for i, item := range b.Items {
		// A state may stand on a message once.
		if item.State == "" || l.states[item.State] {
			continue
		}
		l.states[item.State] = true
		words := plainly(item.Label)
		if words == "" {
			words = strconv.Itoa(i + 1)
		}
		if wire.Size(words) > maxButton {
			name()
			number := strconv.Itoa(i+1) + ". "
			l.aside(number + words)
			words = wire.Clip(number+words, maxButton)
		}
		row = append(row, discordgo.Button{Label: words, Style: discordgo.SecondaryButton, CustomID: item.State})
		if len(row) == maxInRow {
			l.rows, row = append(l.rows, row), nil
		}
	}
	if len(row) > 0 {
		l.rows = append(l.rows, row)
	}
}

// aside puts in a line for the sake of buttons.
func (l *laid) aside(s string) {
	s = wire.Clip(s, maxLongLabel)
	l.asides += wire.Size(s)
	l.put("", bot.Text{{Text: s, Style: bot.Strong}})
}
