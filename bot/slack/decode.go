package slack

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"net/url"
	"strings"

	"example.org/netpost/bot"
)

// Payloads are decoded from what is needed of them and nothing more. The
// library's own types decode all, so that one odd field in somebody's message
// costs the whole event.

// incoming is an event with the way back to where it came from.
type incoming struct {
	event bot.Event
	route route
}

// route is the way back.
type route struct {
	place    bot.Place
	who      string
	message  string // the ts of the message that the event is or is on
	private  bool   // only the person sees that message
	ours     bool   // that message is ours, so it can change
	begins   bool   // a thread can be begun on it unasked
	own      bool   // the place is surely the direct message with the bot
	response string // where replies can be posted to for half an hour
	trigger  string // what a form can be opened with for three seconds
	kind     kind
	lane     string
}

// kind is a way in which Slack delivers.
type kind uint8

const (
	command     kind = iota // slash_commands
	interaction             // interactive
	happening               // events_api
)

// errDrop: a payload that is none of the conversation's events. It is
// acknowledged and that is all.
var errDrop = errors.New("not an event of the conversation")

type slashCommand struct {
	Team     string `json:"team_id"`
	Channel  string `json:"channel_id"`
	User     string `json:"user_id"`
	Text     string `json:"text"`
	Response string `json:"response_url"`
	Trigger  string `json:"trigger_id"`
}

// commandOf reads a slash command out of a form.
func commandOf(v url.Values) slashCommand {
	return slashCommand{v.Get("team_id"), v.Get("channel_id"), v.Get("user_id"), v.Get("text"), v.Get("response_url"), v.Get("trigger_id")}
}

func (c slashCommand) decode(self string) (incoming, error) {
	if c.User == "" || c.Channel == "" {
		return incoming{}, errors.New("a command without user_id or channel_id")
	}
	r := route{place: place(c.Team, c.Channel, ""), who: c.User, response: c.Response, trigger: c.Trigger, kind: command}
	return incoming{bot.Command{Meta: r.meta(r.delivery("command", c.Trigger, c.Response, c.Text)), Text: said(c.Text, self), Named: named(c.Text, self)}, r}, nil
}

type interactive struct {
	Type     string `json:"type"`
	Callback string `json:"callback_id"`
	Response string `json:"response_url"`
	Trigger  string `json:"trigger_id"`
	Team     struct {
		ID string `json:"id"`
	} `json:"team"`
	Channel struct {
		ID string `json:"id"`
	} `json:"channel"`
	User struct {
		ID   string `json:"id"`
		Team string `json:"team_id"`
	} `json:"user"`
	Message struct {
		TS     string `json:"ts"`
		Thread string `json:"thread_ts"`
		Text   string `json:"text"`
	} `json:"message"`
	Container struct {
		Message string `json:"message_ts"`
		Thread  string `json:"thread_ts"`
		Channel string `json:"channel_id"`
		Private bool   `json:"is_ephemeral"`
	} `json:"container"`
	Actions []struct {
		Type  string `json:"type"`
		ID    string `json:"action_id"`
		Value string `json:"value"`
		TS    string `json:"action_ts"`
	} `json:"actions"`
	View struct {
		ID       string `json:"id"`
		Hash     string `json:"hash"`
		Callback string `json:"callback_id"`
		Metadata string `json:"private_metadata"`
		State    struct {
			Values map[string]map[string]struct {
				Value string `json:"value"`
			} `json:"values"`
		} `json:"state"`
	} `json:"view"`
}

// shortcutID is the callback of the message shortcut in the manifest.
const shortcutID = "look_up"

func (p interactive) decode(self string) (incoming, error) {
	team := cmp.Or(p.Team.ID, p.User.Team)
	if p.User.ID == "" {
		return incoming{}, errors.New("an interaction without a user")
	}
	switch p.Type {
	case "block_actions":
		return p.press(team)
	case "message_action":
		channel := p.Channel.ID
		if p.Callback != shortcutID || channel == "" || p.Message.TS == "" {
			return incoming{}, errDrop
		}
		r := route{place: place(team, channel, thread(p.Message.Thread, p.Message.TS)), who: p.User.ID,
			message: p.Message.TS, response: p.Response, trigger: p.Trigger, kind: interaction}
		return incoming{bot.Shortcut{
			Meta:    r.meta(r.delivery("shortcut", p.Trigger, p.Message.TS)),
			Message: p.Message.TS, Text: said(p.Message.Text, self),
		}, r}, nil
	case "view_submission":
		return p.submit(team)
	}
	return incoming{}, errDrop
}

func (p interactive) press(team string) (incoming, error) {
	channel := cmp.Or(p.Container.Channel, p.Channel.ID)
	message := cmp.Or(p.Container.Message, p.Message.TS)
	if len(p.Actions) == 0 || channel == "" || message == "" {
		return incoming{}, errDrop // on a form or a home page: we have no buttons there
	}
	act := p.Actions[0]
	r := route{place: place(team, channel, thread(cmp.Or(p.Container.Thread, p.Message.Thread), message)), who: p.User.ID,
		message: message, private: p.Container.Private, ours: true, response: p.Response, trigger: p.Trigger,
		kind: interaction, lane: channel + "/" + message}
	// What the button means is in its value. A value that is none of ours is
	// handed on: the conversation tells the person.
	return incoming{bot.Press{
		Meta:    r.meta(r.delivery("press", p.Trigger, message, act.ID, act.TS)),
		Message: message, Private: r.private, State: act.Value,
	}, r}, nil
}

