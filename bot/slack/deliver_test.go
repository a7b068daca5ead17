package slack_test

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// replies has every event but Posted answered with one reply.
func replies(r bot.Reply) *bottest.Recorder {
	return &bottest.Recorder{Reply: func(bot.Event) bot.Reply { return r }}
}

// posted waits for the report of a message.
func (c *crew) posted(r *bottest.Recorder) bot.Posted {
	c.t.Helper()
	c.Wait(wait, func() bool { return len(bottest.Of[bot.Posted](r)) > 0 })
	p := bottest.Of[bot.Posted](r)
	if len(p) != 1 {
		c.t.Fatalf("%d reports\n%s", len(p), c.log)
	}
	return p[0]
}

// What became of a message is told, with its ids.
func TestPosted(t *testing.T) {
	r := replies(bot.Say{Message: bottest.Paragraph("an answer"), InThread: true, Ref: "r1"})
	c := start(t, workspace(t), socketMode, r.Handle)
	ana := c.Person("U0ANA")
	m, d := ana.Say(talk, "", named("x"))
	c.fine(d)
	got := c.last(ana, talk, slackfake.Message{})
	p := c.posted(r)
	if p.Ref != "r1" || p.Message != got.TS || p.Thread != m.TS || p.Err != nil || p.Where.Channel != talk || p.Who.ID != "U0ANA" {
		t.Errorf("the report is %+v; the message %+v", p, got)
	}
}

// A message whose answer was lost may be out: it is not sent again, and that is
// what the report says.
func TestInDoubt(t *testing.T) {
	for name, spoil := range map[string]func(*slackfake.Server){
		"answer lost":    func(s *slackfake.Server) { s.Lose("chat.postMessage", 1) },
		"server error":   func(s *slackfake.Server) { s.Status("chat.postMessage", 500, 1) },
		"internal error": func(s *slackfake.Server) { s.Refuse("chat.postMessage", "internal_error", 1) },
	} {
		t.Run(name, func(t *testing.T) {
			r := replies(bot.Say{Message: bottest.Paragraph("an answer"), Ref: "r1"})
			s := workspace(t)
			c := start(t, s, socketMode, r.Handle)
			spoil(s)
			_, d := c.Person("U0ANA").Say(talk, "", named("x"))
			c.fine(d)
			p := c.posted(r)
			if p.Err == nil || errors.Is(p.Err, bot.ErrNotSent) || len(s.Calls("chat.postMessage")) != 1 {
				t.Errorf("the report is %v after %d calls", p.Err, len(s.Calls("chat.postMessage")))
			}
		})
	}
}

// The same for a private answer: it goes no other way either.
func TestPrivateInDoubt(t *testing.T) {
	r := replies(bot.Say{Message: bottest.Paragraph("for you"), Private: true, Ref: "r1"})
	s := workspace(t)
	c := start(t, s, httpMode, r.Handle)
	s.Lose(slackfake.RespondMethod, 1)
	ana := c.Person("U0ANA")
	c.fine(ana.Command(talk, "x"))
	if p := c.posted(r); p.Err == nil || errors.Is(p.Err, bot.ErrNotSent) || len(ana.Sees(talk)) != 1 {
		t.Errorf("the report is %v; Ana sees %v", p.Err, ana.Sees(talk))
	}
}

// In a channel that the bot is not in, an answer to all goes the way that the
// command opened.
func TestNotInChannel(t *testing.T) {
	r := replies(bot.Say{Message: bottest.Paragraph("for all"), Ref: "r1"})
	s := workspace(t)
	c := start(t, s, socketMode, r.Handle)
	ana := c.Person("U0ANA")
	c.fine(ana.Command(aside, "public x"))
	m := c.last(c.Person("U0BO"), aside, slackfake.Message{})
	c.says(m, "for all")
	if p := c.posted(r); p.Err != nil || p.Message != "" {
		t.Errorf("the report is %+v", p)
	}
	// Its buttons work there too.
	c.fine(ana.PressValue(m, "press-0", "x"))
}

