package config

import (
	"strings"
)

// A key is one key of the file, or a section of keys.
type key struct {
	path string // such as associations[].slack.mode
	def  string // the default, as it is written in the file; empty: none
	doc  string
	kind kind
	at   func(place) any // where its value goes; nil for a section
	need bool            // it must be there where its section is
	env  string          // for the file of a secret: the variable that may hold it instead
}

// A place is what the file's keys are read into.
type place struct {
	c *Config
	a *Association // nil outside of associations
}

// keys is the one table of keys, sorted.
var keys = []key{
	{path: "associations", kind: section, doc: "the crews, each with its own notes, channels and people; a list"},
	{path: "associations[].bulletin", kind: section, doc: "when the weekly bulletin is posted by itself"},
	{path: "associations[].bulletin.day", kind: oneOf("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"), doc: "the day of the week; without it a publisher posts the bulletin", at: func(p place) any { return &p.a.Bulletin.Day }},
	{path: "associations[].bulletin.time", def: "07:00", kind: clock, doc: "the time of that day", at: func(p place) any { return &p.a.Bulletin.Time }},
	{path: "associations[].bulletin.zone", def: "UTC", kind: zone, doc: "the time zone of that time, such as America/Chicago", at: func(p place) any { return &p.a.Bulletin.Zone }},
	{path: "associations[].casebook", kind: path, doc: "the folder of its case notes", at: func(p place) any { return &p.a.Casebook }},
	{path: "associations[].code", kind: oneOf(codes...), doc: "the rule code that it works under; without it every answer is given under all", at: func(p place) any { return &p.a.Code }},
	{path: "associations[].discord", kind: section, doc: "its guild on Discord"},
	{path: "associations[].discord.bulletin_channels", kind: ids(snowflake), doc: "where bulletins are posted", at: func(p place) any { return &p.a.Guild.Channels.Bulletin }},
	{path: "associations[].discord.channels", kind: ids(snowflake), doc: "where the bot answers; without it, wherever it is allowed", at: func(p place) any { return &p.a.Guild.Channels.Ask }},
	{path: "associations[].discord.guild", kind: id(snowflake), need: true, doc: "the guild's id", at: func(p place) any { return &p.a.Guild.ID }},
	{path: "associations[].discord.mentor_roles", kind: ids(snowflake), doc: "roles whose members are mentors", at: func(p place) any { return &p.a.Guild.Mentors.Groups }},
	{path: "associations[].discord.mentor_users", kind: ids(snowflake), doc: "people who are mentors", at: func(p place) any { return &p.a.Guild.Mentors.Users }},
	{path: "associations[].discord.mentors_channel", kind: id(snowflake), doc: "where questions wait for a mentor", at: func(p place) any { return &p.a.Guild.Channels.Mentors }},
	{path: "associations[].discord.publisher_roles", kind: ids(snowflake), doc: "roles whose members publish", at: func(p place) any { return &p.a.Guild.Publishers.Groups }},
	{path: "associations[].discord.publisher_users", kind: ids(snowflake), doc: "people who publish", at: func(p place) any { return &p.a.Guild.Publishers.Users }},
	{path: "associations[].id", kind: id(slug), need: true, doc: "a short name that never changes: what is kept is kept under it", at: func(p place) any { return &p.a.ID }},
	{path: "associations[].name", kind: text, doc: "its name for people; without it the id", at: func(p place) any { return &p.a.Name }},
	{path: "associations[].pages", kind: site(true), doc: "the address of its notes' pages as they were exported, such as https://notes.example; answers link there", at: func(p place) any { return &p.a.Pages }},
	{path: "associations[].private", def: "false", kind: boolean, doc: "answers go to the asker alone unless they say otherwise", at: func(p place) any { return &p.a.Private }},
	{path: "associations[].season", kind: id(season), doc: "the season that it plays in, such as 2026-27; without it the newest", at: func(p place) any { return &p.a.Season }},
	{path: "associations[].slack", kind: section, doc: "its workspace on Slack"},
	{path: "associations[].slack.app_token_file", kind: secret, env: "SLACK_APP_TOKEN", doc: "a file with the app-level token (xapp-…), for socket mode", at: func(p place) any { return &p.a.Slack.AppToken }},
	{path: "associations[].slack.bot_token_file", kind: secret, env: "SLACK_BOT_TOKEN", doc: "a file with the bot token (xoxb-…)", at: func(p place) any { return &p.a.Slack.BotToken }},
	{path: "associations[].slack.bulletin_channels", kind: ids(slackChannel), doc: "where bulletins are posted", at: func(p place) any { return &p.a.Slack.Channels.Bulletin }},
	{path: "associations[].slack.channels", kind: ids(slackChannel), doc: "where the bot answers; without it, wherever it was invited", at: func(p place) any { return &p.a.Slack.Channels.Ask }},
	{path: "associations[].slack.mentor_groups", kind: ids(slackGroup), doc: "user groups whose members are mentors, by handle or id; the bot token needs the scope usergroups:read", at: func(p place) any { return &p.a.Slack.Mentors.Groups }},
	{path: "associations[].slack.mentor_users", kind: ids(slackUser), doc: "people who are mentors", at: func(p place) any { return &p.a.Slack.Mentors.Users }},
	{path: "associations[].slack.mentors_channel", kind: id(slackChannel), doc: "where questions wait for a mentor", at: func(p place) any { return &p.a.Slack.Channels.Mentors }},
	{path: "associations[].slack.mode", def: "socket", kind: oneOf("socket", "http"), doc: "socket: a connection from here, no public address needed; http: Slack calls listen", at: func(p place) any { return &p.a.Slack.Mode }},
	{path: "associations[].slack.publisher_groups", kind: ids(slackGroup), doc: "user groups whose members publish, by handle or id; the bot token needs the scope usergroups:read", at: func(p place) any { return &p.a.Slack.Publishers.Groups }},
	{path: "associations[].slack.publisher_users", kind: ids(slackUser), doc: "people who publish", at: func(p place) any { return &p.a.Slack.Publishers.Users }},
	{path: "associations[].slack.signing_secret_file", kind: secret, env: "SLACK_SIGNING_SECRET", doc: "a file with the app's signing secret, for http mode", at: func(p place) any { return &p.a.Slack.SigningSecret }},
	{path: "associations[].slack.workspace", kind: id(slackTeam), need: true, doc: "the workspace's id", at: func(p place) any { return &p.a.Slack.Workspace }},
	{path: "claim", def: "4h", kind: duration, doc: "how long a mentor's claim on a question holds", at: func(p place) any { return &p.c.Claim }},
	{path: "discord", kind: section, doc: "the one Discord application for all guilds"},
	{path: "discord.application", kind: id(snowflake), doc: "the application's id, for http mode", at: func(p place) any { return &p.c.Discord.Application }},
	{path: "discord.mode", def: "gateway", kind: oneOf("gateway", "http"), doc: "gateway: a connection from here, no public address needed; http: Discord calls listen", at: func(p place) any { return &p.c.Discord.Mode }},
	{path: "discord.public_key", kind: id(publicKey), doc: "the application's public key, for http mode", at: func(p place) any { return &p.c.Discord.PublicKey }},
	{path: "discord.token_file", kind: secret, env: "DISCORD_TOKEN", doc: "a file with the bot's token", at: func(p place) any { return &p.c.Discord.Token }},
	{path: "index", def: "netpost.index", kind: path, doc: "the folder of the search index; it is made anew when it is not there", at: func(p place) any { return &p.c.Index }},
	{path: "listen", def: "127.0.0.1:8080", kind: address, doc: "where the platforms' signed requests come in, for http mode; off: nowhere", at: func(p place) any { return &p.c.Listen }},
	{path: "local", kind: id(slug), doc: "the association that the terminal and the local web channel serve; without it the first", at: func(p place) any { return &p.c.Local }},
	{path: "log", def: "info", kind: level, doc: "how much is logged: debug, info, warn or error; the words of questions never are", at: func(p place) any { return &p.c.Log }},
	{path: "metrics", def: "127.0.0.1:9090", kind: address, doc: "where health and metrics are read; off: nowhere", at: func(p place) any { return &p.c.Metrics }},
	{path: "nudge", def: "24h", kind: duration, doc: "how long a question waits before mentors are reminded, once", at: func(p place) any { return &p.c.Nudge }},
	{path: "retention_days", def: "400", kind: days, doc: "how many days questions are kept; 0: for ever", at: func(p place) any { return &p.c.Retention }},
	{path: "store", def: "netpost.db", kind: path, doc: "the file of what must last; on a local disk", at: func(p place) any { return &p.c.Store }},
	{path: "web", def: "127.0.0.1:8081", kind: address, doc: "where the local web channel is; where other machines can reach it, web_url and an access token are needed; off: nowhere", at: func(p place) any { return &p.c.Web }},
	{path: "web_token_file", kind: secret, env: "WEB_TOKEN", doc: "a file with the access token of the web channel, of 16 characters or more; without one it asks for none", at: func(p place) any { return &p.c.WebToken }},
	{path: "web_url", kind: site(false), doc: "the address that people use for the web channel, such as https://netpost.example, where it is not its own", at: func(p place) any { return &p.c.WebURL }},
}

