package slack

import (
	"unicode/utf16"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
)

// Slack's limits, in UTF-16 units where they count text, which is what its
// clients count. The library checks none of them.
const (
	maxBlocks   = 50     // blocks of a message
	maxText     = 3000   // text of a section or context
	maxHeader   = 150    // text of a header
	maxButtons  = 25     // elements of one actions block
	maxButton   = 75     // label of a button
	maxLabels   = 1500   // labels in full above their buttons: our own measure
	maxURL      = 2900   // address of a link, with room for its label in one text
	maxFallback = 3000   // plain text beside blocks; it grows when escaped, and 4,000 is advised
	maxMessage  = 11_500 // text of all blocks: refused at about 13,200, which is not documented
	maxBlockID  = 255
	maxValue    = 2000 // value of a button

	maxViewBlocks  = 100
	maxViewTitle   = 24 // title and both buttons of a form
	maxLabel       = 2000
	maxPlaceholder = 150
	maxInput       = 3000
	maxMetadata    = 3000

	maxAlt   = 1000
	maxTitle = 250
)

// size is the length of a text as Slack counts it.
func size(s string) int {
	if isPlain(s) {
		return len(s)
	}
	n := 0
	for _, r := range s {
		n += max(utf16.RuneLen(r), 1)
	}
	return n
}

// clip cuts a text to at most most units, with a mark.
func clip(s string, most int) string {
	if size(s) <= most {
		return s
	}
	n := most
	for ; size(bot.Clip(s, n)) > most; n-- {
	}
	return bot.Clip(s, n)
}

// blockSize is the text of a block.
func blockSize(b slackapi.Block) int {
	n := 0
	switch b := b.(type) {
	case *slackapi.HeaderBlock:
		n = size(b.Text.Text)
	case *slackapi.SectionBlock:
		n = size(b.Text.Text)
	case *slackapi.ContextBlock:
		for _, e := range b.ContextElements.Elements {
			if t, ok := e.(*slackapi.TextBlockObject); ok {
				n += size(t.Text)
			}
		}
	case *slackapi.ActionBlock:
		for _, e := range b.Elements.ElementSet {
			if t, ok := e.(*slackapi.ButtonBlockElement); ok {
				n += size(t.Text.Text)
			}
		}
	}
	return n
}
