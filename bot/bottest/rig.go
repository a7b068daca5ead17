package bottest

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
)

// Harness is an adapter before a fake of its platform.
type Harness struct {
	// Start connects a new adapter with the handler to a new fake, and returns
	// when events can be delivered. When the test ends it stops Run and fails
	// the test if that returned an error.
	Start func(t *testing.T, h bot.Handler) Platform
	// Lacks names the parts of the contract that the platform has no place
	// for, each with the reason. The names are those of the subtests.
	Lacks map[string]string
}

// Platform is a fake of one platform with an adapter connected to it, seen
// from the people on it. The fake is as strict as the platform: it refuses
// what is over a limit or misshapen. It is safe for use by many goroutines.
type Platform interface {
	// Adapter is the one under test.
	Adapter() bot.Adapter
	// Do has somebody cause an event and the platform deliver it in its own
	// form. Delivery is the fake's to choose. It reports false where the
	// platform has no such event; never for Press. Posted is never asked for.
	Do(bot.Event) bool
	// Again has the platform deliver the last event again, as one that it
	// thinks was lost.
	Again()
	// Strange delivers what the adapter does not know: kinds of events newer
	// than it, and malformed ones. It returns how many.
	Strange() int
	// Unacked counts the deliveries that the platform still waits for an
	// acknowledgement of.
	Unacked() int
	// Seen is what people see, in the order in which it came to be.
	Seen() []Seen
	// Refused says what the fake has refused for its limits or its shape.
	Refused() []string
	// Pings says who was notified, beside the person asked back by an answer:
	// "everyone", a user, a group.
	Pings() []string
	// Throttle has the platform refuse the next message for its rate.
	Throttle()
	// Drop cuts the connection as a network would, and returns.
	Drop()
	// Gone is a place that can't be posted to.
	Gone() bot.Target
}

// Seen is one thing that people see.
type Seen struct {
	Message string // the platform's id; a changed message has that of the first
	Changed bool   // it took the place of an earlier one
	Where   bot.Place
	To      string       // the only person who sees it; empty: all in the place
	Text    string       // all that is read, as people read it, without markup; the labels of buttons too
	Buttons []bot.Button // as the platform shows and returns them
	Form    *bot.Form    // a form that was opened
	Choices []bot.Choice // completions that were offered
	Images  []string     // what the pictures are said to show
}

// patience is how long the suite waits for something to happen. It bounds a
// failing test and says nothing of speed.
const patience = 20 * time.Second

// until waits for a condition.
func until(t *testing.T, what string, p Platform, ok func() bool) {
	t.Helper()
	for end := time.Now().Add(patience); !ok(); {
		if time.Now().After(end) {
			t.Fatalf("waited for %s in vain; people see %+v; refused: %q", what, p.Seen(), p.Refused())
		}
		time.Sleep(2 * time.Millisecond)
	}
}

// awaits waits for something that people see.
func awaits(t *testing.T, what string, p Platform, is func(Seen) bool) Seen {
	t.Helper()
	var found Seen
	until(t, what, p, func() bool {
		all := p.Seen()
		i := slices.IndexFunc(all, is)
		if i >= 0 {
			found = all[i]
		}
		return i >= 0
	})
	return found
}

// reads reports whether something seen has the words, however it is broken
// into lines.
func reads(words string) func(Seen) bool {
	return func(s Seen) bool { return strings.Contains(plain(s.Text), plain(words)) }
}

func plain(s string) string { return strings.Join(strings.Fields(s), " ") }

// fine fails the test if the platform refused or was made to notify anything,
// or waits.
func fine(t *testing.T, p Platform) {
	t.Helper()
	until(t, "every delivery to be acknowledged", p, func() bool { return p.Unacked() == 0 })
	if r := p.Refused(); len(r) > 0 {
		t.Errorf("the platform refused %q", r)
	}
	if g := p.Pings(); len(g) > 0 {
		t.Errorf("notified: %q", g)
	}
}
