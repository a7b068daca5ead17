package bot_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/engine/code"
)

// office is a conversation with what it sends unasked.
type office struct {
	*bot.Bot
	store store.Store
	now   time.Time
	sent  []string // where to and what
	fail  error    // of the next send
	n     int
}

func newOffice(t testing.TB, s store.Store) *office {
	o := &office{store: s, now: time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)}
	a := bot.Association{ID: "riverside", Code: code.Scholastic, Grants: []bot.Grant{{Role: bot.Mentor, To: "mentors"}, {Role: bot.Publisher, To: "publishers"}}}
	o.Bot = bot.New(bot.Options{
		Store: s,
		Find:  func(bot.Place) (bot.Association, bool) { return a, true },
		All:   func() []bot.Association { return []bot.Association{a} },
		Now:   func() time.Time { return o.now },
		Send: func(_ context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
			if err := o.fail; err != nil {
				o.fail = nil
				return bot.Sent{}, err
			}
			o.sent = append(o.sent, to.Channel+to.To.ID+": "+bot.PlainText(m.Doc, 1<<20))
			return bot.Sent{Place: to.Place, Message: fmt.Sprint("s", len(o.sent))}, nil
		},
	})
	return o
}

func (o *office) meta(who string, roles ...string) bot.Meta {
	o.n++
	return bot.Meta{
		Delivery: fmt.Sprint("d", o.n),
		Who:      bot.Who{Person: bot.Person{Platform: "stage", ID: who}, Roles: roles},
		Where:    bot.Place{Platform: "stage", Workspace: "riverside", Channel: "crew"},
	}
}

// state is that of the one post there is.
func (o *office) state(t *testing.T) (p store.Post) {
	t.Helper()
	err := o.store.Read(t.Context(), "riverside", func(r store.Reader) error {
		all, err := r.Posts()
		if err == nil && len(all) != 1 {
			err = fmt.Errorf("%d posts", len(all))
		}
		if err == nil {
			p = all[0]
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// An answer that a kill left in doubt is listed for a mentor, and sent again
// only by a press: a private one to its asker alone.
func TestPostInDoubt(t *testing.T) {
	for _, private := range []bool{true, false} {
		s := newStore(t)
		o := newOffice(t, s)
		show := bot.ShowPublic
		if private {
			show = bot.ShowPrivate
		}
		o.Handle(t.Context(), bot.Command{Meta: o.meta("ana"), Name: "ask", Text: openPlay, Args: bot.Args{Show: show}})
		// Killed here: the answer was marked, and nobody heard what became of it.
		o = newOffice(t, s)
		o.n = 100
		if err := s.Write(t.Context(), "riverside", func(w store.Writer) error { _, err := w.Resume(o.now); return err }); err != nil {
			t.Fatal(err)
		}
		o.Tick(t.Context())
		if len(o.sent) > 0 {
			t.Fatalf("what is in doubt was sent by itself: %q", o.sent)
		}
		ask := func(who string, roles ...string) bot.Reply {
			return o.Handle(t.Context(), bot.Command{Meta: o.meta(who, roles...), Name: "posts"})
		}
		if got := text(ask("bo")); !strings.Contains(got, "That is for a mentor") {
			t.Errorf("anyone gets\n%s", got)
		}
		list := ask("kim", "mentors")
		if got := text(list); !strings.Contains(got, "may have been posted") || strings.Contains(got, "setter") {
			t.Errorf("the list is\n%s", got)
		}
		press := bot.Press{Meta: o.meta("bo"), Message: "m1", State: state(t, list.(bot.Say).Message, "Send 1 again")}
		if got := text(o.Handle(t.Context(), press)); !strings.Contains(got, "That is for a mentor") {
			t.Errorf("anyone's press gets\n%s", got)
		}
		press.Meta = o.meta("kim", "mentors")
		if got := text(o.Handle(t.Context(), press)); !strings.Contains(got, "on its way again") || !strings.Contains(got, "No post waits") {
			t.Errorf("the press gets\n%s", got)
		}
		o.Tick(t.Context())
		o.Tick(t.Context())
		if len(o.sent) != 1 || !strings.Contains(o.sent[0], "It turns on this") {
			t.Fatalf("sent again: %q", o.sent)
		}
		if strings.HasPrefix(o.sent[0], "ana: ") != private {
			t.Errorf("private %t, and it went to %q", private, o.sent[0])
		}
		if p := o.state(t); p.State != store.Sent || p.Message != "s1" {
			t.Errorf("after all that the post is %+v", p)
		}
		press.Meta = o.meta("kim", "mentors")
		if got := text(o.Handle(t.Context(), press)); !strings.Contains(got, "decided about that one already") {
			t.Errorf("a second press gets\n%s", got)
		}
	}
}

// What a platform refuses for now is tried again, what may be out is not, and
// a place that is gone is for a person.
func TestSendQueued(t *testing.T) {
	for _, test := range []struct {
		name  string
		fail  error
		after time.Duration
		sent  int
		want  store.PostState
	}{
		{"sent", nil, 0, 1, store.Sent},
		{"refused, at once", fmt.Errorf("rate: %w", bot.ErrNotSent), time.Second, 0, store.Queued},
		{"refused, later", fmt.Errorf("rate: %w", bot.ErrNotSent), time.Hour, 1, store.Sent},
		{"no answer", errors.New("the line broke"), time.Hour, 0, store.Doubt},
		{"gone", fmt.Errorf("%w: %w", bot.ErrNotSent, bot.ErrGone), time.Hour, 0, store.Failed},
	} {
		t.Run(test.name, func(t *testing.T) {
			s := newStore(t)
			o := newOffice(t, s)
			say := o.Handle(t.Context(), bot.Command{Meta: o.meta("ana"), Text: "public " + openPlay}).(bot.Say)
			err := s.Write(t.Context(), "riverside", func(w store.Writer) error {
				if _, err := w.Resume(o.now); err != nil {
					return err
				}
				return w.Resend(say.Ref, bot.Person{Platform: "stage", ID: "kim"}, o.now)
			})
			if err != nil {
				t.Fatal(err)
			}
			o.fail = test.fail
			o.Tick(t.Context())
			o.now = o.now.Add(test.after)
			o.Tick(t.Context())
			if p := o.state(t); len(o.sent) != test.sent || p.State != test.want {
				t.Errorf("%d sent and the post is %s (%s), want %d and %s", len(o.sent), p.State, p.Why, test.sent, test.want)
			}
		})
	}
}
