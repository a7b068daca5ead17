package notation

import (
	"strings"
	"testing"
)

// Players and sides are found by whatever crews call them, and nothing of the
// name is left over.
func TestNaming(t *testing.T) {
	for _, tc := range []struct{ text, want string }{
		{"purple's setter touches the net", "purple's setter touches the net"},
		{"the Reds touch the net", "reds' player touches the net"},
		{"#8 for white touches the net", "white's player #8 touches the net"},
		{"blue 4 touches the net", "blue's player #4 touches the net"},
		{"our 7 touches the net", "our player #7 touches the net"},
		{"our 6 (back row) touches the net", "our back-row player #6 touches the net"},
		{"number 11 for them touches the net", "their player #11 touches the net"},
		{"a player from the other team touches the net", "B's player touches the net"},
		{"an opponent touches the net", "B's player touches the net"},
		{"hitter from A touches the net", "A's hitter touches the net"},
		{"Team S's outside touches the net", "the serving team's outside touches the net"},
		{"home setter touches the net", "home's setter touches the net"},
		{"their big tall middle touches the net", "their middle touches the net"},
		{"their MB's in the net", "their middle touches the net"},
		{"LF touches the net, opponents dig it", "A's front-row player touches the net"},
		{"back left kicks it up", "A's back-row player digs the ball"},
		{"she's in the net", "A's player touches the net"},
		{"2 of theirs dig it", "their first player digs the ball; their second player digs the ball"},
		{"2 blockers touch it", "A's first blocker touches the ball; A's second blocker touches the ball"},
		{"B's setter digs it, then her outside touches the net", "B's setter digs the ball; then B's outside touches the net"},
		{"the serve comes right back over, A sets it", "B serves; A's player sets the ball"},
	} {
		r, err := Read(tc.text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Rally == nil {
			t.Errorf("%q: no play read", tc.text)
			continue
		}
		got := strings.Join(Sentences(r.Rally), "; ")
		for _, w := range strings.Split(tc.want, "; ") {
			if !strings.Contains(got, w) {
				t.Errorf("%q: read as %q; want %q in it", tc.text, got, w)
			}
		}
		for _, u := range r.Unread {
			if !u.Scenery {
				t.Errorf("%q: %q left unread", tc.text, u.Word)
			}
		}
	}
}

// Typing habits change nothing: short forms, capitals, missing apostrophes.
func TestTyping(t *testing.T) {
	const want = "A's setter sets the ball; then A's outside attacks the ball"
	for _, text := range []string{
		"A's setter sets it, then A's OH attacks it",
		"A'S SETTER SETS IT, THEN A'S OH ATTACKS IT",
		"idk tbh, A's setter sets it w/ no fuss, then A's OH attacks it 🙏",
		"A's setter sets it → then A's OH attacks it b/c why not",
		"thx!! A's setter sets it, then A’s OH attacks it",
	} {
		r, err := Read(text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Rally == nil {
			t.Errorf("%q: no play read", text)
			continue
		}
		got := strings.Join(Sentences(r.Rally), "; ")
		if !strings.HasPrefix(got, want) {
			t.Errorf("%q: read as %q, want %q", text, got, want)
		}
	}
}
