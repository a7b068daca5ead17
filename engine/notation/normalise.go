package notation

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// word is one piece of the text with its place in it: a word, or one mark.
type word struct {
	raw        string
	start, end int
	mark       byte // ',', '.', '?', ';' and the like; 0 for a word
}

// split cuts a text into words and marks. A hyphen or slash inside a word
// parts it, except between digits ("2025-26", "24-22").
func split(text string) []word {
	var out []word
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case wordRune(r) || r == '#':
			j := i + n
			for j < len(text) {
				r, n := utf8.DecodeRuneInString(text[j:])
				if wordRune(r) || apostrophe(r) && j+n < len(text) && letterAt(text, j+n) ||
					(r == '-' || r == ':' || r == '.') && digitAt(text, j-1) && digitAt(text, j+1) {
					j += n
					continue
				}
				break
			}
			if j < len(text) { // a mark that belongs to the word: "players'", "10'", "w/"
				r, n := utf8.DecodeRuneInString(text[j:])
				if apostrophe(r) && (text[j-1] == 's' || digitAt(text, j-1)) || r == '/' && (text[i:j] == "w" || text[i:j] == "W") {
					j += n
				}
			}
			raw := text[i:j]
			if (raw == "w/" || raw == "W/") && j < len(text) && (text[j] == 'o' || text[j] == 'O') && (j+1 == len(text) || !letterAt(text, j+1)) {
				raw, j = "without", j+1
			}
			out = append(out, word{raw: raw, start: i, end: j})
			i = j
			continue
		case strings.ContainsRune(",.?!;:()", r):
			m := byte(r)
			switch m {
			case '!':
				m = '.'
			case '(', ')', ':':
				m = ','
			}
			out = append(out, word{raw: text[i : i+n], start: i, end: i + n, mark: m})
		case r == '–' || r == '—' || r == '-' && i > 0 && text[i-1] == ' ':
			out = append(out, word{raw: text[i : i+n], start: i, end: i + n, mark: ','})
		case r == '\n':
			out = append(out, word{raw: "\n", start: i, end: i + n, mark: '.'})
		case r == '/':
			out = append(out, word{raw: "or", start: i, end: i + n})
		case r == '&' || r == '+':
			out = append(out, word{raw: "and", start: i, end: i + n})
		}
		i += n
	}
	return out
}

func wordRune(r rune) bool   { return unicode.IsLetter(r) || unicode.IsDigit(r) }
func apostrophe(r rune) bool { return r == '\'' || r == '’' || r == '`' }

func digitAt(s string, i int) bool { return i >= 0 && i < len(s) && s[i] >= '0' && s[i] <= '9' }

func letterAt(s string, i int) bool {
	r, _ := utf8.DecodeRuneInString(s[i:])
	return unicode.IsLetter(r)
}

// spellings are the short and the other ways to write a word; the right-hand
// side is what the lexicon knows. Sorted.
var spellings = []struct{ from, to string }{
	{"10ft", "10 foot"},
	{"1st", "first"},
	{"2nd", "second"},
	{"3m", "3 meter"},
	{"3rd", "third"},
	{"4th", "fourth"},
	{"aint", "is not"},
	{"ant", "antenna"},
	{"antennae", "antenna"},
	{"arent", "are not"},
	{"b4", "before"},
	{"backrow", "back row"},
	{"bc", "because"},
	{"bk", "back"},
	{"br", "back row"},
	{"bra", "back row attack"},
	{"cannot", "can not"},
	{"cant", "can not"},
	{"cb", "back row"},
	{"centerline", "center line"},
	{"centre", "center"},
	{"centreline", "center line"},
	{"cf", "front row"},
	{"coulda", "could have"},
	{"couldnt", "could not"},
	{"cuz", "because"},
	{"didnt", "did not"},
	{"doesnt", "does not"},
	{"dont", "do not"},
	{"ds", "defender"},
	{"fr", "front row"},
	{"frontrow", "front row"},
	{"ft", "foot"},
	{"hadnt", "had not"},
	{"hasnt", "has not"},
	{"havent", "have not"},
	{"hs", "high school"},
	{"imo", ""},
	{"intl", "international"},
	{"isnt", "is not"},
	{"lb", "back row"},
	{"lf", "front row"},
	{"lib", "libero"},
	{"lj", "line judge"},
	{"ljs", "line judge"},
	{"mb", "middle"},
	{"metre", "meter"},
	{"mf", "front row"},
	{"noone", "nobody"},
	{"ob", "out of bounds"},
	{"oh", "outside"},
	{"oob", "out of bounds"},
	{"opp", "opposite"},
	{"rb", "back row"},
	{"rf", "front row"},
	{"rh", "opposite"},
	{"rs", "right side"},
	{"shes", "she is"},
	{"shouldnt", "should not"},
	{"tho", "though"},
	{"thru", "through"},
	{"w", "with"},
	{"wasnt", "was not"},
	{"werent", "were not"},
	{"whats", "what is"},
	{"wholely", "wholly"},
	{"wont", "will not"},
	{"wouldnt", "would not"},
	{"yall", "you"},
}

// plainMarks makes every apostrophe the plain one.
var plainMarks = strings.NewReplacer("’", "'", "`", "'")

// expand is the words that one written word stands for, in lower case, and
// whether it is a possessive.
func expand(raw string) (out []string, possessive bool) {
	s := strings.ToLower(plainMarks.Replace(raw))
	s = strings.TrimSuffix(s, "/")
	if head, ok := strings.CutSuffix(s, "'"); ok {
		if digitAt(head, len(head)-1) {
			return []string{head, "foot"}, false
		}
		return []string{head}, true
	}
	if head, tail, ok := strings.Cut(s, "'"); ok {
		switch tail {
		case "s":
			switch head {
			case "she", "he", "it", "that", "there", "here", "what", "who", "where", "how", "let":
				return []string{head, "is"}, false
			}
			return []string{head}, true
		case "t":
			if head == "can" || head == "won" || head == "ain" {
				head = map[string]string{"can": "can", "won": "will", "ain": "is"}[head]
			} else {
				head = strings.TrimSuffix(head, "n")
			}
			return []string{head, "not"}, false
		case "re":
			return []string{head, "are"}, false
		case "ve":
			return []string{head, "have"}, false
		case "ll":
			return []string{head, "will"}, false
		case "d":
			return []string{head, "would"}, false
		case "m":
			return []string{head, "am"}, false
		}
		s = head + tail
	}
	if to, ok := respelt[s]; ok {
		return strings.Fields(to), false
	}
	return []string{s}, false
}

var respelt = func() map[string]string {
	m := make(map[string]string, len(spellings))
	for _, s := range spellings {
		m[s.from] = s.to
	}
	return m
}()
