package slack

import (
	"cmp"
	"encoding/json"

	slackapi "github.com/slack-go/slack"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// origin is where a form was opened from: it goes with the form and comes back
// when that is sent off.
type origin struct {
	Channel  string `json:"c,omitempty"`
	Thread   string `json:"t,omitempty"`
	Message  string `json:"m,omitempty"` // whose button opened it
	Private  bool   `json:"p,omitempty"`
	Own      bool   `json:"o,omitempty"`
	Response string `json:"r,omitempty"`
}

// metadata is the origin as a form carries it.
func (o origin) metadata() string {
	b, err := json.Marshal(o)
	if err == nil && len(b) > maxMetadata {
		o.Response = "" // there are other ways back
		b, err = json.Marshal(o)
	}
	if err != nil || len(b) > maxMetadata {
		return ""
	}
	return string(b)
}

// inputID is the id of the element in each field of a form; the field's name
// is the block's.
const inputID = "words"

// view is a form as Slack's modal.
func view(f bot.Form, o origin) slackapi.ModalViewRequest {
	v := slackapi.ModalViewRequest{
		Type:            slackapi.VTModal,
		CallbackID:      f.State,
		PrivateMetadata: o.metadata(),
		Title:           unmarked(cmp.Or(wire.Clip(wire.Line(f.Title), maxViewTitle), bot.CommandName)),
		Submit:          unmarked(cmp.Or(wire.Clip(wire.Line(f.Send), maxViewTitle), "Send")),
		Close:           unmarked("Cancel"),
	}
	for _, s := range pieces(bot.Line(f.Intro), maxText) {
		v.Blocks.BlockSet = append(v.Blocks.BlockSet, slackapi.NewSectionBlock(marked(s), nil, nil))
	}
	for _, i := range f.Fields {
		if len(v.Blocks.BlockSet) == maxViewBlocks {
			break
		}
		most := maxInput
		if i.Max > 0 {
			most = min(i.Max, maxInput)
		}
		e := &slackapi.PlainTextInputBlockElement{
			Type: slackapi.METPlainTextInput, ActionID: inputID,
			Multiline: i.Lines, MaxLength: most, InitialValue: wire.Clip(i.Value, most),
		}
		if hint := wire.Line(i.Hint); hint != "" {
			e.Placeholder = unmarked(wire.Clip(hint, maxPlaceholder))
		}
		v.Blocks.BlockSet = append(v.Blocks.BlockSet, &slackapi.InputBlock{
			Type: slackapi.MBTInput, BlockID: i.Name, Element: e, Optional: !i.Must,
			Label: unmarked(cmp.Or(wire.Clip(wire.Line(i.Label), maxLabel), i.Name)),
		})
	}
	return v
}
