package bottest

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.org/netpost/bot"
)

// Whatever the handler takes, the platform gets its acknowledgement; the reply
// comes when it is there.
func deadline(t *testing.T, h Harness) {
	release := make(chan struct{})
	var once sync.Once
	open := func() { once.Do(func() { close(release) }) }
	defer open()
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		if words(e) == "quick" {
			return say("to press on", bot.Button{Label: "slow", State: "/undo/slow"})
		}
		<-release
		if _, ok := e.(bot.Press); ok {
			return bot.Update{Message: message("changed late")}
		}
		s := say("late answer to " + words(e))
		s.Private = words(e) == "slow and private"
		return s
	}))
	p.Do(command("quick"))
	s := awaits(t, "a message", p, reads("to press on"))
	p.Do(command("slow and private"))
	p.Do(bot.Command{Meta: at, Text: "public slow"})
	p.Do(pressing(s, "slow"))
	until(t, "acknowledgements while the handler still works", p, func() bool { return len(got.all()) == 4 && p.Unacked() == 0 })
	open()
	if s := awaits(t, "the late answer", p, reads("late answer to slow and private")); s.To != at.Who.ID {
		t.Errorf("a late private answer is seen by %q", s.To)
	}
	if s := awaits(t, "the late answer", p, reads("late answer to public slow")); s.To != "" {
		t.Errorf("a late public answer is seen by %q alone", s.To)
	}
	awaits(t, "the late change", p, func(c Seen) bool { return c.Changed && c.Message == s.Message && reads("changed late")(c) })
	fine(t, p)
}

// A handler that panics costs its event alone.
func panics(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		if words(e) == "panic" {
			panic("the handler panics, as the test wants")
		}
		return say("alive")
	}))
	p.Do(command("panic"))
	until(t, "the panic", p, func() bool { return len(got.all()) == 1 })
	p.Do(command("go on"))
	awaits(t, "an answer after it", p, reads("alive"))
	fine(t, p)
}

// long is a message beyond every platform's limits, its words numbered.
func long() (bot.Message, int) {
	n := 0
	line := func(most int) bot.Text {
		var t bot.Text
		for range most {
			t = append(t, bot.Span{Text: fmt.Sprintf("w%d ", n), Style: bot.Style(n % 3)})
			n++
		}
		return t
	}
	d := bot.Doc{Tone: bot.Bad, Blocks: []bot.Block{
		bot.Heading{Text: line(120).String(), Tone: bot.Bad},
		bot.Para{Text: line(3000)},
	}}
	var f bot.Fields
	var l bot.List
	var kids []bot.Kid
	for i := range 40 {
		f.Items = append(f.Items, bot.Field{Label: fmt.Sprintf("Label %d %s", i, strings.Repeat("long ", i*3)), Lines: []bot.Text{line(40), line(20)}})
		l.Items = append(l.Items, line(25))
		kids = append(kids, bot.Kid{When: line(3).String(), Then: line(12).String()})
	}
	d.Blocks = append(d.Blocks, f, l, bot.Tree{Label: "Turns on", Root: bot.Node{Ask: line(60).String(), Kids: kids}})
	for range 60 {
		d.Blocks = append(d.Blocks, bot.Quote{Text: line(10)}, bot.Aside{Text: line(10)})
	}
	for i := range 12 {
		d.Blocks = append(d.Blocks, bot.Link{Label: line(4).String(), URL: fmt.Sprintf("https://notes.example/%d", i)})
	}
	var b bot.Buttons
	b.Label = strings.Repeat("Which of them? ", 40)
	for i := range 40 {
		b.Items = append(b.Items, bot.Button{Label: fmt.Sprintf("%d %s", i, strings.Repeat("label ", 30)), State: fmt.Sprintf("/give/%s/row@p%d=front", strings.Repeat("q", 60), i)})
	}
	d.Blocks = append(d.Blocks, b)
	return bot.Message{Doc: d, More: "/more/q/ruling"}, n
}

