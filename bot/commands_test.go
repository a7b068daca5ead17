package bot

import (
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

func TestParseWords(t *testing.T) {
	for _, test := range []struct {
		text string
		want spoken
	}{
		{"", spoken{name: "help"}},
		{"  help ", spoken{name: "help"}},
		{"help with the ball", spoken{name: "ask", text: "help with the ball"}},
		{"joust", spoken{name: "ask", text: "joust"}},
		{"ASK joust", spoken{name: "ask", text: "joust"}},
		{"ask search joust", spoken{name: "ask", text: "search joust"}},
		{"search joust", spoken{name: "search", text: "joust"}},
		{"search", spoken{name: "search"}},
		{"public codes club: joust", spoken{"codes", "joust", Args{Code: "club", Show: ShowPublic}}},
		{"private: code=beach season=2025-26 joust", spoken{"ask", "joust", Args{"beach", "2025-26", ShowPrivate}}},
		{"public public joust", spoken{"ask", "public joust", Args{Show: ShowPublic}}},
		{"club team serves", spoken{name: "ask", text: "club team serves"}},
		{"setter: tips", spoken{name: "ask", text: "setter: tips"}},
		{"club:\n joust\nagain", spoken{"ask", "joust\nagain", Args{Code: "club"}}},
	} {
		if got := parseWords(test.text); got != test.want {
			t.Errorf("parseWords(%q) = %+v, want %+v", test.text, got, test.want)
		}
	}
}

// Each row is sorted, documented, carried out, in the help, and its example is
// read by the engine.
func TestCommands(t *testing.T) {
	help := PlainText(Help(), 1<<20)
	for i, r := range Commands() {
		switch {
		case i > 0 && commandRows[i-1].Name >= r.Name:
			t.Errorf("%s: not sorted or twice", r.Name)
		case r.Summary == "" || utf8.RuneCountInString(r.Summary) > 100 || strings.HasSuffix(r.Summary, "."):
			t.Errorf("%s: summary %q", r.Name, r.Summary)
		case r.Must && (r.Words == "" || r.Example == ""):
			t.Errorf("%s: it needs words, and none are named or shown", r.Name)
		case !strings.Contains(help, r.Summary) || !strings.Contains(help, r.Example):
			t.Errorf("%s: not in the help", r.Name)
		}
		if r.Words != "play" {
			continue
		}
		if a := answer.Ask(r.Example, answer.Options{}); a.Kind == answer.None || a.Outcome == "" {
			t.Errorf("%s: the example %q gets %s, unread %q", r.Name, r.Example, a.Kind, a.Unread)
		}
	}
}

func TestDefer(t *testing.T) {
	direct := Meta{Direct: true}
	for _, test := range []struct {
		e    Event
		want Ack
	}{
		{Command{Text: "joust"}, AckPrivate},
		{Command{Text: "public joust"}, AckPublic},
		{Command{Name: "ask", Text: "public joust"}, AckPrivate},
		{Command{Name: "ask", Args: Args{Show: ShowPublic}}, AckPublic},
		{Command{Meta: direct, Text: "joust"}, AckPublic},
		{Mention{Text: "joust"}, AckPublic},
		{Mention{Text: "private joust"}, AckPrivate},
		{Shortcut{Text: "public joust"}, AckPrivate},
		{ThreadReply{}, AckPublic},
		{Press{State: "/words/q"}, AckNone},
		{Press{State: "/give/q/row@p1=back"}, AckUpdate},
		{Press{State: "/share/q"}, AckPublic},
		{Press{State: "nonsense"}, AckPrivate},
		{Submit{}, AckUpdate},
		{Complete{}, AckNone},
		{Posted{}, AckNone},
	} {
		if got := Defer(test.e); got != test.want {
			t.Errorf("Defer(%#v) = %d, want %d", test.e, got, test.want)
		}
	}
}

func TestRoleOf(t *testing.T) {
	a := Association{Grants: []Grant{
		{Role: Mentor, To: "U1"},
		{Role: Mentor, Channel: "mentors"},
		{Role: Publisher, To: "editors", Channel: "desk"},
		{Role: Publisher}, // matches nobody: a slip must not make everyone one
	}}
	who := func(id string, roles ...string) Who { return Who{Person: Person{Platform: "p", ID: id}, Roles: roles} }
	for _, test := range []struct {
		who     Who
		channel string
		want    Role
	}{
		{who("U2"), "crew", Anyone},
		{who("U1"), "crew", Mentor},
		{who("U2"), "mentors", Mentor},
		{who("U2", "editors"), "crew", Anyone},
		{who("U1", "x", "editors"), "desk", Publisher},
	} {
		if got := a.RoleOf(test.who, Place{Channel: test.channel}); got != test.want {
			t.Errorf("RoleOf(%v in %s) = %v, want %v", test.who, test.channel, got, test.want)
		}
	}
}

// What the help says of typing where players stand is read so, each with a
// fault to see.
func TestHelpAlignments(t *testing.T) {
	for _, words := range []string{AlignmentExample, GridExample} {
		a := answer.Ask(words, answer.Options{Code: code.Scholastic})
		if a.Fault != "out-of-position" || len(a.Unread) > 0 {
			t.Errorf("%q: %s %s, unread %q", words, a.Outcome, a.Fault, a.Unread)
		}
	}
}
