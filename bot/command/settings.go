package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/netpost/bot"
	"example.org/netpost/bot/discord"
	"example.org/netpost/bot/slack"
	"example.org/netpost/bot/term"
	"example.org/netpost/bot/web"
	"example.org/netpost/config"
	"example.org/netpost/engine/code"
)

// configFlag names the file of settings.
var configFlag = flagRow{name: "config", value: "FILE", doc: "the file of settings; when left out NETPOST_CONFIG names it, else it is " + config.DefaultFile + " where there is one"}

// settingsFile is the file of settings to read, empty where there is none to.
func (w *World) settingsFile(in input) string {
	if f := in.get(configFlag.name); f != "" {
		return f
	}
	if f := w.Env("NETPOST_CONFIG"); f != "" {
		return f
	}
	if _, err := os.Stat(config.DefaultFile); !errors.Is(err, fs.ErrNotExist) {
		return config.DefaultFile // one that can't be read is an error, not a file that is not there
	}
	return ""
}

// settings reads the settings. The error names the first thing that is wrong.
func (w *World) settings(in input) (config.Config, error) {
	c, found := config.Load(w.settingsFile(in), w.Env)
	switch {
	case len(found) == 1:
		return c, found[0]
	case len(found) > 1:
		return c, fmt.Errorf("%w (the first of %d; for all: netpost doctor)", found[0], len(found))
	}
	return c, nil
}

// home is the association that the local channels and the command line are for.
func home(c config.Config) config.Association {
	a, ok := c.Association(c.Local)
	if !ok {
		panic("command: settings without an association: " + c.Local)
	}
	return a
}

// crew is what a command line rules for and searches in: the association of
// the settings that the local channels are for, as far as flags don't say
// otherwise. The zero value is nobody's.
type crew struct {
	code     code.Code
	season   code.Season
	casebook string // the folder of its notes; empty: the invented ones
	index    string // the folder of their index; empty: in the user's cache
	pages    string // where their pages are; empty: nowhere
}

// crew reads the settings for a command line.
func (w *World) crew(in input) (crew, error) {
	c, err := w.settings(in)
	if err != nil {
		return crew{}, err
	}
	a := home(c)
	out := crew{code: codeOf(a), season: seasonOf(a), casebook: a.Casebook}
	if out.casebook != "" {
		out.index, out.pages = indexDir(c, a), a.Pages
	}
	if dir := in.get(casebookFlag.name); dir != "" {
		out.casebook, out.index, out.pages = dir, "", ""
	}
	return out, nil
}

// adoptions are those of the crew's own book; none without a casebook.
func (c crew) adoptions() ([]code.Overlay, error) {
	if c.casebook == "" {
		return nil, nil
	}
	root, err := os.OpenRoot(c.casebook)
	if err != nil {
		return nil, fmt.Errorf("the casebook can't be read: %w; name the folder that holds the notes", err)
	}
	defer root.Close()
	return adoptions(root.FS()), nil
}

// codeOf and seasonOf are an association's settings as the engine has them;
// the settings were checked when they were read.
func codeOf(a config.Association) code.Code { return code.Code(a.Code) }

func seasonOf(a config.Association) code.Season {
	s, err := code.ParseSeason(a.Season)
	if err != nil {
		return 0
	}
	return s
}

// indexDir is where an association's index is kept; empty: in the user's cache.
func indexDir(c config.Config, a config.Association) string {
	if c.File == "" {
		return ""
	}
	return filepath.Join(c.Index, a.ID)
}

// associationOn is an association as one platform sees it, without its notes.
func associationOn(platform string, a config.Association) bot.Association {
	out := bot.Association{ID: a.ID, Name: a.Name, Code: codeOf(a), Season: seasonOf(a), Private: a.Private}
	if out.Name == "" {
		out.Name = a.ID
	}
	grant := func(r bot.Role, p config.People) {
		for _, to := range append(append([]string{}, p.Groups...), p.Users...) {
			out.Grants = append(out.Grants, bot.Grant{Role: r, To: to})
		}
	}
	out.Mentors = mentorsOn(platform, a)
	switch platform {
	case slack.Platform:
		out.Channels = a.Slack.Channels.Ask
		grant(bot.Mentor, a.Slack.Mentors)
		grant(bot.Publisher, a.Slack.Publishers)
	case discord.Platform:
		out.Channels = a.Guild.Channels.Ask
		grant(bot.Mentor, a.Guild.Mentors)
		grant(bot.Publisher, a.Guild.Publishers)
	case term.Platform:
		// Whoever sits at this machine may be anybody: ":as kim mentor".
		grant(bot.Mentor, config.People{Groups: []string{bot.Mentor.String()}})
		grant(bot.Publisher, config.People{Groups: []string{bot.Publisher.String()}})
	}
	return out
}

// everyone lists the associations as what is done unasked sees them: with the
// channels of every platform.
func everyone(c config.Config, notesOf func(id string) *library) func() []bot.Association {
	return func() []bot.Association {
		var out []bot.Association
		for _, a := range c.Associations {
			all := publishing(c, associationOn("", a), a)
			if l := notesOf(a.ID); l != nil {
				all.Notes, all.Overlays = l, l.adopted()
			}
			out = append(out, all)
		}
		return out
	}
}

// mentorsOn is where questions of a platform wait for a mentor: in the channel
// that the association has for them there, else in that on the other platform.
func mentorsOn(platform string, a config.Association) bot.Place {
	var all []bot.Place
	add := func(platform, workspace, channel string) {
		if workspace != "" && channel != "" {
			all = append(all, bot.Place{Platform: platform, Workspace: workspace, Channel: channel})
		}
	}
	add(slack.Platform, a.Slack.Workspace, a.Slack.Channels.Mentors)
	add(discord.Platform, a.Guild.ID, a.Guild.Channels.Mentors)
	switch platform {
	case term.Platform:
		return bot.Place{Platform: term.Platform, Workspace: term.Workspace, Channel: "mentors"}
	case web.Platform: // it has one channel, and mentors find their queue by command
		return bot.Place{}
	}
	for _, p := range all {
		if p.Platform == platform {
			return p
		}
	}
	if len(all) > 0 {
		return all[0]
	}
	return bot.Place{}
}

// finder tells which association a place belongs to. Notes and adoptions are
// put in by notesOf.
func finder(c config.Config, notesOf func(id string) *library) func(bot.Place) (bot.Association, bool) {
	onDiscord := 0
	for _, a := range c.Associations {
		if a.Guild.ID != "" {
			onDiscord++
		}
	}
	is := func(a config.Association, p bot.Place) bool {
		switch p.Platform {
		case slack.Platform:
			return a.Slack.Workspace != "" && a.Slack.Workspace == p.Workspace
		case discord.Platform:
			// A direct message is in no guild: with one crew it is clear whose it is.
			return a.Guild.ID != "" && (a.Guild.ID == p.Workspace || p.Workspace == "" && onDiscord == 1)
		case term.Platform, web.Platform:
			return a.ID == c.Local
		}
		return false
	}
	return func(p bot.Place) (bot.Association, bool) {
		for _, a := range c.Associations {
			if !is(a, p) {
				continue
			}
			out := publishing(c, associationOn(p.Platform, a), a)
			if l := notesOf(a.ID); l != nil {
				out.Notes, out.Overlays = l, l.adopted()
			}
			return out, true
		}
		return bot.Association{}, false
	}
}
