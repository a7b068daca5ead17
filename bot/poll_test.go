package bot

import (
	"testing"

	"example.org/netpost/bot/store"
	"example.org/netpost/engine/answer"
)

// A vote agrees with the ruling where call and team are the ruling's; with a
// play that turns on a fact, where it says so.
func TestAgrees(t *testing.T) {
	ask := func(words string) dialogue {
		d := dialogue{Question: store.Question{Text: words}}
		d.answer = answer.Ask(words, answer.Options{Code: "scholastic"})
		return d
	}
	settled := ask("our back-row setter tips the ball over from inside the 3m line, ball above the net")
	open := ask("our setter tips the ball over from inside the 3m line, ball above the net")
	for _, c := range []struct {
		d          dialogue
		call, team string
		want       bool
	}{
		{settled, "fault:back-row-attack", "A", true},
		{settled, "fault:back-row-attack", "B", false},
		{settled, "play-on", "", false},
		{settled, depends, "", false},
		{settled, notSure, "", false},
		{open, depends, "", true},
		{open, "play-on", "", false},
		{open, "fault:back-row-attack", "A", false},
		{open, notSure, "", false},
	} {
		if got := c.d.agrees(c.call, c.team); got != c.want {
			t.Errorf("%s: %s %s agrees: %t", c.d.Text, c.call, c.team, got)
		}
	}
}

// A call that is not offered any more is still told in words.
func TestCallWords(t *testing.T) {
	offered := []choice{{"play-on", "", "Play on, no fault"}}
	for c, want := range map[store.VoteCount]string{
		{Call: "play-on"}:                           "play on, no fault",
		{Call: "fault:net-contact", Team: "B"}:      "fault: net contact, against B",
		{Call: "!improper-request+deny", Team: "A"}: "improper request, deny, against A",
		{Call: "replay:premature-signal"}:           "replay: premature signal",
	} {
		if got := callWords(offered, c); got != want {
			t.Errorf("%+v: %q, want %q", c, got, want)
		}
	}
}
