package discord_test

import (
	"testing"

	"example.org/netpost/bot/bottest"
)

// Bulletins, from the preview to the channel.
func TestPublishing(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Publishing(t, onCrew(mode))
	})
}

// The life of a question, from asking to the bulletin.
func TestLife(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Story(t, onCrew(mode))
	})
}
