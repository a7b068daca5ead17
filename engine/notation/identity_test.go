package notation

import (
	"math/rand/v2"
	"os"
	"strings"
	"testing"

	"example.org/netpost/engine/notation/playgen"
	"example.org/netpost/engine/play"
)

// sameRead fails unless reading the print of a play gives that play, whole.
func sameRead(t *testing.T, p *play.Rally) {
	t.Helper()
	s := Print(p)
	r, err := Read(s)
	if err != nil || r.Rally == nil {
		t.Fatalf("%q was not read: %v", s, err)
	}
	if got, want := canon(r.Rally), canon(p); got != want {
		t.Fatalf("%s\nread as\n%s\nwant\n%s", s, got, want)
	}
	if !r.Whole() || len(r.Corrected) > 0 {
		t.Fatalf("%s\nnot read: %v, corrected: %v", s, r.Unread, r.Corrected)
	}
}

// Reading the print of a play gives the same play: of random plays, of every
// short one, and of those that people's words were read as.
func TestPrintReadIdentity(t *testing.T) {
	r := rand.New(rand.NewPCG(30, 31))
	for _, o := range options {
		for range 500 {
			sameRead(t, playgen.Rally(r, o))
		}
	}
	playgen.Short(1, func(p *play.Rally) bool { sameRead(t, p); return true })
}

func TestPrintReadIdentityOfQuestions(t *testing.T) {
	data, err := os.ReadFile("testdata/own.plays")
	if err != nil {
		t.Fatal(err)
	}
	read := 0
	for line := range strings.Lines(string(data)) {
		key, text, _ := strings.Cut(strings.TrimSpace(line), " ")
		if key != "text" && key != "slash" {
			continue
		}
		if q, err := Read(strings.TrimSpace(text)); err == nil && q.Rally != nil {
			sameRead(t, q.Rally)
			read++
		}
	}
	if read == 0 {
		t.Error("no question was read as a play")
	}
}
