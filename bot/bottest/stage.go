package bottest

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
)

// posting is a message that stands in the channel.
type posting struct {
	id      string
	where   bot.Place
	to      string // only they see it; empty: all
	shown   bot.Message
	before  []bot.Message // as it was shown before it changed
	deleted bool
}

func (p *posting) change(m bot.Message) {
	p.before = append(p.before, p.shown)
	p.shown = m
}

type openForm struct {
	bot.Form
	on *posting
}

// stage is the platform of a transcript.
type stage struct {
	t        *testing.T
	settings Settings
	talk     Talk
	gone     map[string]bool // channels that were deleted
	print    func(bot.Message) string
	out      strings.Builder
	messages []*posting
	count    int // of messages and people's messages
	delivery int
	threads  []string
	last     map[string]bot.Event
	forms    map[string]openForm
}

func (s *stage) id() string { s.count++; return fmt.Sprintf("m%d", s.count) }

// act has somebody do something.
func (s *stage) act(who, where, what string) {
	s.delivery++
	m := bot.Meta{
		Delivery: fmt.Sprintf("d%d", s.delivery),
		Who:      bot.Who{Person: bot.Person{Platform: "stage", ID: who}},
		Where:    bot.Place{Platform: "stage", Workspace: "riverside", Channel: "crew"},
	}
	if r := s.settings["roles of "+who]; r != "" {
		m.Who.Roles = []string{r}
	}
	if w := s.settings["workspace"]; w != "" {
		m.Where.Workspace = w
	}
	where = strings.TrimSpace(where)
	if rest, ok := strings.CutPrefix(where, "in "); ok {
		m.Where.Channel, where, _ = strings.Cut(rest, " ")
	}
	switch thread, in := strings.CutPrefix(where, "thread"); {
	case where == "direct":
		m.Direct, m.Where.Channel = true, "direct-"+who
	case in && thread != "":
		m.Where.Thread = strings.TrimSpace(thread)
	case in && len(s.threads) > 0:
		m.Where.Thread = s.threads[len(s.threads)-1]
	}
	verb, rest, _ := strings.Cut(what, " ")
	var e bot.Event
	switch verb {
	case "/netpost":
		e = bot.Command{Meta: m, Text: rest}
	case "@netpost":
		e = bot.Mention{Meta: m, Message: s.id(), Text: rest}
	case "pick":
		e = bot.Shortcut{Meta: m, Message: s.id(), Text: rest}
	case "press", "stale":
		on, b := s.button(who, rest, verb == "stale")
		m.Where, m.Direct = on.where, strings.HasPrefix(on.where.Channel, "direct-")
		e = bot.Press{Meta: m, Message: on.id, Private: on.to != "", State: b.State}
	case "send":
		f, ok := s.forms[who]
		if !ok {
			s.t.Fatalf("%s has no form open", who)
		}
		sub := bot.Submit{Meta: m, State: f.State, Values: map[string]string{}}
		for field := range strings.SplitSeq(rest, " | ") {
			name, value, _ := strings.Cut(field, "=")
			sub.Values[name] = value
		}
		if f.on != nil {
			sub.Message, sub.Private, sub.Where = f.on.id, f.on.to != "", f.on.where
			sub.Direct = strings.HasPrefix(f.on.where.Channel, "direct-")
		}
		e = sub
	case "type":
		option, words, _ := strings.Cut(rest, " ")
		e = bot.Complete{Meta: m, Name: "ask", Option: option, Typed: words}
	case "again":
		e = s.last[who]
		if e == nil {
			s.t.Fatalf("%s did nothing before", who)
		}
	default:
		e = bot.ThreadReply{Meta: m, Message: s.id(), Text: what}
	}
	s.last[who] = e
	s.show(who, e, s.talk.Handle(context.Background(), e))
}

// button finds a button by its label, on the newest message that somebody can
// see, or a stale one that such a message had before it changed.
func (s *stage) button(who, label string, stale bool) (*posting, bot.Button) {
	id := ""
	if i := strings.LastIndex(label, " on m"); i >= 0 {
		label, id = label[:i], label[i+4:]
	}
	for _, m := range slices.Backward(s.messages) {
		if m.deleted || id != "" && m.id != id || m.to != "" && m.to != who {
			continue
		}
		shown := []bot.Message{m.shown}
		if stale {
			shown = m.before
		}
		for _, was := range slices.Backward(shown) {
			for _, b := range was.Doc.Blocks {
				if bs, ok := b.(bot.Buttons); ok {
					for _, b := range bs.Items {
						if b.Label == label {
							return m, b
						}
					}
				}
			}
		}
	}
	s.t.Fatalf("%s sees no button %q; so far:\n%s", who, label, s.out.String())
	return nil, bot.Button{}
}

func (s *stage) find(id string) *posting {
	for _, m := range s.messages {
		if m.id == id {
			return m
		}
	}
	return nil
}

