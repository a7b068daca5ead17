package command

import (
	"context"
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/bot/store"
	"example.org/netpost/casebook"
)

var numbersCommand = command{
	name:    "numbers",
	summary: "count what was asked: topics, deciding facts, disputes, unlinked notes, unread phrases",
	help: "It counts the questions that are kept, and names no asker. Topics, facts and disputes are counted only where three people or more asked; " +
		"phrases that were not read are listed as they were said, for whoever teaches the program words.",
	flags: []flagRow{
		{name: "csv", doc: "print rows of comma-separated values: what is counted, its value, questions"},
		associationFlag, configFlag,
	},
	run: numbers,
}

// leastAskers is how many different people must have asked something that is
// counted.
const leastAskers = 3

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
	rows := [][]string{{"counted", "value", "questions"}}
	err = s.Read(ctx, a.ID, func(r store.Reader) error {
		for _, k := range []struct {
			title string
			kind  store.TagKind
			least int
		}{
			{"topic", store.Topic, leastAskers}, {"deciding fact", store.Deciding, leastAskers},
			{"in dispute", store.Disputed, leastAskers}, {"not read", store.Unread, 0},
		} {
			counts, err := r.Tally(k.kind, store.Span{}, k.least)
			if err != nil {
				return err
			}
			for _, n := range counts {
				rows = append(rows, []string{k.title, bot.TagWords(k.kind, n.Value), strconv.Itoa(n.Questions)})
			}
		}
		linked, err := r.Tally(store.Linked, store.Span{}, 0)
		if err != nil || a.Book == nil {
			return err
		}
		book, err := a.Book()
		if err != nil {
			return err
		}
		for _, n := range book.Notes() {
			if n.Status == casebook.Published && !slices.ContainsFunc(linked, func(l store.Count) bool { return l.Value == n.ID }) {
				rows = append(rows, []string{"note never linked", n.ID + " " + n.Title, "0"})
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	if in.has("csv") {
		for _, r := range rows {
			if strings.ContainsAny(r[1][:min(1, len(r[1]))], "=+-@") {
				r[1] = "'" + r[1] // else a spreadsheet computes with what somebody said
			}
		}
		out := csv.NewWriter(w.Stdout)
		return out.WriteAll(rows)
	}
	for _, r := range rows[1:] {
		if _, err := fmt.Fprintf(w.Stdout, "%-18s %6s  %s\n", r[0], r[2], r[1]); err != nil {
			return err
		}
	}
	if len(rows) == 1 {
		_, err = fmt.Fprintln(w.Stdout, "nothing is counted yet")
	}
	return err
}
