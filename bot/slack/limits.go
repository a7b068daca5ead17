package slack

import (
	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot/wire"
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

// blockSize is the text of a block.
func blockSize(b slackapi.Block) int {
	n := 0
	switch b := b.(type) {
	case *slackapi.HeaderBlock:
		n = wire.Size(b.Text.Text)
	case *slackapi.SectionBlock:
		n = wire.Size(b.Text.Text)
	case *slackapi.ContextBlock:
		for _, e := range b.ContextElements.Elements {
			if t, ok := e.(*slackapi.TextBlockObject); ok {
				n += wire.Size(t.Text)
			}
		}
	case *slackapi.ActionBlock:
		for _, e := range b.Elements.ElementSet {
			if t, ok := e.(*slackapi.ButtonBlockElement); ok {
				n += wire.Size(t.Text.Text)
			}
		}
	}
	return n
}
