package command

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

var askCommand = command{
	name:    "ask",
	args:    "WORDS...",
	summary: "rule on a play told in words",
	help: "Without a code the play is ruled on under all of them. With --batch it reads questions from standard input, " +
		`a JSON object a line: {"id","text","code","edition","given"}, only the text being needed, and writes an answer a line in the same order; ` +
		"a line that cannot be answered gives an error object and the others go on.",
	flags: []flagRow{
		{name: "code", value: "CODE", doc: "the rules to rule under: " + codeList()},
		{name: "season", value: "SEASON", doc: "the season, like 2025-26; the newest held when left out"},
		{name: "all-codes", doc: "show the ruling under every code, also where they are alike"},
		{name: "given", value: "FACT[@EVENT]=VALUE", doc: "a fact beside the words, as an answer prints it", repeat: true},
		{name: "picture", value: "FILE", doc: "draw the play into FILE, as .svg or .png"},
		{name: "json", doc: "print the answer as one JSON object"},
		{name: "batch", doc: "questions from standard input, JSON answers to standard output"},
		casebookFlag, configFlag,
		{name: "notes", doc: "with --batch: search the case notes too; without it, notes are always searched"},
	},
	run: ask,
}

func codeList() string {
	var s []string
	for _, c := range code.All() {
		s = append(s, string(c))
	}
	return strings.Join(s, ", ")
}

func ask(ctx context.Context, w *World, in input) error {
	o, err := options(in.get("code"), in.get("season"), in.values["given"])
	if err != nil {
		return err
	}
	crew, err := w.crew(in)
	if err != nil {
		return err
	}
	o.AllCodes = in.has("all-codes")
	o.Configured = crew.code
	if o.Season == 0 {
		o.Season = crew.season
	}
	if in.has("batch") {
		if len(in.words) > 0 {
			return fmt.Errorf("--batch reads its questions from standard input; %s is one word too many", visible(in.words[0]))
		}
		if len(o.Given) > 0 {
			return errors.New("--given belongs to one play; with --batch put it into the line: \"given\":[\"row@p1=front\"]")
		}
		var s bot.Searcher
		if in.has("notes") {
			n, err := openNotes(ctx, w, crew)
			if err != nil {
				return err
			}
			defer n.close()
			o.Overlays, s = n.overlays, n
		} else if o.Overlays, err = crew.adoptions(); err != nil {
			return err
		}
		return batch(ctx, w.Stdin, w.Stdout, o, s)
	}
	open, overlays, err := findNotes(w, crew)
	if err != nil {
		return err
	}
	o.Overlays = overlays
	words := strings.Join(in.words, " ")
	ruled := make(chan answer.Answer, 1)
	go func() { ruled <- answer.Ask(words, o) }() // while the notes are opened and searched
	n, err := open(ctx)
	if err != nil {
		return err
	}
	defer n.close()
	if file := in.get("picture"); file != "" {
		if err := drawTo(file, words, o); err != nil {
			return err
		}
	}
	found, err := n.Notes(ctx, asked(words, o))
	a := noted(<-ruled, found, err)
	switch {
	case a.Error != nil && in.has("json"):
		if err := encode(w.Stdout, failure{"", answer.None, a.Error}); err != nil {
			return err
		}
		return a.Error
	case a.Error != nil:
		return a.Error
	case in.has("json"):
		return encode(w.Stdout, a)
	}
	return w.print(bot.Ruling(a))
}

// asked is a question as the case notes are searched for it.
func asked(words string, o answer.Options) bot.Question {
	return bot.Question{Words: words, Given: o.Given, Code: cmp.Or(o.Code, o.Configured), Season: o.Season}
}

// noted is an answer with the case notes that were found. A search that failed costs the
// notes, not the ruling: the answer then goes without.
func noted(a answer.Answer, found []bot.Note, err error) answer.Answer {
	if a.Error != nil {
		return a
	}
	if err != nil {
		a.Doubts = append(a.Doubts, "the case notes were not searched: "+err.Error())
		return a
	}
	return bot.WithNotes(a, found)
}

// options reads what a command line or a batch line says beside the words.
// Empty texts say nothing.
func options(rules, season string, given []string) (answer.Options, error) {
	var o answer.Options
	var err error
	if rules != "" {
		if o.Code, err = code.Parse(rules); err != nil {
			return o, &answer.Problem{Where: "code", What: fmt.Sprintf("there is no %s", visible(rules)), Mend: "use one of " + codeList()}
		}
	}
	if season != "" {
		if o.Season, err = code.ParseSeason(season); err != nil {
			return o, &answer.Problem{Where: "season", What: fmt.Sprintf("%s is none", visible(season)), Mend: "write it like 2025-26"}
		}
	}
	for _, s := range given {
		g, err := answer.ParseGiven(s)
		if err != nil {
			return o, err
		}
		o.Given = append(o.Given, g)
	}
	return o, nil
}

// encode writes one value as a line of JSON.
func encode(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(v)
}
