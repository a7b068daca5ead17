package discord

import (
	"cmp"
	"encoding/json"
	"errors"
	"strings"

	"example.org/netpost/bot"
)

// Payloads are decoded from what is needed of them and nothing more. The
// library's own types decode all, so that one component in somebody's message
// that it does not know costs the whole event, and its accessors then panic.

// Types of interactions.
const (
	typePing     = 1
	typeCommand  = 2
	typePress    = 3
	typeComplete = 4
	typeSubmit   = 5
)

// interaction is what Discord delivers.
type interaction struct {
	Type    int    `json:"type"`
	ID      string `json:"id"`
	App     string `json:"application_id"`
	Token   string `json:"token"`
	Guild   string `json:"guild_id"`
	Channel string `json:"channel_id"`
	In      struct {
		ID     string `json:"id"`
		Type   int    `json:"type"`
		Parent string `json:"parent_id"`
	} `json:"channel"`
	Context *int `json:"context"`
	Member  struct {
		User  person   `json:"user"`
		Roles []string `json:"roles"`
	} `json:"member"`
	User    person `json:"user"`
	Message struct {
		ID    string `json:"id"`
		Flags int    `json:"flags"`
	} `json:"message"`
	Data json.RawMessage `json:"data"`
}

type person struct {
	ID     string `json:"id"`
	Name   string `json:"username"`
	Global string `json:"global_name"`
}

// Types of channels, and of the places where interactions happen.
const (
	directChannel       = 1
	announcementThread  = 10
	publicThread        = 11
	privateThread       = 12
	contextDirect       = 1 // alone with the bot
	contextPrivate      = 2 // a direct message between others
	commandSlash        = 1
	commandMessage      = 3
	optionSubcommand    = 1
	componentButton     = 2
	componentActionsRow = 1
	componentTextInput  = 4
)

// route is the way back to where an event came from.
type route struct {
	id, app, token string
	place          bot.Place
	who            string
	roles          []string
	direct         bool
	message        string // that was pressed, or whose button opened the form
	private        bool   // only the person sees that message
	typ            int
	lane           string
}

// incoming is an event with its route.
type incoming struct {
	event bot.Event
	route route
}

// unknown is an interaction that none of ours is: the person is told.
type unknown struct{ what, mend string }

func (u *unknown) Error() string { return u.what }

var (
	errCommand = &unknown{"I don't know this command.", "It may be of another version of netpost. Type /" + bot.CommandName + " help."}
	errControl = &unknown{"I don't know this control.", "It may be of another version of netpost. Ask the question again."}
	errPayload = &unknown{"I could not read what Discord sent.", "Try again; if it stays so, tell whoever runs netpost."}
)

// decode reads an interaction. Where the error is an unknown, the route is
// there all the same.
func decode(data []byte, self string) (incoming, error) {
	var i interaction
	// What can be read of it is read: the id and the token are enough to say
	// that the rest could not be.
	err := json.Unmarshal(data, &i)
	if i.ID == "" || i.Token == "" {
		return incoming{}, errors.Join(errors.New("an interaction without id or token"), err)
	}
	r := i.route()
	switch {
	case err != nil:
		return incoming{route: r}, errPayload
	case r.who == "":
		return incoming{route: r}, errPayload
	}
	var e bot.Event
	switch i.Type {
	case typeCommand, typeComplete:
		e, err = i.command(r, self)
	case typePress:
		e, err = i.press(r)
	case typeSubmit:
		e, err = i.submit(r)
	default:
		return incoming{route: r}, errControl // newer than this version
	}
	return incoming{e, r}, err
}

func (i interaction) route() route {
	channel := cmp.Or(i.Channel, i.In.ID)
	r := route{id: i.ID, app: i.App, token: i.Token, typ: i.Type,
		place:   bot.Place{Platform: Platform, Workspace: i.Guild, Channel: channel},
		who:     cmp.Or(i.Member.User.ID, i.User.ID),
		roles:   i.Member.Roles,
		message: i.Message.ID, private: i.Message.Flags&ephemeral != 0}
	switch i.In.Type {
	case announcementThread, publicThread, privateThread:
		// A thread is a channel of its own.
		if i.In.Parent != "" {
			r.place.Channel, r.place.Thread = i.In.Parent, channel
		}
	}
	switch {
	case i.Context != nil:
		r.direct = *i.Context == contextDirect
	default:
		r.direct = i.Guild == "" && (i.In.Type == directChannel || i.In.ID == "")
	}
	if r.message != "" {
		r.lane = channel + "/" + r.message
	}
	return r
}

func (r route) meta(delivery string) bot.Meta {
	return bot.Meta{
		Delivery: delivery,
		Who:      bot.Who{Person: bot.Person{Platform: Platform, ID: r.who}, Roles: r.roles},
		Where:    r.place,
		Direct:   r.direct,
	}
}

