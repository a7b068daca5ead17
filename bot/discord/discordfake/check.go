package discordfake

import (
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf16"
)

// payload is a message as a bot sends it, or a form.
type payload struct {
	Content    string  `json:"content"`
	Embeds     []Embed `json:"embeds"`
	Components []struct {
		Type       int `json:"type"`
		Components []struct {
			Type        int    `json:"type"`
			Style       int    `json:"style"`
			Label       string `json:"label"`
			ID          string `json:"custom_id"`
			Placeholder string `json:"placeholder"`
			Value       string `json:"value"`
			MaxLength   int    `json:"max_length"`
		} `json:"components"`
	} `json:"components"`
	Mentions *struct {
		Parse []string `json:"parse"`
	} `json:"allowed_mentions"`
	Attachments []struct {
		ID          json.Number `json:"id"`
		Filename    string      `json:"filename"`
		Description string      `json:"description"`
	} `json:"attachments"`
	Flags int `json:"flags"`

	ID    string `json:"custom_id"`
	Title string `json:"title"`

	Choices []struct {
		Name  string `json:"name"`
		Value string `json:"value"`
	} `json:"choices"`
}

func size(s string) int { return len(utf16.Encode([]rune(s))) }

// wrong lists what Discord would refuse of a message, and one thing more: a
// message that does not say that nobody is to be pinged.
func (p payload) wrong() []string {
	var out []string
	most := func(what string, n, limit int) {
		if n > limit {
			out = append(out, fmt.Sprintf("%s: %d, at most %d", what, n, limit))
		}
	}
	most("content", size(p.Content), 2000)
	most("embeds", len(p.Embeds), 10)
	all := 0
	for _, e := range p.Embeds {
		most("embed title", size(e.Title), 256)
		most("embed description", size(e.Description), 4096)
		most("embed footer", size(e.Footer.Text), 2048)
		all += size(e.Title) + size(e.Description) + size(e.Footer.Text)
		if e.Title+e.Description == "" {
			out = append(out, "an embed without a word")
		}
	}
	most("text of the embeds", all, 6000)
	if strings.TrimSpace(p.Content) == "" && len(p.Embeds) == 0 && len(p.Attachments) == 0 {
		out = append(out, "an empty message")
	}
	if p.Mentions == nil || p.Mentions.Parse == nil || len(p.Mentions.Parse) > 0 {
		out = append(out, "people may be pinged")
	}
	most("rows", len(p.Components), 5)
	ids := map[string]bool{}
	for _, row := range p.Components {
		if row.Type != 1 || len(row.Components) == 0 {
			out = append(out, "a row that is none, or empty")
		}
		most("buttons in a row", len(row.Components), 5)
		for _, c := range row.Components {
			most("label", size(c.Label), 80)
			most("custom_id", len([]rune(c.ID)), 100)
			if c.Type != 2 || c.Label == "" || c.ID == "" || ids[c.ID] {
				out = append(out, "a button without label or id, or twice: "+c.Label)
			}
			ids[c.ID] = true
		}
	}
	most("attachments", len(p.Attachments), 10)
	for _, a := range p.Attachments {
		most("description of an attachment", size(a.Description), 1024)
	}
	return out
}

// wrongForm lists what Discord would refuse of a form.
func (p payload) wrongForm() []string {
	var out []string
	most := func(what string, n, limit int) {
		if n > limit {
			out = append(out, fmt.Sprintf("%s: %d, at most %d", what, n, limit))
		}
	}
	most("title", size(p.Title), 45)
	most("custom_id", len([]rune(p.ID)), 100)
	most("fields", len(p.Components), 5)
	if p.Title == "" || p.ID == "" || len(p.Components) == 0 {
		out = append(out, "a form without title, id or fields")
	}
	for _, row := range p.Components {
		for _, c := range row.Components {
			most("label", size(c.Label), 45)
			most("placeholder", size(c.Placeholder), 100)
			most("value", size(c.Value), 4000)
			most("max_length", c.MaxLength, 4000)
			if c.Type != 4 || c.Label == "" || c.ID == "" || c.Style != 1 && c.Style != 2 {
				out = append(out, "a field without label, id or style")
			}
		}
	}
	return out
}

func (p payload) wrongChoices() []string {
	var out []string
	if len(p.Choices) > 25 {
		out = append(out, "more than 25 choices")
	}
	for _, c := range p.Choices {
		if c.Name == "" || size(c.Name) > 100 || size(c.Value) > 100 {
			out = append(out, "a choice that is empty or too long")
		}
	}
	return out
}

// onto changes a message by what was sent: what is not named in it stays.
func (p payload) onto(m *Message, raw []byte, files []File) {
	var named map[string]json.RawMessage
	_ = json.Unmarshal(raw, &named)
	old := *m
	p.into(m, raw, files)
	if named["content"] == nil {
		m.Content = old.Content
	}
	if named["embeds"] == nil {
		m.Embeds = old.Embeds
	}
	if named["components"] == nil {
		m.Buttons = old.Buttons
	}
	if named["attachments"] == nil {
		m.Files = append(old.Files, m.Files...)
	}
}

// into puts what was sent into a message.
func (p payload) into(m *Message, raw []byte, files []File) {
	m.Content, m.Embeds, m.Files, m.Raw, m.Deferred = p.Content, p.Embeds, files, raw, false
	m.Buttons = nil
	for _, row := range p.Components {
		var bs []Button
		for _, c := range row.Components {
			bs = append(bs, Button{c.Label, c.ID})
		}
		m.Buttons = append(m.Buttons, bs)
	}
	for i := range m.Files {
		for _, a := range p.Attachments {
			if a.ID.String() == fmt.Sprint(i) {
				m.Files[i].Alt = a.Description
			}
		}
	}
}

// Check lists what Discord would refuse of a message.
func Check(raw []byte) []string {
	var p payload
	if err := json.Unmarshal(raw, &p); err != nil {
		return []string{err.Error()}
	}
	return p.wrong()
}

// CheckForm lists what Discord would refuse of a form.
func CheckForm(raw []byte) []string {
	var p payload
	if err := json.Unmarshal(raw, &p); err != nil {
		return []string{err.Error()}
	}
	return p.wrongForm()
}

// Read is a message's payload as people read it; see Message.Shown.
func Read(raw string) string {
	var p payload
	if err := json.Unmarshal([]byte(raw), &p); err != nil {
		return err.Error()
	}
	var m Message
	p.into(&m, nil, nil)
	return m.Shown()
}
