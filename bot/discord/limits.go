package discord

import (
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// Discord's limits. Text is counted in UTF-16 units, which is never less than
// what Discord counts. The library checks none of them.
const (
	maxContent     = 2000 // text of a message
	maxDescription = 4096 // text of an embed
	maxFooter      = 2048 // small print of an embed
	maxEmbeds      = 6000 // all text of a message's embeds together
	maxRows        = 5    // rows of buttons
	maxInRow       = 5    // buttons of a row
	maxButton      = 80   // label of a button
	maxLongLabel   = 300  // of a button, where it stands in the text
	maxAsides      = 1500 // text that stands there for the sake of buttons
	maxURL         = 1500 // address of a link, with room for its label in one text

	maxTitle       = 45 // of a form
	maxLabel       = 45 // of a field
	maxFields      = 5  // of a form
	maxPlaceholder = 100
	maxInput       = 4000
	maxChoice      = 100 // label and value of a completion

	maxPictures = 10
	maxPicture  = 9 << 20  // bytes; Discord takes 10 MiB
	maxUpload   = 24 << 20 // bytes of all pictures of a message; Discord takes 25 MiB
	maxAlt      = 1024
	maxThread   = 100 // name of a thread
)

// fits reports whether a message is within the limits. Labels of buttons are
// kept short in the layout itself.
func fits(d bot.Doc) bool { return length(d) <= 2*maxEmbeds && layout(d).fits() }

// length is how many letters a document's longest parts have: one that is
// far too long is not laid out to find that out.
func length(d bot.Doc) int {
	n := 0
	add := func(ts ...bot.Text) {
		for _, t := range ts {
			for _, s := range t {
				n += utf8.RuneCountInString(s.Text)
			}
		}
	}
	for _, b := range d.Blocks {
		switch b := b.(type) {
		case bot.Para:
			add(b.Text)
		case bot.Quote:
			add(b.Text)
		case bot.Aside:
			add(b.Text)
		case bot.List:
			add(b.Items...)
		case bot.Fields:
			for _, f := range b.Items {
				add(f.Lines...)
			}
		}
	}
	return n
}

func (l *laid) fits() bool {
	text, small := wire.Size(l.text()), wire.Size(l.small())
	return wire.Size(l.content()) <= maxContent && text <= maxDescription && small <= maxFooter &&
		text+small <= maxEmbeds && l.asides <= maxAsides && len(l.rows) <= maxRows
}
