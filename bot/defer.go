package bot

import (
	"fmt"
	"time"
)

// DeferAfter is how long an adapter waits for the reply before it defers:
// half of what the platforms give, so that a slow network has the other half.
const DeferAfter = 1500 * time.Millisecond

// Ack is how an adapter says "wait" to an event whose reply takes time.
type Ack uint8

// The acknowledgements. Where a platform can't change who sees a deferred
// message and the reply is for others than was said, the adapter takes the
// deferred one away and says the reply anew: what is private never shows in
// public.
const (
	// AckNone: the reply comes at once and may be a Form or Choices; the
	// adapter waits for it and does not defer.
	AckNone Ack = iota
	AckPrivate
	AckPublic
	// AckUpdate: the message that was pressed on will change, most likely.
	AckUpdate
)

// Defer says how to acknowledge an event. It depends on nothing but the event.
func Defer(e Event) Ack {
	switch e := e.(type) {
	case Command:
		return shown(parseCommand(e).args.Show, e.usual(ShowPrivate))
	case Mention:
		return shown(parseWords(e.Text).args.Show, e.usual(ShowPublic))
	case Shortcut:
		return AckPrivate
	case ThreadReply:
		return AckPublic
	case Press:
		if t, err := ParseToken(e.State); err == nil {
			v, _ := verbByName(t.Verb)
			return v.ack
		}
		return AckPrivate
	case Submit:
		return AckUpdate
	case Complete, Posted:
		return AckNone
	}
	panic(fmt.Sprintf("bot: Defer: an event outside the closed set: %T", e))
}

// usual is who sees an answer where the asker did not choose. Alone with the
// bot there is nobody to hide it from, and what is hidden does not last.
func (m Meta) usual(s Show) Show {
	if m.Direct {
		return ShowPublic
	}
	return s
}

func shown(asked, usual Show) Ack {
	if asked == ShowDefault {
		asked = usual
	}
	if asked == ShowPublic {
		return AckPublic
	}
	return AckPrivate
}
