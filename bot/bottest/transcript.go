// Package bottest proves channels and conversations. Transcripts runs talks
// written down in text files; Contract is what every adapter passes.
package bottest

import (
	"cmp"
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.org/netpost/bot"
)

// updating reports whether the test was run with a flag -update, which it is
// for the test's own package to define: two packages can't.
func updating() bool {
	f := flag.Lookup("update")
	return f != nil && f.Value.String() == "true"
}

// Settings are the lines "set NAME VALUE" at the head of a transcript; what
// they mean is up to the test that runs it.
type Settings map[string]string

// Transcripts runs every transcript in a folder. Start makes the conversation
// of one: first with its settings, and again at each line "restart", where it
// must find what it kept. Print is the printer to show messages by.
//
// A transcript is read from the top:
//
//	# What it shows, in a sentence.
//	set code club
//
//	ana> /netpost ball in plane, both front row, fourth contact?
//	<< to ana alone: m1
//	…
//	ana> press A's player first
//	<< m1 changes
//	…
//
// A line with a name and ">" is what somebody does; all that follows, up to the
// next such line, is what they and others see of it. People can
//
//	/netpost WORDS           give the chat command
//	@netpost WORDS           mention the bot
//	press LABEL              press a button of the newest message that has it
//	press LABEL on m1        the same on one message
//	send NAME=VALUE          send the form off that they opened last
//	pick WORDS               pick somebody else's message of these words
//	type OPTION WORDS        be half through typing
//	again                    have the platform deliver their last event again
//
// and do it elsewhere than in the channel: "ana thread> …" is in the newest
// thread, "ana thread m1> …" in that one, "ana direct> …" alone with the bot.
// The names of roles that the platform gives somebody are set by
// "set roles of bo mentors". With a flag -update the answers are written anew.
func Transcripts(t *testing.T, pattern string, start func(*testing.T, Settings) bot.Handler, print func(bot.Message) string) {
	files, err := filepath.Glob(pattern)
	if err != nil || len(files) == 0 {
		t.Fatalf("no transcripts at %s: %v", pattern, err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txt"), func(t *testing.T) {
			data, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			got := Run(t, string(data), start, print)
			if got == string(data) {
				return
			}
			if updating() {
				if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
					t.Fatal(err)
				}
				return
			}
			t.Errorf("%s: the talk goes otherwise; if that is right, run the test with -update\n%s", file, difference(string(data), got))
		})
	}
}

// difference shows the first lines that differ.
func difference(want, got string) string {
	w, g := strings.Split(want, "\n"), strings.Split(got, "\n")
	i := 0
	for i < len(w) && i < len(g) && w[i] == g[i] {
		i++
	}
	from := func(lines []string) string {
		return strings.Join(lines[min(i, len(lines)):min(i+12, len(lines))], "\n")
	}
	return fmt.Sprintf("line %d:\n--- got\n%s\n--- want\n%s", i+1, from(g), from(w))
}

var prompt = regexp.MustCompile(`^([a-z]+)( thread( m\d+)?| direct)?> (.*)$`)

// Run runs one transcript and gives it back with what the bot answers.
func Run(t *testing.T, script string, start func(*testing.T, Settings) bot.Handler, print func(bot.Message) string) string {
	t.Helper()
	s := &stage{t: t, settings: Settings{}, print: print, last: map[string]bot.Event{}, forms: map[string]openForm{}}
	answers := false // the lines are answers, to be written anew
	for line := range strings.Lines(script) {
		line = strings.TrimRight(line, "\n")
		m := prompt.FindStringSubmatch(line)
		switch {
		case m != nil || line == "restart":
			if s.handle == nil || line == "restart" {
				s.handle = start(t, s.settings)
			}
			if answers {
				s.out.WriteByte('\n')
			}
			answers = true
			s.out.WriteString(line + "\n")
			if m != nil {
				s.act(m[1], m[2], m[4])
			}
		case answers:
		default:
			s.out.WriteString(line + "\n")
			if set, ok := strings.CutPrefix(line, "set "); ok {
				i := strings.LastIndexByte(set, ' ')
				if i < 0 {
					t.Fatalf("%q: a setting has a name and a value", line)
				}
				s.settings[set[:i]] = set[i+1:]
			}
		}
	}
	return s.out.String()
}

// message is one that stands in the channel.
type message struct {
	id      string
	where   bot.Place
	to      string // only they see it; empty: all
	shown   bot.Message
	deleted bool
}

type openForm struct {
	bot.Form
	on *message
}

