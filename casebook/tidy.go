package casebook

import (
	"fmt"
	"path"
	"slices"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"
)

// checkName ties a note's file to its id.
func checkName(c *checker, n *Note) []Finding {
	if idOfPath(n.Path) == n.ID {
		return nil
	}
	base := path.Base(n.Path)
	f := n.finding(checkFileName, "id", fmt.Sprintf("the file %s is not named for the id %s", base, n.ID), "name it "+n.ID+".md, or "+n.ID+"-a-few-words.md")
	to := path.Join(path.Dir(n.Path), n.ID+"-"+slug(n.Title)+".md")
	_, taken := c.book.files[to]
	if !taken && !c.linked()[n.Path] {
		f.fix.rename, f.Fixable = to, true
		f.Mend = "name it " + path.Base(to)
	}
	return []Finding{f}
}

// longestSlug keeps file names short, in bytes.
const longestSlug = 50

// slug is a title as part of a file's name.
func slug(title string) string {
	var b strings.Builder
	for _, w := range strings.FieldsFunc(strings.ToLower(title), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '\'' }) {
		w = strings.Map(func(r rune) rune {
			if r > unicode.MaxASCII || r == '\'' {
				return -1
			}
			return r
		}, w)
		if w == "" {
			continue
		}
		if b.Len() > 0 {
			if b.Len()+1+len(w) > longestSlug {
				break
			}
			b.WriteByte('-')
		}
		b.WriteString(w)
	}
	if b.Len() == 0 {
		return "note"
	}
	return b.String()
}

// checkOrder reports fields out of the manual's order.
func checkOrder(_ *checker, n *Note) []Finding {
	if n.front.root == nil {
		return nil
	}
	last, lastKey := -1, ""
	for i := 0; i+1 < len(n.front.root.Content); i += 2 {
		key := n.front.root.Content[i].Value
		at := slices.IndexFunc(fields, func(f Field) bool { return f.Key == key })
		if at < last {
			f := n.finding(checkFieldOrder, key, key+" stands after "+lastKey, "keep the order of the manual")
			if e, ok := n.front.reordered(); ok {
				f.fix.edits, f.Fixable = []edit{e}, true
			}
			return []Finding{f}
		}
		last, lastKey = at, key
	}
	return nil
}

// reordered writes the fields in the table's order, each with the comment lines
// above it. It is false for front matter that is not a field a line.
func (f front) reordered() (edit, bool) {
	if f.root.Style&yaml.FlowStyle != 0 {
		return edit{}, false
	}
	yamlText := f.text[f.from:f.to]
	lines := strings.SplitAfter(yamlText, "\n")
	blocks := make([]string, len(fields))
	begin := 0 // the first line of the block that is being gathered
	for i := 0; i+1 < len(f.root.Content); i += 2 {
		k := f.root.Content[i]
		end := len(lines)
		if i+2 < len(f.root.Content) {
			end = f.root.Content[i+2].Line - 1
			for end-1 > k.Line-1 && strings.HasPrefix(strings.TrimSpace(lines[end-1]), "#") {
				end--
			}
		}
		at := slices.IndexFunc(fields, func(f Field) bool { return f.Key == k.Value })
		if k.Column != 1 || at < 0 || end <= begin {
			return edit{}, false
		}
		blocks[at] = strings.Join(lines[begin:end], "")
		begin = end
	}
	return edit{f.from, f.to, strings.Join(blocks, "")}, true
}

// checkBlanks reports stray blanks once a file. Two blanks at the end of a line
// of the text are a line break in Markdown and stay.
func checkBlanks(_ *checker, n *Note) []Finding {
	if n.Text == "" {
		return nil
	}
	body := len(n.Text) - len(n.Body)
	var edits []edit
	first := 0
	at, line := 0, 0
	for at < len(n.Text) {
		line++
		end := strings.IndexByte(n.Text[at:], '\n')
		if end < 0 {
			end = len(n.Text)
		} else {
			end += at
		}
		kept := strings.TrimRight(n.Text[at:end], " \t\r")
		if tail := strings.TrimRight(n.Text[at+len(kept):end], "\r"); at >= body && tail == "  " && kept != "" {
			kept += tail
		}
		if at+len(kept) < end {
			edits = append(edits, edit{at + len(kept), end, ""})
			if first == 0 {
				first = line
			}
		}
		at = end + 1
	}
	if !strings.HasSuffix(n.Text, "\n") {
		if len(edits) == 0 {
			first = line
		}
		edits = append(edits, edit{len(n.Text), len(n.Text), "\n"})
	}
	if len(edits) == 0 {
		return nil
	}
	f := Finding{Check: checkWhitespace, Path: n.Path, Line: first, What: "blanks or a carriage return at the end of a line, or no line end at the end", Mend: "take them out", Source: sourceLine(n.Text, first)}
	if len(edits) > 1 {
		f.What = fmt.Sprintf("%s: %d places", f.What, len(edits))
	}
	f.fix.edits, f.Fixable = edits, true
	return []Finding{f}
}
