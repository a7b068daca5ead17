package term

import (
	"context"
	"fmt"
	"io"
	"reflect"
	"strconv"
	"strings"

	"example.org/netpost/bot"
)

// print runs something that writes.
func (t *Term) print(f func()) {
	t.mu.Lock()
	defer t.mu.Unlock()
	f()
}

// write writes to the terminal; the lock is held.
func (t *Term) write(s string) {
	if t.err == nil {
		_, t.err = io.WriteString(t.Out, s)
	}
}

// line writes words of the terminal's own.
func (t *Term) line(s string) {
	t.doc(bot.Doc{Blocks: []bot.Block{bot.Aside{Text: bot.Line(s)}}})
}

func (t *Term) doc(d bot.Doc) {
	var s strings.Builder
	if err := bot.Print(&s, d, t.Text); err != nil {
		panic(err) // a strings.Builder has no errors
	}
	t.write(s.String())
}

func (t *Term) prompt() {
	if t.Prompt == "" {
		return
	}
	t.print(func() { t.write(t.Prompt) })
}

func (t *Term) find(id string) *message {
	for _, m := range t.shown {
		if m.id == id {
			return m
		}
	}
	return nil
}

// reply carries a reply out, and reports what became of it.
func (t *Term) reply(ctx context.Context, e bot.Event, on *message, r bot.Reply) {
	ref := ""
	t.mu.Lock()
	switch r := r.(type) {
	case bot.Nothing:
	case bot.Say:
		on = t.place(e, r)
		t.show(on, r.Message, false)
		for _, ed := range r.Edits {
			o := t.find(ed.ID)
			switch {
			case o == nil:
			case reflect.DeepEqual(ed.Message, r.Message):
				t.line("[" + o.id + " says the same now]") // what has scrolled by can't change
			default:
				t.show(o, ed.Message, true)
			}
		}
		ref = r.Ref
	case bot.Update:
		fresh := on == nil
		if fresh {
			on = &message{where: bot.MetaOf(e).Where, private: true}
		}
		t.show(on, r.Message, !fresh)
		ref = r.Ref
	case bot.Form:
		t.open(r, on)
	case bot.Choices:
		for _, c := range r.Items {
			t.line(c.Label)
		}
		if len(r.Items) == 0 {
			t.line("Nothing completes that.")
		}
	default:
		panic(fmt.Sprintf("term: a reply outside the closed set: %T", r))
	}
	err := t.err
	t.mu.Unlock()
	if ref == "" {
		return
	}
	m := bot.MetaOf(e)
	m.Delivery = ""
	p := bot.Posted{Meta: m, Ref: ref, Message: on.id, Err: err}
	if !on.private {
		if p.Thread = on.where.Thread; p.Thread == "" && !m.Direct {
			p.Thread = on.id
		}
	}
	t.h(ctx, p)
}

// place is where a new message goes.
func (t *Term) place(e bot.Event, s bot.Say) *message {
	where := bot.MetaOf(e).Where
	if !s.InThread {
		where.Thread = ""
	} else if where.Thread == "" {
		where.Thread = s.On
		switch e := e.(type) {
		case bot.Mention:
			where.Thread = e.Message
		case bot.ThreadReply:
			where.Thread = e.Message
		}
	}
	return &message{where: where, private: s.Private}
}

// show puts a message on the screen: a new one, or one that changed. The lock
// is held.
func (t *Term) show(on *message, m bot.Message, changed bool) {
	if on.id == "" {
		on.id = "m" + strconv.Itoa(len(t.shown)+1)
		t.shown = append(t.shown, on)
	}
	if on.where.Thread != "" {
		t.last = on.where.Thread
	}
	t.write("\n")
	if s := t.head(on, changed); s != "" {
		t.line(s)
	}
	t.doc(t.numbered(on, m))
	t.write("\n")
}

// head says what a message is, where that is not plain.
func (t *Term) head(on *message, changed bool) string {
	var s []string
	if changed {
		s = append(s, on.id+" changes")
	} else {
		s = append(s, on.id)
	}
	direct := isDirect(on.where)
	switch {
	case direct && on.where.Channel != "direct-"+t.meta.Who.ID:
		s = append(s, "for "+strings.TrimPrefix(on.where.Channel, "direct-")+" alone")
	case on.private && !direct:
		s = append(s, "in "+on.where.Channel+", for you alone")
	case !direct:
		s = append(s, "in "+on.where.Channel)
	}
	if on.where.Thread != "" {
		s = append(s, "thread "+on.where.Thread)
	}
	return "[" + strings.Join(s, ", ") + "]"
}

// isDirect reports whether a place is a talk with the bot alone.
func isDirect(p bot.Place) bool { return strings.HasPrefix(p.Channel, "direct-") }

// numbered is a message with a number for each button, and with what its
// pictures show. The terminal has no limits: the message is one page.
func (t *Term) numbered(on *message, m bot.Message) bot.Doc {
	d := bot.Doc{Tone: m.Doc.Tone}
	for _, b := range m.Doc.Blocks {
		if bs, ok := b.(bot.Buttons); ok {
			f := bot.Field{Label: bs.Label}
			for _, i := range bs.Items {
				t.buttons = append(t.buttons, pressable{i, on})
				f.Lines = append(f.Lines, bot.Text{{Text: strconv.Itoa(len(t.buttons)), Style: bot.Strong}, {Text: " " + i.Label}})
			}
			b = bot.Fields{Items: []bot.Field{f}}
		}
		d.Blocks = append(d.Blocks, b)
	}
	for _, p := range m.Pictures {
		what := "Picture: "
		if !strings.HasPrefix(p.Type, "image/") {
			what = "File: "
		}
		d.Blocks = append(d.Blocks, bot.Aside{Text: bot.Line(what + p.Alt)})
	}
	return d
}

// open opens a form; the lock is held.
func (t *Term) open(f bot.Form, on *message) {
	if len(f.Fields) == 0 {
		return
	}
	t.form = &form{f, on, map[string]string{}}
	d := bot.Doc{Blocks: []bot.Block{bot.Heading{Text: f.Title}}}
	if f.Intro != "" {
		d.Blocks = append(d.Blocks, bot.Para{Text: bot.Line(f.Intro)})
	}
	t.write("\n")
	t.doc(d)
	t.ask(f.Fields[0])
}

// ask asks for one field.
func (t *Term) ask(in bot.Input) {
	s := in.Label
	switch {
	case in.Value != "":
		s += " (empty: " + in.Value + ")"
	case in.Must:
		s += " (empty: leave the form)"
	}
	if in.Hint != "" {
		s += " " + in.Hint
	}
	t.line(s)
}
