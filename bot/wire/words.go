package wire

import (
	"net/url"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"example.org/netpost/bot"
)

// NoWidth is a space without width: it parts a mark from what it would be
// taken with.
const NoWidth = "\u200b"

// Size is the length of a text in UTF-16 units, which is what the platforms'
// clients count; none counts more.
func Size(s string) int {
	if IsPlain(s) {
		return len(s)
	}
	n := 0
	for _, r := range s {
		n += max(utf16.RuneLen(r), 1)
	}
	return n
}

// Clip cuts a text to at most most units, with a mark.
func Clip(s string, most int) string {
	n, room := 0, 0 // room: the bytes that leave room for the mark
	for i, r := range s {
		if n+Size(bot.CutMark) <= most {
			room = i
		}
		if n += max(utf16.RuneLen(r), 1); n > most {
			return strings.TrimRight(s[:room], " \n") + bot.CutMark
		}
	}
	return s
}

// Clean makes one line of a text: control characters, what turns the reading
// direction, and white space become spaces.
func Clean(s string) string {
	if IsPlain(s) {
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

// Line is a clean text without space around it.
func Line(s string) string { return strings.TrimSpace(Clean(s)) }

// IsPlain reports whether a text is of printable ASCII alone, as most are.
func IsPlain(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// InWord reports whether the i-th rune stands between two of a word: there an
// underscore marks nothing.
func InWord(r []rune, i int) bool {
	return i > 0 && Wordy(r[i-1]) && i+1 < len(r) && Wordy(r[i+1])
}

// Wordy reports whether a rune is part of a word.
func Wordy(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) }

// JoinStyles makes one span of neighbours in the same style, and drops those
// without words.
func JoinStyles(t bot.Text) bot.Text {
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

// Page is the address of a page, as it is written where it stands alone; false:
// it is none. It has no space in it, nor an angle bracket.
func Page(address string) (string, bool) {
	u, err := url.Parse(address)
	if err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "" {
		return "", false
	}
	s := strings.NewReplacer("<", "%3C", ">", "%3E").Replace(u.String())
	return s, !strings.ContainsFunc(s, func(r rune) bool { return r <= ' ' })
}
