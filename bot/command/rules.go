package command

import (
	"context"
	"fmt"
	"strings"

	"example.org/netpost/bot"
	"example.org/netpost/engine/code"
	"example.org/netpost/engine/lookup"
	"example.org/netpost/engine/rules"
)

var rulesCommand = command{
	name:    "rules",
	args:    "[ID]",
	summary: "list the rules that plays are judged by and what can be looked up, or print one",
	help:    "One rule is printed with our summary of it, where each code states it, on what basis we hold that, and who calls it.",
	flags:   []flagRow{{name: "season", value: "SEASON", doc: "the season, like 2025-26; the newest held when left out"}},
	run:     listRules,
}

func listRules(_ context.Context, w *World, in input) error {
	o, err := options("", in.get("season"), nil)
	if err != nil {
		return err
	}
	switch len(in.words) {
	case 0:
		var l bot.List
		for _, r := range rules.All() {
			l.Items = append(l.Items, entry(r.ID, r.Title))
		}
		var facts bot.List
		for _, e := range lookup.Entries() {
			facts.Items = append(facts.Items, entry(e.ID, e.Title))
		}
		return w.print(bot.Doc{Blocks: []bot.Block{l, bot.Heading{Text: "Looked up"}, facts}})
	case 1:
		r, found := rules.ByID(in.words[0])
		if e, looked := lookup.ByID(in.words[0]); !found && looked {
			return w.print(lookupDoc(e, o.Season))
		}
		if !found {
			return fmt.Errorf("there is no rule %s; to see all: netpost rules", visible(in.words[0]))
		}
		return w.print(ruleDoc(r, o.Season))
	}
	return fmt.Errorf("prints one rule at a time; %s is one word too many", visible(in.words[1]))
}

// entry is an id with its title, said once where they are the same words.
func entry(id, title string) bot.Text {
	t := bot.Text{{Text: id, Style: bot.Strong}}
	if strings.ReplaceAll(id, "-", " ") != title {
		t = append(t, bot.Span{Text: ": " + title})
	}
	return t
}

func ruleDoc(r rules.Rule, s code.Season) bot.Doc {
	blocks := []bot.Block{bot.Heading{Text: r.Title}, bot.Para{Text: bot.Line(r.Text)}}
	if len(r.Call.By) > 0 {
		blocks = append(blocks, bot.Fields{Items: []bot.Field{{Label: "Called by", Lines: []bot.Text{bot.Line(strings.Join(r.Call.By, " or "))}}}})
	}
	return bot.Doc{Blocks: append(blocks, params(r.Params(), s)...)}
}

// lookupDoc is what an entry of the look-ups answers from.
func lookupDoc(e lookup.Entry, s code.Season) bot.Doc {
	return bot.Doc{Blocks: append([]bot.Block{bot.Heading{Text: e.Title}, bot.Para{Text: bot.Line(e.Text())}}, params(e.Params, s)...)}
}

// params lays out what each code says of some parameters in a season.
func params(ps []code.Param, s code.Season) []bot.Block {
	var blocks []bot.Block
	for _, p := range ps {
		row, found := code.Find(p)
		if !found {
			continue
		}
		blocks = append(blocks, bot.Heading{Text: row.Title + " (" + string(p) + ")"}, cells(func(c code.Code) []code.Cell {
			b, err := code.Open(c, s)
			if err != nil {
				return nil
			}
			return []code.Cell{b.Cell(p)}
		}))
	}
	return blocks
}

// cells lays out what each code says, a field a code.
func cells(of func(code.Code) []code.Cell) bot.Fields {
	var f bot.Fields
	for _, c := range code.All() {
		field := bot.Field{Label: string(c)}
		for _, cell := range of(c) {
			field.Lines = append(field.Lines, cellText(cell))
		}
		if len(field.Lines) > 0 {
			f.Items = append(f.Items, field)
		}
	}
	return f
}

func cellText(c code.Cell) bot.Text {
	t := bot.Text{{Text: c.Text}}
	if c.Rule != "" {
		t = append(t, bot.Span{Text: " "}, bot.Span{Text: "[" + c.Rule + "]", Style: bot.Strong})
	}
	s := fmt.Sprintf(" %s to %s, %s: %s", c.Since, c.Until, c.Basis, c.Source)
	if c.Doubt != "" {
		s += "; in doubt: " + c.Doubt
	}
	return append(t, bot.Span{Text: s, Style: bot.Faint})
}
