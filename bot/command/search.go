package command

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/engine/code"
)

var searchCommand = command{
	name:    "search",
	args:    "WORDS...",
	summary: "find case notes by words, by rule number, or by a play",
	help: "A play is read and ruled on, and finds the notes on plays like it. A superseded note leads to the one " +
		"that replaced it. With --all drafts, superseded and withdrawn notes are searched as they are.",
	flags: []flagRow{
		{name: "code", value: "CODE", doc: "only notes about one code: " + codeList()},
		{name: "season", value: "SEASON", doc: "as of that season, like 2025-26; as of now when left out"},
		{name: "limit", value: "N", doc: fmt.Sprintf("how many notes to give, 1 to %d; %d when left out", mostNotes, defaultNotes)},
		{name: "all", doc: "also drafts and what is no longer in force"},
		casebookFlag, configFlag,
		{name: "json", doc: "print the notes as one JSON array"},
	},
	run: search,
}

// How many notes a search gives.
const (
	defaultNotes = 5
	mostNotes    = 100
)

// foundNote is a note as search prints it in JSON.
type foundNote struct {
	ID      string      `json:"id"`
	Title   string      `json:"title"`
	URL     *string     `json:"url"`
	Why     []string    `json:"why"`
	Codes   []code.Code `json:"codes"`
	Season  string      `json:"season"`
	Status  string      `json:"status"`
	Snippet string      `json:"snippet"`
	Departs string      `json:"departs,omitempty"`
	Example bool        `json:"example,omitempty"`
}

func search(ctx context.Context, w *World, in input) error {
	if len(in.words) == 0 {
		return errors.New("needs words to search for: netpost search setter over the net")
	}
	o, err := options(in.get("code"), in.get("season"), nil)
	if err != nil {
		return err
	}
	limit := defaultNotes
	if s := in.get("limit"); s != "" {
		if limit, err = strconv.Atoi(s); err != nil || limit < 1 || limit > mostNotes {
			return fmt.Errorf("--limit %s: give a number from 1 to %d", visible(s), mostNotes)
		}
	}
	crew, err := w.crew(in)
	if err != nil {
		return err
	}
	n, err := openNotes(ctx, w, crew)
	if err != nil {
		return err
	}
	defer n.close()
	found, err := n.Notes(ctx, bot.Question{
		Words: strings.Join(in.words, " "), Code: cmp.Or(o.Code, crew.code), Season: cmp.Or(o.Season, crew.season), Limit: limit, All: in.has("all"),
	})
	if err != nil {
		return err
	}
	if in.has("json") {
		return encode(w.Stdout, foundNotes(found))
	}
	return w.print(bot.Notes(found))
}

func foundNotes(found []bot.Note) []foundNote {
	out := []foundNote{}
	for _, n := range found {
		f := foundNote{
			ID: n.ID, Title: n.Title, Why: n.Why, Codes: n.Codes, Season: n.Season.String(), Status: n.Status.String(),
			Snippet: n.Snippet.String(), Departs: n.Departs, Example: n.Example,
		}
		if n.URL != "" {
			f.URL = &n.URL
		}
		out = append(out, f)
	}
	return out
}
