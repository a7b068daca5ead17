package command

import (
	"bytes"
	"io"
	"log/slog"

	"example.org/netpost/bot/metrics"
	"example.org/netpost/config"
)

// newLog is the log of a program that serves: lines of text, counted, and
// without a secret whoever logs what.
func newLog(w io.Writer, level slog.Level, c config.Config, m *metrics.Metrics) *slog.Logger {
	h := slog.NewTextHandler(&curtain{w, secrets(c)}, &slog.HandlerOptions{Level: level})
	return slog.New(m.Log(h))
}

// secrets lists the secrets that are set.
func secrets(c config.Config) [][]byte {
	var out [][]byte
	add := func(ss ...config.Secret) {
		for _, s := range ss {
			if s.IsSet() {
				out = append(out, []byte(s.Reveal()))
			}
		}
	}
	add(c.Discord.Token, c.WebToken)
	for _, a := range c.Associations {
		add(a.Slack.AppToken, a.Slack.BotToken, a.Slack.SigningSecret)
	}
	return out
}

// curtain takes secrets out of what is written through it. A log writes a line
// at once, so none is cut in two. It stands behind the care that adapters take,
// for what they could not foresee.
type curtain struct {
	w      io.Writer
	secret [][]byte
}

func (c *curtain) Write(line []byte) (int, error) {
	out := line
	for _, s := range c.secret {
		out = bytes.ReplaceAll(out, s, []byte("(secret)"))
	}
	if _, err := c.w.Write(out); err != nil {
		return 0, err
	}
	return len(line), nil
}