// codes are the ids of the rule codes.
var codes = []string{"international", "club", "collegiate", "scholastic"}

// under lists the keys of a section, by their own names.
func under(prefix string) (in []key, names []string) {
	for _, k := range keys {
		if name, ok := strings.CutPrefix(k.path, prefix); ok && !strings.Contains(name, ".") && !strings.Contains(name, "[") && name != "" {
			in, names = append(in, k), append(names, name)
		}
	}
	return in, names
}

// Reference is all keys with their defaults and what they are for, as plain
// text.
func Reference() string {
	var b strings.Builder
	for _, k := range keys {
		b.WriteString(k.path)
		switch {
		case k.need:
			b.WriteString(" (must be given)")
		case k.def != "":
			b.WriteString(" (default " + k.def + ")")
		}
		b.WriteString("\n    " + k.doc + "\n")
		if k.env != "" {
			b.WriteString("    or the variable " + variable("", k.env) + " in the environment")
			if strings.HasPrefix(k.path, "associations[]") {
				b.WriteString(",\n    with several associations " + variable("ID", k.env))
			}
			b.WriteString("\n")
		}
	}
	return b.String()
}

// variable is the name of a variable of the environment, of one association
// or of the only one.
func variable(association, name string) string {
	if association == "" {
		return "NETPOST_" + name
	}
	return "NETPOST_" + strings.ToUpper(strings.ReplaceAll(association, "-", "_")) + "_" + name
}