// Where nothing goes to the channel, its asker is told how to mend that.
func TestNoWay(t *testing.T) {
	r := replies(bot.Say{Message: bottest.Paragraph("for all"), Ref: "r1"})
	s := workspace(t)
	c := start(t, s, socketMode, r.Handle)
	ana := c.Person("U0ANA")
	s.Refuse("chat.postMessage", "is_archived", 1)
	_, d := ana.Say(talk, "", named("x"))
	c.fine(d)
	m := c.last(ana, talk, slackfake.Message{})
	if !m.Private() {
		t.Error("all see it")
	}
	c.says(m, "for all", "/invite")
	if p := c.posted(r); !errors.Is(p.Err, bot.ErrGone) || !errors.Is(p.Err, bot.ErrNotSent) {
		t.Errorf("the report is %v", p.Err)
	}
}

// What is for one alone goes as a direct message where Slack can't show it in
// the place, and never to all.
func TestWhisper(t *testing.T) {
	r := replies(bot.Say{Message: bottest.Paragraph("for you"), Private: true, InThread: true, Ref: "r1"})
	s := workspace(t)
	c := start(t, s, socketMode, r.Handle)
	ana := c.Person("U0ANA")
	s.Status(slackfake.RespondMethod, 404, 1)
	s.Refuse("chat.postEphemeral", "user_not_in_channel", 1)
	c.fine(ana.Command(talk, "x"))
	c.says(c.last(ana, slackfake.Room(ana.ID), slackfake.Message{}), "for you")
	if n := len(ana.Sees(talk)); n != 0 {
		t.Errorf("the channel shows %d messages", n)
	}
	if p := c.posted(r); p.Err != nil || p.Where.Channel != slackfake.Room(ana.ID) || !p.Direct || p.Message == "" {
		t.Errorf("the report is %+v", p)
	}
	// From a mention in a thread, it is shown in the thread.
	m, d := ana.Say(talk, "", named("y"))
	c.fine(d)
	if got := c.last(ana, talk, slackfake.Message{}); !got.Private() || got.Thread != m.TS {
		t.Errorf("it is shown at %+v", got)
	}
}

// A message that can't be changed by its button's address is changed otherwise,
// or said anew to the person alone.
func TestUpdate(t *testing.T) {
	s := workspace(t)
	c := start(t, s, httpMode, bottest.Echo)
	ana := c.Person("U0ANA")
	_, d := ana.Say(talk, "", named("x"))
	c.fine(d)
	m := c.last(ana, talk, slackfake.Message{})
	s.Status(slackfake.RespondMethod, 404, 1)
	c.fine(ana.PressValue(m, "press-0", "one"))
	changed := c.last(ana, talk, m)
	if changed.TS != m.TS || len(s.Calls("chat.update")) != 1 {
		t.Errorf("it was not changed: %+v", changed)
	}
	s.Status(slackfake.RespondMethod, 404, 2)
	s.Refuse("chat.update", "cant_update_message", 1)
	c.fine(ana.PressValue(m, "press-0", "two"))
	anew := c.last(ana, talk, changed)
	if anew.TS == m.TS || !anew.Private() {
		t.Errorf("it was not said anew: %+v", anew)
	}
	c.says(anew, "pressed two")
	// One that only its person sees has no other way.
	c.fine(ana.Command(talk, "private"))
	private := c.last(ana, talk, anew)
	s.Status(slackfake.RespondMethod, 404, 1)
	c.fine(ana.PressValue(private, "press-0", "three"))
	again := c.last(ana, talk, private)
	if again.TS == private.TS || !again.Private() {
		t.Errorf("it was not said anew: %+v", again)
	}
}

