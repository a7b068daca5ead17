package term

import (
	"context"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
)

func TestContract(t *testing.T) {
	bottest.Contract(t, bottest.Harness{
		Start: start,
		Lacks: map[string]string{
			"rate limit": "a terminal takes all that is written to it",
			"reconnect":  "a terminal that is gone does not come back",
			"redelivery": "a line that is typed again is asked again",
		},
	})
}

// keyboard gives lines to the terminal, and knows when it waits for one.
type keyboard struct {
	mu    sync.Mutex
	more  sync.Cond
	lines []string
	idle  bool
	end   bool
}

func (k *keyboard) typed(lines ...string) {
	k.mu.Lock()
	defer k.mu.Unlock()
	for _, l := range lines {
		k.lines = append(k.lines, strings.ReplaceAll(l, "\n", " ")+"\n")
	}
	// The terminal reads a line ahead: it takes this one when the line before
	// is done.
	k.lines = append(k.lines, "#\n")
	k.idle = false
	k.more.Broadcast()
}

func (k *keyboard) close() {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.end = true
	k.more.Broadcast()
}

func (k *keyboard) Read(p []byte) (int, error) {
	k.mu.Lock()
	defer k.mu.Unlock()
	for len(k.lines) == 0 {
		if k.end {
			return 0, io.EOF
		}
		k.idle = true
		k.more.Wait()
	}
	n := copy(p, k.lines[0])
	if k.lines[0] = k.lines[0][n:]; k.lines[0] == "" {
		k.lines = k.lines[1:]
	}
	return n, nil
}

// screen keeps what is written.
type screen struct {
	mu   sync.Mutex
	text strings.Builder
}

func (s *screen) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.Write(p)
}

func (s *screen) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.text.String()
}

// rig is a terminal with somebody before it.
type rig struct {
	*Term
	keys    *keyboard
	screen  *screen
	typedAt int // where the screen stood when completions were asked for
}

func start(t *testing.T, h bot.Handler) bottest.Platform {
	r := &rig{keys: &keyboard{}, screen: &screen{}, typedAt: -1}
	r.keys.more.L = &r.keys.mu
	r.Term = New(Options{In: r.keys, Out: r.screen, Text: bot.TextOptions{Width: 1 << 20}, Wait: 50 * time.Millisecond})
	done := make(chan error, 1)
	go func() { done <- r.Run(context.Background(), h) }()
	t.Cleanup(func() {
		r.keys.close()
		if err := <-done; err != nil {
			t.Errorf("Run: %v", err)
		}
	})
	return r
}

func (r *rig) Adapter() bot.Adapter { return r.Term }
func (r *rig) Refused() []string    { return nil }
func (r *rig) Pings() []string      { return nil }
func (r *rig) Again()               {}
func (r *rig) Throttle()            {}
func (r *rig) Drop()                {}
func (r *rig) Gone() bot.Target {
	return bot.Target{Place: bot.Place{Platform: Platform, Workspace: "elsewhere", Channel: "x"}}
}

func (r *rig) Unacked() int {
	r.keys.mu.Lock()
	defer r.keys.mu.Unlock()
	if r.keys.idle {
		return 0
	}
	return 1
}

func (r *rig) Strange() int {
	r.keys.typed(":frobnicate", ":as", ":in", "99999", strings.Repeat("x", maxLine+1))
	return 5
}

func (r *rig) Do(e bot.Event) bool {
	m := bot.MetaOf(e)
	at := []string{":as " + m.Who.ID, strings.TrimSpace(":in " + m.Where.Channel + " " + m.Where.Thread)}
	switch e := e.(type) {
	case bot.Command:
		r.keys.typed(append(at, strings.TrimSpace("/netpost "+strings.TrimSpace(e.Name+" "+string(e.Args.Show))+" "+e.Text))...)
	case bot.Mention:
		r.keys.typed(append(at, e.Text)...)
	case bot.Shortcut:
		r.keys.typed(append(at, ":pick "+e.Text)...)
	case bot.ThreadReply:
		r.keys.typed(append(at, ":say "+e.Text)...)
	case bot.Press:
		r.mu.Lock()
		n := 0
		for i, b := range r.buttons {
			if b.on.id == e.Message && b.State == e.State {
				n = i + 1
			}
		}
		r.mu.Unlock()
		r.keys.typed(":as "+m.Who.ID, fmt.Sprint(n))
	case bot.Submit:
		if title, ok := e.Values["title"]; ok { // of a form with more fields, which are left empty
			r.keys.typed(title, "", "", "")
			break
		}
		r.keys.typed(e.Values["words"])
	case bot.Complete:
		r.mu.Lock()
		r.typedAt = len(r.screen.String())
		r.mu.Unlock()
		r.keys.typed(append(at, ":type "+e.Option+" "+e.Typed)...)
	}
	return true
}

