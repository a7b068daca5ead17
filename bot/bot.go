package bot

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"example.org/netpost/bot/store"
)

// Options are what the conversation needs.
type Options struct {
	Store store.Store
	// Find gives the association that a place belongs to. It may be nobody's:
	// then the bot says so and keeps nothing.
	Find func(Place) (Association, bool)
	Draw Draw // nil: answers have no pictures

	// All lists the associations, as what is done unasked sees them: with
	// the channels that it goes to. Nil: nothing is done unasked.
	All func() []Association
	// Send sends what goes out unasked. Nil: it waits in the store.
	Send Sender

	Claim time.Duration // how long a mentor's claim holds; 0: DefaultClaim
	Nudge time.Duration // how long a question waits before mentors are reminded; 0: DefaultNudge

	Now   func() time.Time // nil: the clock
	NewID func() string    // nil: store.NewID
	Log   *slog.Logger     // nil: nothing is logged. It gets ids and errors, never what people wrote
}

// Bot is the conversation with every channel of every association. What it
// knows of a question is in the store, but for questions that it holds back
// until the asker has decided whether a name may be kept.
type Bot struct {
	Options
	held     *held
	decided  decided
	rechecks rechecks
	due      chan struct{} // holds one token while something was queued to be sent
}

// New makes a conversation. It panics where the store or Find is missing.
func New(o Options) *Bot {
	if o.Store == nil || o.Find == nil {
		panic("bot: New: no store, or no way to find associations")
	}
	if o.Now == nil {
		o.Now = time.Now
	}
	if o.NewID == nil {
		o.NewID = store.NewID
	}
	if o.Log == nil {
		o.Log = slog.New(slog.DiscardHandler)
	}
	if o.Claim == 0 {
		o.Claim = DefaultClaim
	}
	if o.Nudge == 0 {
		o.Nudge = DefaultNudge
	}
	return &Bot{Options: o, held: newHeld(), due: make(chan struct{}, 1)}
}

// Deliveries are remembered for a day: the platforms give up within minutes,
// people who try again do so sooner.
const remember = 24 * time.Hour

// turn is one event on its way to its reply.
type turn struct {
	*Bot
	Meta
	ctx     context.Context
	assoc   Association
	role    Role
	message string   // the message that the event is about
	named   []Person // people whom its words mention
	private bool     // only the person sees that message
	inPlace bool     // the event came from a message of ours that can change
	public  bool     // the answer is for all to see
	checked bool     // it was looked up whether the event was delivered before
}

// Handle is the bot's Handler.
func (b *Bot) Handle(ctx context.Context, e Event) Reply {
	t := &turn{Bot: b, Meta: e.meta(), ctx: ctx}
	if c, ok := e.(Complete); ok {
		return Choices{complete(c)}
	}
	var ok bool
	if t.assoc, ok = b.Find(t.Where); !ok {
		if quiet(e) {
			return Nothing{}
		}
		return t.tell("This place belongs to no association that I know.",
			"Whoever runs netpost can add its workspace to the configuration.")
	}
	t.role = t.assoc.RoleOf(t.Who, t.Where)
	if p, ok := e.(Posted); ok {
		t.posted(p)
		return Nothing{}
	}
	if !t.assoc.open(t.Meta) {
		if quiet(e) {
			return Nothing{}
		}
		return t.tell("I don't answer in this channel.", "Ask me in a direct message, or in a channel that your association has chosen.")
	}
	r := t.reply(e)
	if _, form := r.(Form); !form && !t.checked {
		// What keeps nothing is answered once too; a store that fails is no
		// reason for silence.
		switch err := t.write(func(store.Writer) error { return nil }); {
		case err == errSeen:
			return Nothing{}
		case err != nil:
			t.report(err)
		}
	}
	return r
}

// quiet events get no words that they did not ask for.
func quiet(e Event) bool {
	switch e.(type) {
	case ThreadReply, Posted:
		return true
	}
	return false
}

