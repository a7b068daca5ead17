package discord

import (
	"bytes"
	"context"
	"encoding/json"
	"net/http"
	"net/url"
	"strconv"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// command is an application command as it is registered. It has the fields that
// we set and no others, so that what Discord gives back can be compared.
type command struct {
	Type        int             `json:"type"`
	Name        string          `json:"name"`
	Description string          `json:"description"`
	Options     []commandOption `json:"options,omitempty"`
	Contexts    []int           `json:"contexts"`
	Integration []int           `json:"integration_types"`
}

type commandOption struct {
	Type         int             `json:"type"`
	Name         string          `json:"name"`
	Description  string          `json:"description"`
	Required     bool            `json:"required,omitempty"`
	Autocomplete bool            `json:"autocomplete,omitempty"`
	MaxLength    int             `json:"max_length,omitempty"`
	Choices      []commandChoice `json:"choices,omitempty"`
	Options      []commandOption `json:"options,omitempty"`
}

type commandChoice struct {
	Name  string `json:"name"`
	Value string `json:"value"`
}

// Names of the options. That of the words is what the table of commands calls
// them; to the conversation it is always optionText.
const (
	optionText   = "text"
	optionCode   = "code"
	optionSeason = "season"
	optionShow   = "show"

	optionString = 3
	maxWords     = 2000 // letters of a play
)

// shortcutName is the command in the menu of a message.
const shortcutName = "Rule on this"

// commands are those that the bot registers: one chat command with a part for
// each row of the conversation's table, and the look-up of a message. They work
// in servers and alone with the bot.
func commands() []command {
	chat := command{Type: commandSlash, Name: bot.CommandName, Description: "Rule on a play"}
	for _, r := range bot.Commands() {
		sub := commandOption{Type: optionSubcommand, Name: r.Name, Description: wire.Clip(plainly(r.Summary), 100)}
		if r.Words != "" {
			sub.Options = append(sub.Options, commandOption{Type: optionString, Name: r.Words, Required: r.Must,
				Autocomplete: true, MaxLength: maxWords, Description: "In your own words"})
		}
		if r.Options {
			sub.Options = append(sub.Options,
				commandOption{Type: optionString, Name: optionCode, Autocomplete: true, Description: "The code to rule under"},
				commandOption{Type: optionString, Name: optionSeason, Autocomplete: true, Description: "The season to rule under, such as 2025-26"},
				commandOption{Type: optionString, Name: optionShow, Description: "Who sees the answer", Choices: []commandChoice{
					{"only me", string(bot.ShowPrivate)}, {"everyone here", string(bot.ShowPublic)}}})
		}
		chat.Options = append(chat.Options, sub)
	}
	out := []command{chat, {Type: commandMessage, Name: shortcutName}}
	for i := range out {
		out[i].Contexts = []int{0, contextDirect}
		out[i].Integration = []int{0} // in servers, not with a person
	}
	return out
}

// Manifest is the commands as they are registered, in JSON. The same version
// gives the same bytes.
func Manifest() string {
	b, err := json.MarshalIndent(commands(), "", "  ")
	if err != nil {
		panic(err) // plain values have no errors
	}
	return string(b) + "\n"
}

// Permissions that the bot asks for when it is added to a server: what Post and
// threads need. Answers to commands need none.
const permissions = 1<<10 | // View Channel
	1<<11 | // Send Messages
	1<<14 | // Embed Links
	1<<15 | // Attach Files
	1<<35 | // Create Public Threads
	1<<38 // Send Messages in Threads

// Invite is the address that adds the application to a server.
func Invite(application string) string {
	q := url.Values{"client_id": {application}, "scope": {"applications.commands bot"}, "permissions": {strconv.Itoa(permissions)}}
	return "https://discord.com/oauth2/authorize?" + q.Encode()
}

// registered reports whether Discord knows just our commands.
func (a *Adapter) registered(ctx context.Context) (bool, error) {
	var there []command
	err := a.call(ctx, request{method: http.MethodGet, path: "applications/" + a.self.Load().app + "/commands", key: "commands"}, &there)
	if err != nil {
		return false, err
	}
	return same(there, commands()), nil
}

// same reports whether two lists are alike, in any order.
func same(a, b []command) bool {
	if len(a) != len(b) {
		return false
	}
	text := func(c command) []byte {
		t, err := json.Marshal(c)
		if err != nil {
			panic(err) // plain values have no errors
		}
		return t
	}
	for _, x := range a {
		found := false
		for _, y := range b {
			found = found || bytes.Equal(text(x), text(y))
		}
		if !found {
			return false
		}
	}
	return true
}

// register makes the commands that Discord knows ours. What is the same is not
// sent again: it counts, and people's clients load it anew.
func (a *Adapter) register(ctx context.Context) error {
	same, err := a.registered(ctx)
	if err != nil || same {
		return err
	}
	err = a.call(ctx, request{method: http.MethodPut, path: "applications/" + a.self.Load().app + "/commands", key: "commands",
		payload: commands()}, nil)
	if err == nil {
		a.log.Info("discord: commands registered")
	}
	return err
}