// What is over the platform's limits comes in pages, and none of it is lost.
func limits(t *testing.T, h Harness) {
	m, count := long()
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		if press, ok := e.(bot.Press); ok {
			m := m
			if _, err := fmt.Sscanf(strings.TrimPrefix(press.State, "/more/q/ruling/"), "%d", &m.Page); err != nil {
				return say("a strange state: " + press.State)
			}
			return bot.Update{Message: m}
		}
		return bot.Say{Message: m}
	}))
	p.Do(command("all of it"))
	met := map[string]bool{}
	page := awaits(t, "the first page", p, reads("w0 w1 w2"))
	for turns := 0; ; turns++ {
		for _, w := range strings.FieldsFunc(page.Text, func(r rune) bool { return r != 'w' && (r < '0' || r > '9') }) {
			met[w] = true
		}
		next := pressing(page, "More")
		if next.State == "" {
			break
		}
		if turns > 200 {
			t.Fatal("the pages have no end")
		}
		before := len(p.Seen())
		p.Do(next)
		until(t, "the next page", p, func() bool { return len(p.Seen()) > before })
		page = p.Seen()[before]
	}
	var lost []string
	for i := range count {
		if w := fmt.Sprintf("w%d", i); !met[w] {
			lost = append(lost, w)
		}
	}
	if len(lost) > 0 {
		t.Errorf("%d words of %d are nowhere, such as %s", len(lost), count, lost[0])
	}
	fine(t, p)
}

// Pictures are there, and what they show is said.
func pictures(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(bot.Event) bot.Reply {
		s := say("see the court")
		s.Pictures = []bot.Picture{{Name: "court.png", Type: "image/png", Alt: "Six players in their places", Data: pixel}}
		return s
	}))
	p.Do(command("draw"))
	awaits(t, "the words", p, reads("see the court"))
	awaits(t, "the picture", p, func(s Seen) bool {
		return slices.Contains(s.Images, "Six players in their places") || reads("Six players in their places")(s)
	})
	fine(t, p)
}

// pixel is a PNG of one dot.
var pixel = []byte("\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x00\x00\x01\x00\x00\x00\x01\x08\x06\x00\x00\x00\x1f\x15\xc4\x89" +
	"\x00\x00\x00\rIDATx\x9cc\x00\x01\x00\x00\x05\x00\x01\r\n-\xb4\x00\x00\x00\x00IEND\xaeB`\x82")

// hostiles are texts that mean something to a platform or a terminal.
var hostiles = []string{
	"@everyone and @here look", "<!channel> <!here> <!everyone|x> <!subteam^S123> <@UBOB1> <#CCREW1>", "<@123456789012345678> <@&123456789012345678>",
	"*bold* _slanted_ ~struck~ `code` ```block``` ||hidden|| > quoted", "[a link](https://evil.example) <https://evil.example|safe>",
	"&lt;!channel&gt; &amp;", "# heading\n- list", `back\slash \@everyone \*`, "<script>alert(1)</script>", ":smile: <:x:1234> <t:0:R> </cmd:1>",
}

// Nothing in anybody's words is markup, a mention or a way to steer the
// screen: it is read as it was written, everywhere that words can stand.
func hostile(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		s := words(e)
		return bot.Say{Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{
			bot.Heading{Text: "H " + s}, bot.Para{Text: bot.Text{{Text: "P " + s, Style: bot.Strong}}}, bot.Quote{Text: bot.Line("Q " + s)},
			bot.List{Items: []bot.Text{bot.Line("L " + s)}}, bot.Aside{Text: bot.Line("A " + s)},
			bot.Fields{Items: []bot.Field{{Label: "label", Lines: []bot.Text{bot.Line("F " + s)}}}},
			bot.Tree{Label: "tree", Root: bot.Node{Ask: "T " + s, Kids: []bot.Kid{{When: "yes", Then: "K " + s}}}},
			bot.Link{Label: "N " + s, URL: "https://notes.example/1"},
		}}}}
	}))
	for _, s := range hostiles {
		before := len(p.Seen())
		p.Do(command(s))
		until(t, "an answer to "+s, p, func() bool { return len(p.Seen()) > before })
		seen := p.Seen()[before]
		for _, at := range []string{"H ", "P ", "Q ", "L ", "A ", "F ", "T ", "K ", "N "} {
			if !reads(at + s)(seen) {
				t.Errorf("%q is not read as written at %q:\n%s", s, at, seen.Text)
			}
		}
		if i := strings.IndexFunc(seen.Text, func(r rune) bool { return r < ' ' && r != '\n' && r != '\t' }); i >= 0 {
			t.Errorf("%q leaves a control character in the answer", s)
		}
	}
	fine(t, p)
}

// What the adapter does not know is acknowledged and goes no further.
func unknown(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(bot.Event) bot.Reply { return say("alive") }))
	if p.Strange() == 0 {
		t.Fatal("the fake delivers nothing strange")
	}
	p.Do(command("go on"))
	awaits(t, "an answer after strange events", p, reads("alive"))
	if es := got.all(); len(es) != 1 {
		t.Errorf("strange events came to the handler: %+v", es)
	}
	fine(t, p)
}

