package discord_test

import (
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
)

// Bulletins, from the preview to the channel.
func TestPublishing(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Publishing(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			p := &platform{mode: mode, guild: "1"}
			p.crew = start(t, server(t), mode, h)
			return p
		}})
	})
}

// The life of a question, from asking to the bulletin.
func TestLife(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Story(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			p := &platform{mode: mode, guild: "1"}
			p.crew = start(t, server(t), mode, h)
			return p
		}})
	})
}
