package term

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/bot"
)

// order is a row of the table of lines to the terminal itself.
type order struct {
	name string // after the colon
	args string
	doc  string
	run  func(t *Term, ctx context.Context, rest string)
}

// orders, sorted by name.
func orders() []order {
	return []order{
		{"as", "NAME [ROLE...]", "be somebody else, with roles", (*Term).as},
		{"direct", "", "be alone with the bot", (*Term).direct},
		{"help", "", "print this", (*Term).help},
		{"in", "CHANNEL [THREAD]", "be in a channel, or in a thread there", (*Term).in},
		{"pick", "WORDS", "look up somebody else's message of these words", (*Term).pick},
		{"quit", "", "leave", nil},
		{"reply", "", "be in the newest thread", (*Term).inThread},
		{"say", "WORDS", "say something that is not to the bot", (*Term).say},
		{"type", "OPTION WORDS", "see what completes half a line; options are text, code and season", (*Term).complete},
	}
}

// Line does what a line says.
func (t *Term) Line(ctx context.Context, line string) {
	line = strings.TrimSpace(line)
	if strings.HasPrefix(line, "#") {
		return
	}
	if t.filling(ctx, line) || line == "" {
		return
	}
	if name, rest, _ := strings.Cut(line, " "); strings.HasPrefix(name, ":") {
		for _, o := range orders() {
			if ":"+o.name == name && o.run != nil {
				o.run(t, ctx, strings.TrimSpace(rest))
				return
			}
		}
		t.print(func() { t.line("There is no " + name + "; for what there is: :help") })
		return
	}
	if n, err := strconv.Atoi(line); err == nil {
		t.press(ctx, n)
		return
	}
	m, id := t.next()
	if words, ok := cutCommand(line); ok {
		t.deliver(ctx, bot.Command{Meta: m, Text: words}, nil)
		return
	}
	t.deliver(ctx, bot.Mention{Meta: m, Message: id, Text: line}, nil)
}

// cutCommand cuts the chat command off.
func cutCommand(line string) (words string, ok bool) {
	words, ok = strings.CutPrefix(line, "/"+bot.CommandName)
	if !ok || words != "" && words[0] != ' ' {
		return "", false
	}
	return strings.TrimSpace(words), true
}

// next is who acts where with a new delivery, and the id of what they say.
func (t *Term) next() (bot.Meta, string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.count++
	m := t.meta
	m.Delivery = fmt.Sprintf("%s-%d", t.Session, t.count)
	m.Who.Roles = slices.Clone(m.Who.Roles)
	return m, "you" + strconv.Itoa(t.count)
}

func (t *Term) press(ctx context.Context, n int) {
	m, _ := t.next()
	t.mu.Lock()
	if n < 1 || n > len(t.buttons) {
		t.line(fmt.Sprintf("There is no button %d.", n))
		t.mu.Unlock()
		return
	}
	b := t.buttons[n-1]
	m.Where, m.Direct = b.on.where, isDirect(b.on.where)
	e := bot.Press{Meta: m, Message: b.on.id, Private: b.on.private, State: b.State}
	t.mu.Unlock()
	t.deliver(ctx, e, b.on)
}

// filling takes a line as the next field of an open form.
func (t *Term) filling(ctx context.Context, line string) bool {
	t.mu.Lock()
	f := t.form
	if f == nil {
		t.mu.Unlock()
		return false
	}
	in := f.Fields[len(f.values)]
	switch {
	case line == "" && in.Must:
		t.form = nil
		t.line("The form is left; nothing was sent.")
		t.mu.Unlock()
		return true
	case line == "":
		line = in.Value
	}
	if in.Max > 0 && len([]rune(line)) > in.Max {
		t.line(fmt.Sprintf("That is longer than the %d letters that fit. Say it shorter.", in.Max))
		t.ask(in)
		t.mu.Unlock()
		return true
	}
	f.values[in.Name] = line
	if len(f.values) < len(f.Fields) {
		t.ask(f.Fields[len(f.values)])
		t.mu.Unlock()
		return true
	}
	t.form = nil
	t.mu.Unlock()
	m, _ := t.next()
	e := bot.Submit{Meta: m, State: f.State, Values: f.values}
	if f.on != nil {
		e.Message, e.Private = f.on.id, f.on.private
		e.Where, e.Direct = f.on.where, isDirect(f.on.where)
	}
	t.deliver(ctx, e, f.on)
	return true
}

func (t *Term) as(_ context.Context, rest string) {
	f := strings.Fields(rest)
	if len(f) == 0 {
		t.print(func() { t.line("Be who? For example: :as ana mentors") })
		return
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.meta.Who = bot.Who{Person: bot.Person{Platform: Platform, ID: f[0]}, Roles: f[1:]}
	if t.meta.Direct {
		t.meta.Where.Channel = "direct-" + f[0]
	}
}

func (t *Term) direct(context.Context, string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	t.meta.Direct, t.meta.Where.Channel, t.meta.Where.Thread = true, "direct-"+t.meta.Who.ID, ""
}

func (t *Term) in(_ context.Context, rest string) {
	f := strings.Fields(rest)
	if len(f) == 0 || len(f) > 2 {
		t.print(func() { t.line("In which channel? For example: :in crew") })
		return
	}
	t.mu.Lock()
	defer t.mu.Unlock()
	t.meta.Direct, t.meta.Where.Channel, t.meta.Where.Thread = false, f[0], ""
	if len(f) == 2 {
		t.meta.Where.Thread = f[1]
	}
}

func (t *Term) inThread(context.Context, string) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if t.last == "" || t.meta.Direct {
		t.line("There is no thread here yet. For a channel: :in crew")
		return
	}
	t.meta.Where.Thread = t.last
}

func (t *Term) pick(ctx context.Context, rest string) {
	m, id := t.next()
	t.deliver(ctx, bot.Shortcut{Meta: m, Message: id, Text: rest}, nil)
}

func (t *Term) say(ctx context.Context, rest string) {
	m, id := t.next()
	if m.Where.Thread == "" {
		return // nobody listens outside of threads
	}
	t.deliver(ctx, bot.ThreadReply{Meta: m, Message: id, Text: rest}, nil)
}

func (t *Term) complete(ctx context.Context, rest string) {
	m, _ := t.next()
	option, typed, _ := strings.Cut(rest, " ")
	t.deliver(ctx, bot.Complete{Meta: m, Name: "ask", Option: option, Typed: typed}, nil)
}

func (t *Term) help(context.Context, string) {
	f := bot.Fields{Items: []bot.Field{
		{Label: "PLAY", Lines: []bot.Text{bot.Line("tell the bot a play, or answer its question")}},
		{Label: "NUMBER", Lines: []bot.Text{bot.Line("press the button of that number")}},
		{Label: "/" + bot.CommandName + " WORDS", Lines: []bot.Text{bot.Line("give the chat command; for what it takes: /" + bot.CommandName + " help")}},
	}}
	for _, o := range orders() {
		label := ":" + o.name
		if o.args != "" {
			label += " " + o.args
		}
		f.Items = append(f.Items, bot.Field{Label: label, Lines: []bot.Text{bot.Line(o.doc)}})
	}
	t.print(func() { t.doc(bot.Doc{Blocks: []bot.Block{f}}) })
}