// What is delivered again is known as the same.
func redelivery(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(bot.Event) bot.Reply { return bot.Nothing{} }))
	e := bot.Event(bot.Mention{Meta: at, Text: "once"})
	if !p.Do(e) {
		p.Do(command("once"))
	}
	until(t, "the event", p, func() bool { return len(got.all()) == 1 && p.Unacked() == 0 })
	p.Again()
	p.Do(command("other"))
	until(t, "the other event", p, func() bool {
		return slices.ContainsFunc(got.all(), func(e bot.Event) bool { return words(e) == "other" })
	})
	first := bot.MetaOf(got.all()[0]).Delivery
	for _, e := range got.all()[1:] {
		if same := bot.MetaOf(e).Delivery == first; same != (words(e) == "once") {
			t.Errorf("%q has the delivery %q, the first one has %q", words(e), bot.MetaOf(e).Delivery, first)
		}
	}
	fine(t, p)
}

// What became of an answer is reported, once.
func posted(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply {
		s := say("answer to " + words(e))
		s.Ref = "ref " + words(e)
		s.Private = words(e) == "private"
		return s
	}))
	for i, w := range []string{"public", "private"} {
		p.Do(command(w))
		s := awaits(t, "the answer", p, reads("answer to "+w))
		until(t, "the report", p, func() bool { return len(got.reports()) > i })
		r := got.reports()[i]
		if r.Ref != "ref "+w || r.Err != nil || r.Message != "" && r.Message != s.Message || r.Where.Channel != at.Where.Channel {
			t.Errorf("the answer in the message %q is reported as %+v", s.Message, r)
		}
	}
	fine(t, p)
	if n := len(got.reports()); n != 2 {
		t.Errorf("2 answers are reported %d times", n)
	}
}

// Posts go out unasked, can be changed, and say so where they can't.
func post(t *testing.T, h Harness) {
	p := h.Start(t, (&record{}).by(func(bot.Event) bot.Reply { return bot.Nothing{} }))
	to := bot.Target{Place: at.Where}
	sent, err := p.Adapter().Post(t.Context(), to, message("unasked"))
	if err != nil || sent.Message == "" {
		t.Fatalf("posted as %+v: %v", sent, err)
	}
	awaits(t, "the post", p, func(s Seen) bool { return s.Message == sent.Message && s.To == "" && reads("unasked")(s) })
	to.Edit = sent.Message
	if _, err := p.Adapter().Post(t.Context(), to, message("corrected")); err != nil {
		t.Fatal(err)
	}
	awaits(t, "the change", p, func(s Seen) bool { return s.Changed && s.Message == sent.Message && reads("corrected")(s) })
	if _, err := p.Adapter().Post(t.Context(), bot.Target{To: at.Who.Person}, message("for you")); err != nil {
		t.Fatal(err)
	}
	if s := awaits(t, "the direct message", p, reads("for you")); s.To != at.Who.ID {
		t.Errorf("a direct message is seen by %q", s.To)
	}
	if _, err := p.Adapter().Post(t.Context(), p.Gone(), message("nowhere")); !isNotSent(err) {
		t.Errorf("a post to a place that is gone gives %v", err)
	}
	if slices.ContainsFunc(p.Seen(), reads("nowhere")) {
		t.Error("a post to a place that is gone is seen")
	}
	ended, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := p.Adapter().Post(ended, bot.Target{Place: at.Where}, message("too late")); err == nil {
		t.Error("a post whose time was over gives no error")
	}
}

// What is refused for its rate goes out after a while, once.
func throttled(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply { return say("answer to " + words(e)) }))
	p.Throttle()
	if _, err := p.Adapter().Post(t.Context(), bot.Target{Place: at.Where}, message("patient")); err != nil {
		t.Fatal(err)
	}
	awaits(t, "the post", p, reads("patient"))
	p.Do(command("more"))
	awaits(t, "an answer after it", p, reads("answer to more"))
	if n := count(p.Seen(), "patient"); n != 1 {
		t.Errorf("it is out %d times", n)
	}
}

func count(all []Seen, words string) int {
	n := 0
	for _, s := range all {
		if reads(words)(s) {
			n++
		}
	}
	return n
}

// A connection that breaks is made again, and nothing is answered twice.
func reconnect(t *testing.T, h Harness) {
	var got record
	p := h.Start(t, got.by(func(e bot.Event) bot.Reply { return say("answer to " + words(e)) }))
	p.Do(command("before"))
	awaits(t, "an answer", p, reads("answer to before"))
	for i := range 2 {
		p.Drop()
		w := fmt.Sprintf("after cut %d", i)
		p.Do(command(w))
		awaits(t, "an answer over the new connection", p, reads("answer to "+w))
	}
	if n := count(p.Seen(), "answer to before"); n != 1 {
		t.Errorf("the first question was answered %d times", n)
	}
	fine(t, p)
}
