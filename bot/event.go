package bot

import "example.org/netpost/bot/store"

// Place is where something is said: a channel, or a thread in it.
type Place = store.Place

// Person is somebody on a platform.
type Person = store.Person

// Who is the person that an event is from, with the roles that the platform
// gives them there.
type Who struct {
	Person
	Roles []string // the platform's ids of roles or user groups; an adapter that knows none leaves it nil
}

// Meta is what every event has.
type Meta struct {
	// Delivery is the same when the platform delivers the same event again,
	// and different for any other event on that platform. Never empty but on
	// Complete and Posted.
	Delivery string
	Who      Who
	// Where it happened. Thread is filled only in a thread.
	Where Place
	// Direct: the place is a talk between the person and the bot alone.
	Direct bool
}

func (m Meta) meta() Meta { return m }

// talk is the thread that words belong to. Alone with the bot, what is not in
// a thread is one: it goes on from the last question.
func (m Meta) talk() (Place, bool) {
	p := m.Where
	if p.Thread == "" && m.Direct {
		p.Thread = "direct"
	}
	return p, p.Thread != ""
}

// Event is one thing that happened on a platform. The set is closed; its
// members are Command, Mention, Shortcut, ThreadReply, Press, Submit, Complete
// and Posted. An adapter drops what it can't express as one of them, and bots'
// messages, its own included.
type Event interface{ meta() Meta }

// MetaOf is what every event has.
func MetaOf(e Event) Meta { return e.meta() }

// Command is the chat command with what was typed after it.
type Command struct {
	Meta
	// Name is a row of Commands, where the platform has the command's parts
	// typed; then Text and Args are its words and options. Empty: Text is all
	// that was typed, and its first words say which command it is and with
	// which options.
	Name string
	Text string
	Args Args
	// Named are the people whom the words mention, in order, where the platform
	// says who they are; the bot is not among them.
	Named []Person
}

// Args are the typed options of a command; the zero value of each is "not
// given".
type Args struct {
	Code   string // see code.Parse
	Season string // see code.ParseSeason
	Show   Show
}

// Show is the asker's choice of who sees the answer.
type Show string

// The choices. The zero value leaves it to the place.
const (
	ShowDefault Show = ""
	ShowPublic  Show = "public"
	ShowPrivate Show = "private"
)

// Mention is a message that names the bot, or one said to it directly. Text is
// without the bot's own name.
type Mention struct {
	Meta
	Message string // its id
	Text    string
	Named   []Person // as in Command
}

// Shortcut is "look up this message": a person picked a message of somebody
// else.
type Shortcut struct {
	Meta
	Message string // the picked message's id
	Text    string // its words
}

// ThreadReply is a message in a thread of the bot's that does not name it.
// Adapters that may not listen never send it.
type ThreadReply struct {
	Meta
	Message string
	Text    string
}

// Press is a button pressed on a message of ours.
type Press struct {
	Meta
	Message string // the id of the message that the button is on
	Private bool   // only the person sees that message
	State   string // of the button
}

// Submit is a form sent off.
type Submit struct {
	Meta
	Message string            // the message whose button opened the form; empty: none did
	Private bool              // only the person sees that message
	State   string            // of the form
	Values  map[string]string // by the fields' names; a field left empty may be absent
}

// Complete asks for completions while a person types. Its reply is Choices,
// without delay: it is made from memory.
type Complete struct {
	Meta
	Name   string // the command, a row of Commands
	Option string // "text", "code" or "season"
	Typed  string
}

// Posted tells what became of a Say or Update with a Ref. The adapter sends it once the
// platform took the message or refused it. The reply is always Nothing.
type Posted struct {
	Meta
	Ref string
	// Message and Thread are the platform's ids of the message and of the
	// thread that replies to it come in, where the platform tells.
	Message string
	Thread  string
	Err     error // why it is not out (see ErrNotSent), or may not be
}
