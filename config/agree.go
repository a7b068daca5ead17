package config

import (
	"fmt"
	"io"
	"net"
	"os"
	"strings"

	"go.yaml.in/yaml/v3"
)

// agree reports settings that do not go together.
func (r *reader) agree(c *Config) {
	at := func(field string) *yaml.Node { return &yaml.Node{Line: r.lines[field]} }
	twice := func(what, value, field string, seen map[string]string) {
		if value == "" {
			return
		}
		if other := seen[value]; other != "" {
			r.report(at(field), field, fmt.Sprintf("%s has the same %s", other, what), "give each its own")
			return
		}
		seen[value] = field
	}
	idSeen, teams, guilds, vars := map[string]string{}, map[string]string{}, map[string]string{}, map[string]string{}
	discord := false
	for i, a := range c.Associations {
		field := fmt.Sprintf("associations[%d]", i)
		twice("id", a.ID, field+".id", idSeen)
		twice("workspace", a.Slack.Workspace, field+".slack.workspace", teams)
		twice("guild", a.Guild.ID, field+".discord.guild", guilds)
		if name := variable(a.ID, ""); a.ID != "" && idSeen[a.ID] == field+".id" {
			if vars[name] != "" {
				r.report(at(field+".id"), field+".id", "its variables in the environment are named as those of "+vars[name], "choose an id that differs by more than a hyphen")
			}
			vars[name] = field + ".id"
		}
		discord = discord || a.Guild.ID != ""
		if b := a.Bulletin; b.Day != "" && len(a.Slack.Channels.Bulletin)+len(a.Guild.Channels.Bulletin) == 0 {
			f := field + ".bulletin.day"
			r.report(at(f), f, "there is no channel to post the bulletin to", "name bulletin_channels under slack or discord, or take the day out")
		}
		if a.Slack.Workspace != "" && a.Slack.Mode == "http" && c.Listen == "" {
			f := field + ".slack.mode"
			r.report(at(f), f, "in http mode Slack calls listen, which is off", "give listen an address, or use socket mode")
		}
	}
	if _, ok := c.Association(c.Local); !ok && r.lines["local"] > 0 {
		r.report(at("local"), "local", fmt.Sprintf("there is no association %s", quote(c.Local)), "write the id of one of the associations")
	}
	if d := c.Discord; discord && d.Mode == "http" {
		if c.Listen == "" {
			r.report(at("discord.mode"), "discord.mode", "in http mode Discord calls listen, which is off", "give listen an address, or use gateway mode")
		}
		if d.PublicKey == "" {
			r.report(at("discord"), "discord.public_key", "http mode needs the application's public key", "add it, or use gateway mode")
		}
		if d.Application == "" {
			r.report(at("discord"), "discord.application", "http mode needs the application's id", "add it, or use gateway mode")
		}
	}
	if c.Web != "" && !Loopback(c.Web) && c.WebURL == "" {
		r.report(at("web"), "web", c.Web+" can be reached from other machines, and there is no web_url", "set web_url to the address that people use, or give an address of this machine alone, such as 127.0.0.1:8081, or off")
	}
	seen := map[string]string{}
	for _, s := range []struct{ key, value string }{{"listen", c.Listen}, {"metrics", c.Metrics}, {"web", c.Web}} {
		if _, port, _ := net.SplitHostPort(s.value); port != "0" { // 0 is any free one
			twice("address", s.value, s.key, seen)
		}
	}
}

// shortest is the fewest characters of an access token.
const shortest = 16

// Loopback reports whether an address can be reached from this machine only.
func Loopback(address string) bool {
	host, _, err := net.SplitHostPort(address)
	ip := net.ParseIP(host)
	return err == nil && (host == "localhost" || ip != nil && ip.IsLoopback())
}

