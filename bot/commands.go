package bot

import (
	"slices"
	"strings"

	"example.org/netpost/engine/code"
)

// CommandName is the chat command, without what a platform puts before it.
const CommandName = "netpost"

// CommandRow is one row of the table of what can be said after the chat
// command. Help, and the commands that an adapter registers, are derived from
// it.
type CommandRow struct {
	Name    string
	Words   string // what its words are called; empty: it takes none
	Must    bool   // it needs words
	Options bool   // it takes Args
	Summary string // one line of at most 100 letters, no full stop
	Example string // words to try
	Role    Role   // who may give it
}

// commandRows, sorted by name.
var commandRows = []CommandRow{
	{"ask", "play", true, true, "rule on a play told in words", "ball in plane, both front row, fourth contact?", Anyone},
	{"bulletin", "week", false, false, "preview a week's bulletin, then post it; without a week the last one", "2026-W47", Publisher},
	{"codes", "play", true, true, "rule on a play under every code, and say why they differ", "setter back row, above the net, tips it over", Anyone},
	{"drafts", "", false, false, "list the draft notes, to publish or drop them", "", Publisher},
	{"erase", "person", false, false, "delete what is kept of you; a publisher can name another person", "", Anyone},
	{"help", "", false, false, "what can be asked here, and how", "", Anyone},
	{"numbers", "", false, false, "count what was asked, what is in dispute, and how far crews agreed", "", Mentor},
	{"poll", "play", false, true, "put a play to the crew without its ruling; without a play, list what is open", "setter saves a tight ball, blocker touches it too", Mentor},
	{"posts", "", false, false, "list what may have been posted or not, to send it again or drop it", "", Mentor},
	{"queue", "", false, false, "list the questions that wait for a mentor", "", Mentor},
	{"recheck", "", false, false, "list what is ruled otherwise today than it was, and send corrections", "", Mentor},
	{"search", "words", true, true, "look through the case notes", "joust above the net", Anyone},
	{"views", "play", true, true, "compare how two officials saw a play: each gives their facts, nobody is named", "setter saves a tight ball, blocker touches it too", Anyone},
}

// Commands is the table, sorted by name.
func Commands() []CommandRow { return slices.Clone(commandRows) }

func commandByName(name string) (CommandRow, bool) {
	for _, r := range commandRows {
		if r.Name == name {
			return r, true
		}
	}
	return CommandRow{}, false
}

// spoken is a command taken apart.
type spoken struct {
	name string // a row of the table
	text string
	args Args
}

func parseCommand(c Command) spoken {
	if c.Name == "" {
		return parseWords(c.Text)
	}
	return spoken{c.Name, strings.TrimSpace(c.Text), c.Args}
}

// parseWords takes free words apart: a command's name and options in any
// order, then the words. All but the words may be left out. What is no option
// is a word: any text is a play.
//
//	public club: ball in plane, both front row
//	search code=club joust
func parseWords(text string) spoken {
	s := spoken{name: "ask", text: strings.TrimSpace(text)}
	if s.text == "" {
		s.name = "help"
		return s
	}
	for named := false; ; {
		first, rest := cutWord(s.text)
		row, ok := commandByName(strings.ToLower(first))
		switch {
		case !named && ok && (row.Words != "" || rest == ""):
			s.name, named = row.Name, true
		case !s.args.option(first):
			return s
		}
		s.text = rest
	}
}

// cutWord cuts the first word off.
func cutWord(s string) (word, rest string) {
	if i := strings.IndexFunc(s, isSpace); i >= 0 {
		return s[:i], strings.TrimSpace(s[i:])
	}
	return s, ""
}

func isSpace(r rune) bool { return r == ' ' || r == '\n' || r == '\t' || r == '\r' || r == '\u00a0' }

// option takes one word as an option, if it is one that was not given yet.
func (a *Args) option(word string) bool {
	word = strings.ToLower(word)
	key, value, keyed := strings.Cut(word, "=")
	bare, colon := strings.CutSuffix(word, ":")
	switch {
	case keyed && key == "code" && a.Code == "" && value != "":
		a.Code = value
	case keyed && key == "season" && a.Season == "" && value != "":
		a.Season = value
	case colon && a.Code == "" && isCode(bare):
		a.Code = bare
	case a.Show == ShowDefault && (bare == string(ShowPublic) || bare == string(ShowPrivate)):
		a.Show = Show(bare)
	default:
		return false
	}
	return true
}

func isCode(s string) bool {
	_, err := code.Parse(s)
	return err == nil
}
