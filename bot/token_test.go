package bot

import (
	"slices"
	"strings"
	"testing"
)

func TestTokenRoundTrip(t *testing.T) {
	for _, tok := range []Token{
		{"give", []string{"abcdefghijklmnopqrstuvwxyz", "row@p1=front"}},
		{"find", []string{"a/b %2F é\n", "0"}},
		{"undo", []string{""}},
	} {
		s, err := tok.State()
		if err != nil {
			t.Fatalf("%v: %v", tok, err)
		}
		got, err := ParseToken(s)
		if err != nil || got.Verb != tok.Verb || !slices.Equal(got.Args, tok.Args) {
			t.Errorf("ParseToken(%q) = %v, %v; want %v", s, got, err, tok)
		}
	}
}

func TestTokenRefused(t *testing.T) {
	for _, s := range []string{
		"", "/", "undo/x", "/undo", "/undo/a/b", "/undo/%2f", "/undo/%41", "/undo/%", "/undo/%G0", "/fly/x", "/undo/a\n",
		"/undo/" + strings.Repeat("x", MaxState),
	} {
		if tok, err := ParseToken(s); err == nil {
			t.Errorf("ParseToken(%q) = %v, want an error", s, tok)
		}
	}
	if s, err := (Token{"undo", []string{strings.Repeat("x", MaxState)}}).State(); err == nil {
		t.Errorf("State of a long token = %q, want an error", s)
	}
}

func TestMoreState(t *testing.T) {
	tok, err := ParseToken(MoreState(Token{"more", []string{"q", "all"}}.String(), 2))
	if err != nil || !slices.Equal(tok.Args, []string{"q", "all", "2"}) {
		t.Errorf("got %v, %v", tok, err)
	}
	if s := MoreState("", 2) + MoreState(strings.Repeat("x", MaxState), 2); s != "" {
		t.Errorf("no button has the state %q", s)
	}
}

func TestVerbs(t *testing.T) {
	for i, v := range verbs {
		if v.doc == "" || v.args == 0 {
			t.Errorf("%s: undocumented or about nothing", v.name)
		}
		if i > 0 && verbs[i-1].name >= v.name {
			t.Errorf("%s: not sorted or twice", v.name)
		}
	}
}

// What ParseToken takes, String gives back, and the other way round.
func FuzzToken(f *testing.F) {
	f.Add("/give/q/row@p1=front", "give", "a/b", "c%d")
	f.Add("/more/q/all/1", "find", "", "\x00")
	f.Fuzz(func(t *testing.T, state, verb, one, two string) {
		if tok, err := ParseToken(state); err == nil && tok.String() != state {
			t.Errorf("ParseToken(%q) = %v, whose text is %q", state, tok, tok.String())
		}
		want := Token{verb, []string{one, two}}
		v, known := verbByName(verb)
		s, err := want.State()
		if err != nil {
			return
		}
		got, err := ParseToken(s)
		if known && v.args == 2 {
			if err != nil || got.Verb != verb || !slices.Equal(got.Args, want.Args) {
				t.Errorf("%v became %q and that %v, %v", want, s, got, err)
			}
		} else if err == nil {
			t.Errorf("ParseToken(%q) took what is no row of the table", s)
		}
	})
}
