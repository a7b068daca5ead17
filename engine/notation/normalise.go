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
	out := make([]word, 0, len(text)/5+4)
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		if raw := slashed(text[i:]); raw != "" {
			out = append(out, word{raw: raw, start: i, end: i + len(raw)})
			i += len(raw)
			continue
		}
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
		case r == '–' || r == '—' || r == '→' || r == '⇒' || r == '-' && i > 0 && text[i-1] == ' ':
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

// slashed is the short word with a stroke in it that a text starts with, or "".
func slashed(text string) string {
	if c := firstByte(text) | 0x20; c != 'b' && c != 'w' {
		return ""
	}
	for _, s := range []string{"b/c", "w/o", "w/out"} {
		if len(text) >= len(s) && strings.EqualFold(text[:len(s)], s) {
			if r, n := utf8.DecodeRuneInString(text[len(s):]); n == 0 || !wordRune(r) {
				return text[:len(s)]
			}
		}
	}
	return ""
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
	{"2x", "twice"},
	{"3m", "3 meter"},
	{"3rd", "third"},
	{"4th", "fourth"},
	{"5th", "fifth"},
	{"6th", "sixth"},
	{"abt", "about"},
	{"afaik", ""},
	{"aint", "is not"},
	{"alot", "a lot"},
	{"amongst", "among"},
	{"ant", "antenna"},
	{"antennae", "antenna"},
	{"arent", "are not"},
	{"atk", "attack"},
	{"attk", "attack"},
	{"b/c", "because"},
	{"b4", "before"},
	{"backcourt", "back court"},
	{"backrow", "back row"},
	{"bc", "because"},
	{"bck", "back"},
	{"bcuz", "because"},
	{"becuz", "because"},
	{"bk", "back"},
	{"bkrow", "back row"},
	{"blk", "block"},
	{"br", "back row"},
	{"bra", "back row attack"},
	{"btwn", "between"},
	{"cannot", "can not"},
	{"cant", "can not"},
	{"cb", "back row"},
	{"centerline", "center line"},
	{"centre", "center"},
	{"centreline", "center line"},
	{"cf", "front row"},
	{"cos", "because"},
	{"coulda", "could have"},
	{"couldnt", "could not"},
	{"couldve", "could have"},
	{"coz", "because"},
	{"ctr", "center"},
	{"cus", "because"},
	{"cuz", "because"},
	{"dbl", "double"},
	{"didnt", "did not"},
	{"doesnt", "does not"},
	{"dont", "do not"},
	{"ds", "defender"},
	{"dunno", "do not know"},
	{"fr", "front row"},
	{"freeball", "free ball"},
	{"freeballs", "free balls"},
	{"frnt", "front"},
	{"frontcourt", "front court"},
	{"frontrow", "front row"},
	{"frt", "front"},
	{"ft", "foot"},
	{"fwiw", ""},
	{"gimme", "give me"},
	{"gonna", "going to"},
	{"hadnt", "had not"},
	{"hasnt", "has not"},
	{"havent", "have not"},
	{"heres", "here is"},
	{"hes", "he is"},
	{"hs", "high school"},
	{"iirc", ""},
	{"im", "i am"},
	{"imo", ""},
	{"intl", "international"},
	{"isnt", "is not"},
	{"itll", "it will"},
	{"jk", ""},
	{"lb", "back row"},
	{"lemme", "let me"},
	{"lf", "front row"},
	{"lib", "libero"},
	{"lj", "line judge"},
	{"ljs", "line judge"},
	{"mb", "middle"},
	{"mbs", "middles"},
	{"metre", "meter"},
	{"mf", "front row"},
	{"mightve", "might have"},
	{"mustnt", "must not"},
	{"nd", "and"},
	{"neednt", "need not"},
	{"ngl", ""},
	{"noone", "nobody"},
	{"ob", "out of bounds"},
	{"offa", "off of"},
	{"oh", "outside"},
	{"ohs", "outsides"},
	{"oob", "out of bounds"},
	{"opp", "opposite"},
	{"opps", "opponents"},
	{"outta", "out of"},
	{"ovr", "over"},
	{"ppl", "people"},
	{"pt", "point"},
	{"pts", "points"},
	{"rb", "back row"},
	{"recieving", "receiving"},
	{"rf", "front row"},
	{"rh", "opposite"},
	{"rite", "right"},
	{"rs", "right side"},
	{"shes", "she is"},
	{"shoulda", "should have"},
	{"shouldnt", "should not"},
	{"shouldve", "should have"},
	{"tbh", ""},
	{"teh", "the"},
	{"tha", "the"},
	{"thats", "that is"},
	{"theres", "there is"},
	{"theyll", "they will"},
	{"theyre", "they are"},
	{"theyve", "they have"},
	{"tho", "though"},
	{"thru", "through"},
	{"til", "until"},
	{"till", "until"},
	{"u", "you"},
	{"ur", "your"},
	{"w", "with"},
	{"w/o", "without"},
	{"w/out", "without"},
	{"wanna", "want to"},
	{"wasnt", "was not"},
	{"werent", "were not"},
	{"weve", "we have"},
	{"whats", "what is"},
	{"whilst", "while"},
	{"wholely", "wholly"},
	{"whos", "who is"},
	{"wont", "will not"},
	{"woulda", "would have"},
	{"wouldnt", "would not"},
	{"wouldve", "would have"},
	{"yall", "you"},
	{"youre", "you are"},
}

// plainMarks makes every apostrophe the plain one.
func plainMarks(s string) string {
	if !strings.ContainsAny(s, "’`") {
		return s
	}
	return strings.ReplaceAll(strings.ReplaceAll(s, "’", "'"), "`", "'")
}

// expand is the words that one written word stands for, in lower case, and
// whether it is a possessive.
func expand(raw string) (out []string, possessive bool) {
	s := strings.ToLower(plainMarks(raw))
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
			if to, ok := respelt[head]; ok {
				return strings.Fields(to), true
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
