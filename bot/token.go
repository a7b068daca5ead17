package bot

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// MaxState is the most bytes that the state of a button or form has: the least
// that any platform keeps.
const MaxState = 100

// Token is what a button or form means: a verb and what it is about. Its text
// is a path such as /give/k3…/row@p1=front.
type Token struct {
	Verb string // a row of verbs
	Args []string
}

// errTooLong: a token's text has more than MaxState bytes.
var errTooLong = fmt.Errorf("a button's state has at most %d bytes", MaxState)

// verb is a row of the table of what buttons and forms do.
type verb struct {
	name string
	args int // how many it has
	ack  Ack
	doc  string
}

// verbs, sorted by name.
var verbs = []verb{
	{"against", 2, AckUpdate, "a disagreement, sent off with a form: question, fact or rule"},
	{"answer", 1, AckNone, "open the form for a mentor's answer: call"},
	{"both", 2, AckUpdate, "turn to a page of two views: question, page"},
	{"call", 1, AckUpdate, "words to a mentor, sent off with a form: question"},
	{"called", 1, AckUpdate, "the name for one's own view, sent off with a form: question"},
	{"case", 2, AckUpdate, "turn to a page of a call: call, page"},
	{"claim", 1, AckUpdate, "take a call: call"},
	{"close", 1, AckUpdate, "close a poll: question"},
	{"correct", 2, AckUpdate, "send the corrections of a recheck: its id, the number of the cause or all"},
	{"differ", 1, AckPrivate, "ask what somebody sees otherwise: question"},
	{"done", 1, AckUpdate, "take a call off the queue: call"},
	{"draft", 1, AckNone, "open the form for a draft note: mentor's answer"},
	{"draw", 1, AckPrivate, "show the picture of a play: question"},
	{"drop", 1, AckUpdate, "drop a draft note: draft"},
	{"erase", 3, AckUpdate, "erase a person, or not: their id, the names they go by, yes or no"},
	{"find", 2, AckUpdate, "turn to a page of search hits: words, page"},
	{"give", 2, AckUpdate, "give a fact: question, fact@event=value"},
	{"guide", 1, AckUpdate, "turn to a page of the help: page"},
	{"hand", 2, AckUpdate, "hand one's own view in: question, open or sealed"},
	{"held", 2, AckPrivate, "go on with a question held back for a name: its id, drop or keep"},
	{"issue", 2, AckUpdate, "publish a draft note: draft, the digest of what was looked at"},
	{"look", 1, AckPrivate, "show a call to a mentor alone: call"},
	{"mentor", 1, AckNone, "open the form for words to a mentor: question"},
	{"more", 3, AckUpdate, "turn to a page: question, view, page"},
	{"name", 1, AckNone, "open the form for the name in one's own view: question"},
	{"note", 1, AckUpdate, "a draft note, sent off with a form: mentor's answer"},
	{"numbers", 2, AckUpdate, "turn to a page of the numbers: table or csv, page"},
	{"object", 2, AckNone, "open the form for a disagreement: question, fact or rule"},
	{"outcome", 2, AckUpdate, "turn to a page of what came of a poll: question, page"},
	{"post", 2, AckUpdate, "decide about a post that may be out: its key, resend or drop"},
	{"proof", 1, AckPrivate, "show a draft note to a publisher alone: draft"},
	{"publish", 3, AckUpdate, "post a bulletin: its week, the digest of what was previewed, the channel or all"},
	{"put", 2, AckUpdate, "put a play to the crew: question, the hours that it is open"},
	{"release", 1, AckUpdate, "give a call back: call"},
	{"reply", 1, AckUpdate, "a mentor's answer, sent off with a form: call"},
	{"saw", 1, AckPrivate, "begin one's own view, or go on with it: question"},
	{"see", 2, AckUpdate, "give a fact to one's own view: question, fact@event=value"},
	{"share", 1, AckPublic, "show a private answer to the channel: question"},
	{"sight", 1, AckNone, "open the form for facts of one's own view: question"},
	{"sighted", 1, AckUpdate, "facts of one's own view, sent off with a form: question"},
	{"tell", 1, AckUpdate, "facts in words, sent off with a form: question"},
	{"undo", 1, AckUpdate, "take the last fact back: question"},
	{"unname", 1, AckUpdate, "take one's name out of a view: question"},
	{"unsee", 1, AckUpdate, "take the last fact of one's own view back: question"},
	{"view", 2, AckUpdate, "look at an answer in another way: question, view"},
	{"vote", 3, AckPrivate, "make one's own call on a poll: question, call, team"},
	{"week", 2, AckUpdate, "turn to a page of a bulletin: its week, page"},
	{"words", 1, AckNone, "open the form for facts in words: question"},
}

func verbByName(name string) (verb, bool) {
	for _, v := range verbs {
		if v.name == name {
			return v, true
		}
	}
	return verb{}, false
}

// escapes are what a part of a path may not have as it is.
const escapes = "%/"

// String is the token as a path, of any length.
func (t Token) String() string {
	var b strings.Builder
	for _, part := range append([]string{t.Verb}, t.Args...) {
		b.WriteByte('/')
		for i := range len(part) {
			if c := part[i]; c < ' ' || c == 0x7f || strings.IndexByte(escapes, c) >= 0 {
				fmt.Fprintf(&b, "%%%02X", c)
			} else {
				b.WriteByte(c)
			}
		}
	}
	return b.String()
}

// State is the token as a button's state. It fails where that is too long.
func (t Token) State() (string, error) {
	s := t.String()
	if len(s) > MaxState {
		return "", errTooLong
	}
	return s, nil
}

// MoreState is the state of the button to a page of a message, counted from 0;
// more is the message's. It is empty where the message has none, or where it
// is too long for a button: then the text is cut with a mark alone.
func MoreState(more string, page int) string {
	s := more + "/" + strconv.Itoa(page)
	if more == "" || len(s) > MaxState {
		return ""
	}
	return s
}

// errToken: a state that no button of ours has.
var errToken = errors.New("this button is not one that I know")

// ParseToken reads a button's state. It gives back exactly what String made a
// path of, and refuses all else.
func ParseToken(state string) (Token, error) {
	if len(state) > MaxState || !strings.HasPrefix(state, "/") {
		return Token{}, errToken
	}
	var parts []string
	for p := range strings.SplitSeq(state[1:], "/") {
		s, ok := unescape(p)
		if !ok {
			return Token{}, errToken
		}
		parts = append(parts, s)
	}
	t := Token{Verb: parts[0], Args: parts[1:]}
	v, ok := verbByName(t.Verb)
	if !ok || len(t.Args) != v.args || t.String() != state {
		return Token{}, errToken
	}
	return t, nil
}

func unescape(s string) (string, bool) {
	if strings.IndexByte(s, '%') < 0 {
		return s, true
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] != '%' {
			b.WriteByte(s[i])
			continue
		}
		if i+2 >= len(s) {
			return "", false
		}
		hi, lo := strings.IndexByte(hex, s[i+1]), strings.IndexByte(hex, s[i+2])
		if hi < 0 || lo < 0 {
			return "", false
		}
		b.WriteByte(byte(hi<<4 | lo))
		i += 2
	}
	return b.String(), true
}

const hex = "0123456789ABCDEF"
