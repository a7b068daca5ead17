package notation

import (
	"slices"
	"strings"
	"testing"
)

// weighty are words that can change what happened, of each kind: none of them
// may be thought of as scenery.
const weighty = "above across after again almost already ankle antenna arm back barely before behind below " +
	"beyond bottom both catch clean contact different down early fake first foot four half hand held her hip " +
	"hit hold immediately inches inside knee last late left lift miss nearly net never no nobody none nope not " +
	"nothing one only out over partly post probably same second shoulder simultaneously slightly stop supposedly " +
	"three tip together touch twice two under unless until up whistle wholly wide without"

// The words and turns of speech that never matter are sorted, each is once
// among them, no other table means something by one, and none is of weight.
func TestScenery(t *testing.T) {
	ws := strings.Fields(everyday)
	if len(ws) < 1500 {
		t.Errorf("%d words of plain English; there were 1,500", len(ws))
	}
	for _, list := range [][]string{ws, idioms, strings.Fields(bystanders)} {
		for i := 1; i < len(list); i++ {
			if list[i-1] >= list[i] {
				t.Errorf("%q stands after %q; sort them, each once", list[i], list[i-1])
			}
		}
	}
	scene := map[string]bool{}
	for _, e := range lex().refs {
		if e.means.class == cScenery || e.means.class == cAround {
			scene[e.phrase] = true
		}
	}
	for _, w := range slices.Concat(ws, idioms, strings.Fields(bystanders)) {
		if !scene[w] {
			t.Errorf("%q means something in another table; take it out of the scenery", w)
		}
	}
	for w := range strings.FieldsSeq(weighty) {
		if slices.Contains(ws, w) {
			t.Errorf("%q can change what happened; it is no scenery", w)
		}
	}
	for _, p := range idioms {
		if !strings.Contains(p, " ") {
			t.Errorf("idiom %q is one word; it belongs to the words", p)
		}
		for _, w := range strings.Fields(p) {
			if article(w) != 0 {
				t.Errorf("idiom %q has the article %q, which no text keeps", p, w)
			}
		}
	}
}

// What people around the court say is no fact of the play; what happens to
// them is.
func TestChatter(t *testing.T) {
	for _, tc := range []struct {
		text   string
		unread bool
	}{
		{"A's middle is in the net. my partner says no.", false},
		{"loud gym, A's middle is in the net. Parents were furious.", false},
		{"the fans yelled like crazy. A's middle is in the net, thoughts?", false},
		{"A's middle is in the net, their bench yells 4", false},
		{"R2 here. A's middle is in the net", false},
		{"A's setter digs it, A's middle is in the net, then the ball hits the coach", true},
		{"A's middle is in the net, coach says the setter hit it on the follow through", true},
		{"A's middle nearly is in the net", true},
	} {
		r, err := Read(tc.text)
		if err != nil {
			t.Fatal(err)
		}
		if r.Rally == nil {
			t.Errorf("%q: no play read", tc.text)
		}
		got := ""
		for _, u := range r.Unread {
			if !u.Scenery {
				got += " " + u.Word
			}
		}
		if (got != "") != tc.unread {
			t.Errorf("%q: left unread:%q; want some: %v", tc.text, got, tc.unread)
		}
	}
}
