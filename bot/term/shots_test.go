package term

import (
	"strings"
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
)

// What officials get when they do things together, as a terminal shows it.
func TestShots(t *testing.T) {
	for _, s := range bottest.Shots(t) {
		var b strings.Builder
		if err := bot.Print(&b, s.Doc, bot.TextOptions{}); err != nil {
			t.Fatal(err)
		}
		bottest.Golden(t, "crew/"+s.Name+".txt", b.String())
	}
}
