package discord

import (
	"cmp"
	"regexp"
	"strings"
	"unicode/utf8"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// entity is what Discord writes for mentions, channels, own emoji, times and
// commands in a text: <@1>, <@!1>, <@&1>, <#1>, <:ace:1>, <a:ace:1>, <t:1>,
// </netpost ask:1>.
var entity = regexp.MustCompile(`<(@[!&]?|#|a?:[\pL\pN_]+:|t:|/[^:<>]*:)(-?\d+)(:[tTdDfFR])?>`)

// said is a text from Discord as the person wrote it, with names where Discord
// tells them, and without the bot's own.
func said(text, self string, names map[string]string) string {
	text = entity.ReplaceAllStringFunc(text, func(e string) string {
		m := entity.FindStringSubmatch(e)
		kind, id := m[1], m[2]
		switch {
		case kind[0] == '@' && id == self:
			return ""
		case kind[0] == '@':
			return "@" + cmp.Or(names[id], id)
		case kind == "#":
			return "#" + cmp.Or(names[id], id)
		case kind == "t:":
			return ""
		case kind[0] == '/':
			return strings.TrimSuffix(kind, ":")
		}
		return strings.TrimPrefix(kind, "a")
	})
	return strings.TrimSpace(text)
}

// named are the people whom a text from Discord mentions, but for the bot.
func named(text, self string) []bot.Person {
	var out []bot.Person
	for _, m := range entity.FindAllStringSubmatch(text, -1) {
		if kind, id := m[1], m[2]; (kind == "@" || kind == "@!") && id != self {
			out = append(out, bot.Person{Platform: Platform, ID: id})
		}
	}
	return out
}

var (
	// groups ping everybody. Every message says that nobody is to be pinged;
	// this keeps the words from even looking so.
	groups = regexp.MustCompile(`(?i)@(everyone|here)`)
	// schemes begin an address that becomes a link.
	schemes = regexp.MustCompile(`([A-Za-z]):(//|mailto)`)
	// emoji names are between two colons.
	emoji = regexp.MustCompile(`:([\pL\pN_+'-]+):`)
	// begins are marks that mean something at the head of a line alone.
	begins = regexp.MustCompile(`^( *)(#{1,3} |-|\+|>|\d+([.)]))`)
)

// escape is words as markdown that shows just them: no mention, link, style or
// picture comes of it, whatever they are.
func escape(s string) string {
	var b strings.Builder
	r := []rune(wire.Clean(s))
	for i, c := range r {
		switch {
		case c < utf8.RuneSelf && strings.IndexByte("\\*~`|<[", byte(c)) >= 0, c == '_' && !wire.InWord(r, i):
			b.WriteByte('\\')
		}
		b.WriteRune(c)
	}
	s = b.String()
	if strings.IndexByte(s, '@') >= 0 {
		s = groups.ReplaceAllString(s, "@"+wire.NoWidth+"$1")
	}
	if strings.IndexByte(s, ':') >= 0 {
		s = schemes.ReplaceAllString(s, `$1\:$2`)
		s = emoji.ReplaceAllString(s, `:`+wire.NoWidth+`$1:`)
	}
	return s
}

// plainly is words where Discord reads no markup: labels, footers, forms.
func plainly(s string) string {
	return groups.ReplaceAllString(wire.Line(s), "@"+wire.NoWidth+"$1")
}

// atHead is escaped words that begin a line.
func atHead(s string) string {
	m := begins.FindStringSubmatchIndex(s)
	if m == nil {
		return s
	}
	at := m[4] // before the mark
	if m[6] >= 0 {
		at = m[6] // a number is marked by what follows it
	}
	return s[:at] + `\` + s[at:]
}

// marks of the styles in markdown.
var marks = map[bot.Style]string{bot.Ordinary: "", bot.Strong: "**", bot.Faint: "*"}

// markdown is a line of text in Discord's markup. Spaces stay outside of the
// marks, and a mark that touches what is no space is parted from it by a space
// without width: else it may be taken for a sign of the text.
func markdown(t bot.Text) string {
	var b strings.Builder
	closed := false // a mark was closed just now
	touches := false
	put := func(s string) {
		b.WriteString(s)
		last, _ := utf8.DecodeLastRuneInString(s)
		touches = last != ' '
	}
	for _, s := range wire.JoinStyles(t) {
		words := wire.Clean(s.Text)
		body := strings.Trim(words, " ")
		if body == "" {
			put(words)
			closed = false
			continue
		}
		if lead := words[:len(words)-len(strings.TrimLeft(words, " "))]; lead != "" {
			put(lead)
			closed = false
		}
		mark := marks[s.Style]
		if closed && touches || mark != "" && touches {
			b.WriteString(wire.NoWidth)
		}
		put(mark + escape(body) + mark)
		closed = mark != ""
		if trail := words[len(strings.TrimRight(words, " ")):]; trail != "" {
			put(trail)
			closed = false
		}
	}
	return atHead(strings.TrimSpace(b.String()))
}

// link is a link in markdown; what is no address of a page becomes its words.
func link(label, address string) string {
	words := markdown(bot.Line(label))
	page, ok := wire.Page(address)
	page = strings.NewReplacer("(", "%28", ")", "%29", "\\", "%5C").Replace(page)
	if !ok || wire.Size(page) > maxURL {
		return words
	}
	if words == "" {
		words = escape(address)
	}
	// A closing bracket would end the label.
	return "[" + strings.ReplaceAll(words, "]", `\]`) + "](" + page + ")"
}
