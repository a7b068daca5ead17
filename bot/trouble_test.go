package bot_test

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"sync"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/play"
)

const openPlay = "our setter tips the ball over from inside the 3m line, ball above the net"

// broken is a store that fails at will.
type broken struct {
	store.Store
	read, write error
}

func (b *broken) Read(ctx context.Context, a string, fn func(store.Reader) error) error {
	if b.read != nil {
		return b.read
	}
	return b.Store.Read(ctx, a, fn)
}

func (b *broken) Write(ctx context.Context, a string, fn func(store.Writer) error) error {
	if b.write != nil {
		return b.write
	}
	return b.Store.Write(ctx, a, fn)
}

// desk is a conversation with one person.
type desk struct {
	*bot.Bot
	store *broken
	n     int
}

func newDesk(t testing.TB) *desk {
	s := &broken{Store: newStore(t)}
	return &desk{store: s, Bot: bot.New(bot.Options{Store: s, Find: func(p bot.Place) (bot.Association, bool) {
		return bot.Association{ID: p.Workspace, Code: code.Club}, p.Workspace != ""
	}})}
}

func (d *desk) meta(who, workspace string) bot.Meta {
	d.n++
	return bot.Meta{
		Delivery: fmt.Sprint("d", d.n),
		Who:      bot.Who{Person: bot.Person{Platform: "stage", ID: who}},
		Where:    bot.Place{Platform: "stage", Workspace: workspace, Channel: "crew"},
	}
}

func (d *desk) ask(t testing.TB, who string) bot.Say {
	t.Helper()
	say, ok := d.Handle(t.Context(), bot.Command{Meta: d.meta(who, "riverside"), Text: openPlay}).(bot.Say)
	if !ok {
		t.Fatal("no answer to a play")
	}
	return say
}

// state finds the state of a button.
func state(t testing.TB, m bot.Message, label string) string {
	t.Helper()
	for _, b := range m.Doc.Blocks {
		if bs, ok := b.(bot.Buttons); ok {
			for _, i := range bs.Items {
				if i.Label == label {
					return i.State
				}
			}
		}
	}
	t.Fatalf("no button %q in\n%s", label, bot.PlainText(m.Doc, 1<<20))
	return ""
}

func text(r bot.Reply) string {
	switch r := r.(type) {
	case bot.Say:
		return bot.PlainText(r.Doc, 1<<20)
	case bot.Update:
		return bot.PlainText(r.Doc, 1<<20)
	}
	return fmt.Sprintf("%T", r)
}

// A store that fails costs the buttons, not the ruling, and says what to do.
func TestStoreFails(t *testing.T) {
	full := &store.Error{Code: store.Full, What: "there is no room on the disk", Mend: "free some"}
	d := newDesk(t)
	say := d.ask(t, "ana")
	press := func() bot.Reply {
		return d.Handle(t.Context(), bot.Press{Meta: d.meta("ana", "riverside"), Message: "m1", Private: true, State: state(t, say.Message, "back row")})
	}

	d.store.write = full
	asked := d.ask(t, "ana")
	s := text(asked)
	if !strings.Contains(s, "It turns on this") || !strings.Contains(s, "could not be kept") || strings.Contains(s, "Also") || asked.Ref != "" {
		t.Errorf("a question that can't be kept gets\n%s", s)
	}
	if s := text(press()); !strings.Contains(s, "nothing has changed") || !strings.Contains(s, "no room on the disk; free some") {
		t.Errorf("a fact that can't be kept gets\n%s", s)
	}
	if s := text(d.Handle(t.Context(), bot.Mention{Meta: d.meta("ana", "riverside"), Text: "help"})); !strings.Contains(s, "Tell me a play") {
		t.Errorf("help needs no store, and yet it gets\n%s", s)
	}
	d.store.write, d.store.read = nil, full
	if s := text(press()); !strings.Contains(s, "nothing has changed") {
		t.Errorf("a question that can't be read gets\n%s", s)
	}
	d.store.read = nil
	if s := text(press()); !strings.Contains(s, "Fault") {
		t.Errorf("when the store is back the press gets\n%s", s)
	}
}

// Buttons that nobody made, or of questions that are gone, say what to do.
func TestStrangeButtons(t *testing.T) {
	d := newDesk(t)
	say := d.ask(t, "ana")
	own := state(t, say.Message, "back row")
	id := strings.Split(own, "/")[2]
	for _, test := range []struct{ state, who, workspace, want string }{
		{"", "ana", "riverside", "I don't know this button"},
		{"/fly/x", "ana", "riverside", "I don't know this button"},
		{"/give/nobody/row@p1=back", "ana", "riverside", "not kept any more"},
		{"/give/" + id + "/row@p1=sideways", "ana", "riverside", "I don't know this answer"},
		{"/give/" + id + "/row@p9=back", "ana", "riverside", "does not fit the play"},
		{"/tell/" + id, "ana", "riverside", "That is no button"},
		{"/held/" + id + "/keep", "ana", "riverside", "don't hold that question"},
		{own, "bo", "riverside", "not kept any more"}, // ana's question is private
		{own, "ana", "elsewhere", "not kept any more"},
		{own, "ana", "", "belongs to no association"},
		{"/view/" + id + "/upside", "ana", "riverside", "It turns on this"},
		{"/more/" + id + "/codes/x", "ana", "riverside", "It turns on this"},
		{"/guide/-9", "ana", "riverside", "Tell me a play"},
	} {
		r := d.Handle(t.Context(), bot.Press{Meta: d.meta(test.who, test.workspace), Message: "m1", Private: true, State: test.state})
		if s := text(r); !strings.Contains(s, test.want) {
			t.Errorf("%s pressed %q and got, for %q,\n%s", test.who, test.state, test.want, s)
		}
	}
	r := d.Handle(t.Context(), bot.Submit{Meta: d.meta("ana", "riverside"), State: "/undo/" + id})
	if s := text(r); !strings.Contains(s, "I don't know this form") {
		t.Errorf("a strange form got\n%s", s)
	}
}

