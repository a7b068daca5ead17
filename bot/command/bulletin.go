package command

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/casebook"
	"example.org/netpost/casebook/demo"
	"example.org/netpost/config"
)

var bulletinCommand = command{
	name:    "bulletin",
	summary: "print a week's bulletin: its notes, what was asked most, what is in dispute",
	help: "Without a week it is the last one that is over. With --post it is queued for the channels of the settings, to each once; it goes out when " +
		"serve runs. An empty one is not posted. Nothing is counted that fewer than three people asked.",
	flags: []flagRow{
		{name: "week", value: "WEEK", doc: "the week, such as 2026-W47"},
		{name: "out", value: "DIR", doc: "also write it to this folder, as Markdown and as HTML"},
		{name: "post", doc: "post it to the channels of the settings"},
		associationFlag, configFlag,
	},
	run: bulletin,
}

func bulletin(ctx context.Context, w *World, in input) (err error) {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many; name the week with --week", visible(in.words[0]))
	}
	c, ca, err := w.association(in)
	if err != nil {
		return err
	}
	a := publishing(c, associationOn("", ca), ca)
	week := a.LastWeek(time.Now())
	if s := in.get("week"); s != "" {
		if week, err = bot.ParseWeek(s); err != nil {
			return fmt.Errorf("--week: %w", err)
		}
	}
	var book *casebook.Book
	if a.Book != nil {
		if book, err = a.Book(); err != nil {
			return err
		}
	}
	var s store.Store
	_, err = os.Stat(c.Store)
	switch {
	case err == nil:
		if s, err = sqlite.Open(ctx, c.Store, sqlite.Options{}); err != nil {
			return err
		}
		defer func() { err = errors.Join(err, s.Close()) }()
	case !errors.Is(err, fs.ErrNotExist):
		return err
	case in.has("post"):
		return fmt.Errorf("--post: there is no store %s yet; serve makes it", visible(c.Store))
	}
	var b bot.Bulletin
	if s == nil {
		b, _, err = bot.BulletinOf(a, week, book, nil)
	} else {
		err = s.Read(ctx, a.ID, func(r store.Reader) (err error) {
			b, _, err = bot.BulletinOf(a, week, book, r)
			return err
		})
	}
	if err != nil {
		return err
	}
	if b.Empty() {
		_, err = fmt.Fprintf(w.Stdout, "%s: nothing to tell, so there is none\n", week)
		return err
	}
	if _, err := io.WriteString(w.Stdout, b.Markdown()); err != nil {
		return err
	}
	if dir := in.get("out"); dir != "" {
		if err := writeBulletin(dir, b); err != nil {
			return fmt.Errorf("--out: %w", err)
		}
	}
	if !in.has("post") {
		return nil
	}
	if len(a.BulletinTo) == 0 {
		return errors.New("--post: no channel is set for bulletins; name bulletin_channels in the settings")
	}
	queued := 0
	err = s.Write(ctx, a.ID, func(wr store.Writer) (err error) {
		queued, err = bot.PublishBulletin(a, b, a.BulletinTo, operator, time.Now(), wr)
		return err
	})
	if err == nil {
		_, err = fmt.Fprintf(w.Stdout, "\nqueued for %s\n", count(queued, "channel"))
	}
	return err
}

// writeBulletin writes a bulletin's two files.
func writeBulletin(dir string, b bot.Bulletin) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return err
	}
	name := filepath.Join(dir, "bulletin-"+strings.ToLower(b.Week))
	if err := os.WriteFile(name+".md", []byte(b.Markdown()), 0o644); err != nil {
		return err
	}
	return os.WriteFile(name+".html", []byte(b.HTML()), 0o644)
}

// publishing adds to an association what its bulletins need: the casebook, the
// channels of every platform, and the schedule.
func publishing(c config.Config, out bot.Association, a config.Association) bot.Association {
	switch {
	case a.Casebook != "":
		out.Book = func() (*casebook.Book, error) {
			if i, err := os.Stat(a.Casebook); err != nil || !i.IsDir() {
				return nil, fmt.Errorf("there is no folder %s", visible(a.Casebook))
			}
			b, _ := casebook.LoadDir(a.Casebook, casebook.LoadOptions{})
			return b, nil
		}
		out.Publish = func(n *casebook.Note) error { return casebook.Publish(a.Casebook, n) }
	case c.File == "":
		out.Book = func() (*casebook.Book, error) { return demo.Book(), nil }
		if n := demo.Book().Association; n != nil {
			out.Name = n.Name
		}
	}
	for _, ch := range a.Slack.Channels.Bulletin {
		out.BulletinTo = append(out.BulletinTo, bot.Place{Platform: "slack", Workspace: a.Slack.Workspace, Channel: ch})
	}
	for _, ch := range a.Guild.Channels.Bulletin {
		out.BulletinTo = append(out.BulletinTo, bot.Place{Platform: "discord", Workspace: a.Guild.ID, Channel: ch})
	}
	out.Bulletin = bot.Schedule{Zone: a.Bulletin.Zone, At: a.Bulletin.Time}
	for d := time.Sunday; d <= time.Saturday; d++ {
		if strings.EqualFold(d.String(), a.Bulletin.Day) {
			out.Bulletin.Day, out.Bulletin.On = d, true
		}
	}
	return out
}