// An earlier message changes along; one that is gone is no error.
func TestEdits(t *testing.T) {
	s := workspace(t)
	c := start(t, s, socketMode, editor)
	ana := c.Person("U0ANA")
	_, d := ana.Say(talk, "", named("first"))
	c.fine(d)
	first := c.last(ana, talk, slackfake.Message{})
	_, d = ana.Say(talk, "", named("edit "+first.TS))
	c.fine(d)
	if !c.Wait(wait, func() bool {
		for _, m := range ana.Sees(talk) {
			if m.TS == first.TS && m.Edits == 1 {
				return true
			}
		}
		return false
	}) {
		t.Errorf("the earlier message did not change\n%s", c.log)
	}
	if strings.Contains(c.log.String(), "level=ERROR") {
		t.Errorf("a message that is gone is an error:\n%s", c.log)
	}
}

// editor edits the message that it is told of, and one that is not there.
func editor(_ context.Context, e bot.Event) bot.Reply {
	m, ok := e.(bot.Mention)
	if !ok {
		return bot.Nothing{}
	}
	say := bot.Say{Message: bottest.Paragraph(m.Text)}
	if ts, ok := strings.CutPrefix(m.Text, "edit "); ok {
		say.Edits = []bot.Edit{{ID: "1.1", Message: bottest.Paragraph("gone")}, {ID: ts, Message: bottest.Paragraph("changed")}}
	}
	return say
}

// A form that Slack does not open in time ends in words.
func TestLateForm(t *testing.T) {
	form := bot.Form{State: "/tell/q", Title: "Words", Send: "Send", Fields: []bot.Input{{Name: "words", Label: "What?"}}}
	r := &bottest.Recorder{Reply: func(e bot.Event) bot.Reply {
		if e, ok := e.(bot.Submit); ok {
			return bot.Update{Message: bottest.Paragraph("sent " + e.Values["words"])}
		}
		return form
	}}
	s := workspace(t)
	c := start(t, s, socketMode, r.Handle)
	ana := c.Person("U0ANA")
	s.Refuse("views.open", "expired_trigger_id", 1)
	c.fine(ana.Command(talk, "x"))
	c.says(c.last(ana, talk, slackfake.Message{}), "did not open", "Press the button again")
	// In time, it opens, and comes back without a message that it is on.
	c.fine(ana.Command(talk, "y"))
	if !c.Wait(wait, func() bool { return len(c.Views(ana.ID)) == 1 }) {
		t.Fatalf("no form\n%s", c.log)
	}
	before := c.last(ana, talk, slackfake.Message{})
	c.fine(ana.Submit(c.Views(ana.ID)[0], map[string]string{"words": "these"}))
	c.says(c.last(ana, talk, before), "sent these")
	if e := bottest.Of[bot.Submit](r)[0]; e.State != form.State || e.Message != "" || e.Where.Channel != talk {
		t.Errorf("the form came back as %+v", e)
	}
}

var court = bot.Picture{Name: "court.png", Type: "image/png", Alt: "Six players, the setter in the back row", Data: []byte("\x89PNG not really")}

