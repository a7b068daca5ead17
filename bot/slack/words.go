package slack

import (
	"net/url"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/netpost/bot"
)

// entity is what Slack writes for mentions, channels and links in a text:
// <@U1>, <@U1|name>, <#C1|name>, <!here>, <!subteam^S1|@name>, <https://…|label>.
var entity = regexp.MustCompile(`<([^<>]*)>`)

// said is a text from Slack as the person wrote it, with names where Slack
// tells them, and without the bot's own.
func said(text, self string) string {
	text = entity.ReplaceAllStringFunc(text, func(e string) string {
		target, label, _ := strings.Cut(e[1:len(e)-1], "|")
		label = strings.TrimSpace(label)
		switch {
		case target == "":
			return e
		case target[0] == '@':
			if self != "" && target[1:] == self {
				return ""
			}
			return sign("@", label, target[1:])
		case target[0] == '#':
			return sign("#", label, target[1:])
		case target[0] == '!':
			what, _, _ := strings.Cut(target[1:], "^")
			return sign("@", label, what)
		case label != "":
			return label
		}
		return target
	})
	return strings.TrimSpace(plain.Replace(text))
}

// sign puts the sign before a label, or before the id where there is none.
func sign(sign, label, id string) string {
	if label == "" {
		label = id
	}
	return sign + strings.TrimPrefix(label, sign)
}

// Slack escapes these three and nothing else.
var (
	plain   = strings.NewReplacer("&lt;", "<", "&gt;", ">", "&amp;", "&")
	escaper = strings.NewReplacer(
		"&", "&amp;", "<", "&lt;", ">", "&gt;",
		// These mark bold, struck and code text, and there is no way to escape
		// them: their twins look the same and mark nothing.
		"*", "∗", "~", "∼", "`", "ˋ",
	)
	// groups ping everybody in some clients and older ways of sending even
	// where no link is asked for. A space without width parts the sign from the
	// word.
	groups = regexp.MustCompile(`(?i)@(channel|here|everyone|group)`)
	// emoji names are between two colons.
	emoji = regexp.MustCompile(`:([\pL\pN_+'-]+:)`)
)

const noWidth = "\u200b"

// escape is words as mrkdwn that shows just them: no mention, link, style or
// picture comes of it, whatever they are.
func escape(s string) string {
	s = clean(s)
	if !strings.ContainsAny(s, "&<>*~`_@:") {
		return s
	}
	s = escaper.Replace(s)
	s = underscores(s)
	if strings.IndexByte(s, '@') >= 0 {
		s = groups.ReplaceAllString(s, "@"+noWidth+"$1")
	}
	if strings.Count(s, ":") > 1 {
		s = emoji.ReplaceAllString(s, ":"+noWidth+"$1")
	}
	return s
}

// underscores marks slanted text only where it stands at the edge of a word:
// there its twin takes its place.
func underscores(s string) string {
	if strings.IndexByte(s, '_') < 0 {
		return s
	}
	r := []rune(s)
	for i, c := range r {
		if c == '_' && !(i > 0 && wordy(r[i-1]) && i+1 < len(r) && wordy(r[i+1])) {
			r[i] = 'ˍ'
		}
	}
	return string(r)
}

func wordy(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// clean makes one line of a text: control characters, what turns the reading
// direction, and white space become spaces.
func clean(s string) string {
	if isPlain(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		switch {
		case r == utf8.RuneError:
			return '?'
		case unicode.IsSpace(r), unicode.IsControl(r), unicode.Is(unicode.Cf, r):
			return ' '
		}
		return r
	}, s)
}

// isPlain reports whether a text is of printable ASCII alone, as most are.
func isPlain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// fallback is a message in plain words, for notifications and screen readers.
func fallback(d bot.Doc) string {
	s := bot.PlainText(d, maxFallback)
	if s == "" {
		return bot.CutMark
	}
	lines := strings.Split(s, "\n")
	for i, l := range lines {
		lines[i] = escape(l)
	}
	return strings.Join(lines, "\n")
}

// marks of the styles in mrkdwn.
var marks = map[bot.Style]string{bot.Ordinary: "", bot.Strong: "*", bot.Faint: "_"}

// mrkdwn is a line of text in Slack's markup. Words keep their spaces outside
// of the marks, and a mark that touches a letter is parted from it by a space
// without width: else Slack takes it for a sign of the text.
func mrkdwn(t bot.Text) string {
	var b strings.Builder
	var last rune
	put := func(s string) {
		if s != "" {
			b.WriteString(s)
			last, _ = utf8.DecodeLastRuneInString(s)
		}
	}
	closed := false // a mark was closed just now
	for _, s := range joinStyles(t) {
		words := clean(s.Text)
		body := strings.Trim(words, " ")
		mark := marks[s.Style]
		if body == "" {
			mark = ""
			body = words
		} else {
			lead := words[:len(words)-len(strings.TrimLeft(words, " "))]
			if lead != "" {
				put(lead)
				closed = false
			}
		}
		first, _ := utf8.DecodeRuneInString(body)
		if closed && (wordy(first) || mark != "") || mark != "" && wordy(last) {
			put(noWidth)
		}
		out := escape(body)
		if b.Len() == 0 && mark == "" && strings.HasPrefix(out, "&gt;") {
			out = "›" + out[len("&gt;"):] // would begin a quotation
		}
		put(mark + out + mark)
		closed = mark != ""
		if trail := words[len(strings.TrimRight(words, " ")):]; trail != "" && strings.Trim(words, " ") != "" {
			put(trail)
			closed = false
		}
	}
	return b.String()
}

// joinStyles makes one span of neighbours in the same style.
func joinStyles(t bot.Text) bot.Text {
	var out bot.Text
	for _, s := range t {
		switch n := len(out); {
		case s.Text == "":
		case n > 0 && out[n-1].Style == s.Style:
			out[n-1].Text += s.Text
		default:
			out = append(out, s)
		}
	}
	return out
}

// link is a link in mrkdwn; what is no address of a page becomes its words.
func link(label, address string) string {
	words := mrkdwn(bot.Line(label))
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" {
		return words
	}
	// String escapes < and >; a bar would end the address.
	safe := strings.ReplaceAll(strings.ReplaceAll(u.String(), "|", "%7C"), "&", "&amp;")
	if strings.ContainsAny(safe, "<>") || size(safe) > maxURL {
		return words
	}
	if words == "" {
		words = escape(address)
	}
	return "<" + safe + "|" + words + ">"
}
