package casebook

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// longestFront bounds the front matter of a note, in bytes.
const longestFront = 64 << 10

// deepestFront bounds how far lists and mappings may nest in it.
const deepestFront = 4

// front is where a note's front matter stands in its file. The zero value is a
// note without any, such as one made by a program.
type front struct {
	text string     // the whole file
	from int        // first byte of the YAML
	to   int        // the byte after its last
	root *yaml.Node // the mapping, nil without front matter
}

// frontError is a fault in the shape of the front matter, at a line of the file.
type frontError struct {
	line       int
	what, mend string
	fix        fix
}

func (e *frontError) Error() string { return fmt.Sprintf("line %d: %s; %s", e.line, e.what, e.mend) }

// dashes reports whether a line opens or closes the front matter.
func dashes(line string) bool { return strings.TrimRight(line, " \t\r\n") == "---" }

// split finds the front matter of a file and the Markdown below it.
func split(text string) (from, to, body int, err error) {
	first, rest, _ := strings.Cut(text, "\n")
	if !dashes(first) || first == text {
		what := "the file does not open with front matter"
		if strings.HasPrefix(text, "\ufeff") {
			what = "the file opens with a byte order mark"
		}
		return 0, 0, 0, &frontError{line: 1, what: what, mend: "make --- the first line, then the fields, then --- again"}
	}
	from = len(text) - len(rest)
	at := from
	for {
		line, next, more := strings.Cut(text[at:], "\n")
		if dashes(line) {
			if !more {
				return from, at, len(text), nil
			}
			return from, at, len(text) - len(next), nil
		}
		if at-from > longestFront {
			return 0, 0, 0, &frontError{line: 1, what: fmt.Sprintf("the front matter is longer than %d KiB, or nothing closes it", longestFront>>10), mend: "close the fields with a line of three dashes and put the text below it"}
		}
		if !more {
			return 0, 0, 0, &frontError{line: 1, what: "nothing closes the front matter", mend: "put a line of three dashes below the last field"}
		}
		at = len(text) - len(next)
	}
}

var yamlLine = whenUsed(`^line (\d+): `)

// parseFront reads the YAML of a file, strictly: one mapping, no key twice, no
// alias, anchor or tag. Text is the whole file; the YAML is its bytes from..to.
func parseFront(text string, from, to int) (front, error) {
	f := front{text: text, from: from, to: to}
	shift := strings.Count(text[:from], "\n")
	dec := yaml.NewDecoder(strings.NewReader(text[from:to]))
	var doc yaml.Node
	if err := decodeYAML(dec, &doc); err != nil {
		s := strings.TrimPrefix(err.Error(), "yaml: ")
		line := 1
		if m := yamlLine().FindStringSubmatch(s); m != nil {
			line, _ = strconv.Atoi(m[1])
			s = s[len(m[0]):]
			if countsFromZero(s) {
				line++
			}
		} else if errors.Is(err, errNoYAML) {
			s = "the front matter is empty"
		}
		fe := &frontError{line: line + shift, what: "this is not YAML that can be read: " + s, mend: "write each field as key: value, and quote a value that holds a colon, a hash or quotes"}
		if strings.HasPrefix(s, "mapping values are not allowed") {
			fe.fix = quoteValue(text, fe.line)
		}
		return f, fe
	}
	if len(doc.Content) != 1 || doc.Content[0].Kind != yaml.MappingNode {
		return f, &frontError{line: 1 + shift, what: "the front matter is not a set of fields", mend: "write each field on a line of its own, as key: value"}
	}
	if err := plainYAML(&doc, shift, 0); err != nil {
		return f, err
	}
	f.root = doc.Content[0]
	return f, nil
}

var plainField = whenUsed(`^([a-z]+:[ \t]+)([^\s"'\[{|>&*!#].*?)[ \t\r]*$`)

// quoteValue is the fix for a value with a colon in it that nobody quoted.
func quoteValue(text string, line int) fix {
	at := 0
	for ; line > 1; line-- {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return fix{}
		}
		at += i + 1
	}
	whole, _, _ := strings.Cut(text[at:], "\n")
	m := plainField().FindStringSubmatchIndex(whole)
	if m == nil || strings.Contains(whole, " #") {
		return fix{}
	}
	return fix{edits: []edit{{at + m[4], at + m[5], strconv.Quote(whole[m[4]:m[5]])}}}
}

// countsFromZero reports whether the library gives the line of an error of this
// kind counted from zero: those of its parser, where it names where the list or
// mapping began. Those of its scanner it counts from one.
func countsFromZero(message string) bool {
	for _, end := range []string{"',' or ']'", "',' or '}'", "expected key", "'-' indicator"} {
		if strings.HasSuffix(message, end) {
			return true
		}
	}
	return false
}

var errNoYAML = errors.New("no document")

// decodeYAML decodes one document. The library panics on a few inputs that are
// no YAML; that is an error of the input.
func decodeYAML(dec *yaml.Decoder, doc *yaml.Node) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = fmt.Errorf("%v", p)
		}
	}()
	if err := dec.Decode(doc); err != nil {
		if err.Error() == "EOF" {
			return errNoYAML
		}
		return err
	}
	return nil
}

// plainYAML refuses what a note has no use for and what could make a small
// file large.
func plainYAML(n *yaml.Node, shift, depth int) error {
	bad := func(n *yaml.Node, what, mend string) error {
		return &frontError{line: n.Line + shift, what: what, mend: mend}
	}
	switch {
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		return bad(n, "anchors (&) and aliases (*) are not allowed", "write the value out, or quote it if it is meant to begin with that sign")
	case n.Style&yaml.TaggedStyle != 0:
		return bad(n, "tags (!) are not allowed", "take the tag out, or quote the value if it is meant to begin with that sign")
	case depth > deepestFront:
		return bad(n, "lists and fields are nested too deep", "keep to the fields of a note")
	}
	if n.Kind == yaml.MappingNode {
		seen := map[string]int{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			k := n.Content[i]
			if k.Kind != yaml.ScalarNode {
				return bad(k, "a key is not a word", "write each field as key: value")
			}
			if first, twice := seen[k.Value]; twice {
				return bad(k, fmt.Sprintf("the key %s stands twice, first on line %d", k.Value, first), "keep one of the two")
			}
			seen[k.Value] = k.Line + shift
		}
	}
	for _, c := range n.Content {
		if err := plainYAML(c, shift, depth+1); err != nil {
			return err
		}
	}
	return nil
}

// line is the file's line of a node.
func (f front) line(n *yaml.Node) int {
	if n == nil || f.root == nil {
		return 0
	}
	return n.Line + strings.Count(f.text[:f.from], "\n")
}

// find gives a field's node by its path, rules[1] or ruling.fault, or as much of
// the way there as exists.
func (f front) find(field string) *yaml.Node {
	n := f.root
	for field != "" && n != nil {
		part := field
		if i := strings.IndexAny(field[1:], ".["); i >= 0 {
			part, field = field[:i+1], field[i+1:]
		} else {
			field = ""
		}
		part = strings.TrimPrefix(part, ".")
		next := child(n, part)
		if next == nil {
			break
		}
		n = next
	}
	return n
}

func child(n *yaml.Node, part string) *yaml.Node {
	if n.Kind == yaml.SequenceNode && strings.HasPrefix(part, "[") {
		i, err := strconv.Atoi(strings.Trim(part, "[]"))
		if err == nil && i >= 0 && i < len(n.Content) {
			return n.Content[i]
		}
		return nil
	}
	if n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			if n.Content[i].Value == part {
				return n.Content[i+1]
			}
		}
	}
	return nil
}

// offset is the byte of the file where a node begins, or -1.
func (f front) offset(n *yaml.Node) int {
	at := f.from
	for l := 1; l < n.Line; l++ {
		i := strings.IndexByte(f.text[at:f.to], '\n')
		if i < 0 {
			return -1
		}
		at += i + 1
	}
	for c := 1; c < n.Column; c++ {
		if at >= f.to {
			return -1
		}
		_, size := utf8.DecodeRuneInString(f.text[at:])
		at += size
	}
	return at
}

// span is the bytes of a scalar as it is written, quotes included. It is false
// for what is written over several lines or with escapes.
func (f front) span(n *yaml.Node) (from, to int, ok bool) {
	if n == nil || n.Kind != yaml.ScalarNode {
		return 0, 0, false
	}
	at := f.offset(n)
	if at < 0 {
		return 0, 0, false
	}
	raw := n.Value
	switch n.Style {
	case 0:
	case yaml.SingleQuotedStyle:
		raw = "'" + raw + "'"
	case yaml.DoubleQuotedStyle:
		raw = `"` + raw + `"`
	default:
		return 0, 0, false
	}
	if !strings.HasPrefix(f.text[at:f.to], raw) {
		return 0, 0, false
	}
	return at, at + len(raw), true
}

// rewrite is the fix that writes a scalar anew, nothing where it can't be found.
func (f front) rewrite(n *yaml.Node, as string) fix {
	from, to, ok := f.span(n)
	if !ok {
		return fix{}
	}
	return fix{edits: []edit{{from, to, as}}}
}
