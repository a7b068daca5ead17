// Package config reads the settings: one strict file in YAML, and the
// environment for secrets.
//
//	c, found := config.Load("netpost.yaml", os.Getenv)
//	for _, f := range found {
//		fmt.Println(f) // netpost.yaml:7: associations[0].code: …; write …
//	}
//
// Without a file there is one association, on the local channels only. Every
// key stands in one table with its default and what it is for; Reference
// prints it. Paths, also those by default, are relative to the file's own folder.
package config

import (
	"log/slog"
	"time"
)

// DefaultFile is the name of the file that is read when none is named.
const DefaultFile = "netpost.yaml"

// Config is all settings.
type Config struct {
	File string // the file that they come from; empty: none

	Store string // the file of the store
	Index string // the folder of the search index
	Log   slog.Level

	Listen  string // address for the platforms' signed requests; empty: off
	Metrics string // address for health and metrics; empty: off
	Web     string // address of the local web channel; empty: off

	WebURL   string // the address that people use for it; empty: its own
	WebToken Secret // what they must give to come in; needed where others can reach it

	Retention time.Duration // how long questions are kept; 0: for ever
	Claim     time.Duration // when a mentor's claim lapses
	Nudge     time.Duration // when mentors are reminded of an open call

	Local        string // id of the association that the local channels serve
	Discord      Discord
	Associations []Association // at least one
}

// Discord is the one application for all guilds.
type Discord struct {
	Mode        string // gateway or http
	Application string // the application's id, for http; empty: the gateway tells it
	PublicKey   string // in hex, for http
	Token       Secret
}

// Association is one crew with its own notes, channels and people.
type Association struct {
	ID       string
	Name     string // empty: the id
	Casebook string // the folder of its notes; empty: none
	Code     string // the rule code that it works under; empty: all
	Season   string // such as 2026-27; empty: the newest
	Pages    string // the address of its notes' pages, with a slash at its end; empty: they have none but the web channel's
	Private  bool   // answers go to the asker alone unless they say otherwise
	Bulletin Bulletin
	Slack    Slack // on Slack when Workspace is not empty
	Guild    Guild // on Discord when ID is not empty
}

// Bulletin says when the weekly bulletin is posted by itself.
type Bulletin struct {
	Day  string         // such as monday; empty: only when a publisher posts it
	Time time.Duration  // after midnight
	Zone *time.Location // never nil
}

// Slack is an association's workspace with the app in it.
type Slack struct {
	Workspace     string
	Mode          string // socket or http
	Channels      Channels
	Mentors       People
	Publishers    People
	AppToken      Secret // for socket
	BotToken      Secret
	SigningSecret Secret // for http
}

// Guild is an association's guild on Discord.
type Guild struct {
	ID         string
	Channels   Channels
	Mentors    People
	Publishers People
}

// Channels are the ids of channels.
type Channels struct {
	Ask      []string // where the bot answers; none: wherever it was invited
	Mentors  string   // where questions wait for a mentor; empty: nowhere
	Bulletin []string // where bulletins are posted
}

// People are those who have a role: everybody in one of the groups, and
// single users.
type People struct {
	Groups []string // Slack's user groups or Discord's roles
	Users  []string
}

// Association finds an association by its id.
func (c Config) Association(id string) (Association, bool) {
	for _, a := range c.Associations {
		if a.ID == id {
			return a, true
		}
	}
	return Association{}, false
}
