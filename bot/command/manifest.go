package command

import (
	"context"
	"fmt"
	"io"
	"net/url"

	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/slack"
)

var manifestCommand = command{
	name:    "manifest",
	args:    "slack|discord",
	summary: "print what the app is set up from on a platform",
	help: "For Slack it is the app's manifest, to be pasted where a new app is made. For Discord it is the list of " +
		"commands, which serve registers by itself; with --application it is the address that adds the bot to a server.",
	flags: []flagRow{
		{name: "name", value: "NAME", doc: "Slack: what the app is called in the workspace; netpost when left out"},
		{name: "url", value: "URL", doc: "Slack, for http mode: the public address that leads to listen, like https://crew.example/slack; Socket Mode when left out"},
		{name: "groups", doc: "Slack: with the scope that tells who is in a user group, for mentor_groups and publisher_groups"},
		{name: "application", value: "ID", doc: "Discord: the application's id"},
	},
	run: manifest,
}

func manifest(_ context.Context, w *World, in input) error {
	if len(in.words) != 1 {
		return fmt.Errorf("needs one platform: netpost manifest slack, or netpost manifest discord")
	}
	platform, foreign := in.words[0], []string{"application"}
	text := ""
	switch platform {
	case slack.Platform:
		if s := in.get("url"); s != "" {
			u, err := url.Parse(s)
			if err != nil || u.Scheme != "https" || u.Host == "" {
				return fmt.Errorf("--url %s: Slack posts to https addresses only; write one like https://crew.example/slack", visible(s))
			}
		}
		text = slack.Manifest(slack.ManifestOptions{Name: in.get("name"), URL: in.get("url"), Groups: in.has("groups")})
	case discord.Platform:
		foreign = []string{"name", "url", "groups"}
		text = discord.Manifest()
		if id := in.get("application"); id != "" {
			text = discord.Invite(id) + "\n"
		}
	default:
		return fmt.Errorf("there is no manifest for %s; there are slack, discord", visible(platform))
	}
	for _, f := range foreign {
		if in.has(f) {
			return fmt.Errorf("--%s is not for %s; take it out", f, platform)
		}
	}
	_, err := io.WriteString(w.Stdout, text)
	return err
}
