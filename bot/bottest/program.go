package bottest

import (
	"context"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
)

// program is netpost at work on a platform for one association, over a store
// that outlives it.
type program struct {
	store       store.Store
	place       bot.Place
	now         time.Time
	association func() bot.Association
	bot         *bot.Bot // as it was started last
}

func newProgram(t *testing.T, now time.Time) program {
	t.Helper()
	return program{store: newStore(t), now: now}
}

// start has the program begin over what is kept: what an earlier one left being
// sent is in doubt.
func (pr *program) start(t *testing.T, s store.Store, send bot.Sender) {
	t.Helper()
	if err := pr.store.Write(t.Context(), "riverside", func(w store.Writer) error { _, err := w.Resume(pr.now); return err }); err != nil {
		t.Fatal(err)
	}
	pr.bot = bot.New(bot.Options{
		Store: s, Send: send,
		Find: func(bot.Place) (bot.Association, bool) { return pr.association(), true },
		All:  func() []bot.Association { return []bot.Association{pr.association()} },
		Now:  func() time.Time { return pr.now },
	})
}

// onPlatform connects a program to the platform, and finds out where it is. The
// program is to be started before the next event.
func (pr *program) onPlatform(t *testing.T, h Harness) (Platform, bot.Sender) {
	t.Helper()
	placed := make(chan bot.Place, 1)
	p := h.Start(t, func(ctx context.Context, e bot.Event) bot.Reply {
		select {
		case placed <- bot.MetaOf(e).Where:
			return bot.Nothing{}
		default:
			return pr.bot.Handle(ctx, e)
		}
	})
	p.Do(command("where am I?"))
	until(t, "the first event", p, func() bool { return len(placed) > 0 && p.Unacked() == 0 })
	pr.place = <-placed
	pr.place.Thread = ""
	placed <- pr.place // every later event is for the conversation
	return p, func(ctx context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
		return p.Adapter().Post(ctx, to, m)
	}
}

// read reads what is kept.
func read[T any](t *testing.T, p *program, fn func(store.Reader) (T, error)) T {
	t.Helper()
	var out T
	err := p.store.Read(context.Background(), "riverside", func(r store.Reader) (err error) { out, err = fn(r); return err })
	if err != nil {
		t.Fatal(err)
	}
	return out
}