// secrets reads the secrets: from the file that the settings name, or from the
// environment.
func (r *reader) secrets(c *Config, env func(string) string) {
	onSlack := 0
	for _, a := range c.Associations {
		if a.Slack.Workspace != "" {
			onSlack++
		}
	}
	for _, k := range keys {
		if k.env == "" {
			continue
		}
		name, inAssociation := strings.CutPrefix(k.path, "associations[].")
		if !inAssociation {
			r.secret(k.at(place{c: c}).(*Secret), k.path, env, variable("", k.env))
			continue
		}
		for i := range c.Associations {
			a := &c.Associations[i]
			vars := []string{variable(a.ID, k.env)}
			if onSlack == 1 && a.Slack.Workspace != "" {
				vars = append(vars, variable("", k.env))
			}
			r.secret(k.at(place{c, a}).(*Secret), fmt.Sprintf("associations[%d].%s", i, name), env, vars...)
		}
	}
}

// secret reads one secret. What is wrong with it is kept with it.
func (r *reader) secret(s *Secret, field string, env func(string) string, vars ...string) {
	file := r.files[s]
	s.env = vars[len(vars)-1]
	bad := func(what, mend string) {
		s.text, s.bad = nil, &Finding{Path: r.file, Line: r.lines[field], Field: field, What: what, Mend: mend}
	}
	for _, v := range vars {
		text := strings.TrimSpace(env(v))
		if text == "" {
			continue
		}
		if file != "" {
			bad("the variable "+v+" is set too", "unset it, or take this key out")
			return
		}
		s.text = &text
		return
	}
	if file == "" {
		return
	}
	f, err := os.Open(file)
	if err != nil {
		bad(file+": "+cant(err), "name a file that this program can read")
		return
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, 4097))
	text := strings.TrimSpace(string(data))
	switch {
	case err != nil:
		bad(file+": "+cant(err), "name a file that this program can read")
	case len(data) > 4096 || strings.ContainsAny(text, " \t\r\n"):
		bad(file+" holds more than one secret", "put the secret alone in the file")
	case text == "":
		bad(file+" is empty", "put the secret in the file")
	default:
		s.text = &text
	}
}

// Secrets reports the secrets that serving needs and that are not there, could
// not be read, or are of another kind.
func (c Config) Secrets() []Finding {
	var found []Finding
	need := func(s Secret, field, what, opening, where string) {
		switch {
		case s.bad != nil:
			found = append(found, *s.bad)
		case !s.IsSet():
			found = append(found, Finding{Path: c.File, Field: field, What: what + " is missing", Mend: "set " + s.env + " in the environment or name a file with this key; it is " + where})
		case !strings.HasPrefix(s.Reveal(), opening):
			found = append(found, Finding{Path: c.File, Field: field, What: fmt.Sprintf("%s begins with %s, and this does not", what, opening), Mend: "take the right one: it is " + where})
		}
	}
	const own = "of your own making, and nobody can guess it"
	switch {
	case c.Web == "":
	case !Loopback(c.Web):
		need(c.WebToken, "web_token_file", "the access token of the web channel", "", own)
	case c.WebToken.bad != nil:
		found = append(found, *c.WebToken.bad)
	}
	if n := len(c.WebToken.Reveal()); n > 0 && n < shortest && c.Web != "" {
		found = append(found, Finding{Path: c.File, Field: "web_token_file", What: fmt.Sprintf("the access token of the web channel has fewer than %d characters", shortest), Mend: "make a longer one; it is " + own})
	}
	discord := false
	for i, a := range c.Associations {
		discord = discord || a.Guild.ID != ""
		if a.Slack.Workspace == "" {
			continue
		}
		field := fmt.Sprintf("associations[%d].slack.", i)
		need(a.Slack.BotToken, field+"bot_token_file", "the bot token", "xoxb-", "on the app's page OAuth & Permissions")
		if a.Slack.Mode == "http" {
			need(a.Slack.SigningSecret, field+"signing_secret_file", "the signing secret", "", "on the app's page Basic Information")
		} else {
			need(a.Slack.AppToken, field+"app_token_file", "the app-level token", "xapp-", "on the app's page Basic Information, with the scope connections:write")
		}
	}
	if discord {
		need(c.Discord.Token, "discord.token_file", "the bot's token", "", "on the application's page Bot")
	}
	return found
}
