// Package bottest proves channels and conversations. Transcripts runs talks
// written down in text files; Contract is what every adapter passes.
package bottest

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

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

// Talk is a conversation in a transcript.
type Talk struct {
	Handle bot.Handler
	// Tick does what is due unasked; nil: nothing is. It runs after whatever
	// somebody does.
	Tick func(context.Context)
	// Wait lets time pass; nil where the conversation's clock is its own.
	Wait func(time.Duration)
}

// Transcripts is Talks for conversations that say nothing unasked.
func Transcripts(t *testing.T, pattern string, start func(*testing.T, Settings) bot.Handler, print func(bot.Message) string) {
	t.Helper()
	Talks(t, pattern, func(t *testing.T, s Settings, _ bot.Sender) Talk { return Talk{Handle: start(t, s)} }, print)
}

// Talks runs every transcript in a folder. Start makes the conversation of
// one: first with its settings, and again at each line "restart", where it must
// find what it kept. It posts unasked by the sender that it is handed. Print is
// the printer to show messages by.
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
//	stale LABEL              press one that a message had before it changed
//	send NAME=VALUE          send the form off that they opened last
//	pick WORDS               pick somebody else's message of these words
//	type OPTION WORDS        be half through typing
//	again                    have the platform deliver their last event again
//
// and do it elsewhere than in the channel: "ana thread> …" is in the newest
// thread, "ana thread m1> …" in that one, "ana direct> …" alone with the bot,
// "ana in mentors> …" in another channel. Several fields of a form are sent with
// " | " between them. The names of roles that the platform gives somebody are
// set by "set roles of bo mentors", also between what people do, and so is what
// the association adopted, by "set adopted PARAMETER=VALUE"; "none" takes it away. "wait 5h" lets time pass, and "gone crew" deletes a channel. With a
// flag -update the answers are written anew.
func Talks(t *testing.T, pattern string, start func(*testing.T, Settings, bot.Sender) Talk, print func(bot.Message) string) {
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

var prompt = regexp.MustCompile(`^([a-z]+)( thread( m\d+)?| direct| in [a-z]+( thread m\d+)?)?> (.*)$`)

var (
	waits = regexp.MustCompile(`^wait (\d+[hm])$`)
	goes  = regexp.MustCompile(`^gone ([a-z]+)$`)
	roles = regexp.MustCompile(`^set (roles of [a-z]+|adopted) (\S+)$`)
)

// Run runs one transcript and gives it back with what the bot answers.
func Run(t *testing.T, script string, start func(*testing.T, Settings, bot.Sender) Talk, print func(bot.Message) string) string {
	t.Helper()
	s := &stage{t: t, settings: Settings{}, print: print, last: map[string]bot.Event{}, forms: map[string]openForm{}, gone: map[string]bool{}}
	answers := false // the lines are answers, to be written anew
	for line := range strings.Lines(script) {
		line = strings.TrimRight(line, "\n")
		m := prompt.FindStringSubmatch(line)
		switch {
		case m != nil || line == "restart":
			if s.talk.Handle == nil || line == "restart" {
				s.talk = start(t, s.settings, s.send)
			}
			if answers {
				s.out.WriteByte('\n')
			}
			answers = true
			s.out.WriteString(line + "\n")
			if m != nil {
				s.act(m[1], m[2], m[5])
			}
			s.tick()
		case answers && (waits.MatchString(line) || goes.MatchString(line) || roles.MatchString(line)):
			s.out.WriteString("\n" + line + "\n")
			if m := waits.FindStringSubmatch(line); m != nil {
				d, err := time.ParseDuration(m[1])
				if err != nil || s.talk.Wait == nil {
					t.Fatalf("%q: time can't pass here: %v", line, err)
				}
				s.talk.Wait(d)
			}
			if m := goes.FindStringSubmatch(line); m != nil {
				s.gone[m[1]] = true
			}
			if m := roles.FindStringSubmatch(line); m != nil {
				s.settings[m[1]] = m[2]
				if m[2] == "none" {
					delete(s.settings, m[1])
				}
			}
			s.tick()
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
