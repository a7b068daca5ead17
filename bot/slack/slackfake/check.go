package slackfake

import (
	"encoding/json"
	"regexp"
	"unicode/utf16"
)

// Text is a text object.
type Text struct {
	Type     string `json:"type"`
	Text     string `json:"text"`
	Emoji    *bool  `json:"emoji"`
	Verbatim bool   `json:"verbatim"`
}

// Element is an element of a block.
type Element struct {
	Type     string `json:"type"`
	ActionID string `json:"action_id"`
	Value    string `json:"value"`
	Words    any    `json:"text"` // a text object on a button, a string in a context
	Text     Text   `json:"-"`
	Initial  string `json:"initial_value"`
	Most     int    `json:"max_length"`
	Lines    bool   `json:"multiline"`
	Hint     *Text  `json:"placeholder"`
	Verbatim bool   `json:"verbatim"`
}

// Block is a block of a message or form.
type Block struct {
	Type     string    `json:"type"`
	ID       string    `json:"block_id"`
	Text     *Text     `json:"text"`
	Fields   []Text    `json:"fields"`
	Elements []Element `json:"elements"`
	Label    *Text     `json:"label"`
	Element  *Element  `json:"element"`
	Optional bool      `json:"optional"`
}

// words is the text of an element: of a button, or of a context.
func (e Element) words() Text {
	switch w := e.Words.(type) {
	case string:
		return Text{Type: e.Type, Text: w, Verbatim: e.Verbatim}
	case map[string]any:
		t := Text{}
		t.Type, _ = w["type"].(string)
		t.Text, _ = w["text"].(string)
		return t
	}
	return Text{}
}

// length is how Slack counts a text.
func length(s string) int { return len(utf16.Encode([]rune(s))) }

// sequence is what Slack makes a mention of in a text.
var sequence = regexp.MustCompile(`<[@!#][^>]*>|@(channel|here|everyone)\b`)

// check looks at a message as Slack does. The lock is held.
func (s *Server) check(method, text string, blocks []Block) (code string) {
	bad := func(c, format string, args ...any) {
		s.problem(method+": "+format, args...)
		code = c
	}
	if text == "" {
		bad("no_text", "no text beside the blocks")
	}
	if length(text) > 40_000 {
		bad("msg_too_long", "a text of %d letters", length(text))
	}
	if len(blocks) > 50 {
		bad("invalid_blocks", "%d blocks", len(blocks))
	}
	if m := sequence.FindString(text); m != "" {
		s.pings = append(s.pings, m)
	}
	sum := 0
	ids := map[string]bool{}
	see := func(what string, t Text, most int) {
		n := length(t.Text)
		sum += n
		if n == 0 || n > most {
			bad("invalid_blocks", "a %s of %d letters, at most %d", what, n, most)
		}
		if t.Type == "mrkdwn" {
			if m := sequence.FindString(t.Text); m != "" {
				s.pings = append(s.pings, m)
			}
			if !t.Verbatim {
				s.problem("%s: a %s whose bare words become links: %s", method, what, t.Text)
			}
		}
	}
	for _, b := range blocks {
		switch b.Type {
		case "header":
			if b.Text == nil || b.Text.Type != "plain_text" {
				bad("invalid_blocks", "a header that is not plain text")
				continue
			}
			see("header", *b.Text, 150)
		case "section":
			if b.Text != nil {
				see("section", *b.Text, 3000)
			}
			for _, f := range b.Fields {
				see("field", f, 2000)
			}
			if len(b.Fields) > 10 || b.Text == nil && len(b.Fields) == 0 {
				bad("invalid_blocks", "a section with %d fields", len(b.Fields))
			}
		case "context":
			if len(b.Elements) == 0 || len(b.Elements) > 10 {
				bad("invalid_blocks", "a context of %d elements", len(b.Elements))
			}
			for _, e := range b.Elements {
				see("context", e.words(), 3000)
			}
		case "actions":
			if len(b.Elements) == 0 || len(b.Elements) > 25 {
				bad("invalid_blocks", "%d elements in a row of buttons", len(b.Elements))
			}
			for _, e := range b.Elements {
				see("button", e.words(), 75)
				if length(e.Value) > 2000 || length(e.ActionID) > 255 || e.ActionID == "" || ids[e.ActionID] {
					bad("invalid_blocks", "a button with the id %q, twice or too long, or too long a value", e.ActionID)
				}
				ids[e.ActionID] = true
			}
		case "divider":
		default:
			bad("invalid_blocks", "a block of type %q", b.Type)
		}
	}
	if sum > 13_200 {
		bad("msg_blocks_too_long", "%d letters in all blocks", sum)
	}
	return code
}

// checkView looks at a form as Slack does. The lock is held.
func (s *Server) checkView(title, submit Text, callback, metadata string, blocks []Block) (code string) {
	bad := func(format string, args ...any) {
		s.problem("views.open: "+format, args...)
		code = "invalid_arguments"
	}
	if n := length(title.Text); n == 0 || n > 24 {
		bad("a title of %d letters", n)
	}
	if n := length(submit.Text); n == 0 || n > 24 {
		bad("a button of %d letters", n)
	}
	if length(callback) > 255 || length(metadata) > 3000 {
		bad("a callback of %d and metadata of %d letters", length(callback), length(metadata))
	}
	if len(blocks) == 0 || len(blocks) > 100 {
		bad("%d blocks", len(blocks))
	}
	for _, b := range blocks {
		switch b.Type {
		case "section":
		case "input":
			e := b.Element
			switch {
			case b.Label == nil || b.Label.Text == "" || length(b.Label.Text) > 2000 || e == nil:
				bad("a field without a label or an element")
			case length(b.ID) > 255 || e.Most > 3000 || e.Hint != nil && (e.Hint.Text == "" || length(e.Hint.Text) > 150):
				bad("a field %q that is over a limit", b.ID)
			case e.Most > 0 && length(e.Initial) > e.Most:
				bad("a field %q that is filled with more than it takes", b.ID)
			}
		default:
			bad("a block of type %q", b.Type)
		}
	}
	return code
}

// Check lists what Slack has against a message; the blocks are its JSON.
func Check(text string, blocks []byte) []string {
	var s Server
	var bs []Block
	if err := json.Unmarshal(blocks, &bs); err != nil {
		return []string{"blocks that are no JSON: " + err.Error()}
	}
	s.check("message", text, bs)
	return append(s.problems, s.pings...)
}

// CheckView lists what Slack has against a form; view is its JSON.
func CheckView(view []byte) []string {
	var s Server
	var v viewWire
	if err := json.Unmarshal(view, &v); err != nil {
		return []string{"a form that is no JSON: " + err.Error()}
	}
	s.checkView(v.Title, v.Submit, v.Callback, v.Metadata, v.Blocks)
	return s.problems
}
