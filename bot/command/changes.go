package command

import (
	"context"
	"errors"
	"fmt"

	"example.org/netpost/bot"
	"example.org/netpost/engine/answer"
	"example.org/netpost/engine/code"
)

var changesCommand = command{
	name:    "changes",
	args:    "FROM TO",
	summary: "list what the tables change from one season to another",
	help: "Each parameter that differs is printed with both values, their rule numbers and on what basis they are held. " +
		"A change that is not in the tables is not invented: what a new book may hold beside these, it does not say.",
	flags: []flagRow{
		{name: "code", value: "CODE", doc: "one code: " + codeList() + "; every code when left out"},
		{name: "json", doc: "print the changes as one JSON array"},
	},
	run: changes,
}

// changed is one change as it is printed in JSON.
type changed struct {
	Code  code.Code  `json:"code"`
	Param code.Param `json:"param"`
	Title string     `json:"title"`
	From  valued     `json:"from"`
	To    valued     `json:"to"`
}

type valued struct {
	Season string     `json:"season"`
	Value  string     `json:"value"`
	Text   string     `json:"text"`
	Cite   string     `json:"cite"`
	Basis  code.Basis `json:"basis"`
	Source string     `json:"source"`
	Doubt  string     `json:"doubt"`
}

func changes(_ context.Context, w *World, in input) error {
	if len(in.words) != 2 {
		return errors.New("needs two seasons: netpost changes 2024-25 2025-26")
	}
	one, err := options(in.get("code"), in.words[0], nil)
	if err != nil {
		return err
	}
	two, err := options("", in.words[1], nil)
	if err != nil {
		return err
	}
	list := code.All()
	if one.Code != "" {
		list = []code.Code{one.Code}
	}
	found, err := differences(list, one.Season, two.Season)
	if err != nil {
		return err
	}
	if in.has("json") {
		return encode(w.Stdout, found)
	}
	return w.print(changesDoc(list, one.Season, two.Season, found))
}

func differences(list []code.Code, from, to code.Season) ([]changed, error) {
	out := []changed{}
	for _, c := range list {
		d, err := code.Differences(c, from, to)
		if err != nil {
			return nil, &answer.Problem{Where: "season", What: err.Error(), Mend: "name one code with --code where only that one is held"}
		}
		for _, ch := range d {
			title := ""
			if r, ok := code.Find(ch.Param); ok {
				title = r.Title
			}
			out = append(out, changed{c, ch.Param, title, value(from, ch.From), value(to, ch.To)})
		}
	}
	return out, nil
}

func value(s code.Season, c code.Cell) valued {
	return valued{s.String(), c.Value, c.Text, c.Rule, c.Basis, c.Source, c.Doubt}
}

func changesDoc(list []code.Code, from, to code.Season, found []changed) bot.Doc {
	var d bot.Doc
	for _, c := range list {
		var blocks []bot.Block
		for _, ch := range found {
			if ch.Code == c {
				blocks = append(blocks, bot.Para{Text: bot.Text{{Text: string(ch.Param), Style: bot.Strong}, {Text: ": " + ch.Title}}},
					bot.Fields{Items: []bot.Field{ch.From.field(), ch.To.field()}})
			}
		}
		if blocks == nil {
			blocks = []bot.Block{bot.Para{Text: bot.Line(fmt.Sprintf("nothing in the tables differs between %s and %s", from, to))}}
		}
		d.Blocks = append(append(d.Blocks, bot.Heading{Text: string(c)}), blocks...)
	}
	return d
}

func (v valued) field() bot.Field {
	f := bot.Field{Label: v.Season, Lines: []bot.Text{bot.Line(v.Text)}}
	cite := string(v.Basis) + ", " + v.Source
	if v.Cite != "" {
		cite = v.Cite + ", " + cite
	}
	f.Lines = append(f.Lines, bot.Text{{Text: cite, Style: bot.Faint}})
	if v.Doubt != "" {
		f.Lines = append(f.Lines, bot.Text{{Text: "in doubt: " + v.Doubt, Style: bot.Faint}})
	}
	return f
}
