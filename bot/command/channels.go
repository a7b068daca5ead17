package command

import (
	"context"
	"fmt"
	"log/slog"
	"net"
	"slices"

	"example.org/netpost/bot"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/slack"
	"example.org/netpost/config"
)

// channel is one configured way to people.
type channel struct {
	name      string // for people
	platform  string
	field     string   // of the settings that it comes from
	workspace string   // on Slack: the one that it is for
	paths     []string // in HTTP mode: where the platform posts to, at the address listen
	own       string   // the path that its adapter knows
	make      func(*slog.Logger, net.Listener) (platformAdapter, error)
}

// platformAdapter is an adapter that can be asked whether its platform would
// have it.
type platformAdapter interface {
	bot.Adapter
	// Check asks. The warnings say what won't work, the error why nothing will.
	Check(context.Context) (warnings []string, err error)
}

// channels lists the configured platforms, in the order of the settings. The
// APIs are the platforms' own where the world names no other.
func (w *World) channels(c config.Config) []channel {
	var out []channel
	overHTTP := 0
	for _, a := range c.Associations {
		if a.Slack.Workspace != "" && a.Slack.Mode == "http" {
			overHTTP++
		}
	}
	onDiscord := -1
	for i, a := range c.Associations {
		if a.Guild.ID != "" && onDiscord < 0 {
			onDiscord = i
		}
		s := a.Slack
		if s.Workspace == "" {
			continue
		}
		o := slack.Options{BotToken: s.BotToken.Reveal(), APIURL: w.api[slack.Platform], Groups: slices.Concat(s.Mentors.Groups, s.Publishers.Groups)}
		ch := channel{name: "slack " + a.ID, platform: slack.Platform, field: fmt.Sprintf("associations[%d].slack", i), workspace: s.Workspace}
		if s.Mode == "http" {
			o.SigningSecret = s.SigningSecret.Reveal()
			ch.own, ch.paths = slack.DefaultPath, []string{slack.DefaultPath + "/" + a.ID}
			if overHTTP == 1 {
				ch.paths = append(ch.paths, slack.DefaultPath)
			}
		} else {
			o.AppToken = s.AppToken.Reveal()
		}
		ch.make = func(log *slog.Logger, l net.Listener) (platformAdapter, error) {
			o := o
			o.Log, o.Listener = log, l
			return slack.New(o)
		}
		out = append(out, ch)
	}
	if onDiscord >= 0 {
		d := c.Discord
		o := discord.Options{Token: d.Token.Reveal(), APIURL: w.api[discord.Platform]}
		ch := channel{name: "discord", platform: discord.Platform, field: "discord"}
		if d.Mode == "http" {
			o.PublicKey = d.PublicKey
			ch.own, ch.paths = discord.DefaultPath, []string{discord.DefaultPath}
		}
		ch.make = func(log *slog.Logger, l net.Listener) (platformAdapter, error) {
			o := o
			o.Log, o.Listener = log, l
			return discord.New(o)
		}
		out = append(out, ch)
	}
	return out
}
