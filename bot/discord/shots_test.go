package discord

import (
	"testing"

	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/discord/discordfake"
)

// What officials get when they do things together, as Discord gets it.
func TestShots(t *testing.T) {
	for _, s := range bottest.Shots(t) {
		out := wireOf(t, render(s.Message))
		bottest.Golden(t, "render/crew/"+s.Name+".json", out)
		if p := discordfake.Check([]byte(out)); p != nil {
			t.Errorf("%s: %v", s.Name, p)
		}
	}
}
