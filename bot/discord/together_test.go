package discord_test

import (
	"testing"

	"example.org/netpost/bot/bottest"
)

// Two views, and plays that a crew rules on together.
func TestTogether(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Together(t, onCrew(mode))
	})
}
