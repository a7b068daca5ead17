package bottest

import (
	"context"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

// storyKilled lives the story over and over, and has the program end at each
// step of the way: before and after every write, every message, and the note's
// file. It begins anew over what is kept, the platform delivers the event again,
// and a person decides what is in doubt, having looked.
func storyKilled(t *testing.T, h Harness) {
	first, p, send := housed(t, h)
	kills, doubts := 0, 0
	for dead := true; dead; kills++ {
		r := &storyRun{t: t, p: p, send: send, since: notedOf(p.Seen()), number: kills}
		r.life = newLife(t)
		r.life.place = first.place
		k := &killer{Store: r.life.store, send: send, left: kills}
		r.life.file = func(dir string, n *casebook.Note) error {
			k.step()
			err := casebook.Publish(dir, n)
			k.step()
			return err
		}
		r.life.start(t, k, k.Send)
		r.out = k.Send
		dead = false
		for i, act := range storyActs {
			r.delivery = fmt.Sprintf("k%d-%d", kills, i)
			if !dies(func() { act.do(r) }) {
				continue
			}
			if dead {
				t.Fatalf("killed twice in one run, at %s", act.name)
			}
			dead = true
			k.left = 1 << 30
			r.life.start(t, k, k.Send) // the program begins anew
			doubts += r.decide()
			act.do(r)
			doubts += r.decide()
		}
		r.end()
	}
	if kills < 30 || doubts < 6 {
		t.Errorf("%d kills, %d posts in doubt", kills, doubts)
	}
	if g := p.Pings(); len(g) > 0 {
		t.Errorf("notified: %q", g)
	}
}

// storyRun is one run of the story.
type storyRun struct {
	t        *testing.T
	p        Platform
	life     *life
	send     bot.Sender // to the platform
	out      bot.Sender // the same, that may be killed
	since    noted      // what was seen before is of other runs
	number   int
	delivery string
	looks    int
}

// seen counts the messages of this run that have the words.
func (r *storyRun) seen(words string) int { return firsts(r.since.since(r.p.Seen()), words) }

// meta is an event of somebody, delivered under the act's own id.
func (r *storyRun) meta(who, part string) bot.Meta {
	return bot.Meta{Delivery: r.delivery + part, Who: bot.Who{Person: bot.Person{Platform: r.life.place.Platform, ID: who}}, Where: r.life.place}
}

// handle has the conversation answer an event and the platform take the answer,
// as an adapter would.
func (r *storyRun) handle(e bot.Event) bot.Reply {
	reply := r.life.bot.Handle(context.Background(), e)
	say, ok := reply.(bot.Say)
	if !ok || say.Private {
		return reply
	}
	sent, err := r.out(context.Background(), "riverside", bot.Target{Place: r.life.place}, say.Message)
	if say.Ref != "" {
		r.life.bot.Handle(context.Background(), bot.Posted{Meta: bot.MetaOf(e), Ref: say.Ref, Message: sent.Message, Thread: sent.Thread, Err: err})
	}
	return reply
}

// anew is part of the delivery of what a person does again, having seen nothing
// come of it; the platform delivers the rest again under the same id.
func (r *storyRun) anew() string { r.looks++; return fmt.Sprint("look", r.looks) }

func (r *storyRun) press(who, part, verb string, args ...string) bot.Reply {
	return r.handle(bot.Press{Meta: r.meta(who, part), Message: "m", Private: true, State: bot.Token{Verb: verb, Args: args}.String()})
}

func (r *storyRun) submit(who, verb, arg string, values map[string]string) {
	r.handle(bot.Submit{Meta: r.meta(who, ""), Message: "m", Private: true, State: bot.Token{Verb: verb, Args: []string{arg}}.String(), Values: values})
}

// only is the one of a list that there must be.
func only[T any](t *testing.T, what string, all []T) T {
	t.Helper()
	if len(all) != 1 {
		t.Fatalf("%d of %s, want one", len(all), what)
	}
	return all[0]
}

func (r *storyRun) question() store.Question {
	return only(r.t, "the question", read(r.t, &r.life.program, func(rd store.Reader) ([]store.Question, error) { return rd.Questions(store.Span{}) }))
}

func (r *storyRun) call() store.Call {
	return only(r.t, "the call", read(r.t, &r.life.program, func(rd store.Reader) ([]store.Call, error) { return rd.CallsOn(r.question().ID) }))
}

func (r *storyRun) reply() store.Reply {
	return only(r.t, "the reply", read(r.t, &r.life.program, func(rd store.Reader) ([]store.Reply, error) { return rd.Replies(r.call().ID) }))
}

// button is the state of a button of a reply.
func (r *storyRun) button(reply bot.Reply, label string) (bot.Token, bool) {
	b, ok := buttonOf(reply, label)
	if !ok {
		return bot.Token{}, false
	}
	tok, err := bot.ParseToken(b.State)
	if err != nil {
		r.t.Fatal(err)
	}
	return tok, true
}

func (r *storyRun) tick() { r.life.bot.Tick(context.Background()) }

// storyActs are the acts of the story, each of which may be done again when the
// program was killed in it.
var storyActs = []struct {
	name string
	do   func(*storyRun)
}{
	{"asking", func(r *storyRun) {
		r.handle(bot.Command{Meta: r.meta(at.Who.ID, ""), Text: "public " + storyPlay})
	}},
	{"telling the fact", func(r *storyRun) {
		d := r.question()
		given := read(r.t, &r.life.program, func(rd store.Reader) ([]store.Given, error) { return rd.Given(d.ID) })
		if len(given) == 0 {
			r.submit(at.Who.ID, "tell", d.ID, map[string]string{"words": "she was back row"})
		}
	}},
	{"asking a mentor", func(r *storyRun) { r.submit(at.Who.ID, "call", r.question().ID, map[string]string{"words": ""}) }},
	{"the call's post", (*storyRun).tick},
	{"the claim", func(r *storyRun) { r.press(kim, "", "claim", r.call().ID) }},
	{"the late answer", func(r *storyRun) {
		r.life.now = r.life.now.Add(3 * time.Hour)
		r.submit(kim, "reply", r.call().ID, map[string]string{"words": "Yes: back row, in front of the line, wholly above the net."})
	}},
	{"the answer's post", (*storyRun).tick},
	{"the draft", func(r *storyRun) {
		r.submit(kim, "note", r.reply().ID, map[string]string{"title": fmt.Sprintf("Setter tips it, number %d", r.number)})
	}},
	{"publishing", func(r *storyRun) {
		// Whoever pressed and saw nothing come of it looks and presses again.
		d := only(r.t, "the draft", read(r.t, &r.life.program, func(rd store.Reader) ([]store.Draft, error) { return rd.Drafts() }))
		if tok, ok := r.button(r.press(kim, r.anew(), "proof", d.ID), "Publish it"); ok {
			r.press(kim, "", tok.Verb, tok.Args...)
		}
	}},
	{"the bulletin", func(r *storyRun) {
		preview := r.handle(bot.Command{Meta: r.meta(kim, r.anew()), Name: "bulletin", Text: "2026-W47"})
		if tok, ok := r.button(preview, "To "+r.life.place.Channel); ok {
			r.press(kim, "", tok.Verb, tok.Args...)
		}
	}},
	{"the bulletin's post", (*storyRun).tick},
}

// said are the words by which a post of each kind is known in the channel.
var said = map[string]string{"answer": "It turns on this", "bulletin": "bulletin 2026-W47", "call": "A question for a mentor", "reply": "A mentor answers"}

// decide is the person who looks in the channel for what is in doubt, and has
// it sent again where it is not there. It gives how many there were.
func (r *storyRun) decide() int {
	doubts := read(r.t, &r.life.program, func(rd store.Reader) ([]store.Post, error) { return rd.Posts(store.Doubt) })
	n := 0
	for _, p := range doubts {
		kind, _, _ := strings.Cut(p.Key, "/")
		words, ok := said[kind]
		if !ok {
			continue // a change of a message, which is done again by itself
		}
		n++
		out := r.seen(words)
		if out > 1 {
			r.t.Fatalf("run %d: %s is out %d times", r.number, p.Key, out)
		}
		err := r.life.store.Write(context.Background(), "riverside", func(w store.Writer) error {
			return bot.DecidePost(w, p.Key, out == 0, bot.Person{Platform: r.life.place.Platform, ID: kim}, r.life.now)
		})
		if err != nil {
			r.t.Fatal(err)
		}
	}
	r.tick()
	return n
}

// end is what must be whatever happened: everything is kept, and out once.
func (r *storyRun) end() {
	r.t.Helper()
	r.decide()
	q := r.question()
	if given := read(r.t, &r.life.program, func(rd store.Reader) ([]store.Given, error) { return rd.Given(q.ID) }); len(given) != 1 {
		r.t.Errorf("run %d: facts told: %+v", r.number, given)
	}
	if a := r.reply(); a.Delivered.IsZero() && r.seen("A mentor answers") != 1 {
		r.t.Errorf("run %d: the answer did not arrive", r.number)
	}
	d := only(r.t, "the draft", read(r.t, &r.life.program, func(rd store.Reader) ([]store.Draft, error) { return rd.Drafts() }))
	b, found := casebook.LoadDir(r.life.folder, casebook.LoadOptions{})
	if found = casebook.All(found, casebook.Check(b, casebook.CheckOptions{Today: casebook.DateOf(r.life.now)})); len(found) > 0 {
		r.t.Errorf("run %d: %v", r.number, found)
	}
	if d.State != store.Published || len(b.Notes()) != 1 || d.Note != b.Notes()[0].ID {
		r.t.Errorf("run %d: the draft is %s as %q, the notes are %d", r.number, d.State, d.Note, len(b.Notes()))
	}
	for _, kind := range []string{"bulletin", "call", "reply"} {
		if n := r.seen(said[kind]); n != 1 {
			r.t.Errorf("run %d: the %s is out %d times", r.number, kind, n)
		}
	}
	if n := r.seen(said["answer"]) + r.seen("Fault: back-row attack, against us"); n == 0 {
		r.t.Errorf("run %d: the answer was never seen", r.number)
	}
	if left := read(r.t, &r.life.program, func(rd store.Reader) ([]store.Post, error) {
		return rd.Posts(store.Queued, store.Marked, store.Doubt, store.Failed)
	}); len(left) > 0 {
		r.t.Errorf("run %d: posts are left: %+v", r.number, left)
	}
}
