package slack_test

import (
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// Two views, and plays that a crew rules on together.
func TestTogether(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Together(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			s := slackfake.New()
			t.Cleanup(s.Close)
			s.Channel("CCREW1", "UANA1", "UBOB1", "UCLEO1", slackfake.Self)
			return &platform{crew: start(t, s, mode, h), mode: mode}
		}})
	})
}
