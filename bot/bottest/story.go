package bottest

import (
	"context"
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// Story proves the life of a question on a platform: it is asked, turns on a
// fact, goes to a mentor who answers late, becomes a note that passes every
// check, and stands in the bulletin; and that a kill at any step of the way
// loses nothing and has nothing posted twice by itself.
func Story(t *testing.T, h Harness) {
	t.Run("in public", func(t *testing.T) { lived(t, h, false) })
	t.Run("in private", func(t *testing.T) { lived(t, h, true) })
	t.Run("killed", func(t *testing.T) { storyKilled(t, h) })
}

// storyPlay turns on a fact that it does not tell.
const storyPlay = "our setter tips the ball over from inside the 3m line, ball above the net"

// life is an association that lives on a platform.
type life struct {
	store  store.Store
	folder string // of its notes
	place  bot.Place
	now    time.Time
	file   func(dir string, n *casebook.Note) error
	bot    *bot.Bot // as it was started last
}

// kim is a mentor and a publisher.
const kim = "UBOB1"

func newLife(t *testing.T, place bot.Place) *life {
	t.Helper()
	s, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return &life{store: s, folder: t.TempDir(), place: place, now: time.Date(2026, 11, 18, 12, 0, 0, 0, time.UTC), file: casebook.Publish}
}

func (l *life) association() bot.Association {
	return bot.Association{
		ID: "riverside", Name: "Riverside Officials", Code: code.Scholastic, Mentors: l.place, BulletinTo: []bot.Place{l.place},
		Book: func() (*casebook.Book, error) {
			b, _ := casebook.LoadDir(l.folder, casebook.LoadOptions{})
			return b, nil
		},
		Publish: func(n *casebook.Note) error { return l.file(l.folder, n) },
		Grants:  []bot.Grant{{Role: bot.Publisher, To: kim}},
	}
}

// start has the program begin over what is kept: what an earlier one left being
// sent is in doubt.
func (l *life) start(t *testing.T, s store.Store, send bot.Sender) {
	t.Helper()
	if err := l.store.Write(t.Context(), "riverside", func(w store.Writer) error { _, err := w.Resume(l.now); return err }); err != nil {
		t.Fatal(err)
	}
	l.bot = bot.New(bot.Options{
		Store: s, Send: send,
		Find: func(bot.Place) (bot.Association, bool) { return l.association(), true },
		All:  func() []bot.Association { return []bot.Association{l.association()} },
		Now:  func() time.Time { return l.now },
	})
}

// read reads what is kept.
func read[T any](t *testing.T, l *life, fn func(store.Reader) (T, error)) T {
	t.Helper()
	var out T
	err := l.store.Read(context.Background(), "riverside", func(r store.Reader) (err error) { out, err = fn(r); return err })
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// housed connects a life to the platform, and finds out where it is.
func housed(t *testing.T, h Harness) (*life, Platform, bot.Sender) {
	t.Helper()
	var l *life
	ready := make(chan struct{})
	placed := make(chan bot.Place, 1)
	p := h.Start(t, func(ctx context.Context, e bot.Event) bot.Reply {
		select {
		case placed <- bot.MetaOf(e).Where:
			return bot.Nothing{}
		default:
			<-ready
			return l.bot.Handle(ctx, e)
		}
	})
	p.Do(command("where am I?"))
	until(t, "the first event", p, func() bool { return len(placed) > 0 && p.Unacked() == 0 })
	place := <-placed
	place.Thread = ""
	placed <- place // every later event is for the conversation
	l = newLife(t, place)
	send := func(ctx context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
		return p.Adapter().Post(ctx, to, m)
	}
	l.start(t, l.store, send)
	close(ready)
	return l, p, send
}

// by is somebody in the channel.
func by(who string) bot.Meta {
	m := at
	m.Who.ID = who
	return m
}

// presses is somebody's press of a seen button whose label begins so.
func presses(t *testing.T, s Seen, who, label string) bot.Press {
	t.Helper()
	for _, b := range s.Buttons {
		if strings.HasPrefix(b.Label, label) {
			return bot.Press{Meta: bot.Meta{Who: by(who).Who, Where: s.Where}, Message: s.Message, Private: s.To != "", State: b.State}
		}
	}
	t.Fatalf("there is no button %q on:\n%s", label, s.Text)
	return bot.Press{}
}

// lived is the whole way, every event through the platform.
func lived(t *testing.T, h Harness, private bool) {
	l, p, _ := housed(t, h)
	before := notedOf(p.Seen()) // what is done with
	next := func(what, words string) Seen {
		t.Helper()
		var s Seen
		until(t, what, p, func() bool {
			all := before.since(p.Seen())
			i := slices.IndexFunc(all, func(s Seen) bool {
				return words == "" && s.Form != nil || words != "" && s.Form == nil && reads(words)(s)
			})
			if i >= 0 {
				s = all[i]
			}
			return i >= 0
		})
		until(t, "the deliveries of "+what, p, func() bool { return p.Unacked() == 0 })
		return s
	}
	do := func(e bot.Event) {
		before = notedOf(p.Seen())
		p.Do(e)
	}
	tick := func() {
		before = notedOf(p.Seen())
		l.bot.Tick(t.Context())
	}
	filled := func(s Seen, who, label string, values map[string]string) {
		t.Helper()
		press := presses(t, s, who, label)
		do(press)
		f := next("the form", "")
		until(t, "the press of the form", p, func() bool { return p.Unacked() == 0 })
		do(bot.Submit{Meta: press.Meta, Message: s.Message, Private: s.To != "", State: f.Form.State, Values: values})
	}

	show := bot.ShowPublic
	if private {
		show = bot.ShowPrivate
	}
	do(bot.Command{Meta: by(at.Who.ID), Name: "ask", Text: storyPlay, Args: bot.Args{Show: show}})
	asked := next("the answer", "It turns on this")
	if (asked.To != "") != private {
		t.Errorf("the answer is seen by %q", asked.To)
	}
	do(presses(t, asked, at.Who.ID, "back row"))
	settled := next("the fact told", "Fault: back-row attack")
	filled(settled, at.Who.ID, "Ask a mentor", map[string]string{"words": "is it that simple"})
	next("word of it", "A mentor was asked")
	tick()
	call := next("the call", "A question for a mentor")
	do(presses(t, call, kim, "Claim it"))
	claimed := next("the claim", "a mentor is on it")
	l.now = l.now.Add(3 * time.Hour) // later than any platform's token
	filled(claimed, kim, "Answer", map[string]string{"words": "Yes: back row, in front of the line, wholly above the net."})
	answered := next("the answer kept", "Answer otherwise")
	tick()
	late := next("the late answer", "A mentor answers")
	if want := map[bool]string{true: at.Who.ID, false: ""}[private]; late.To != want {
		t.Errorf("the late answer is seen by %q, want %q", late.To, want)
	}
	filled(answered, kim, "Draft a note from it", map[string]string{"title": "Setter tips it from inside the line"})
	if s := next("the draft", "every check passes"); s.To != kim {
		t.Errorf("the draft is seen by %q", s.To)
	}
	do(bot.Command{Meta: by(kim), Name: "drafts"})
	list := next("the drafts", "1 draft waits for a publisher")
	do(presses(t, list, kim, "Draft 1"))
	proof := next("the proof", "Publish it")
	do(presses(t, proof, kim, "Publish it"))
	next("word of it", "Published as the note 2026-001")
	if b, found := casebook.LoadDir(l.folder, casebook.LoadOptions{}); len(b.Notes()) != 1 || len(casebook.All(found, casebook.Check(b, casebook.CheckOptions{Today: casebook.DateOf(l.now)}))) > 0 {
		t.Errorf("%d notes, findings %v", len(b.Notes()), found)
	}
	do(bot.Command{Meta: by(kim), Name: "bulletin", Text: "2026-W47"})
	preview := next("the preview", "2026-001 Setter tips it from inside the line")
	if preview.To != kim {
		t.Errorf("the preview is seen by %q", preview.To)
	}
	do(presses(t, preview, kim, "To "+l.place.Channel))
	next("word of it", "on its way to 1 channel")
	tick()
	next("the bulletin", "bulletin 2026-W47")
	tick()
	for what, words := range map[string]string{"the call": "A question for a mentor", "the late answer": "A mentor answers"} {
		if n := firsts(p.Seen(), words); n != 1 {
			t.Errorf("%s is out %d times", what, n)
		}
	}
	if n := posts(p, "2026-W47"); n != 1 {
		t.Errorf("the bulletin is out %d times", n)
	}
	fine(t, p)
}

// noted is what was seen at a time, with how often.
type noted map[string]int

func notedOf(all []Seen) noted {
	n := noted{}
	for _, s := range all {
		n[s.Message+"\x00"+plain(s.Text)]++
	}
	return n
}

// since is what was seen beside that.
func (n noted) since(all []Seen) []Seen {
	left := maps.Clone(n)
	var out []Seen
	for _, s := range all {
		k := s.Message + "\x00" + plain(s.Text)
		if left[k]--; left[k] < 0 {
			out = append(out, s)
		}
	}
	return out
}

// firsts counts the new messages, not their changes, that have the words.
func firsts(all []Seen, words string) int {
	n := 0
	for _, s := range all {
		if !s.Changed && s.Form == nil && reads(words)(s) {
			n++
		}
	}
	return n
}

// storyKilled lives the story over and over, and has the program end at each
// step of the way: before and after every write, every message, and the note's
// file. It begins anew over what is kept, the platform delivers the event again,
// and a person decides what is in doubt, having looked.
func storyKilled(t *testing.T, h Harness) {
	_, p, send := housed(t, h)
	place := bot.Place{}
	p.Do(command("private x"))
	until(t, "the place", p, func() bool { return len(p.Seen()) > 0 && p.Unacked() == 0 })
	for _, s := range p.Seen() {
		place = s.Where
	}
	place.Thread = ""
	kills, doubts := 0, 0
	for dead := true; dead; kills++ {
		r := &storyRun{t: t, p: p, send: send, since: notedOf(p.Seen()), number: kills}
		r.life = newLife(t, place)
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
	return only(r.t, "the question", read(r.t, r.life, func(rd store.Reader) ([]store.Question, error) { return rd.Questions(store.Span{}) }))
}

func (r *storyRun) call() store.Call {
	return only(r.t, "the call", read(r.t, r.life, func(rd store.Reader) ([]store.Call, error) { return rd.CallsOn(r.question().ID) }))
}

func (r *storyRun) reply() store.Reply {
	return only(r.t, "the reply", read(r.t, r.life, func(rd store.Reader) ([]store.Reply, error) { return rd.Replies(r.call().ID) }))
}

// button is the state of a button of a reply.
func (r *storyRun) button(reply bot.Reply, label string) (bot.Token, bool) {
	say, _ := reply.(bot.Say)
	for _, b := range say.Doc.Blocks {
		if bs, ok := b.(bot.Buttons); ok {
			for _, b := range bs.Items {
				if strings.HasPrefix(b.Label, label) {
					tok, err := bot.ParseToken(b.State)
					if err != nil {
						r.t.Fatal(err)
					}
					return tok, true
				}
			}
		}
	}
	return bot.Token{}, false
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
		given := read(r.t, r.life, func(rd store.Reader) ([]store.Given, error) { return rd.Given(d.ID) })
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
		d := only(r.t, "the draft", read(r.t, r.life, func(rd store.Reader) ([]store.Draft, error) { return rd.Drafts() }))
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
	doubts := read(r.t, r.life, func(rd store.Reader) ([]store.Post, error) { return rd.Posts(store.Doubt) })
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
	if given := read(r.t, r.life, func(rd store.Reader) ([]store.Given, error) { return rd.Given(q.ID) }); len(given) != 1 {
		r.t.Errorf("run %d: facts told: %+v", r.number, given)
	}
	if a := r.reply(); a.Delivered.IsZero() && r.seen("A mentor answers") != 1 {
		r.t.Errorf("run %d: the answer did not arrive", r.number)
	}
	d := only(r.t, "the draft", read(r.t, r.life, func(rd store.Reader) ([]store.Draft, error) { return rd.Drafts() }))
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
	if left := read(r.t, r.life, func(rd store.Reader) ([]store.Post, error) {
		return rd.Posts(store.Queued, store.Marked, store.Doubt, store.Failed)
	}); len(left) > 0 {
		r.t.Errorf("run %d: posts are left: %+v", r.number, left)
	}
}
