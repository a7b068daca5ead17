package notation

import (
	"testing"

	"example.org/netpost/engine/play"
)

// A text of the surroundings is taken only where every word has its part, and
// what is told of the feet only where the place is not for play.
func TestReadGround(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"our dig hits the curtain between the courts, our libero gets it up", "we dig the ball; the ball hits an outside object; our libero saves the ball"},
		{"our libero jumps over the bench and digs it with both feet off the floor", "our libero saves the ball, off the playing surface"},
		{"our libero jumps and digs it with both feet off the floor", ""},
		{"our dig hits the curtain, perhaps somebody frobs it", ""},
		{"our dig does not hit the curtain", ""},
		{"ball from the next court rolls behind our hitter, she stops", "something comes onto the court, play is hindered"},
	} {
		s := newScene(tokens(c.text))
		s.run()
		p, _, ok := s.readGround()
		got := ""
		if ok {
			got = Print(p)
		}
		if got != c.want {
			t.Errorf("%q: read as %q, want %q", c.text, got, c.want)
		}
	}
}

// A serve goes over the net once where nobody touches it.
func TestTwiceOver(t *testing.T) {
	serve, cross, touch := play.Event{Kind: play.Serve}, play.Event{Kind: play.Cross}, play.Event{Kind: play.Contact}
	for _, c := range []struct {
		events []play.Event
		want   bool
	}{
		{[]play.Event{serve, cross, cross}, true},
		{[]play.Event{serve, cross}, false},
		{[]play.Event{serve, cross, touch, cross}, false},
		{[]play.Event{touch, cross, cross}, false},
	} {
		if got := twiceOver(&play.Rally{Events: c.events}); got != c.want {
			t.Errorf("%v: %t, want %t", c.events, got, c.want)
		}
	}
}

// What the reader of rallies passes over is not read.
func TestWeighty(t *testing.T) {
	for _, c := range []struct{ text, word string }{
		{"dig frobbed my R2 in the leg", "R2"},
		{"our setter dug the ball with both feet off the floor near the bench", "feet"},
	} {
		r, err := Read(c.text)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, u := range r.Unread {
			found = found || u.Word == c.word && !u.Scenery
		}
		if !found {
			t.Errorf("%q: %q is not among the words not read %v", c.text, c.word, r.Unread)
		}
	}
}