func (p interactive) submit(team string) (incoming, error) {
	var o origin
	if p.View.Metadata != "" {
		if err := json.Unmarshal([]byte(p.View.Metadata), &o); err != nil {
			return incoming{}, errDrop // another's form
		}
	}
	r := route{place: place(team, o.Channel, o.Thread), who: p.User.ID, message: o.Message, private: o.Private,
		ours: o.Message != "", own: o.Own, response: o.Response, trigger: p.Trigger, kind: interaction}
	if o.Message != "" {
		r.lane = o.Channel + "/" + o.Message
	}
	values := map[string]string{}
	for name, inputs := range p.View.State.Values {
		if v := inputs[inputID].Value; v != "" {
			values[name] = v
		}
	}
	return incoming{bot.Submit{
		Meta:    r.meta(r.delivery("submit", p.Trigger, p.View.ID, p.View.Hash)),
		Message: o.Message, Private: o.Private, State: p.View.Callback, Values: values,
	}, r}, nil
}

// outer is what Slack wraps around what happened.
type outer struct {
	Type      string          `json:"type"`
	Team      string          `json:"team_id"`
	ID        string          `json:"event_id"`
	Challenge string          `json:"challenge"`
	Event     json.RawMessage `json:"event"`
	// For whom it is delivered: in a channel that workspaces share, Team can be
	// the other one.
	For []struct {
		Team string `json:"team_id"`
	} `json:"authorizations"`
}

type inner struct {
	Type    string `json:"type"`
	Sub     string `json:"subtype"`
	User    string `json:"user"`
	Bot     string `json:"bot_id"`
	Text    string `json:"text"`
	TS      string `json:"ts"`
	Thread  string `json:"thread_ts"`
	Channel string `json:"channel"`
	In      string `json:"channel_type"`
}

func (o outer) decode(self string) (incoming, error) {
	if o.Type != "event_callback" {
		return incoming{}, errDrop
	}
	var e inner
	if err := json.Unmarshal(o.Event, &e); err != nil {
		return incoming{}, fmt.Errorf("event %s: %w", o.ID, err)
	}
	switch {
	case e.User == "" || e.User == self || e.Bot != "" || e.Channel == "" || e.TS == "":
		return incoming{}, errDrop // a bot's, our own included, or nobody's
	case e.Type == "app_mention":
	case e.Type == "message" && e.In == "im" && (e.Sub == "" || e.Sub == "file_share"):
	default:
		return incoming{}, errDrop
	}
	team := o.Team
	if len(o.For) > 0 {
		team = cmp.Or(o.For[0].Team, team)
	}
	r := route{place: place(team, e.Channel, thread(e.Thread, e.TS)), who: e.User, message: e.TS,
		begins: true, own: e.In == "im", kind: happening}
	// Keyed by the message, not by the event: a message that is edited comes
	// again as another event, and one that names the bot in a direct message
	// comes as two.
	return incoming{bot.Mention{
		Meta:    r.meta(r.delivery("message", e.TS)),
		Message: e.TS, Text: said(e.Text, self), Named: named(e.Text, self),
	}, r}, nil
}

func place(team, channel, thread string) bot.Place {
	return bot.Place{Platform: Platform, Workspace: team, Channel: channel, Thread: thread}
}

// thread is the thread of a message; the first message of one is not in it.
func thread(thread, message string) string {
	if thread == message {
		return ""
	}
	return thread
}

// direct reports whether a channel is a direct message, of whomever.
func direct(channel string) bool { return strings.HasPrefix(channel, "D") }

func (r route) meta(delivery string) bot.Meta {
	return bot.Meta{
		Delivery: delivery,
		Who:      bot.Who{Person: bot.Person{Platform: Platform, ID: r.who}},
		Where:    r.place,
		Direct:   r.own,
	}
}

// delivery names an event: by the first of the parts, which is unique where
// there is one, else by all that is known.
func (r route) delivery(kind string, parts ...string) string {
	if kind == "message" || parts[0] == "" {
		sum := sha256.Sum256([]byte(strings.Join(append([]string{r.place.Workspace, r.place.Channel, r.who}, parts...), "\x00")))
		return kind + "/" + hex.EncodeToString(sum[:16])
	}
	return kind + "/" + parts[0]
}

// origin is the way back as a form carries it.
func (r route) origin() origin {
	o := origin{Channel: r.place.Channel, Thread: r.place.Thread, Own: r.own, Response: r.response}
	if r.ours {
		o.Message, o.Private = r.message, r.private
	}
	return o
}

// thread is where a reply goes that wants a thread: the one of the event, else
// one begun on a message of its own choice, else on the event's.
func (r route) thread(s bot.Say) string {
	switch {
	case !s.InThread:
		return ""
	case r.place.Thread != "":
		return r.place.Thread
	case s.On != "":
		return s.On
	case r.begins:
		return r.message
	}
	return ""
}
