package discord_test

import (
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
)

// Two views, and plays that a crew rules on together.
func TestTogether(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Together(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			p := &platform{mode: mode, guild: "1"}
			p.crew = start(t, server(t), mode, h)
			return p
		}})
	})
}
