package discord

import (
	"cmp"

	"github.com/bwmarrin/discordgo"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// modal is a form as Discord takes it.
type modal struct {
	ID         string                       `json:"custom_id"`
	Title      string                       `json:"title"`
	Components []discordgo.MessageComponent `json:"components"`
}

// form lays a form out. A form of Discord's has no room for a line above its
// fields: it stands as the hint of a first field that has none. Nor can its
// button be named.
func form(f bot.Form) modal {
	m := modal{ID: f.State, Title: cmp.Or(wire.Clip(plainly(f.Title), maxTitle), bot.CommandName)}
	for i, in := range f.Fields[:min(len(f.Fields), maxFields)] {
		most := maxInput
		if in.Max > 0 {
			most = min(in.Max, maxInput)
		}
		style := discordgo.TextInputShort
		if in.Lines {
			style = discordgo.TextInputParagraph
		}
		hint := plainly(in.Hint)
		if i == 0 && hint == "" {
			hint = plainly(f.Intro)
		}
		m.Components = append(m.Components, discordgo.ActionsRow{Components: []discordgo.MessageComponent{discordgo.TextInput{
			CustomID: in.Name, Label: cmp.Or(wire.Clip(plainly(in.Label), maxLabel), in.Name), Style: style,
			Placeholder: wire.Clip(hint, maxPlaceholder), Value: wire.Clip(in.Value, most), Required: in.Must, MaxLength: most,
		}}})
	}
	return m
}

// choice is a completion as Discord takes it.
type choice struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// choices are completions, never null. One that is too long is left out: cut, it
// would mean something else.
func choices(c bot.Choices) []choice {
	out := []choice{}
	for _, i := range c.Items {
		name := wire.Clip(plainly(i.Label), maxChoice)
		if name != "" && i.Value != "" && wire.Size(i.Value) <= maxChoice && len(out) < bot.MaxChoices {
			out = append(out, choice{name, i.Value})
		}
	}
	return out
}
