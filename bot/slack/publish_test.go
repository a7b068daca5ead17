package slack_test

import (
	"testing"

	"example.org/netpost/bot"
	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// Bulletins, from the preview to the channel.
func TestPublishing(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Publishing(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			s := slackfake.New()
			t.Cleanup(s.Close)
			s.Channel("CCREW1", "UANA1", "UBOB1", slackfake.Self)
			return &platform{crew: start(t, s, mode, h), mode: mode}
		}})
	})
}

// The life of a question, from asking to the bulletin.
func TestLife(t *testing.T) {
	both(t, func(t *testing.T, mode string) {
		bottest.Story(t, bottest.Harness{Start: func(t *testing.T, h bot.Handler) bottest.Platform {
			s := slackfake.New()
			t.Cleanup(s.Close)
			s.Channel("CCREW1", "UANA1", "UBOB1", slackfake.Self)
			return &platform{crew: start(t, s, mode, h), mode: mode}
		}})
	})
}
