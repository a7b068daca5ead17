package command

import (
	"context"
	"fmt"
	"time"

	"example.org/netpost/casebook"
	"example.org/netpost/casebook/pages"
)

var exportCommand = command{
	name:    "export",
	args:    "DIR",
	summary: "write the case notes as pages that any web server, or none, can show",
	help: "The folder is made, or was written by an earlier export, of which what is not there any more is deleted; a folder with other files in it is " +
		"refused. Each note has a page under its id, with the play proven; there are lists by season, rule and topic, the bulletins, a " +
		"search and a feed. All links are relative. Drafts are left out.",
	flags: []flagRow{
		associationFlag, casebookFlag, configFlag,
		{name: "today", value: "DATE", doc: "the day that the pages are made for, like 2026-11-15; today when left out"},
	},
	run: export,
}

func export(_ context.Context, w *World, in input) error {
	if len(in.words) != 1 {
		return fmt.Errorf("needs the one folder to write to, such as: netpost export public")
	}
	c, a, err := w.association(in)
	if err != nil {
		return err
	}
	o := pages.Options{On: casebook.DateOf(time.Now()), URL: a.Pages}
	if s := in.get("today"); s != "" {
		if o.On, err = casebook.ParseDate(s); err != nil {
			return fmt.Errorf("--today: %w", err)
		}
	}
	dir := a.Casebook
	if d := in.get(casebookFlag.name); d != "" {
		dir = d
	}
	if dir == "" && c.File != "" {
		return fmt.Errorf("%s has no casebook in the settings; name the folder of its notes with --casebook", a.ID)
	}
	made, found, err := site(a, dir, o)
	if err != nil {
		return err
	}
	if err := made.Write(in.words[0]); err != nil {
		return err
	}
	if len(found) > 0 {
		fmt.Fprintf(w.Stderr, "netpost: %d things are wrong in the casebook, first %s; for all: netpost check %s\n", len(found), found[0], dir)
	}
	_, err = fmt.Fprintf(w.Stdout, "%s: %s of %s\n", in.words[0], count(len(made.Paths()), "file"), count(made.Len(), "note"))
	return err
}
