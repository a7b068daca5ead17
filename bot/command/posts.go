package command

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/bot/store/sqlite"
	"example.org/netpost/config"
)

var postsCommand = command{
	name:    "posts",
	summary: "list what may have been posted or not, to send it again or drop it",
	help: "A post is marked before it is sent. One that a kill or a broken line leaves marked may be out: it is listed here, and never sent again " +
		"by itself. Look at its channel, then say what becomes of it; what is to be sent again goes out when serve runs, within a quarter of a minute.",
	flags: []flagRow{
		{name: "resend", value: "KEY", doc: "send this one again", repeat: true},
		{name: "drop", value: "KEY", doc: "leave this one as it is, and list it no more", repeat: true},
		associationFlag, configFlag,
	},
	run: posts,
}

// associationFlag names one of several associations.
var associationFlag = flagRow{name: "association", value: "ID", doc: "the association of the settings; when left out the one that the local channels are for"}

// operator is whoever gives a command on this machine.
var operator = bot.Person{Platform: "local", ID: "operator"}

// kept opens the store of the settings and finds the association that a
// command is for. It is an error where there is no store yet.
func (w *World) kept(ctx context.Context, in input) (store.Store, config.Association, config.Config, error) {
	c, a, err := w.association(in)
	if err != nil {
		return nil, a, c, err
	}
	if _, err := os.Stat(c.Store); errors.Is(err, fs.ErrNotExist) {
		return nil, a, c, fmt.Errorf("there is no store %s yet: nothing was asked; serve makes it", visible(c.Store))
	}
	s, err := sqlite.Open(ctx, c.Store, sqlite.Options{})
	return s, a, c, err
}

// association is the one of the settings that a command is for.
func (w *World) association(in input) (config.Config, config.Association, error) {
	c, err := w.settings(in)
	if err != nil {
		return c, config.Association{}, err
	}
	if id := in.get(associationFlag.name); id != "" {
		a, ok := c.Association(id)
		if !ok {
			return c, a, fmt.Errorf("there is no association %s in the settings", visible(id))
		}
		return c, a, nil
	}
	return c, home(c), nil
}

func posts(ctx context.Context, w *World, in input) error {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	s, a, _, err := w.kept(ctx, in)
	if err != nil {
		return err
	}
	defer s.Close()
	for _, d := range []struct {
		flag string
		done string
	}{{"resend", "is to be sent again"}, {"drop", "is dropped"}} {
		for _, key := range in.values[d.flag] {
			err := s.Write(ctx, a.ID, func(w store.Writer) error {
				return bot.DecidePost(w, key, d.flag == "resend", operator, time.Now())
			})
			if err != nil {
				return fmt.Errorf("--%s %s: %w", d.flag, visible(key), err)
			}
			if _, err := fmt.Fprintf(w.Stdout, "%s %s\n", key, d.done); err != nil {
				return err
			}
		}
	}
	var waiting []store.Post
	err = s.Read(ctx, a.ID, func(r store.Reader) (err error) {
		waiting, err = r.Posts(store.Doubt, store.Failed)
		return err
	})
	if err != nil {
		return err
	}
	n := 0
	for _, p := range waiting {
		if !bot.Waiting(p) {
			continue
		}
		n++
		if _, err := fmt.Fprintf(w.Stdout, "%s\n    %s\n", p.Key, bot.DescribePost(p)); err != nil {
			return err
		}
	}
	if n == 0 {
		_, err = fmt.Fprintln(w.Stdout, "no post waits for a decision")
	}
	return err
}