// show puts a reply on the stage and writes down what people see.
func (s *stage) show(who string, e bot.Event, r bot.Reply) {
	switch r := r.(type) {
	case bot.Nothing:
		s.line("<< nothing")
	case bot.Choices:
		for _, c := range r.Items {
			s.line("<< " + c.Label)
		}
	case bot.Form:
		on := (*posting)(nil)
		if p, ok := e.(bot.Press); ok {
			on = s.find(p.Message)
		}
		s.forms[who] = openForm{r, on}
		s.line("<< a form: " + r.Title)
		for _, f := range r.Fields {
			s.line(fmt.Sprintf("%s: %s (%s)", f.Name, f.Label, f.Hint))
		}
	case bot.Say:
		m := &posting{id: s.id(), where: bot.MetaOf(e).Where, shown: r.Message}
		label := "to all"
		if r.Private {
			m.to = who
			label = "to " + who + " alone"
		}
		if r.InThread && m.where.Thread == "" {
			m.where.Thread = cmp.Or(r.On, rootOf(e))
		}
		if !r.InThread {
			m.where.Thread = ""
		}
		if m.where.Thread != "" {
			label += ", in thread " + m.where.Thread
			if !slices.Contains(s.threads, m.where.Thread) {
				s.threads = append(s.threads, m.where.Thread)
			}
		}
		s.messages = append(s.messages, m)
		s.line("<< " + label + ": " + m.id)
		s.out.WriteString(s.print(r.Message))
		for _, ed := range r.Edits {
			if o := s.find(ed.ID); o != nil {
				o.change(ed.Message)
				s.line("<< " + o.id + " changes to the same")
			}
		}
		s.posted(e, r.Ref, m)
	case bot.Update:
		id := ""
		switch e := e.(type) {
		case bot.Press:
			id = e.Message
		case bot.Submit:
			id = e.Message
		}
		m := s.find(id)
		if m == nil {
			s.t.Fatalf("an update of the message %q, which is not there", id)
		}
		m.change(r.Message)
		s.line("<< " + id + " changes")
		s.out.WriteString(s.print(r.Message))
		s.posted(e, r.Ref, m)
	default:
		s.t.Fatalf("a reply outside the closed set: %T", r)
	}
}

func (s *stage) line(l string) { s.out.WriteString(l + "\n") }

// posted reports where a message is, as a platform would.
func (s *stage) posted(e bot.Event, ref string, m *posting) {
	if ref == "" {
		return
	}
	p := bot.Posted{Meta: bot.MetaOf(e), Ref: ref, Message: m.id}
	p.Delivery = ""
	p.Thread = m.where.Thread
	if p.Thread == "" && m.to == "" {
		p.Thread = m.id
		s.threads = append(s.threads, m.id)
	}
	if r := s.talk.Handle(context.Background(), p); r != (bot.Nothing{}) {
		s.t.Errorf("the reply to Posted is %T", r)
	}
}

// tick does what is due.
func (s *stage) tick() {
	if s.talk.Tick != nil {
		s.talk.Tick(context.Background())
	}
}

// send puts on the stage what the conversation posts unasked.
func (s *stage) send(_ context.Context, _ string, to bot.Target, m bot.Message) (bot.Sent, error) {
	p := to.Place
	if p.Channel == "" {
		if to.To.ID == "" {
			return bot.Sent{}, fmt.Errorf("%w: to nobody and nowhere", bot.ErrNotSent)
		}
		p.Channel = "direct-" + to.To.ID
	}
	if s.gone[p.Channel] {
		s.line("<< nothing is posted: " + p.Channel + " is gone")
		return bot.Sent{}, fmt.Errorf("%w: %w: there is no channel %s", bot.ErrNotSent, bot.ErrGone, p.Channel)
	}
	if to.Edit != "" {
		o := s.find(to.Edit)
		if o == nil {
			return bot.Sent{}, fmt.Errorf("%w: %w: there is no message %s", bot.ErrNotSent, bot.ErrGone, to.Edit)
		}
		o.change(m)
		s.line("<< " + o.id + " changes unasked")
		s.out.WriteString(s.print(m))
		return bot.Sent{Place: o.where, Message: o.id}, nil
	}
	on := &posting{id: s.id(), where: p, shown: m}
	label := "posted in " + p.Channel
	if who, direct := strings.CutPrefix(p.Channel, "direct-"); direct {
		on.to = who
		label = "posted to " + who + " alone"
	}
	if p.Thread != "" {
		label += ", in thread " + p.Thread
	}
	s.messages = append(s.messages, on)
	s.line("<< " + label + ": " + on.id)
	s.out.WriteString(s.print(m))
	sent := bot.Sent{Place: p, Message: on.id}
	if sent.Thread == "" && on.to == "" {
		sent.Thread = on.id
		s.threads = append(s.threads, on.id)
	}
	return sent, nil
}

// rootOf is the message that a thread would begin on.
func rootOf(e bot.Event) string {
	switch e := e.(type) {
	case bot.Mention:
		return e.Message
	case bot.ThreadReply:
		return e.Message
	}
	return ""
}
