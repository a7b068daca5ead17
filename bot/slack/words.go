package slack

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
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

// named are the people whom a text from Slack mentions, but for the bot.
func named(text, self string) []bot.Person {
	var out []bot.Person
	for _, m := range entity.FindAllStringSubmatch(text, -1) {
		target, _, _ := strings.Cut(m[1], "|")
		if id, ok := strings.CutPrefix(target, "@"); ok && id != "" && id != self {
			out = append(out, bot.Person{Platform: Platform, ID: id})
		}
	}
	return out
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

// escape is words as mrkdwn that shows just them: no mention, link, style or
// picture comes of it, whatever they are.
func escape(s string) string {
	s = wire.Clean(s)
	if !strings.ContainsAny(s, "&<>*~`_@:") {
		return s
	}
	s = escaper.Replace(s)
	s = underscores(s)
	if strings.IndexByte(s, '@') >= 0 {
		s = groups.ReplaceAllString(s, "@"+wire.NoWidth+"$1")
	}
	if strings.Count(s, ":") > 1 {
		s = emoji.ReplaceAllString(s, ":"+wire.NoWidth+"$1")
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
		if c == '_' && !wire.InWord(r, i) {
			r[i] = 'ˍ'
		}
	}
	return string(r)
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
	for _, s := range wire.JoinStyles(t) {
		words := wire.Clean(s.Text)
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
		if closed && (wire.Wordy(first) || mark != "") || mark != "" && wire.Wordy(last) {
			put(wire.NoWidth)
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

// link is a link in mrkdwn; what is no address of a page becomes its words.
func link(label, address string) string {
	words := mrkdwn(bot.Line(label))
	page, ok := wire.Page(address)
	// A bar would end the address.
	page = strings.ReplaceAll(strings.ReplaceAll(page, "|", "%7C"), "&", "&amp;")
	if !ok || wire.Size(page) > maxURL {
		return words
	}
	if words == "" {
		words = escape(address)
	}
	return "<" + page + "|" + words + ">"
}
