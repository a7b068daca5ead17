package slackfake

import (
	"html"
	"regexp"
	"strings"
	"unicode"
)

// anchor is a link in mrkdwn, emoji a picture's name.
var (
	anchor = regexp.MustCompile(`<(https?://[^|>]*)\|([^>]*)>`)
	emoji  = regexp.MustCompile(`:[a-z0-9_+'-]+:`)
)

// twins are letters that look like those that mark up, and mark nothing: people
// read them as those. What has no width is not read at all.
var twins = strings.NewReplacer("∗", "*", "∼", "~", "ˋ", "`", "ˍ", "_", "›", ">", "\u200b", "")

// read is a text as people read it: what marks is taken away, as are pictures.
func read(t Text) string {
	s := t.Text
	if t.Type != "mrkdwn" {
		if t.Emoji == nil || *t.Emoji {
			s = emoji.ReplaceAllString(s, "")
		}
		return s
	}
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		for _, quote := range []string{"&gt;", ">"} {
			l = strings.TrimPrefix(l, quote)
		}
		l = anchor.ReplaceAllString(l, "$2 ($1)")
		l = emoji.ReplaceAllString(l, "")
		for _, mark := range "`*_~" {
			l = unmark(l, mark)
		}
		lines[i] = html.UnescapeString(twins.Replace(l))
	}
	return strings.Join(lines, "\n")
}

// unmark takes a mark away where it stands in a pair around words.
func unmark(s string, mark rune) string {
	r := []rune(s)
	word := func(i int) bool { return i >= 0 && i < len(r) && (unicode.IsLetter(r[i]) || unicode.IsDigit(r[i])) }
	space := func(i int) bool { return i < 0 || i >= len(r) || unicode.IsSpace(r[i]) }
	for i := 0; i < len(r); i++ {
		if r[i] != mark || word(i-1) || space(i+1) {
			continue
		}
		for j := i + 2; j < len(r); j++ {
			if r[j] == mark && !space(j-1) && !word(j+1) {
				r = append(append(append([]rune{}, r[:i]...), r[i+1:j]...), r[j+1:]...)
				i = j - 2
				break
			}
		}
	}
	return string(r)
}

// Shown is a message as a person reads it: the words of its blocks, a line
// each, with buttons in brackets.
func (m Message) Shown() string {
	var out []string
	for _, b := range m.Blocks {
		if b.Text != nil {
			out = append(out, read(*b.Text))
		}
		var row []string
		for _, e := range b.Elements {
			if e.Type == "button" {
				row = append(row, "["+read(e.words())+"]")
			} else {
				out = append(out, read(e.words()))
			}
		}
		if len(row) > 0 {
			out = append(out, strings.Join(row, " "))
		}
	}
	if len(out) == 0 {
		out = append(out, html.UnescapeString(m.Text))
	}
	return strings.Join(out, "\n")
}

// Button is a button as it is on the wire.
type Button struct{ Label, ActionID, Value string }

// Pressable are a message's buttons.
func (m Message) Pressable() []Button {
	var out []Button
	for _, b := range m.Blocks {
		for _, e := range b.Elements {
			if e.Type == "button" {
				out = append(out, Button{e.words().Text, e.ActionID, e.Value})
			}
		}
	}
	return out
}

// Buttons are the labels of a message's buttons.
func (m Message) Buttons() []string {
	var out []string
	for _, b := range m.Pressable() {
		out = append(out, b.Label)
	}
	return out
}

// Happening is something that came to be seen.
type Happening struct {
	Message
	Changed bool // it took the place of an earlier one
	View    *View
}

// History is all that the bot had shown, in order.
func (s *Server) History() []Happening {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]Happening(nil), s.history...)
}

// Pings are the mentions so far that somebody would have been notified by.
func (s *Server) Pings() []string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return append([]string(nil), s.pings...)
}

// show puts a message into a channel. The lock is held.
func (s *Server) show(c *channel, m *Message) {
	c.messages = append(c.messages, m)
	if m.From == Self {
		s.history = append(s.history, Happening{Message: *m})
	}
}

// change puts others words into a message. The lock is held.
func (s *Server) change(m *Message, text string, blocks []Block) {
	m.Text, m.Blocks = text, blocks
	m.Edits++
	s.history = append(s.history, Happening{Message: *m, Changed: true})
}

// Root makes sure that there is a message of an id, to begin a thread on.
func (s *Server) Root(channel, ts, from string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if c := s.channels[channel]; c != nil && c.find(ts) == nil {
		s.show(c, &Message{Channel: channel, TS: ts, From: from, Text: "a message"})
	}
}