// Many press at once: every fact is kept, none is lost, and all end at one
// answer.
func TestPressesAtOnce(t *testing.T) {
	d := newDesk(t)
	say := d.ask(t, "ana")
	var wait sync.WaitGroup
	for i := range 20 {
		label := []string{"front row", "back row"}[i%2]
		e := bot.Press{Meta: d.meta("ana", "riverside"), Message: "m1", Private: true, State: state(t, say.Message, label)}
		wait.Go(func() {
			if _, ok := d.Handle(t.Context(), e).(bot.Update); !ok {
				t.Error("a press changed nothing")
			}
		})
	}
	wait.Wait()
	id := strings.Split(state(t, say.Message, "front row"), "/")[2]
	err := d.store.Read(t.Context(), "riverside", func(r store.Reader) error {
		q, err := r.Question(id)
		if err != nil {
			return err
		}
		facts, err := r.Given(id)
		if err != nil {
			return err
		}
		want := map[string]string{"front": "play-on", "back": "fault"}[facts[len(facts)-1].Value]
		if q.Answer.Outcome != want {
			t.Errorf("the last of %d facts is %+v and the answer kept is %q", len(facts), facts[len(facts)-1], q.Answer.Outcome)
		}
		return nil
	})
	if err != nil {
		t.Error(err)
	}
}

// An answer is marked before it is out; what became of it is noted.
func TestPosted(t *testing.T) {
	d := newDesk(t)
	for _, test := range []struct {
		err  error
		want store.PostState
	}{
		{nil, store.Sent},
		{fmt.Errorf("rate: %w", bot.ErrNotSent), store.Failed},
		{errors.New("the line broke"), store.Doubt},
	} {
		m := d.meta("ana", "riverside")
		say := d.Handle(t.Context(), bot.Mention{Meta: m, Message: "m1", Text: openPlay}).(bot.Say)
		post := func() (p store.Post, q store.Question) {
			err := d.store.Read(t.Context(), "riverside", func(r store.Reader) (err error) {
				if p, err = r.Post(say.Ref); err != nil {
					return err
				}
				q, err = r.Question(p.Question)
				return err
			})
			if err != nil {
				t.Fatal(err)
			}
			return p, q
		}
		if p, _ := post(); p.State != store.Marked {
			t.Errorf("before it is out the post is %s", p.State)
		}
		r := d.Handle(t.Context(), bot.Posted{Meta: m, Ref: say.Ref, Message: "m2", Thread: "m1", Err: test.err})
		if r != (bot.Nothing{}) {
			t.Errorf("the reply to Posted is %T", r)
		}
		p, q := post()
		if p.State != test.want {
			t.Errorf("after %v the post is %s, want %s", test.err, p.State, test.want)
		}
		if (q.Answer.Message == "m2") != (test.err == nil) {
			t.Errorf("after %v the answer's message is %q", test.err, q.Answer.Message)
		}
	}
}

// Every fact and value that there is fits in a button with room for a long
// event.
func TestFactsFitButtons(t *testing.T) {
	for _, f := range play.Facts() {
		for _, v := range f.Values {
			tok := bot.Token{Verb: "give", Args: []string{store.NewID(), string(f.ID) + "@e100-e101=" + string(v.Value)}}
			if s, err := tok.State(); err != nil {
				t.Errorf("%s=%s: %d bytes: %v", f.ID, v.Value, len(tok.String()), err)
			} else if _, err := bot.ParseToken(s); err != nil {
				t.Errorf("%s=%s: %v", f.ID, v.Value, err)
			}
		}
	}
}

// Two associations never see each other's questions, under the same ids even.
func TestAssociationsApart(t *testing.T) {
	d := newDesk(t)
	where := func(workspace string) bot.Meta {
		m := d.meta("ana", workspace)
		m.Where.Thread = "t1"
		return m
	}
	d.Handle(t.Context(), bot.Mention{Meta: where("riverside"), Message: "m1", Text: openPlay})
	r := d.Handle(t.Context(), bot.Mention{Meta: where("lakeside"), Message: "m2", Text: "she was back row"})
	if s := text(r); strings.Contains(s, "Fault") {
		t.Errorf("a thread of another association was gone on with:\n%s", s)
	}
	r = d.Handle(t.Context(), bot.Mention{Meta: where("riverside"), Message: "m3", Text: "she was back row"})
	if s := text(r); !strings.Contains(s, "Fault") {
		t.Errorf("the thread itself was not:\n%s", s)
	}
}

func BenchmarkAsk(b *testing.B) {
	d := newDesk(b)
	for b.Loop() {
		d.ask(b, "ana")
	}
}

func BenchmarkComplete(b *testing.B) {
	d := newDesk(b)
	for b.Loop() {
		d.Handle(b.Context(), bot.Complete{Name: "ask", Option: "text", Typed: "our setter tips the ball ov"})
	}
}