// channel is where messages to the place are posted.
func (r route) channel() string { return cmp.Or(r.place.Thread, r.place.Channel) }

type commandData struct {
	Name     string   `json:"name"`
	Type     int      `json:"type"`
	Target   string   `json:"target_id"`
	Options  []option `json:"options"`
	Resolved struct {
		Messages map[string]struct {
			ID       string   `json:"id"`
			Content  string   `json:"content"`
			Mentions []person `json:"mentions"`
		} `json:"messages"`
	} `json:"resolved"`
}

type option struct {
	Name    string          `json:"name"`
	Type    int             `json:"type"`
	Value   json.RawMessage `json:"value"`
	Focused bool            `json:"focused"`
	Options []option        `json:"options"`
}

// text is the value of an option that is text; what is none is empty.
func (o option) text() string {
	var s string
	if json.Unmarshal(o.Value, &s) != nil {
		return ""
	}
	return s
}

func (i interaction) command(r route, self string) (bot.Event, error) {
	var d commandData
	if err := json.Unmarshal(i.Data, &d); err != nil {
		return nil, errPayload
	}
	switch {
	case d.Type == commandMessage && d.Name == shortcutName && i.Type == typeCommand:
		m, ok := d.Resolved.Messages[d.Target]
		if !ok {
			return nil, errPayload
		}
		names := map[string]string{}
		for _, p := range m.Mentions {
			names[p.ID] = cmp.Or(p.Global, p.Name)
		}
		return bot.Shortcut{Meta: r.meta(i.ID), Message: d.Target, Text: said(m.Content, self, names)}, nil
	case (d.Type == commandSlash || d.Type == 0) && d.Name == bot.CommandName && len(d.Options) == 1 && d.Options[0].Type == optionSubcommand:
		return i.slash(r, d.Options[0], self)
	}
	return nil, errCommand
}

// slash reads one of the parts of our command.
func (i interaction) slash(r route, sub option, self string) (bot.Event, error) {
	words := ""
	known := false
	for _, row := range bot.Commands() {
		if row.Name == sub.Name {
			known, words = true, row.Words
		}
	}
	if !known {
		return nil, errCommand
	}
	c := bot.Command{Meta: r.meta(i.ID), Name: sub.Name}
	for _, o := range sub.Options {
		name := o.Name
		if name == words {
			name = optionText
		}
		if i.Type == typeComplete {
			if o.Focused {
				return bot.Complete{Meta: r.meta(""), Name: sub.Name, Option: name, Typed: o.text()}, nil
			}
			continue
		}
		switch name {
		case optionText:
			c.Text, c.Named = strings.TrimSpace(o.text()), named(o.text(), self)
		case optionCode:
			c.Args.Code = o.text()
		case optionSeason:
			c.Args.Season = o.text()
		case optionShow:
			switch s := bot.Show(o.text()); s {
			case bot.ShowPublic, bot.ShowPrivate:
				c.Args.Show = s
			}
		}
	}
	if i.Type == typeComplete {
		return bot.Complete{Meta: r.meta(""), Name: sub.Name}, nil // nothing is being typed
	}
	return c, nil
}

func (i interaction) press(r route) (bot.Event, error) {
	var d struct {
		ID   string `json:"custom_id"`
		Type int    `json:"component_type"`
	}
	if err := json.Unmarshal(i.Data, &d); err != nil || i.Message.ID == "" {
		return nil, errPayload
	}
	if d.Type != componentButton {
		return nil, errControl // we have nothing but buttons
	}
	// What the button means is in its id. One that is none of ours is handed on:
	// the conversation tells the person.
	return bot.Press{Meta: r.meta(i.ID), Message: r.message, Private: r.private, State: d.ID}, nil
}

// component is a part of a form: a row or label with a field in it, or a field.
type component struct {
	Type       int         `json:"type"`
	ID         string      `json:"custom_id"`
	Value      string      `json:"value"`
	Components []component `json:"components"`
	Component  *component  `json:"component"`
}

func (c component) values(into map[string]string) {
	if c.Type == componentTextInput && c.ID != "" && c.Value != "" {
		into[c.ID] = c.Value
	}
	for _, k := range c.Components {
		k.values(into)
	}
	if c.Component != nil {
		c.Component.values(into)
	}
}

func (i interaction) submit(r route) (bot.Event, error) {
	var d component
	if err := json.Unmarshal(i.Data, &d); err != nil || d.ID == "" {
		return nil, errPayload
	}
	values := map[string]string{}
	d.values(values)
	return bot.Submit{Meta: r.meta(i.ID), Message: r.message, Private: r.private, State: d.ID, Values: values}, nil
}
