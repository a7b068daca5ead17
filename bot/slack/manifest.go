package slack

import (
	"cmp"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/bot/wire"
)

// scope is a row of the table of what the bot may do.
type scope struct {
	name    string
	must    bool   // it does nothing useful without
	without string // what does not work without it
}

// scopes, sorted by name. There is none that reads what nobody said to the
// bot, and none to write where it was not invited.
var scopes = []scope{
	{"app_mentions:read", false, "it does not hear a message that names it"},
	{"chat:write", true, "it can say nothing in a channel"},
	{"commands", true, "there is no /" + bot.CommandName},
	{"files:write", false, "its answers come without pictures"},
	{"im:history", false, "it does not hear what is written to it directly"},
	{"im:write", false, "it can't begin a direct message"},
	{scopeGroups, false, "nobody gets a role by being in a user group"},
}

// ManifestOptions say what the app is called and how it is reached.
type ManifestOptions struct {
	Name string // shown in the workspace, at most 35 letters; empty: netpost
	// URL is the public https address that leads to Listen and Path. Empty:
	// Socket Mode.
	URL string
	// Groups asks for the scope that tells who is in a user group, which only
	// roles that are given to groups need.
	Groups bool
}

// Manifest is the app's manifest in YAML: what is pasted in when the app is
// made. The same options give the same bytes.
func Manifest(o ManifestOptions) string {
	name := cmp.Or(wire.Clip(wire.Line(o.Name), 35), bot.CommandName)
	var b strings.Builder
	w := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	at := func(indent, key string) {
		if o.URL != "" {
			w("%s%s: %s", indent, key, quote(o.URL))
		}
	}
	w("_metadata:")
	w("  major_version: 1")
	w("  minor_version: 1")
	w("display_information:")
	w("  name: %s", quote(name))
	w("  description: %s", quote("Rulings on volleyball plays, with the rule and the reason"))
	w("features:")
	w("  app_home:")
	w("    home_tab_enabled: false")
	w("    messages_tab_enabled: true")
	w("    messages_tab_read_only_enabled: false")
	w("  bot_user:")
	w("    display_name: %s", quote(name))
	w("    always_online: false")
	w("  slash_commands:")
	w("    - command: %s", quote("/"+bot.CommandName))
	w("      description: %s", quote("Rule on a play"))
	w("      usage_hint: %s", quote(usage()))
	// Names typed into a play stay words: no ids of people come with it.
	w("      should_escape: false")
	at("      ", "url")
	w("  shortcuts:")
	w("    - name: %s", quote("Rule on this"))
	w("      type: message")
	w("      callback_id: %s", shortcutID)
	w("      description: %s", quote("Rule on the play in this message"))
	w("oauth_config:")
	w("  scopes:")
	w("    bot:")
	for _, s := range scopes {
		if s.name == scopeGroups && !o.Groups {
			continue
		}
		w("      - %s", quote(s.name))
	}
	w("settings:")
	w("  event_subscriptions:")
	at("    ", "request_url")
	w("    bot_events:")
	w("      - app_mention")
	w("      - message.im")
	w("  interactivity:")
	w("    is_enabled: true")
	at("    ", "request_url")
	w("  org_deploy_enabled: false")
	w("  socket_mode_enabled: %t", o.URL == "")
	w("  token_rotation_enabled: false")
	return b.String()
}

// usage is what can be said after the command.
func usage() string {
	var names []string
	for _, c := range bot.Commands() {
		names = append(names, c.Name)
	}
	return wire.Clip("[play] or "+strings.Join(names, ", "), 100)
}

// quote is a text as YAML: JSON's way of quoting is one of YAML's.
func quote(s string) string {
	b, err := json.Marshal(s)
	if err != nil {
		panic(err) // a string has no errors
	}
	return string(b)
}