// A picture stands in the thread of its message, once, and in the direct
// message where only one may see it.
func TestPictures(t *testing.T) {
	s := workspace(t)
	var picture atomic.Pointer[bot.Picture]
	picture.Store(&court)
	c := start(t, s, socketMode, func(_ context.Context, e bot.Event) bot.Reply {
		m := bottest.Paragraph("with a picture")
		m.Pictures = []bot.Picture{*picture.Load(), {Name: "empty.png", Alt: "nothing"}}
		switch e.(type) {
		case bot.Mention:
			return bot.Say{Message: m}
		case bot.Press:
			return bot.Update{Message: m}
		}
		return bot.Say{Message: m, Private: true}
	})
	ana, bo := c.Person("U0ANA"), c.Person("U0BO")
	files := func(p *slackfake.Person, channel string) (out []slackfake.Message) {
		for _, x := range p.Sees(channel) {
			if x.File != nil {
				out = append(out, x)
			}
		}
		return out
	}
	s.Limit("files.completeUploadExternal", time.Second, 1)
	_, d := ana.Say(talk, "", named("x"))
	c.fine(d)
	said := c.last(ana, talk, slackfake.Message{})
	if !c.Wait(wait, func() bool { return len(files(bo, talk)) == 1 }) {
		t.Fatalf("no picture\n%s", c.log)
	}
	f := files(bo, talk)[0]
	if f.Thread != said.TS || f.File.Alt != court.Alt || f.File.Name != court.Name || !bytes.Equal(f.File.Data, court.Data) {
		t.Errorf("the picture is %+v %+v", f, f.File)
	}
	c.fine(ana.PressValue(said, "press-0", "x"))
	c.last(ana, talk, said)
	c.fine(ana.Command(talk, "x"))
	if !c.Wait(wait, func() bool { return len(files(ana, slackfake.Room(ana.ID))) == 1 }) {
		t.Errorf("no picture in the direct message\n%s", c.log)
	}
	if n := len(files(bo, talk)); n != 1 {
		t.Errorf("the channel has %d pictures", n)
	}
	// Another picture takes its place, also one that was there before.
	for _, alt := range []string{"Now the setter is in front", court.Alt} {
		p := court
		p.Alt, p.Data = alt, nil
		p.Make = func() ([]byte, error) { return []byte("\x89PNG " + alt), nil }
		picture.Store(&p)
		c.fine(ana.PressValue(said, "press-0", alt))
		if !c.Wait(wait, func() bool { f := files(bo, talk); return len(f) == 1 && f[0].File.Alt == alt }) {
			t.Errorf("%q is not the one picture: %+v\n%s", alt, files(bo, talk), c.log)
		}
	}
	// One that can't be drawn costs nothing but itself.
	bad := court
	bad.Data, bad.Make = nil, func() ([]byte, error) { return nil, errors.New("no ink") }
	picture.Store(&bad)
	_, d = ana.Say(talk, "", named("z"))
	c.fine(d)
	c.says(c.last(ana, talk, said), "with a picture")
	picture.Store(&court)
	// Without the scope, the words are there all the same.
	s.SetScopes("app_mentions:read,chat:write,commands,im:write")
	_, d = ana.Say(talk, "", named("y"))
	c.fine(d)
	c.says(c.last(ana, talk, said), "with a picture")
	if !c.Wait(wait, func() bool { return strings.Contains(c.log.String(), "files:write") }) {
		t.Errorf("the log does not name the scope:\n%s", c.log)
	}
}

// A private answer offers its picture with a button, which brings it to the
// direct message; others see nothing of it.
func TestPrivatePicture(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		m := bottest.Paragraph("in private")
		m.Pictures, m.Drawn = []bot.Picture{court}, "/draw/q"
		alone := bottest.Paragraph("drawn: " + court.Alt)
		alone.Pictures = []bot.Picture{court}
		var another atomic.Bool
		c := start(t, workspace(t), mode, func(_ context.Context, e bot.Event) bot.Reply {
			switch e := e.(type) {
			case bot.Press:
				if e.State == m.Drawn {
					alone := alone
					if another.Load() {
						alone.Pictures = []bot.Picture{{Name: "court.png", Type: "image/png", Alt: court.Alt, Data: []byte("\x89PNG another")}}
					}
					return bot.Say{Message: alone, Private: true}
				}
				return bot.Update{Message: m}
			}
			return bot.Say{Message: m, Private: true}
		})
		ana, bo := c.Person("U0ANA"), c.Person("U0BO")
		c.fine(ana.Command(talk, "x"))
		said := c.last(ana, talk, slackfake.Message{})
		c.fine(ana.PressValue(said, "press-9", "/undo/q")) // changed in place, it still offers it
		said = c.last(ana, talk, said)
		if n := len(c.Calls("files.getUploadURLExternal")); n != 0 {
			t.Errorf("%d pictures went out unasked", n)
		}
		c.fine(ana.Press(said, "Picture"))
		c.says(c.last(ana, talk, said), "drawn: "+court.Alt, "The picture is in the direct message with me.")
		seen := ana.Sees(slackfake.Room(ana.ID))
		if len(seen) != 1 || seen[0].File == nil || seen[0].File.Alt != court.Alt {
			t.Errorf("the direct message has %+v", seen)
		}
		if seen := bo.Sees(talk); len(seen) != 0 {
			t.Errorf("others see %+v", seen)
		}
		// Where it can't be sent, that is said.
		c.SetScopes("app_mentions:read,chat:write,commands,im:write")
		another.Store(true)
		c.fine(ana.Press(said, "Picture"))
		if !c.Wait(wait, func() bool {
			return slices.ContainsFunc(ana.Sees(talk), func(x slackfake.Message) bool { return strings.Contains(x.Shown(), "The picture could not be sent") })
		}) {
			t.Errorf("nothing is said of a picture that was not sent: %+v", ana.Sees(talk))
		}
	})
}

