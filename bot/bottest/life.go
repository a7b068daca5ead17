package bottest

import (
	"strings"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/casebook"
	"example.org/netpost/engine/code"
)

// life is an association that lives on a platform.
type life struct {
	program
	folder string // of its notes
	file   func(dir string, n *casebook.Note) error
}

// kim is a mentor and a publisher.
const kim = "UBOB1"

func newLife(t *testing.T) *life {
	t.Helper()
	l := &life{program: newProgram(t, time.Date(2026, 11, 18, 12, 0, 0, 0, time.UTC)), folder: t.TempDir(), file: casebook.Publish}
	l.association = l.riverside
	return l
}

func (l *life) riverside() bot.Association {
	return bot.Association{
		ID: "riverside", Name: "Riverside Officials", Code: code.Scholastic, Mentors: l.place, BulletinTo: []bot.Place{l.place},
		Book: func() (*casebook.Book, error) {
			b, _ := casebook.LoadDir(l.folder, casebook.LoadOptions{})
			return b, nil
		},
		Publish: func(n *casebook.Note) error { return l.file(l.folder, n) },
		Grants:  []bot.Grant{{Role: bot.Publisher, To: kim}},
	}
}

// housed connects a life to the platform.
func housed(t *testing.T, h Harness) (*life, Platform, bot.Sender) {
	l := newLife(t)
	p, send := l.onPlatform(t, h)
	l.start(t, l.store, send)
	return l, p, send
}

// by is somebody in the channel.
func by(who string) bot.Meta {
	m := at
	m.Who.ID = who
	return m
}

// presses is somebody's press of a seen button whose label begins so.
func presses(t *testing.T, s Seen, who, label string) bot.Press {
	t.Helper()
	for _, b := range s.Buttons {
		if strings.HasPrefix(b.Label, label) {
			return bot.Press{Meta: bot.Meta{Who: by(who).Who, Where: s.Where}, Message: s.Message, Private: s.To != "", State: b.State}
		}
	}
	t.Fatalf("there is no button %q on:\n%s", label, s.Text)
	return bot.Press{}
}
