package casebook

import (
	"strings"

	"go.yaml.in/yaml/v3"
)

// Format writes a note's file: its fields in the order of the manual, those
// with nothing in them left out, and its text. Reading that gives the note
// back. Attachments are written as they stand, for a file at the folder's root.
func Format(n *Note) string {
	root := &yaml.Node{Kind: yaml.MappingNode}
	add := func(m *yaml.Node, key string, v *yaml.Node) {
		if v != nil {
			m.Content = append(m.Content, plainNode(key), v)
		}
	}
	text := func(s string) *yaml.Node {
		if s == "" {
			return nil
		}
		return textNode(s)
	}
	list := func(ss []string, style yaml.Style) *yaml.Node {
		if len(ss) == 0 {
			return nil
		}
		seq := &yaml.Node{Kind: yaml.SequenceNode, Style: yaml.FlowStyle}
		for _, s := range ss {
			m := textNode(s)
			if style != 0 {
				m.Style = style
			}
			seq.Content = append(seq.Content, m)
		}
		return seq
	}
	date := func(d Date) *yaml.Node {
		if d.IsZero() {
			return nil
		}
		return plainNode(d.String())
	}
	var codes []string
	for _, c := range n.Codes {
		codes = append(codes, string(c))
	}
	add(root, "id", plainNode(n.ID))
	add(root, "title", text(n.Title))
	add(root, "codes", list(codes, 0))
	add(root, "season", plainNode(n.Season.String()))
	add(root, "status", plainNode(n.Status.String()))
	add(root, "issued", date(n.Issued))
	add(root, "expires", date(n.Expires))
	add(root, "withdrawn", date(n.Withdrawn))
	add(root, "supersedes", list(n.Supersedes, 0))
	add(root, "rules", list(n.Rules, yaml.DoubleQuotedStyle)) // else 9.20 is a number
	add(root, "topics", list(n.Topics, 0))
	add(root, "play", text(n.Play))
	if r := n.Ruling; !r.IsZero() {
		m := &yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle}
		add(m, "outcome", text(r.Outcome))
		add(m, "fault", text(r.Fault))
		add(m, "replay", text(r.Replay))
		add(m, "against", text(r.Against))
		add(m, "measure", list(r.Measure, 0))
		add(m, "answer", text(r.Answer))
		add(root, "ruling", m)
	}
	add(root, "departs", text(n.Departs))
	add(root, "attachments", list(n.Attachments, 0))
	var b strings.Builder
	b.WriteString("---\n")
	e := yaml.NewEncoder(&b)
	if err := e.Encode(root); err != nil {
		panic("casebook: a tree of plain values is YAML: " + err.Error())
	}
	b.WriteString("---\n")
	b.WriteString(strings.TrimLeft(n.Body, "\r\n"))
	return b.String()
}

// FileName is the name of a note's file, for its id and its title.
func (n *Note) FileName() string { return n.ID + "-" + slug(n.Title) + ".md" }

// plainNode is a value that needs no quotes.
func plainNode(s string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: s} }

// textNode is a value that is a text, whatever it looks like: it is quoted
// where YAML would take it for something else.
func textNode(s string) *yaml.Node {
	n := &yaml.Node{}
	n.SetString(s)
	if strings.ContainsAny(s, "\n\r\u0085\u2028\u2029") {
		n.Style = yaml.DoubleQuotedStyle
	}
	return n
}
