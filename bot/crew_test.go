package bot_test

import (
	"context"
	"fmt"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/engine/code"
)

// The life of a crew, with what goes out unasked: mentors, views, plays ruled
// on together.
func TestCrew(t *testing.T) {
	kept, folders := map[string]store.Store{}, map[string]string{}
	var ids, seconds atomic.Int64
	begin := time.Date(2026, 11, 20, 19, 0, 0, 0, time.UTC)
	bottest.Talks(t, "testdata/crew/*.txt", func(t *testing.T, set bottest.Settings, send bot.Sender) bottest.Talk {
		s := kept[t.Name()]
		folder := folders[t.Name()]
		if s == nil {
			s = newStore(t)
			kept[t.Name()] = s
			folder = t.TempDir()
			folders[t.Name()] = folder
			ids.Store(0)
			seconds.Store(0)
		}
		crew := func() bot.Association {
			a := riverside(set)
			a.Mentors = bot.Place{Platform: "stage", Workspace: "riverside", Channel: "mentors"}
			if set["mentors"] == "nowhere" {
				a.Mentors = bot.Place{}
			}
			if param, value, ok := strings.Cut(set["adopted"], "="); ok {
				a.Overlays = []code.Overlay{{Param: code.Param(param), Value: value, Reason: "by the board"}}
			}
			a.Grants = append(a.Grants, bot.Grant{Role: bot.Publisher, To: "publishers"})
			a.Publish = func(n *casebook.Note) error { return casebook.Publish(folder, n) }
			a.Book = func() (*casebook.Book, error) { return demoWith(folder), nil }
			return a
		}
		b := bot.New(bot.Options{
			Store: s,
			Find:  func(p bot.Place) (bot.Association, bool) { return crew(), p.Workspace == "riverside" },
			All:   func() []bot.Association { return []bot.Association{crew()} },
			Send:  send,
			Now:   func() time.Time { return begin.Add(time.Duration(seconds.Load()) * time.Second) },
			NewID: func() string { return fmt.Sprintf("%026d", ids.Add(1)) },
		})
		return bottest.Talk{Handle: b.Handle,
			Tick: func(ctx context.Context) { seconds.Add(1); b.Tick(ctx) },
			Wait: func(d time.Duration) { seconds.Add(int64(d / time.Second)) }}
	}, brief)
}

// demoWith is the demo casebook with what was published into a folder.
func demoWith(folder string) *casebook.Book {
	b := demo.Book()
	published, _ := casebook.LoadDir(folder, casebook.LoadOptions{})
	for _, n := range published.Notes() {
		b = b.With(n)
	}
	return b
}