var head = regexp.MustCompile(`(?m)^\[(m\d+)( changes)?(?:, in (\w+))?(?:, for (\w+) alone)?(?:, thread ([\w.]+))?\]$`)

func (r *rig) Seen() []bottest.Seen {
	r.mu.Lock()
	defer r.mu.Unlock()
	text := r.screen.String()
	var out []bottest.Seen
	heads := head.FindAllStringSubmatchIndex(text, -1)
	for i, h := range heads {
		end := len(text)
		if i+1 < len(heads) {
			end = heads[i+1][0]
		}
		part := func(n int) string {
			if h[2*n] < 0 {
				return ""
			}
			return text[h[2*n]:h[2*n+1]]
		}
		s := bottest.Seen{Message: part(1), Changed: part(2) != "", To: part(4), Text: text[h[1]:end]}
		s.Where = bot.Place{Platform: Platform, Workspace: r.Workspace, Channel: part(3), Thread: part(5)}
		if s.To == "you" || part(3) == "" && s.To == "" {
			s.To = r.meta.Who.ID
		}
		for _, b := range r.buttons {
			if b.on.id == s.Message {
				s.Buttons = append(s.Buttons, b.Button)
			}
		}
		out = append(out, s)
	}
	if r.form != nil {
		f := r.form.Form
		out = append(out, bottest.Seen{Form: &f})
	}
	if r.typedAt >= 0 {
		s := bottest.Seen{}
		for l := range strings.FieldsSeq(strings.ReplaceAll(text[r.typedAt:], " ", "_")) {
			l = strings.ReplaceAll(l, "_", " ")
			s.Choices = append(s.Choices, bot.Choice{Label: l, Value: l})
		}
		out = append(out, s)
	}
	return out
}

// A whole script is answered in order, and ends with its last line.
func TestScript(t *testing.T) {
	var out strings.Builder
	term := New(Options{In: strings.NewReader("one\n:in crew\n/netpost two\n:reply\nthree\n7\n:as bo mentors\nfour"), Out: &out})
	h := func(_ context.Context, e bot.Event) bot.Reply {
		m := bot.MetaOf(e)
		s := fmt.Sprintf("%T by %s%v, thread %q", e, m.Who.ID, m.Who.Roles, m.Where.Thread)
		return bot.Say{InThread: true, Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line(s)}}}}}
	}
	if err := term.Run(t.Context(), h); err != nil {
		t.Fatal(err)
	}
	for _, s := range []string{"bot.Mention by me[]", "[m2, in crew]\nbot.Command by me[]", "There is no button 7.", "bot.Mention by bo[mentors]"} {
		if !strings.Contains(out.String(), s) {
			t.Errorf("%q is missing in\n%s", s, out.String())
		}
	}
}

type failing struct{}

var errPaper = errors.New("out of paper")

func (failing) Write([]byte) (int, error) { return 0, errPaper }
func (failing) Read([]byte) (int, error)  { return 0, errPaper }

// Run ends with what is wrong with the terminal.
func TestBrokenTerminal(t *testing.T) {
	h := func(context.Context, bot.Event) bot.Reply {
		return bot.Say{Message: bot.Message{Doc: bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line("x")}}}}}
	}
	if err := New(Options{In: strings.NewReader("one\ntwo\n"), Out: failing{}}).Run(t.Context(), h); !errors.Is(err, errPaper) {
		t.Errorf("a terminal that can't be written to gives %v", err)
	}
	if err := New(Options{In: failing{}, Out: io.Discard}).Run(t.Context(), h); !errors.Is(err, errPaper) {
		t.Errorf("a terminal that can't be read gives %v", err)
	}
}

// Run ends with its context, while nobody types.
func TestEnds(t *testing.T) {
	in, keep := io.Pipe()
	defer keep.Close()
	ctx, cancel := context.WithCancel(t.Context())
	done := make(chan error, 1)
	go func() { done <- New(Options{In: in, Out: io.Discard}).Run(ctx, nil) }()
	cancel()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

func TestOrders(t *testing.T) {
	os := orders()
	for i, o := range os {
		if o.doc == "" || i > 0 && os[i-1].name >= o.name {
			t.Errorf(":%s is not sorted, twice or undocumented", o.name)
		}
	}
}