// stage is the platform of a transcript.
type stage struct {
	t        *testing.T
	settings Settings
	handle   bot.Handler
	print    func(bot.Message) string
	out      strings.Builder
	messages []*message
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
	case "press":
		on, b := s.button(who, rest)
		m.Where, m.Direct = on.where, strings.HasPrefix(on.where.Channel, "direct-")
		e = bot.Press{Meta: m, Message: on.id, Private: on.to != "", State: b.State}
	case "send":
		f, ok := s.forms[who]
		if !ok {
			s.t.Fatalf("%s has no form open", who)
		}
		name, value, _ := strings.Cut(rest, "=")
		sub := bot.Submit{Meta: m, State: f.State, Values: map[string]string{name: value}}
		if f.on != nil {
			sub.Message, sub.Private, sub.Where = f.on.id, f.on.to != "", f.on.where
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
	s.show(who, e, s.handle(context.Background(), e))
}

// button finds a button by its label, on the newest message that somebody can
// see.
func (s *stage) button(who, label string) (*message, bot.Button) {
	id := ""
	if i := strings.LastIndex(label, " on m"); i >= 0 {
		label, id = label[:i], label[i+4:]
	}
	for _, m := range slices.Backward(s.messages) {
		if m.deleted || id != "" && m.id != id || m.to != "" && m.to != who {
			continue
		}
		for _, b := range m.shown.Doc.Blocks {
			if bs, ok := b.(bot.Buttons); ok {
				for _, b := range bs.Items {
					if b.Label == label {
						return m, b
					}
				}
			}
		}
	}
	s.t.Fatalf("%s sees no button %q; so far:\n%s", who, label, s.out.String())
	return nil, bot.Button{}
}

func (s *stage) find(id string) *message {
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
		on := (*message)(nil)
		if p, ok := e.(bot.Press); ok {
			on = s.find(p.Message)
		}
		s.forms[who] = openForm{r, on}
		s.line("<< a form: " + r.Title)
		for _, f := range r.Fields {
			s.line(fmt.Sprintf("%s: %s (%s)", f.Name, f.Label, f.Hint))
		}
	case bot.Say:
		m := &message{id: s.id(), where: meta(e).Where, shown: r.Message}
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
				o.shown = ed.Message
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
		m.shown = r.Message
		s.line("<< " + id + " changes")
		s.out.WriteString(s.print(r.Message))
		s.posted(e, r.Ref, m)
	default:
		s.t.Fatalf("a reply outside the closed set: %T", r)
	}
}

func (s *stage) line(l string) { s.out.WriteString(l + "\n") }

// posted reports where a message is, as a platform would.
func (s *stage) posted(e bot.Event, ref string, m *message) {
	if ref == "" {
		return
	}
	p := bot.Posted{Meta: meta(e), Ref: ref, Message: m.id}
	p.Delivery = ""
	p.Thread = m.where.Thread
	if p.Thread == "" && m.to == "" {
		p.Thread = m.id
		s.threads = append(s.threads, m.id)
	}
	if r := s.handle(context.Background(), p); r != (bot.Nothing{}) {
		s.t.Errorf("the reply to Posted is %T", r)
	}
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

// meta is what every event has.
func meta(e bot.Event) bot.Meta {
	switch e := e.(type) {
	case bot.Command:
		return e.Meta
	case bot.Mention:
		return e.Meta
	case bot.Shortcut:
		return e.Meta
	case bot.ThreadReply:
		return e.Meta
	case bot.Press:
		return e.Meta
	case bot.Submit:
		return e.Meta
	case bot.Complete:
		return e.Meta
	case bot.Posted:
		return e.Meta
	}
	panic(fmt.Sprintf("bottest: an event outside the closed set: %T", e))
}

// Text prints a message as plain text, its buttons by their labels.
func Text(m bot.Message) string {
	d := bot.Doc{Tone: m.Doc.Tone}
	for _, b := range m.Doc.Blocks {
		if bs, ok := b.(bot.Buttons); ok {
			f := bot.Field{Label: bs.Label}
			for _, i := range bs.Items {
				f.Lines = append(f.Lines, bot.Line("["+i.Label+"]"))
			}
			b = bot.Fields{Items: []bot.Field{f}}
		}
		d.Blocks = append(d.Blocks, b)
	}
	var s strings.Builder
	if err := bot.Print(&s, d, bot.TextOptions{}); err != nil {
		panic(err) // a strings.Builder has no errors
	}
	return s.String()
}
