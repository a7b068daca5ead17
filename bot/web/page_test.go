package web

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/engine"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/court/picture"
)

// drawing is the real conversation, with pictures.
func drawing(t testing.TB) *bot.Bot {
	t.Helper()
	s, err := sqlite.Open(context.Background(), filepath.Join(t.TempDir(), "netpost.db"), sqlite.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return bot.New(bot.Options{Store: s,
		Find: func(bot.Place) (bot.Association, bool) {
			return bot.Association{ID: "riverside", Code: code.Scholastic, Notes: notes{}}, true
		},
		Draw: func(_ bot.Place, _ answer.Answer, s engine.Subject) []bot.Picture {
			p, ok := picture.Of(s, picture.Mark{})
			if !ok {
				return nil
			}
			return []bot.Picture{{Name: "court.svg", Type: "image/svg+xml", Alt: p.Alt, Data: p.SVG()}}
		},
	})
}

// An answer has its picture below the ruling, with words for who can't see it,
// and still after the program was started again.
func TestPicture(t *testing.T) {
	b := drawing(t)
	_, ana := talking(t, b)
	at, p := ana.asked("words", joust)
	const head = `<figure class="picture" tabindex="0" aria-label="Picture"><img alt="The play drawn from the side and from above: `
	if lead, pic := strings.Index(p.body, `<h2 class="lead`), strings.Index(p.body, head); lead < 0 || pic < lead || !strings.Contains(p.body, `src="data:image/svg+xml;base64,`) {
		t.Errorf("the answer has no picture below its ruling\n%s", p.body)
	}
	_, other := talking(t, b)
	other.Jar = ana.Jar // the same browser comes to the next run
	if p := other.get(at); p.status == 200 && !strings.Contains(p.body, head) {
		t.Errorf("remembered, the answer has no picture\n%s", p.body)
	}
}

// BenchmarkPage makes the pages that people look at, over the connection.
func BenchmarkPage(b *testing.B) {
	_, ana := talking(b, drawing(b))
	at := ""
	for i := range mostPast {
		at, _ = ana.asked("words", fmt.Sprintf("%s, score %d all", joust, i))
	}
	for _, p := range []struct{ name, path string }{{"home", "/"}, {"answer", at}, {"alignment", "/alignment"}, {"search", "/search?q=joust"}, {"help", "/help"}} {
		b.Run(p.name, func(b *testing.B) {
			for b.Loop() {
				if got := ana.get(p.path); got.status != 200 {
					b.Fatalf("%s: %d", p.path, got.status)
				}
			}
		})
	}
}