func TestPost(t *testing.T) {
	s := workspace(t)
	c := start(t, s, socketMode, bottest.Echo)
	ana := c.Person("U0ANA")
	ctx := t.Context()
	in := func(channel, thread string) bot.Place {
		return bot.Place{Platform: "slack", Workspace: slackfake.Team, Channel: channel, Thread: thread}
	}
	first, err := c.adapter.Post(ctx, bot.Target{Place: in(talk, "")}, bottest.Paragraph("a bulletin"))
	if err != nil || first.Message == "" || first.Thread != first.Message || first.Channel != talk {
		t.Fatalf("Post: %+v, %v", first, err)
	}
	under, err := c.adapter.Post(ctx, bot.Target{Place: in(talk, first.Message)}, bottest.Paragraph("more"))
	if err != nil || under.Thread != first.Message {
		t.Errorf("Post in a thread: %+v, %v", under, err)
	}
	if _, err := c.adapter.Post(ctx, bot.Target{Place: in(talk, ""), Edit: first.Message}, bottest.Paragraph("another bulletin")); err != nil {
		t.Errorf("Post in place: %v", err)
	}
	c.says(ana.Sees(talk)[0], "another bulletin")
	room, err := c.adapter.Post(ctx, bot.Target{To: bot.Person{Platform: "slack", ID: ana.ID}}, bottest.Paragraph("for you"))
	if err != nil || room.Channel != slackfake.Room(ana.ID) {
		t.Errorf("Post to a person: %+v, %v", room, err)
	}
	for _, test := range []struct {
		name  string
		to    bot.Target
		spoil func()
		sent  bool // it may be out
		gone  bool
	}{
		{name: "no such channel", to: bot.Target{Place: in("C0NONE", "")}, gone: true},
		{name: "not in the channel", to: bot.Target{Place: in(aside, "")}, gone: true},
		{name: "no such thread", to: bot.Target{Place: in(talk, "1.1")}, gone: true},
		{name: "no such message", to: bot.Target{Place: in(talk, ""), Edit: "1.1"}, gone: true},
		{name: "no such person", to: bot.Target{To: bot.Person{ID: "B0NONE"}}, gone: true},
		{name: "nobody", to: bot.Target{}},
		{name: "refused", to: bot.Target{Place: in(talk, "")}, spoil: func() { s.Refuse("chat.postMessage", "invalid_auth", 1) }},
		{name: "lost", to: bot.Target{Place: in(talk, "")}, spoil: func() { s.Lose("chat.postMessage", 1) }, sent: true},
	} {
		if test.spoil != nil {
			test.spoil()
		}
		_, err := c.adapter.Post(ctx, test.to, bottest.Paragraph("x"))
		if err == nil || errors.Is(err, bot.ErrNotSent) == test.sent || errors.Is(err, bot.ErrGone) != test.gone {
			t.Errorf("%s: %v", test.name, err)
		}
	}
	// A rate that leaves no time.
	s.Limit("chat.postMessage", 30*time.Second, 1)
	short, cancel := context.WithTimeout(ctx, 200*time.Millisecond)
	defer cancel()
	if _, err := c.adapter.Post(short, bot.Target{Place: in(talk, "")}, bottest.Paragraph("x")); !errors.Is(err, bot.ErrNotSent) {
		t.Errorf("held back: %v", err)
	}
}
