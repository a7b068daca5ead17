package command

import (
	"context"
	"errors"
	"fmt"
	"time"

	"example.org/netpost/bot"
	"example.org/netpost/casebook"
	"example.org/netpost/config"
	"example.org/netpost/engine/answer"
)

var recheckCommand = command{
	name:    "recheck",
	summary: "rule again on what was asked and on the notes, and list what is ruled otherwise today",
	help: "It rules on every kept question again, with the facts told to it, under today's tables, rules, adoptions and notes, and names the cell, the note " +
		"or the rule that made the difference. With --post the corrections are queued for the threads, or for whoever asked alone where the answer was private; " +
		"they go out when serve runs, each once. It names nobody, and shows the words of private questions to nobody. " +
		"The exit status is 1 where something has changed and is not on its way to whoever asked.",
	flags: []flagRow{
		{name: "since", value: "DATE", doc: "only what was asked since this day, like 2026-09-01"},
		{name: "question", value: "ID", doc: "post only the correction of this question", repeat: true},
		{name: "post", doc: "send the corrections"},
		{name: "json", doc: "print one JSON object"},
		associationFlag, configFlag,
	},
	run: recheck,
}

// rechecked is a recheck as it is printed in JSON.
type rechecked struct {
	Questions int             `json:"questions"`
	Plays     int             `json:"plays"`
	Left      int             `json:"left"`
	Changes   []recheckedPlay `json:"changes"`
	Notes     []recheckedNote `json:"notes"`
	Queued    int             `json:"queued"`
}

type recheckedPlay struct {
	ID      string         `json:"id"`
	Asked   time.Time      `json:"asked"`
	Text    answer.Maybe   `json:"text"` // null: a private question
	Was     answer.Past    `json:"was"`
	Now     answer.Past    `json:"now"`
	Causes  []answer.Cause `json:"causes"`
	Stuck   bool           `json:"stuck"` // the facts told to it fit the play no longer
	Private bool           `json:"private"`
}

type recheckedNote struct {
	ID      string           `json:"id"`
	Finding casebook.Finding `json:"finding"`
	Causes  []answer.Cause   `json:"causes"`
}

func recheck(ctx context.Context, w *World, in input) (err error) {
	if len(in.words) > 0 {
		return fmt.Errorf("takes no words; %s is one too many", visible(in.words[0]))
	}
	var since time.Time
	if s := in.get("since"); s != "" {
		d, err := casebook.ParseDate(s)
		if err != nil {
			return fmt.Errorf("--since: %w", err)
		}
		since = d.Time()
	}
	if len(in.values["question"]) > 0 && !in.has("post") {
		return errors.New("--question says whose correction to send, so it needs --post")
	}
	s, ca, c, err := w.kept(ctx, in)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	a, close, err := w.whole(ctx, c, ca)
	if err != nil {
		return err
	}
	defer close()
	b := bot.New(bot.Options{Store: s, Find: func(bot.Place) (bot.Association, bool) { return a, true }})
	found, err := b.Recheck(ctx, a, since)
	switch {
	case err != nil:
		return err
	case found.Cut:
		return ctx.Err()
	}
	open := len(found.Changes)
	var done bot.Corrected
	if in.has("post") {
		changes, err := chosen(found.Changes, in.values["question"])
		if err != nil {
			return err
		}
		if done, err = b.Correct(ctx, a, changes, operator); err != nil {
			return err
		}
		open -= done.Queued + done.Untold
	}
	if in.has("json") {
		err = encode(w.Stdout, inJSON(found, done))
	} else {
		err = w.print(recheckDoc(found, done, in.has("post")))
	}
	if err == nil && open+len(found.Notes) > 0 {
		return errFound
	}
	return err
}

// chosen are the changes of the questions that are named; all where none is.
func chosen(all []bot.Change, ids []string) ([]bot.Change, error) {
	if len(ids) == 0 {
		return all, nil
	}
	var out []bot.Change
	for _, id := range ids {
		n := len(out)
		for _, c := range all {
			if c.Question.ID == id {
				out = append(out, c)
			}
		}
		if len(out) == n {
			return nil, fmt.Errorf("--question %s: no question of this id is ruled otherwise today; nothing was sent", visible(id))
		}
	}
	return out, nil
}

// whole is an association with its notes and adoptions, for a command line, and
// how to let go of them.
func (w *World) whole(ctx context.Context, c config.Config, a config.Association) (bot.Association, func(), error) {
	out := publishing(c, associationOn("", a), a)
	if a.Casebook == "" {
		return out, func() {}, nil // the invented notes change nothing
	}
	n, err := openNotes(ctx, w, crew{code: codeOf(a), season: seasonOf(a), casebook: a.Casebook, index: indexDir(c, a), pages: a.Pages})
	if err != nil {
		return out, nil, err
	}
	out.Notes, out.Overlays = n, n.overlays
	return out, n.close, nil
}

func inJSON(r bot.Rechecked, done bot.Corrected) rechecked {
	out := rechecked{Questions: r.Questions, Plays: r.Plays, Left: r.Left, Changes: []recheckedPlay{}, Notes: []recheckedNote{}, Queued: done.Queued}
	for _, c := range r.Changes {
		c = c.Shown()
		out.Changes = append(out.Changes, recheckedPlay{ID: c.Question.ID, Asked: c.Question.Asked, Text: answer.Maybe(c.Question.Text), Was: c.Was, Now: c.Now,
			Causes: c.Causes, Stuck: c.Stuck != "", Private: !c.Open})
	}
	for _, n := range r.Notes {
		causes := n.Causes
		if causes == nil {
			causes = []answer.Cause{}
		}
		out.Notes = append(out.Notes, recheckedNote{n.Note.ID, n.Finding, causes})
	}
	return out
}

func recheckDoc(r bot.Rechecked, done bot.Corrected, post bool) bot.Doc {
	d := bot.Doc{Blocks: []bot.Block{bot.Para{Text: bot.Line(r.Looked())}}}
	add := func(b bot.Block) { d.Blocks = append(d.Blocks, b) }
	for _, g := range bot.ByCause(r.Changes) {
		for _, c := range g[0].Causes {
			add(bot.Heading{Text: bot.CauseTitle(c)})
		}
		var l bot.List
		for _, c := range g {
			l.Items = append(l.Items, bot.Line(c.Question.ID+" "+c.Line()))
		}
		add(l)
	}
	if len(r.Notes) > 0 {
		add(bot.Heading{Text: "Notes that are not borne out today"})
		var l bot.List
		for _, n := range r.Notes {
			l.Items = append(l.Items, bot.Line(bot.TurnedLine(n)))
		}
		add(l)
	}
	switch {
	case post:
		add(bot.Para{Text: bot.Line(done.Words())})
	case len(r.Changes)+len(r.Notes) == 0:
		add(bot.Para{Text: bot.Line("Nothing is ruled otherwise today.")})
	case len(r.Changes) > 0:
		add(bot.Para{Text: bot.Line(fmt.Sprintf("Ruled otherwise today: %s. To send the corrections: netpost recheck --post", count(len(r.Changes), "question")))})
	}
	return d
}
