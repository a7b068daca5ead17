package slack

import (
	"testing"

	"example.org/netpost/bot/bottest"
	"example.org/netpost/bot/slack/slackfake"
)

// What officials get when they do things together, as Slack gets it.
func TestShots(t *testing.T) {
	for _, s := range bottest.Shots(t) {
		r := render(s.Message)
		out := wireOf(t, r)
		bottest.Golden(t, "render/crew/"+s.Name+".txt", r.text+"\n\n"+string(out)+"\n")
		if p := slackfake.Check(r.text, out); p != nil {
			t.Errorf("%s: %v", s.Name, p)
		}
	}
}