func (t *turn) reply(e Event) Reply {
	switch e := e.(type) {
	case Command:
		t.public, t.named = Defer(e) == AckPublic, e.Named
		return t.command(parseCommand(e))
	case Mention:
		s := parseWords(e.Text)
		t.message, t.public, t.named = e.Message, Defer(e) == AckPublic, e.Named
		if t.assoc.Private && s.args.Show == ShowDefault && !t.Direct {
			t.public = false
		}
		if r, ok := t.mentorSays(s); ok {
			return r
		}
		if r, ok := t.followUp(s, true); ok {
			return r
		}
		return t.command(s)
	case ThreadReply:
		t.message, t.public = e.Message, true
		if r, ok := t.followUp(parseWords(e.Text), false); ok {
			return r
		}
		return Nothing{}
	case Shortcut:
		t.message = e.Message
		return t.command(spoken{name: "ask", text: e.Text})
	case Press:
		t.message, t.private, t.inPlace = e.Message, e.Private, true
		return t.press(e.State)
	case Submit:
		t.message, t.private, t.inPlace = e.Message, e.Private, e.Message != ""
		return t.submit(e)
	}
	panic(fmt.Sprintf("bot: an event outside the closed set: %T", e))
}

// command carries out a row of the table.
func (t *turn) command(s spoken) Reply {
	row, ok := commandByName(s.name)
	if !ok {
		return t.tell("There is no command of that name.", "What can be asked: help")
	}
	if t.role < row.Role {
		return t.refuse(row.Role)
	}
	if row.Must && s.text == "" {
		return t.tell(fmt.Sprintf("Tell me what to %s.", row.Name), "For example: "+row.Name+" "+row.Example)
	}
	switch row.Name {
	case "ask":
		return t.ask(s, mainView)
	case "bulletin":
		return t.bulletin(s.text)
	case "codes":
		return t.ask(s, codesView)
	case "drafts":
		return t.draftsList()
	case "erase":
		return t.erase(s.text)
	case "help":
		return t.say(Message{Doc: Help(), More: Token{"guide", nil}.String()})
	case "numbers":
		return t.numbers(asTable, 0)
	case "poll":
		return t.poll(s)
	case "posts":
		return t.posts()
	case "queue":
		return t.mentorsQueue()
	case "recheck":
		return t.recheck()
	case "search":
		return t.search(s)
	case "views":
		return t.beginViews(s)
	}
	panic("bot: command " + row.Name + " is in the table and nowhere else")
}

// say is an answer: to all or to the asker alone, in the thread where it was
// asked in one or begun on a mention.
func (t *turn) say(m Message) Say {
	say := Say{Message: m, Private: !t.public, InThread: t.Where.Thread != ""}
	if !say.InThread && t.public && !t.Direct && t.message != "" {
		say.InThread, say.On = true, t.message
	}
	return say
}

// tell says to the person alone what happened and how to go on.
func (t *turn) tell(what, mend string) Say {
	d := Doc{Blocks: []Block{Heading{what, Plain}}}
	if mend != "" {
		d.Blocks = append(d.Blocks, Para{Line(mend)})
	}
	return Say{Message: Message{Doc: d}, Private: true, InThread: t.Where.Thread != ""}
}

// refuse says who may do it.
func (t *turn) refuse(r Role) Say {
	return t.tell(fmt.Sprintf("That is for a %s, and you are none here.", r),
		"Your association decides who is one; ask whoever looks after its settings.")
}

// errSeen: the delivery was answered before.
var errSeen = errors.New("delivered before")

// trouble says that something of ours did not work, what that means, and logs
// it under an id that the person sees too.
func (t *turn) trouble(err error, meaning string) Say {
	id := t.report(err)
	what := "an error"
	if e, ok := errors.AsType[*store.Error](err); ok {
		what = e.Error()
	}
	return t.tell(meaning, fmt.Sprintf("The store says: %s. Try again in a while; if it stays so, tell whoever runs netpost: error %s.", what, id))
}

// report logs an error and gives the id that finds it in the log.
func (t *turn) report(err error) string {
	id := t.NewID()[:8]
	t.Log.ErrorContext(t.ctx, "trouble", "error", id, "association", t.assoc.ID, "cause", err)
	return id
}
