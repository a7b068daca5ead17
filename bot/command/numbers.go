package command

import (
	"context"
	"fmt"
	"io"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

var numbersCommand = command{
	name:    "numbers",
	summary: "count what was asked: topics, deciding facts, disputes, unlinked notes, unread phrases, agreement",
	help: "It counts the questions that are kept, and names no asker. Topics, facts and disputes are counted only where three people or more asked; " +
		"phrases that were not read are listed as they were said, for whoever teaches the program words. Where a crew ruled together it counts plays, calls and calls that were as the ruling, by season and channel.",
	flags: []flagRow{
		{name: "csv", doc: "print rows of comma-separated values: what is counted, which, how many"},
		associationFlag, configFlag,
	},
	run: numbers,
}

func numbers(ctx context.Context, w *World, in input) error {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	s, ca, c, err := w.kept(ctx, in)
	if err != nil {
		return err
	}
	defer s.Close()
	a := publishing(c, associationOn("", ca), ca)
	var book *casebook.Book
	if a.Book != nil {
		if book, err = a.Book(); err != nil {
			return err
		}
	}
	var ns []bot.Number
	err = s.Read(ctx, a.ID, func(r store.Reader) (err error) {
		ns, err = bot.Numbers(r, book)
		return err
	})
	if err != nil {
		return err
	}
	if in.has("csv") {
		_, err := io.WriteString(w.Stdout, bot.NumbersCSV(ns))
		return err
	}
	for _, n := range ns {
		if _, err := fmt.Fprintf(w.Stdout, "%-20s %6d  %s\n", n.Counted, n.Count, n.Value); err != nil {
			return err
		}
	}
	if len(ns) == 0 {
		_, err = fmt.Fprintln(w.Stdout, "nothing is counted yet")
	}
	return err
}
