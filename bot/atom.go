package bot

import (
	"fmt"
	"strings"
)

// atom is the least part of a message that is kept on one page if it can be:
// a line of a list or field, a paragraph. It is a block by itself.
type atom struct {
	of    int // the block it comes from
	block Block
}

// atoms are the parts of one block.
func atoms(of int, b Block) []atom {
	var out []atom
	add := func(b Block) { out = append(out, atom{of, b}) }
	switch b := b.(type) {
	case Heading, Para, Quote, Link, Aside:
		add(b)
	case List:
		for _, t := range b.Items {
			add(List{[]Text{t}})
		}
	case Fields:
		for _, f := range b.Items {
			for _, t := range f.Lines {
				add(Fields{[]Field{{f.Label, []Text{t}}}})
			}
		}
	case Tree:
		for _, t := range treeLines(b.Root, "") {
			add(Fields{[]Field{{b.Label, []Text{t}}}})
		}
	default:
		panic(fmt.Sprintf("bot: Pages: a block outside the closed set: %T", b))
	}
	return out
}

// joined is two parts of one block as one again.
func joined(a, b Block) (Block, bool) {
	switch a := a.(type) {
	case List:
		return List{append(a.Items[:len(a.Items):len(a.Items)], b.(List).Items...)}, true
	case Fields:
		f := b.(Fields).Items[0]
		items := append([]Field(nil), a.Items...)
		last := &items[len(items)-1]
		if last.Label == f.Label {
			last.Lines = append(last.Lines[:len(last.Lines):len(last.Lines)], f.Lines...)
		} else {
			items = append(items, f)
		}
		return Fields{items}, true
	}
	return nil, false
}

// text is an atom's words and the way to put others in their place.
func (a atom) text() (Text, func(Text) Block) {
	switch b := a.block.(type) {
	case Heading:
		return Line(b.Text), func(t Text) Block { return Heading{t.String(), b.Tone} }
	case Para:
		return b.Text, func(t Text) Block { return Para{t} }
	case Quote:
		return b.Text, func(t Text) Block { return Quote{t} }
	case Aside:
		return b.Text, func(t Text) Block { return Aside{t} }
	case List:
		return b.Items[0], func(t Text) Block { return List{[]Text{t}} }
	case Fields:
		f := b.Items[0]
		return f.Lines[0], func(t Text) Block { return Fields{[]Field{{f.Label, []Text{t}}}} }
	case Link:
		// A link that is cut leads nowhere: it goes on as words.
		return Line(strings.TrimSpace(b.Label + " " + b.URL)), func(t Text) Block { return Para{t} }
	}
	panic(fmt.Sprintf("bot: Pages: a block outside the closed set: %T", a.block))
}

// treeLines is a tree as lines, one an answer.
func treeLines(n Node, indent string) []Text {
	out := []Text{{{Text: indent + n.Ask}}}
	for _, k := range n.Kids {
		if k.Next == nil {
			out = append(out, Text{{Text: indent + "- " + k.When + ": "}, {k.Then, Strong}})
			continue
		}
		out = append(out, Line(indent+"- "+k.When+":"))
		out = append(out, treeLines(*k.Next, indent+"  ")...)
	}
	return out
}

// PlainText is a message in plain words for notifications and screen readers,
// at most most letters: its headings, text and links, and what its buttons
// say. What is cut is marked.
func PlainText(d Doc, most int) string {
	words := Doc{Tone: d.Tone}
	for _, b := range d.Blocks {
		bs, ok := b.(Buttons)
		if !ok {
			words.Blocks = append(words.Blocks, b)
			continue
		}
		var labels []string
		for _, i := range bs.Items {
			labels = append(labels, i.Label)
		}
		words.Blocks = append(words.Blocks, Fields{[]Field{{bs.Label, []Text{Line(strings.Join(labels, " / "))}}}})
	}
	var s strings.Builder
	if err := Print(&s, words, TextOptions{Width: 1 << 20}); err != nil {
		panic(err) // a strings.Builder has no errors
	}
	return Clip(strings.TrimSpace(s.String()), most)
}

// Clip is a text of at most most letters, cut with a mark.
func Clip(s string, most int) string {
	r := []rune(s)
	if len(r) <= most {
		return s
	}
	return strings.TrimRight(string(r[:max(most-1, 0)]), " \n") + CutMark
}
