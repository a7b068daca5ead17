package command

import (
	"context"
	"errors"
	"fmt"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

var draftsCommand = command{
	name:    "drafts",
	summary: "list the draft notes that mentors made, to publish or drop them",
	help: "Mentors draft notes from their answers in the channels. A draft that passes every check is published into the folder of the notes, " +
		"dated today, and never over another file; whoever looks after the folder commits it.",
	flags: []flagRow{
		{name: "publish", value: "DRAFT", doc: "publish this one", repeat: true},
		{name: "drop", value: "DRAFT", doc: "drop this one", repeat: true},
		associationFlag, configFlag,
	},
	run: drafts,
}

func drafts(ctx context.Context, w *World, in input) (err error) {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	s, ca, c, err := w.kept(ctx, in)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	a := publishing(c, associationOn("", ca), ca)
	b := bot.New(bot.Options{Store: s, Find: func(bot.Place) (bot.Association, bool) { return a, true }})
	for _, id := range in.values["publish"] {
		n, err := b.PublishDraft(ctx, a, id, operator)
		if bad, ok := errors.AsType[*bot.NotReady](err); ok {
			if err := casebook.Print(w.Stdout, bad.Found); err != nil {
				return err
			}
		}
		if err != nil {
			return fmt.Errorf("--publish %s: %w", visible(id), err)
		}
		if _, err := fmt.Fprintf(w.Stdout, "%s is published as %s\n", id, n.FileName()); err != nil {
			return err
		}
	}
	for _, id := range in.values["drop"] {
		if err := b.DropDraft(ctx, a, id, operator); err != nil {
			return fmt.Errorf("--drop %s: %w", visible(id), err)
		}
		if _, err := fmt.Fprintf(w.Stdout, "%s is dropped\n", id); err != nil {
			return err
		}
	}
	var all []store.Draft
	err = s.Read(ctx, a.ID, func(r store.Reader) (err error) {
		all, err = r.Drafts(store.Drafted)
		return err
	})
	if err != nil {
		return err
	}
	for _, d := range all {
		title := "it can't be read"
		if n, _ := casebook.Parse("draft.md", d.Text); n != nil {
			title = n.ID + " " + n.Title
		}
		if _, err := fmt.Fprintf(w.Stdout, "%s  %s  %s\n", d.ID, d.At.UTC().Format("2006-01-02"), title); err != nil {
			return err
		}
	}
	if len(all) == 0 {
		_, err = fmt.Fprintln(w.Stdout, "no draft waits for a publisher")
	}
	return err
}
