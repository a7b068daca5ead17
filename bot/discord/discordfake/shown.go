package discordfake

import (
	"regexp"
	"strings"
	"unicode"
)

// Shown is a message as people read it: its markdown carried out, its embeds
// below, and its buttons in brackets. What would be a mention, a link of its
// own, hidden or a picture stands between ⟪ and ⟫.
func (m Message) Shown() string {
	parts := []string{shown(m.Content)}
	for _, e := range m.Embeds {
		parts = append(parts, shown(e.Title), shown(e.Description), plain(e.Footer.Text))
	}
	for _, row := range m.Buttons {
		for _, b := range row {
			parts = append(parts, "["+plain(b.Label)+"]")
		}
	}
	var out []string
	for _, p := range parts {
		if p != "" {
			out = append(out, p)
		}
	}
	return strings.Join(out, "\n")
}

var (
	block    = regexp.MustCompile(`^( *)(-# |#{1,3} |> |- |\* |\d+\. )`)
	mention  = regexp.MustCompile(`^<(@[!&]?\d+|#\d+|a?:\w+:\d+|t:\d+(:\w)?|/[^<>]+:\d+)>`)
	masked   = regexp.MustCompile(`^\[((?:\\.|[^\]\\])+)\]\(<?https?://[^\s()]+>?\)`)
	bare     = regexp.MustCompile(`^https?://[^\s<]+`)
	everyone = regexp.MustCompile(`(?i)@(everyone|here)`)
	named    = regexp.MustCompile(`^:[A-Za-z0-9_+-]+:`)
)

// plain is text where no markdown is read.
func plain(s string) string {
	s = everyone.ReplaceAllString(s, "⟪$0⟫")
	return strings.ReplaceAll(s, "\u200b", "")
}

func shown(s string) string {
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		head := ""
		if m := block.FindString(l); m != "" {
			head, l = strings.TrimLeft(m, "#-*> 0123456789."), l[len(m):]
			if strings.Contains(m, "#") && !strings.Contains(m, "-#") {
				head = "⟪heading⟫ "
			}
		}
		lines[i] = head + inline(l)
	}
	return strings.Join(lines, "\n")
}

func inline(s string) string {
	var b strings.Builder
	last := ' '
	put := func(r rune) { b.WriteRune(r); last = r }
	for s != "" {
		r := []rune(s)[0]
		rest := s[len(string(r)):]
		next := ' '
		if rest != "" {
			next = []rune(rest)[0]
		}
		switch {
		case r == '\\' && next != ' ' && !unicode.IsLetter(next) && !unicode.IsDigit(next) && next < unicode.MaxASCII:
			put(next)
			rest = rest[1:]
		case masked.MatchString(s):
			m := masked.FindStringSubmatch(s)
			b.WriteString(inline(m[1]))
			last = ']'
			rest = s[len(m[0]):]
		case mention.MatchString(s):
			m := mention.FindString(s)
			b.WriteString("⟪" + m[1:len(m)-1] + "⟫")
			rest = s[len(m):]
		case bare.MatchString(s) && !unicode.IsLetter(last):
			m := bare.FindString(s)
			b.WriteString("⟪" + m + "⟫")
			rest = s[len(m):]
		case r == '@' && everyone.MatchString(s) && everyone.FindStringIndex(s)[0] == 0:
			m := everyone.FindString(s)
			b.WriteString("⟪" + m + "⟫")
			rest = s[len(m):]
		case named.MatchString(s):
			m := named.FindString(s)
			b.WriteString("⟪" + m + "⟫")
			rest = s[len(m):]
		case r == '|' && next == '|':
			b.WriteString("⟪hidden⟫")
			rest = rest[1:]
		case r == '*', r == '`', r == '~' && next == '~':
			last = r
		case r == '_' && (!word(last) || !word(next)):
			last = r
		case r == '\u200b':
		default:
			put(r)
		}
		s = rest
	}
	return b.String()
}

func word(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }
